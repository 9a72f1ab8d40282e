package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// Two loads solved apart add up to the state of both together; states of two
// models do not.
func TestPlus(t *testing.T) {
	tank := func() *revolution.Model {
		parts, err := revolution.Torisphere(0.2, 0.4, 0.04)
		if err != nil {
			t.Fatal(err)
		}
		s := revolution.Structure{Supports: []revolution.Support{{Node: len(parts) + 1, Axial: true}}}
		for _, p := range parts {
			s.Segments = append(s.Segments, revolution.Segment{Name: p.Name, Curve: p.Curve, Thickness: 3e-3, Modulus: 70e9, Poisson: 0.33})
		}
		s.Segments = append(s.Segments, revolution.Segment{Name: "cylinder", Thickness: 2e-3, Modulus: 70e9, Poisson: 0.33,
			Curve: revolution.Line{From: revolution.Point{R: 0.2}, To: revolution.Point{R: 0.2, Z: 0.5}}})
		m, err := revolution.New(s)
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
	m := tank()
	solve := func(m *revolution.Model, gas, liquid float64) *revolution.Solution {
		s, err := m.Solve(revolution.Load{Pressure: func(p revolution.Place) float64 { return gas + liquid*(0.5-p.Z) },
			Forces: []revolution.Force{{Node: 1, Radial: liquid}}})
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	gas, liquid, both := solve(m, 1e5, 0), solve(m, 0, 8e3), solve(m, 2.5e6, 8e3)
	sum, err := liquid.Plus(25, gas)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "volume", sum.VolumeGrowth, both.VolumeGrowth, 1e-9)
	checktest.Close(t, "reaction", sum.Reactions[0].Axial, both.Reactions[0].Axial, 1e-9)
	most := 0.0
	for _, q := range both.Stations {
		most = math.Max(most, q.Inside.Equivalent())
	}
	for i, q := range both.Stations {
		p := sum.Stations[i]
		for _, d := range []float64{p.Inside.Meridional - q.Inside.Meridional, p.Outside.Hoop - q.Outside.Hoop, p.Membrane.Hoop - q.Membrane.Hoop} {
			if !(math.Abs(d) <= 1e-8*most) {
				t.Fatalf("station %d: %g Pa apart", i, d)
			}
		}
		if p.R != q.R || p.Z != q.Z || p.Segment != q.Segment || p.Arc != q.Arc || !(math.Abs(p.Radial-q.Radial) <= 1e-8*math.Abs(both.Stations[len(both.Stations)-1].Radial)+1e-12) {
			t.Fatalf("station %d: %+v for %+v", i, p, q)
		}
	}
	if _, err := liquid.Plus(1, solve(tank(), 1, 0)); err == nil {
		t.Error("states of two models were added")
	}
}
