package blank

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
	"proofsheet/report/check"
)

// A Sector is the plate of a cone with one seam along a generator.
type Sector struct {
	Name, Title string
	Wall        port.Wall // nominal: half angle, thickness, and the limits of its ports
	Rim, Tip    float64   // mid-surface radii where its edges are cut, square to the plate; Tip 0: a full cone [m]
	Seam        float64   // clock of its seam [rad]
	Forward     bool      // the forward head; else the aft one
	RimIsWelded bool      // half a gap comes off the rim
	Ports       []port.Port
}

// Blank returns the sector about the apex of the mid-surface, at the origin:
//
//	s = r/sin α from s_tip to s_rim, over the angle 2π sin α
//
// with half a gap off every welded edge, measured square to it, and all holes at
// the true outline. Clock rises to the right where forward is up; the outside face,
// concave on a head that bulges inward, is up. It is refused where the hole of a
// port crosses an edge or another hole.
//
// Source: unrolling of the mid-surface, computed; area and arcs against the cone's
// own in sector_test.go.
func (c Sector) Blank(o Options) Blank {
	b := Blank{Name: c.Name, Title: c.Title, Thickness: c.Wall.Thickness, Seen: c.seen()}
	if err := c.valid(o); err != nil {
		return refuse(b, err)
	}
	f := c.frame(o)
	edge, cut := f.path(0), f.path(o.Kerf/2)
	b.Cut = append(b.Cut, cut)
	least := c.Tip / math.Cos(c.Wall.HalfApex)
	if c.Tip > 0 {
		b.bendable(least, c.Wall.Thickness)
	}
	holes, err := c.holes(f, o)
	if err == nil {
		err = b.keep(holes, f.borders())
	}
	if err != nil {
		return refuse(b, err)
	}
	c.measures(&b, f)
	for _, h := range holes {
		if err := c.open(&b, f, h); err != nil { // not reached: as in oblique
			return refuse(b, err)
		}
	}
	b.quarters(c.Seam, func(turn float64) (from, to Point) {
		ω := (turn - math.Pi) * f.sin
		return f.at(math.Max(f.inner, f.outer/50), ω), f.at(f.outer, ω)
	})
	b.note("half angle to the tank axis %.6g°, to the plane of the rim %.6g°; seam at clock %.4g°", degrees(c.Wall.HalfApex), 90-degrees(c.Wall.HalfApex), degrees(c.Seam))
	b.note("the edges are cut square to the plate through the corners of the inside face: bevel and dress them after rolling")
	return b.finish(o, edge, holes)
}

// open draws a hole and says where it is.
func (c Sector) open(b *Blank, f frame, h *hole) error {
	b.draw(h)
	along, across := f.directions((forward(h.port.Clock-c.Seam) - math.Pi) * f.sin)
	if err := b.oblique(c.Wall, h, along, across); err != nil { // not reached: as there
		return err
	}
	s, rim := math.Hypot(h.centre.X, h.centre.Y), f.corners(0)
	b.measure("", "centre of "+h.port.Name+" from the apex, by compass", s)
	b.measure("", "centre of "+h.port.Name+" from A", distance(h.centre, rim[0]))
	b.measure("", "centre of "+h.port.Name+" from B", distance(h.centre, rim[1]))
	b.nearSeam(c.Wall, h.port, c.Seam)
	return nil
}

func (c Sector) seen() string {
	side, rim := "outside face up", "rim down"
	if c.Wall.Inward {
		side = "outside face, concave after rolling, up"
	}
	if !c.apexUp() {
		rim = "rim up"
	}
	way := "to the right"
	if c.Wall.Inward {
		way = "to the left"
	}
	return fmt.Sprintf("%s, %s, forward up, clock rising %s", side, rim, way)
}

func (c Sector) apexUp() bool { return c.Forward != c.Wall.Inward }

func (c Sector) valid(o Options) error {
	if err := o.Valid(); err != nil {
		return err
	}
	α := c.Wall.HalfApex
	if c.Wall.Surface != port.Cone || !(α > 0 && α < math.Pi/2) || !(c.Wall.Thickness > 0) {
		return fmt.Errorf("%s: no cone with a wall", c.Name)
	}
	if math.IsNaN(c.Seam) || math.IsInf(c.Seam, 0) {
		return fmt.Errorf("%s: the clock of its seam is not a number", c.Name)
	}
	if !(c.Tip >= 0 && (c.Rim-c.Tip)/math.Sin(α) > 2*o.Gap) || !(c.Rim < math.Inf(1)) {
		return fmt.Errorf("%s: no plate is left between the rim at %.4g m and the tip at %.4g m", c.Name, c.Rim, c.Tip)
	}
	return nil
}

// holes lays the openings on the sector.
func (c Sector) holes(f frame, o Options) (out []*hole, err error) {
	for _, p := range c.Ports {
		if _, err := p.Chords(c.Wall); err != nil {
			return nil, err
		}
		ω := (forward(p.Clock-c.Seam) - math.Pi) * f.sin
		x, y := f.directions(ω)
		h, err := lay(c.Wall, p, o, f.at(p.Radius/f.sin, ω), x, y)
		if err != nil {
			return nil, err
		}
		out = append(out, h)
	}
	return out, nil
}

