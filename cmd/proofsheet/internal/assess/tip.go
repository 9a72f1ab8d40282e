package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/material/weld"
	"proofsheet/report/check"
	"proofsheet/shell"
)

// A neck is the cylinder at the tip of a cone: the tube of a port, or the neck
// that the file says nothing more of, with the wall of the head.
type neck struct {
	part   part
	inside float64 // radius, corroded [m]
	length float64 // +Inf where it is not given [m]
	long   float64 // efficiency of its own seam [-]
	girth  float64 // of its weld to the cone [-]
}

// neckOf returns the tube or neck at the tip of a head.
func (m *model) neckOf(h *headPart, c *loadCase) (neck, error) {
	w, err := m.shellAt(shellKey{T: c.temperature})
	if err != nil {
		return neck{}, err
	}
	k := 0
	if h.end == "forward" {
		k = w.ends - 1
	}
	n := neck{part: *w.segments[k], length: math.Inf(1)}
	n.inside = w.tube[h.end] - n.part.least/2
	n.girth, err = m.tipWeld(h, c)
	if h.in.Tip.Close == "port" {
		n.length = m.portNamed(h.in.Tip.Port).in.Outside
	}
	seams, _, seamErr := m.headSeams(h, c)
	var along error
	n.long, along = m.tipSeam(h, c, seams)
	return n, errors.Join(err, seamErr, along)
}

// unsaidSeam is the efficiency of a seam along a neck or tube of which nothing is
// said [-]: practice for welded pipe.
const unsaidSeam = 0.85

// tipWeld returns the efficiency of the weld round the tip of a cone [-]: that of
// the joint named at the port there; else a double butt that nobody examined, since
// nothing is stated of it. At a plate it is a corner, which has none.
func (m *model) tipWeld(h *headPart, c *loadCase) (float64, error) {
	if h.in.Tip.Close == "plate" {
		return 1, nil
	}
	j := weld.Joint{Kind: "double butt", Examination: "none", Efficiency: math.NaN()}
	if p := m.portNamed(h.in.Tip.Port); p != nil && h.in.Tip.Close == "port" {
		if named := m.joint(p.in.Weld.Joint); named != nil {
			j = asWeld(named)
		}
	}
	e, _, err := j.EfficiencyAt(string(c.rule), weld.Place{Category: "B", Thickness: h.nominal, OutsideDiameter: h.in.Tip.Diameter + 2*h.nominal})
	return e, err
}

// tipSeam returns the efficiency of the seam along what closes a tip [-].
func (m *model) tipSeam(h *headPart, c *loadCase, seams heads.Seams) (float64, error) {
	switch h.in.Tip.Close {
	case "plate":
		return 1, nil
	case "neck":
		return math.Min(unsaidSeam, seams.Segment), nil
	}
	p := m.portNamed(h.in.Tip.Port)
	if p == nil {
		return math.NaN(), fmt.Errorf("port %q at the tip is not in the file", h.in.Tip.Port)
	}
	return m.tubeEfficiency(p, c.rule)
}

// checkTip holds what closes the tip of a cone: the plate by the flat-head formula,
// a tube or neck by the wall that its own pressure asks for.
func (m *model) checkTip(h *headPart, s *loads.State, c *loadCase) check.Result {
	p := m.worstAt(s, m.station(h, h.nominal0.Depth()))
	id, title := h.name+"/tip", h.title+": what closes its tip"
	if h.in.Tip.Close == "plate" {
		plate, limits, err := m.tipPlate(h, c)
		if err != nil {
			return check.NotMade(id, title, err)
		}
		return heads.CheckTipPlate(h.nominal0, h.end, math.Abs(p), plate, limits) // it bends alike from either side
	}
	n, err := m.neckOf(h, c)
	l := m.tipLimits(h, c)
	if err = errors.Join(err, l.err); err != nil {
		return check.NotMade(id, title, err)
	}
	if p <= 0 {
		return check.NotApplicableTo(id, title, fmt.Sprintf("no pressure from inside; a tube of radius %.4g mm and wall %.4g mm at %s/external", n.inside*1e3, n.part.least*1e3, h.name))
	}
	seam, err := l.parent[0].Lower(l.zone[0])
	if err != nil {
		return check.NotMade(id, title, err)
	}
	cyl, cond := n.cylinder(p)
	cond.PressureLeast, cond.Present = c.pressureLeast(), c.present
	r := cyl.CheckThickness(c.rule, cond, shell.Allowables{Parent: l.parent[0], Zone: l.zone[0], SeamLong: seam, SeamGirth: seam},
		shell.Seams{Long: n.long, Girth: n.girth, LongJoint: "of the tube or neck", GirthJoint: "at the tip"})
	r.ID, r.Title = id, h.title+": wall of the "+map[string]string{"port": "tube", "neck": "neck"}[h.in.Tip.Close]+" at its tip"
	return r
}

