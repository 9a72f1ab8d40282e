package port_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// Rigid plug in a shallow sphere, ν = 0.3: rows computed from the shell equations.
func TestLocalStress(t *testing.T) {
	const rm, wall, f = 0.2, 0.002, 1000.0
	l := math.Sqrt(rm * wall)
	for _, row := range []struct {
		u    float64
		n, m string
	}{{0.1, "0.2778", "0.2937"}, {0.5, "0.1344", "0.0836"}, {1.5, "0.0381", "0.0184"}, {2.5, "0.0173", "0.0078"}} {
		r0 := row.u * l
		if row.u == 0.1 {
			r0 *= 1 + 1e-12
		}
		if row.u == 2.5 {
			r0 *= 1 - 1e-12
		}
		σm, σb, err := port.LocalStress(rm, wall, r0, f)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "membrane", σm*wall*wall/f, row.n)
		checktest.Printed(t, "bending", σb*wall*wall/f/6, row.m)
	}
	for _, u := range []float64{0.0999, 2.5001, math.NaN()} {
		var out *check.RangeError
		if σm, _, err := port.LocalStress(rm, wall, u*l, f); !errors.As(err, &out) || !math.IsNaN(σm) {
			t.Errorf("U %g: %g, %v", u, σm, err)
		}
	}
	// force × 3, length × 7: stress × 3/49
	a, b, _ := port.LocalStress(rm, wall, l, f)
	c, d, _ := port.LocalStress(7*rm, 7*wall, 7*l, 3*f)
	checktest.Close(t, "units, membrane", c, a*3/49, 1e-12)
	checktest.Close(t, "units, bending", d, b*3/49, 1e-12)
}

