package port

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// What to write where a port has no room: searched among the places that the checks
// themselves accept, so that the advice holds when it is followed.

const (
	places    = 400  // tried on either side of where the port stands
	stretches = 40   // tried from where two ports stand to where the wall ends
	fineDraw  = 1e-4 // to which a length of the advice is rounded [m]
	fineAngle = math.Pi / 1800
)

// least returns the least value between bad, where short is above zero, and good, where
// it is not, at which short is not above zero.
func least(short func(float64) float64, bad, good float64) float64 {
	for range 24 {
		if m := (bad + good) / 2; short(m) <= 0 {
			good = m
		} else {
			bad = m
		}
	}
	return good
}

// onward rounds v to whole steps of unit away from the place from.
func onward(v, from, unit float64) float64 {
	if v < from {
		return math.Floor(v/unit) * unit
	}
	return math.Ceil(v/unit) * unit
}

// roomAdvice says where in its part the port has room, nearest to where it stands, and
// whether there is such a place.
func (p Port) roomAdvice(w Wall) (advice string, found bool) {
	from, most, key := p.Radius, w.Radius, "radius"
	move := func(v float64) Port { q := p; q.Radius = v; return q }
	if w.Surface == Cylinder {
		from, most, key = p.Station, w.Length, "station"
		move = func(v float64) Port { q := p; q.Station = v; return q }
	}
	short := func(v float64) float64 { return move(v).shortOfRoom(w) }
	step := most / places
	for k := 1.0; k <= places; k++ {
		for _, way := range []float64{-step, step} {
			at := from + k*way
			if !(at >= 0 && at <= most && short(at) <= 0) {
				continue
			}
			to := onward(least(short, at-way, at), from, fineDraw)
			if !(short(to) <= 0) { // not reached: room under 0.1 mm long, which the rounding passes over
				to = at
			}
			return fmt.Sprintf("there is room at %s = \"%.5g mm\"", key, to*1e3), true
		}
	}
	return "no " + key + " of this part has the room: take a smaller tube, pad or insert", false
}

// shortOfRoom returns by how much the port's need exceeds the room beside it on its
// worst side [m]; infinite where no port may stand.
func (p Port) shortOfRoom(w Wall) float64 {
	c, err := p.Chords(w)
	if err != nil {
		return inf
	}
	worst := -inf
	for _, side := range p.sides(w, c) {
		worst = math.Max(worst, p.shortOn(w, side, p.beside(w)))
	}
	return worst
}

// Advise adds to a [CheckSpacing] that is not satisfied whom the port stands too near to
// and what to write: least clocks, radius or stations apart. Other results it returns as
// they are.
func Advise(spacing check.Result, w Wall, ports []Member, at int) check.Result {
	if spacing.Status() != check.NotSatisfied || at < 0 || at >= len(ports) {
		return spacing
	}
	m := ports[at]
	r, err := m.Port.Area(w, m.Load, m.Strengths)
	if err != nil {
		return spacing
	}
	worst, nearest := -inf, m
	for i, other := range ports {
		if qc, err := other.Port.Chords(w); i != at && err == nil {
			if u := governing(r.neighbour(w, other.Port, qc, leastRatio(ports))).utilisation(); u > worst {
				worst, nearest = u, other
			}
		}
	}
	spacing.Advice = r.nearAdvice(nearest, leastRatio(ports))
	return spacing
}

// nearAdvice says what parts a port from another of its wall so far that every comparison
// of the pair holds, ratio as in neighbour. The loads are taken as they are where it stands.
func (r AreaReport) nearAdvice(other Member, ratio float64) string {
	w, p, q := r.Wall, r.Port, other.Port
	short := func(p, q Port) float64 { return r.shortApart(p, q, ratio) }
	var ways []string
	turned := func(Δ float64) float64 {
		t := q
		t.Clock = p.PierceClock(w) + q.Clock - q.PierceClock(w) + Δ
		return short(p, t)
	}
	now := turn(p.PierceClock(w), q.PierceClock(w))
	if turned(math.Pi) <= 0 {
		if Δ := math.Min(math.Pi, onward(least(turned, now, math.Pi), now, fineAngle)); turned(Δ) <= 0 {
			way := fmt.Sprintf("their clocks %.4g deg or more apart", Δ*180/math.Pi)
			if n := math.Floor(2 * math.Pi / Δ * (1 + 1e-9)); n >= 2 {
				way += fmt.Sprintf(" (an even ring of %.0f at the most)", n)
			}
			ways = append(ways, way)
		}
	}
	if moved, from, most, key := r.moved(q); moved != nil {
		at := func(v float64) float64 { p, q := moved(v); return short(p, q) }
		for k := 1.0; k <= stretches; k++ {
			v := from + k*(most-from)/stretches
			if at(v) > 0 {
				continue
			}
			if v = onward(least(at, v-(most-from)/stretches, v), from, fineDraw); at(v) <= 0 {
				ways = append(ways, fmt.Sprintf(key, v*1e3))
			}
			break
		}
	}
	if len(ways) == 0 {
		return "nothing but smaller tubes, thicker metal or smaller pads parts it from port " + q.Name
	}
	return "it stands too near to port " + q.Name + ": write " + strings.Join(ways, ", or ")
}

// moved returns how two ports are moved apart otherwise than by their clocks: both on a
// wider circle, on the cylinder by their stations; from where to where, and what to write.
// None where they do not share the circle.
func (r AreaReport) moved(q Port) (move func(float64) (Port, Port), from, most float64, key string) {
	p, w := r.Port, r.Wall
	if w.Surface == Cylinder {
		apart := q.Station - p.Station
		return func(v float64) (Port, Port) {
			t := q
			t.Station = p.Station + math.Copysign(v, apart)
			return p, t
		}, math.Abs(apart), math.Max(p.Station, w.Length-p.Station), "stations %.5g mm or more apart"
	}
	if p.Radius != q.Radius || p.Radius == 0 {
		return nil, 0, 0, ""
	}
	return func(v float64) (Port, Port) {
		a, b := p, q
		a.Radius, b.Radius = v, v
		return a, b
	}, p.Radius, w.edge(), "radius = \"%.5g mm\" or more for both"
}

// shortApart returns by what share the worst comparison of two ports fails [-], not above
// zero where all hold; infinite where one of them may not stand.
func (r AreaReport) shortApart(p, q Port, ratio float64) float64 {
	at, err := p.Area(r.Wall, r.Load, r.Strengths)
	if err != nil {
		return inf
	}
	qc, err := q.Chords(r.Wall)
	if err != nil {
		return inf
	}
	return governing(at.neighbour(r.Wall, q, qc, ratio)).utilisation() - 1
}
