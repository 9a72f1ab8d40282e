package port

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// CheckPlacement is port.NAME/placement: hole, pad and the bare wall beside them
// against the distance along the wall to the edge, seam or tip of the part, on
// the side where least is left:
//
//	C/2 + max(0.2 √[(2 ris + t) t], 3 t) ≤ distance,  Dp/2 + leg ≤ distance,
//	s_i of an inserted plate + max(…) ≤ distance
//
// A flat cover that is bolted on ends in no weld, and its plate goes on past the bore.
// There the port keeps from the seal, which lies inside the bolt holes: all metal that
// counts round the hole, and a wall beside the weld:
//
//	max(d, C/2 + leg + t) ≤ distance to the seal
//
// Lengths in [m]. A hole over the apex, rim, seam or tip, and a tube over 60
// degrees off the wall's normal, is not assessed and says why. A hole that
// reaches into a knuckle or outside 0.8 of an ellipsoid's diameter, and a seam
// nearer than 5 t to the port's weld, is a caution.
//
// Source: European method, EN 13445-3 clause 9, distance to a junction, recalled; for a
// flat wall, which it does not cover, 3 t by common practice; on a bolted cover the
// limits of ASME VIII-1 UG-40, d or d/2 + t + t_n, the wall beside the weld practice.
// 5 t common practice.
func (p Port) CheckPlacement(w Wall) check.Result {
	id, title := "port."+p.Name+"/placement", "Port "+p.Name+": place in its part"
	c, err := p.Chords(w)
	if err != nil {
		if errors.Join(w.valid(), p.valid()) == nil {
			if advice, found := p.roomAdvice(w); found || p.inside(w) != nil {
				err = fmt.Errorf("%w; %s", err, advice)
			}
		}
		return check.NotMade(id, title, err)
	}
	beside := p.beside(w)
	notes := c.Cautions
	all, at := p.sides(w, c), 0
	for i, side := range all {
		if p.shortOn(w, side, beside) > p.shortOn(w, all[at], beside) {
			at = i
		}
		if bare := side.distance - side.half - p.OutsideLeg; bare < 5*w.Thickness && w.Seal == 0 {
			notes = append(notes, fmt.Sprintf("caution, beside what is asked: from the port's weld to the weld at %s there are %.4g mm, under 5 t = %.4g mm, which practice keeps between two welds", side.end, math.Max(0, bare)*1e3, 5e3*w.Thickness))
		}
	}
	res := p.placementOn(w, all[at], beside)
	res.ID, res.Title = id, title
	for i, side := range all {
		if i != at {
			need, _ := p.needs(w, side, beside)
			res.Inputs = append(res.Inputs, check.M("need′", "the same, "+side.name, need), check.M("L′", "distance to "+side.end, side.distance))
		}
	}
	if res.Status() == check.NotSatisfied {
		res.Advice, _ = p.roomAdvice(w)
	}
	res.Note = strings.Join(notes, "; ")
	return res
}

// placementOn returns the check of one side, by its own formula.
func (p Port) placementOn(w Wall, side reachSide, beside float64) check.Result {
	need, what := p.needs(w, side, beside)
	half, end := check.M("C/2", "half outside chord", side.half), check.M("L", "distance to "+side.end, side.distance)
	res := check.Result{Factor: 1, Demand: check.M("need", what+", "+side.name, need), Capacity: end,
		Inputs: []check.Quantity{check.M("t", "least wall", w.Thickness)},
		Source: check.Source{Doc: "European method, recalled; confirm", Where: "distance of an opening to a junction", How: check.Memory}}
	wall, hole := "w = max(0.2 √((2 r_is + t) t), 3 t); ", "C/2 + w"
	switch {
	case w.Seal > 0:
		wall, hole = "", "max(d, C/2 + leg + t)"
		res.Inputs = append(res.Inputs, check.M("d", "bore", p.bore()), check.M("leg", "outside fillet", p.OutsideLeg))
		res.Source = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "limits of metal that counts, UG-40, kept inside the seal, recalled; a wall beside the weld, practice; confirm", How: check.Memory}
		if p.Insert != nil {
			wall = "w = 3 t; "
			res.Inputs = append(res.Inputs, check.M("w", "bare wall beside the insert", beside))
		}
	case w.Surface == Flat:
		wall = "w = 3 t; "
		res.Inputs = append(res.Inputs, check.M("w", "bare wall beside the hole", beside))
	default:
		res.Inputs = append(res.Inputs, check.M("r_is", "inside radius of curvature", p.curvature(w)), check.M("w", "bare wall beside the hole", beside))
	}
	switch {
	case p.Insert != nil:
		hole = "D_i/2 + w"
		half = check.M("D_i", "diameter of the insert", p.Insert.OutsideDiameter)
	case p.Pad != nil:
		hole = "max(" + hole + ", P + l_p)"
		res.Inputs = append(res.Inputs, check.M("P", "reach of the pad", p.padReach(side.half, 0)), check.M("l_p", "leg round the pad", p.Pad.Leg))
	}
	res.Formula = wall + "need = " + hole + " ≤ L"
	res.Inputs = append(res.Inputs, half, end)
	return res
}

