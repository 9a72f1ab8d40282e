package buckling_test

import (
	"fmt"

	"proofsheet/report/check"
	"proofsheet/shell/buckling"
)

// A thin aluminium tank drained with its vent closed: a twentieth of an
// atmosphere it stands, a whole one crushes it.
func ExampleResistance_CheckExternal() {
	c := buckling.Cylinder{InsideRadius: 0.2, Thickness: 0.0015, Length: 1.2}
	m := buckling.Metal{Modulus: 69e9, Poisson: 0.33, Yield: 240e6, Exponent: 20, Family: "aluminium"}
	r := c.Resistance(m, buckling.Options{Factor: 1.5})
	for _, p := range []float64{5e3, 101325} {
		got := r.CheckExternal(p)
		fmt.Printf("%.1f kPa: %v, bears %.1f kPa\n", p/1e3, got.Status(), got.Capacity.Value/1e3)
	}
	// Output:
	// 5.0 kPa: satisfied, bears 17.0 kPa
	// 101.3 kPa: not satisfied, bears 17.0 kPa
}

// A stainless tank under 60 kN and 8 kN m: with 2 bar inside it stands with
// room, and the sheet shows what is left without them.
func ExampleResistance_CheckCompression() {
	c := buckling.Cylinder{InsideRadius: 0.29925, Thickness: 0.0015, Length: 1.5}
	m := buckling.Metal{Modulus: 193e9, Poisson: 0.3, Yield: 205e6, Exponent: 5, Family: "austenitic"}
	r := c.Resistance(m, buckling.Options{Factor: 1.5})
	s := buckling.Station{Compression: 60e3, Moment: 8e3, PressureLeast: 2e5, PressureMost: 2e5}
	for _, zeroDecides := range []bool{false, true} {
		got := r.CheckCompression(s, zeroDecides)
		fmt.Printf("%v: N %.1f kN/m, margin %.2f\n", got.Status() == check.Satisfied, got.Demand.Value/1e3, got.Margin())
	}
	// Output:
	// true: N 60.3 kN/m, margin 1.84
	// true: N 90.2 kN/m, margin 0.70
}
