package bolting

// Bolt loads: the welding-neck example of Modern Flange Design, recalled: gasket 14.5 in
// outside, 0.75 in wide, m 2.75, y 3700 psi, 400 psi, Sb 25 000 psi. Its numbers agree
// among themselves to their printed digits.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const (
	psi = 6894.757293168361
	lbf = 4.4482216152605
)

func TestGasketLoads(t *testing.T) {
	s := Seal{Gasket: true, Diameter: 13.75 * inch, Width: 0.75 * inch, Factor: 2.75, Seating: 3700 * psi}
	g, b := s.Line()
	checktest.Printed(t, "b [in]", b/inch, "0.306")
	checktest.Printed(t, "G [in]", g/inch, "13.888")
	p := 400 * psi
	checktest.Close(t, "H [lbf]", s.Thrust(p)/lbf, 60_600, 2e-4)                    // printed to hundreds
	checktest.Close(t, "H_p [lbf]", (s.Operating(p)-s.Thrust(p))/lbf, 29_400, 1e-3) // the same
	checktest.Close(t, "W_m1 [lbf]", s.Operating(p)/lbf, 90_000, 6e-4)
	checktest.Close(t, "W_m2 [lbf]", s.Seat()/lbf, 49_400, 1.5e-3)
}

// A narrow gasket reacts at its middle.
func TestNarrowGasket(t *testing.T) {
	g, b := Seal{Gasket: true, Diameter: 0.2, Width: 0.012}.Line()
	if g != 0.2 || b != 0.006 {
		t.Errorf("G %g m, b %g m", g, b)
	}
}

// joint is a hatch of 24 bolts M10 of class 8.8 over an O-ring, 25 bar.
func joint(t testing.TB) Joint {
	th, err := ParseThread("M10")
	if err != nil {
		t.Fatal(err)
	}
	return Joint{ID: "port.hatch", Title: "Port hatch", Temperature: 293.15, Seal: Seal{Diameter: 0.2, Squeeze: DefaultSqueeze * math.Pi * 0.2},
		Bolts: Bolts{Thread: th, Count: 24, Circle: 0.24, Strength: 600e6, Preload: 20e3, Scatter: 0.25, Growth: math.NaN()}}
}

// By hand: H = π/4 · 0.2² · 2.5e6 = 78 540 N, F_q = 6283 N; bolts 24 · 52.29 mm² ·
// 150 MPa = 188.2 kN; one bolt 25 000 + 3272 N under 600 · 57.99 = 34 794 N; seal
// 1.4 · 84 823 = 118 752 N under 24 · 15 000 = 360 000 N.
func TestJointByHand(t *testing.T) {
	j := joint(t)
	b, s := j.CheckBolts(2.5e6, 150e6), j.CheckSeal(2.5e6, Separation)
	if b.Status() != check.Satisfied || s.Status() != check.Satisfied {
		t.Fatalf("%v %s, %v %s", b.Status(), b.Reason(), s.Status(), s.Reason())
	}
	checktest.Close(t, "one bolt governs", b.Demand.Value, 28_272, 1e-4)
	checktest.Close(t, "proof load", b.Capacity.Value, 34_794, 2e-4)
	checktest.Close(t, "closed", s.Demand.Value, 118_752, 1e-4)
	checktest.Close(t, "least preload", s.Capacity.Value, 360_000, 1e-12)
	j.Bolts.Preload = math.NaN()
	b = j.CheckBolts(2.5e6, 150e6)
	checktest.Close(t, "operating load governs without preload", b.Demand.Value, 84_823, 1e-4)
	checktest.Close(t, "all bolts", b.Capacity.Value, 188.2e3, 1e-3)
	if got := j.CheckSeal(2.5e6, Separation); got.Status() != check.NotAssessed || !strings.Contains(got.Reason(), "preload") {
		t.Errorf("without a preload: %v, %s", got.Status(), got.Reason())
	}
}

func TestProofIsHeldToTheShare(t *testing.T) {
	j := joint(t)
	j.Bolts.Preload = math.NaN()
	checktest.Close(t, "share of the proof strength", j.CheckBoltsAtProof(30e6, 0.9).Capacity.Value, j.Bolts.rootArea()*0.9*600e6, 1e-12)
}

