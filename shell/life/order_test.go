package life_test

import (
	"math"
	"slices"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// By hand: 100 runs from 0 to 80 and 30 from −48 to 10 make 30 from 80 to −48, 70 from 80 to 0, and 30 from 10 to 0; a proof to 110 comes before both.
func TestWorstOrder(t *testing.T) {
	run, land, proof := life.Event{Name: "run", Most: 80, Count: 100}, life.Event{Name: "land", Least: -48, Most: 10, Count: 30}, life.Event{Name: "proof", Most: 110, Count: 2}
	for name, row := range map[string]struct {
		events []life.Event
		want   []life.Cycle
	}{
		"alone":         {[]life.Event{run}, []life.Cycle{{"run", 80, 100}}},
		"two":           {[]life.Event{run, land}, []life.Cycle{{"run", 80, 70}, {"run down to land", 128, 30}, {"land down to run", 10, 30}}},
		"with a proof":  {[]life.Event{run, land, proof}, []life.Cycle{{"run", 80, 70}, {"run down to land", 128, 28}, {"run down to proof", 80, 2}, {"land down to run", 10, 30}, {"proof down to land", 158, 2}}},
		"never":         {[]life.Event{run, {Name: "land", Least: -48, Most: 10}}, []life.Cycle{{"run", 80, 100}, {"land", 58, 0}}},
		"alike":         {[]life.Event{run, {Name: "again", Most: 80, Count: 5}}, []life.Cycle{{"run", 80, 100}, {"again", 80, 5}}},
		"one in other":  {[]life.Event{{Name: "small", Least: -2, Most: 8, Count: 7}, {Name: "large", Least: -20, Most: 80, Count: 3}}, []life.Cycle{{"small", 10, 7}, {"large", 100, 3}}},
		"alike above":   {[]life.Event{run, {Name: "swing", Least: -5, Most: 80, Count: 100}}, []life.Cycle{{"run", 80, 100}, {"swing", 85, 100}}},
		"nothing known": {nil, nil},
	} {
		if got := life.WorstOrder(row.events); !slices.Equal(got, row.want) {
			t.Errorf("%s: %v, want %v", name, got, row.want)
		}
	}
	for name, bad := range map[string]life.Event{"count": {Name: "x", Most: 1, Count: math.NaN()}, "below none": {Name: "x", Most: 1, Count: -1}, "no end": {Name: "x", Most: 1, Count: math.Inf(1)}, "stress": {Name: "x", Most: math.NaN(), Count: 1}} {
		got := life.WorstOrder([]life.Event{run, bad})
		if len(got) != 2 || got[0] != (life.Cycle{Name: "run", Range: 80, Count: 100}) || got[1].Name != "x" {
			t.Errorf("%s: %v", name, got)
		}
	}
}

// Whatever the events are, as many cycles come out as went in, none is left out, and their cubes sum to no less than each from its own least to its most.
func FuzzWorstOrder(f *testing.F) {
	f.Add(80.0, 0.0, 100.0, 10.0, -48.0, 30.0)
	f.Fuzz(func(t *testing.T, a, b, n, c, d, m float64) {
		events := []life.Event{{"x", min(a, b, 0), max(a, b, 0), n}, {"y", min(c, d, 0), max(c, d, 0), m}, {"z", 0, max(a, 0), m}}
		own, sum, count, went := 0.0, 0.0, 0.0, 0.0
		for _, e := range events {
			if !(math.Abs(e.Most)+math.Abs(e.Least) < 1e9 && e.Count >= 0 && e.Count < 1e9) {
				return
			}
			own, went = own+math.Pow(e.Most-e.Least, 3)*e.Count, went+e.Count
		}
		for _, q := range life.WorstOrder(events) {
			sum, count = sum+math.Pow(q.Range, 3)*q.Count, count+q.Count
		}
		if !(sum >= own*(1-1e-9)) || math.Abs(count-went) > 1e-9*went {
			t.Errorf("%v: %g of %g cycles, damage %g of %g", events, count, went, sum, own)
		}
	})
}

// The usage of the first example in class 63, ranges in MPa: N = 2·10⁶ (63/Δσ)³ at 80 and 128 MPa 976 800 and 238 470, at 10 MPa far beyond:
// 70/976 800 + 30/238 470 = 1.975e-4, by themselves 100/976 800 + 30/2 563 000 = 1.141e-4.
func TestWorstOrderUsage(t *testing.T) {
	d := life.Detail{Where: "seam", Class: life.Class{FAT: 63 * MPa}, Yield: 200 * MPa, Cycles: life.WorstOrder([]life.Event{
		{Name: "run", Most: 80 * MPa, Count: 100}, {Name: "land", Least: -48 * MPa, Most: 10 * MPa, Count: 30}})}
	checktest.Printed(t, "usage", value(t)(d.Usage()), "1.975e-4")
}
