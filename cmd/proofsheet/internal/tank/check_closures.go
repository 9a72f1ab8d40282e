package tank

import (
	"fmt"
	"math"

	"proofsheet/heads/bolting"
)

// preloadScatter is by how much of itself the preload of a bolt tightened by torque
// may turn out less or more [-]: common practice for lubricated threads.
const preloadScatter = 0.25

// thread reads a thread at a path, and tells one that is none.
func (r *reader) thread(path, size string) (bolting.Thread, bool) {
	if size == "" {
		return bolting.Thread{}, false
	}
	t, err := bolting.ParseThread(size)
	if err != nil {
		r.fault(path, "%v", err)
	}
	return t, err == nil
}

// squeezed fills in the squeeze of an O-ring of a diameter [m].
func (r *reader) squeezed(path string, into *float64, diameter float64) {
	if diameter > 0 {
		f := bolting.DefaultSqueeze * math.Pi * diameter
		r.orNumber(path, into, f, fmt.Sprintf("%.4g N", f), "10 N for each mm of the O-ring's circumference: practice, on the side of hard rings")
	}
}

// closure checks the bolts and the seal of a flat cover, tables of table, whose seal
// stands round an opening of the diameter inside [m].
func (r *reader) closure(table string, b *Bolts, s *Seal, inside float64, opening string) {
	if s != nil {
		r.seal(join(table, "seal"), s)
	}
	circle, hole := 0.0, 0.0
	if b != nil {
		circle, hole = b.Circle, r.bolts(join(table, "bolts"), b)
	}
	if s != nil {
		r.sealPlace(table, circle, hole, s.Diameter, inside, opening)
	}
}

// bolts fills in what was left out of the bolts at a path, and checks that they fit. It
// returns how wide their holes are [m].
func (r *reader) bolts(at string, b *Bolts) float64 {
	r.orNumber(join(at, "scatter"), &b.Scatter, preloadScatter, "0.25", "practice for bolts tightened by torque, lubricated")
	t, ok := r.thread(join(at, "size"), b.Size)
	hole := r.boltHoles(at, b, t.Major)
	if ok && b.Count > 1 && b.Circle > 0 && b.Circle*math.Sin(math.Pi/float64(b.Count)) < 2*t.Major {
		r.fault(join(at, "count"), "so many bolts do not fit on their circle: from one to the next at least twice their diameter")
	}
	return hole
}

// sealPlace checks that a seal [m] stands between the opening [m] and the holes [m] of the
// bolts on their circle [m]. Where there is no room for any seal it is the circle that is
// told, with the whole condition.
func (r *reader) sealPlace(table string, circle, hole, seal, inside float64, opening string) {
	within := math.Inf(1)
	if circle > 0 {
		within = circle - hole
	}
	about := fmt.Sprintf("the %.5g mm of %s, which the cover closes", inside*1e3, opening)
	holes := fmt.Sprintf("less than the bolt circle less a hole of %.5g mm", hole*1e3)
	switch at := join(table, "seal.diameter"); {
	case inside > 0 && within <= inside:
		r.fault(join(table, "bolts.circle"), "leaves no room for a seal, whose diameter is from %s, to %s; write more than \"%.5g mm\"", about, holes, (inside+hole)*1e3)
	case !(seal > 0):
	case inside > 0 && circle > 0 && (seal < inside || seal >= within):
		r.fault(at, "must be from %s, to %s; write from \"%.5g mm\" to less than \"%.5g mm\"", about, holes, inside*1e3, within*1e3)
	case seal < inside:
		r.fault(at, "must not be less than %s", about)
	case seal >= within:
		r.fault(at, "must be %s; write less than \"%.5g mm\"", holes, within*1e3)
	}
}

// coarseHole is the diameter of a coarse clearance hole over its bolt's [-]: the
// largest of M3 to M24, recalled.
const coarseHole = 1.25

// boltHoles fills in the holes of bolts of a major diameter [m] and tells those that
// are too narrow or touch. It returns their diameter [m], and of those it has told that
// of coarse ones.
func (r *reader) boltHoles(at string, b *Bolts, major float64) float64 {
	if !(major > 0) {
		return b.Hole
	}
	r.orNumber(join(at, "hole"), &b.Hole, coarseHole*major, fmt.Sprintf("%.4g mm", coarseHole*major*1e3), "coarse clearance holes, 1.25 of the bolt's diameter: practice")
	switch apart := b.Circle * math.Sin(math.Pi/math.Max(2, float64(b.Count))); {
	case b.Hole < major:
		r.fault(join(at, "hole"), "must not be less than the bolt's %.4g mm", major*1e3)
	case r.has(join(at, "hole")) && b.Count > 1 && apart > 0 && b.Hole >= apart:
		r.fault(join(at, "hole"), "the holes touch: they stand %.4g mm apart", apart*1e3)
	default:
		return b.Hole
	}
	return coarseHole * major
}

// seal checks what belongs to each kind of seal.
func (r *reader) seal(at string, s *Seal) {
	gasket := []string{"width", "gasket_factor", "seating_stress", "source"}
	switch s.Kind {
	case "o-ring":
		for _, k := range gasket {
			r.onlyWith(join(at, k), `kind = "gasket"`)
		}
		r.squeezed(join(at, "squeeze"), &s.Squeeze, s.Diameter)
	case "gasket":
		r.onlyWith(join(at, "squeeze"), `kind = "o-ring"`)
		for i, k := range gasket {
			if !r.has(join(at, k)) {
				r.fault(join(at, "kind"), "a gasket needs %s; write %s = %s", k, k, []string{`"10 mm"`, "2.0", `"11 MPa"`, `"where m and y come from"`}[i])
			}
		}
		if s.Width >= s.Diameter && s.Diameter > 0 {
			r.fault(join(at, "width"), "must be less than the gasket's diameter")
		}
	}
}

