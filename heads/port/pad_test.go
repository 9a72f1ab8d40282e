package port_test

// Pads of other outlines and inserted plates: sums by hand on TC-D and on a sphere.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// A lip follows the hole: on TC-D (half outside chord 25.4 along the generator,
// 12.7 across) a lip of 8 mm reaches 33.4 and 20.7 mm; an ellipse of 66.8 by 41.4 mm
// reaches as far in both planes, and a round pad of 41.4 mm is smaller than the hole.
func TestPadOutlines(t *testing.T) {
	p, w, load, s := areaCase(30, 75, 3, 1.65, 1, 3, 0)
	s.Pad = 80 * mpa
	area := func(pad port.Pad) port.AreaReport {
		pad.Thickness, pad.Leg = 3*mm, 3*mm
		p.Pad = &pad
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		return r
	}
	lip, ellipse, round := area(port.Pad{Lip: 8 * mm}), area(port.Pad{OutsideDiameter: 41.4 * mm, Length: 66.8 * mm}), area(port.Pad{OutsideDiameter: 41.4 * mm})
	for _, r := range []port.AreaReport{lip, ellipse} {
		checktest.Close(t, "along", r.Meridional.Outboard.HalfPad, 33.4*mm, 1e-9)
		checktest.Close(t, "across", r.Transverse.Outboard.HalfPad, 20.7*mm, 1e-9)
		checktest.Close(t, "A5 along, both sides", r.Meridional.Whole.A5*1e6, 2*8*3, 1e-9)
		checktest.Close(t, "A5 across, both sides", r.Transverse.Whole.A5*1e6, 2*8*3, 1e-9)
	}
	found := false
	for _, f := range round.Faults {
		found = found || strings.Contains(f.What, "pad is smaller")
	}
	if !found || round.Check("p").Status() != check.NotSatisfied {
		t.Errorf("a pad of 41.4 mm round a hole of 50.8 mm: %v, faults %v", round.Check("p").Status(), round.Faults)
	}
	for name, pad := range map[string]port.Pad{"lip and length": {OutsideDiameter: 1, Lip: mm, Length: mm}, "NaN lip": {Lip: math.NaN()}, "no size": {}} {
		pad.Thickness = mm
		p.Pad = &pad
		if _, err := p.Area(w, load, s); err == nil {
			t.Errorf("%s: accepted", name)
		}
	}
}

// A plate of 6 mm let into the 3 mm of TC-D, out to 40 mm along the wall, adds 3 mm
// over 40 − 22.1 mm on either side, of 2.5 t the wall's own; one that reaches past
// the limit of 44.2 mm adds over 44.2 − 22.1.
func TestInsertedPlate(t *testing.T) {
	p, w, load, s := areaCase(30, 75, 3, 1.65, 1, 3, 0)
	plain, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct{ reach, more float64 }{{40, 3 * (40 - 22.1)}, {60, 3 * (44.2 - 22.1)}} {
		p.Insert = &port.Insert{OutsideDiameter: 2 * row.reach * mm, Thickness: 6 * mm, Efficiency: 0.85}
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "outboard", (r.Meridional.Outboard.A1-plain.Meridional.Outboard.A1)*1e6, row.more, 1e-9)
		checktest.Close(t, "whole", (r.Meridional.Whole.A1-plain.Meridional.Whole.A1)*1e6, 2*row.more, 1e-9)
		checktest.Close(t, "limit off the wall", r.Meridional.NormalLimit, plain.Meridional.NormalLimit, 1e-12)
		if !(r.Pressure[0].Capacity > plain.Pressure[0].Capacity) {
			t.Errorf("pressure area %g, without the insert %g", r.Pressure[0].Capacity, plain.Pressure[0].Capacity)
		}
	}
	// Of the wall's own thickness an insert changes nothing.
	p.Insert = &port.Insert{OutsideDiameter: 80 * mm, Thickness: 3 * mm, Efficiency: 1}
	same, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "pressure area", same.Pressure[0].Capacity, plain.Pressure[0].Capacity, 1e-12)
	checktest.Close(t, "margin", same.Check("p").Margin(), plain.Check("p").Margin(), 1e-12)
	for name, q := range map[string]port.Insert{
		"thinner than the wall": {OutsideDiameter: 80 * mm, Thickness: 2.9 * mm, Efficiency: 1}, "smaller than the hole": {OutsideDiameter: 50 * mm, Thickness: 6 * mm, Efficiency: 1},
		"no efficiency": {OutsideDiameter: 80 * mm, Thickness: 6 * mm}, "NaN": {OutsideDiameter: math.NaN(), Thickness: 6 * mm, Efficiency: 1},
	} {
		p.Insert = &q
		if r, err := p.Area(w, load, s); err == nil || r.CheckInsert("p").Status() != check.NotAssessed {
			t.Errorf("%s: %v, %v", name, err, r.CheckInsert("p").Status())
		}
	}
	p.Insert, p.Pad = &port.Insert{OutsideDiameter: 80 * mm, Thickness: 6 * mm, Efficiency: 1}, &port.Pad{OutsideDiameter: 90 * mm, Thickness: 3 * mm}
	s.Pad = 80 * mpa
	if _, err := p.Area(w, load, s); err == nil {
		t.Error("a pad on an inserted plate: accepted")
	}
}