func TestCheckThrust(t *testing.T) {
	w := port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}
	p := tube(38.1, 2, 60)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	r, err := p.Area(w, port.Load{Pressure: 2 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	got := r.CheckThrust("p", port.External{})
	if got.Status() != check.Satisfied {
		t.Errorf("pressure alone: %v, %s", got.Status(), got.Reason())
	}
	// By hand: σ = 2·18.05/(2·2) = 9.025 MPa; T = 2π 38.1²/4 = 2280 N.
	checktest.Printed(t, "thrust", r.CheckThrust("p", port.External{}).Inputs[6].Value, "2280")
	checktest.Printed(t, "tube", r.CheckThrust("p", port.External{}).Inputs[8].Value/mpa, "9.025")
	for _, x := range []struct {
		name string
		load port.External
		want check.Status
	}{
		{"small force", port.External{Force: 50, Range: 3 * s.Wall, RangeFormula: "3 S"}, check.Satisfied},
		{"large moment", port.External{Moment: 500, Range: 3 * s.Wall, RangeFormula: "3 S"}, check.NotSatisfied},
		{"NaN", port.External{Force: math.NaN(), Range: 3 * s.Wall, RangeFormula: "3 S"}, check.NotAssessed},
		{"negative", port.External{Force: -1, Range: 3 * s.Wall, RangeFormula: "3 S"}, check.NotAssessed},
	} {
		if got := r.CheckThrust("p", x.load); got.Status() != x.want {
			t.Errorf("%s: %v (%s), want %v", x.name, got.Status(), got.Note, x.want)
		}
	}
	q, cw, load, cs := areaCase(45, 60, 4, 3, 1, 4, 6)
	if r, err = q.Area(cw, load, cs); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckThrust("p", port.External{Force: 1, Range: 3 * s.Wall, RangeFormula: "3 S"}).Status(); got != check.Satisfied {
		t.Errorf("a newton on a cone: %v", got)
	}
	if got := r.CheckThrust("p", port.External{Moment: 200, Range: 3 * s.Wall, RangeFormula: "3 S"}).Status(); got != check.NotSatisfied {
		t.Errorf("a large moment on a cone: %v", got)
	}
	plate := port.Wall{Surface: port.Flat, Thickness: 12 * mm, Radius: 0.2}
	q.Parallel, load.Required = false, 8*mm
	if r, err = q.Area(plate, load, cs); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckThrust("p", port.External{Force: 1, Range: 3 * s.Wall, RangeFormula: "3 S"}).Status(); got != check.NotAssessed {
		t.Errorf("outside load on a flat head: %v, want not assessed", got)
	}
}

// patch returns the peaks at the middle of an even load over a circle of radius u
// [√(R T)] on a shallow shell of ν = 0.3: M/F and N T/F, larger direction, of a
// sphere and of an endless cylinder. Fourier integrals of the shell equations,
//
//	w = k⁴ P/(D k⁸ + (E T/R²) c⁴ k⁴),  c² = cos² θ + ρ sin² θ
//
// with ρ = R over the other radius of curvature: 0 on a cylinder, 1 on a sphere; summed
// over a polar grid.
func patch(u, ρ float64) (m, n float64) {
	const nu, steps = 0.3, 500
	const a = 12 * (1 - nu*nu)
	var mx, my, nx, ny float64
	lo, hi := math.Log(1e-4), math.Log(200/u)
	slo, shi := math.Log(1e-8), math.Log(math.Pi/2)
	for i := range steps {
		k := math.Exp(lo + (float64(i)+0.5)*(hi-lo)/steps)
		load := 2 * math.J1(k*u) / (k * u) * k * k * (hi - lo) / steps
		for j := range steps {
			s := math.Exp(slo + (float64(j)+0.5)*(shi-slo)/steps)
			x, y := math.Sin(s), math.Cos(s) // along the axis and round it
			c2 := x*x + ρ*y*y
			w := load * s * (shi - slo) / steps / (math.Pi * math.Pi) / (k*k*k*k/a + c2*c2)
			mx += k * k * (x*x + nu*y*y) * w / a
			my += k * k * (y*y + nu*x*x) * w / a
			nx += c2 * y * y * w
			ny += c2 * x * x * w
		}
	}
	return math.Max(mx, my), math.Max(nx, ny)
}

// Every row of the cylinder's table: the even load on a cylinder, and what the
// rigid plug has over the even load on a sphere.
func TestCylinderLocalStress(t *testing.T) {
	const rm, wall, f = 0.2, 0.002, 1000.0
	for _, u := range []float64{0.1, 0.2, 0.5, 1, 1.5, 2, 2.5} {
		r0 := u * math.Sqrt(rm*wall) * (1 + 1e-12*(1.2-u))
		σm, σb, err := port.CylinderLocalStress(rm, wall, r0, f)
		if err != nil {
			t.Fatal(err)
		}
		pm, pb, err := port.LocalStress(rm, wall, r0, f)
		if err != nil {
			t.Fatal(err)
		}
		m, n := patch(u, 0)
		ms, ns := patch(u, 1)
		plugN, plugM := pm*wall*wall/f, pb*wall*wall/f/6
		checktest.Close(t, "membrane", σm*wall*wall/f, n+math.Max(0, plugN-ns), 2e-3)
		checktest.Close(t, "bending", σb*wall*wall/f/6, m+math.Max(0, plugM-ms), 2e-3)
		if σm < pm || σb < pb {
			t.Errorf("U %g: a cylinder must not be stressed less than a sphere: %g, %g against %g, %g", u, σm, σb, pm, pb)
		}
	}
	if σ, _, err := port.CylinderLocalStress(rm, wall, math.NaN(), f); err == nil || !math.IsNaN(σ) {
		t.Errorf("NaN radius: %g, %v", σ, err)
	}
}

// A force on an ellipsoid that is a sphere is the force on that sphere.
func TestLoadOnASphereLikeEllipsoid(t *testing.T) {
	p := tube(38.1, 2, 60)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	margin := func(w port.Wall) float64 {
		r, err := p.Area(w, port.Load{Pressure: 2 * mpa}, s)
		if err != nil {
			t.Fatal(err)
		}
		return r.CheckThrust("p", port.External{Force: 4000, Range: 3 * s.Wall, RangeFormula: "3 S"}).Margin()
	}
	sphere := margin(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm})
	checktest.Close(t, "margin", margin(port.Wall{Surface: port.Ellipsoid, Thickness: 3 * mm, Radius: 150 * mm, Depth: 150 * mm}), sphere, 1e-9)
	if flatter := margin(port.Wall{Surface: port.Ellipsoid, Thickness: 3 * mm, Radius: 150 * mm, Depth: 80 * mm}); !(flatter < sphere) {
		t.Errorf("a flatter head must be worse: %g against %g", flatter, sphere)
	}
}

// A shell curved both ways is stressed less than the cylinder of its larger radius, with
// any other radius: what a load in a knuckle is held by.
func TestCylinderBoundsAKnuckle(t *testing.T) {
	for _, u := range []float64{0.1, 0.5, 2.5} {
		m, n := patch(u, 0)
		for _, ρ := range []float64{0.2, 1, 3, 10, 20} {
			mk, nk := patch(u, ρ)
			if math.Abs(mk) > m || nk > n {
				t.Errorf("U %g, ρ %g: %.4f and %.4f over the cylinder's %.4f and %.4f", u, ρ, mk, nk, m, n)
			}
		}
	}
}

