package buckling_test

// The checks as the sheet gets them: what governs, what the notes say, and
// that nothing passes unasked.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

var plain = buckling.Cylinder{InsideRadius: 0.29925, Thickness: 0.0015, Length: 1.5}

func resistance(factor float64) *buckling.Resistance {
	return plain.Resistance(steel304, buckling.Options{Factor: factor})
}

// status fails unless the check has the status and every part of the note.
func status(t *testing.T, r check.Result, want check.Status, notes ...string) {
	t.Helper()
	if r.Status() != want {
		t.Errorf("%s: %v, want %v: %s", r.ID, r.Status(), want, r.Reason())
	}
	for _, note := range notes {
		if !strings.Contains(r.Note, note) {
			t.Errorf("%s: %q is not in the note %q", r.ID, note, r.Note)
		}
	}
	if r.Status() == check.Satisfied && (r.Source.How == check.Unstated || r.Formula == "" || len(r.Inputs) < 5) {
		t.Errorf("%s: incomplete", r.ID)
	}
}

func TestCheckCompression(t *testing.T) {
	r := resistance(1.5)
	s := buckling.Station{Compression: 60e3, Moment: 8e3}
	got := r.CheckCompression(s, true)
	status(t, got, check.Satisfied, "EN 1993-1-6 governs", "SP-8007: use 0.443", "knock-down 0.471", "No ullage pressure")
	checktest.Printed(t, "margin", got.Margin(), "0.70") // 1/0.588 − 1
	checktest.Printed(t, "N", got.Demand.Value/1e3, "90.19")
	if got.ID != "cylinder/compression" || got.Factor != 1 {
		t.Errorf("%s, factor %g", got.ID, got.Factor)
	}
	// with pressure: no pressure decides on the ground, in flight it is said
	s.PressureLeast, s.PressureMost = 0.2e6, 0.2e6
	bare := r.CheckCompression(s, true)
	status(t, bare, check.Satisfied, "Decided without ullage pressure")
	checktest.Close(t, "margin without pressure", bare.Margin(), got.Margin(), 1e-12)
	flown := r.CheckCompression(s, false)
	status(t, flown, check.Satisfied, "Without ullage pressure the use is 0.588")
	checktest.Close(t, "use at 0.2 MPa", 1/(1+flown.Margin()), 0.351, 5e-3)
	// failing only without pressure
	s.Compression = 160e3
	status(t, r.CheckCompression(s, true), check.NotSatisfied)
	status(t, r.CheckCompression(s, false), check.Satisfied, "The tank needs its pressure to stand")
}

func TestCheckCompressionInTension(t *testing.T) {
	r := resistance(1.5)
	s := buckling.Station{Compression: 1e3, PressureLeast: 0.5e6, PressureMost: 0.6e6}
	got := r.CheckCompression(s, false)
	status(t, got, check.Satisfied, "The wall is in tension")
	if got.Demand.Value != 0 || !math.IsInf(got.Margin(), 1) {
		t.Errorf("demand %g, margin %g", got.Demand.Value, got.Margin())
	}
	// shear alone, and pressure from outside alone
	s.Shear = 20e3
	status(t, r.CheckCompression(s, false), check.Satisfied, "SP-8007 governs")
	_, low, err := r.External()
	must(t, low, err)
	vacuum := buckling.Station{PressureLeast: -0.5 * low.Allowable, PressureMost: 0}
	got = r.CheckCompression(vacuum, true)
	status(t, got, check.Satisfied, "SP-8007")
	if use := 1 / (1 + got.Margin()); use < 0.5 || use > 0.6 { // R_p 0.5 and the axial share of the vacuum
		t.Errorf("use %g", use)
	}
	vacuum.PressureLeast *= 2.1
	status(t, r.CheckCompression(vacuum, true), check.NotSatisfied)
	// the elephant's foot leaves nothing where the hoop stress is at yield
	got = r.CheckCompression(buckling.Station{Compression: 1e6, PressureLeast: 0, PressureMost: 1.1e6}, false)
	status(t, got, check.NotAssessed)
	if !strings.Contains(got.Reason(), "yield strength") {
		t.Error(got.Reason())
	}
}