// Units of another size give the same margins: forces by a, lengths by b.
func TestScaling(t *testing.T) {
	j, k := joint(t), joint(t)
	const a, b = 7.0, 3.0
	stress := a / (b * b)
	k.Seal.Diameter *= b
	k.Seal.Squeeze *= a
	k.Bolts.Circle *= b
	k.Bolts.Thread.Major *= b
	k.Bolts.Thread.Pitch *= b
	k.Bolts.Strength *= stress
	k.Bolts.Preload *= a // at 20 °C, where nothing drifts
	for _, row := range []struct{ one, two check.Result }{
		{j.CheckBolts(2.5e6, 150e6), k.CheckBolts(2.5e6*stress, 150e6*stress)},
		{j.CheckSeal(2.5e6, 1.4), k.CheckSeal(2.5e6*stress, 1.4)},
		{j.CheckCover("port.hatch/cover", 2.5e6, 0.02, 115e6, 150e6), k.CheckCover("port.hatch/cover", 2.5e6*stress, 0.02*b, 115e6*stress, 150e6*stress)},
	} {
		checktest.Close(t, row.one.ID, row.two.Margin(), row.one.Margin(), 1e-12)
	}
}

// Standard bolt classes: S_p/4 never exceeds what the vessel rules allow; ISO 898-1 and
// ISO 3506-1, recalled: proof, yield, ultimate [MPa].
func TestAllowable(t *testing.T) {
	for name, row := range map[string][3]float64{"4.6": {225, 240, 400}, "8.8": {600, 660, 830}, "10.9": {830, 940, 1040}, "12.9": {970, 1100, 1220}, "A2-70": {450, 450, 700}} {
		s, err := Allowable(material.Vessel, material.Factors{}, row[0])
		if most := math.Min(row[2]/5, row[1]/4); err != nil || !(s <= most) {
			t.Errorf("class %s: %g MPa, rules allow %g MPa, %v", name, s, most, err)
		}
	}
	f := material.Factors{YieldFactor: 1.5 / 0.9, UltimateFactor: 2}
	if s, err := Allowable(material.Flight, f, 600); err != nil || s != 300 {
		t.Errorf("flight: %g, %v", s, err)
	}
	if _, err := Allowable("other", f, 600); err == nil {
		t.Error("an unknown rule allows something")
	}
}

// What is missing, out of range or no number is not assessed.
func TestRefusals(t *testing.T) {
	nan := math.NaN()
	for name, change := range map[string]func(j *Joint){
		"no strength":     func(j *Joint) { j.Bolts.Strength = 0 },
		"strength":        func(j *Joint) { j.Bolts.Strength = nan },
		"two bolts":       func(j *Joint) { j.Bolts.Count = 2 },
		"crowded":         func(j *Joint) { j.Bolts.Count = 60 },
		"cold":            func(j *Joint) { j.Temperature = 90 },
		"hot":             func(j *Joint) { j.Temperature = 500 },
		"no temperature":  func(j *Joint) { j.Temperature = nan },
		"seal at bolts":   func(j *Joint) { j.Seal.Diameter = 0.235 },
		"no seal":         func(j *Joint) { j.Seal.Diameter = nan },
		"gasket unstated": func(j *Joint) { j.Seal.Gasket = true },
		"scatter":         func(j *Joint) { j.Bolts.Scatter = 1 },
		"squeeze":         func(j *Joint) { j.Seal.Squeeze = -1 },
		"preload":         func(j *Joint) { j.Bolts.Preload = -5 },
	} {
		j := joint(t)
		change(&j)
		for _, r := range []check.Result{j.CheckBolts(2.5e6, 150e6), j.CheckSeal(2.5e6, 1.4), j.CheckCover("c", 2.5e6, 0.02, 115e6, 150e6)} {
			if r.Status() != check.NotAssessed || r.Reason() == "" {
				t.Errorf("%s: %s %v", name, r.ID, r.Status())
			}
		}
	}
	j := joint(t)
	for _, r := range []check.Result{j.CheckBolts(nan, 150e6), j.CheckBolts(2.5e6, nan), j.CheckSeal(nan, 1.4), j.CheckSeal(2.5e6, nan), j.CheckSeal(2.5e6, 0.9), j.CheckCover("c", 2.5e6, nan, 115e6, 150e6), j.CheckCover("c", 2.5e6, 0.02, nan, 150e6)} {
		if r.Status() != check.NotAssessed {
			t.Errorf("%s with a NaN: %v", r.ID, r.Status())
		}
	}
}

