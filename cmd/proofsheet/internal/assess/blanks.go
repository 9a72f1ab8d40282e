package assess

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/blank"
	"proofsheet/heads/port"
)

// Blanks returns every flat part and template of the tank, from nominal walls:
// the sheets of the cylinder, the plates of the heads, pads and tube templates. A
// part that cannot be laid out is among them with its reason. An error is a fault
// of the input that only the whole tank shows.
func Blanks(t *tank.Tank, o blank.Options) ([]blank.Blank, error) {
	if err := o.Valid(); err != nil {
		return nil, err
	}
	m, err := newModel(t)
	if err != nil {
		return nil, err
	}
	out := append(m.sheets(o), m.ringBlanks()...)
	for _, h := range m.ends() {
		out = append(out, m.headBlanks(h, o)...)
	}
	done := map[int]bool{} // tubes of one group are alike
	for _, p := range m.ports {
		if !done[p.in.Position] {
			done[p.in.Position] = true
			out = append(out, m.portBlanks(p, o)...)
			out = append(out, coverBlanks(p, o)...)
		}
	}
	return out, nil
}

// ringBlanks says what the rings of the cylinder are rolled to or cut as.
func (m *model) ringBlanks() []blank.Blank {
	q := m.t.Cylinder.Rings
	if q == nil {
		return nil
	}
	inner := m.ringInside()
	return []blank.Blank{notFlat("rings", "Rings of the cylinder", "%d flat bars of %.6g x %.6g mm, rolled on edge to %.6g mm inside and %.6g mm outside diameter, or cut from plate as such; by nominal dimensions: fit them to the cylinder as rolled",
		len(q.Stations), q.Height*1e3, q.Width*1e3, 2e3*inner, 2e3*(inner+q.Height))}
}

// coverBlanks returns the plate that is bolted over a port.
func coverBlanks(p *portPart, o blank.Options) []blank.Blank {
	if p.in.Cover == nil {
		return nil
	}
	c := cover(p.in.Bolts, p.in.Seal)
	c.Name, c.Title, c.Thickness, c.Forward = "cover-"+p.in.Group, "Cover of "+p.in.Group, p.in.Cover.Thickness, true
	return []blank.Blank{c.Blank(o)}
}

// cover returns the holes, the seal and the edge, as drawn, of a bolted cover.
func cover(b *tank.Bolts, s *tank.Seal) blank.Cover {
	c := blank.Cover{Count: b.Count, Circle: b.Circle, Hole: b.Hole, Edge: 2 * coverRadius(b)}
	if s != nil {
		c.Seal = s.Diameter
	}
	return c
}

// notFlat is a part that has no blank, and why.
func notFlat(name, title, format string, a ...any) blank.Blank {
	return blank.Blank{Name: name, Title: title, Notes: []string{fmt.Sprintf(format, a...)}}
}

// nominal returns the port and its wall as drawn.
func (m *model) nominal(p *portPart) (port.Wall, port.Port, error) {
	w, err := m.portWall(p, true)
	q := portOf(p.in, 0)
	q.TubeWall = p.in.Tube.Wall
	return w, q, err
}

// on returns the nominal ports of a part, by its name.
func (m *model) on(part string) (out []port.Port) {
	for _, p := range m.ports {
		if p.host.name == part && !m.closesTip(p) {
			_, q, _ := m.nominal(p) // a wall that is none is refused with the part
			out = append(out, q)
		}
	}
	return out
}

// closesTip reports whether the port is the end of a truncated cone.
func (m *model) closesTip(p *portPart) bool {
	return p.head != nil && p.head.in.Tip != nil && p.head.in.Tip.Close == "port" && p.head.in.Tip.Port == p.in.Name
}

// sheets returns the courses of the cylinder, aft first.
func (m *model) sheets(o blank.Options) (out []blank.Blank) {
	c := m.t.Cylinder
	if c.LongSeam == "none" {
		return []blank.Blank{notFlat("cylinder", "Cylinder", "a drawn or extruded tube without a seam: no sheet to cut")}
	}
	w, err := m.portWall(&portPart{host: *m.cyl}, true)
	stations := append(append([]float64{0}, c.GirthStations...), c.Length)
	for i, from := range stations[:len(stations)-1] {
		s := blank.Sheet{Name: "cylinder", Title: "Cylinder, sheet", Wall: w, From: from, To: stations[i+1],
			Seam: c.LongSeamClock, Ports: m.on("cylinder")}
		if len(stations) > 2 {
			s.Name, s.Title = fmt.Sprintf("cylinder-%d", i+1), fmt.Sprintf("Cylinder, sheet of course %d from aft", i+1)
		}
		b := s.Blank(o)
		if err != nil {
			b.Err = err
		}
		if i > 0 {
			b.Cautions = append(b.Cautions, "its long seam stands at the clock of the course before it: four weld ends meet at the girth seam; turn one course, and this drawing with it (practice)")
		}
		if m.girth != nil && len(c.GirthStations) == 0 {
			b.Cautions = append(b.Cautions, "girth_stations are not written: the sheet is drawn in one course")
		}
		out = append(out, b)
	}
	return out
}

