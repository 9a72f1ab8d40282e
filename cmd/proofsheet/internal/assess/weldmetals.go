package assess

import (
	"errors"
	"fmt"

	"proofsheet/material"
	"proofsheet/report/check"
)

const (
	weldMetalsID    = "tank/weld-metals"
	weldMetalsTitle = "Tank: metals that its welds join"
)

// checkWeldMetals refuses to judge a tank with a weld between metals that do not
// fuse into a sound joint: aluminium or titanium with anything else. They form
// brittle compounds, and no efficiency of a joint, no width of a zone and no
// weld class here was measured on them (common practice: joined by a transition
// piece, an adhesive or bolts). Steels of two families are welded every day; what
// they do to each other is said where they meet. Nothing is returned where every
// weld joins metals that fuse.
func (m *model) checkWeldMetals() []check.Result {
	var errs []error
	weld := func(a, of, b, on string) {
		fa, fb := m.familyOf(of), m.familyOf(on)
		if of != "" && on != "" && fa != fb && (fusesAlone(fa) || fusesAlone(fb)) {
			errs = append(errs, fmt.Errorf("%s of %s (%s) is welded to %s of %s (%s): they make no sound fusion weld, and nothing here was measured on one", a, of, fa, b, on, fb))
		}
	}
	for _, h := range m.ends() {
		if !h.bolted() {
			weld(h.name, h.material, "the cylinder", m.cyl.material)
		}
		if h.in.Tip != nil {
			weld("the plate at the tip of "+h.name, h.in.Tip.Material, h.name, h.material)
		}
	}
	if q := m.t.Cylinder.Rings; q != nil {
		weld("the rings", q.Material, "the cylinder", m.cyl.material)
	}
	for _, p := range m.ports {
		weld("port."+p.in.Name, p.in.Tube.Material, p.host.name, p.host.material)
		if p.in.Pad != nil {
			weld("the pad of port."+p.in.Name, p.in.Pad.Material, p.host.name, p.host.material)
		}
	}
	if errs == nil {
		return nil
	}
	return []check.Result{check.NotMade(weldMetalsID, weldMetalsTitle, errors.Join(errs...))}
}

// fusesAlone tells whether a family welds to itself only.
func fusesAlone(family string) bool {
	return family == material.Aluminium || family == material.Titanium
}
