package port

import (
	"fmt"
	"math"
	"sync"

	"proofsheet/report/check"
)

// Unit strengths of a weld or neck over the allowable stress [-].
//
// Source: ASME VIII-1 UW-15(c), UG-45(c), recalled.
const (
	filletShear   = 0.49
	grooveTension = 0.74
	grooveShear   = 0.60
	neckShear     = 0.70
)

// FilletFactor returns what the fillet round the tube is worth [-] over a full
// fillet round the tube's outside diameter: the mean along the true outline of
//
//	min(1, √2 cos(δ/2)),  0 where δ < 60°
//
// times perimeter/(π OD), δ the angle between tube and wall at that point: inside
// cos δ = sin φ cos(ψ − θ), φ the wall's normal angle; outside 180° less that. Beside the
// cylinder's radius as in meanHillside.
//
// Source: computed; loss of the root under 60 degrees recalled (AWS D1.1 skewed
// T-joints). Test: weld_test.go.
func (p Port) FilletFactor(w Wall, outside bool) (float64, error) {
	if _, err := p.Chords(w); err != nil {
		return math.NaN(), err
	}
	if !p.Parallel && !p.hillside(w) {
		return 1, nil
	}
	key := ringKey{p.OutsideDiameter, p.Radius, p.Offset, w, outside}
	if v, ok := ringFactors.get(key); ok {
		return v, nil
	}
	mean := p.meanFillet
	if p.hillside(w) {
		mean = p.meanHillside
	}
	v := mean(w, outside)
	ringFactors.put(key, v)
	return v, nil
}

// meanFillet integrates [Port.FilletFactor] round the ring [-].
func (p Port) meanFillet(w Wall, outside bool) float64 {
	a := p.OutsideDiameter / 2
	angle := func(ψ float64) float64 { // δ at ψ [rad]
		r, θ := p.point(a, ψ)
		cos := math.Sin(w.normalAngle(r)) * math.Cos(ψ-θ)
		if outside {
			cos = -cos
		}
		return math.Acos(cos)
	}
	return meanOverRing(angle, func(ψ float64) float64 { return math.Hypot(a, p.rise(w, a, ψ)) }) / (math.Pi * a)
}

// meanOverRing integrates what the fillet is worth over half of the ring [m], its angle δ
// [rad] and the length of the outline over ψ [m/rad] given.
func meanOverRing(angle, length func(ψ float64) float64) float64 {
	worth := func(ψ float64) float64 {
		return math.Min(1, math.Sqrt2*math.Cos(angle(ψ)/2)) * length(ψ)
	}
	// Both halves of the ring are alike. The value jumps at δ = 60° and bends at
	// 90°: each stretch between is smooth.
	const steps = 24
	sum := 0.0
	for i := range steps {
		from, to := float64(i)*math.Pi/steps, float64(i+1)*math.Pi/steps
		for _, δ := range []float64{math.Pi / 3, math.Pi / 2} {
			if at := crossing(angle, δ, from, to); at > from && at < to {
				if angle((from+at)/2) >= math.Pi/3 {
					sum += gauss(worth, from, at)
				}
				from = at
			}
		}
		if angle((from+to)/2) >= math.Pi/3 {
			sum += gauss(worth, from, to)
		}
	}
	return sum
}

// A ringKey is all that a fillet's factor depends on.
type ringKey struct {
	outsideDiameter, radius, offset float64 // [m]
	wall                            Wall
	outside                         bool
}

// ringFactors keeps the factors of late: one tank asks for each in every case,
// at every pressure that is tried.
var ringFactors ringMemo

// A ringMemo is a bounded memory of factors [-], safe for several goroutines.
type ringMemo struct {
	mu    sync.Mutex
	known map[ringKey]float64
}

// mostRings bounds the memory; when it is full it starts again.
const mostRings = 4096

func (m *ringMemo) get(k ringKey) (float64, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	v, ok := m.known[k]
	return v, ok
}

func (m *ringMemo) put(k ringKey, v float64) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if m.known == nil || len(m.known) >= mostRings {
		m.known = map[ringKey]float64{}
	}
	m.known[k] = v
}

// crossing returns where f passes the level between a and b, or a where it does
// not, by bisection.
func crossing(f func(float64) float64, level, a, b float64) float64 {
	low := f(a) < level
	if low == (f(b) < level) {
		return a
	}
	for range 50 {
		if m := (a + b) / 2; (f(m) < level) == low {
			a = m
		} else {
			b = m
		}
	}
	return b
}

