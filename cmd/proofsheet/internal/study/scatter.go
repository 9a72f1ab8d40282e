package study

import (
	"context"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"sort"

	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// Seed is that of every scatter study: the same file gives the same numbers.
const Seed = 20260131

// A Scattered is what a scatter study says of one check.
type Scattered struct {
	ID          string // id@case
	Samples     int    // in which it was made
	Fails       int    // in which it was not satisfied
	NotMade     int    // in which it was not assessed
	Probability float64
	Low, High   float64     // 95 % confidence interval of the probability, Wilson's [-]
	Mean        float64     // margin [-]
	Deviation   float64     // of the margin [-]
	Sensitivity []Influence // the strongest first
}

// An Influence is how strongly the margin of a check follows an input.
type Influence struct {
	Key         string
	Correlation float64 // of margin and input, from -1 to 1 [-]
}

// A Scatter is the whole answer of a scatter study.
type Scatter struct {
	Asked, Done int // samples
	Faulty      int // samples whose tank could not be read or assessed: they count as failures of the study, not of a check
	Fault       string
	Inputs      []tank.Scatter
	Checks      []Scattered // those that fail anywhere or scatter, the likeliest failure first
}

// Scatters samples the inputs of [scatter] by a Latin hypercube: each input's
// range is divided into as many parts of equal probability as there are samples, and
// each part is met once. Every sample is assessed on all processors, with the
// numerical shell or, some times faster, without. Memory does
// not grow with the samples but for the order in which parts are met.
//
// Source: McKay, Beckman and Conover 1979 (recalled); interval of Wilson 1927
// (recalled). The answer is only as good as the inputs.
func Scatters(ctx context.Context, t *tank.Tank, samples int, withShell bool, progress func(done, all int)) (*Scatter, error) {
	if len(t.Scatter) == 0 {
		return nil, errors.New("the file has no [scatter]; write lines such as \"cylinder.thickness\" = \"normal 0.05 mm\" under it")
	}
	if samples < 2 {
		return nil, fmt.Errorf("%d samples tell nothing; ask for some hundreds", samples)
	}
	nominal := make([]float64, len(t.Scatter))
	for i, s := range t.Scatter {
		var err error
		if nominal[i], err = t.Number(s.Key); err != nil {
			return nil, err
		}
	}
	parts := hypercube(len(t.Scatter), samples)
	out := &Scatter{Asked: samples, Inputs: t.Scatter}
	all := map[string]*sums{}
	// In batches, each entered in its order: the same numbers on any machine.
	for from := 0; from < samples && ctx.Err() == nil; from += batch {
		drawn := make([]draw, min(batch, samples-from))
		shareOut(ctx, len(drawn), func(done, _ int) {
			if progress != nil {
				progress(from+done, samples)
			}
		}, func(i int) { drawn[i] = parts.draw(t, nominal, from+i, withShell) })
		for _, d := range drawn {
			out.enter(d, all)
		}
	}
	out.Checks = settled(all, t.Scatter)
	return out, nil
}

// batch is how many samples are held at a time.
const batch = 256

// A draw is one sample with its answer.
type draw struct {
	done   bool
	scores []float64 // deviate of each input [-]
	checks []check.Result
	err    error
}

// draw makes sample i.
func (c cube) draw(t *tank.Tank, nominal []float64, i int, withShell bool) draw {
	d := draw{done: true, scores: make([]float64, len(t.Scatter))}
	values := map[string]float64{}
	for k, s := range t.Scatter {
		d.scores[k] = score(s.Shape, c.at(k, i))
		values[s.Key] = nominal[k] + s.Spread*d.scores[k]
	}
	d.checks, d.err = sample(t, values, withShell)
	return d
}

// enter adds a sample to the sums.
func (out *Scatter) enter(d draw, all map[string]*sums) {
	switch {
	case !d.done:
		return
	case d.err != nil:
		out.Done++
		out.Faulty++
		if out.Fault == "" {
			out.Fault = firstLine(d.err)
		}
		return
	}
	out.Done++
	for _, r := range d.checks {
		id := report.FullID(r)
		if all[id] == nil {
			all[id] = newSums(len(d.scores))
		}
		all[id].add(r, d.scores)
	}
}

// sample assesses one sample.
func sample(t *tank.Tank, values map[string]float64, withShell bool) ([]check.Result, error) {
	changed, err := t.WithNumbers(values)
	if err != nil {
		return nil, err
	}
	if !withShell {
		return assess.ChecksWithoutShell(changed)
	}
	return assess.Checks(changed)
}

// score turns a probability u [-] into a deviate: standard normal, or from -1 to 1.
func score(shape string, u float64) float64 {
	if shape == "normal" {
		return distuv.UnitNormal.Quantile(u)
	}
	return 2*u - 1
}

// A cube is the order in which each input meets its parts, and where in each.
type cube struct {
	order [][]int32
	shift [][]float32
}

// hypercube draws n samples of k inputs, always the same.
func hypercube(k, n int) cube {
	rng := rand.New(rand.NewPCG(Seed, uint64(n)))
	c := cube{}
	for range k {
		order, shift := make([]int32, n), make([]float32, n)
		for i, p := range rng.Perm(n) {
			order[i], shift[i] = int32(p), rng.Float32()
		}
		c.order, c.shift = append(c.order, order), append(c.shift, shift)
	}
	return c
}

// at returns the probability that input k has in sample i [-], never 0 or 1.
func (c cube) at(k, i int) float64 {
	n := float64(len(c.order[k]))
	return math.Min(math.Max((float64(c.order[k][i])+float64(c.shift[k][i]))/n, 1e-12), 1-1e-12)
}

// sums gathers one check over the samples.
type sums struct {
	made, fails, notMade int
	n                    float64 // samples with a finite margin
	m, mm                float64 // sums of the margin and its square
	x, xx, mx            []float64
}

func newSums(k int) *sums {
	return &sums{x: make([]float64, k), xx: make([]float64, k), mx: make([]float64, k)}
}

// add enters one sample with the deviates of its inputs.
func (s *sums) add(r check.Result, scores []float64) {
	switch r.Status() {
	case check.NotSatisfied:
		s.made, s.fails = s.made+1, s.fails+1
	case check.Satisfied:
		s.made++
	case check.NotAssessed:
		s.notMade++
		return
	default:
		return
	}
	m := r.Margin()
	if math.IsNaN(m) || math.IsInf(m, 0) {
		return
	}
	s.n++
	s.m, s.mm = s.m+m, s.mm+m*m
	for k, x := range scores {
		s.x[k], s.xx[k], s.mx[k] = s.x[k]+x, s.xx[k]+x*x, s.mx[k]+m*x
	}
}

// settled turns the sums into answers, the likeliest failure first, then what
// has its mean margin the fewest deviations from failing.
func settled(all map[string]*sums, inputs []tank.Scatter) (out []Scattered) {
	for id, s := range all {
		x := Scattered{ID: id, Samples: s.made, Fails: s.fails, NotMade: s.notMade, Mean: math.NaN(), Deviation: math.NaN()}
		if s.made == 0 && s.notMade == 0 {
			continue
		}
		x.Probability, x.Low, x.High = Wilson(s.fails, s.made)
		if s.n > 1 {
			x.Mean = s.m / s.n
			x.Deviation = math.Sqrt(math.Max(0, (s.mm-s.m*s.m/s.n)/(s.n-1)))
			x.Sensitivity = s.influences(inputs)
		}
		out = append(out, x)
	}
	sort.Slice(out, func(i, j int) bool {
		a, b := out[i], out[j]
		if a.Fails != b.Fails {
			return a.Fails > b.Fails
		}
		if x, y := a.index(), b.index(); x != y {
			return x < y
		}
		return a.ID < b.ID
	})
	return out
}

// still is the deviation of a margin below which it does not move [-].
const still = 1e-9

// index returns by how many deviations the mean margin is above failing, without
// end where it does not move.
func (x Scattered) index() float64 {
	if !(x.Deviation > still) {
		return math.Inf(1)
	}
	return x.Mean / x.Deviation
}

// influences returns the correlation of the margin with each input.
func (s *sums) influences(inputs []tank.Scatter) (out []Influence) {
	for k, in := range inputs {
		c := s.mx[k] - s.m*s.x[k]/s.n
		d := math.Sqrt((s.mm - s.m*s.m/s.n) * (s.xx[k] - s.x[k]*s.x[k]/s.n))
		if r := c / d; math.Sqrt(math.Max(0, (s.mm-s.m*s.m/s.n)/s.n)) > still && d > 0 && !math.IsNaN(r) {
			out = append(out, Influence{in.Key, math.Max(-1, math.Min(1, r))})
		}
	}
	sort.Slice(out, func(i, j int) bool { return math.Abs(out[i].Correlation) > math.Abs(out[j].Correlation) })
	return out
}

// Wilson returns the share of k in n and its 95 % interval [-]; without any the
// interval is everything.
//
//	(p + z²/2n ± z √(p(1 − p)/n + z²/4n²))/(1 + z²/n), z = 1.95996
//
// Source: Wilson 1927 (recalled).
func Wilson(k, n int) (p, low, high float64) {
	if n == 0 {
		return math.NaN(), 0, 1
	}
	const z = 1.959963984540054
	N := float64(n)
	p = float64(k) / N
	mid, half, all := p+z*z/(2*N), z*math.Sqrt(p*(1-p)/N+z*z/(4*N*N)), 1+z*z/N
	return p, math.Max(0, (mid-half)/all), math.Min(1, (mid+half)/all)
}
