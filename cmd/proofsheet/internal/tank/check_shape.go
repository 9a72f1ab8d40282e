package tank

import (
	"slices"
	"strings"

	"proofsheet/heads"
)

// headShape checks the keys against the shape's row, and builds the shape once
// to hear what it says of its dimensions.
func (r *reader) headShape(table string, h *Head) {
	shape, ok := heads.FindShape(h.Shape)
	if !ok {
		return
	}
	before := len(r.faults)
	for _, k := range []string{"half_angle", "depth", "aspect", "crown_radius", "knuckle_radius", "tip"} {
		if !slices.Contains(shape.Takes, k) {
			r.onlyWith(join(table, k), "another shape than "+h.Shape)
		}
	}
	if h.StraightFlange > 0 && !slices.Contains(shape.Takes, "straight_flange") {
		r.onlyWith(join(table, "straight_flange"), "another shape than "+h.Shape)
	}
	for _, keys := range shape.Requires {
		if !slices.ContainsFunc(keys, func(k string) bool { return r.has(join(table, k)) }) {
			r.faultAt(r.where(table, r.at.key), table, "a %s needs %s; write %s", h.Shape, strings.Join(keys, " or "), r.exampleOf(keys[0]))
		}
	}
	g := r.geometry(*h)
	if len(r.faults) > before || g.InsideDiameter <= 0 || h.Thickness <= 0 || r.failed(table) {
		return
	}
	if _, err := shape.New(g); err != nil {
		at := r.blamed(table, err.Error())
		key := at[strings.LastIndexByte(at, '.')+1:]
		r.fault(at, "%s", strings.TrimPrefix(err.Error(), key+": "))
	}
}

// exampleOf shows a head's key.
func (r *reader) exampleOf(key string) string {
	f, _ := find(headKeys, key)
	return key + " = " + f.example
}

// geometry is the nominal shape of a head.
func (r *reader) geometry(h Head) heads.Geometry {
	g := heads.Geometry{
		InsideDiameter: r.t.SeamInsideDiameter(h), Thickness: h.Thickness,
		StraightFlange: h.StraightFlange, Inward: h.Bulge == "inward",
		Depth: orZero(h.Depth), HalfAngle: orZero(h.HalfAngle), Aspect: orZero(h.Aspect),
		CrownRadius: orZero(h.CrownRadius), KnuckleRadius: orZero(h.KnuckleRadius),
	}
	if h.Tip != nil {
		g.TipDiameter = h.Tip.Diameter
	}
	return g
}

func orZero(p *float64) float64 {
	if p == nil {
		return 0
	}
	return *p
}

// failed reports whether some value of a table was refused already, so that
// what follows from it is not told as well.
func (r *reader) failed(table string) bool {
	return slices.ContainsFunc(r.faults, func(f Fault) bool {
		return strings.HasPrefix(f.Key, table+".") || strings.HasPrefix(f.Key, "cylinder.")
	})
}

// blamed returns the key that a shape's complaint names, or the shape itself.
func (r *reader) blamed(table, complaint string) string {
	for _, k := range []string{"depth", "half_angle", "knuckle_radius", "crown_radius", "aspect", "tip"} {
		if strings.Contains(complaint, k) && r.has(join(table, k)) {
			return join(table, k)
		}
	}
	return join(table, "shape")
}
