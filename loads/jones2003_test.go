package loads_test

// Source: D. Jones, "Compute Fluid Volumes in Vertical Tanks" and "Calculating
// Tank Volume", Chemical Processing, December 2003, by way of the examples of a
// general fluids library (read). Inches and US gallons of 231 in3.

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

const gallon = 231 // [in3]

// The level of the printed volume is the printed height. The volume has nine
// digits or more; a level near an apex changes by up to a third of its share.
func TestJonesVertical(t *testing.T) {
	inverted := func(b bottom) tank { return tank{R: 113. / 2, length: 200, aft: b, aftInward: true} }
	upright := func(b bottom) tank { return tank{R: 132. / 2, length: 200, aft: b} }
	for _, row := range []struct {
		where string
		tank  tank
		h     float64 // in
		gal   float64
	}{
		{"cone", upright(cone(66, 33)), 24, 250.674614},
		{"cone", upright(cone(66, 33)), 60, 2251.175536},
		{"2:1 ellipsoid", upright(ellipsoid(66, 33)), 24, 783.358168},
		{"2:1 ellipsoid", upright(ellipsoid(66, 33)), 60, 2902.831612},
		{"spherical cap", upright(dish(66, 33)), 24, 583.601835},
		{"spherical cap", upright(dish(66, 33)), 60, 2658.460583},
		{"torisphere", upright(torisphere(66, 1, 0.06)), 1, 1.790662},
		{"torisphere", upright(torisphere(66, 1, 0.06)), 22, 785.587561},
		{"torisphere", upright(torisphere(66, 1, 0.06)), 24, 904.068828},
		{"torisphere", upright(torisphere(66, 1, 0.06)), 60, 3036.761441},
		{"inverted cone", inverted(cone(56.5, 33)), 15, 251.158256},
		{"inverted cone", inverted(cone(56.5, 33)), 25, 614.606843},
		{"inverted cone", inverted(cone(56.5, 33)), 50, 1693.165441},
		{"inverted ellipsoid", inverted(ellipsoid(56.5, 33)), 15, 44.849689},
		{"inverted ellipsoid", inverted(ellipsoid(56.5, 33)), 25, 207.637447},
		{"inverted ellipsoid", inverted(ellipsoid(56.5, 33)), 50, 1215.605957},
		{"inverted spherical", inverted(dish(56.5, 33)), 15, 112.814054},
		{"inverted spherical", inverted(dish(56.5, 33)), 25, 341.705640},
		{"inverted spherical", inverted(dish(56.5, 33)), 50, 1372.928689},
	} {
		lo, _ := row.tank.Bounds()
		z, err := loads.LevelForVolume(row.tank, row.gal*gallon)
		checktest.Close(t, row.where, must(t, z, err)-lo, row.h, 3e-7)
	}
	checktest.Printed(t, "depth, D 96 f .9 k .2", torisphere(48, 0.9, 0.2).a, "25.684269")
	checktest.Printed(t, "depth, D 108 f 1 k .06", torisphere(54, 1, 0.06).a, "18.288462")
}

// A tank on its side is one with a lateral factor alone: the depth at the
// lowest line is the printed height.
func TestJonesHorizontal(t *testing.T) {
	spherical := tank{R: 54, length: 156, aft: dish(54, 42), forward: dish(54, 42)}
	elliptic := tank{R: 5, length: 25, aft: ellipsoid(5, 2), forward: ellipsoid(5, 2)}
	for _, row := range []struct {
		where  string
		tank   tank
		h      float64
		volume float64
	}{
		{"spherical heads", spherical, 36, 2303.961512 * gallon},
		{"spherical heads", spherical, 84, 6935.163365 * gallon},
		{"ellipsoidal heads", elliptic, 1, 108.052499},
		{"ellipsoidal heads", elliptic, 2.5, 416.590454},
		{"ellipsoidal heads", elliptic, 5, 1086.467459},
		{"ellipsoidal heads", elliptic, 7.5, 1756.344464},
		{"ellipsoidal heads", elliptic, 10, 2172.934919},
	} {
		full := row.tank.Volume()
		s, err := loads.NewState(row.tank, 0, loads.Liquid{Density: 1, Mass: math.Min(row.volume, full)}, loads.Acceleration{Lateral: 1})
		p, _ := must(t, s, err).HighestPressure(row.tank.Bounds())
		// the plane is found by quadrature where it grazes a head: 2e-6 of the height
		checktest.Close(t, row.where, p/loads.StandardGravity, row.h, 2e-6)
	}
}
