package fluid

import (
	"testing"

	"proofsheet/report/check"
)

// TestProvenance: no number of a fluid and no caution lacks source or how, and
// every curve is in order.
func TestProvenance(t *testing.T) {
	stated := func(name string, s check.Source) {
		if s.Doc == "" || s.How == check.Unstated {
			t.Errorf("%s: source %+v", name, s)
		}
	}
	for _, f := range Fluids() {
		held := 0
		curves := []curve{f.density, f.vapor, f.vaporDensity, f.bulk, f.expansion, f.softening}
		if f.compressed != nil {
			curves = append(curves, f.compressed.density, f.compressed.bulk)
		}
		for _, c := range curves {
			if len(c.points) > 0 {
				held++
				stated(f.Name, c.source)
			}
			for i := 1; i < len(c.points); i++ {
				if !(c.points[i].x > c.points[i-1].x) {
					t.Errorf("%s: points out of order at %g", f.Name, c.points[i].x)
				}
			}
		}
		if f.slope != nil {
			held++
			stated(f.Name, f.slope.source)
		}
		for _, v := range []Value{f.critical, f.boiling, f.freezing, f.criticalPressure} {
			if v.Value != 0 {
				stated(f.Name, v.Source)
			}
		}
		if held == 0 {
			t.Errorf("%s carries nothing", f.Name)
		}
	}
	for _, p := range pairings {
		stated(p.reason, p.source)
		if p.reason == "" || severity[p.verdict] == 0 {
			t.Errorf("%v with %v: %q", p.fluids, p.metals, p.verdict)
		}
	}
}