// headBlanks returns the plate of a head and, on a formed one with ports, the plan
// to drill it by.
func (m *model) headBlanks(h *headPart, o blank.Options) []blank.Blank {
	name, title := "head-"+h.end, h.title
	w, err := m.portWall(&portPart{host: h.part, head: h}, true)
	if err != nil {
		return []blank.Blank{{Name: name, Title: title, Err: err}}
	}
	if w.Surface == port.Cone {
		return m.coneBlanks(h, w, o)
	}
	if h.in.Closure == "bolted" {
		c := cover(h.in.Bolts, h.in.Seal)
		c.Name, c.Title, c.Thickness, c.Wall, c.Forward, c.Ports = name, title+", bolted cover", h.in.Thickness, w, h.end == "forward", m.on(h.name)
		return []blank.Blank{c.Blank(o)}
	}
	d := blank.Disc{Name: name, Title: title + ", disc", Head: h.nominal0, Wall: w, Forward: h.end == "forward", Ports: m.on(h.name)}
	out := []blank.Blank{d.Blank(o)}
	if w.Surface != port.Flat && len(d.Ports) > 0 {
		d.Title = title
		out = append(out, d.Plan(o))
	}
	return out
}

// coneBlanks returns the sector of a cone.
func (m *model) coneBlanks(h *headPart, w port.Wall, o blank.Options) []blank.Blank {
	name, title := "head-"+h.end, h.title+", sector"
	if h.in.SegmentSeam == "none" {
		return []blank.Blank{notFlat(name, title, "a cone of one piece without a seam: no plate to roll")}
	}
	half := h.nominal / 2
	if w.Inward {
		half = -half
	}
	s := blank.Sector{Name: name, Title: title, Wall: w, Rim: w.Radius, Seam: h.in.SegmentSeamClock,
		Forward: h.end == "forward", RimIsWelded: true, Ports: m.on(h.name)}
	if w.KnuckleAtEdge {
		s.Rim = w.Edge
	}
	if tip := h.in.Tip; tip != nil {
		s.Tip = tip.Diameter/2 + half*math.Cos(w.HalfApex)
	}
	b := s.Blank(o)
	if w.KnuckleAtEdge {
		b.Cautions = append(b.Cautions, "the plain cone only, up to where the knuckle begins: the knuckle and its flange are formed and cannot be laid flat")
	}
	if tip := h.in.Tip; tip != nil && b.Err == nil {
		b.Notes = append(b.Notes, fmt.Sprintf("the tip's opening is %.6g mm on the inside face; what closes it is not drawn: how it sits there is not in the tank file", tip.Diameter*1e3))
	}
	return []blank.Blank{b}
}

// portBlanks returns the templates of one tube, good for every port of its group.
func (m *model) portBlanks(p *portPart, o blank.Options) (out []blank.Blank) {
	var names []string
	for _, q := range m.ports {
		if q.in.Position == p.in.Position {
			names = append(names, q.in.Name)
		}
	}
	of := strings.Join(names, ", ")
	w, q, err := m.nominal(p)
	if err != nil {
		return []blank.Blank{{Name: "tube-" + p.in.Group, Title: "Tube of " + of, Err: err}}
	}
	t := blank.Tube{Name: "tube-" + p.in.Group, Title: "Tube template of " + of, Port: q, Wall: w, Forward: p.in.On != "aft"}
	if p.head != nil {
		t.Head = p.head.nominal0
	}
	dome := w.Surface == port.Sphere || w.Surface == port.Ellipsoid || w.Surface == port.Torisphere
	switch {
	case m.closesTip(p):
		out = append(out, notFlat(t.Name, t.Title, "the tube closes the cone's tip, square to the axis: no template"))
	case w.Surface == port.Flat, w.Surface == port.Sphere && !q.Parallel, p.head != nil && q.Radius == 0:
		out = append(out, notFlat(t.Name, t.Title, "the wall stands the same all round the tube: cut it square, no template"))
	case !q.Parallel && (dome || w.Inward):
		out = append(out, notFlat(t.Name, t.Title, "a tube normal to a wall of this shape has no template here: fit it in place"))
	default:
		out = append(out, t.Blank(o))
	}
	if pad := p.in.Pad; pad != nil && dome {
		out = append(out, notFlat("pad-"+p.in.Group, "Pad of "+of, "a pad on a dome cannot be laid flat: form it with the head's radius and cut it after, along the tube's axis"))
	} else if pad != nil {
		d := blank.Doubler{Name: "pad-" + p.in.Group, Title: "Pad of " + of, Port: q, Wall: w, Thickness: pad.Thickness,
			Diameter: given(pad.OutsideDiameter), Length: given(pad.Length), Lip: given(pad.Lip)}
		out = append(out, d.Blank(o))
	}
	if in := p.in.Insert; in != nil {
		out = append(out, notFlat("insert-"+p.in.Group, "Insert of "+of, "a round plate of %.6g mm, %.6g mm thick, laid out like the wall it replaces, with the hole of the wall's blank in its middle", in.OutsideDiameter*1e3, in.Thickness*1e3))
	}
	return out
}
