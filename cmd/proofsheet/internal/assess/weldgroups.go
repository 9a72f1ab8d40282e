package assess

import (
	"math"

	"proofsheet/heads"
	"proofsheet/heads/port"
)

// distance returns how far the centre lines of two welds are apart along the
// wall, never more than they are [m]; infinite where no wall holds both.
func (m *model) distance(a, b *weldLine) float64 {
	if a.form > b.form {
		a, b = b, a
	}
	d := math.Inf(1)
	switch {
	case b.form == portWeld:
		d = m.portDistance(a, b)
	case b.form == tipWeld && a.head == b.head && a.form == girthWeld:
		d = m.alongMeridian(b.head, b.head.in.Tip.Diameter/2, math.Inf(1))
	case b.form == tipWeld && a.head == b.head && a.form == portWeld:
		d = m.alongMeridian(b.head, b.head.in.Tip.Diameter/2, given(a.port.in.Radius)) - a.half(a.port.chords.OutsideMeridional)
	case b.form == tipWeld && a.head == b.head: // a seam of the head ends there
		d = 0
	case a.form == longWeld && b.form == girthWeld:
		d = 0
	case a.form == longWeld && b.form == segmentWeld && (a.unsaid || b.unsaid):
		d = 0
	case a.form == longWeld && b.form == segmentWeld: // nearest where both end
		d = m.cyl.mid() * math.Abs(math.Remainder(a.clock-b.clock, 2*math.Pi))
	case a.form == girthWeld && b.form == girthWeld && (a.unsaid || b.unsaid):
		d = 0
	case a.form == girthWeld && b.form == girthWeld:
		d = math.Abs(a.z - b.z)
	case a.form == girthWeld && b.form == segmentWeld && a.head == b.head:
		d = 0
	}
	return math.Max(0, d)
}

// portDistance returns the same between a weld and the outermost weld of a port.
func (m *model) portDistance(a, p *weldLine) float64 {
	c := p.port.chords
	across, along := p.half(2*max(c.OutsideSides[0], c.OutsideSides[1])), p.half(c.OutsideMeridional)
	on := func(w *weldLine) bool { return p.head != nil && w.head == p.head }
	switch {
	case a.unsaid && (a.form == longWeld && p.head == nil || a.form == segmentWeld && on(a)):
		return 0
	case a.form == longWeld && p.head == nil, a.form == segmentWeld && on(a):
		return p.port.port.SeamDistance(p.port.wall, a.clock) - math.Max(across, along)
	case a.form == girthWeld && p.head == nil && a.unsaid:
		return 0
	case a.form == girthWeld && p.head == nil:
		return math.Abs(a.z-p.z) - along
	case a.form == girthWeld && on(a):
		return m.alongMeridian(p.head, given(p.port.in.Radius), math.Inf(1)) + p.head.in.StraightFlange - math.Max(along, c.OutsideOutboard)
	case a.form == portWeld && a.port.host.name == p.port.host.name:
		apart, _, _ := port.CentreDistance(p.port.wall, a.port.port, p.port.port)
		q := a.port.chords
		return apart - math.Max(across, along) - math.Max(a.half(2*max(q.OutsideSides[0], q.OutsideSides[1])), a.half(q.OutsideMeridional))
	}
	return math.Inf(1)
}

// alongMeridian returns the length of the mid-surface of a head between two
// radii, or to its seam plane [m], by straight pieces, which are never longer.
func (m *model) alongMeridian(h *headPart, from, to float64) float64 {
	const pieces = 600
	var pts []heads.Point
	for _, p := range h.nominal0.Points(pieces, h.nominal/2) {
		if p.R >= from && p.R <= to {
			pts = append(pts, p)
		}
	}
	d := 0.0
	for i := 1; i < len(pts); i++ {
		d += math.Hypot(pts[i].X-pts[i-1].X, pts[i].R-pts[i-1].R)
	}
	return d
}

// A zoneGroup is welds whose zones have grown together, or one by itself.
type zoneGroup struct {
	welds []*weldLine
	pairs []zonePair // closer than both widths
}

type zonePair struct {
	a, b *weldLine
	d    float64 // [m]
}

// unsure reports whether the two meet only where a place that is not given says so: seams
// along and round a shell meet wherever they lie.
func (p zonePair) unsure() bool {
	along := func(w *weldLine) bool { return w.form == longWeld || w.form == segmentWeld }
	return (p.a.unsaid || p.b.unsaid) && !(along(p.a) && p.b.form == girthWeld || along(p.b) && p.a.form == girthWeld)
}

// merged gathers welds closer along the wall than the sum of their widths.
func (m *model) merged(all []*weldLine) []zoneGroup {
	group := map[*weldLine]int{}
	for i, w := range all {
		group[w] = i
	}
	var pairs []zonePair
	for i, a := range all {
		for _, b := range all[i+1:] {
			if d := m.distance(a, b); !(d >= a.width+b.width) { // not a number: taken as met
				pairs = append(pairs, zonePair{a, b, d})
				a.meets, b.meets = append(a.meets, b), append(b.meets, a)
				from, to := group[b], group[a]
				for w, g := range group {
					if g == from {
						group[w] = to
					}
				}
			}
		}
	}
	var out []zoneGroup
	for i := range all {
		var g zoneGroup
		for _, w := range all {
			if group[w] == i {
				g.welds = append(g.welds, w)
			}
		}
		for _, p := range pairs {
			if group[p.a] == i {
				g.pairs = append(g.pairs, p)
			}
		}
		if g.welds != nil {
			out = append(out, g)
		}
	}
	return out
}