// cylinder returns the neck as a cylinder under gas at the pressure p [Pa].
func (n neck) cylinder(p float64) (shell.Cylinder, shell.Condition) {
	cyl := shell.Cylinder{InsideRadius: n.inside, Thickness: n.part.least, Length: math.Min(n.length, 10*n.inside)}
	axial := p * cyl.MidRadius() / 2
	return cyl, shell.Condition{Pressure: p, AxialMost: axial, AxialLeast: axial, PressureLeast: 1, Present: true}
}

// tipPlate returns the plate at a tip and the lower limits of it and its weld.
func (m *model) tipPlate(h *headPart, c *loadCase) (heads.TipPlate, material.Limits, error) {
	t := given(h.in.Tip.Thickness) - given(h.in.Tip.UnderTolerance) - h.corrosion
	p := h.tip(t)
	a := m.allow(*p, "", c)
	if err := errors.Join(h.refused, a.parentErr, a.zoneErr); err != nil {
		return heads.TipPlate{}, material.Limits{}, err
	}
	return heads.TipPlate{Thickness: t, Corrosion: h.corrosion, Efficiency: 1}, a.seam, nil
}

// proofTip holds what closes a tip at the highest pressure of the test: the bending
// of a plate, the hoop stress of a tube or neck.
func (m *model) proofTip(t *proofTest, h *headPart, s *loads.State, c *loadCase) check.Result {
	id, title := h.name+"/tip", h.title+": what closes its tip"
	p := m.worstAt(s, m.station(h, h.nominal0.Depth()))
	yields := func(of *part) (float64, error) {
		x := m.metals.at(of.material, "", of.nominal, m.t.Proof.Temperature)
		return math.Min(x.parent.Yield.Value, x.zone.Yield.Value), errors.Join(h.refused, x.parentErr, x.zoneErr, x.parent.Brittle, x.zone.Brittle)
	}
	if h.in.Tip.Close == "plate" {
		plate, _, err := m.tipPlate(h, c)
		yield, yieldErr := yields(h.tip(plate.Thickness))
		if err = errors.Join(err, yieldErr); err != nil {
			return check.NotMade(id, title, err)
		}
		x := (h.in.Tip.Diameter + 2*h.corrosion) / plate.Thickness
		return t.plan.CheckBending(proof.Stressed{Part: "plate at the " + h.end + " tip", Pressure: p, Bending: heads.TipFactor * p * x * x, Yield: yield, Efficiency: 1})
	}
	n, err := m.neckOf(h, c)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	yield, err := yields(&n.part)
	limit, limitErr := proofLimit(t.rules, yield, n.long)
	if err = errors.Join(err, limitErr); err != nil {
		return check.NotMade(id, title, err)
	}
	cyl, cond := n.cylinder(p)
	r := withLimit(cyl.CheckHoop(cond, shell.Allowables{Parent: limit, Zone: limit, SeamLong: limit, SeamGirth: limit}, shell.Seams{Long: 1, Girth: 1}), t.rules, yield, n.long)
	r.Title = h.title + ": hoop stress of the tube or neck at its tip"
	return r
}
