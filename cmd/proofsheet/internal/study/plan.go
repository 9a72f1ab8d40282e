package study

import (
	"context"
	"math"
	"slices"
	"sync"

	"proofsheet/report/check"
)

// A Way is how a check was decided in a scatter study.
type Way string

// The ways.
const (
	ViaTank    Way = "assessed" // every sample was assessed
	ViaSurface Way = "surface"  // by its surface, and assessed where that is near to failing
	ViaStill   Way = "constant" // the same in every tank that was assessed
	ViaPart    Way = "part"     // counted over the first samples, which were assessed
)

// A plan is how the samples of a study are decided: at first every one by
// assessing it.
type plan struct {
	sampler  *sampler
	samples  int
	known    []tried // the first samples, already assessed
	subset   int     // the first samples that are all assessed
	rest     Way     // of checks that are neither among surfaces nor stills
	widths   []float64
	basis    basis
	surfaces []surface
	stills   []answer // checks that do not move
	designed int      // tanks assessed that are no samples
	trials   int      // samples by which the surfaces were tried
	broken   bool     // off before there were any
}

const (
	trialSamples = 1000 // that are assessed to try surfaces, and to count over
	bandErrors   = 3    // a band is so many times the largest error
	leastBand    = 1e-6 // of rounding [-]
	budget       = 50   // one sample of so many may be assessed because it is near to failing
)

// leastSamples returns the number of samples up to which surfaces do not pay.
func (p *plan) leastSamples() int {
	fit, try := p.sampler.design()
	return 3 * (len(fit) + len(try) + trialSamples)
}

// decides reports whether any sample can be decided without assessing it.
func (p *plan) decides() bool { return len(p.surfaces)+len(p.stills) > 0 }

// make assesses the design and the first samples and makes surfaces of what they
// show. Broken off it leaves what was assessed.
func (p *plan) make(ctx context.Context, progress func(done, all int)) {
	p.rest, p.subset, p.widths = ViaPart, trialSamples, p.sampler.widths()
	fit, try := p.sampler.design()
	points := make([][]float64, trialSamples)
	for i := range points {
		points[i] = make([]float64, len(p.widths))
		p.sampler.scores(i, points[i])
	}
	points = append(append(points, fit...), try...)
	tanks := p.sampler.tryAll(ctx, points, progress)
	p.known = tanks[:trialSamples]
	design := tanks[trialSamples:]
	for _, d := range design {
		if d.done {
			p.designed++
		}
	}
	if p.broken = ctx.Err() != nil; p.broken {
		return
	}
	seen := newSeen(p.widths, design, p.known)
	if !seen.faulty { // where some tanks are none, a surface cannot tell which
		p.makeSurfaces(seen, len(fit))
	}
	spared := p.samples/budget - p.choose(ctx)
	if len(p.surfaces)+len(p.stills) < len(seen.ids) {
		p.subset = min(p.samples, p.subset+spared)
	}
}

// makeSurfaces sorts the checks and makes a surface of each that is smooth; the first
// points are those to fit it to.
func (p *plan) makeSurfaces(seen *seen, fit int) {
	var values [][]float64
	for _, id := range seen.ids {
		row := seen.rows[id]
		switch a, is := row.still(len(seen.points)); {
		case is:
			a.id = id
			p.stills = append(p.stills, a)
		case row.smooth(len(seen.points)):
			p.surfaces = append(p.surfaces, surface{id: id})
			values = append(values, row.logarithms)
		}
	}
	if len(values) == 0 {
		return
	}
	k, order := len(p.widths), 2
	if fit >= 5*termsOf(k, 3) {
		order = 3
	}
	p.basis, p.trials = newBasis(k, order), len(seen.points)-p.designed
	short := make([][]float64, len(values))
	for f, v := range values {
		short[f] = v[:fit]
	}
	coefficients, err := p.basis.fitted(seen.points[:fit], short)
	if err != nil {
		p.surfaces, p.basis = nil, basis{}
		return
	}
	for f := range p.surfaces {
		p.surfaces[f].coefficients = coefficients[f]
	}
	p.makeBands(seen.points, values)
}

