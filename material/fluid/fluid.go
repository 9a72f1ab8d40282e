package fluid

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"proofsheet/report/check"
)

// A slope is a density known at one temperature, between limits of the grade.
type slope struct {
	at                   float64 // [K]
	least, typical, most float64 // [kg/m3]
	perKelvin            float64 // [kg/(m3 K)]
	source               check.Source
	note                 string
}

// slopeReach is how far from its temperature a slope is used [K]: practice, as
// no source states a range.
const slopeReach = 25

// A compressed liquid is known over absolute pressure at one temperature.
type compressed struct {
	at      float64 // [K]
	density curve   // over pressure [kg/m3]
	bulk    curve   // over pressure [Pa]
}

// A Fluid is one propellant or test fluid.
type Fluid struct {
	Name, Title string
	Formula     string
	Kind        string // cryogenic_saturated, liquefied_gas or liquid
	Cautions    []string

	density, vapor, vaporDensity curve // [kg/m3], [Pa], [kg/m3]
	bulk, expansion, softening   curve // [Pa], [1/K], [1/(Pa K)]
	slope                        *slope
	compressed                   *compressed
	critical, boiling, freezing  Value // [K]
	criticalPressure             Value // absolute [Pa]
}

// Fluids returns every fluid.
func Fluids() []Fluid {
	var all []Fluid
	for _, group := range [][]Fluid{cryogenic, alcohols, others} {
		all = append(all, group...)
	}
	return all
}

// Names returns the names of all fluids.
func Names() []string {
	var names []string
	for _, f := range Fluids() {
		names = append(names, f.Name)
	}
	return names
}

// Find returns the fluid of that name. Shares by mass between the listed ones
// are interpolated: "ethanol-85" from 80 and 90 %, "HTP-92" from 90 and 95 %.
func Find(name string) (*Fluid, bool) {
	for _, group := range [][]Fluid{cryogenic, alcohols, others} {
		for i := range group {
			if group[i].Name == name {
				f := group[i]
				return &f, true
			}
		}
	}
	all := Fluids()
	for _, family := range []string{"ethanol-", "HTP-"} {
		if share, ok := strings.CutPrefix(name, family); ok {
			return mixed(all, family, share)
		}
	}
	return nil, false
}

// mixed interpolates between the two neighbours of a family by share [%].
func mixed(all []Fluid, family, share string) (*Fluid, bool) {
	want, err := strconv.ParseFloat(share, 64)
	if err != nil || math.IsNaN(want) {
		return nil, false
	}
	var low, high *Fluid
	var lowShare, highShare float64
	for i := range all {
		text, ok := strings.CutPrefix(all[i].Name, family)
		if !ok {
			continue
		}
		s, _ := strconv.ParseFloat(text, 64)
		if s <= want && (low == nil || s > lowShare) {
			low, lowShare = &all[i], s
		}
		if s >= want && (high == nil || s < highShare) {
			high, highShare = &all[i], s
		}
	}
	if low == nil || high == nil {
		return nil, false
	}
	if lowShare == highShare {
		return low, true
	}
	f := blend(low, high, (want-lowShare)/(highShare-lowShare))
	f.Name, f.Title = family+share, fmt.Sprintf("%s%s %% by mass", strings.TrimSuffix(family, "-")+" ", share)
	return f, true
}

// blend returns the mixture at fraction w [-] of the way from a to b.
func blend(a, b *Fluid, w float64) *Fluid {
	mix := func(x, y float64) float64 { return x + w*(y-x) }
	note := "between " + a.Name + " and " + b.Name
	f := *a
	if a.slope != nil && b.slope != nil {
		s := *a.slope
		s.least, s.typical, s.most = mix(s.least, b.slope.least), mix(s.typical, b.slope.typical), mix(s.most, b.slope.most)
		s.source.How = max(a.slope.source.How, b.slope.source.How)
		s.note = note
		f.slope = &s
	}
	f.density.points, f.density.note = nil, note
	for i, p := range a.density.points {
		f.density.points = append(f.density.points, point{p.x, mix(p.y, b.density.points[i].y)})
	}
	return &f
}

// subcritical refuses a temperature at or above the critical one.
func (f *Fluid) subcritical(T float64) error {
	if f.critical.Value > 0 && !(T < f.critical.Value) {
		return fmt.Errorf("%s has no liquid from its critical temperature up, %.2f °C; it is asked for at %.2f °C", f.Name, f.critical.Value-zeroCelsius, T-zeroCelsius)
	}
	return nil
}

// Density returns the liquid's density [kg/m3] at T [K]: saturated for a
// liquefied gas, of the typical grade where grades differ. The chord between
// two points lies below the bent curve of saturation, for N2O by 0.2 % near
// 25 °C and 0.3 % near 33 °C; that of vapour pressure lies above.
func (f *Fluid) Density(T float64) (Value, error) {
	if err := f.subcritical(T); err != nil {
		return Value{Value: math.NaN()}, err
	}
	if f.slope != nil {
		return f.slope.densityAt(T, f.slope.typical, f.Name)
	}
	return f.density.at("temperature of "+f.Name+" [K]", T)
}

