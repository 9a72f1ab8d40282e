package study

import (
	"math"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// What the whole tank leaves not assessed is not satisfied in a row, that of a ring of ports included.
func TestDoubt(t *testing.T) {
	two := &tank.Tank{Port: []tank.Port{{Name: "fill-1", Group: "fill"}, {Name: "fill-2", Group: "fill"}}}
	p := Plan{}
	for _, name := range []string{"cylinder", "head.aft", "port.fill"} {
		p.Rows = append(p.Rows, Row{Part: name, Status: check.Satisfied, Least: 1})
	}
	p.Rows = append(p.Rows, Row{Part: "head.forward", Status: check.NotSatisfied, Least: 1})
	for _, id := range []string{"head.aft/junction", "port.fill-2/area", "head.forward/junction", "tank/life"} {
		p.doubt(two, id)
	}
	for i, want := range []check.Status{check.Satisfied, check.NotAssessed, check.NotAssessed, check.NotSatisfied} {
		if r := p.Rows[i]; r.Status != want || math.IsNaN(r.Least) != (want == check.NotAssessed) {
			t.Errorf("%s: %v, least %g", r.Part, r.Status, r.Least)
		}
	}
}
