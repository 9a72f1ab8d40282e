package assess

import (
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
)

// windDrag is the drag coefficient of the tank in the wind [-]: common practice,
// the safe side.
const windDrag = 1.2

// padWind adds to a pad case the wind on the tank itself, at the sections that its loads
// were written for, else at the forward seam: a written load does not still the wind. The
// shear of the aft seam is taken all along, the pressure of the gust all round the
// wall: the factor of EN 1993-1-6 (D.28) on it is at most 1.
func (m *model) padWind(c *loadCase, in tank.Case) {
	if in.Kind != "pad" {
		return
	}
	_, top := m.in.Bounds()
	top += m.fwd.nominal
	D := 2 * (m.cyl.radius + m.cyl.nominal)
	if len(c.sections) == 0 {
		c.sections = []loads.Section{{Station: m.t.Cylinder.Length}}
	}
	c.gust, _ = loads.Wind(tank.PadWind, 1, 1, 0, 1) // the force on a square metre
	shear, _ := loads.Wind(tank.PadWind, windDrag, D, 0, top)
	for i := range c.sections {
		q := &c.sections[i]
		_, moment := loads.Wind(tank.PadWind, windDrag, D, min(q.Station, top), top)
		if q.Moment = math.Abs(q.Moment) + moment; math.IsNaN(q.Shear) {
			q.Shear = 0 // none was written
		}
		q.Shear = math.Abs(q.Shear) + shear
	}
}

// groundNotes says which usual cases are not written.
func (r *run) groundNotes() (out []string) {
	drain, pad := false, false
	for _, c := range r.t.Case {
		drain = drain || c.Kind == "drain" || given(c.UllagePressure) < 0
		pad = pad || c.Kind == "pad" || c.Ground && c.UllagePressure != nil && *c.UllagePressure <= 0
		if c.Kind == "pad" && c.AxialForce == nil && c.Loads == nil {
			out = append(out, fmt.Sprintf("Case %s: nothing stands on the tank; write axial_compression with the weight of what does.", c.Name))
		}
	}
	if !drain {
		out = append(out, `No case drains the tank with its vent closed: write one (kind = "drain").`)
	}
	if !pad {
		out = append(out, `No case stands on the pad without pressure: write one (kind = "pad").`)
	}
	return out
}
