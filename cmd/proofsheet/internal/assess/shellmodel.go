package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/shell/revolution"
)

// A wholeTank is the tank as one thin shell of revolution on its mid-surface.
// It is held along the axis where skirt or flange holds it, free across: the
// model is clear of its supports. Ports are not in it.
type wholeTank struct {
	model    *revolution.Model
	segments []*part              // what each segment belongs to
	names    []string             // and what it is called
	joint    map[string]int       // node where a head meets the cylinder
	area     map[string]float64   // of an opening left at a tip [m2]
	tube     map[string]float64   // mid-wall radius of the tube or neck at a tip [m]
	unit     *revolution.Solution // under one unit of ullage pressure
	pull     *revolution.Solution // for one newton per metre between the seams
	ends     int                  // the last node

	hiLo map[string][2][]jointBend // of a head's seam, in the cylinder and in the head
}

// A shellKey is all that a whole tank's stiffness depends on beside the file.
type shellKey struct {
	nominal bool
	T       float64 // [K]
}

// fold is how far an inward head that folds back on its flange is opened, so
// that its meridian does not turn back on itself [rad]: about a tenth of a degree.
const fold = 2e-3

// shellAt returns the whole tank with its walls for strength, or nominal, and
// its metals at T [K], remembered.
func (m *model) shellAt(k shellKey) (*wholeTank, error) {
	if m.withoutShell {
		return nil, errWithoutShell
	}
	if err := m.coarse[k]; err != nil {
		return nil, err
	}
	if w, ok := m.shells[k]; ok {
		return w.whole, w.err
	}
	w, err := m.newShell(k)
	m.shells[k] = shellFound{w, err}
	return w, err
}

// errWithoutShell says why nothing that rests on the numerical shell is there.
var errWithoutShell = errors.New("the numerical shell is left out of this study")

// A shellFound is a model that was made, or why it cannot be.
type shellFound struct {
	whole *wholeTank
	err   error
}

// newShell makes the model: aft head tip first, cylinder, forward head.
func (m *model) newShell(k shellKey) (*wholeTank, error) {
	w := &wholeTank{joint: map[string]int{}, hiLo: map[string][2][]jointBend{}}
	var s revolution.Structure
	add := func(p *part, name string, c revolution.Curve, wall float64) error {
		e, ν, err := m.elastic(p, k.T)
		s.Segments = append(s.Segments, revolution.Segment{Name: name, Curve: c, Thickness: wall, Modulus: e, Poisson: ν, Linked: true})
		w.segments, w.names = append(w.segments, p), append(w.names, name)
		return err
	}
	aft, err := m.shellEnd(m.aft, k)
	if err != nil {
		return nil, err
	}
	fwd, err := m.shellEnd(m.fwd, k)
	if err != nil {
		return nil, err
	}
	R, t := m.midCylinder(k)
	var errs []error
	for _, p := range aft.parts {
		errs = append(errs, add(p.owner, "aft "+p.Name, p.Curve, p.wall))
	}
	w.joint["aft"] = len(s.Segments)
	for _, c := range m.courses(-aft.beyond, m.t.Cylinder.Length+fwd.beyond, t, k) {
		errs = append(errs, add(m.cyl, "cylinder", revolution.Line{From: revolution.Point{R: R, Z: c.from}, To: revolution.Point{R: R, Z: c.to}}, c.wall))
	}
	w.joint["forward"] = len(s.Segments)
	for i := len(fwd.parts) - 1; i >= 0; i-- {
		p := fwd.parts[i]
		turned := revolution.Forward([]revolution.Part{p.Part}, m.t.Cylinder.Length)
		errs = append(errs, add(p.owner, "forward "+p.Name, turned[0].Curve, p.wall))
	}
	if err := errors.Join(errs...); err != nil {
		return nil, err
	}
	hold := w.joint["aft"]
	if m.t.Support.At == "forward" {
		hold = w.joint["forward"]
	}
	s.Supports = []revolution.Support{{Node: hold, Axial: true}}
	for _, h := range m.ends() {
		if h.seam != nil && given(h.seam.HiLo) > 0 {
			if w.hiLo[h.end], err = m.hiLoOf(h, k); err != nil {
				return nil, err
			}
		}
		if h.in.Ring != nil {
			s.Rings = append(s.Rings, m.seamRing(h, w.joint[h.end], R, t, k))
		}
	}
	w.area = map[string]float64{"aft": aft.area, "forward": fwd.area}
	w.tube = map[string]float64{"aft": math.Sqrt(aft.area / math.Pi), "forward": math.Sqrt(fwd.area / math.Pi)}
	w.ends = len(s.Segments)
	if w.model, err = revolution.New(s); err != nil {
		return nil, err
	}
	if err = m.solveUnits(w); err == nil && m.meshes != nil {
		m.meshes.look(k, func() error { return fineEnough(w.model, w.unit, m.unitPressure(w), meshLimit) })
	}
	return w, err
}