// A relief is never multiplied by the factor: load 100, relief 60, FS 1.4 is 80.
func TestReliefCarriesNoFactor(t *testing.T) {
	r := plain.MidRadius()
	s := buckling.Station{Compression: 100e3 * 2 * math.Pi * r, PressureLeast: 60e3 * 2 * r / (0.29925 * 0.29925)}
	checktest.Printed(t, "N", plain.Line(s, 1.4).Total/1e3, "80.000")
	s.PressureLeast = 0
	s.Pull, s.LiquidPull = 40e3*2*math.Pi*r, 20e3*2*math.Pi*r
	checktest.Printed(t, "N", plain.Line(s, 1.4).Total/1e3, "80.000")
	// suction is a load and carries it, on the outside radius
	l := plain.Line(buckling.Station{PressureLeast: -10e3}, 1.4)
	checktest.Close(t, "suction", l.Total, 1.4*10e3*0.30075*0.30075/0.6, 1e-12)
	checktest.Close(t, "outside", l.External, 10e3, 0)
}

func TestCheckExternal(t *testing.T) {
	c := buckling.Cylinder{InsideRadius: 0.2, Thickness: 0.0015, Length: 1.2}
	r := c.Resistance(softMetal, buckling.Options{Factor: 1.5})
	got := r.CheckExternal(17e3)
	status(t, got, check.Satisfied, "EN 13445-3 governs", "SP-8007 ", "/1.5", "EN 13445-3", "VIII-2", "EN 1993-1-6", "beside", "0.5 % of R")
	checktest.Printed(t, "allowable, R 200 inside", got.Capacity.Value/kpa, "17.0")
	status(t, r.CheckExternal(101325), check.NotSatisfied) // a closed vent collapses it
	status(t, r.CheckExternal(0), check.NotApplicable)
	status(t, r.CheckExternal(-1), check.NotApplicable)
	for _, bad := range []float64{nan, math.Inf(1)} {
		status(t, r.CheckExternal(bad), check.NotAssessed)
	}
	c.Roundness = 0.006
	status(t, c.Resistance(softMetal, buckling.Options{Factor: 1.5}).CheckExternal(1), check.NotAssessed)
	c.Roundness, c.Ends[0] = 0, buckling.End{Kind: buckling.Dished}
	status(t, c.Resistance(softMetal, buckling.Options{Factor: 1.5}).CheckExternal(1), check.NotAssessed)
	c.Ends[0].Depth = 0.1
	longer := c.Resistance(softMetal, buckling.Options{Factor: 1.5}).CheckExternal(1)
	if !(longer.Capacity.Value < got.Capacity.Value) {
		t.Error("the share of the head costs nothing")
	}
}

func TestCheckHeadExternal(t *testing.T) {
	dome := buckling.NewEllipsoid(0.2, 0.1, 0.0015)
	got := buckling.CheckHeadExternal("head.forward", "Forward head", dome, softMetal, 70e3, 1.5)
	status(t, got, check.Satisfied, "UG-33, elastic form governs", "SP-8032", "knock-down 0.14", "EN 13445-3", "crown sphere within 1 %")
	checktest.Printed(t, "allowable", got.Capacity.Value/kpa, "73.8")
	status(t, buckling.CheckHeadExternal("head.forward", "Forward head", dome, softMetal, 75e3, 1.5), check.NotSatisfied)
	// a thick crown is past the knee: 0.55 × 240 MPa × 12/(2 × 0.9 × 424) = 2.0755 MPa
	thick := buckling.NewEllipsoid(0.2, 0.1, 0.012)
	got = buckling.CheckHeadExternal("head.aft", "Aft head", thick, softMetal, 1e6, 1.5)
	status(t, got, check.Satisfied, "UG-33, elastic form governs")
	checktest.Printed(t, "allowable past the knee", got.Capacity.Value/1e6, "2.0755")
	// a cone past 75 degrees has no SP-8019 and is not assessed, whatever the others say
	flat := buckling.Cone{HalfAngle: 76 * math.Pi / 180, LargeRadius: 0.2, Thickness: 0.004}
	got = buckling.CheckHeadExternal("head.aft", "Aft head", flat, steel304, 1e3, 1.5)
	status(t, got, check.NotAssessed)
	cone := buckling.CheckHeadExternal("head.aft", "Aft head", halfCone, steel304, 101325, 1.5)
	status(t, cone, check.Satisfied, "SP-8019", "UG-33(f)", "equivalent cylinder")
	if cone.ID != "head.aft/external" {
		t.Error(cone.ID)
	}
	for _, factor := range []float64{0.9, nan} {
		status(t, buckling.CheckHeadExternal("head.aft", "Aft head", halfCone, steel304, 1, factor), check.NotAssessed)
	}
}