// makeBands gives every surface its band, by the values that it should have had at the
// points.
func (p *plan) makeBands(points, values [][]float64) {
	terms := make([]float64, p.basis.size())
	for i, x := range points {
		p.basis.terms(x, terms)
		for f := range p.surfaces {
			s := &p.surfaces[f]
			s.band = math.Max(s.band, bandErrors*math.Abs(value(s.coefficients, terms)-values[f][i]))
		}
	}
	for f := range p.surfaces {
		p.surfaces[f].band += leastBand
	}
}

// choose keeps the surfaces that leave few samples to be assessed, and returns how
// many these are.
func (p *plan) choose(ctx context.Context) (near int) {
	counts := p.count(ctx, func(e *evaluator, add func(int)) {
		for j, g := range e.values {
			if math.Abs(g) <= p.surfaces[j].band {
				add(j)
			}
		}
	})
	order := make([]int, len(p.surfaces))
	for j := range order {
		order[j] = j
	}
	slices.SortStableFunc(order, func(a, b int) int { return counts[a] - counts[b] })
	sorted := make([]surface, len(order))
	for j, at := range order {
		sorted[j] = p.surfaces[at]
	}
	p.surfaces = sorted
	// A sample is assessed for the first of them that it is near to failing.
	counts = p.count(ctx, func(e *evaluator, add func(int)) {
		if j := e.near(); j >= 0 {
			add(j)
		}
	})
	keep := 0
	for keep < len(sorted) && near+counts[keep] <= p.samples/budget {
		near += counts[keep]
		keep++
	}
	p.surfaces = sorted[:keep]
	return near
}

// count walks over the samples that surfaces may be asked of and counts what visit
// says of each.
func (p *plan) count(ctx context.Context, visit func(e *evaluator, add func(int))) []int {
	if len(p.surfaces) == 0 {
		return nil
	}
	const chunk = 1024
	from := p.subset
	parts := (p.samples - from + chunk - 1) / chunk
	counts := make([]int, len(p.surfaces))
	var mu sync.Mutex
	shareOut(ctx, parts, nil, func(i int) {
		own, e := make([]int, len(counts)), p.evaluator()
		scores := make([]float64, len(p.widths))
		for j := from + i*chunk; j < min(from+(i+1)*chunk, p.samples); j++ {
			p.sampler.scores(j, scores)
			if e.at(scores) {
				visit(e, func(f int) { own[f]++ })
			}
		}
		mu.Lock()
		defer mu.Unlock()
		for f, n := range own {
			counts[f] += n
		}
	})
	return counts
}

// An evaluator asks the surfaces, for one processor.
type evaluator struct {
	p                *plan
	x, terms, values []float64
}

func (p *plan) evaluator() *evaluator {
	return &evaluator{p: p, x: make([]float64, len(p.widths)), terms: make([]float64, p.basis.size()), values: make([]float64, len(p.surfaces))}
}

// at asks the surfaces at deviates; false where they may not be asked.
func (e *evaluator) at(scores []float64) bool {
	if !inside(scores, e.p.widths, e.x) {
		return false
	}
	if len(e.values) > 0 {
		e.p.basis.terms(e.x, e.terms)
	}
	for j := range e.values {
		e.values[j] = value(e.p.surfaces[j].coefficients, e.terms)
	}
	return true
}

// near returns the first surface within whose band the values lie, -1 for none.
func (e *evaluator) near() int {
	for j, g := range e.values {
		if !(math.Abs(g) > e.p.surfaces[j].band) {
			return j
		}
	}
	return -1
}

// decides reports whether every surface decides the sample with these deviates.
func (e *evaluator) decides(scores []float64) bool {
	return e.at(scores) && e.near() < 0
}

// decided is the answer of a surface.
func decided(logarithm float64) answer {
	a := answer{status: check.Satisfied, margin: math.Expm1(logarithm)}
	if a.margin < 0 {
		a.status = check.NotSatisfied
	}
	return a
}
