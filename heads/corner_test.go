package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The angle that needs no added metal: large end, Moss, Pressure Vessel Design Manual, p. 213 (read); small end, ASME VIII-1
// Appendix 1-5 (recalled). Between rows straight, below the first to 0.
func TestDelta(t *testing.T) {
	for _, row := range []struct {
		x     float64
		small bool
		want  string
	}{
		{0.001, false, "11"}, {0.002, false, "15"}, {0.003, false, "18"}, {0.004, false, "21"}, {0.005, false, "23"}, {0.006, false, "25"}, {0.007, false, "27"}, {0.008, false, "28.5"}, {0.009, false, "30"},
		{0.02, false, "30"}, {0.0015, false, "13.0"}, {0.0005, false, "5.5"},
		{0.002, true, "4"}, {0.005, true, "6"}, {0.01, true, "9"}, {0.02, true, "12.5"}, {0.04, true, "17.5"}, {0.08, true, "24"}, {0.10, true, "27"}, {0.125, true, "30"}, {0.001, true, "2.0"},
	} {
		Δ, err := heads.Delta(row.x, row.small)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "Δ", Δ/deg, row.want)
	}
	for _, x := range []float64{-1e-9, math.NaN()} {
		if _, err := heads.Delta(x, false); err == nil {
			t.Errorf("%g is taken", x)
		}
	}
}

func corner() heads.Corner {
	return heads.Corner{HalfAngle: 30 * deg, Radius: 0.5, ShellWall: 0.006, ConeWall: 0.008, ShellNeed: 0.002, ConeNeed: 0.0025,
		ShellFree: math.Inf(1), ConeFree: math.Inf(1), Pressure: 0.4e6, S: 100e6, Efficiency: 1}
}

// By hand: p/(Ss E1) = 0.004, Δ = 21 deg; Q = 100 kN/m; A_r = 5e-4 × 0.3 × 0.57735 m². Large: 0.004 × 0.0547723 + 0.0055 ×
// 0.0679618; small: 0.78 × 0.0547723 × 0.0103509, Δ = 16/3 deg there.
func TestReinforcementByHand(t *testing.T) {
	c := corner()
	r, err := c.Reinforcement()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "A_r", r.Required*1e6, "86.60")
	checktest.Printed(t, "A_e", r.Available*1e6, "592.9")
	c.Small = true
	s, err := c.Reinforcement()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "Δ", s.Delta/deg, "5.33")
	checktest.Printed(t, "A_r", s.Required*1e6, "237.4") // 5e-4 × (1 − 5.3333/30) × 0.57735
	checktest.Printed(t, "A_e", s.Available*1e6, "442.2")
	c = corner()
	c.Added, c.AddedS, c.AddedE, c.Modulus = 1e-4, 50e6, 200e9, 200e9
	k, err := c.Reinforcement()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "k", k.Factor, 2, 1e-12)
	checktest.Close(t, "area with k", k.Required, 2*r.Required, 1e-12)
	c.AddedS = 300e6 // stronger than the wall: not counted as more
	if k, _ = c.Reinforcement(); k.Factor != 1 {
		t.Errorf("k is %g", k.Factor)
	}
	c = corner() // length ×7, pressure and stress ×3
	c.Radius, c.ShellWall, c.ConeWall, c.ShellNeed, c.ConeNeed = 3.5, 0.042, 0.056, 0.014, 0.0175
	c.Pressure, c.S = 1.2e6, 300e6
	u, _ := c.Reinforcement()
	checktest.Close(t, "units", u.Required, 49*r.Required, 1e-12)
	checktest.Close(t, "units", u.Available, 49*r.Available, 1e-12)
}

func TestCornerCheck(t *testing.T) {
	c := corner()
	status(t, "metal enough", c.Check("aft"), check.Satisfied)
	c.ShellNeed, c.ConeNeed = 0.006, 0.0085
	status(t, "no metal to spare", c.Check("aft"), check.NotSatisfied)
	c.Added, c.AddedS, c.AddedE, c.Modulus = 6e-4, 100e6, 200e9, 200e9
	status(t, "a ring", c.Check("aft"), check.Satisfied)
	c.AddedE = 0
	status(t, "a ring of unknown metal", c.Check("aft"), check.NotAssessed)
	c = corner()
	c.Pressure = 0.9e6
	status(t, "30 deg at 0.009", c.Check("aft"), check.NotApplicable)
	c.HalfAngle = 31 * deg
	status(t, "over 30 deg", c.Check("aft"), check.NotApplicable)
	for name, change := range map[string]func(*heads.Corner){
		"angle": func(c *heads.Corner) { c.HalfAngle = math.NaN() }, "pressure": func(c *heads.Corner) { c.Pressure = -1 }, "load": func(c *heads.Corner) { c.LineLoad = math.NaN() },
		"strength": func(c *heads.Corner) { c.S = 0 }, "wall": func(c *heads.Corner) { c.ConeWall = 0 }, "need": func(c *heads.Corner) { c.ShellNeed = math.NaN() },
	} {
		c := corner()
		change(&c)
		status(t, name, c.Check("aft"), check.NotAssessed)
		status(t, name+", European", c.CheckEuropean("aft"), check.NotAssessed)
	}
}

