package revolution

import (
	"fmt"
	"math"
)

// A pencil is K + λ G of one number of waves, scaled and held. One pencil works
// at one λ at a time.
type pencil struct {
	k, g, a *band
	s       []float64 // the scale, 0 where held
}

func newPencil(n, width int) *pencil {
	return &pencil{k: newBand(n, width), g: newBand(n, width), a: newBand(n, width)}
}

// hold scales both matrices by the root of the diagonal of K.
func (p *pencil) hold(held []bool) error {
	p.s = make([]float64, p.k.n)
	s := p.s
	for i := range s {
		if d := p.k.a[i*(p.k.k+1)]; !held[i] {
			if s[i] = 1 / math.Sqrt(d); !(d > 0) {
				return errBase
			}
		}
	}
	p.k.hold(s)
	p.g.hold(s)
	for i, h := range held {
		if h {
			p.g.a[i*(p.g.k+1)] = 0
		}
	}
	return nil
}

var errBase = fmt.Errorf("the base state buckles by itself")

// below returns the number of load factors from 0 to λ at which the wall
// buckles: the negative pivots of K + λ G (Sturm's count, by Sylvester's law).
func (p *pencil) below(λ float64) int {
	for i, x := range p.k.a {
		p.a.a[i] = x + λ*p.g.a[i]
	}
	return p.a.ldl()
}

// lowest returns the least load factor under most and its mode. It halves the
// range by counts until one factor, or several as close as a thousandth, is left,
// finds it by inverse iteration, and counts again on both sides of it. ok is
// false where none lies under most.
func (p *pencil) lowest(most float64) (λ float64, mode []float64, ok bool, err error) {
	count := p.below(most)
	if count == 0 {
		return math.Inf(1), nil, false, nil
	}
	if p.negative() > 0 {
		return math.NaN(), nil, false, errBase
	}
	low, high := 0.0, most
	for high-low > 1e-3*high && (count > 1 || high-low > 0.05*high) {
		mid := (low + high) / 2
		if n := p.below(mid); n > 0 {
			high, count = mid, n
		} else {
			low = mid
		}
	}
	λ, mode = p.iterate((low + high) / 2)
	if !(λ >= low*(1-1e-6) && λ <= high*(1+1e-6)) || p.below(λ*(1-1e-5)) != 0 || p.below(λ*(1+1e-5)) == 0 {
		for high-low > 1e-7*high {
			if mid := (low + high) / 2; p.below(mid) > 0 {
				high = mid
			} else {
				low = mid
			}
		}
		_, mode = p.iterate(high)
		λ = high
	}
	return λ, mode, true, nil
}

// negative counts the negative pivots of K alone.
func (p *pencil) negative() int {
	copy(p.a.a, p.k.a)
	return p.a.ldl()
}

// iterate finds the factor nearest σ by inverse iteration with the shift σ and
// the quotient of Rayleigh.
func (p *pencil) iterate(σ float64) (λ float64, mode []float64) {
	p.below(σ)
	n := p.k.n
	x, y := make([]float64, n), make([]float64, n)
	for i := range x {
		x[i] = 1 + 0.5*math.Sin(float64(7*i)) // any start that no mode is free of
	}
	λ = math.NaN()
	for range 60 {
		p.g.apply(y, x)
		p.a.solve(y)
		most := 0.0
		for _, v := range y {
			most = math.Max(most, math.Abs(v))
		}
		for i, v := range y {
			x[i] = v / most
		}
		was := λ
		λ = -p.k.times(x, x) / p.g.times(x, x)
		if math.Abs(λ-was) < 1e-10*math.Abs(λ) {
			break
		}
	}
	return λ, x
}

// unscaled turns a mode of the scaled matrices into displacements.
func (p *pencil) unscaled(x []float64) []float64 {
	out := make([]float64, len(x))
	for i, s := range p.s {
		out[i] = x[i] * s
	}
	return out
}
