package shell_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell"
)

var how = check.Source{Doc: "test", Where: "made up", How: check.Read}

func vessel(S float64) material.Limits {
	return material.Limits{Rule: material.Vessel, S: S, Source: how}
}

func flight(yield, ultimate float64) material.Limits {
	return material.Limits{
		Rule: material.Flight, S: math.Min(yield/1.5*0.9, ultimate/2), Yield: yield, Ultimate: ultimate,
		YieldOnPressure: 1.5 / 0.9, UltimateOnPressure: 2, YieldOnLoad: 1.25, UltimateOnLoad: 1.5, Source: how,
	}
}

func all(l material.Limits) shell.Allowables {
	return shell.Allowables{Parent: l, Zone: l, SeamLong: l, SeamGirth: l}
}

var seams = shell.Seams{Long: 0.85, Girth: 0.85, LongJoint: "long", GirthJoint: "girth"}

// gas loads the cylinder c with p [Pa] alone.
func gas(c shell.Cylinder, p float64) shell.Condition {
	nx := c.ClosedEndForce(p)
	return shell.Condition{Pressure: p, AxialMost: nx, AxialLeast: nx}
}

func every(c shell.Cylinder, rule material.Rule, cond shell.Condition, a shell.Allowables, s shell.Seams) map[string]check.Result {
	out := map[string]check.Result{}
	for _, r := range []check.Result{
		c.CheckHoop(cond, a, s), c.CheckLongitudinal(cond, a, s), c.CheckEquivalent(cond, a, s), c.CheckThickness(rule, cond, a, s),
	} {
		out[r.ID] = r
	}
	return out
}

func TestChecksOfGas(t *testing.T) {
	rs := every(plain, material.Vessel, gas(plain, 2e6), all(vessel(115*mpa)), seams)
	const Rm, wall = 0.2025, 0.005
	for id, want := range map[string][2]float64{
		"cylinder/hoop":         {2e6 * Rm / wall, 0.85 * 115e6},
		"cylinder/longitudinal": {2e6 * Rm / 2 / wall, 0.85 * 115e6},
		"cylinder/equivalent":   {2e6 * Rm / wall, 115e6}, // the largest principal stress, not 0.866 of it
		"cylinder/thickness":    {2e6 * 0.2 / (0.85*115e6 - 0.6*2e6), wall},
	} {
		r, ok := rs[id]
		if !ok || r.Status() != check.Satisfied {
			t.Fatalf("%s: %v, %s", id, r.Status(), r.Reason())
		}
		checktest.Close(t, id+", demand", r.Factor*r.Demand.Value, want[0], 1e-12)
		checktest.Close(t, id+", capacity", r.Capacity.Value, want[1], 1e-12)
		if r.Title == "" || r.Formula == "" || r.Source.How == check.Unstated || len(r.Inputs) < 4 || r.Rule != "vessel" {
			t.Errorf("%s is not complete: %+v", id, r)
		}
	}
	if note := rs["cylinder/thickness"].Note; !strings.Contains(note, "long seam governs") {
		t.Errorf("thickness note: %q", note)
	}
	for id, r := range every(plain, material.Vessel, gas(plain, 3e6), all(vessel(115*mpa)), seams) {
		if want := id == "cylinder/longitudinal"; (r.Status() == check.Satisfied) != want {
			t.Errorf("%s at 30 bar: %v, margin %.3g", id, r.Status(), r.Margin())
		}
	}
}

// Problem 15.3 of companion_test.go by the checks: the girth seam governs.
func TestCheckGirthGoverns(t *testing.T) {
	c := mean(1.92, 0.020)
	s := shell.Seams{Long: 0.90, Girth: 0.40, LongJoint: "long", GirthJoint: "girth"}
	rs := every(c, material.Vessel, gas(c, 2e6), all(vessel(120*mpa)), s)
	checktest.Close(t, "axial margin", rs["cylinder/longitudinal"].Margin()+1, 1, 1e-12)
	if rs["cylinder/hoop"].Margin() < 0.1 {
		t.Errorf("hoop margin %g, want over 0.1", rs["cylinder/hoop"].Margin())
	}
	if note := rs["cylinder/thickness"].Note; !strings.Contains(note, "girth seam governs") {
		t.Errorf("thickness note: %q", note)
	}
}

// In flight each origin carries its own factor: against ultimate the wall of
// pressure 2 p R/(F_tu E − 1.2 p), and line loads 1.5 in the girth term.
func TestCheckFlight(t *testing.T) {
	l := flight(200*mpa, 220*mpa)
	cond := gas(plain, 1.5e6)
	cond.LoadMost, cond.LoadLeast = 4e5, -4e5
	rs := every(plain, material.Flight, cond, all(l), seams)
	girth := (2*1.5e6*0.2 + 2*1.5*4e5) / (2*220e6*0.85 + 0.4*2*1.5e6)
	checktest.Close(t, "girth wall", rs["cylinder/thickness"].Demand.Value, girth, 1e-9)
	if r := rs["cylinder/thickness"]; !strings.Contains(r.Note, "girth seam, ultimate") {
		t.Errorf("note %q", r.Note)
	}
	checktest.Close(t, "axial demand", rs["cylinder/longitudinal"].Demand.Value, (2*1.5e6*0.10125+1.5*4e5)/0.005, 1e-9)
	// with the pressure absent the compressed side has −1.5·80 MPa against hoop 2·60.75
	want := 2*1.5e6*0.2025/0.005 - (2*1.5e6*0.10125-1.5*4e5)/0.005
	checktest.Close(t, "equivalent demand, Tresca on the compressed side", rs["cylinder/equivalent"].Demand.Value, want, 1e-9)
}