// A strip of 60 × 10 mm on R = 0.2 m, t = 6 mm: sqrt(R t) = 34.6 mm holds all of it; of 100 mm only 69.3 mm counts; off by a
// quarter of it the far edge is cut; beyond nothing counts.
func TestAddedArea(t *testing.T) {
	reach := math.Sqrt(0.2 * 0.006)
	for _, row := range []struct{ width, offset, want float64 }{
		{0.06, 0, 6e-4}, {0.1, 0, 0.02 * reach}, {0.06, 0.25 * reach, 0.01 * (reach - 0.25*reach + 0.03)}, {0.06, 0.251 * reach, 0}, {0.06, -0.251 * reach, 0},
	} {
		got, err := heads.AddedArea(row.width, 0.01, row.offset, 0.2, 0.006)
		if err != nil || math.Abs(got-row.want) > 1e-15 {
			t.Errorf("%+v: %g, %v", row, got, err)
		}
	}
	if _, err := heads.AddedArea(0.06, math.NaN(), 0, 0.2, 0.006); err == nil {
		t.Error("no height is taken")
	}
}

// EN 13445-3 large end: b = 0.778, 1.373, 2.241 at Dc/e 100, α 30, 45, 60 (computed from the form read in a published clause
// calculation), so that p = 2 f e/(Dc b). Small end by hand: s = 1, 30 deg: τ = 2.07457, b_H = 1.6132; s = 0.5, 45 deg:
// τ = 1.21102, b_H = 3.8030.
func TestEuropeanCornerByHand(t *testing.T) {
	for _, row := range []struct{ α, b float64 }{{30, 0.778}, {45, 1.373}, {60, 2.241}} {
		e, err := heads.EuropeanLargeEnd(2*100e6/(100*row.b), 1, row.α*deg, 100e6)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "e_j", e, 0.01, 5e-4) // b has three digits
	}
	for _, row := range []struct {
		e2, α float64
		want  string
	}{{0.01, 30, "1.6132"}, {0.005, 45, "3.8030"}, {0.01, 0, "1.0000"}} {
		p, err := heads.EuropeanSmallEnd(0.01, row.e2, 1, row.α*deg, 100e6, 1)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "b_H", 2*100e6*0.01/p, row.want)
	}
	a, _ := heads.EuropeanSmallEnd(0.01, 0.01*(1-1e-12), 1, 40*deg, 100e6, 0.85)
	b, _ := heads.EuropeanSmallEnd(0.01, 0.01, 1, 40*deg, 100e6, 0.85)
	checktest.Close(t, "no jump at s = 1", a, b, 1e-9)
	for _, α := range []float64{60.1 * deg, math.NaN()} {
		_, err := heads.EuropeanLargeEnd(1e6, 1, α, 100e6)
		_, err2 := heads.EuropeanSmallEnd(0.01, 0.01, 1, α, 100e6, 1)
		if err == nil || err2 == nil {
			t.Errorf("%g rad is taken", α)
		}
	}
	if _, err := heads.EuropeanLargeEnd(1e9, 1, 30*deg, 100e6); err == nil {
		t.Error("a pressure that no wall carries has one")
	}
}

func TestEuropeanCornerCheck(t *testing.T) {
	c := corner()
	e, _ := heads.EuropeanLargeEnd(c.Pressure, 1.006, c.HalfAngle, c.S)
	r := c.CheckEuropean("forward")
	checktest.Close(t, "margin", r.Margin(), 0.006/e-1, 1e-12)
	c.Small = true
	p, _ := heads.EuropeanSmallEnd(0.006, 0.008, 1.006, c.HalfAngle, c.S, 1)
	checktest.Close(t, "small", c.CheckEuropean("forward").Margin(), p/c.Pressure-1, 1e-12)
	c.LineLoad = 1
	status(t, "pulled", c.CheckEuropean("forward"), check.NotAssessed)
	c = corner()
	c.ShellFree = 0.1
	status(t, "short", c.CheckEuropean("forward"), check.NotAssessed)
	c.HalfAngle = 61 * deg
	status(t, "61 deg", c.CheckEuropean("forward"), check.NotApplicable)
}