// midCylinder returns the mid-wall radius of the cylinder and its wall [m].
func (m *model) midCylinder(k shellKey) (R, t float64) {
	if k.nominal {
		return m.cyl.radius + m.cyl.nominal/2, m.cyl.nominal
	}
	return m.cyl.mid(), m.cyl.least
}

// elastic returns Young's modulus [Pa] and Poisson's ratio of a part at T [K].
func (m *model) elastic(p *part, T float64) (e, ν float64, err error) {
	x := m.metals.at(p.material, "", p.nominal, T)
	e, ν = x.parent.ElasticModulus.Value, x.parent.Poisson.Value
	switch {
	case x.parentErr != nil:
		err = x.parentErr
	case !(e > 0):
		err = fmt.Errorf("material %q has no modulus of elasticity at this temperature", p.material)
	case !(ν > 0):
		err = fmt.Errorf("material %q has no Poisson's ratio", p.material)
	}
	return e, ν, err
}

// A course is a stretch of the cylinder with one wall [m].
type course struct{ from, to, wall float64 }

// courses divides the cylinder where a seam is stiffened: its thicker wall
// counts over half its width on the cylinder's side, the mid-lines in line.
func (m *model) courses(from, to, wall float64, k shellKey) []course {
	out := []course{{from, to, wall}}
	thick := func(h *headPart) (w, t float64) {
		if h.in.SeamThickness == nil || h.in.SeamWidth == nil {
			return 0, 0
		}
		t = *h.in.SeamThickness
		if !k.nominal {
			t -= m.cyl.nominal - m.cyl.least // the tolerance and corrosion of its wall
		}
		return *h.in.SeamWidth / 2, math.Max(t, wall)
	}
	if w, t := thick(m.aft); w > 0 && w < (to-from)/2 {
		out = []course{{from, from + w, t}, {from + w, to, wall}}
	}
	if w, t := thick(m.fwd); w > 0 && w < (to-from)/2 {
		last := &out[len(out)-1]
		last.to = to - w
		out = append(out, course{to - w, to, t})
	}
	return out
}

// seamRing is the ring of a stiffened seam, outside the cylinder.
func (m *model) seamRing(h *headPart, node int, R, t float64, k shellKey) revolution.Ring {
	b, d := h.in.Ring.Width, h.in.Ring.Thickness
	e, ν, _ := m.elastic(m.cyl, k.T)
	return revolution.Ring{Node: node, Area: b * d, Radial: b * d * d * d / 12, Axial: d * b * b * b / 12,
		Torsion: b * d * d * d / 3, Modulus: e, Poisson: ν, Offset: revolution.Point{R: t/2 + d/2}}
}

// A shellHead is a head as an aft head on the seam plane z = 0, tip first.
type shellHead struct {
	parts  []shellPart
	beyond float64 // by how much the cylinder runs on past the seam plane to meet it [m]
	area   float64 // of the opening that is left at its tip [m2]
}

type shellPart struct {
	revolution.Part
	owner *part
	wall  float64 // [m]
}

// shellHead returns the mid-surface of a head. A cone meets the cylinder where
// the two mid-surfaces cross; the other shapes where their straight part begins,
// mid-lines as the walls are aligned.
func (m *model) shellHead(h *headPart, k shellKey) (shellHead, error) {
	if h.bolted() {
		return shellHead{}, errors.New("a bolted head is not one shell with the cylinder")
	}
	head, t := h.strength, h.least
	R, _ := m.midCylinder(k)
	if k.nominal {
		head, t = h.nominal0, h.nominal
	}
	g := head.Geometry()
	side := 1.0 // the wall lies outside the given face, inside an inward head's
	if g.Inward {
		side = -1
	}
	o := side * t / 2
	mid := g.InsideDiameter/2 + o
	var out shellHead
	var parts []revolution.Part
	var err error
	switch h.in.Shape {
	case "hemisphere":
		parts, err = revolution.Hemisphere(mid)
	case "ellipsoid":
		parts, err = revolution.Ellipsoid(mid, head.Depth()+o)
	case "torisphere":
		parts, err = revolution.Torisphere(mid, g.CrownRadius+o, g.KnuckleRadius+o)
	case "toricone":
		parts, err = revolution.Toricone(mid, g.HalfAngle, g.KnuckleRadius+o, m.tipRadius(g, o))
	case "cone":
		parts, out.beyond, err = m.shellCone(h, g, o, mid, R)
	case "flat":
		parts, err = revolution.Flat(0, map[bool]float64{true: mid, false: R}[g.StraightFlange > 0])
		parts = revolution.Moved(parts, -t/2)
		out.beyond = t / 2
	default:
		err = fmt.Errorf("the numerical shell knows no %s", h.in.Shape)
	}
	if err != nil {
		return out, err
	}
	if g.Inward {
		parts = revolution.Inward(unfolded(parts, fold))
	}
	for _, p := range parts {
		out.parts = append(out.parts, shellPart{p, &h.part, t})
	}
	if err := m.shellTip(h, k, &out); err != nil {
		return out, err
	}
	if f := g.StraightFlange; f > 0 {
		out.flange(h, f, g.InsideDiameter/2+t/2, t) // of an inward head too it goes on from the cylinder, outside the rim
	}
	return out, nil
}

