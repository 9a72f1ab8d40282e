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
// Lengths in [m]. A hole over the apex, rim, seam or tip, and a tube over 60
// degrees off the wall's normal, is not assessed and says why. A hole that
// reaches into a knuckle or outside 0.8 of an ellipsoid's diameter, and a seam
// nearer than 5 t to the port's weld, is a caution.
//
// Source: European method, EN 13445-3 clause 9, distance to a junction, recalled;
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
	res := check.Result{ID: id, Title: title, Formula: "C/2 + w ≤ L, w = max(0.2 √((2 r_is + t) t), 3 t), 3 t in a flat wall; a pad: D_p/2 + leg ≤ L", Factor: 1,
		Inputs: []check.Quantity{check.M("t", "least wall", w.Thickness), check.M("w", "bare wall beside the hole", beside)},
		Source: check.Source{Doc: "European method, recalled; confirm", Where: "distance of an opening to a junction", How: check.Memory}}
	for _, side := range p.sides(w, c) {
		need, what := p.needs(side, beside)
		res.Inputs = append(res.Inputs, check.M("C/2", "half outside chord, "+side.name, side.half), check.M("L", "distance to the part's end, "+side.name, side.distance))
		if res.Demand.Unit == "" || need-side.distance > res.Demand.Value-res.Capacity.Value {
			res.Demand, res.Capacity = check.M("need", what+", "+side.name, need), check.M("L", "distance to the part's end, "+side.name, side.distance)
		}
		if toe := side.half + p.OutsideLeg; side.distance-toe < 5*w.Thickness {
			notes = append(notes, fmt.Sprintf("the port's weld stands nearer than five walls to the part's end, %s", side.name))
		}
	}
	if res.Status() == check.NotSatisfied {
		advice, _ := p.roomAdvice(w)
		notes = append([]string{advice}, notes...)
	}
	res.Note = strings.Join(notes, "; ")
	return res
}

// beside returns the bare wall asked beside a hole [m].
func (p Port) beside(w Wall) float64 {
	if w.Surface == Flat {
		return 3 * w.Thickness
	}
	return math.Max(3*w.Thickness, 0.2*math.Sqrt((2*p.curvature(w)+w.Thickness)*w.Thickness))
}

// needs returns the room that the port wants on a side [m], and for what.
func (p Port) needs(side reachSide, beside float64) (need float64, what string) {
	need, what = side.half+beside, "hole and wall beside it"
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
	name           string
	half, distance float64 // half outside chord, distance along the wall to the part's end [m]
}

// sides returns the room outboard and, where the part ends there, inboard.
func (p Port) sides(w Wall, c Chords) []reachSide {
	e := p.Radius
	if w.Surface == Cylinder {
		return []reachSide{{"forward", c.OutsideOutboard, w.Length - p.Station}, {"aft", c.OutsideInboard, p.Station}}
	}
	end := w.edge()
	if p.inKnuckle(w) { // the part goes on to the end of its knuckle
		end = w.Radius
	}
	all := []reachSide{{"outboard", c.OutsideOutboard, w.arc(e, end)}}
	if w.Tip > 0 || w.Surface == Cone {
		all = append(all, reachSide{"inboard", c.OutsideInboard, w.arc(w.Tip, e)})
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
