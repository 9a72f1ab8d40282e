package study

import (
	"math"
	"sort"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// Scattered is what a scatter study says of one check.
type Scattered struct {
	ID          string // id@case
	Way         Way    // by which it was decided
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

// sums gathers one check over the samples. Margins are taken from a value near
// them: the square of a large margin would swallow its spread.
type sums struct {
	way                  Way
	made, fails, notMade int
	about                float64 // margin from which margins are taken, NaN before the first [-]
	n                    float64 // samples with a finite margin
	m, mm                float64 // sums of the margin and its square
	x, xx, mx            []float64
}

func newSums(k int, way Way, about float64) *sums {
	return &sums{way: way, about: about, x: make([]float64, k), xx: make([]float64, k), mx: make([]float64, k)}
}

// add enters one sample with the deviates of its inputs.
func (s *sums) add(a answer, scores []float64) {
	switch a.status {
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
	if math.IsNaN(a.margin) || math.IsInf(a.margin, 0) {
		return
	}
	if math.IsNaN(s.about) {
		s.about = a.margin
	}
	m := a.margin - s.about
	s.n++
	s.m, s.mm = s.m+m, s.mm+m*m
	for k, x := range scores {
		s.x[k], s.xx[k], s.mx[k] = s.x[k]+x, s.xx[k]+x*x, s.mx[k]+m*x
	}
}

// join enters the sums of other samples, taken from the same margin.
func (s *sums) join(o *sums) {
	s.made, s.fails, s.notMade = s.made+o.made, s.fails+o.fails, s.notMade+o.notMade
	s.n, s.m, s.mm = s.n+o.n, s.m+o.m, s.mm+o.mm
	for k := range s.x {
		s.x[k], s.xx[k], s.mx[k] = s.x[k]+o.x[k], s.xx[k]+o.xx[k], s.mx[k]+o.mx[k]
	}
}

// settled turns the sums into answers, the likeliest failure first, then what
// has its mean margin the fewest deviations from failing.
func settled(all map[string]*sums, inputs []tank.Scatter) (out []Scattered) {
	for id, s := range all {
		x := Scattered{ID: id, Way: s.way, Samples: s.made, Fails: s.fails, NotMade: s.notMade, Mean: math.NaN(), Deviation: math.NaN()}
		if s.made == 0 && s.notMade == 0 {
			continue
		}
		x.Probability, x.Low, x.High = Wilson(s.fails, s.made)
		if s.n > 1 {
			x.Mean = s.about + s.m/s.n
			x.Deviation = math.Sqrt(math.Max(0, (s.mm-s.m*s.m/s.n)/(s.n-1)))
			x.Sensitivity = s.influences(inputs)
		}
		out = append(out, x)
	}
	sort.Slice(out, func(i, j int) bool { return out[i].before(out[j]) })
	return out
}

// before reports whether a check is printed before another: it fails in a larger
// share, or is nearer to.
func (x Scattered) before(o Scattered) bool {
	p, q := 0.0, 0.0
	if x.Fails > 0 {
		p = x.Probability
	}
	if o.Fails > 0 {
		q = o.Probability
	}
	if p != q {
		return p > q
	}
	if a, b := x.index(), o.index(); a != b {
		return a < b
	}
	return x.ID < o.ID
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

// repeat enters an answer that does not move for every sample of others, whose
// margins are 0.
func (s *sums) repeat(a answer, others *sums) {
	switch a.status {
	case check.NotAssessed:
		s.notMade += others.made
		return
	case check.NotApplicable:
		return
	case check.NotSatisfied:
		s.fails += others.made
	}
	s.made += others.made
	if math.IsNaN(a.margin) || math.IsInf(a.margin, 0) {
		return
	}
	s.n += others.n
	for k := range s.x {
		s.x[k], s.xx[k] = s.x[k]+others.x[k], s.xx[k]+others.xx[k]
	}
}

// Unseen returns the share of samples [-] that with 95 % confidence is the most whose error
// is above the largest of n errors seen in tanks drawn alike:
//
//	1 − 0.05^(1/n)
//
// Source: tolerance limit without a distribution, Wilks 1941 (recalled).
func Unseen(n int) float64 {
	if n < 1 {
		return 1
	}
	return -math.Expm1(math.Log(0.05) / float64(n))
}
