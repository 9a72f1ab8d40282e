package bolting

// Fittings: by hand from the limits of size of M20x1.5.

import (
	"math"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func fitting(t *testing.T) Fitting {
	return Fitting{ID: "port.tap", Title: "Port tap", Thread: thread(t, "M20x1.5"), Engagement: 14e-3, SealDiameter: 24e-3, Squeeze: 700, Preload: 5e3, Scatter: 0.3}
}

// By hand: 6g/6H of M20x1.5: d_min 19.732, d2_min 18.854, D2_max 19.216, D1_max 18.676 mm
// (recalled tables). A_i = π/1.5 · 19.732 (0.75 + 0.57735 · 0.516) = 43.31, A_e = π/1.5 ·
// 18.676 (0.75 + 0.57735 · 0.178) = 33.36 mm²/mm. F = π/4 · 24² · 4 + 5000 · 1.3 = 8310 N;
// the fitting of 100 MPa carries 0.577 · 100 · 33.36 · 14 = 26.95 kN.
func TestThreadByHand(t *testing.T) {
	f := fitting(t)
	s, err := f.Thread.Strip()
	if err != nil {
		t.Fatal(err)
	}
	// Printed limits are rounded to a micron: 0.0003 of the area.
	checktest.Close(t, "A_i [mm2/mm]", s.Internal/mm, 43.31, 4e-4)
	checktest.Close(t, "A_e [mm2/mm]", s.External/mm, 33.36, 5e-4)
	r := f.CheckThread(4e6, 100e6, 100e6)
	if r.Status() != check.Satisfied {
		t.Fatal(r.Reason())
	}
	checktest.Close(t, "F", r.Demand.Value, 8310, 1e-4)
	checktest.Close(t, "R", r.Capacity.Value, 26.95e3, 6e-4)
	// A softer boss strips first.
	checktest.Close(t, "R of a soft boss", f.CheckThread(4e6, 50e6, 100e6).Capacity.Value, 0.577*50e6*43.31e-3*14e-3, 4e-4)
	seal := f.CheckSeal(4e6, Separation)
	checktest.Close(t, "seal", seal.Demand.Value, 1.4*(1809.6+700), 1e-4)
	checktest.Close(t, "least preload", seal.Capacity.Value, 3500, 1e-12)
	f.Drift = 400
	checktest.Close(t, "F with drift", f.CheckThread(4e6, 100e6, 100e6).Demand.Value, 8710, 1e-4)
	checktest.Close(t, "seal with drift", f.CheckSeal(4e6, Separation).Demand.Value, seal.Demand.Value+400, 1e-9)
	if seal.Status() != check.NotSatisfied {
		t.Errorf("3513 N against 3500 N: %v", seal.Status())
	}
}

// A longer engagement than 1.5 diameters counts for no more.
func TestLongEngagement(t *testing.T) {
	f, g := fitting(t), fitting(t)
	f.Engagement, g.Engagement = 30e-3, 60e-3
	checktest.Close(t, "capacity", g.CheckThread(4e6, 1e8, 1e8).Capacity.Value, f.CheckThread(4e6, 1e8, 1e8).Capacity.Value, 1e-12)
}

func TestFittingRefusals(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(f *Fitting){
		"short":      func(f *Fitting) { f.Engagement = 5e-3 },
		"no length":  func(f *Fitting) { f.Engagement = nan },
		"no seal":    func(f *Fitting) { f.SealDiameter = nan },
		"no preload": func(f *Fitting) { f.Preload = nan },
		"scatter":    func(f *Fitting) { f.Scatter = nan },
		"drift":      func(f *Fitting) { f.Drift = nan },
		"squeeze":    func(f *Fitting) { f.Squeeze = nan },
	} {
		f := fitting(t)
		change(&f)
		for _, r := range []check.Result{f.CheckThread(4e6, 1e8, 1e8), f.CheckSeal(4e6, 1.4)} {
			if r.Status() != check.NotAssessed {
				t.Errorf("%s: %s %v", name, r.ID, r.Status())
			}
		}
	}
	f := fitting(t)
	for _, r := range []check.Result{f.CheckThread(nan, 1e8, 1e8), f.CheckThread(4e6, nan, 1e8), f.CheckThread(4e6, 1e8, nan), f.CheckSeal(nan, 1.4), f.CheckSeal(4e6, nan)} {
		if r.Status() != check.NotAssessed {
			t.Errorf("%s with a NaN: %v", r.ID, r.Status())
		}
	}
	// Forces by a, lengths by b: the same margin.
	k := fitting(t)
	const a, b = 7.0, 3.0
	before := f.CheckSeal(4e6, 1.4).Margin()
	k.SealDiameter, k.Engagement, k.Squeeze, k.Preload = k.SealDiameter*b, k.Engagement*b, k.Squeeze*a, k.Preload*a
	checktest.Close(t, "scaled", k.CheckSeal(4e6*a/(b*b), 1.4).Margin(), before, 1e-12)
}
