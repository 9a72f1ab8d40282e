package life_test

import (
	"math"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// One law, R = 0.5: with Paris the ratio does not count, so the life is that of the flaw by itself, and usage is the sum of both by hand.
func TestCheckFlaw(t *testing.T) {
	service, proof := reference(29), reference(29)
	proof.Local, proof.Range, proof.Pressure = 180*MPa, 180*MPa, 4.5*MPa
	f := life.Flaw{Depth: 0.5e-3, Shape: 0.4, Thickness: 3e-3, Radius: 0.150}
	laws := []life.Record{{Alloy: "steep", Welded: true, Law: life.Paris{C: 4.46e-10, M: 3}, Source: check.Source{Doc: "test", How: check.Practice}}}
	n := func(σ float64) float64 {
		g, err := f.Grow(σ, 0, laws[0].Law, 29*MPa, 240*MPa)
		if err != nil {
			t.Fatal(err)
		}
		return g.Cycles
	}
	r := life.CheckFlaw("tank/flaw-growth", "Flaw", service, proof, f, laws, 100, 2)
	checktest.Close(t, "usage", r.Demand.Value, 100/n(153*MPa)+2/n(184.5*MPa), 1e-12)
	if r.Status() != check.Satisfied || r.Factor != 4 {
		t.Errorf("%v %s", r.Status(), r.Reason())
	}
	if r := life.CheckFlaw("tank/flaw-growth", "Flaw", service, proof, f, laws, n(153*MPa)/3, 2); r.Status() != check.NotSatisfied {
		t.Errorf("over a quarter of the life: %v", r.Status())
	}
	faster := append(laws, life.Record{Alloy: "faster", Welded: true, Law: life.Paris{C: 8e-10, M: 3}, Source: laws[0].Source})
	if q := life.CheckFlaw("tank/flaw-growth", "Flaw", service, proof, f, faster, 100, 2); !(q.Demand.Value > r.Demand.Value) {
		t.Errorf("the faster law does not count: %g, %g", q.Demand.Value, r.Demand.Value)
	}
	for name, change := range map[string]func(){
		"no law": func() { laws = nil }, "above 0.8 of yield": func() { proof.Local = 193 * MPa }, "no toughness": func() { service.Toughness = 0 },
		"through the wall": func() { f.Depth = 2.9e-3 }, "stress missing": func() { service.Local = math.NaN() },
		"range missing": func() { service.Range = math.NaN() }, "range below the stress": func() { service.Range = 149 * MPa },
	} {
		s, p, g, l := service, proof, f, laws
		change()
		if r := life.CheckFlaw("tank/flaw-growth", "Flaw", service, proof, f, laws, 100, 2); r.Status() != check.NotAssessed {
			t.Errorf("%s: %v", name, r.Status())
		}
		service, proof, f, laws = s, p, g, l
	}
	if r := life.CheckFlaw("tank/flaw-growth", "Flaw", service, proof, f, laws, math.NaN(), 2); r.Status() != check.NotAssessed {
		t.Errorf("cycles missing: %v", r.Status())
	}
}

// The compressive half of a cycle drives a crack in a seam that holds the stress of welding: 150 MPa of tension and 90 of compression grow it as
// 240 MPa would, by Paris (153/243)³ = 0.2496 times as long for the same last depth, here 0.8 of the wall. The toughness is met by the tension alone.
func TestCheckFlawCountsCompression(t *testing.T) {
	pulled := reference(60)
	swung := pulled
	swung.Range = 240 * MPa
	f := life.Flaw{Depth: 0.5e-3, Shape: 0.4, Thickness: 3e-3, Radius: 0.150}
	laws := []life.Record{{Alloy: "steep", Welded: true, Law: life.Paris{C: 4.46e-10, M: 3}, Source: check.Source{Doc: "test", How: check.Practice}}}
	usage := func(w life.Wall) float64 {
		return life.CheckFlaw("tank/flaw-growth", "Flaw", w, w, f, laws, 100, 0).Demand.Value
	}
	checktest.Printed(t, "life", usage(pulled)/usage(swung), "0.2496")
}

// A flaw that runs at the first cycle is not satisfied, in service or at proof, and whatever is not known of its growth. By hand: 0.5 mm in 3 mm, a/c 0.4,
// F/√Q of 0.974 between 0.9512 and 0.9834, × 153 MPa × √(π 0.5e-3) = 5.9 MPa √m.
// 2.3 mm, a/c 0.2: c²/(R t) = 0.2939, M = 1.1695, 190 × 0.2333/(1 − 0.7667/1.1695) = 128.7 MPa, below 153.
func TestCheckFlawOverAtTheStart(t *testing.T) {
	f := life.Flaw{Depth: 0.5e-3, Shape: 0.4, Thickness: 3e-3, Radius: 0.150}
	brittle, tough, soft := reference(5), reference(60), reference(60)
	soft.Yield, f.Depth, f.Shape = 190*MPa, 2.3e-3, 0.2
	r := life.CheckFlaw("tank/flaw-growth", "Flaw", soft, soft, f, nil, 1, 1)
	if r.Status() != check.NotSatisfied || r.Demand.Symbol != "σ + p" {
		t.Errorf("net section: %v, %s", r.Status(), r.Reason())
	}
	checktest.Printed(t, "net section", r.Capacity.Value/MPa, "128.7")
	f.Depth, f.Shape = 0.5e-3, 0.4
	for name, w := range map[string][2]life.Wall{"in service": {brittle, tough}, "at proof": {tough, brittle}} {
		r := life.CheckFlaw("tank/flaw-growth", "Flaw", w[0], w[1], f, nil, 1, 1)
		if r.Status() != check.NotSatisfied || r.ID != "tank/flaw-growth" || r.Source.How != check.Memory {
			t.Errorf("%s: %v, %s", name, r.Status(), r.Reason())
		}
		checktest.Printed(t, name, r.Demand.Value/MPa, "5.9")
	}
}
