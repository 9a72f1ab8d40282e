package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/shell/revolution"
)

// A loneHead is a head on as much of the cylinder as its joint reaches, under a
// uniform pressure: what does not depend on the rest of the tank.
type loneHead struct {
	model    *revolution.Model
	segments []revolution.Segment
	err      error
	// The pressure at which the perfect, elastic wall bifurcates [Pa], with its
	// waves; NaN with the reason where it was not run.
	bifurcates float64
	waves      int
	why        string
}

// Of a lone head: the cylinder goes along for so many √(R t), and bifurcation is
// not looked for where a rough estimate puts it beyond so many times meop.
const (
	loneReach  = 12.0
	farBeyond  = 25.0
	unitOfLoad = 1e5 // [Pa]: numbers of the order of one in the solver
)

// lone returns a head by itself at T [K], remembered.
func (m *model) lone(h *headPart, T float64) *loneHead {
	key := loneKey{h.end, T}
	if got, ok := m.lones[key]; ok {
		return got
	}
	got := &loneHead{bifurcates: math.NaN()}
	if got.model, got.segments, got.err = m.loneModel(h, T, 0, 0); got.err == nil {
		got.err = got.bifurcate(m.t.Pressure.MEOP)
	}
	if m.lones == nil {
		m.lones = map[loneKey]*loneHead{}
	}
	m.lones[key] = got
	return got
}

type loneKey struct {
	end string
	T   float64 // [K]
}

// loneModel makes the model, with the yield strengths of head and cylinder [Pa]
// where plastic collapse is looked for, 0 where not.
func (m *model) loneModel(h *headPart, T, yieldHead, yieldCylinder float64) (*revolution.Model, []revolution.Segment, error) {
	k := shellKey{T: T}
	head, err := m.shellHead(h, k)
	if err != nil {
		return nil, nil, err
	}
	if head.area > 0 {
		return nil, nil, errors.New("a head with an open tip is not looked at by itself")
	}
	var s revolution.Structure
	for _, p := range head.parts {
		e, ν, err := m.elastic(p.owner, T)
		if err != nil {
			return nil, nil, err
		}
		s.Segments = append(s.Segments, revolution.Segment{Name: p.Name, Curve: p.Curve, Thickness: p.wall, Modulus: e, Poisson: ν, Yield: yieldHead, Linked: true})
	}
	R, t := m.midCylinder(k)
	e, ν, err := m.elastic(m.cyl, T)
	if err != nil {
		return nil, nil, err
	}
	joint := len(s.Segments)
	to := -head.beyond + math.Min(m.t.Cylinder.Length/2+head.beyond, loneReach*math.Sqrt(R*t))
	s.Segments = append(s.Segments, revolution.Segment{Name: "cylinder", Thickness: t, Modulus: e, Poisson: ν, Yield: yieldCylinder, Linked: true,
		Curve: revolution.Line{From: revolution.Point{R: R, Z: -head.beyond}, To: revolution.Point{R: R, Z: to}}})
	if h.in.Ring != nil {
		s.Rings = append(s.Rings, m.seamRing(h, joint, R, t, k))
	}
	s.Supports = []revolution.Support{{Node: len(s.Segments), Axial: true, Rotation: true, Waves: true}}
	made, err := revolution.New(s)
	return made, s.Segments, err
}

// bifurcate finds the pressure at which the wall bifurcates, unless the estimate
// of a local sphere or cylinder puts it far beyond meop [Pa].
func (l *loneHead) bifurcate(meop float64) error {
	u, err := l.model.Solve(revolution.Uniform(unitOfLoad))
	if err != nil {
		return err
	}
	least := math.Inf(1)
	for _, s := range u.Stations {
		if n := -math.Min(s.NPhi, s.NTheta); n > 0 {
			g := l.segments[s.Segment] // E t²/(r₂ √(3(1 − ν²))), r₂ = Slender t
			least = math.Min(least, g.Modulus*g.Thickness/(s.Slender*math.Sqrt(3*(1-g.Poisson*g.Poisson)))/n)
		}
	}
	if p := least * unitOfLoad; !(p <= farBeyond*meop) {
		l.why = fmt.Sprintf("not run: nothing in the wall is compressed enough to buckle below %.0f times meop", farBeyond)
		return nil
	}
	b, err := l.model.Bifurcation(revolution.Load{}, revolution.Uniform(unitOfLoad))
	if err != nil {
		return err
	}
	l.bifurcates, l.waves = b.Factor*unitOfLoad, b.Waves
	if math.IsInf(b.Factor, 1) {
		l.bifurcates, l.why = math.NaN(), fmt.Sprintf("nothing buckles below %.3g bar", b.Highest*unitOfLoad/1e5)
	}
	return nil
}

