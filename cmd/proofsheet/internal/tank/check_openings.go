package tank

import (
	"fmt"
	"math"

	"proofsheet/material/weld"
)

// wallTolerance takes the under-tolerance of what is put on a wall from the wall
// where it is not written; false, with a fault, where the wall has none.
func (r *reader) wallTolerance(at, on string, into *float64) bool {
	if r.has(join(at, "under_tolerance")) {
		return true
	}
	tolerance, from := r.t.Cylinder.UnderTolerance, "cylinder"
	if h, ok := r.headOf(on); ok {
		tolerance, from = h.UnderTolerance, "head."+on
	}
	if tolerance == nil {
		r.faultAt(r.where(at, r.at.key), join(at, "under_tolerance"), "is missing, and the wall has none to take; write under_tolerance = \"0.3 mm\"")
		return false
	}
	*into = *tolerance
	r.defaulted(join(at, "under_tolerance"), r.written(from+".under_tolerance"), "as the wall")
	return true
}

// seamClock notes a clock of a seam that is not written, and reports that the seam may be
// anywhere; of a part without one the clock is 0 and means nothing.
func (r *reader) seamClock(path, seam, why string) (anywhere bool) {
	switch {
	case r.has(path):
		return false
	case seam == "none":
		r.defaulted(path, "0 deg", "nothing was written")
		return false
	}
	r.defaulted(path, "unknown", why)
	return true
}

// onlyWithout tells a key that contradicts another of its table.
func (r *reader) onlyWithout(table, key, other, why string) {
	if r.has(join(table, key)) && r.has(join(table, other)) {
		r.contradict(join(table, key), other, why)
	}
}

// HoleLength returns how long the hole of a port is [m]: on a cone along the meridian,
// and beside the cylinder's radius round the cylinder, longer than its tube is wide.
// Elsewhere it is taken as the tube's diameter, which it never falls short of.
func (t *Tank) HoleLength(p Port) float64 {
	od := p.Tube.OutsideDiameter
	if r := t.Cylinder.NominalInsideDiameter()/2 + t.Cylinder.Thickness/2; p.On == "cylinder" && p.Offset != 0 && math.Abs(p.Offset)+od/2 < r {
		return 2 * r * math.Sin((math.Asin((p.Offset+od/2)/r)-math.Asin((p.Offset-od/2)/r))/2)
	}
	h := t.Head.Aft
	if p.On == "forward" {
		h = t.Head.Forward
	}
	if p.On != "cylinder" && p.Axis == "parallel" && h.Shape == "cone" && h.HalfAngle != nil {
		if s := math.Sin(*h.HalfAngle); s > 0 {
			return od / s
		}
	}
	return od
}

// padSize tells a pad that does not reach beyond its hole, one too narrow for the
// tube's own fillet, which lies on it, and a fillet at its edge higher than the edge.
func (r *reader) padSize(at string, p *Port) {
	pad, od := p.Pad, p.Tube.OutsideDiameter
	if pad.Thickness > 0 && pad.Leg > pad.Thickness {
		r.fault(join(at, "leg"), "the weld at the edge of the pad cannot be higher than the pad, %.4g mm", pad.Thickness*1e3)
	}
	const narrow = "the tube's own fillet, of leg %.4g mm, does not find room on the pad, which is %.4g mm wide beside the hole"
	if pad.Lip != nil && *pad.Lip < p.Weld.OutsideLeg {
		r.fault(join(at, "lip"), narrow, p.Weld.OutsideLeg*1e3, *pad.Lip*1e3)
	}
	if !(od > 0) || pad.OutsideDiameter == nil {
		return
	}
	along, key, way := *pad.OutsideDiameter, "outside_diameter", "along the meridian"
	if *pad.OutsideDiameter <= od {
		r.fault(join(at, key), "must be larger than the tube's")
		return
	}
	if p.Offset != 0 {
		way = "round the cylinder"
	} else if pad.Length != nil {
		along, key = *pad.Length, "length"
	}
	if hole := r.t.HoleLength(*p); along <= hole {
		r.fault(join(at, key), "must be larger than the hole, which is %.4g mm long %s", hole*1e3, way)
	} else if room := math.Min(along-hole, *pad.OutsideDiameter-od) / 2; room < p.Weld.OutsideLeg {
		r.fault(join(at, key), narrow, p.Weld.OutsideLeg*1e3, room*1e3)
	}
}