// By hand, torisphere of 202 mm, crown 402, knuckle 82, wall 4 mm: border at 402·120/320 =
// 150.75 mm. A tube of 40 × 3 normal to the wall at 160 reaches inboard over it: R_m is the
// crown's 402. U = 20/√1608 = 0.49875, N T/F 0.1935 + (0.5 − 0.49875)/0.3·0.0446 = 0.19369,
// 1 kN: 12.105 MPa; with the shell's 50 MPa: 62.105. All in the knuckle, 16
// mm at 170: inboard edge 170 − 8 cos φ, sin φ = 50/82: 163.66, r_2 = 163.66/(43.66/82) =
// 307.38; U = 8/√1229.5 = 0.22815, N T/F 0.2381 − 0.02815/0.3·0.0446 = 0.23391: 14.620.
func TestLoadInAKnuckle(t *testing.T) {
	w := port.Wall{Surface: port.Torisphere, Thickness: 4 * mm, Radius: 202 * mm, Crown: 402 * mm, Knuckle: 82 * mm}
	s := port.Strengths{Wall: 100 * mpa, Tube: 100 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	thrust := func(od, e, membrane float64, w port.Wall) check.Result {
		p := tube(od, 3, e)
		p.Parallel, p.Fit, p.FullGroove, p.OutsideLeg = false, port.Flush, true, 3*mm
		r, err := p.Area(w, port.Load{Pressure: 1 * mpa, Membrane: membrane, Face: membrane + 30*mpa}, s)
		if err != nil {
			t.Fatal(err)
		}
		return r.CheckThrust("p", port.External{Force: 1000, Range: 3 * s.Wall, RangeFormula: "3 S"})
	}
	local := func(r check.Result) float64 {
		for _, q := range r.Inputs {
			if q.Symbol == "σ_m" {
				return q.Value / mpa
			}
		}
		t.Fatalf("no local stress: %s", r.Reason())
		return 0
	}
	checktest.Printed(t, "over the border", local(thrust(40, 160, 50*mpa, w)), "62.105")
	in := thrust(16, 170, 50*mpa, w)
	// M/F 0.2909 − 0.02815/0.3·0.1126 = 0.28033: 6·0.28033·1000/16 = 105.12, the shell's bending 30.
	checktest.Close(t, "at the face", in.Inputs[len(in.Inputs)-2].Value/mpa, 64.62+105.12+30, 1e-4)
	checktest.Printed(t, "all in the knuckle", local(in), "64.62")
	if in.Status() != check.Satisfied || !strings.Contains(in.Note, "larger of the wall's radii") {
		t.Errorf("%v: %s", in.Status(), in.Note)
	}
	if r := thrust(16, 170, 155*mpa, w); r.Status() != check.NotSatisfied { // 155 MPa of 150
		t.Errorf("155 MPa of membrane stress: %v", r.Status())
	}
	for _, unknown := range []float64{0, math.NaN(), math.Inf(1)} {
		if r := thrust(16, 170, unknown, w); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "numerical shell") {
			t.Errorf("membrane stress %g: %v, %s", unknown, r.Status(), r.Reason())
		}
	}
	tight := w
	tight.Knuckle = 7.9 * mm
	if r := thrust(16, 192, 50*mpa, tight); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "smaller radius there, 7.9 mm") {
		t.Errorf("a tube rounder than the knuckle: %v, %s", r.Status(), r.Reason())
	}
	flat := port.Wall{Surface: port.Flat, Thickness: 20 * mm, Radius: 100 * mm}
	p := tube(16, 3, 0)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	r, err := p.Area(flat, port.Load{Pressure: 1 * mpa, Required: 15 * mm}, s)
	if err != nil {
		t.Fatal(err)
	}
	if got := r.CheckThrust("p", port.External{Force: 1, Range: 3 * s.Wall, RangeFormula: "3 S"}); got.Status() != check.NotAssessed || !strings.Contains(got.Reason(), "bracket") {
		t.Errorf("a load on a flat head: %v, %s", got.Status(), got.Reason())
	}
}

