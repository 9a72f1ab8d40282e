// Package fluid holds propellants and test fluids.
package fluid

import (
	"errors"

	"proofsheet/report/check"
)

// A Value is a number with its provenance.
type Value struct {
	Value  float64 // in the SI unit of its property [see method]
	Source check.Source
	Note   string
}

// A Fluid is one propellant or test fluid.
type Fluid struct {
	Name, Title, Kind string
}

// Fluids returns every fluid.
func Fluids() []Fluid { return nil }

// Find returns the fluid of that name.
func Find(name string) (*Fluid, bool) { return nil, false }

// Names returns the names of all fluids.
func Names() []string { return nil }

// Density returns the liquid density [kg/m3] at T [K].
func (f *Fluid) Density(T float64) (Value, error) { return Value{}, errors.New("not assessed") }

// DensityRange returns the least and the most density [kg/m3] at T [K].
func (f *Fluid) DensityRange(T float64) (least, most Value, err error) {
	return Value{}, Value{}, errors.New("not assessed")
}

// VaporPressure returns the saturation pressure, absolute [Pa], at T [K].
func (f *Fluid) VaporPressure(T float64) (Value, error) { return Value{}, errors.New("not assessed") }

// VaporDensity returns the density of the saturated vapour [kg/m3] at T [K].
func (f *Fluid) VaporDensity(T float64) (Value, error) { return Value{}, errors.New("not assessed") }

// Compressibility returns the isothermal compressibility [1/Pa] at T [K].
func (f *Fluid) Compressibility(T float64) (Value, error) {
	return Value{}, errors.New("not assessed")
}

// Expansion returns the volumetric expansion [1/K] at T [K] and gauge pressure p [Pa].
func (f *Fluid) Expansion(T, p float64) (Value, error) { return Value{}, errors.New("not assessed") }

// Compatibility returns satisfied, caution, refused or unknown.
func Compatibility(fluid, alloyFamilyOrName string) (verdict, note string, src check.Source) {
	return "unknown", "", check.Source{}
}
