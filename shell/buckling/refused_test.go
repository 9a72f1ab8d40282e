package buckling_test

// What is refused, with the name of the value, and what the notes say; and values of
// classes A and B and of short shells, by hand.

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

// Classes A and B of EN 1993-1-6 at R/t 400, by hand: 0.62/(1 + 1.91·0.5^1.44) and …0.8^1.44. Under outside pressure a thin shell
// bears 0.75, 0.65 and 0.50 of its elastic hoop stress.
func TestClasses(t *testing.T) {
	for class, want := range map[buckling.Class]string{"A": "0.3639", "B": "0.2599"} {
		α, err := buckling.EuropeanReduction(400, class)
		checktest.Printed(t, "α_x, class "+string(class), must(t, α, err), want)
	}
	thin := buckling.Tube{Radius: 0.3, Thickness: 0.0003, Length: 0.9}
	_, c, err := thin.EuropeanPressure(steel304, "C")
	must(t, c, err)
	for class, want := range map[buckling.Class]float64{"A": 1.5, "B": 1.3} {
		_, p, err := thin.EuropeanPressure(steel304, class)
		checktest.Close(t, "pressure, class "+string(class), must(t, p, err)/c, want, 1e-12)
	}
	measured := plain.Resistance(steel304, buckling.Options{Factor: 1.5, Class: "B", ClassSource: "dimples of 2 June"})
	status(t, measured.CheckCompression(buckling.Station{Compression: 60e3}, true), check.Satisfied, "class B", "Class by dimples of 2 June")
}

func TestEuropeanRefused(t *testing.T) {
	for _, slender := range []float64{0.99, 5001, nan} {
		α, err := buckling.EuropeanReduction(slender, "C")
		checktest.RefusedNumber(t, "R/t", α, err, "R/t")
	}
	tube := plain.Tube()
	for _, row := range []struct {
		name        string
		class       buckling.Class
		least, most float64
		want        string
	}{
		{"class", "D", 0, 0, "class"}, {"least", "C", nan, 0, "smallest pressure"}, {"most", "C", 0, nan, "largest pressure"}, {"most under least", "C", 1, 0, "largest pressure"},
	} {
		e, err := tube.EuropeanCompression(steel304, row.class, row.least, row.most)
		checktest.RefusedNumber(t, row.name, e.Design, err, row.want)
	}
	// A stocky shell, R/t 10, has its yield strength: λ = √(205/(0.605·193000/10)) = 0.13, under 0.2 also where its length costs a half: χ = 1.
	stocky := buckling.Tube{Radius: 0.3, Thickness: 0.03, Length: 0.3}
	e, err := stocky.EuropeanCompression(steel304, "C", 0, 0)
	checktest.Close(t, "χ", must(t, e, err).Chi, 1, 0)
	checktest.Close(t, "design stress", e.Design, 205e6/1.1, 1e-12)
	// A length so small that the numbers run over their end.
	c, err := buckling.Tube{Radius: 0.3, Thickness: 0.0015, Length: 1e-160}.PressureEN13445(steel304)
	checktest.RefusedNumber(t, "no length", c.Allowable, err, "elastic buckling pressure")
}

// VIII-2 of a short shell, M_x = 1 and C_h = 1: elastic 1.6 E/(D_o/t), by FS 2: p = 1.6 E/(D_o/t)² = 1.93 MPa at D_o/t 400.
func TestShortShellOfDivision2(t *testing.T) {
	hard := metal(193, 0.3, 3000, 20, "ferritic")
	p, err := buckling.Tube{Radius: 0.1995, Thickness: 0.001, Length: math.Sqrt(0.2 * 0.001)}.PressureDivision2(hard)
	checktest.Close(t, "p", must(t, p, err), 1.6*193e9/160000, 1e-12)
	q, _, err := buckling.Tube{Radius: 0.1995, Thickness: nan, Length: 1}.HydrostaticPressure(hard, 0.75)
	checktest.RefusedNumber(t, "no wall", q, err, "wall [m]")
}

