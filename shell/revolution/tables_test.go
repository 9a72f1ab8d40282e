package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// The tables of this file were computed by an independent program of conical
// frusta with linear membrane and cubic bending, ν = 0.3, trusted to 0.2 per
// cent; this shell is held to 0.5 per cent of them, or half a unit of the last
// printed digit where that is more. Units are p R/t, with R = 1 and p = 1.

// near allows 0.5 per cent or half a printed digit, whichever is more.
func near(t *testing.T, where string, got, want, digit float64) {
	t.Helper()
	checktest.Close(t, where, got, want, math.Max(5e-3, 0.5*digit/math.Abs(want)))
}

// Cone and cylinder, large end: Y and X of (pR/t)(1 − Y √(R/t)) and
// (pR/t)(0.5 + X √(R/t)).
func TestConeLargeEndCoefficients(t *testing.T) {
	for _, row := range []struct {
		α    float64
		y, x [3]float64
	}{
		{30, [3]float64{.1752, .1718, .1699}, [3]float64{.3240, .3214, .3183}},
		{35, [3]float64{.2085, .2032, .2003}, [3]float64{.3873, .3840, .3800}},
		{40, [3]float64{.2442, .2366, .2321}, [3]float64{.4559, .4517, .4468}},
		{45, [3]float64{.2832, .2724, .2658}, [3]float64{.5316, .5264, .5202}},
		{49, [3]float64{.3175, .3034, .2947}, [3]float64{.5990, .5927, .5852}},
		{60, [3]float64{.4341, .4053, .3871}, [3]float64{.8340, .8226, .8093}},
	} {
		for i, slender := range []float64{500, 100, 50} {
			hoopAt, most := coneJoint(t, row.α, slender, 1, false)
			root := math.Sqrt(slender)
			y, x := (1-hoopAt)/root, (most-0.5)/root
			t.Logf("%2.0f deg, R/t %3.0f: Y %.4f, tabulated %.4f; X %.4f, tabulated %.4f", row.α, slender, y, row.y[i], x, row.x[i])
			near(t, "Y", y, row.y[i], 1e-4)
			near(t, "X", x, row.x[i], 1e-4)
		}
	}
}

// Cone and cylinder at both ends of the cone, beside the closed edge solution.
func TestConeJunctions(t *testing.T) {
	for _, row := range []struct {
		α, slender, k                            float64
		largeHoop, largeMer, smallHoop, smallMer float64
	}{
		{15, 25, 1, 0.577, 1.247, 1.463, 1.244},
		{15, 50, 1, 0.405, 1.576, 1.635, 1.575},
		{15, 100, 1, 0.158, 2.035, 1.882, 2.035},
		{30, 25, 1, 0.158, 2.061, 2.021, 2.048},
		{30, 50, 1, -0.202, 2.750, 2.381, 2.744},
		{30, 50, 1.5, -0.066, 2.831, 1.876, 2.733},
		{30, 100, 1, -0.718, 3.714, 2.897, 3.711},
		{45, 25, 1, -0.294, 3.043, 2.792, 3.001},
		{45, 50, 1, -0.880, 4.178, 3.378, 4.158},
		{45, 50, 1.5, -0.561, 4.248, 2.595, 4.230},
		{45, 100, 1, -1.724, 5.764, 4.222, 5.754},
		{60, 25, 1, -0.830, 4.425, 4.116, 4.293},
		{60, 50, 1, -1.737, 6.223, 5.019, 6.156},
		{60, 100, 1, -3.053, 8.726, 6.334, 8.693},
	} {
		for _, small := range []bool{false, true} {
			hoopAt, most := coneJoint(t, row.α, row.slender, row.k, small)
			closedHoop, closedMost := closedJoint(row.α*deg, row.slender, row.k, small)
			wantHoop, wantMost, end := row.largeHoop, row.largeMer, "large"
			if small {
				wantHoop, wantMost, end = row.smallHoop, row.smallMer, "small"
			}
			t.Logf("%2.0f deg, R/t %3.0f, t_c/t %.1f, %s end: hoop %6.3f, tabulated %6.3f, closed %6.3f; meridional %.3f, tabulated %.3f, closed %.3f",
				row.α, row.slender, row.k, end, hoopAt, wantHoop, closedHoop, most, wantMost, closedMost)
			near(t, end+" hoop", hoopAt, wantHoop, 2e-3)
			near(t, end+" meridional", most, wantMost, 1e-3)
		}
	}
}