func TestCheckColumn(t *testing.T) {
	r := resistance(1.5)
	c := buckling.Column{Radius: 0.3, Thickness: 0.0015, Length: 1.5, Factor: 2}
	got := r.CheckColumn(c, buckling.ColumnLoad{External: 60e3, Liquid: 10e3, Pressurised: true, Assumed: "Length and factor assumed"})
	status(t, got, check.Satisfied, "No relief by pressure", "Length and factor assumed")
	checktest.Printed(t, "demand", got.Demand.Value/1e3, "105.0")
	checktest.Printed(t, "P_E", got.Capacity.Value/1e3, "26929.0")
	got = r.CheckColumn(c, buckling.ColumnLoad{External: 60e3})
	status(t, got, check.Satisfied, "parabola governs")
	checktest.Printed(t, "P_J", got.Capacity.Value/1e3, "370.6")
	c.Length = 60
	status(t, r.CheckColumn(c, buckling.ColumnLoad{External: 60e3}), check.NotSatisfied, "out of range")
	status(t, r.CheckColumn(c, buckling.ColumnLoad{External: nan}), check.NotAssessed)
	status(t, r.CheckColumn(c, buckling.ColumnLoad{External: 1, Liquid: -1}), check.NotAssessed)
	c.Factor = 0
	status(t, r.CheckColumn(c, buckling.ColumnLoad{External: 1}), check.NotAssessed)
}

func TestNothingPassesUnasked(t *testing.T) {
	good := buckling.Station{Compression: 1e3, Moment: 1e2, Shear: 1, Torque: 1, PressureLeast: 1e5, PressureMost: 1.1e5, LiquidHead: 1e4}
	r := resistance(1.5)
	status(t, r.CheckCompression(good, true), check.Satisfied)
	for i, bend := range []func(*buckling.Station){
		func(s *buckling.Station) { s.Compression = nan }, func(s *buckling.Station) { s.Compression = -1 }, func(s *buckling.Station) { s.Pull = nan },
		func(s *buckling.Station) { s.Moment = nan }, func(s *buckling.Station) { s.Shear = nan }, func(s *buckling.Station) { s.Torque = math.Inf(1) },
		func(s *buckling.Station) { s.PressureLeast = nan }, func(s *buckling.Station) { s.PressureMost = nan }, func(s *buckling.Station) { s.PressureMost = 0 },
		func(s *buckling.Station) { s.LiquidHead = nan }, func(s *buckling.Station) { s.LiquidPull = -1 },
	} {
		s := good
		bend(&s)
		if got := r.CheckCompression(s, true).Status(); got != check.NotAssessed {
			t.Errorf("station %d: %v", i, got)
		}
	}
	free, thin, none := plain, plain, plain
	free.FreeEdge, thin.Thickness, none.InsideRadius = true, 0.00019, nan
	for i, bad := range []*buckling.Resistance{
		free.Resistance(steel304, buckling.Options{Factor: 1.5}), thin.Resistance(steel304, buckling.Options{Factor: 1.5}), none.Resistance(steel304, buckling.Options{Factor: 1.5}),
		plain.Resistance(steel304, buckling.Options{}), plain.Resistance(steel304, buckling.Options{Factor: nan}), plain.Resistance(steel304, buckling.Options{Factor: 1.5, Class: "A"}),
		plain.Resistance(steel304, buckling.Options{Factor: 1.5, Class: "D"}),
		plain.Resistance(steel304, buckling.Options{Factor: 1.5, Gain: buckling.Gain{Points: []buckling.GainPoint{{0.01, 0.01}}}}),
		plain.Resistance(buckling.Metal{}, buckling.Options{Factor: 1.5}),
	} {
		if got := bad.CheckCompression(good, true).Status(); got != check.NotAssessed {
			t.Errorf("resistance %d: %v", i, got)
		}
	}
}