func TestColumnRefused(t *testing.T) {
	c := buckling.Column{Radius: 0.3, Thickness: 0.0015, Length: 1.5, Factor: 2}
	p, err := c.Johnson(steel304, nan)
	checktest.RefusedNumber(t, "no local stress", p, err, "local stress")
	c.Length = nan
	p, err = c.Johnson(steel304, 1e8)
	checktest.RefusedNumber(t, "no length", p, err, "length [m]")
	// The liquid's weight counts in Euler's load alone: it governs, and the parabola is said.
	c.Length = 1.5
	status(t, resistance(1.5).CheckColumn(c, buckling.ColumnLoad{External: 1e3, Liquid: 1e6}), check.Satisfied, "The parabola for stocky columns bears 370.6 kN")
}

func TestDomeRefused(t *testing.T) {
	d := buckling.NewTorisphere(0.4, 0)
	p, err := d.PressureSP8032(steel304)
	checktest.RefusedNumber(t, "no wall", p, err, "wall [m]")
	opening := 20 * math.Pi / 180
	shown := func(d buckling.Dome) (φ float64) {
		φ = nan
		q, _ := d.Describe()
		for _, v := range q {
			if v.Symbol == "φ" {
				φ = v.Value
			}
		}
		return φ
	}
	checktest.Close(t, "half opening shown", shown(buckling.NewCap(0.499, 0.002, opening)), opening, 0)
	if φ := shown(buckling.NewTorisphere(0.4, 0.002)); !math.IsNaN(φ) {
		t.Errorf("a torisphere has a half opening of %g", φ)
	}
}

// Of methods that are all out of their range, beside, or without a pressure, none is the lowest.
func TestNoLowest(t *testing.T) {
	bad := errors.New("too thick")
	for _, row := range []struct {
		name    string
		methods []buckling.Method
		want    string
	}{
		{"none", nil, "no method is in its range"},
		{"out of range", []buckling.Method{{Name: "a", Err: bad}, {Name: "b", Allowable: 1, Beside: true}}, "a: too thick"},
		{"required", []buckling.Method{{Name: "a", Err: bad, Required: true}, {Name: "b", Allowable: 1}}, "a: too thick"},
		{"nothing", []buckling.Method{{Name: "a", Allowable: 0}, {Name: "b", Allowable: 1}}, "a gives no positive pressure"},
		{"NaN", []buckling.Method{{Name: "b", Allowable: 1}, {Name: "a", Allowable: nan}}, "a gives no positive pressure"},
		{"without end", []buckling.Method{{Name: "a", Allowable: math.Inf(1)}}, "a gives no positive pressure"},
	} {
		low, err := buckling.Lowest(row.methods)
		checktest.RefusedNumber(t, row.name, low.Allowable, err, row.want)
		got := buckling.CheckPressure{ID: "x", Title: "X", Pressure: 1, Factor: 1.5}.Check(row.methods)
		status(t, got, check.NotAssessed)
	}
	got := buckling.CheckPressure{ID: "x", Title: "X", Pressure: 1, Factor: 1.5}.Check([]buckling.Method{{Name: "a", Critical: nan, Factor: 3, Allowable: -2000}})
	status(t, got, check.NotAssessed, "a -2 kPa, factor 3 inside")
}

func TestUseRefused(t *testing.T) {
	u, err := resistance(0.9).Use(buckling.Line{}, 0, 0)
	checktest.RefusedNumber(t, "factor", u.Ratio, err, "buckling factor")
	for i, l := range []buckling.Line{{Total: nan}, {Axial: nan}, {Bending: math.Inf(1)}, {Relief: nan}, {Shear: nan}, {External: nan}} {
		if _, err := resistance(1.5).Use(l, 0, 0); err == nil || !strings.Contains(err.Error(), "design load") {
			t.Errorf("line load %d: %v", i, err)
		}
	}
}

