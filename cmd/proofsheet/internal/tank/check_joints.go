package tank

import (
	"fmt"
	"math"

	"proofsheet/material/weld"
)

// checkJointUses refuses a kind of joint where the tables of the rules in force
// do not permit it. A stated efficiency with source replaces the tables.
func (r *reader) checkJointUses() {
	c := &r.t.Cylinder
	od := c.NominalInsideDiameter() + 2*c.Thickness
	r.checkUse("cylinder.long_seam", c.LongSeam, math.NaN(), weld.Place{Category: "A", Longitudinal: true, Thickness: c.Thickness, OutsideDiameter: od})
	r.checkUse("cylinder.girth_seam", c.GirthSeam, math.NaN(), weld.Place{Category: "B", Thickness: c.Thickness, OutsideDiameter: od})
	for _, row := range []struct {
		table string
		h     *Head
	}{{"head.aft", &r.t.Head.Aft}, {"head.forward", &r.t.Head.Forward}} {
		if row.h.Shape == "" {
			continue
		}
		r.checkUse(join(row.table, "seam"), row.h.Seam, r.t.Corner(*row.h), r.t.SeamPlace(*row.h))
		r.checkUse(join(row.table, "segment_seam"), row.h.SegmentSeam, math.NaN(),
			weld.Place{Category: "A", Longitudinal: true, Thickness: row.h.Thickness, OutsideDiameter: r.t.SeamInsideDiameter(*row.h) + 2*row.h.Thickness})
	}
	for _, p := range r.t.Port {
		r.checkUse(fmt.Sprintf("port[%d].tube.seam", p.Position), p.Tube.Seam, math.NaN(),
			weld.Place{Category: "A", Longitudinal: true, Thickness: p.Tube.Wall, OutsideDiameter: p.Tube.OutsideDiameter})
		if p.Insert != nil && p.On != "" {
			r.checkUse(fmt.Sprintf("port[%d].insert.seam", p.Position), p.Insert.Seam, math.NaN(), r.t.InsertPlace(p))
		}
	}
}

// checkUse tells the first rule in force that does not permit the named joint at
// a place; corner is the half-apex angle of a cone that meets the cylinder there
// [rad], or not a number.
func (r *reader) checkUse(path, name string, corner float64, at weld.Place) {
	j, ok := r.t.FindJoint(name)
	if !ok || j.Kind == "" || !(at.Thickness > 0) || !(at.OutsideDiameter > 0) || j.Efficiency != nil {
		return
	}
	w, why := weld.Joint{Kind: j.Kind, Examination: j.Examination, Root: j.Root, Process: j.Process}, ""
	if !math.IsNaN(corner) {
		w = w.AtCone(corner)
		if w.Root != j.Root {
			why = "; over 30 deg a cone and a cylinder meet in an angle joint, where a weld from one side counts as a single butt, root seen or not"
		}
	}
	for _, rule := range r.jointTables() {
		if _, _, err := w.EfficiencyAt(rule, at); err != nil {
			r.fault(path, "joint %s: %v%s; or give its efficiency with source", name, err, why)
			return
		}
	}
}

// jointTables returns one rule of each table of joints that some case is judged by.
func (r *reader) jointTables() []string {
	american, european := false, false
	note := func(rule string) {
		switch rule {
		case "vessel", "flight":
			american = true
		case "vessel-eu":
			european = true
		}
	}
	note(r.t.Basis.Rule)
	for _, c := range r.t.Case {
		note(c.Rule)
	}
	var out []string
	if american {
		out = append(out, "vessel")
	}
	if european {
		out = append(out, "vessel-eu")
	}
	return out
}

// SeamPlace returns where the joint of a head to the cylinder stands, by the
// thicker wall and the larger diameter of the two.
func (t *Tank) SeamPlace(h Head) weld.Place {
	c := t.Cylinder
	at := weld.Place{Category: "B", Thickness: math.Max(h.Thickness, c.Thickness), Convex: h.Bulge == "inward",
		OutsideDiameter: math.Max(t.SeamInsideDiameter(h)+2*h.Thickness, c.NominalInsideDiameter()+2*c.Thickness)}
	switch h.Shape {
	case "hemisphere":
		at.Category = "A"
	case "flat":
		at.Category = "C"
	}
	return at
}

// Corner returns the half-apex angle [rad] of a cone that meets the cylinder at a
// corner, and not a number for every other head.
func (t *Tank) Corner(h Head) float64 {
	switch {
	case h.Shape != "cone":
	case h.HalfAngle != nil:
		return *h.HalfAngle
	case h.Depth != nil:
		tip := 0.0
		if h.Tip != nil {
			tip = h.Tip.Diameter
		}
		return math.Atan2((t.SeamInsideDiameter(h)-tip)/2, *h.Depth)
	}
	return math.NaN()
}
