package port_test

// Tube, welds and thrust at a proof test, by hand: the strengths are shares of yield.

import (
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// 38.1 × 2 in a sphere of 150 × 3, 3.3 MPa, 0.9 of 170 MPa: R_n 17.05,
// t_a = 3.3·17.05/(153 − 1.98) = 0.37257 mm; with a seam of 0.85, over 128.07: 0.43933.
func TestNeckAtProof(t *testing.T) {
	w := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	p := tube(38.1, 2, 60)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	for _, row := range []struct {
		e    float64
		want string
	}{{1, "0.37257"}, {0.85, "0.43933"}} {
		r, err := p.Area(w, port.Load{Pressure: 3.3 * mpa}, port.Strengths{Wall: 153 * mpa, Tube: 153 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: row.e})
		if err != nil {
			t.Fatal(err)
		}
		got := r.CheckNeckAtProof("p")
		checktest.Printed(t, "t_a", got.Demand.Value/mm, row.want)
		if got.Status() != check.Satisfied || got.Capacity.Value != 2*mm {
			t.Errorf("%v, %g", got.Status(), got.Capacity.Value)
		}
	}
	if got := (port.AreaReport{}).CheckNeckAtProof("p"); got.Status() != check.NotAssessed {
		t.Errorf("an empty report: %v", got.Status())
	}
}

// The paths of PO-25 (test of weld paths: W2-2 36 652 lbf, W 22 400, half the outside
// fillet 38 244, no groove): path 2-2 governs at 22 400 of 38 244. Full penetration has
// no path; without any weld nothing is satisfied.
func TestWeldAtProof(t *testing.T) {
	const lbf = 4.4482216152605
	p, w, load, s := megyesy()
	status := func(p port.Port) check.Result {
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		return r.CheckWeldAtProof("n")
	}
	got := status(p)
	checktest.Close(t, "W", got.Demand.Value/lbf, 22400, 5e-4)
	checktest.Printed(t, "ΣR", got.Capacity.Value/lbf, "38244")
	if got.Status() != check.Satisfied {
		t.Errorf("%v: %s", got.Status(), got.Reason())
	}
	p.OutsideLeg = 0.25 * inch // half of the fillet: 19 122 lbf
	if got := status(p); got.Status() != check.NotSatisfied {
		t.Errorf("a quarter inch: %v, %s", got.Status(), got.Note)
	}
	p.OutsideLeg = 0
	if got := status(p); got.Status() == check.Satisfied {
		t.Error("no weld is satisfied")
	}
	p.FullGroove = true
	if got := status(p); got.Status() != check.NotApplicable {
		t.Errorf("full penetration: %v", got.Status())
	}
}

// By hand, sphere of 150 × 3, 2 MPa, 500 N on 38.1 × 2 at 60 (φ 23.5782°): general
// membrane 2·150/(2·3) = 50 MPa, U = 19.05/√450 = 0.89803, N T/F from 0.1344 and 0.0656:
// 0.07963; F cos φ 458.26: 4.0545 MPa; shear 500 sin φ/(π 19.05 3) = 1.1140, twice: 2.228.
func TestThrustAtProof(t *testing.T) {
	w := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	p := tube(38.1, 2, 60)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	r, err := p.Area(w, port.Load{Pressure: 2 * mpa}, port.Strengths{Wall: 153 * mpa, Tube: 153 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	general, err := r.GeneralMembrane()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "general membrane", general/mpa, "50.00")
	got := r.CheckThrustAtProof("p", port.External{Force: 500}, 170*mpa, 200*mpa)
	local, limit := got.Inputs[len(got.Inputs)-4], got.Inputs[len(got.Inputs)-3]
	checktest.Printed(t, "local membrane", local.Value/mpa, "56.28")
	if limit.Value != 170*mpa || got.Inputs[len(got.Inputs)-1].Value != 200*mpa || got.Status() != check.Satisfied {
		t.Errorf("limits %g, %v: %s", limit.Value, got.Status(), got.Note)
	}
	if got := r.CheckThrustAtProof("p", port.External{Force: 500}, 55*mpa, 200*mpa); got.Status() != check.NotSatisfied {
		t.Errorf("under the local membrane: %v", got.Status())
	}
}
