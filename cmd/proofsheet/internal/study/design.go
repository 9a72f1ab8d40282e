package study

import "math"

// reach is how far from its mean a normal input is followed by the surfaces, in
// deviations: 999 samples of a thousand. What lies further out is assessed.
const reach = 3.3

// widths returns the width of each input that surfaces span, in deviates.
func (s *sampler) widths() []float64 {
	out := make([]float64, len(s.inputs))
	for k, in := range s.inputs {
		if out[k] = reach; in.Shape == "uniform" {
			out[k] = 1
		}
	}
	return out
}

// mostCorners is how many corners of the range are assessed at most.
const mostCorners = 32

// design returns the deviates of the tanks that surfaces are fitted to, and of those
// apart from them by which they are tried. The range is filled evenly, unlike
// the samples, and has its corners and the ends of its axes among the first.
func (s *sampler) design() (fit, try [][]float64) {
	widths := s.widths()
	k := len(widths)
	n := max(300+30*k, 3*termsOf(k, 2))
	even := hypercube(Seed+1, k, n)
	for i := range n {
		x := make([]float64, k)
		for j, w := range widths {
			x[j] = w * (2*even.at(j, i) - 1)
		}
		if i%4 == 3 {
			try = append(try, x)
		} else {
			fit = append(fit, x)
		}
	}
	fit = append(fit, make([]float64, k))
	for j, w := range widths {
		for _, side := range []float64{-w, w} {
			x := make([]float64, k)
			x[j] = side
			fit = append(fit, x)
		}
	}
	return append(fit, corners(widths)...), try
}

// corners returns the corners of the range, of many inputs some of them.
func corners(widths []float64) (out [][]float64) {
	k := len(widths)
	n := mostCorners
	if k < 5 {
		n = 1 << k
	}
	for i := range n {
		bits := uint64(i)
		if k > 5 {
			bits = mixed(Seed ^ uint64(i))
		}
		x := make([]float64, k)
		for j, w := range widths {
			if x[j] = -w; mixedBit(bits, j) {
				x[j] = w
			}
		}
		out = append(out, x)
	}
	return out
}

// mixedBit returns bit j of a number that goes on as long as it is asked.
func mixedBit(bits uint64, j int) bool {
	for ; j >= 64; j -= 64 {
		bits = mixed(bits)
	}
	return bits>>j&1 == 1
}

// inside reports whether deviates lie where surfaces may be asked, and writes them
// as surfaces want them, from -1 to 1, into x.
func inside(scores, widths, x []float64) bool {
	for k, s := range scores {
		if x[k] = s / widths[k]; math.Abs(x[k]) > 1 {
			return false
		}
	}
	return true
}