// What lies at the edge of the tests behind SP-8007 is said: R/t under 25, L/R over 5, and shear on a short shell.
func TestEdgesAreSaid(t *testing.T) {
	s := buckling.Station{Compression: 1e3, Shear: 1}
	for _, row := range []struct {
		c    buckling.Cylinder
		want string
	}{
		{buckling.Cylinder{InsideRadius: 0.3, Thickness: 0.0125, Length: 1}, "R/t is under 25"},
		{buckling.Cylinder{InsideRadius: 0.3, Thickness: 0.0015, Length: 1.6}, "L/R is over 5"},
		{buckling.Cylinder{InsideRadius: 0.3, Thickness: 0.0015, Length: 0.15}, "taken as long as its shortest"},
	} {
		said := row.c.Resistance(steel304, buckling.Options{Factor: 1.5}).CheckCompression(s, true)
		status(t, said, check.Satisfied, row.want)
		if plain := resistance(1.5).CheckCompression(s, true); strings.Contains(plain.Note, row.want) {
			t.Errorf("%q: %s", row.want, plain.Note)
		}
	}
}

// A cone that stands by its pressure alone: 1.5·490 kN over 726.593, by hand 1.0116; 2 MPa relieve 15.2 kN.
func TestConeNeedsItsPressure(t *testing.T) {
	k := buckling.ConeCompression{End: "head.aft", Title: "Aft head", Cone: halfCone, Metal: metal(193, 0.3, 3000, 20, "ferritic"), Factor: 1.5,
		Station: buckling.Station{Compression: 490e3, PressureLeast: 2e6, PressureMost: 2e6}}
	got := k.Check(false)
	status(t, got, check.Satisfied, "The tank needs its pressure to stand: without it the use is 1.02")
	checktest.Close(t, "sum", got.Demand.Value, (1.5*490e3-2*7584)/726593, 1e-4)
	status(t, k.Check(true), check.NotSatisfied, "Decided without ullage pressure")
}

// Rings, ends and metals that are none give no pressure, and no wave.
func TestRingsRefused(t *testing.T) {
	for _, row := range []struct {
		name, want string
		spoil      func(c *buckling.Cylinder, m *buckling.Metal)
	}{
		{"width", "width", func(c *buckling.Cylinder, _ *buckling.Metal) { c.Rings.Width = nan }},
		{"no ring", "no ring", func(c *buckling.Cylinder, _ *buckling.Metal) { c.Rings.Stations = nil }},
		{"end", "depth of the head", func(c *buckling.Cylinder, _ *buckling.Metal) { c.Ends[1] = buckling.End{Kind: buckling.Dished} }},
		{"modulus", "elastic modulus", func(_ *buckling.Cylinder, m *buckling.Metal) { m.Modulus = nan }},
		{"yield", "yield strength", func(_ *buckling.Cylinder, m *buckling.Metal) { m.Yield = nan }},
	} {
		c, m := ringed(), steel304
		row.spoil(&c, &m)
		p, _, err := c.RingOverall(m)
		checktest.RefusedNumber(t, row.name+", overall", p, err, row.want)
		p, _, err = c.RingYield(m)
		checktest.RefusedNumber(t, row.name+", yield", p, err, row.want)
		p, err = c.RingUG29(m)
		checktest.RefusedNumber(t, row.name+", UG-29", p, err, row.want)
		status(t, c.Resistance(m, buckling.Options{Factor: 1.5}).CheckExternal(1e8), map[bool]check.Status{true: check.NotAssessed, false: check.NotSatisfied}[row.name != "width" && row.name != "no ring"])
	}
	c := ringed()
	c.Ends[0] = buckling.End{Kind: buckling.Dished, Depth: nan}
	bay, carried, err := c.Bay()
	checktest.RefusedNumber(t, "bay", bay, err, "depth of the head")
	if !math.IsNaN(carried) {
		t.Errorf("a ring carries %g m", carried)
	}
	status(t, insideRinged().Resistance(softMetal, buckling.Options{Factor: 1.5}).CheckExternal(1e3), check.Satisfied, "rings: 3 inside, 8 mm wide and 50 mm high")
}