// A bolt in an aluminium cover at −30 °C, by hand: of steel of 12e-6/K against 23e-6/K
// over 50 K, 215 GPa on 57.99 mm²: 6857 N. Of unstated metal it is the worse of 10.5 and
// 18e-6/K against either part: 12.5e-6/K, 7792 N. Nothing drifts at 20 °C.
func TestDrift(t *testing.T) {
	j := joint(t)
	j.Clamped, j.Temperature = [2]float64{23e-6, 23e-6}, 243.15
	checktest.Close(t, "unstated", j.drift(), 7792, 1e-3)
	j.Bolts.Growth = 12e-6
	checktest.Close(t, "stated", j.drift(), 6857, 1e-3)
	tight, seal := j.CheckBolts(2.5e6, 150e6), j.CheckSeal(2.5e6, Separation)
	checktest.Close(t, "one bolt", tight.Demand.Value, 28_272+6857, 1e-3)
	checktest.Close(t, "closed", seal.Demand.Value, 118_752+24*6857, 1e-3)
	if tight.Status() != check.NotSatisfied {
		t.Errorf("35.1 kN on a bolt of 34.8 kN: %v", tight.Status())
	}
	j.Clamped[1] = math.NaN()
	for _, r := range []check.Result{j.CheckBolts(2.5e6, 150e6), j.CheckSeal(2.5e6, 1.4), j.CheckCover("c", 2.5e6, 0.02, 115e6, 150e6)} {
		if r.Status() != check.NotAssessed {
			t.Errorf("%s with an unknown expansion: %v", r.ID, r.Status())
		}
	}
	j.Temperature = tightenedAt
	if r := j.CheckSeal(2.5e6, 1.4); j.drift() != 0 || r.Status() != check.Satisfied {
		t.Errorf("at 20 °C: %g N, %v", j.drift(), r.Status())
	}
}

// A pull of 2 kN and a moment of 150 N m on a circle of 0.2 m act as 5 kN: on one bolt,
// on what keeps the joint closed, and on the fitting's thread.
func TestLoadFromOutside(t *testing.T) {
	f := Outside(2e3, 150, 0.2)
	checktest.Close(t, "F + 4 M/d", f, 5e3, 1e-12)
	// Against a ring of bolts: the tension of the worst of 24 is M r/Σ(r sin)² = 2 M/(n r).
	checktest.Close(t, "worst bolt", Outside(0, 150, 0.24)/24, 2*150/(24*0.12), 1e-12)
	j, k := joint(t), joint(t)
	k.Outside = f
	checktest.Close(t, "one bolt", k.CheckBolts(2.5e6, 150e6).Demand.Value-j.CheckBolts(2.5e6, 150e6).Demand.Value, f/24, 1e-9)
	checktest.Close(t, "closed", k.CheckSeal(2.5e6, 1.4).Demand.Value-j.CheckSeal(2.5e6, 1.4).Demand.Value, 1.4*f, 1e-9)
	j.Bolts.Preload, k.Bolts.Preload = math.NaN(), math.NaN()
	if !(k.CheckCover("c", 2.5e6, 0.02, 115e6, 150e6).Margin() < j.CheckCover("c", 2.5e6, 0.02, 115e6, 150e6).Margin()) {
		t.Error("the cover does not feel the load")
	}
	g, h := fitting(t), fitting(t)
	h.Outside = f
	checktest.Close(t, "thread", h.CheckThread(4e6, 1e8, 1e8).Demand.Value-g.CheckThread(4e6, 1e8, 1e8).Demand.Value, f, 1e-9)
	checktest.Close(t, "fitting", h.CheckSeal(4e6, 1.4).Demand.Value-g.CheckSeal(4e6, 1.4).Demand.Value, 1.4*f, 1e-9)
	k.Outside = math.NaN()
	if r := k.CheckBolts(2.5e6, 150e6); r.Status() != check.NotAssessed {
		t.Errorf("a load that is no number: %v", r.Status())
	}
}

// More pressure never helps; pressure from outside pulls no bolt.
func TestMonotone(t *testing.T) {
	j := joint(t)
	last := [3]float64{math.Inf(1), math.Inf(1), math.Inf(1)}
	for p := 0.0; p < 8e6; p += 0.25e6 {
		for i, r := range []check.Result{j.CheckBolts(p, 150e6), j.CheckSeal(p, 1.4), j.CheckCover("c", p, 0.02, 115e6, 150e6)} {
			if r.Margin() > last[i]+1e-12 {
				t.Fatalf("%s at %g Pa: margin rises to %g from %g", r.ID, p, r.Margin(), last[i])
			}
			last[i] = r.Margin()
		}
	}
	if h := j.Seal.Thrust(-1e5); h != 0 {
		t.Errorf("thrust %g N from outside", h)
	}
}