// flange puts the head beyond its straight flange of length f, mid-wall radius
// and wall, all [m].
func (s *shellHead) flange(h *headPart, f, mid, t float64) {
	for i := range s.parts {
		s.parts[i].Part = revolution.Moved([]revolution.Part{s.parts[i].Part}, -f)[0]
	}
	s.parts = append(s.parts, shellPart{revolution.Part{Name: "straight flange",
		Curve: revolution.Line{From: revolution.Point{R: mid, Z: -f - s.beyond}, To: revolution.Point{R: mid}}}, &h.part, t})
	s.beyond = 0
}

// unfolded opens the rim of a head that is to bulge inwards and meets its flange
// tangent, by an angle [rad]: folded back it would leave no angle between the two.
func unfolded(parts []revolution.Part, fold float64) []revolution.Part {
	out := append([]revolution.Part(nil), parts...)
	last := &out[len(out)-1]
	if e, ok := last.Curve.(revolution.Ellipse); ok && e.To == math.Pi/2 {
		e.To -= fold
		last.Curve = e
	}
	return out
}

// tipRadius returns the mid-wall radius at which a cone ends [m], in the plane
// where its given face has the tip's; 0 for one that runs to its apex.
func (m *model) tipRadius(g heads.Geometry, o float64) float64 {
	if !(g.TipDiameter > 0) {
		return 0
	}
	return math.Max(0, g.TipDiameter/2+o/math.Cos(g.HalfAngle))
}

// shellCone returns a cone and how far the cylinder of mid-wall radius R runs
// past the seam plane until the mid-surfaces cross [m]. Before a straight flange
// it meets that, of mid-wall radius mid.
func (m *model) shellCone(h *headPart, g heads.Geometry, o, mid, R float64) ([]revolution.Part, float64, error) {
	at := R
	if g.StraightFlange > 0 || g.Inward {
		at = mid
	}
	// r = R_face + o/cos α − x tan α, x from the seam plane towards the tip
	x := (g.InsideDiameter/2 + o/math.Cos(g.HalfAngle) - at) / math.Tan(g.HalfAngle)
	parts, err := revolution.Cone(at, g.HalfAngle, m.tipRadius(g, o))
	parts = revolution.Moved(parts, -x)
	if g.Inward {
		x = -x
	}
	return parts, x, err
}

// shellTip closes a truncated cone: a plate across its mid-surface, or the tube
// or neck that goes on from there, left open with the pressure on its cover.
func (m *model) shellTip(h *headPart, k shellKey, s *shellHead) error {
	tip := h.in.Tip
	if tip == nil {
		return nil
	}
	first := s.parts[0]
	line, ok := first.Curve.(revolution.Line)
	if !ok {
		return errors.New("a tip belongs to a cone")
	}
	R, t := line.From.R, first.wall
	owner := &h.part
	if tip.Close == "plate" {
		t = given(tip.Thickness)
		if !k.nominal {
			t -= given(tip.UnderTolerance) + h.corrosion
		}
		if !(t > 0) {
			return errors.New("nothing of the tip's plate is left after tolerance and corrosion")
		}
		plate := revolution.Line{From: revolution.Point{Z: line.From.Z}, To: line.From}
		s.parts = append([]shellPart{{revolution.Part{Name: "tip plate", Curve: plate}, h.tip(t), t}}, s.parts...)
		return nil
	}
	if tip.Close == "port" {
		p := m.portNamed(tip.Port)
		if p == nil {
			return fmt.Errorf("port %q at the tip is not in the file", tip.Port)
		}
		t = p.port.TubeWall
		if k.nominal {
			t = p.in.Tube.Wall
		}
		R = p.in.Tube.OutsideDiameter/2 - t/2
		owner = &part{name: h.name, title: h.title + ", tube at the tip", material: p.in.Tube.Material, nominal: p.in.Tube.Wall, least: t, corrosion: h.corrosion}
	}
	end := line.From
	length := 4 * math.Sqrt(R*t) // beyond the reach of its joint
	aft := 1.0
	if h.in.Bulge == "inward" {
		aft = -1
	}
	tube := revolution.Line{From: revolution.Point{R: R, Z: end.Z - aft*length}, To: revolution.Point{R: R, Z: end.Z}}
	s.parts = append([]shellPart{{revolution.Part{Name: "neck", Curve: tube}, owner, t}}, s.parts...)
	s.area = math.Pi * R * R
	return nil
}

// tip returns the plate of a tip as a part with the wall [m].
func (h *headPart) tip(wall float64) *part {
	material := h.in.Tip.Material
	if material == "" {
		material = h.material
	}
	return &part{name: h.name, title: h.title + ", tip plate", material: material, nominal: given(h.in.Tip.Thickness), least: wall, corrosion: h.corrosion}
}

// portNamed returns the port of a name, or nil.
func (m *model) portNamed(name string) *portPart {
	for _, p := range m.ports {
		if p.in.Name == name || p.in.Group == name {
			return p
		}
	}
	return nil
}