// bifurcationQuantities returns, for each head and case, how many times the
// case's highest pressure on it would make the perfect elastic wall bifurcate.
func (r *run) bifurcationQuantities() (out []report.NamedQuantity) {
	for _, h := range r.ends() {
		for _, c := range r.cases {
			q := report.NamedQuantity{Key: h.name + ".bifurcation_factor@" + c.name, Value: math.NaN(), Unit: "1"}
			l := r.lone(h, c.temperature)
			switch {
			case l.err != nil:
				q.Note = l.err.Error()
			case math.IsNaN(l.bifurcates):
				q.Note = l.why
			default:
				if p := r.highestOn(h, c); p > 0 {
					q.Value = l.bifurcates / p
				}
				q.Note = fmt.Sprintf("perfect elastic wall, linear, %d waves, at the highest pressure on the head: no knock-down, and a knuckle usually yields first", l.waves)
			}
			out = append(out, q)
		}
	}
	return out
}

// highestOn returns the highest pressure on a head in a case [Pa].
func (r *run) highestOn(h *headPart, c *loadCase) float64 {
	lo, hi := r.in.Bounds()
	most := math.Inf(-1)
	for _, at := range c.moments() {
		for _, s := range at.states {
			from, to := r.t.Cylinder.Length, hi
			if h.end == "aft" {
				from, to = lo, 0
			}
			p, _ := s.HighestPressure(from, to)
			most = math.Max(most, p)
		}
	}
	return most
}

// thinDish is t/L below which the limit pressure of a dished head has no formula.
const thinDish = 0.002

// collapseNotes says at what pressure a head whose joint or knuckle does not hold,
// or whose knuckle is too thin for the formula, would collapse plastically. It is
// no allowable: it tells how far a failing design is from one that stands.
func (r *run) collapseNotes() (out []string) {
	for _, h := range r.ends() {
		fails := h.in.CrownRadius != nil && h.least < thinDish**h.in.CrownRadius
		for _, k := range r.checks {
			fails = fails || (k.ID == h.name+"/junction" || k.ID == h.name+"/knuckle") && k.Status() == check.NotSatisfied
		}
		if !fails {
			continue
		}
		p, err := r.collapse(h)
		if err != nil {
			out = append(out, h.title+": no limit load of the numerical shell: "+strings.ReplaceAll(err.Error(), "\n", "; "))
			continue
		}
		out = append(out, fmt.Sprintf("%s: plastic limit pressure %.2f bar by the numerical shell (elastic, perfectly plastic at the least yield strength, small displacements, gas pressure): "+
			"%.2f times meop. It holds nothing by itself: a knuckle, thicker walls or a ring at the joint are the cure", h.title, math.Floor(p/1e3)/100, p/r.t.Pressure.MEOP))
	}
	return out
}

// collapse returns the plastic limit pressure of a head with its joint [Pa], at
// the lower of the yield strengths of each wall and its weld zone, hottest case.
func (r *run) collapse(h *headPart) (float64, error) {
	T := hottest(r.cases)
	least := func(p *part) (float64, error) {
		x := r.metals.at(p.material, r.weldsOf(p), p.nominal, T)
		return math.Min(x.parent.Yield.Value, x.zone.Yield.Value), errors.Join(p.refused, x.parentErr, x.zoneErr)
	}
	head, err1 := least(&h.part)
	cylinder, err2 := least(r.cyl)
	if err := errors.Join(err1, err2); err != nil {
		return math.NaN(), err
	}
	m, _, err := r.loneModel(h, T, head, cylinder)
	if err != nil {
		return math.NaN(), err
	}
	c, err := m.LimitLoad(revolution.Load{}, revolution.Uniform(unitOfLoad))
	return c.Factor * unitOfLoad, err
}

// stiffening says what the moderate-rotation answer makes of the first case.
func (r *run) stiffening() string {
	s := r.cases[0].states[0]
	st := r.shellOf(s, r.cases[0])
	if st.err != nil {
		return ""
	}
	u, err := st.whole.model.SolveModerate(r.shellPressure(st.whole, s))
	if err != nil {
		return "; with moderate rotations there is no answer: " + err.Error()
	}
	peak := func(all []revolution.Station) (most float64) {
		for _, q := range all {
			most = math.Max(most, math.Max(q.Inside.Equivalent(), q.Outside.Equivalent()))
		}
		return most
	}
	return fmt.Sprintf("; in case %s the largest stress is %.3f times the linear one with moderate rotations: the linear answer governs", r.cases[0].name, peak(u.Stations)/peak(st.pressure.Stations))
}