// measures lists the dimensions of the sector as it is cut.
func (c Sector) measures(b *Blank, f frame) {
	k := f.corners(0)
	b.label(k[0], outward(k[0]), "A")
	b.label(k[1], outward(k[1]), "B")
	b.measure("R", "radius of the rim, from the apex", f.outer)
	ends := f.spread(f.outer, 0)
	b.measure("A–B", "chord at the rim", distance(k[0], k[1]))
	b.measure("a_AB", "arc at the rim", f.outer*2*ends)
	b.Measures = append(b.Measures, check.Rad("Ω", "angle of the sector, its gap not taken off", 2*f.β))
	if c.Tip == 0 {
		b.label(k[2], f.at(-1, 0), "C")
		b.measure("A–C", "edge; B–C is the same", distance(k[0], k[2]))
		return
	}
	for i, letter := range []string{"C", "D"} {
		q := outward(k[2+i])
		b.label(k[2+i], Point{-q.X, -q.Y}, letter)
	}
	b.measure("r", "radius of the tip, from the apex", f.inner)
	b.measure("C–D", "chord at the tip", distance(k[2], k[3]))
	b.measure("a_CD", "arc at the tip", f.inner*2*f.spread(f.inner, 0))
	b.measure("A–D", "edge; B–C is the same", distance(k[0], k[3]))
	b.measure("A–C", "diagonal; B–D is the same", distance(k[0], k[2]))
}

// A frame is where a sector lies: ω [rad] from the generator opposite its seam,
// s [m] from the apex at the origin.
type frame struct {
	sin, β       float64 // sin α [-]; half of the sector's angle [rad]
	turn, sense  float64 // direction of ω = 0 [rad]; 1 where ω rises anticlockwise, else −1
	inner, outer float64 // edges, half a gap off [m]
	inset        float64 // of the seam's edges from their generators [m]
	full         bool
}

func (c Sector) frame(o Options) frame {
	f := frame{sin: math.Sin(c.Wall.HalfApex), turn: math.Pi / 2, sense: -1, inset: o.Gap / 2, full: c.Tip == 0}
	if c.apexUp() {
		f.turn = -f.turn
	}
	if c.Forward {
		f.sense = 1
	}
	f.β = math.Pi * f.sin
	f.outer = c.Rim / f.sin
	if c.RimIsWelded {
		f.outer -= o.Gap / 2
	}
	if !f.full {
		f.inner = c.Tip/f.sin + o.Gap/2
	}
	return f
}

// at returns the place of s [m] and ω [rad].
func (f frame) at(s, ω float64) Point {
	sin, cos := math.Sincos(f.turn + f.sense*ω)
	return Point{s * cos, s * sin}
}

// directions returns outboard along the generator at ω [rad], and across it
// towards rising clock.
func (f frame) directions(ω float64) (along, across Point) {
	sin, cos := math.Sincos(f.turn + f.sense*ω)
	return Point{cos, sin}, Point{-f.sense * sin, f.sense * cos}
}

// spread returns ω of the seam's edge at s [m], the edge moved out by d [m]; all
// sides are inset from the generators, not turned.
func (f frame) spread(s, d float64) float64 { return f.β - math.Asin((f.inset-d)/s) }

// corners returns A, B at the rim from low to high clock, then C, D at the tip from
// high to low, or the point C alone, with every side moved out by d [m].
func (f frame) corners(d float64) []Point {
	outer := f.outer + d
	wide := f.spread(outer, d)
	ps := []Point{f.at(outer, -wide), f.at(outer, wide)}
	if f.full {
		return append(ps, f.at((f.inset-d)/math.Sin(f.β), 0))
	}
	inner := f.inner - d
	narrow := f.spread(inner, d)
	return append(ps, f.at(inner, narrow), f.at(inner, -narrow))
}

// path returns the edge moved out by d [m].
func (f frame) path(d float64) Path {
	outer := f.outer + d
	wide := f.spread(outer, d)
	angle := func(ω float64) float64 { return f.turn + f.sense*ω }
	p := Path{Closed: true, Vertices: arc(outer, angle(-wide), angle(wide))}
	if f.full {
		p.Vertices = append(p.Vertices, Vertex{Point: f.corners(d)[2]})
		return p
	}
	inner := f.inner - d
	narrow := f.spread(inner, d)
	p.Vertices = append(p.Vertices, arc(inner, angle(narrow), angle(-narrow))...)
	return p
}

// borders returns the edges from which holes keep.
func (f frame) borders() []border {
	seam := func(p Point) float64 {
		s := math.Hypot(p.X, p.Y)
		ω := math.Abs(math.Remainder(math.Atan2(p.Y, p.X)-f.turn, 2*math.Pi))
		off := math.Min(f.β-ω, math.Pi/2) // past a right angle the apex is nearest
		return s*math.Sin(off) - f.inset
	}
	all := []border{{"the seam of the cone", seam},
		{"the rim", func(p Point) float64 { return f.outer - math.Hypot(p.X, p.Y) }}}
	if !f.full {
		all = append(all, border{"the tip", func(p Point) float64 { return math.Hypot(p.X, p.Y) - f.inner }})
	}
	return all
}
