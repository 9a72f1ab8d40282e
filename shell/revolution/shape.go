package revolution

const (
	half   = 6 // unknowns of one end: u_r, u_z, β, ε, β′, ε′
	shared = 3 // of which those of both sides of a joint: u_r, u_z, β
	span   = 2 * half
	gauss  = 5 // points of one element: exact for polynomials up to degree 9, the square of a strain has 8
)

// abscissae and weights of Gauss and Legendre on 0 … 1, five points.
//
// Source: Abramowitz and Stegun, table 25.4 (memory; a test integrates
// polynomials with them).
var (
	abscissae = [gauss]float64{
		0.5 - 0.4530899229693319963988, 0.5 - 0.2692346550528415454538, 0.5,
		0.5 + 0.2692346550528415454538, 0.5 + 0.4530899229693319963988,
	}
	weights = [gauss]float64{
		0.1184634425280945437571, 0.2393143352496832340206, 0.2844444444444444444444,
		0.2393143352496832340206, 0.1184634425280945437571,
	}
)

// A basis holds the quintic functions of Hermite at one place and their first
// two derivatives: values, slopes and curvatures of the beginning, then of the
// end.
type basis struct{ h, d, dd [6]float64 }

func hermite(x float64) (b basis) {
	x2, x3, x4, x5 := x*x, x*x*x, x*x*x*x, x*x*x*x*x
	b.h = [6]float64{
		1 - 10*x3 + 15*x4 - 6*x5, x - 6*x3 + 8*x4 - 3*x5, (x2 - 3*x3 + 3*x4 - x5) / 2,
		10*x3 - 15*x4 + 6*x5, -4*x3 + 7*x4 - 3*x5, (x3 - 2*x4 + x5) / 2,
	}
	b.d = [6]float64{
		-30*x2 + 60*x3 - 30*x4, 1 - 18*x2 + 32*x3 - 15*x4, (2*x - 9*x2 + 12*x3 - 5*x4) / 2,
		30*x2 - 60*x3 + 30*x4, -12*x2 + 28*x3 - 15*x4, (3*x2 - 8*x3 + 5*x4) / 2,
	}
	b.dd = [6]float64{
		-60*x + 180*x2 - 120*x3, -36*x + 96*x2 - 60*x3, (2 - 18*x + 36*x2 - 20*x3) / 2,
		60*x - 180*x2 + 120*x3, -24*x + 84*x2 - 60*x3, (6*x - 24*x2 + 20*x3) / 2,
	}
	return b
}

// bases holds the functions at the points of integration, ends at the stations.
var bases, stationBases = func() (g [gauss]basis, s [perElement + 1]basis) {
	for i, x := range abscissae {
		g[i] = hermite(x)
	}
	for i := range s {
		s[i] = hermite(float64(i) / perElement)
	}
	return g, s
}()

// atJoint gives, for each place among the six at the end before a joint, the
// local unknown that stands there: the strains come first.
var atJoint = [half]int{3, 4, 5, 0, 1, 2}

// A shape gives the displacement of an element for a unit of each unknown, as
// combinations of the Hermite functions of its end:
//
//	u′ = t ε + n β, u″ = t ε′ + n β′ + k (t β − n ε)
type shape struct {
	r, z [span][3]float64 // coefficients of value, slope and curvature
}

// shapeOf prepares the combinations of element e, ends a and b.
func shapeOf(e *element, a, b frame) (s shape) {
	Δ := e.τ1 - e.τ0
	for i, f := range [2]frame{a, b} {
		link := arm{}
		if i == 0 {
			link = e.arm
		}
		j, dj := f.j*Δ, f.dj*Δ*Δ
		for p := range half {
			local := p
			if i == 1 && e.joint {
				local = atJoint[p]
			}
			at := i*half + p
			s.r[at], s.z[at] = unit(local, f, link, j, dj)
		}
	}
	return s
}