// coneJoint returns hoop membrane at the joint and the largest meridional
// surface stress of the cylinder, both over pR/t.
func coneJoint(t *testing.T, α, slender, k float64, small bool) (hoopAt, most float64) {
	t.Helper()
	p := pile{t: t}
	if small { // a cylinder on the tip of a cone that grows to three radii
		p.add(revolution.Cylinder(1, -2, 2))(1 / slender)
		cone, err := revolution.Cone(4, α*deg, 1)
		p.add(revolution.Moved(cone, 3/math.Tan(α*deg)), err)(k / slender)
		// The far edge of the cone moves as the membrane state lets it.
		p.s.Supports = []revolution.Support{{Node: 2, Axial: true}}
		l := revolution.Uniform(1)
		l.Forces = []revolution.Force{{Node: 0, Axial: -math.Pi}, {Node: 2, Radial: 2 * math.Tan(α*deg)}}
		_, u := solve(t, p.s, l)
		return joint(u, 0, false).Membrane.Hoop / slender, largest(u, 0, faces(meridional)) / slender
	}
	p.add(revolution.Cone(1, α*deg, 0))(k / slender)
	p.add(revolution.Cylinder(1, 0, 2))(1 / slender)
	p.s.Supports = []revolution.Support{{Node: 2, Axial: true, Rotation: true}}
	_, u := solve(t, p.s, revolution.Uniform(1))
	return joint(u, 1, true).Membrane.Hoop / slender, largest(u, 1, faces(meridional)) / slender
}

// closedJoint is the edge solution of beams on elastic foundation for gas
// without line load, over pR/t, with R = 1 and E = 1.
func closedJoint(α, slender, k float64, small bool) (hoopAt, most float64) {
	const ν = poisson
	t1, t2, s := 1/slender, k/slender, -1.0
	if small {
		s = 1
	}
	cos, tan := math.Cos(α), math.Tan(α)
	c := func(t, r float64) (b, flex float64) {
		b = math.Pow(3*(1-ν*ν), 0.25) / math.Sqrt(r*t)
		return b, 1 / (2 * b * b * b * t * t * t / (12 * (1 - ν*ν)))
	}
	b1, c1 := c(t1, 1)
	b2, c2 := c(t2, 1/cos)
	wc, wk, χ := (1-ν/2)/t1, (1-ν/2)/(t2*cos), 1.5*tan/(t2*cos)
	load := s * tan / 2
	// c1 (H + b1 M) − c2 cos (H2 cos + b2 M) = wk − wc, H2 = load − H
	a11, a12, r1 := c1+c2*cos*cos, c1*b1-c2*cos*b2, wk-wc+c2*cos*cos*load
	// −c1 b1 (H + 2 b1 M) − c2 b2 (H2 cos + 2 b2 M) = −s χ
	a21, a22, r2 := -c1*b1+c2*b2*cos, -2*c1*b1*b1-2*c2*b2*b2, -s*χ+c2*b2*cos*load
	det := a11*a22 - a12*a21
	h, m := (r1*a22-r2*a12)/det, (a11*r2-a21*r1)/det
	w := wc + c1*(h+b1*m)
	return (w + ν/2/t1) / slender, (0.5/t1 + 6*math.Abs(m)/(t1*t1)) / slender
}

// Hemisphere on a cylinder of R/t = 100: 2:1 equal walls by Timoshenko and
// Woinowsky-Krieger, Theory of Plates and Shells (memory): 1.293 pR/(2t) and
// 1.032 pR/t; unequal walls and the joint's hoop computed.
func TestHemisphere(t *testing.T) {
	for _, row := range []struct{ wall, cylinder, head, joint float64 }{
		{1, 0.647, 0.647, 0.750}, {0.6, 0.579, 0.927, 0.886}, {0.5, 0.542, 1.078, 0.942}, {7.0 / 17, 0.500, 1.214, 1.000},
	} {
		u := headOn(t, 100, row.wall)(revolution.Hemisphere(1))
		c, h, j := largest(u, 1, faces(meridional))/100, largest(u, 0, faces(meridional))/100, joint(u, 1, true).Membrane.Hoop/100
		t.Logf("wall %.3f: cylinder %.4f, tabulated %.3f; head %.4f, tabulated %.3f; joint %.4f, tabulated %.3f", row.wall, c, row.cylinder, h, row.head, j, row.joint)
		near(t, "cylinder", c, row.cylinder, 1e-3)
		near(t, "head", h, row.head, 1e-3)
		near(t, "joint", j, row.joint, 1e-3)
	}
	u := headOn(t, 100, 1)(revolution.Hemisphere(1))
	checktest.Close(t, "meridional", largest(u, 1, faces(meridional))/50, 1.293, 2e-3)
	checktest.Close(t, "hoop", largest(u, 1, faces(hoop))/100, 1.032, 1e-3)
}

