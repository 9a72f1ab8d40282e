package port_test

import (
	"errors"
	"math"
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
		{"small force", port.External{Force: 50}, check.Satisfied},
		{"large moment", port.External{Moment: 500}, check.NotSatisfied},
		{"NaN", port.External{Force: math.NaN()}, check.NotAssessed},
		{"negative", port.External{Force: -1}, check.NotAssessed},
	} {
		if got := r.CheckThrust("p", x.load); got.Status() != x.want {
			t.Errorf("%s: %v (%s), want %v", x.name, got.Status(), got.Note, x.want)
		}
	}
	q, cw, load, cs := areaCase(45, 60, 4, 3, 1, 4, 6)
	if r, err = q.Area(cw, load, cs); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckThrust("p", port.External{Force: 1}).Status(); got != check.NotAssessed {
		t.Errorf("outside load on a cone: %v, want not assessed", got)
	}
}
