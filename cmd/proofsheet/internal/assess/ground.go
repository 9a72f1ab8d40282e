package assess

import (
	"fmt"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
)

// windDrag is the drag coefficient of the tank in the wind [-]: common practice,
// the safe side.
const windDrag = 1.2

// padWind adds to a pad case without written bending the wind on the tank itself,
// at the section that its axial force was written for, else at the forward seam. The
// shear of the aft seam is taken all along, the pressure of the gust all round the
// wall: the factor of EN 1993-1-6 (D.28) on it is at most 1.
func (m *model) padWind(c *loadCase, in tank.Case) {
	if in.Kind != "pad" || in.BendingMoment != nil || in.ShearForce != nil || in.Loads != nil {
		return
	}
	_, top := m.in.Bounds()
	top += m.fwd.nominal
	D := 2 * (m.cyl.radius + m.cyl.nominal)
	if len(c.sections) == 0 {
		c.sections = []loads.Section{{Station: m.t.Cylinder.Length}}
	}
	c.gust, _ = loads.Wind(tank.PadWind, 1, 1, 0, 1) // the force on a square metre
	for i := range c.sections {
		_, c.sections[i].Moment = loads.Wind(tank.PadWind, windDrag, D, min(c.sections[i].Station, top), top)
		c.sections[i].Shear, _ = loads.Wind(tank.PadWind, windDrag, D, 0, top)
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
