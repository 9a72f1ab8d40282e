package revolution_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell"
	"proofsheet/shell/revolution"
)

const (
	modulus = 1e5
	poisson = 0.3
	deg     = math.Pi / 180
)

// A pile stacks parts of given walls to a structure.
type pile struct {
	t *testing.T
	s revolution.Structure
}

func (p *pile) add(parts []revolution.Part, err error) func(wall float64) {
	p.t.Helper()
	if err != nil {
		p.t.Fatal(err)
	}
	return func(wall float64) {
		for _, q := range parts {
			p.s.Segments = append(p.s.Segments, revolution.Segment{
				Name: q.Name, Curve: q.Curve, Thickness: wall, Modulus: modulus, Poisson: poisson})
		}
	}
}

// headOn is a head of a wall, over the cylinder's, on a cylinder of R/t.
func headOn(t *testing.T, slender, wall float64) func([]revolution.Part, error) *revolution.Solution {
	return func(parts []revolution.Part, err error) *revolution.Solution {
		t.Helper()
		p := pile{t: t}
		p.add(parts, err)(wall / slender)
		p.add(revolution.Cylinder(1, 0, 2))(1 / slender)
		p.s.Supports = []revolution.Support{{Node: len(parts) + 1, Axial: true, Rotation: true}}
		_, u := solve(t, p.s, revolution.Uniform(1))
		return u
	}
}

func solve(t *testing.T, s revolution.Structure, l revolution.Load) (*revolution.Model, *revolution.Solution) {
	t.Helper()
	m, err := revolution.New(s)
	if err != nil {
		t.Fatal(err)
	}
	u, err := m.Solve(l)
	if err != nil {
		t.Fatal(err)
	}
	return m, u
}

// largest returns the greatest value of a quantity over one segment.
func largest(u *revolution.Solution, segment int, of func(revolution.Station) float64) float64 {
	most := math.Inf(-1)
	for _, s := range u.Stations {
		if s.Segment == segment {
			most = math.Max(most, of(s))
		}
	}
	return most
}

// joint returns the first or the last station of a segment.
func joint(u *revolution.Solution, segment int, first bool) (at revolution.Station) {
	for _, s := range u.Stations {
		if s.Segment == segment {
			if at = s; first {
				return at
			}
		}
	}
	return at
}

func faces(pick func(revolution.Stress) float64) func(revolution.Station) float64 {
	return func(s revolution.Station) float64 { return math.Max(pick(s.Inside), pick(s.Outside)) }
}

func meridional(s revolution.Stress) float64 { return s.Meridional }
func hoop(s revolution.Stress) float64       { return s.Hoop }
func mises(s revolution.Stress) float64      { return shell.VonMises(s.Meridional, s.Hoop) }

// Ring of area A on a cylinder, R = 100, t = 1: rows computed, equal to the
// closed form F = 2 p′ A/(A β + 2t), M = F/(4 β) in four digits.
func TestRing(t *testing.T) {
	β := math.Pow(3*(1-poisson*poisson), 0.25) / 10
	for _, row := range []struct{ area, mer, hoop float64 }{{1, 0.593, 0.949}, {5, 0.875, 0.793}, {20, 1.368, 0.522}, {1e9, 2.043, 0.150}} {
		p := pile{t: t}
		p.add(revolution.Cylinder(100, -200, 200))(1)
		p.add(revolution.Cylinder(100, 0, 200))(1)
		p.s.Rings = []revolution.Ring{{Node: 1, Area: row.area, Modulus: modulus, Poisson: poisson}}
		p.s.Supports = []revolution.Support{{Node: 0, Axial: true, Rotation: true}, {Node: 2, Rotation: true}}
		l := revolution.Uniform(1)
		l.Forces = []revolution.Force{{Node: 2, Axial: math.Pi * 1e4}}
		_, u := solve(t, p.s, l)
		force := 2 * 0.85 * row.area / (row.area*β + 2)
		mer, hp := largest(u, 1, faces(meridional))/100, joint(u, 1, true).Membrane.Hoop/100
		closed := 0.5 + 6*force/(4*β)/100
		t.Logf("A %g: meridional %.4f, closed %.4f; hoop %.4f, closed %.4f", row.area, mer, closed, hp, 1-force*β/2)
		near(t, "meridional", mer, row.mer, 1e-3)
		near(t, "hoop", hp, row.hoop, 1e-3)
		checktest.Close(t, "meridional, closed", mer, closed, 1e-4)
		if row.area < 1e9 {
			checktest.Close(t, "hoop, closed", hp, 1-force*β/2, 1e-4)
		}
	}
}

