package port_test

// The tube's own long seam by hand, and what speaks when a port fails twice.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// UG-27(c)(1) by hand for OD 25.4, t_n 3, p 2, S_n 80 MPa, E_t 0.85:
// R_n = 9.7, t_rn = 2·9.7/(68 − 1.2) = 19.4/66.8 = 0.29042 mm, against
// 19.4/78.8 = 0.24619 mm of the seamless tube. H = 2.5·3 = 7.5 mm, so
// A_2 = 2 (3 − 0.29042) 7.5 = 40.644 mm2.
func TestTubeSeam(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	seamless, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "trn, seamless", seamless.RequiredTube/mm, "0.24619")
	s.EfficiencyTube = 0.85
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "trn", r.RequiredTube/mm, "0.29042")
	checktest.Printed(t, "A2", r.Meridional.Whole.A2*1e6, "40.644")
	checktest.Close(t, "A3, not cut by the seam", r.Meridional.Whole.A3, seamless.Meridional.Whole.A3, 1e-12)
	checktest.Close(t, "A1", r.Meridional.Whole.A1, seamless.Meridional.Whole.A1, 1e-12)
	for _, got := range []check.Result{r.Check("p"), r.CheckNeck("p")} {
		found := false
		for _, q := range got.Inputs {
			found = found || q.Symbol == "E_t" && q.Value == 0.85
		}
		if !found || !strings.Contains(got.Formula, "E_t") {
			t.Errorf("%s: E_t is not among the inputs or not in %q", got.ID, got.Formula)
		}
	}
}

// A thin tube whose own pressure governs the neck: OD 25.4, t_n 1.65, p 8 MPa:
// R_n = 11.05, t_a = 8·11.05/(80·0.85 − 4.8) = 88.4/63.2 = 1.39873 mm; with 0.7
// it is 88.4/51.2 = 1.72656 mm, more than there is.
func TestNeckBySeam(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 12, 1.65, 1, 4, 0)
	load.Pressure = 8 * mpa
	for _, row := range []struct {
		e    float64
		ta   string
		less bool
	}{{0.85, "1.39873", true}, {0.7, "1.72656", false}} {
		s.EfficiencyTube = row.e
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "ta", r.RequiredTube/mm, row.ta)
		got := r.CheckNeck("p")
		if demand := got.Demand.Value; demand < r.RequiredTube || (r.RequiredTube <= p.TubeWall) != row.less {
			t.Errorf("E_t %g: neck asks %g, its pressure %g", row.e, demand, r.RequiredTube)
		}
		if !row.less && got.Status() != check.NotSatisfied {
			t.Errorf("E_t %g: %v", row.e, got.Status())
		}
	}
}

// The edges of the efficiency, and a strength that the seam takes to its range:
// p = 0.385 S_n E_t.
func TestTubeSeamRange(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	for _, e := range []float64{0.3, 1} {
		s.EfficiencyTube = e
		if _, err := p.Area(w, load, s); err != nil {
			t.Errorf("E_t %g: %v", e, err)
		}
	}
	s.EfficiencyTube = 0
	if _, err := p.Area(w, load, s); err == nil || !strings.Contains(err.Error(), "the efficiency of the tube's seam is missing") {
		t.Errorf("no E_t: %v", err)
	}
	s.EfficiencyTube, load.Pressure = 0.5, 0.384*0.5*s.Tube
	if _, err := p.Area(w, load, s); err != nil {
		t.Error(err)
	}
	load.Pressure = 0.386 * 0.5 * s.Tube
	if _, err := p.Area(w, load, s); err == nil {
		t.Error("over 0.385 S_n E_t")
	}
}

// A wall a little under its own need is a fault of 2.5 per cent; the areas are
// short by much more, and are what is printed. The fault is still named.
func TestFaultHidesNoArea(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 2.1, 1.65, 1, 3, 0)
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	got := r.Check("p")
	if len(r.Faults) == 0 || got.Status() != check.NotSatisfied {
		t.Fatalf("%d faults, %v", len(r.Faults), got.Status())
	}
	if fault := w.Thickness/r.RequiredWall - 1; !(got.Margin() < fault-0.1) {
		t.Errorf("margin %.3f, the fault's is %.3f: the areas are hidden (%s)", got.Margin(), fault, got.Note)
	}
	if !strings.Contains(got.Note, "whatever the areas") {
		t.Errorf("the fault is not named: %s", got.Note)
	}
	// A tube strong enough to make the areas good leaves the fault to speak:
	// t/t_r = 2.1/2.1536.
	p.TubeWall, p.OutsideLeg = 6*mm, 6*mm
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	if got = r.Check("p"); got.Status() != check.NotSatisfied {
		t.Errorf("a fault and areas enough: %v", got.Status())
	}
	checktest.Close(t, "the fault speaks", got.Margin(), w.Thickness/r.RequiredWall-1, 1e-9)
}

// The margin never rises with the pressure, through faults and walls short of
// their need, and never is a port satisfied again once it was not.
func TestMarginFallsWithPressure(t *testing.T) {
	for _, row := range []struct{ α, t, tn, e1, leg, inside float64 }{
		{45, 4, 3, 1, 4, 6}, {45, 4, 3, 0.7, 4, 6}, {45, 3, 1.65, 1, 3, 0}, {30, 3, 6, 0.5, 4, 0}, {60, 2.5, 3, 0.3, 3, 3},
	} {
		p, w, load, s := areaCase(row.α, 75, row.t, row.tn, row.e1, row.leg, row.inside)
		s.EfficiencyTube, s.Tube = 0.85, 60*mpa
		last, faults, short := math.Inf(1), 0, 0
		for i := 1; i <= 400; i++ {
			load.Pressure = float64(i) * 0.02 * mpa
			r, err := p.Area(w, load, s)
			if err != nil {
				t.Fatal(err)
			}
			got := r.Check("p")
			m := got.Margin()
			if !(m <= last*(1+1e-12)+1e-12) {
				t.Errorf("%+v, p %g: margin %g after %g (%s)", row, load.Pressure, m, last, got.Note)
				break
			}
			if len(r.Faults) > 0 {
				faults++
				if got.Status() != check.NotSatisfied {
					t.Errorf("%+v, p %g: %v with a fault", row, load.Pressure, got.Status())
				}
			}
			if r.Meridional.Outboard.Available() < 0 {
				short++
			}
			last = m
		}
		if faults == 0 || short == 0 {
			t.Errorf("%+v: %d faults, %d sides with nothing left: the sweep does not reach them", row, faults, short)
		}
	}
}
