package port

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// A Member is a port with its load and strengths, one of several in a wall; of a
// neighbour only the port itself counts.
type Member struct {
	Port      Port
	Load      Load
	Strengths Strengths
	Report    *AreaReport // what [Port.Area] says of them, where it is at hand; nil: it is asked
}

// CentreDistance returns the distance [m] between two ports of one wall and the
// angle w [rad] between the line of centres and the meridian at each:
//
//	cylinder  √[(Δz)² + (R Δθ)²]
//	cone      √[s1² + s2² − 2 s1 s2 cos(Δθ sin α)]   in the flat, s = e/sin α
//	dome      the straight chord between the centres, shorter than the arc
//
// Source: computed; ring values in spacing_test.go.
func CentreDistance(w Wall, p, q Port) (distance, wp, wq float64) {
	Δ := turn(p.PierceClock(w), q.PierceClock(w))
	if w.Surface == Cone && (p.Radius > w.edge() || q.Radius > w.edge()) { // in the knuckle: as on a dome
		return throughSpace(w, p, q, Δ)
	}
	switch w.Surface {
	case Cylinder:
		z, y := q.Station-p.Station, w.Radius*Δ
		angle := math.Atan2(y, z)
		return math.Hypot(z, y), angle, math.Pi - angle
	case Cone:
		sin := math.Sin(w.HalfApex)
		s1, s2, ω := p.Radius/sin, q.Radius/sin, Δ*sin
		toward := func(a, b float64) float64 { return math.Atan2(b*math.Sin(ω), b*math.Cos(ω)-a) }
		distance = math.Sqrt(s1*s1 + s2*s2 - 2*s1*s2*math.Cos(ω))
		return distance, toward(s1, s2), toward(s2, s1)
	}
	return throughSpace(w, p, q, Δ)
}

// throughSpace is [CentreDistance] by the straight chord, Δ the angle between both
// round the tank axis [rad].
func throughSpace(w Wall, p, q Port, Δ float64) (distance, wp, wq float64) {
	rise := w.height(q.Radius) - w.height(p.Radius)
	toward := func(a, b, rise float64) float64 { // tangent: (cos φ, 0, −sin φ) outboard
		φ := w.normalAngle(a)
		out := (b*math.Cos(Δ)-a)*math.Cos(φ) - rise*math.Sin(φ)
		return math.Atan2(b*math.Sin(Δ), out)
	}
	level := math.Sqrt(math.Max(0, p.Radius*p.Radius+q.Radius*q.Radius-2*p.Radius*q.Radius*math.Cos(Δ)))
	return math.Hypot(level, rise), toward(p.Radius, q.Radius, rise), toward(q.Radius, p.Radius, -rise)
}

// along returns the chord [m] of a hole that is 2a wide across, in a plane at w
// [rad] to the meridian: 2a/√(sin²β cos² w + sin² w), tangent plane.
func along(width, φ, w float64) float64 {
	return width / math.Hypot(math.Cos(φ)*math.Cos(w), math.Sin(w))
}

// ShareLimit returns what is left of the limit L1 [m] of a port when its limits
// and a neighbour's, L2, overlap at the centre distance p [m]: the overlap is
// shared in proportion to the chords d1 and d2 along the line of centres:
//
//	o = L1 + L2 − p > 0:  L1 − o d2/(d1 + d2)
//
// Source: ASME VIII-1 UG-42(a) as quoted in an engineering forum (read).
func ShareLimit(l1, l2, d1, d2, p float64) float64 {
	if o := l1 + l2 - p; !(o <= 0) {
		return l1 - o*d2/(d1+d2)
	}
	return l1
}

// CheckSpacing is port.NAME/spacing of the port at index at among the ports of
// one wall. For every neighbour, in the plane through both centres:
//
//	(C1 + C2)/2 + legs ≤ s, pads by their own edge          they do not touch
//	4/3 (two) or 3/2 (more) of the mean of d1 and d2 ≤ s    metal between them counts
//	limits that overlap: the area rule with the share of each, whole and each side
//	walls that overlap by the pressure-area method: p ≤ p_max with the share of each
//
// with the chords d(w), C(w) along the line of centres, their distance s along the wall [m].
// Limits that do not overlap leave the port's own area check to speak. Shown beside
// each pair, deciding nothing: the ligament's efficiency of plain holes there, by
// [DiagonalEfficiency] or 1 − d/s, and how far apart exempt openings must stand.
//
// Source: ASME VIII-1 UG-42 (sharing read, the least distances recalled).
func CheckSpacing(w Wall, ports []Member, at int) check.Result {
	return Among(w, ports).CheckSpacing(at)
}

