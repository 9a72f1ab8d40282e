package revolution

import "math"

// A band is a symmetric matrix: row i holds its diagonal and the k entries
// after it.
type band struct {
	n, k int
	a    []float64
}

func newBand(n, k int) *band { return &band{n: n, k: k, a: make([]float64, n*(k+1))} }

func (b *band) clear() { clear(b.a) }

// ldl replaces the matrix by its factors L D Lᵀ without pivoting and returns
// the number of negative pivots: by Sylvester's law that of its negative
// eigenvalues.
func (b *band) ldl() (negative int) {
	s := b.k + 1
	for i := range b.n {
		row := b.a[i*s : i*s+s]
		d := row[0]
		if math.Abs(d) < 1e-300 {
			d = 1e-300
			row[0] = d
		}
		if d < 0 {
			negative++
		}
		for j := 1; j < s && i+j < b.n; j++ {
			if row[j] == 0 {
				continue
			}
			l := row[j] / d
			to, from := b.a[(i+j)*s:(i+j)*s+s-j], row[j:]
			for m, x := range from {
				to[m] -= l * x
			}
		}
		for j := 1; j < s; j++ {
			row[j] /= d
		}
	}
	return negative
}

// solve solves in place with the factors of ldl.
func (b *band) solve(x []float64) {
	s := b.k + 1
	for i := range b.n {
		row := b.a[i*s+1 : i*s+min(s, b.n-i)]
		for j, l := range row {
			x[i+1+j] -= l * x[i]
		}
	}
	for i := b.n - 1; i >= 0; i-- {
		row := b.a[i*s+1 : i*s+min(s, b.n-i)]
		v := x[i] / b.a[i*s]
		for j, l := range row {
			v -= l * x[i+1+j]
		}
		x[i] = v
	}
}

// times returns yᵀ A x.
func (b *band) times(y, x []float64) (sum float64) {
	s := b.k + 1
	for i := range b.n {
		row := b.a[i*s : i*s+min(s, b.n-i)]
		sum += y[i] * row[0] * x[i]
		for j := 1; j < len(row); j++ {
			sum += row[j] * (y[i]*x[i+j] + y[i+j]*x[i])
		}
	}
	return sum
}

// apply sets y to A x.
func (b *band) apply(y, x []float64) {
	s := b.k + 1
	clear(y)
	for i := range b.n {
		row := b.a[i*s : i*s+min(s, b.n-i)]
		y[i] += row[0] * x[i]
		for j := 1; j < len(row); j++ {
			y[i] += row[j] * x[i+j]
			y[i+j] += row[j] * x[i]
		}
	}
}

// hold scales the matrix by s on both sides and puts a one where s is 0.
func (b *band) hold(s []float64) {
	w := b.k + 1
	for i := range b.n {
		row := b.a[i*w : i*w+min(w, b.n-i)]
		for j := range row {
			row[j] *= s[i] * s[i+j]
		}
		if s[i] == 0 {
			row[0] = 1
		}
	}
}