// By hand, ellipsoid of A 200, h 100, wall 4 mm, tube of 16 × 3 normal to the wall at 175:
// tan φ = (h/A) q/√(1 − q²), q 0.875: φ 42.116°; inboard edge 175 − 8 cos φ = 169.07. There
// r_2 = √(A⁴ − e²·30000)/h = 272.42 mm; U = 8/√(4·272.42) = 0.24235, N T/F 0.2381 −
// 0.04235/0.3·0.0446 = 0.23180, 1 kN: 14.488 MPa beside the shell's 50. Inside 0.8 D the
// sphere's table stays.
func TestLoadBesideAnEllipsoidsRim(t *testing.T) {
	w := port.Wall{Surface: port.Ellipsoid, Thickness: 4 * mm, Radius: 200 * mm, Depth: 100 * mm}
	s := port.Strengths{Wall: 100 * mpa, Tube: 100 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	thrust := func(e float64, load port.Load) check.Result {
		p := tube(16, 3, e)
		p.Parallel, p.Fit, p.FullGroove, p.OutsideLeg = false, port.Flush, true, 3*mm
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		return r.CheckThrust("p", port.External{Force: 1000, Range: 3 * s.Wall, RangeFormula: "3 S"})
	}
	rim := thrust(175, port.Load{Pressure: 1 * mpa, Membrane: 50 * mpa, Face: 70 * mpa})
	if rim.Status() != check.Satisfied {
		t.Fatalf("%v: %s", rim.Status(), rim.Reason())
	}
	for _, q := range rim.Inputs {
		if q.Symbol == "σ_m" {
			checktest.Printed(t, "at the rim", q.Value/mpa, "64.49")
		}
	}
	if r := thrust(175, port.Load{Pressure: 1 * mpa}); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "numerical shell") {
		t.Errorf("without the shell: %v, %s", r.Status(), r.Reason())
	}
	if r := thrust(100, port.Load{Pressure: 1 * mpa}); r.Status() == check.NotAssessed {
		t.Errorf("in the middle: %s", r.Reason())
	}
}

// By hand, sphere of 150 mm and 3 mm under 2 MPa, a tube of 38.1 × 2 with 4 kN: U = 19.05/√450 = 0.898026, N T/F 0.1344 −
// 0.398026/0.5·0.0688 = 0.0796316, M/F 0.0836 − 0.398026/0.5·0.0493 = 0.0443546; φ = asin 0.4, cos φ 0.916515: 3,666.06 N,
// 32.437 MPa of membrane and 108.404 of bending; shear 2·4000·0.4/(π 38.1·3) = 8.912, twice it 17.823; with 50 MPa of the
// pressure 100.26 and 208.66 MPa. Held to 3 S = 240 MPa it stands, to 2 Rp0.2 = 200 MPa it does not. By a factor κ of 1.25 the
// force is 5 kN: 112.83 and 248.33 MPa; on the weld 2280.2 + 5000 N; without a limit it is not assessed.
func TestLimitAndFactorOfALoad(t *testing.T) {
	p := tube(38.1, 2, 60)
	p.Fit, p.FullGroove, p.OutsideLeg = port.Flush, true, 3*mm
	s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	r, err := p.Area(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}, port.Load{Pressure: 2 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	thrust := func(x port.External) check.Result { x.Force = 4000; return r.CheckThrust("p", x) }
	of := func(r check.Result, symbol string) float64 {
		for _, q := range r.Inputs {
			if q.Symbol == symbol {
				return q.Value
			}
		}
		t.Fatalf("no %s: %s", symbol, r.Reason())
		return 0
	}
	stands, yields := thrust(port.External{Range: 240 * mpa, RangeFormula: "3 S"}), thrust(port.External{Range: 200 * mpa, RangeFormula: "2 Rp0.2"})
	checktest.Printed(t, "membrane", of(stands, "σ_m")/mpa, "100.26")
	checktest.Printed(t, "at the face", of(stands, "σ_m + σ_b")/mpa, "208.66")
	if stands.Status() != check.Satisfied || yields.Status() != check.NotSatisfied || of(yields, "2 Rp0.2") != 200*mpa {
		t.Errorf("to 240 MPa %v, to 200 MPa %v", stands.Status(), yields.Status())
	}
	more := thrust(port.External{Range: 240 * mpa, RangeFormula: "3 S", Factor: 1.25})
	checktest.Printed(t, "membrane, factored", of(more, "σ_m")/mpa, "112.83")
	checktest.Printed(t, "at the face, factored", of(more, "σ_m + σ_b")/mpa, "248.33")
	checktest.Printed(t, "on the weld, factored", of(more, "T"), "7280.2")
	if more.Status() != check.NotSatisfied || !strings.Contains(more.Formula, "κ (F + 2M/r)") || of(more, "κ") != 1.25 {
		t.Errorf("factored: %v by %s", more.Status(), more.Formula)
	}
	for name, x := range map[string]port.External{"no limit": {}, "limit NaN": {Range: math.NaN()}, "no end": {Range: math.Inf(1)}, "factor under 1": {Range: 1e8, Factor: 0.9}, "factor NaN": {Range: 1e8, Factor: math.NaN()}} {
		if got := thrust(x); got.Status() != check.NotAssessed {
			t.Errorf("%s: %v", name, got.Status())
		}
	}
}
