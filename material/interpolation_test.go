package material

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// curves returns every table over temperature of the alloy, by name.
func (a *Alloy) curves() map[string]Curve {
	all := map[string]Curve{"elastic modulus": a.Modulus, "contraction": a.Contraction, "expansion": a.Expansion, "yield ratio": a.YieldRatio, "ultimate ratio": a.UltimateRatio}
	for _, h := range a.Hot {
		all[h.Spec+" yield"], all[h.Spec+" proof"], all[h.Spec+" ultimate"], all[h.Spec+" elongation"] = h.Yield, h.Proof1, h.Ultimate, h.Elongation
	}
	return all
}

// TestInterpolationStaysInItsTable: between two points a value lies between
// theirs, at a point it is the point's, and beyond the ends there is none.
func TestInterpolationStaysInItsTable(t *testing.T) {
	tables := 0
	for _, a := range families {
		for name, c := range a.curves() {
			if len(c.Points) == 0 {
				continue
			}
			tables++
			first, last := c.Points[0].T, c.Points[len(c.Points)-1].T
			rapid.Check(t, func(t *rapid.T) {
				T := rapid.Float64Range(first-200, last+200).Draw(t, "T")
				v, err := c.At(T)
				if T < first || T > last {
					if err == nil || !math.IsNaN(v) {
						t.Fatalf("%s %s at %g K: %g beyond the table", a.Name, name, T, v)
					}
					return
				}
				i, exact := slices.BinarySearchFunc(c.Points, T, func(p Point, T float64) int { return cmpFloat(p.T, T) })
				if exact {
					i++ // the point itself bounds both sides
				}
				low, high := c.Points[max(i-1, 0)].Value, c.Points[min(i, len(c.Points)-1)].Value
				slack := 1e-12 * max(math.Abs(low), math.Abs(high))
				if err != nil || v < min(low, high)-slack || v > max(low, high)+slack {
					t.Fatalf("%s %s at %g K: %g between %g and %g, %v", a.Name, name, T, v, low, high, err)
				}
			})
			for _, p := range c.Points {
				if v, err := c.At(p.T); err != nil || v != p.Value {
					t.Errorf("%s %s at its point %g K: %g, %v", a.Name, name, p.T, v, err)
				}
			}
		}
	}
	if tables < 100 {
		t.Errorf("only %d tables", tables)
	}
}

func cmpFloat(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// TestStrengthNeverAboveItsMinimum: without the cold option no temperature
// raises a strength over the minimum of its row, at the weld neither, and the
// weld zone is never above its parent.
func TestStrengthNeverAboveItsMinimum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a := rapid.SampledFrom(families).Draw(t, "alloy")
		q := Query{Alloy: a.Name, Thickness: rapid.Float64Range(0.0002, 0.08).Draw(t, "thickness"),
			Temperature: rapid.Float64Range(1, 600).Draw(t, "T"), Process: rapid.SampledFrom([]string{"", "tig", "mig"}).Draw(t, "process")}
		p, err := q.Parent()
		if err != nil {
			return
		}
		if q.Temperature < a.LeastTemperature && p.Brittle == nil || q.Temperature > a.MostTemperature+rounding {
			t.Fatalf("%+v outside the range of use", q)
		}
		if p.Yield.Value > p.RoomYield || p.Ultimate.Value > p.RoomUltimate || !(p.Yield.Value > 0) || !(p.Ultimate.Value > 0) {
			t.Fatalf("%+v: %g of %g, %g of %g", q, p.Yield.Value, p.RoomYield, p.Ultimate.Value, p.RoomUltimate)
		}
		z, err := q.WeldZone()
		if err == nil && (z.Yield.Value > p.Yield.Value || z.Ultimate.Value > p.Ultimate.Value) {
			t.Fatalf("%+v: the zone is above its parent", q)
		}
	})
}