func TestCheckEuropean(t *testing.T) {
	l := material.Limits{Rule: material.VesselEU, S: 115 * mpa, Source: check.Source{Doc: "test", Where: "recalled", How: check.Memory}}
	rs := every(plain, material.VesselEU, gas(plain, 2e6), all(l), seams)
	checktest.Close(t, "wall", rs["cylinder/thickness"].Demand.Value, 2e6*0.4/(2*115e6*0.85-2e6), 1e-12)
	for id, r := range rs {
		if r.Source.How != check.Memory {
			t.Errorf("%s: a recalled allowable is printed as %v", id, r.Source.How)
		}
	}
}

// A thick tube is checked at its bore.
func TestCheckThickWall(t *testing.T) {
	c := shell.Cylinder{InsideRadius: 0.02, Thickness: 0.006}
	rs := every(c, material.Vessel, gas(c, 10e6), all(vessel(115*mpa)), seams)
	bore, err := c.BoreHoopStress(10e6)
	checktest.Close(t, "hoop", rs["cylinder/hoop"].Demand.Value, must(t, bore, err), 1e-12)
	checktest.Close(t, "equivalent", rs["cylinder/equivalent"].Demand.Value, bore+10e6, 1e-12)
}

// Nothing missing or out of range is ever satisfied.
func TestChecksNotAssessed(t *testing.T) {
	nan := math.NaN()
	type set struct {
		c    shell.Cylinder
		rule material.Rule
		cond shell.Condition
		a    shell.Allowables
		s    shell.Seams
	}
	for name, change := range map[string]func(x *set){
		"pressure NaN":    func(x *set) { x.cond.Pressure, x.cond.AxialMost, x.cond.AxialLeast = nan, nan, nan },
		"no wall":         func(x *set) { x.c.Thickness = 0 },
		"wall NaN":        func(x *set) { x.c.Thickness = nan },
		"radius negative": func(x *set) { x.c.InsideRadius = -1 },
		"zone unknown":    func(x *set) { x.a.ZoneKnown = errors.New("no coupons") },
		"no limits":       func(x *set) { x.a = shell.Allowables{} },
		"S NaN":           func(x *set) { x.a = all(vessel(nan)) },
		"infinite load":   func(x *set) { x.cond.Pressure, x.cond.AxialMost = math.Inf(1), math.Inf(1) },
	} {
		x := set{plain, material.Vessel, gas(plain, 2e6), all(vessel(115 * mpa)), seams}
		change(&x)
		for id, r := range every(x.c, x.rule, x.cond, x.a, x.s) {
			if r.Status() != check.NotAssessed {
				t.Errorf("%s, %s: %v", name, id, r.Status())
			}
		}
	}
	x := gas(plain, 2e6)
	for name, r := range map[string]check.Result{
		"rule unknown":  plain.CheckThickness("other", x, all(vessel(115*mpa)), seams),
		"E missing":     plain.CheckHoop(x, all(vessel(115*mpa)), shell.Seams{Girth: 1}),
		"E NaN":         plain.CheckLongitudinal(x, all(vessel(115*mpa)), shell.Seams{Long: 1, Girth: nan}),
		"wall too thin": plain.CheckThickness(material.Vessel, gas(plain, 120e6), all(vessel(115*mpa)), seams),
	} {
		if r.Status() != check.NotAssessed {
			t.Errorf("%s: %v", name, r.Status())
		}
	}
}

// A vacuum asks for no wall here and says where it is checked.
func TestVacuum(t *testing.T) {
	r := plain.CheckThickness(material.Vessel, gas(plain, -1e5), all(vessel(115*mpa)), seams)
	if r.Demand.Value != 0 || !strings.Contains(r.Note, "cylinder/external") {
		t.Errorf("vacuum: %g m, %q", r.Demand.Value, r.Note)
	}
}

// The weld zone governs where it is the softer, without joint efficiency.
func TestZoneGoverns(t *testing.T) {
	a := all(vessel(115 * mpa))
	a.Zone = vessel(60 * mpa)
	r := plain.CheckEquivalent(gas(plain, 2e6), a, seams)
	if r.Status() != check.NotSatisfied || r.Capacity.Value != 60*mpa || !strings.Contains(r.Title, "weld zone") {
		t.Errorf("%s: %v against %g", r.Title, r.Status(), r.Capacity.Value)
	}
}

func ExampleCylinder_CheckThickness() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.0057}
	r := c.CheckThickness(material.Vessel, gas(c, 2.5e6), all(vessel(115e6)), seams)
	fmt.Printf("%.3f of %.3f mm: %v. %s\n", r.Demand.Value*1e3, r.Capacity.Value*1e3, r.Status(), r.Note)
	// Output: 5.195 of 5.700 mm: satisfied. The long seam governs.
}

func ExampleCylinder_CheckHoop() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.0057}
	r := c.CheckHoop(gas(c, 2.5e6), all(vessel(115e6)), seams)
	fmt.Printf("%.1f of %.2f MPa: %v\n", r.Demand.Value/1e6, r.Capacity.Value/1e6, r.Status())
	// Output: 89.0 of 97.75 MPa: satisfied
}