// unit returns what one unit of a local unknown makes of u_r and u_z, and of
// their first two derivatives along the element, at its end:
//
//	u′ = t ε + n β, u″ = t ε′ + n β′ + k (t β − n ε)
func unit(local int, f frame, link arm, j, dj float64) (r, z [3]float64) {
	nr, nz := f.tz, -f.tr
	switch local {
	case 0:
		r[0] = 1
	case 1:
		z[0] = 1
	case 2: // β, with the rigid arm; n′ = k t
		r = [3]float64{link.z, nr * j, nr*dj + f.k*f.tr*j*j}
		z = [3]float64{-link.r, nz * j, nz*dj + f.k*f.tz*j*j}
	case 3: // ε; t′ = −k n
		r = [3]float64{0, f.tr * j, f.tr*dj - f.k*nr*j*j}
		z = [3]float64{0, f.tz * j, f.tz*dj - f.k*nz*j*j}
	case 4:
		r[2], z[2] = nr*j*j, nz*j*j
	case 5:
		r[2], z[2] = f.tr*j*j, f.tz*j*j
	}
	return r, z
}

// A field is displacement and derivatives along the arc of one unknown or state.
type field struct{ r, r1, r2, z, z1, z2 float64 }

// along turns the derivatives by ξ into derivatives along the arc, j and dj
// being ds/dξ and its derivative.
func (b *basis) along(j, dj float64) (a basis) {
	a.h = b.h
	i1, i2, c := 1/j, 1/(j*j), dj/(j*j)
	for i := range a.d {
		a.d[i] = b.d[i] * i1
		a.dd[i] = b.dd[i]*i2 - c*a.d[i]
	}
	return a
}

// unknown returns what one unit of unknown i makes at a place, b its functions
// along the arc.
func (s *shape) unknown(i int, b *basis) field {
	o := 0
	if i >= half {
		o = 3
	}
	cr, cz := &s.r[i], &s.z[i]
	h, d, dd := b.h[o:o+3], b.d[o:o+3], b.dd[o:o+3]
	return field{
		r:  cr[0]*h[0] + cr[1]*h[1] + cr[2]*h[2],
		r1: cr[0]*d[0] + cr[1]*d[1] + cr[2]*d[2],
		r2: cr[0]*dd[0] + cr[1]*dd[1] + cr[2]*dd[2],
		z:  cz[0]*h[0] + cz[1]*h[1] + cz[2]*h[2],
		z1: cz[0]*d[0] + cz[1]*d[1] + cz[2]*d[2],
		z2: cz[0]*dd[0] + cz[1]*dd[1] + cz[2]*dd[2],
	}
}

// value returns the displacement for one unit of unknown i.
func (s *shape) value(i int, b *basis) (r, z float64) {
	o := 0
	if i >= half {
		o = 3
	}
	cr, cz := &s.r[i], &s.z[i]
	h0, h1, h2 := b.h[o], b.h[o+1], b.h[o+2]
	return cr[0]*h0 + cr[1]*h1 + cr[2]*h2, cz[0]*h0 + cz[1]*h1 + cz[2]*h2
}

// A course is the displacement of an element as factors of the Hermite
// functions of both its ends.
type course struct{ r, z [6]float64 }

// course gathers the unknowns q of the element.
func (s *shape) course(q []float64) (c course) {
	for i, x := range q {
		o := 0
		if i >= half {
			o = 3
		}
		for k := range 3 {
			c.r[o+k] += s.r[i][k] * x
			c.z[o+k] += s.z[i][k] * x
		}
	}
	return c
}

// at returns displacement and derivatives, b the functions along the arc.
func (c *course) at(b *basis) (u field) {
	for i := range c.r {
		u.r += c.r[i] * b.h[i]
		u.r1 += c.r[i] * b.d[i]
		u.r2 += c.r[i] * b.dd[i]
		u.z += c.z[i] * b.h[i]
		u.z1 += c.z[i] * b.d[i]
		u.z2 += c.z[i] * b.dd[i]
	}
	return u
}
