package assess

import (
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// section describes the tank for the drawing: a cut along the axis.
func (r *run) section() *report.Section {
	L, R, t := r.t.Cylinder.Length, r.cyl.radius, r.cyl.nominal
	lo, hi := r.in.Bounds()
	s := &report.Section{}
	s.Outlines = append(s.Outlines, r.headOutline(r.aft), report.Outline{Part: "cylinder",
		Inside:  []report.Point{{Z: 0, R: R}, {Z: L, R: R}},
		Outside: []report.Point{{Z: 0, R: R + t}, {Z: L, R: R + t}}}, r.headOutline(r.fwd))
	s.Rings = r.ringOutlines()
	r.covers(s)
	for _, p := range r.ports {
		s.Ports = append(s.Ports, r.portOutline(p))
	}
	seam := func(name string, z float64) {
		s.Seams = append(s.Seams, report.SeamMark{Name: name, At: report.Point{Z: z, R: R + t}})
	}
	if r.aft.seam != nil {
		seam(r.aft.seam.Name, 0)
	}
	for _, z := range r.t.Cylinder.GirthStations {
		seam(r.t.Cylinder.GirthSeam, z)
	}
	if r.fwd.seam != nil {
		seam(r.fwd.seam.Name, L)
	}
	s.Lengthwise = r.lengthwise()
	worst, at := r.worstPlace(s.Ports)
	s.Worst = at
	for _, c := range r.cases {
		switch l := r.level(c); {
		case len(l.Points) < 2:
		case at != nil && c.name == worst.Case:
			s.Levels = slices.Insert(s.Levels, 0, l)
		default:
			s.Levels = append(s.Levels, l)
		}
	}
	along := func(name string, a, b float64) {
		s.Dimensions = append(s.Dimensions, report.Dimension{Name: name, From: report.Point{Z: a}, To: report.Point{Z: b}, Value: check.M("", name, b-a)})
	}
	along("between head seams", 0, L)
	along("inside length", lo, hi)
	s.Dimensions = append(s.Dimensions, report.Dimension{Name: "inside diameter", From: report.Point{Z: L / 2, R: -R}, To: report.Point{Z: L / 2, R: R}, Value: check.M("", "inside diameter", 2*R)})
	return s
}

// lengthwise returns the seams along the meridian of every part.
func (r *run) lengthwise() (out []report.SeamLine) {
	if r.long != nil {
		out = append(out, report.SeamLine{Part: "cylinder", Name: r.long.Name, Clock: r.t.Cylinder.LongSeamClock})
	}
	for _, h := range r.ends() {
		if h.segment != nil {
			out = append(out, report.SeamLine{Part: h.name, Name: h.segment.Name, Clock: h.in.SegmentSeamClock})
		}
	}
	return out
}

// worstPlace returns the check with the least margin among those whose place is
// known, and that place.
func (r *run) worstPlace(ports []report.PortOutline) (check.Result, *report.Label) {
	var worst check.Result
	var place *report.Label
	least, rank := math.Inf(1), 0 // not satisfied before satisfied, then the least margin
	for i := range r.checks {
		c := &r.checks[i]
		at, known := r.placeOf(c, ports)
		if !known {
			continue
		}
		of := 0
		switch c.Status() {
		case check.NotSatisfied:
			of = 2
		case check.Satisfied:
			of = 1
		}
		margin := c.Capacity.Value/(c.Factor*c.Demand.Value) - 1
		if of > rank || of > 0 && of == rank && margin < least {
			worst, least, rank, place = *c, margin, of, &report.Label{At: at}
		}
	}
	if place != nil {
		place.Text = "least margin with a place: " + report.FullID(worst) + " " + report.Margin(worst)
	}
	return worst, place
}

// placeOf returns where a check holds: a port, the joint of a head, the point of a
// head's meridian that its inputs name. Other checks hold over a whole part.
func (r *run) placeOf(c *check.Result, ports []report.PortOutline) (report.Point, bool) {
	part, what, _ := strings.Cut(c.ID, "/")
	if name, ok := strings.CutPrefix(part, "port."); ok {
		for i := range ports {
			if ports[i].Name == name {
				return ports[i].Wall, true
			}
		}
		return report.Point{}, false
	}
	for _, h := range [2]*headPart{r.aft, r.fwd} {
		switch {
		case h.name != part:
		case what == "junction":
			return report.Point{Z: r.station(h, 0), R: r.cyl.radius + r.cyl.nominal/2}, true
		case what == "membrane" && len(c.Inputs) > 1 && c.Inputs[0].Symbol == "x" && c.Inputs[1].Symbol == "r":
			return report.Point{Z: r.station(h, c.Inputs[0].Value), R: c.Inputs[1].Value}, true
		}
	}
	return report.Point{}, false
}

// headOutline returns the metal of a head with its straight flange, both faces
// from aft to forward.
func (r *run) headOutline(h *headPart) report.Outline {
	face := func(offset float64) []report.Point {
		var pts []report.Point
		for _, p := range h.nominal0.Points(48, offset) {
			pts = append(pts, report.Point{Z: r.station(h, p.X), R: p.R})
		}
		flange := offset
		if h.in.Bulge == "inward" {
			flange = -offset
		}
		if n := len(pts); n > 0 && h.in.StraightFlange > 0 {
			pts = append(pts, report.Point{Z: r.station(h, -h.in.StraightFlange), R: h.radius + math.Abs(flange)})
		}
		if tip := h.in.Tip; tip != nil && tip.Close == "plate" { // inside the tip, flush with its end
			thick := 0.0
			if offset > 0 {
				thick = given(tip.Thickness)
			}
			z := r.station(h, h.nominal0.Depth()+thick)
			pts = append([]report.Point{{Z: z}, {Z: z, R: tip.Diameter / 2}}, pts...)
		}
		if h.end == "forward" {
			slices.Reverse(pts)
		}
		return pts
	}
	inside, outside := face(0), face(h.nominal)
	if h.bolted() {
		outside = r.coverFace(h)
	}
	return report.Outline{Part: h.name, Inside: inside, Outside: outside}
}

// coverFace returns the outside of a bolted head, which goes on past the bore to
// its edge, in the order of the meridian.
func (r *run) coverFace(h *headPart) []report.Point {
	z, far, R := r.station(h, 0), r.station(h, h.nominal), coverRadius(h.in.Bolts)
	pts := []report.Point{{Z: z, R: h.radius}, {Z: z, R: R}, {Z: far, R: R}, {Z: far}}
	if h.end == "aft" {
		slices.Reverse(pts)
	}
	return pts
}

// covers describes what is bolted on, with a label to the edge, which is a guess.
func (r *run) covers(s *report.Section) {
	for _, h := range r.ends() {
		if !h.bolted() {
			continue
		}
		b := h.in.Bolts
		c := report.Cover{Part: h.name, Inside: r.station(h, 0), Outside: r.station(h, h.nominal), Diameter: 2 * coverRadius(b), Circle: b.Circle, Hole: b.Hole, Count: b.Count}
		if h.in.Seal != nil {
			c.Seal = h.in.Seal.Diameter
		}
		s.Covers = append(s.Covers, c)
		s.Labels = append(s.Labels, report.Label{At: report.Point{Z: (c.Inside + c.Outside) / 2, R: c.Diameter / 2}, Text: "cover: edge as drawn, not in the file"})
	}
}

// coverRadius returns the radius to which a bolted cover is drawn [m]: the tank file
// gives no edge, so one and a half holes outside of the bolt circle, where common
// practice ends a plate.
func coverRadius(b *tank.Bolts) float64 { return b.Circle/2 + 1.5*b.Hole }

// portOutline returns a tube turned into the plane of the cut.
func (r *run) portOutline(p *portPart) report.PortOutline {
	o := report.PortOutline{Name: p.in.Name, Part: p.host.name, Clock: p.port.PierceClock(p.wall), OutsideDiameter: p.in.Tube.OutsideDiameter,
		InsideDiameter: p.in.Tube.OutsideDiameter - 2*p.in.Tube.Wall}
	if p.port.Pad != nil {
		o.PadDiameter, o.PadThickness = p.port.Pad.OutsideDiameter, p.in.Pad.Thickness
	}
	dz, dr := 0.0, 1.0 // the way out, along the tube
	o.Wall = report.Point{Z: p.z, R: p.wall.Radius}
	if p.head != nil {
		o.Wall.R = given(p.in.Radius)
		dz, dr = 1, 0
		if p.in.Axis == "normal" {
			if pt, err := p.head.nominal0.PointAt(o.Wall.R, p.host.nominal/2); err == nil {
				dz, dr = math.Cos(pt.Phi), math.Sin(pt.Phi)
			}
		}
		if p.head.end == "aft" {
			dz = -dz
		}
	}
	// The short side clears the face by what is written; the axis needs more on a slope.
	slope := 0.0
	if c := math.Cos(p.chords.Obliquity); p.chordsErr == nil && c > 0.1 {
		slope = p.in.Tube.OutsideDiameter/2*math.Tan(p.chords.Obliquity) + p.host.nominal/2/c
	}
	out, in := p.in.Outside+slope, p.in.Inside+slope
	o.Outer = report.Point{Z: o.Wall.Z + dz*out, R: o.Wall.R + dr*out}
	o.Inner = report.Point{Z: o.Wall.Z - dz*in, R: o.Wall.R - dr*in}
	return o
}

// level returns the free surface of a case across the cut.
func (r *run) level(c *loadCase) report.Level {
	l := report.Level{Case: c.name}
	z := surface(c)
	if math.IsNaN(z) {
		return l
	}
	lo, hi := r.in.Bounds()
	slope := c.lateral / c.axial
	_, most := r.in.Radii(math.Min(math.Max(z, lo), hi))
	const steps = 60
	for i := range steps + 1 {
		x := r.in.radius * (2*float64(i)/steps - 1)
		at := z + slope*x
		if slope == 0 {
			x, at = most*(2*float64(i)/steps-1), z
		}
		if at < lo || at > hi {
			continue
		}
		if _, outer := r.in.Radii(at); math.Abs(x) <= outer {
			l.Points = append(l.Points, report.Point{Z: at, R: x})
		}
	}
	return l
}

// ringOutlines returns the bars of the rings, as they stand on the wall.
func (r *run) ringOutlines() (out []report.Outline) {
	q := r.t.Cylinder.Rings
	if q == nil {
		return nil
	}
	from := r.ringInside()
	for _, z := range q.Stations {
		a, b := z-q.Width/2, z+q.Width/2
		out = append(out, report.Outline{Part: "ring", Inside: []report.Point{{Z: a, R: from}, {Z: b, R: from}},
			Outside: []report.Point{{Z: a, R: from + q.Height}, {Z: b, R: from + q.Height}}})
	}
	return out
}