// Ellipsoids on a cylinder; the limit of a thin wall, 1.128 pR/t and
// 2.17 pR/(2t), is Timoshenko's (memory).
func TestEllipsoid(t *testing.T) {
	for _, row := range []struct{ slender, hoop, mer, inner, vm, compression, at float64 }{
		{200, 1.122, 2.133, 1.168, 1.511, -0.870, 0.98},
		{100, 1.118, 2.098, 1.227, 1.494, -0.750, 0.97},
		{50, 1.111, 2.036, 1.304, 1.467, -0.587, 0.96},
		{25, 1.101, 1.937, 1.386, 1.430, -0.381, 0.95},
	} {
		u := headOn(t, row.slender, 1)(revolution.Ellipsoid(1, 0.5))
		h, m := largest(u, 1, faces(hoop))/row.slender, 2*largest(u, 1, faces(meridional))/row.slender
		inner := largest(u, 0, func(s revolution.Station) float64 { return s.Inside.Meridional }) / row.slender
		vm := largest(u, 0, faces(mises)) / row.slender
		squeeze := -largest(u, 0, func(s revolution.Station) float64 { return -s.Membrane.Hoop }) / row.slender
		t.Logf("R/t %3.0f: cylinder hoop %.4f, tabulated %.3f, meridional %.4f, tabulated %.3f; head inside %.4f, tabulated %.3f, von Mises %.4f, tabulated %.3f, compression %.4f, tabulated %.3f",
			row.slender, h, row.hoop, m, row.mer, inner, row.inner, vm, row.vm, squeeze, row.compression)
		near(t, "hoop", h, row.hoop, 1e-3)
		near(t, "meridional", m, row.mer, 1e-3)
		near(t, "head, inside", inner, row.inner, 1e-3)
		near(t, "head, von Mises", vm, row.vm, 1e-3)
		near(t, "head, compression", squeeze, row.compression, 1e-3)
	}
	u := headOn(t, 100, 1)(revolution.Ellipsoid(1, math.Sqrt2/2))
	near(t, "sqrt 2 hoop", largest(u, 1, faces(hoop))/100, 1.062, 1e-3)
	near(t, "sqrt 2 meridional", largest(u, 1, faces(meridional))/50, 1.576, 1e-3)
}

// Torispheres on a cylinder of equal wall: hoop compression of the knuckle and
// the largest meridional surface stress.
func TestTorisphere(t *testing.T) {
	for _, row := range []struct{ slender, crown, knuckle, compression, mer float64 }{
		{100, 2, 0.12, -2.99, 4.55}, {50, 2, 0.12, -1.94, 4.12},
		{100, 2, 0.20, -2.32, 3.01}, {50, 2, 0.20, -1.65, 2.97},
		{100, 1.6, 0.308, -1.10, 1.61}, {50, 1.6, 0.308, -0.86, 1.65},
	} {
		u := headOn(t, row.slender, 1)(revolution.Torisphere(1, row.crown, row.knuckle))
		squeeze, mer := math.Inf(1), math.Inf(-1)
		for _, s := range u.Stations {
			squeeze, mer = math.Min(squeeze, s.Membrane.Hoop/row.slender), math.Max(mer, faces(meridional)(s)/row.slender)
		}
		t.Logf("L %.1f, r %.3f, R/t %3.0f: compression %.4f, tabulated %.2f; meridional %.4f, tabulated %.2f", row.crown, row.knuckle, row.slender, squeeze, row.compression, mer, row.mer)
		near(t, "compression", squeeze, row.compression, 1e-2)
		near(t, "meridional", mer, row.mer, 1e-2)
	}
}