// bore returns the inside diameter of the tube, corroded [m].
func (p Port) bore() float64 { return p.OutsideDiameter - 2*p.TubeWall }

// beside returns the bare wall asked beside a hole [m].
func (p Port) beside(w Wall) float64 {
	if w.Surface == Flat {
		return 3 * w.Thickness
	}
	return math.Max(3*w.Thickness, 0.2*math.Sqrt((2*p.curvature(w)+w.Thickness)*w.Thickness))
}

// shortOn returns by how much the need on a side exceeds the room there [m].
func (p Port) shortOn(w Wall, side reachSide, beside float64) float64 {
	need, _ := p.needs(w, side, beside)
	return need - side.distance
}

// needs returns the room that the port wants on a side [m], and for what.
func (p Port) needs(w Wall, side reachSide, beside float64) (need float64, what string) {
	need, what = side.half+beside, "hole and wall beside it"
	if w.Seal > 0 {
		need, what = math.Max(p.bore(), side.half+p.OutsideLeg+w.Thickness), "hole, its weld and the metal that counts"
	}
	if p.Pad != nil {
		if v := p.padReach(side.half, 0) + p.Pad.Leg; v > need {
			need, what = v, "pad and its weld"
		}
	}
	if p.Insert != nil {
		need, what = p.Insert.OutsideDiameter/2+beside, "insert and wall beside it"
	}
	return need, what
}

// A reachSide is the room on one side of a port.
type reachSide struct {
	name, end      string  // of the side; what the part ends in there
	half, distance float64 // half outside chord, distance along the wall to the end [m]
}

// sides returns the room outboard and, where the part ends there, inboard.
func (p Port) sides(w Wall, c Chords) []reachSide {
	e := p.Radius
	if w.Surface == Cylinder {
		return []reachSide{{"forward", "the part's end, forward", c.OutsideOutboard, w.Length - p.Station}, {"aft", "the part's end, aft", c.OutsideInboard, p.Station}}
	}
	end, name, at := w.edge(), "outboard", "the part's end, outboard"
	switch {
	case w.Seal > 0:
		end, name, at = w.Seal, "towards the seal", "the seal"
	case p.inKnuckle(w): // the part goes on to the end of its knuckle
		end = w.Radius
	}
	all := []reachSide{{name, at, c.OutsideOutboard, w.arc(e, end)}}
	if w.Tip > 0 || w.Surface == Cone {
		all = append(all, reachSide{"inboard", "the part's end, inboard", c.OutsideInboard, w.arc(w.Tip, e)})
	}
	return all
}

// SeamDistance returns the shortest distance along the wall [m] between the tube
// axis and a seam that runs along a meridian (along the cylinder) at the given
// angle round the tank axis [rad]. A seam nearer than half the transverse outside
// chord passes through the hole.
//
// On a cone it is s sin(Δθ sin α) in the flat, s the slant distance; on the
// cylinder R Δθ; on a dome the straight e sin Δθ, which is shorter than the arc.
// Past a right angle the apex is nearest, at s or e.
//
// Source: computed.
func (p Port) SeamDistance(w Wall, clock float64) float64 {
	Δ := turn(p.PierceClock(w), clock)
	switch w.Surface {
	case Cylinder:
		return w.Radius * Δ
	case Cone:
		sin := math.Sin(w.HalfApex)
		return p.Radius / sin * math.Sin(math.Min(Δ*sin, math.Pi/2))
	}
	return p.Radius * math.Sin(math.Min(Δ, math.Pi/2))
}

// turn returns the angle between two clocks [rad], 0 to π.
func turn(a, b float64) float64 { return math.Abs(math.Remainder(a-b, 2*math.Pi)) }