// The butt weld round the insert on TC-D: t_r 2.1980 mm against E t = 0.85·3 = 2.55 mm
// and 0.7·3 = 2.1 mm.
func TestCheckInsert(t *testing.T) {
	p, w, load, s := areaCase(30, 75, 3, 1.65, 1, 3, 0)
	for e, want := range map[float64]check.Status{0.85: check.Satisfied, 0.7: check.NotSatisfied} {
		p.Insert = &port.Insert{OutsideDiameter: 80 * mm, Thickness: 6 * mm, Efficiency: e}
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		got := r.CheckInsert("p")
		if got.Status() != want {
			t.Errorf("E %g: %v, want %v", e, got.Status(), want)
		}
		checktest.Printed(t, "required", got.Demand.Value/mm, "2.1980")
		checktest.Close(t, "there", got.Capacity.Value/mm, 3*e, 1e-12)
	}
	p.Insert = nil
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.CheckInsert("p").Status(); got != check.NotApplicable {
		t.Errorf("no insert: %v", got)
	}
}

// A tube set on the wall leaves no metal of its own in it: the terms in tn′ fall
// out of W and of the paths through the wall.
func TestSetOnPaths(t *testing.T) {
	p, w, load, s := megyesy()
	p.Fit, p.Inside = port.On, 0
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	paths, err := r.WeldPaths(r.Meridional)
	if err != nil {
		t.Fatal(err)
	}
	a := r.Meridional.Whole
	// PO-25 set on: A = d tr = 5.761·0.346, A1 = d (0.5 − 0.346): W = (A − A1) Sv.
	checktest.Close(t, "W", math.Min((a.Required-a.A1)*s.Wall, (a.A2+a.A41)*s.Wall), paths[1].Needed, 1e-12)
	checktest.Close(t, "A − A1", (a.Required-a.A1)/in2, 5.761*(2*0.34582-0.5), 1e-4)
	if a.A3 != 0 || a.A43 != 0 || r.Ratios.FR1 != 1 {
		t.Errorf("set on: A3 %g, A43 %g, fr1 %g", a.A3, a.A43, r.Ratios.FR1)
	}
	if got := r.Check("n").Note; !strings.Contains(got, "laminations") {
		t.Errorf("set on: no word on laminations: %s", got)
	}
}

// What pressure and line loads ask by their own factors stands in place of the resultants where it is given. By hand, sphere of
// 150 mm and 3 mm with 100 MPa: 240 and 180 N/mm ask 2.4 and 1.8 mm of the wall in their planes, and 2.4 mm across the weld of an insert,
// 0.7 of 3 mm; 120 and 90 N/mm as they are ask 1.2 and 0.9 mm, all more than the t_r of 1 · 148.5/(2 · 100 − 0.2) = 0.743 mm.
func TestResultantsAsTheyAreAsked(t *testing.T) {
	p := tube(20, 2, 30)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	p.Insert = &port.Insert{OutsideDiameter: 60 * mm, Thickness: 5 * mm, Efficiency: 0.7}
	s := port.Strengths{Wall: 100 * mpa, Tube: 100 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	w := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	load := port.Load{Pressure: 1 * mpa, Hoop: 120e3, Meridional: 90e3}
	plain, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	load.HoopAsked, load.MeridionalAsked = 240e3, 180e3
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "meridional plane", r.Meridional.Strip, 2.4*mm, 1e-12)
	checktest.Close(t, "transverse plane", r.Transverse.Strip, 1.8*mm, 1e-12)
	checktest.Close(t, "as they are", plain.Meridional.Strip, 1.2*mm, 1e-12)
	checktest.Close(t, "at the insert", r.CheckInsert("p").Demand.Value, 2.4*mm, 1e-12)
	if a, b := plain.CheckInsert("p").Status(), r.CheckInsert("p").Status(); a != check.Satisfied || b != check.NotSatisfied {
		t.Errorf("E t = 2.1 mm: %v for 1.2 mm, %v for 2.4 mm", a, b)
	}
	load.HoopAsked = 310e3 // 3.1 of 3 mm: the wall itself is short
	if r, err = p.Area(w, load, s); err != nil || len(r.Faults) == 0 {
		t.Errorf("N of 310 N/mm: faults %v, %v", r.Faults, err)
	}
	load.HoopAsked = math.NaN()
	if _, err = p.Area(w, load, s); err == nil {
		t.Error("a factored resultant that is no number is taken")
	}
}