// gauss integrates a smooth function over a short stretch: three points of
// Gauss and Legendre.
func gauss(f func(float64) float64, a, b float64) float64 {
	m, h := (a+b)/2, (b-a)/2
	x := h * math.Sqrt(0.6)
	return h / 9 * (5*f(m-x) + 8*f(m) + 5*f(m+x))
}

// A WeldPath is one way in which the reinforcement could tear from the wall.
type WeldPath struct {
	Name     string
	Needed   float64 // lesser of W and the path's own [N]
	Strength float64 // of the welds and the neck it crosses, half the ring [N]
}

// WeldPaths returns the three paths of one plane:
//
//	W    = [A − A1 + 2 tn′ fr1 (E1 t − F tr)] Sv
//	W1-1 = (A2 + A5 + A41 + A42) Sv                        outer fillet + neck shear
//	W2-2 = (A2 + A3 + A41 + A43 + 2 tn′ t fr1) Sv          tube fillets + groove
//	W3-3 = (A2 + A3 + A5 + A41 + A42 + A43 + 2 tn′ t fr1) Sv   outer fillet + groove + inside fillet
//
// without the terms in tn′ for a tube set on the wall. Half-ring strengths [N]: fillet (π/2) D leg 0.49 S times [Port.FilletFactor],
// neck (π/2)(OD − tn) tn 0.70 Sn, groove (π/2) OD depth 0.74 S, S the weaker of
// the metals joined; D of a pad its least diameter. A negative A1 raises W.
//
// Source: ASME VIII-1 UG-41(b), UW-15 (paths and W read in a posted sheet; unit
// strengths and the welds each path crosses recalled).
func (r AreaReport) WeldPaths(pl Plane) ([]WeldPath, error) {
	p, s := r.Port, r.Strengths
	out, err := p.FilletFactor(r.Wall, true)
	if err != nil {
		return nil, err
	}
	in, err := p.FilletFactor(r.Wall, false)
	if err != nil { // not reached: the outside one has the same range
		return nil, err
	}
	const half = math.Pi / 2
	weak, od := math.Min(s.Wall, s.Tube), p.OutsideDiameter
	neck := half * (od - p.TubeWall) * p.TubeWall * neckShear * s.Tube
	groove := half * od * p.Groove * grooveTension * weak
	a, inside := pl.Whole, 0.0
	hasOutside, hasInside := p.fillets(r.Wall, r.Chords.Obliquity)
	if hasInside {
		inside = half * od * p.InsideLeg * filletShear * weak * in
	}
	outer, tubeStrength := 0.0, weak
	if p.Pad != nil {
		outer = half * p.Pad.least(od) * p.Pad.Leg * filletShear * math.Min(s.Pad, s.Wall)
		tubeStrength = math.Min(s.Pad, s.Tube)
	}
	tube := 0.0
	if hasOutside {
		tube = half * od * p.OutsideLeg * filletShear * tubeStrength * out
	}
	if p.Pad == nil {
		outer = tube
	}
	fr1, t := r.Ratios.FR1, p.atHole(r.Wall)
	if p.Fit == On { // no tube in the wall
		fr1 = 0
	}
	pierced := 2 * pl.TubeAlong * t * fr1
	w := (a.Required - a.A1 + 2*pl.TubeAlong*fr1*(pl.Efficiency*t-pl.Strip)) * s.Wall
	least := func(sum float64) float64 { return math.Max(0, math.Min(w, sum*s.Wall)) }
	return []WeldPath{
		{"1-1", least(a.A2 + a.A5 + a.A41 + a.A42), outer + neck},
		{"2-2", least(a.A2 + a.A3 + a.A41 + a.A43 + pierced), tube + groove + inside},
		{"3-3", least(a.A2 + a.A3 + a.A5 + a.A41 + a.A42 + a.A43 + pierced), outer + groove + inside},
	}, nil
}

// pathReadings returns every path of both planes as a comparison; none with full
// penetration, which needs none.
func (r AreaReport) pathReadings() ([]reading, error) {
	if r.Port.FullGroove {
		return nil, nil
	}
	var all []reading
	for _, pl := range []Plane{r.Meridional, r.Transverse} {
		paths, err := r.WeldPaths(pl)
		if err != nil { // not reached: what a fillet factor refuses leaves the report incomplete
			return nil, err
		}
		for _, q := range paths {
			what := fmt.Sprintf("weld path %s, %s plane", q.Name, pl.Name)
			all = append(all, reading{what, check.N(fmt.Sprintf("W_%d", len(all)+1), "to be carried, "+what, q.Needed), check.N(fmt.Sprintf("ΣR_%d", len(all)+1), "strength, "+what, q.Strength)})
		}
	}
	return all, nil
}
