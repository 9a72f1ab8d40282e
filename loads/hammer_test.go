package loads_test

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// A public course on water hammer (read): water at 2 m/s stopped with a wave of
// 1000 m/s, 2 MPa or 203.9 m; the same in 5 s where 2 L/c is 2 s, from 0.5 MPa to 1.3 MPa.
// Its pipes of steel and of plastic: 900 to 1200 m/s and 200 to 600 m/s.
func TestHammerCourse(t *testing.T) {
	l := loads.Line{Length: 1000, Velocity: 2, Density: 1000, Sound: 1000}
	rise, slow, err := l.Hammer(0)
	if err != nil || slow {
		t.Fatal(slow, err)
	}
	checktest.Printed(t, "fast, MPa", rise/1e6, "2.0")
	checktest.Printed(t, "fast, m of water", rise/(1000*9.81), "203.9")
	rise, slow, _ = l.Hammer(5)
	if !slow {
		t.Error("5 s count as fast")
	}
	checktest.Printed(t, "slow, from 0.5 MPa, MPa", 0.5+rise/1e6, "1.3")
	for _, row := range []struct {
		E, t, least, most float64
	}{{200e9, 0.01, 900, 1200}, {3e9, 0.015, 200, 600}} {
		c, err := loads.WaveSpeed(2.1e9, 1000, 0.5, row.t, row.E, 1)
		if err != nil || c < row.least || c > row.most {
			t.Errorf("E %g: %g m/s, %v", row.E, c, err)
		}
	}
	c, _ := loads.WaveSpeed(2.1e9, 1000, 0.5, 0.01, 200e9, 1)
	checktest.Printed(t, "steel (computed)", c, "1173.5")
	c, _ = loads.WaveSpeed(2.1e9, 1000, 0.5, 0.015, 3e9, 1)
	checktest.Printed(t, "plastic (computed)", c, "293.8")
}

// A.K. Choudhary, ex. 7.19, by way of a companion's program (read; its formula, no
// printed answer): 40 l/s in 150 mm stopped in 0.5 s over 500 m, 230 737 kgf/m2 by
// the mean deceleration. The peak of a steady closing is twice that.
func TestHammerChoudhary(t *testing.T) {
	v := 0.040 / (math.Pi / 4 * 0.15 * 0.15)
	checktest.Printed(t, "velocity, m/s", v, "2.2635")
	l := loads.Line{Length: 500, Velocity: v, Density: 1000, Sound: 1e6} // stiff: the closing counts as slow
	rise, _, err := l.Hammer(0.5)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "half of the rise, kgf/m2", rise/2/9.81, 230737, 1e-5)
}

// Fast and slow meet at 2 L/c; a longer closing never gives more; lengths, times and
// masses in other units change the rise as a pressure.
func TestHammerMeets(t *testing.T) {
	l := loads.Line{Length: 3, Velocity: -4, Density: 790, Sound: 1150}
	fast, _, _ := l.Hammer(0)
	edge, slow, _ := l.Hammer(2 * 3 / 1150.0)
	if slow {
		t.Error("2 L/c itself counts as slow")
	}
	checktest.Close(t, "at 2 L/c", edge, fast, 1e-12)
	last := math.Inf(1)
	for i := range 50 {
		rise, _, _ := l.Hammer(0.0005 * float64(i))
		if rise > last {
			t.Errorf("closing in %g s gives more than in less", 0.0005*float64(i))
		}
		last = rise
	}
	const m, s, kg = 7.0, 11.0, 3.0
	in := loads.Line{Length: 3 * m, Velocity: -4 * m / s, Density: 790 * kg / (m * m * m), Sound: 1150 * m / s}
	rise, _, _ := in.Hammer(0.1 * s)
	want, _, _ := l.Hammer(0.1)
	checktest.Close(t, "in other units", rise, want*kg/(m*s*s), 1e-12)
}

func TestHammerRange(t *testing.T) {
	good := loads.Line{Length: 3, Velocity: 4, Density: 790, Sound: 1150}
	for name, edit := range map[string]func(*loads.Line){
		"length": func(l *loads.Line) { l.Length = 0 }, "velocity": func(l *loads.Line) { l.Velocity = math.NaN() },
		"density": func(l *loads.Line) { l.Density = -1 }, "sound": func(l *loads.Line) { l.Sound = math.Inf(1) },
	} {
		l := good
		edit(&l)
		if rise, _, err := l.Hammer(0.1); err == nil || !math.IsNaN(rise) {
			t.Errorf("%s is taken: %g Pa", name, rise)
		}
	}
	for _, closing := range []float64{-1, math.NaN()} {
		if _, _, err := good.Hammer(closing); err == nil {
			t.Errorf("a closing in %g s is taken", closing)
		}
	}
	if c, err := loads.WaveSpeed(2e9, 1000, 0.1, math.NaN(), 2e11, 1); err == nil || !math.IsNaN(c) {
		t.Error("a wall that is not a number is taken")
	}
}