// portInsert checks the plate let into the wall round a port.
func (r *reader) portInsert(table string, p *Port) {
	if p.Insert == nil {
		return
	}
	at, in := join(table, "insert"), p.Insert
	r.onlyWithout(table, "insert", "pad", "the tube stands in an inserted plate, or has a pad on the wall")
	if hole := r.t.HoleLength(*p); hole > 0 && in.OutsideDiameter > 0 && in.OutsideDiameter <= hole {
		r.fault(join(at, "outside_diameter"), "must be larger than the hole, which is %.4g mm long", hole*1e3)
	}
	wall := r.t.Cylinder.Thickness
	if h, ok := r.headOf(p.On); ok {
		wall = h.Thickness
	}
	if in.Thickness > 0 && in.Thickness <= wall {
		r.fault(join(at, "thickness"), "must be more than the wall's; an insert no thicker than the wall is a patch, not a reinforcement")
	}
	if r.wallTolerance(at, p.On, &in.UnderTolerance) && in.Thickness > 0 && in.Thickness <= in.UnderTolerance+r.corrosionOf(p.On) {
		r.fault(join(at, "thickness"), "nothing of the insert is left after tolerance and corrosion")
	}
}

// InsertPlace returns where the butt weld round an insert lies: it crosses the
// largest stress of the wall somewhere along its circle.
func (t *Tank) InsertPlace(p Port) weld.Place {
	wall, od := t.Cylinder.Thickness, t.Cylinder.NominalInsideDiameter()+2*t.Cylinder.Thickness
	switch p.On {
	case "aft":
		wall, od = t.Head.Aft.Thickness, t.SeamInsideDiameter(t.Head.Aft)+2*t.Head.Aft.Thickness
	case "forward":
		wall, od = t.Head.Forward.Thickness, t.SeamInsideDiameter(t.Head.Forward)+2*t.Head.Forward.Thickness
	}
	return weld.Place{Category: "A", Longitudinal: true, Thickness: wall, OutsideDiameter: od}
}

// checkOverlaps tells tubes of one wall that would pass through each other, and
// holes that reach over an end of the cylinder. How near they may stand, and where a
// head ends, is assessed.
func (r *reader) checkOverlaps() {
	told := map[[2]int]bool{}
	for i, p := range r.t.Port {
		r.overEnd(p)
		for _, q := range r.t.Port[:i] {
			pair := [2]int{q.Position, p.Position}
			gap, ok := r.apart(p, q)
			if !ok || told[pair] || gap >= (p.Tube.OutsideDiameter+q.Tube.OutsideDiameter)/2 {
				continue
			}
			told[pair] = true
			table := fmt.Sprintf("port[%d]", p.Position)
			if p.Position == q.Position {
				r.fault(join(table, "count"), "so many tubes of %.4g mm overlap: their axes are %.4g mm apart; write a smaller count", p.Tube.OutsideDiameter*1e3, gap*1e3)
				continue
			}
			r.faultAt(r.where(table, r.at.key), table, "port %s overlaps port %s, at line %d: their axes are %.4g mm apart; the tubes alone need more than %.4g mm", p.Name, q.Name,
				r.where(fmt.Sprintf("port[%d]", q.Position), r.at.key).line, gap*1e3, (p.Tube.OutsideDiameter+q.Tube.OutsideDiameter)/2*1e3)
		}
	}
}

// overEnd tells a hole on the cylinder that reaches over its end.
func (r *reader) overEnd(p Port) {
	length, half := r.t.Cylinder.Length, p.Tube.OutsideDiameter/2
	if p.On != "cylinder" || p.Station == nil || !(length > 0) || *p.Station >= length {
		return
	}
	if *p.Station < half || *p.Station > length-half {
		r.fault(fmt.Sprintf("port[%d].station", p.Position), "the hole reaches over the cylinder's end; keep %.4g mm or more from it", half*1e3)
	}
}

// apart returns how far the axes of two tubes are from each other at the most [m],
// where that can be said without the shape of the wall: both parallel to the tank
// axis on one head, or both through the cylinder.
func (r *reader) apart(p, q Port) (float64, bool) {
	if p.On != q.On || !(p.Tube.OutsideDiameter > 0 && q.Tube.OutsideDiameter > 0) {
		return 0, false
	}
	turn := math.Abs(math.Remainder(p.Clock-q.Clock, 2*math.Pi))
	if p.On == "cylinder" {
		outside := r.t.Cylinder.NominalInsideDiameter()/2 + r.t.Cylinder.Thickness
		if outside > 0 && math.Max(math.Abs(p.Offset), math.Abs(q.Offset)) < outside {
			turn = math.Abs(math.Remainder(p.Clock+math.Asin(p.Offset/outside)-q.Clock-math.Asin(q.Offset/outside), 2*math.Pi))
		}
		if p.Station == nil || q.Station == nil || !(outside > 0) {
			return 0, false
		}
		return math.Hypot(*p.Station-*q.Station, 2*outside*math.Sin(turn/2)), true
	}
	if p.Radius == nil || q.Radius == nil || p.Axis != "parallel" || q.Axis != "parallel" {
		return 0, false
	}
	return math.Sqrt(math.Max(0, *p.Radius**p.Radius+*q.Radius**q.Radius-2**p.Radius**q.Radius*math.Cos(turn))), true
}