// Flat head of wall tp on a cylinder of R/t = 50: computed, equal to the closed
// plate and edge solution in every digit.
func TestFlatHead(t *testing.T) {
	for _, row := range []struct{ tp, mer float64 }{{2, 24.74}, {5, 5.615}, {10, 2.526}, {20, 2.100}} {
		u := headOn(t, 50, row.tp)(revolution.Flat(0, 1))
		mer := largest(u, 1, faces(meridional)) / 50
		closedMer, closedCentre := flatClosed(50, row.tp)
		// the centre of the plate, compressed inside
		centre := -u.Stations[0].Inside.Meridional / 50
		t.Logf("tp/t %2.0f: meridional %.4f, tabulated %.3f, closed %.4f; centre %.4f, closed %.4f", row.tp, mer, row.mer, closedMer, centre, closedCentre)
		near(t, "meridional", mer, row.mer, 1e-3)
		checktest.Close(t, "meridional, closed", mer, closedMer, 1e-3)
		checktest.Close(t, "centre, closed", centre, closedCentre, 1e-3)
	}
}

// flatClosed is the edge solution of a plate and a cylinder of R = 1 over pR/t:
// meridional stress of the cylinder and compression at the centre's inside.
func flatClosed(slender, k float64) (mer, centre float64) {
	const ν, e = poisson, 1.0
	t, tp := 1/slender, k/slender
	β := math.Pow(3*(1-ν*ν), 0.25) / math.Sqrt(t)
	d, dp := e*t*t*t/(12*(1-ν*ν)), e*tp*tp*tp/(12*(1-ν*ν))
	c := 1 / (2 * β * β * β * d)
	a11, a12, r1 := c+(1-ν)/(e*tp), c*β, -(1-ν/2)/(e*t)
	a21, a22, r2 := c*β, 2*c*β*β+1/(dp*(1+ν)), 1/(8*dp*(1+ν))
	det := a11*a22 - a12*a21
	h, m := (r1*a22-a12*r2)/det, (a11*r2-a21*r1)/det
	return (0.5/t + 6*math.Abs(m)/(t*t)) * t, (6*((3+ν)/16-m)/(tp*tp) + h/tp) * t
}

// Hi-lo of mid-lines at a girth seam, R/t = 100: equal walls bend by 3 e/t of
// the membrane stress on both sides, to the first order of e/R exactly alike; a
// tabulated pair, 1 per cent to either side of that, is an echo of its mesh, and
// its mean is kept. Then a step of walls alone and one flush at a face, computed.
func TestOffsetAndStep(t *testing.T) {
	for _, row := range []struct{ e, a, b float64 }{{0.1, 0.303, 0.297}, {0.25, 0.759, 0.741}, {0.5, 1.518, 1.481}} {
		a, b := seam(t, 1, row.e)
		t.Logf("e/t %.2f: %.4f and %.4f, tabulated %.3f and %.3f", row.e, a, b, row.a, row.b)
		near(t, "mean", (a+b)/2, (row.a+row.b)/2, 1e-3)
		checktest.Close(t, "one side", a, 3*row.e, 5e-3)
		checktest.Close(t, "other side", b, 3*row.e, 5e-3)
	}
	for _, row := range []struct{ step, e, more, digits float64 }{
		{1.5, 0, 0.148, 5e-3}, {2, 0, 0.441, 5e-3},
		{2, 0.5, 1.19, 0.015}, // the echo again: the closed form stands 1.2 per cent above the tabulated value
	} {
		a, _ := seam(t, row.step, row.e)
		c, _ := seam(t, row.step, -row.e)
		closed := math.Max(closedSeam(row.step, row.e), closedSeam(row.step, -row.e))
		t.Logf("step %.1f, e/t %.1f: %.4f and the other way %.4f, tabulated %.3f, closed %.4f", row.step, row.e, a, c, row.more, closed)
		checktest.Close(t, "step", math.Max(a, c), row.more, row.digits)
		checktest.Close(t, "step, closed", math.Max(a, c), closed, 5e-3)
	}
}

