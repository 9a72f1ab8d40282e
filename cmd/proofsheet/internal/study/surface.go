package study

import (
	"errors"
	"math"

	"gonum.org/v1/gonum/mat"
)

// A basis is the products of inputs that a surface is made of: 1, every input,
// every product of two and, of third order, of three. Inputs run from -1 to 1.
type basis struct {
	inputs, order int
	from, by      []int // term j is term from[j] times input by[j]; the first is 1
}

func newBasis(inputs, order int) basis {
	b := basis{inputs: inputs, order: order, from: []int{0}, by: []int{-1}}
	last := []int{0} // terms of the order below
	for range order {
		var next []int
		for _, j := range last {
			for k := max(0, b.by[j]); k < inputs; k++ {
				next = append(next, len(b.from))
				b.from, b.by = append(b.from, j), append(b.by, k)
			}
		}
		last = next
	}
	return b
}

// size returns the number of terms.
func (b basis) size() int { return len(b.from) }

// terms writes the terms at x into out.
func (b basis) terms(x, out []float64) {
	out[0] = 1
	for j := 1; j < len(b.from); j++ {
		out[j] = out[b.from[j]] * x[b.by[j]]
	}
}

// termsOf returns the number of terms of an order in so many inputs.
func termsOf(inputs, order int) int {
	n := 1
	for i := 1; i <= order; i++ {
		n = n * (inputs + i) / i
	}
	return n
}

// fitted returns the coefficients of least squares of several functions, one a
// row, from their values at points: values[f][p] at points[p].
func (b basis) fitted(points, values [][]float64) ([][]float64, error) {
	none := errors.New("the points do not determine a surface")
	if len(points) < b.size() {
		return nil, none
	}
	design := mat.NewDense(len(points), b.size(), nil)
	for p, x := range points {
		b.terms(x, design.RawRowView(p))
	}
	right := mat.NewDense(len(points), len(values), nil)
	for f, row := range values {
		right.SetCol(f, row)
	}
	var qr mat.QR
	qr.Factorize(design)
	if !(qr.Cond() < 1e10) {
		return nil, none
	}
	var found mat.Dense
	if err := qr.SolveTo(&found, false, right); err != nil {
		return nil, err
	}
	out := make([][]float64, len(values))
	for f := range values {
		out[f] = mat.Col(nil, f, &found)
	}
	return out, nil
}

// value returns a surface from its coefficients and the terms of a point.
func value(coefficients, terms []float64) float64 {
	sum := 0.0
	for j, c := range coefficients {
		sum += c * terms[j]
	}
	return sum
}

// A surface is one check as a smooth function of the inputs: the logarithm of
// capacity over factored demand, so that it holds where this is above zero.
type surface struct {
	id           string
	coefficients []float64
	band         float64 // nearer to zero than this the surface is not asked [-]
}

// about returns the margin in the middle of the range [-].
func (s surface) about() float64 { return math.Expm1(s.coefficients[0]) }