// DensityRange returns the least and the most density of the grade [kg/m3] at
// T [K]: the most for liquid head, the least for the mass that a volume holds.
func (f *Fluid) DensityRange(T float64) (least, most Value, err error) {
	if f.slope == nil {
		v, err := f.Density(T)
		return v, v, err
	}
	if least, err = f.slope.densityAt(T, f.slope.least, f.Name); err != nil {
		return least, least, err
	}
	most, err = f.slope.densityAt(T, f.slope.most, f.Name)
	return least, most, err
}

// densityAt brings one density of the grade [kg/m3] to T [K].
func (s *slope) densityAt(T, density float64, name string) (Value, error) {
	if err := check.Within("fluid.Fluid.Density", "temperature of "+name+" [K]", T, s.at-slopeReach, s.at+slopeReach, "the slope of density is used 25 K either side (practice)"); err != nil {
		return Value{Value: math.NaN()}, err
	}
	return Value{Value: density + s.perKelvin*(T-s.at), Source: s.source, Note: s.note}, nil
}

// DensityUnder returns the density [kg/m3] of the compressed liquid at T [K]
// and absolute pressure p [Pa], known near one temperature for some fluids.
func (f *Fluid) DensityUnder(T, p float64) (Value, error) {
	if f.compressed == nil {
		return Value{Value: math.NaN()}, fmt.Errorf("no density of compressed %s is known", f.Name)
	}
	if err := check.Within("fluid.Fluid.DensityUnder", "temperature of "+f.Name+" [K]", T, f.compressed.at-0.01, f.compressed.at+0.01, "known at this temperature only"); err != nil {
		return Value{Value: math.NaN()}, err
	}
	return f.compressed.density.at("absolute pressure of "+f.Name+" [Pa]", p)
}

// VaporPressure returns the saturation pressure, absolute [Pa], at T [K].
func (f *Fluid) VaporPressure(T float64) (Value, error) {
	if err := f.subcritical(T); err != nil {
		return Value{Value: math.NaN()}, err
	}
	return f.vapor.at("temperature of "+f.Name+" [K]", T)
}

// VaporDensity returns the density of the saturated vapour [kg/m3] at T [K].
func (f *Fluid) VaporDensity(T float64) (Value, error) {
	if err := f.subcritical(T); err != nil {
		return Value{Value: math.NaN()}, err
	}
	return f.vaporDensity.at("temperature of "+f.Name+" [K]", T)
}

// known returns a constant of the fluid, or says that it is not known.
func (f *Fluid) known(v Value, what string) (Value, error) {
	if v.Source.Doc == "" {
		return Value{Value: math.NaN()}, fmt.Errorf("the %s of %s is not known", what, f.Name)
	}
	return v, nil
}

// Critical returns the critical temperature [K].
func (f *Fluid) Critical() (Value, error) { return f.known(f.critical, "critical temperature") }

// Boiling returns the boiling temperature at 1.01325 bar [K].
func (f *Fluid) Boiling() (Value, error) { return f.known(f.boiling, "boiling temperature") }

// Freezing returns the triple or melting temperature [K].
func (f *Fluid) Freezing() (Value, error) { return f.known(f.freezing, "freezing temperature") }

// Compressibility returns the isothermal compressibility κ [1/Pa] at T [K],
// near 1 bar: the reciprocal of the bulk modulus.
func (f *Fluid) Compressibility(T float64) (Value, error) {
	k, err := f.bulk.at("temperature of "+f.Name+" [K]", T)
	k.Value = 1 / k.Value
	return k, err
}

// mostExpansionPressure bounds the linear step of Expansion in pressure [Pa]:
// the bulk modulus itself is known to 150 bar.
const mostExpansionPressure = 150 * bar

// Expansion returns the volumetric thermal expansion β [1/K] at T [K] and
// gauge pressure p [Pa]:
//
//	β(T, p) = β(T, 0) − p dκ/dT
//
// κ is the isothermal compressibility [1/Pa]. Under pressure it is known from
// 5 to 30 °C and up to 150 bar.
//
// Source: IAPWS-95 at 1 bar; the pressure term from dκ/dT, by the equality of
// mixed derivatives of the volume.
func (f *Fluid) Expansion(T, p float64) (Value, error) {
	β, err := f.expansion.at("temperature of "+f.Name+" [K]", T)
	if err != nil || p == 0 {
		return β, err
	}
	if err := check.Within("fluid.Fluid.Expansion", "gauge pressure of "+f.Name+" [Pa]", p, 0, mostExpansionPressure, "the linear step in pressure"); err != nil {
		return Value{Value: math.NaN()}, err
	}
	dκ, err := f.softening.at("temperature of "+f.Name+" [K]", T)
	β.Value -= p * dκ.Value
	β.Source.How = max(β.Source.How, dκ.Source.How)
	return β, err
}