// portKind checks what only a boss or a cover has.
func (r *reader) portKind(table string, p *Port) {
	if !r.has(join(table, "kind")) {
		p.Kind = "tube"
	}
	if p.Kind != "boss" {
		r.onlyWith(join(table, "thread"), `kind = "boss"`)
	}
	if p.Kind != "cover" {
		for _, k := range []string{"cover", "bolts", "seal"} {
			r.onlyWith(join(table, k), `kind = "cover"`)
		}
	}
	switch p.Kind {
	case "boss":
		if !r.has(join(table, "thread")) {
			r.fault(join(table, "kind"), `needs thread; write thread = { size = "M20x1.5", engagement = "14 mm", seal_diameter = "24 mm", preload = "6 kN", material = "plate" }`)
		}
		r.boss(table, p)
	case "cover":
		for _, k := range [][2]string{{"cover", `{ thickness = "20 mm" }`}, {"bolts", `{ count = 12, size = "M10", circle = "140 mm", strength = "600 MPa", preload = "15 kN" }`}, {"seal", `{ kind = "o-ring", diameter = "110 mm" }`}} {
			if !r.has(join(table, k[0])) {
				r.fault(join(table, "kind"), "needs %s; write %s = %s", k[0], k[0], k[1])
			}
		}
		r.closure(table, p.Bolts, p.Seal, p.Tube.OutsideDiameter-2*p.Tube.Wall, "its tube's bore")
		r.cover(table, p)
	}
}

// boss checks the thread of a boss against its wall: the threads carry no hoop, so
// that the wall is what stands round their major diameter.
func (r *reader) boss(table string, p *Port) {
	t := p.Thread
	if t == nil {
		return
	}
	at := join(table, "thread")
	r.orNumber(join(at, "scatter"), &t.Scatter, preloadScatter, "0.25", "practice for threads tightened by torque, lubricated")
	r.squeezed(join(at, "squeeze"), &t.Squeeze, t.SealDiameter)
	th, ok := r.thread(join(at, "size"), t.Size)
	od, wall := p.Tube.OutsideDiameter, p.Tube.Wall
	if !ok || !(od > 0 && wall > 0) {
		return
	}
	switch bore := od - 2*wall; {
	case od <= th.Major:
		r.fault(join(at, "size"), "its major diameter of %.4g mm leaves nothing of the boss", th.Major*1e3)
	case bore < th.Major*(1-1e-9) || bore > 1.05*th.Major:
		r.fault(join(table, "tube.wall"), "is not what stands round the thread; threads carry no hoop: write wall = \"%.5g mm\"", (od-th.Major)/2*1e3)
	case t.SealDiameter > 0 && t.SealDiameter < bore*(1-1e-9):
		r.fault(join(at, "seal_diameter"), "lies inside of the boss's bore, where nothing holds a seal; the pressure acts at least on the bore: write \"%.5g mm\" or more", bore*1e3)
	}
	switch length, sloped := r.bossLength(p); {
	case !(t.Engagement > length*(1+1e-9)):
	case sloped:
		r.fault(join(at, "engagement"), "is longer than the boss")
	default:
		r.fault(join(at, "engagement"), "is longer than the boss; write at most \"%.5g mm\"", length*1e3)
	}
}

// steepest is the tangent of the largest angle of a tube to the wall's normal that is
// assessed, 60 deg, and over its cosine how much longer the way through the wall is [-].
const (
	steepest    = 1.7321
	longestPath = 2.0
)

// bossLength returns how long a boss is along its thread, by nominal walls [m]: its
// projections and the wall. Where the wall slopes, it is what a boss may come to at the
// most; how much of the thread counts is assessed.
func (r *reader) bossLength(p *Port) (length float64, sloped bool) {
	wall, sloped := r.t.Cylinder.Thickness, p.Offset != 0
	if h, on := r.headOf(p.On); on {
		wall, sloped = h.Thickness, p.Axis != "normal" && h.Shape != "flat" && !(p.Radius != nil && *p.Radius == 0)
	}
	if p.Insert != nil {
		wall = p.Insert.Thickness
	}
	switch {
	case p.Fit == "on":
		return p.Outside, false
	case sloped:
		return p.Outside + p.Inside + longestPath*wall + steepest*p.Tube.OutsideDiameter, true
	}
	return p.Outside + p.Inside + wall, false
}

// cover fills in the tolerance and the metal of a port's cover.
func (r *reader) cover(table string, p *Port) {
	if p.Cover == nil {
		return
	}
	at := join(table, "cover")
	material := r.t.Cylinder.Material
	if h, ok := r.headOf(p.On); ok {
		material = h.Material
	}
	r.orDefault(join(at, "material"), &p.Cover.Material, material, "as the wall")
	if r.wallTolerance(at, p.On, &p.Cover.UnderTolerance) && p.Cover.Thickness > 0 && p.Cover.Thickness <= p.Cover.UnderTolerance+r.corrosionOf(p.On) {
		r.fault(join(at, "thickness"), "nothing of the cover is left after tolerance and corrosion")
	}
}
