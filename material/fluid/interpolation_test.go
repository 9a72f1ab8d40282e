package fluid

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// TestInterpolationStaysInItsTable: inside a table a value lies within its
// least and most, at a point it is the point's, beyond the ends there is none.
func TestInterpolationStaysInItsTable(t *testing.T) {
	tables := 0
	for _, f := range Fluids() {
		curves := []curve{f.density, f.vapor, f.vaporDensity, f.bulk, f.expansion, f.softening}
		if f.compressed != nil {
			curves = append(curves, f.compressed.density, f.compressed.bulk)
		}
		for _, c := range curves {
			if len(c.points) == 0 {
				continue
			}
			tables++
			first, last := c.points[0].x, c.points[len(c.points)-1].x
			reach := last - first
			rapid.Check(t, func(t *rapid.T) {
				x := rapid.Float64Range(first-reach, last+reach).Draw(t, "x")
				v, err := c.at("x", x)
				if inside := x >= first && x <= last; inside != (err == nil) || inside == math.IsNaN(v.Value) {
					t.Fatalf("%s at %g: %g, %v", f.Name, x, v.Value, err)
				} else if !inside {
					return
				}
				for i := 1; i < len(c.points); i++ {
					a, b := c.points[i-1], c.points[i]
					if x < a.x || x > b.x {
						continue
					}
					slack := 1e-12 * math.Abs(a.y)
					if v.Value < min(a.y, b.y)-slack || v.Value > max(a.y, b.y)+slack {
						t.Fatalf("%s at %g: %g between %g and %g", f.Name, x, v.Value, a.y, b.y)
					}
				}
			})
			for _, p := range c.points {
				if v, err := c.at("x", p.x); err != nil || v.Value != p.y {
					t.Errorf("%s at its point %g: %g, %v", f.Name, p.x, v.Value, err)
				}
			}
		}
	}
	if tables < 25 {
		t.Errorf("only %d tables", tables)
	}
}