// Neighbours are the ports of one wall, their chords found once for all pairs.
type Neighbours struct {
	w      Wall
	ports  []Member
	chords []Chords
	errs   []error
}

// Among gathers the ports of a wall.
func Among(w Wall, ports []Member) *Neighbours {
	n := &Neighbours{w, ports, make([]Chords, len(ports)), make([]error, len(ports))}
	for i, m := range ports {
		n.chords[i], n.errs[i] = m.Port.Chords(w)
	}
	return n
}

// CheckSpacing is [CheckSpacing] of the port at index at.
func (n *Neighbours) CheckSpacing(at int) check.Result {
	w, ports := n.w, n.ports
	if at < 0 || at >= len(ports) {
		return check.NotMade("port/spacing", "Ports: distance apart", fmt.Errorf("there is no port %d among %d", at, len(ports)))
	}
	m := ports[at]
	id, title := "port."+m.Port.Name+"/spacing", "Port "+m.Port.Name+": distance to its neighbours"
	if len(ports) == 1 {
		return check.NotApplicableTo(id, title, "no other port in this part")
	}
	r := m.Report
	if r == nil {
		found, err := m.Port.Area(w, m.Load, m.Strengths)
		if err != nil {
			return check.NotMade(id, title, err)
		}
		r = &found
	}
	res := check.Result{ID: id, Title: title, Formula: "(C_1 + C_2)/2 + legs ≤ s; 4/3 or 3/2 (d_1 + d_2)/2 ≤ s; overlapping limits shared: ΣA ≥ A in the plane of centres; p ≤ p_max", Factor: 1,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2007 to 2019", Where: "sharing of UG-42(a) read; least distances recalled, confirm", How: check.Memory}}
	ratio := leastRatio(ports)
	var all []reading
	var shown []check.Quantity
	for i, other := range ports {
		if i == at {
			continue
		}
		if n.errs[i] != nil {
			return check.NotMade(id, title, fmt.Errorf("beside port %s: %w", other.Port.Name, n.errs[i]))
		}
		shown = append(shown, r.beside(w, other.Port, n.chords[i], len(ports) > 2)...)
		all = append(all, r.neighbour(w, other.Port, n.chords[i], ratio)...)
	}
	worst := governing(all)
	res.Inputs = append(numbers(all), shown...)
	res.Demand, res.Capacity = worst.demand, worst.capacity
	res.Note = strings.Join([]string{"governs: " + worst.what, "metal between two ports is counted once"}, "; ")
	return res
}

// leastRatio returns how many times the mean bore chord two ports must stand apart that
// metal between them counts [-].
func leastRatio(ports []Member) float64 {
	if len(ports) > 2 {
		return 1.5
	}
	return 4.0 / 3
}

// beside returns what is shown of a pair and decides nothing.
func (r *AreaReport) beside(w Wall, q Port, qc Chords, several bool) []check.Quantity {
	dist, wp, wq := CentreDistance(w, r.Port, q)
	d := (r.Chords.boreAlong(wp) + qc.boreAlong(wq)) / 2
	in := []check.Quantity{check.Rad("w", "line of centres to the meridian, port "+q.Name, wp)}
	if e, err := w.ligament(d, dist, wp); err == nil {
		in = append(in, check.Num("E", "ligament of plain holes, shown only, port "+q.Name, e))
	}
	if x, err := ExemptDistance(w.Surface, several, r.Port.OutsideDiameter-2*r.Port.TubeWall, q.OutsideDiameter-2*q.TubeWall, wp); err == nil {
		in = append(in, check.M("s_ex", "distance of exempt openings, shown only, port "+q.Name, x))
	}
	return in
}

// neighbour compares one pair, qc the chords of the other.
func (r *AreaReport) neighbour(w Wall, q Port, qc Chords, ratio float64) []reading {
	p := r.Port
	dist, wp, wq := CentreDistance(w, p, q)
	beside := "port " + q.Name
	d1, d2 := r.Chords.boreAlong(wp), qc.boreAlong(wq)
	c1, c2 := r.Chords.outsideAlong(wp), qc.outsideAlong(wq)
	apart := check.M("s", "centre distance, "+beside, dist)
	all := []reading{
		{"ports touch, " + beside, check.M("need", "half outside chords or pads, and welds, "+beside, p.half(c1, wp)+q.half(c2, wq)), apart},
		{"no metal counts between them, " + beside, check.M("need", "multiple of the mean bore chord, "+beside, ratio*(d1+d2)/2), apart},
	}
	l1, l2 := p.alongLimit(d1, w), q.alongLimit(d2, w)
	if share := ShareLimit(l1, l2, d1, d2, dist); share != l1 {
		all = append(all, r.sharedArea(beside, share, d1, c1, wp)...)
	}
	return append(all, r.sharedPressure(q, beside, dist, [2]float64{d1, d2}, [2]float64{c1, c2}, wp)...)
}

// sharedArea is the area rule in the plane through the centres, at angle [rad] to
// the meridian, with what is left of the limit toward the neighbour [m]; d and c
// are the chords there [m].
func (r *AreaReport) sharedArea(beside string, share, d, c, angle float64) (all []reading) {
	p, w, s := r.Port, r.Wall, r.Strengths
	cut := p.cuts(w)
	toward, away := cut.toward(angle), cut.toward(angle+math.Pi)
	pl := r.plane(section{name: "centres", bore: d, outside: c, sinBeta: r.Chords.width() / d, angle: angle, factor: r.factor(math.Sin(angle)),
		resultant: r.Load.mostAsked(), efficiency: math.Min(s.EfficiencyMeridional, s.EfficiencyTransverse),
		sides: [2]Areas{{Limit: math.Min(share, toward), HalfBore: d / 2, HalfOutside: c / 2}, {Limit: away, HalfBore: d / 2, HalfOutside: c / 2}}})
	for _, part := range []struct {
		name string
		a    Areas
	}{{"whole", pl.Whole}, {"facing side", pl.Outboard}, {"far side", pl.Inboard}} {
		all = append(all, r.compare(pl, part.a, part.name+", plane through "+beside))
	}
	return all
}

// sharedPressure is the pressure-area method on the side toward a neighbour at
// the distance dist [m], its wall cut at the line that both share; none where the
// method does not reach or both are apart: dist ≥ a1 + a2 + lso1 + lso2. The
// areas of pressure are those of the plane of full hoop stress, on the safe side.
//
// Source: EN 13445-3 clause 9, isolated openings, recalled; shared as by UG-42.
func (r *AreaReport) sharedPressure(q Port, beside string, dist float64, d, c [2]float64, angle float64) []reading {
	if len(r.Pressure) == 0 {
		return nil
	}
	w := r.Wall
	l1, l2 := c[0]/2+r.Port.wallLength(w), c[1]/2+q.wallLength(w)
	share := ShareLimit(l1, l2, d[0], d[1], dist)
	if share == l1 {
		return nil
	}
	if share <= 0 {
		return nil // they touch, which is compared by itself
	}
	if !(share > c[0]/2) {
		return []reading{{"no wall is left toward " + beside, check.M("C/2", "half outside chord, "+beside, c[0]/2), check.M("l", "share of the wall, "+beside, share)}}
	}
	side := r.Meridional.Outboard
	side.HalfOutside, side.HalfPad = c[0]/2, r.Port.padReach(c[0]/2, angle)
	x := r.pressureSide("toward "+beside, math.Cos(angle), c[0]/2, share, side)
	what := "pressure-area method, toward " + beside
	return []reading{{what, check.Pa("p", "pressure at the port, "+beside, r.Load.Pressure), check.Pa("p_max", "pressure carried toward "+beside, x.Capacity)}}
}

// alongLimit returns L of a port along the wall where its bore's chord is d [m].
func (p Port) alongLimit(d float64, w Wall) float64 {
	return math.Max(d, d/2+p.TubeWall+w.Thickness)
}

// wallLength returns l_so of the pressure-area method [m].
func (p Port) wallLength(w Wall) float64 {
	return math.Sqrt((2*p.curvature(w) + w.Thickness) * w.Thickness)
}

// half returns the half width [m] a port takes along the wall at w [rad] to the
// meridian: outside half-chord and weld, its pad and the pad's weld, or its insert.
func (p Port) half(chord, w float64) float64 {
	reach := chord/2 + p.OutsideLeg
	if p.Pad != nil {
		reach = math.Max(reach, p.padReach(chord/2, w)+p.Pad.Leg)
	}
	if p.Insert != nil {
		reach = math.Max(reach, p.Insert.OutsideDiameter/2)
	}
	return reach
}

// toward returns the limit in a direction at w [rad] to outboard, on the safe
// side: the meridional distance where the direction has an outboard part, else
// the lesser of the inboard and the transverse one.
func (l limits) toward(w float64) float64 {
	if math.Cos(w) > 1e-9 {
		return math.Min(l.outboard, l.transverse)
	}
	if math.Cos(w) < -1e-9 {
		return math.Min(l.inboard, l.transverse)
	}
	return l.transverse
}