// closedSeam is the edge solution of two cylinders of R/t = 100 and walls t and
// step t whose mid-lines stand e t apart, over pR/(2t): bending in the thinner.
//
//	c₁(H + β₁M₁) + c₂(H − β₂M₂) = w₂ − w₁, c₁β₁(H + 2β₁M₁) + c₂β₂(2β₂M₂ − H) = 0, M₁ − M₂ = e t pR/2
func closedSeam(step, e float64) float64 {
	const t1, ν = 0.01, poisson
	t2 := step * t1
	β := func(t float64) float64 { return math.Pow(3*(1-ν*ν), 0.25) / math.Sqrt(t) }
	c := func(t float64) float64 { return 6 * (1 - ν*ν) / (math.Pow(β(t), 3) * t * t * t) }
	b1, b2, c1, c2, jump := β(t1), β(t2), c(t1), c(t2), e*t1/2
	a11, a12, r1 := c1+c2, c1*b1-c2*b2, (1-ν/2)*(1/t2-1/t1)-c2*b2*jump
	a21, a22, r2 := c1*b1-c2*b2, 2*(c1*b1*b1+c2*b2*b2), 2*c2*b2*b2*jump
	m := (a11*r2 - a21*r1) / (a11*a22 - a12*a21)
	// the largest of the wave H, M₁ along the thinner wall
	h := (r1 - a12*m) / a11
	most := 0.0
	for x := 0.0; x < 3/b1; x += 0.002 / b1 {
		sin, cos := math.Sincos(b1 * x)
		most = math.Max(most, math.Exp(-b1*x)*math.Abs(m*(cos+sin)+h*sin/b1))
	}
	return 6 * most / (t1 * t1) / 50
}

// seam returns the largest meridional bending stress of the thinner and of the
// other wall over pR/(2t), t the thinner.
func seam(t *testing.T, step, e float64) (thin, thick float64) {
	t.Helper()
	const wall = 0.01
	p := pile{t: t}
	p.add(revolution.Cylinder(1, -2, 2))(wall)
	p.add(revolution.Cylinder(1+e*wall, 0, 2))(step * wall)
	p.s.Segments[1].Linked = true
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true, Rotation: true}, {Node: 2, Rotation: true}}
	l := revolution.Uniform(1)
	l.Forces = []revolution.Force{{Node: 2, Axial: math.Pi * (1 + e*wall) * (1 + e*wall)}}
	_, u := solve(t, p.s, l)
	bend := func(s revolution.Station) float64 {
		return math.Abs(s.Outside.Meridional-s.Inside.Meridional) / 2
	}
	return largest(u, 0, bend) / 50, largest(u, 1, bend) / 50
}

// A ring off its node, on a wall too thin to help: a line load q at the node
// moves the centroid out by q r r_c/(E A) and turns the section by the moment
// −q z_c about it, β = −q z_c r r_c/(E I).
func TestRingOffItsNode(t *testing.T) {
	const q, area, second, z, r = 2.0, 1e-2, 1e-5, 0.05, 1.1
	p := pile{t: t}
	p.add(revolution.Cylinder(1, -2, 2))(1e-7)
	p.add(revolution.Cylinder(1, 0, 2))(1e-7)
	p.s.Rings = []revolution.Ring{{Node: 1, Area: area, Axial: second, Modulus: modulus, Offset: revolution.Point{R: r - 1, Z: z}}}
	p.s.Supports = []revolution.Support{{Node: 0, Axial: true}}
	_, u := solve(t, p.s, revolution.Load{Forces: []revolution.Force{{Node: 1, Radial: q}}})
	at := joint(u, 1, true)
	β := -q * z * r / (modulus * second)
	checktest.Close(t, "rotation", at.Rotation, β, 1e-3)
	checktest.Close(t, "displacement", at.Radial, q*r/(modulus*area)-β*z, 1e-3)
}

// The measure of limits: tension both ways, tension and compression, one alone.
func TestEquivalent(t *testing.T) {
	for _, row := range []struct{ a, b, want float64 }{{2, 1, 2}, {-2, 1, 3}, {0, -2, 2}, {1, 1, 1}, {-3, -1, 3}} {
		checktest.Close(t, "equivalent", revolution.Stress{Meridional: row.a, Hoop: row.b}.Equivalent(), row.want, 1e-12)
	}
	if got := (revolution.Stress{Meridional: math.NaN()}).Equivalent(); !math.IsNaN(got) {
		t.Errorf("equivalent of NaN: %g", got)
	}
}