// A table of the user raises the resistance, and the sheet names it.
func TestGainOfTheUser(t *testing.T) {
	s := buckling.Station{Compression: 60e3, Moment: 8e3, PressureLeast: 0.02e6, PressureMost: 0.02e6}
	g := buckling.Gain{Source: "figure of the user's copy", Points: []buckling.GainPoint{{0.001, 0.001}, {0.01, 0.0105}}}
	r := plain.Resistance(steel304, buckling.Options{Factor: 1.5, Gain: g})
	got := r.CheckCompression(s, false)
	status(t, got, check.Satisfied, "figure of the user's copy")
	l := plain.Line(s, 1.5)
	with, err := r.Use(l, 0.02e6, 0.02e6)
	must(t, with, err)
	without, err := resistance(1.5).Use(l, 0.02e6, 0.02e6)
	if must(t, without, err); !(with.Sum < without.Sum) {
		t.Errorf("sum %g with, %g without", with.Sum, without.Sum)
	}
	s.PressureLeast, s.PressureMost = 0.1e6, 0.1e6 // x_p 0.021, past the table
	status(t, r.CheckCompression(s, false), check.NotAssessed)
}

// The governing number can be redone from what stands on the sheet.
func TestSheetCanBeRedone(t *testing.T) {
	input := func(r check.Result, symbol string) float64 {
		for _, q := range r.Inputs {
			if q.Symbol == symbol {
				return q.Value
			}
		}
		t.Fatalf("%s has no %s among its inputs", r.ID, symbol)
		return nan
	}
	c := buckling.Cylinder{InsideRadius: 0.2, Thickness: 0.0015, Length: 1.2}
	en := c.Resistance(softMetal, buckling.Options{Factor: 1.5}).CheckExternal(5e3)
	checktest.Close(t, "P_r/1.5", input(en, "P_r")/1.5, en.Capacity.Value, 1e-12)
	checktest.Close(t, "P_y", input(en, "σ_y")*input(en, "t")/input(en, "R"), input(en, "P_y"), 1e-12)
	ug := plain.Resistance(steel304, buckling.Options{Factor: 1}).CheckExternal(5e3)
	if !strings.Contains(ug.Formula, "UG-28") {
		t.Fatal(ug.Formula)
	}
	checktest.Close(t, "UG-28", 2*input(ug, "A")*input(ug, "E")*input(ug, "t")/(3*input(ug, "D_o")), ug.Capacity.Value, 1e-12)
	sp := plain.Resistance(steel304, buckling.Options{Factor: 4}).CheckExternal(5e3)
	checktest.Close(t, "SP-8007", input(sp, "p_cr")/input(sp, "FS"), sp.Capacity.Value, 1e-12)
	cone := buckling.CheckHeadExternal("head.aft", "Aft head", halfCone, steel304, 1e5, 1)
	if cone.Status() != check.Satisfied || len(cone.Inputs) < 12 {
		t.Errorf("%v with %d inputs", cone.Status(), len(cone.Inputs))
	}
	// compression: N/t over χ σ_y/1.1
	r := resistance(1.5).CheckCompression(buckling.Station{Compression: 60e3, Moment: 8e3}, true)
	checktest.Close(t, "EN", input(r, "R_EN"), r.Demand.Value/input(r, "t")/input(r, "χ σ_y/1.1"), 1e-12)
	checktest.Close(t, "EN capacity", r.Capacity.Value, input(r, "t")*input(r, "χ")*input(r, "σ_y")/1.1, 1e-12)
}

// The wind from outside adds its share of the lowest allowable and no axial load; an ullage
// pressure above it takes it up, and without that pressure it is back.
func TestWindInTheSum(t *testing.T) {
	c := buckling.Cylinder{InsideRadius: 0.3, Thickness: 0.0015, Length: 1.5}
	r := c.Resistance(steel304, buckling.Options{Factor: 1.5})
	_, low, err := r.External()
	if err != nil {
		t.Fatal(err)
	}
	s := buckling.Station{Compression: 5e3, Moment: 20e3}
	calm, err := r.Use(c.Line(s, 1.5), 0, 0)
	must(t, calm, err)
	s.Wind = 245
	windy, err := r.Use(c.Line(s, 1.5), 0, 0)
	checktest.Close(t, "share of the wind", must(t, windy, err).Sum-calm.Sum, 245/low.Allowable, 1e-9)
	if a, b := c.Line(buckling.Station{Wind: 245}, 1.5), c.Line(buckling.Station{Wind: 245, PressureLeast: 300}, 1.5); a.External != 245 || a.Total != 0 || b.External != 0 {
		t.Errorf("%+v, %+v", a, b)
	}
	s.PressureLeast, s.PressureMost = 1e5, 1e5
	kept, err := r.Ratio(s, true)
	checktest.Close(t, "decided without pressure", must(t, kept, err), windy.Ratio, 1e-12)
}
