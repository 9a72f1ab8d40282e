package material_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// flight245 is a material whose ultimate governs, with the factors of flight.
func flight245(t *testing.T) material.Limits {
	t.Helper()
	f, err := material.DefaultFactors(material.Flight)
	if err != nil {
		t.Fatal(err)
	}
	v := func(x float64) material.Value { return material.Value{Value: x} }
	l, err := material.Properties{Yield: v(245e6), Ultimate: v(245e6), RoomYield: 245e6, RoomUltimate: 245e6}.Limits(material.Flight, f, material.LimitOptions{})
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// TestCornerExample is the hand-worked point: hoop 100, axial 50 from pressure,
// −60 from bending, ultimate factors 2 and 1.5: (i) von Mises 195.2 and
// principal 200, (ii) von Mises 173.2, principal 200, (iii) −90. 200 governs.
func TestCornerExample(t *testing.T) {
	x, y := 2*100.0, 2*50-1.5*60
	checktest.Printed(t, "von Mises of corner (i)", math.Sqrt(x*x-x*y+y*y), "195.2")
	checktest.Printed(t, "measure of corner (i)", material.EquivalentStress(x, y), "200")
	j := flight245(t).Equivalent(material.Stress{HoopPressure: 100e6, MeridionalPressure: 50e6, MeridionalLoadMost: -60e6, MeridionalLoadLeast: -60e6})
	if j.Err != nil {
		t.Fatal(j.Err)
	}
	checktest.Printed(t, "governing demand", j.Demand.Value/mpa, "200")
	if j.Capacity.Value != 245e6 || j.Factor != 1 {
		t.Errorf("capacity %g, factor %g", j.Capacity.Value, j.Factor)
	}
}

// The measure is what it says, von Mises among it, whatever the two stresses.
func TestEquivalentStressIsTheLargest(t *testing.T) {
	for a := -3.0; a <= 3; a += 0.25 {
		for b := -3.0; b <= 3; b += 0.25 {
			want := math.Max(math.Max(math.Abs(a), math.Abs(b)), math.Sqrt(a*a-a*b+b*b))
			if a*b < 0 {
				want = math.Max(want, math.Abs(a-b))
			}
			checktest.Close(t, fmt.Sprintf("%g, %g", a, b), material.EquivalentStress(a*1e8, b*1e8), want*1e8, 1e-15)
		}
	}
}

func TestEquivalentStress(t *testing.T) {
	for _, row := range []struct {
		where      string
		a, b, want float64 // [MPa]
	}{
		{"uniaxial", 100, 0, 100}, {"sphere", 100, 100, 100}, {"cylinder: principal over von Mises 86.6", 100, 50, 100},
		{"pure shear: Tresca over von Mises 173", 100, -100, 200}, {"compression", -90, 0, 90}, {"none", 0, 0, 0},
		{"small numbers: Tresca in any unit", 1e-6, -1e-6, 2e-6},
	} {
		checktest.Close(t, row.where, material.EquivalentStress(row.a, row.b), row.want, 1e-12)
		checktest.Close(t, row.where+", swapped", material.EquivalentStress(row.b, row.a), row.want, 1e-12)
	}
	if !math.IsNaN(material.EquivalentStress(math.NaN(), 1)) || !math.IsNaN(material.EquivalentStress(1, math.NaN())) {
		t.Error("NaN was swallowed")
	}
}

// TestNormalCorners: a relieving load counts unfactored and may be absent; an
// adverse one is factored.
func TestNormalCorners(t *testing.T) {
	l := flight245(t)
	for _, row := range []struct {
		where                 string
		pressure, most, least float64 // [MPa]
		efficiency            float64
		demand, capacity      float64 // [MPa]
	}{
		{"pressure alone, 2.0 on ultimate", 100, 0, 0, 0.85, 200, 0.85 * 245},
		{"adverse load, 2 × 50 + 1.5 × 40", 50, 40, -40, 1, 160, 245},
		{"relieving load may be absent", 100, -30, -30, 1, 200, 245},
		{"pressure may be absent", -50, 40, 0, 1, 60, 245},
		{"no tension", -50, -10, -20, 1, 0, 245},
	} {
		j := l.Normal(row.pressure*mpa, row.most*mpa, row.least*mpa, row.efficiency)
		if j.Err != nil {
			t.Errorf("%s: %v", row.where, j.Err)
			continue
		}
		checktest.Close(t, row.where, j.Demand.Value, row.demand*mpa, 1e-12)
		checktest.Close(t, row.where, j.Capacity.Value, row.capacity*mpa, 1e-12)
	}
	v := l
	v.Rule, v.S = material.Vessel, 100e6
	j := v.Normal(50e6, -20e6, -30e6, 0.7)
	checktest.Close(t, "vessel: the load as it is given", j.Demand.Value, 30e6, 1e-12)
	checktest.Close(t, "vessel: E S", j.Capacity.Value, 70e6, 1e-12)
}

// TestPresent: a relief that is certain counts once, at its given value.
func TestPresent(t *testing.T) {
	l := flight245(t)
	s := material.Stress{HoopPressure: 10e6, MeridionalPressure: 100e6, MeridionalLoadMost: -50e6, MeridionalLoadLeast: -50e6, PressureLeast: 1}
	absent := l.Equivalent(s).Demand.Value
	s.Present = true
	certain := l.Equivalent(s).Demand.Value
	checktest.Close(t, "load absent: 2 × 100", absent, 200e6, 1e-12)
	checktest.Close(t, "load certain: 2 × 100 − 50", certain, 150e6, 1e-12)
}

func TestJudgedHonesty(t *testing.T) {
	l := flight245(t)
	nan := math.NaN()
	for name, j := range map[string]material.Judged{
		"NaN pressure":    l.Normal(nan, 0, 0, 1),
		"NaN load":        l.Normal(1, nan, 0, 1),
		"NaN least load":  l.Normal(1, 0, nan, 1),
		"NaN efficiency":  l.Normal(1, 0, 0, nan),
		"efficiency 0":    l.Normal(1, 0, 0, 0),
		"efficiency over": l.Normal(1, 0, 0, math.Nextafter(1, 2)),
		"no limits":       material.Limits{}.Normal(1, 0, 0, 1),
		"no flight":       material.Limits{Rule: material.Flight}.Equivalent(material.Stress{HoopPressure: 1}),
		"NaN hoop":        l.Equivalent(material.Stress{HoopPressure: nan}),
		"NaN share":       l.Equivalent(material.Stress{HoopPressure: 1, PressureLeast: nan}),
		"infinite load":   l.Equivalent(material.Stress{MeridionalLoadLeast: math.Inf(-1)}),
	} {
		r := check.Result{Demand: j.Demand, Capacity: j.Capacity, Factor: j.Factor, Inputs: j.Inputs, Err: j.Err}
		if r.Status() != check.NotAssessed || j.Err == nil {
			t.Errorf("%s: %v, %v", name, r.Status(), j.Err)
		}
	}
}

// TestUnits: with stresses seven times as large demand and capacity are seven
// times as large, and the governing corner is the same.
func TestUnits(t *testing.T) {
	l := flight245(t)
	big := l
	big.Yield, big.Ultimate = 7*l.Yield, 7*l.Ultimate
	s := material.Stress{HoopPressure: 100e6, MeridionalPressure: 50e6, MeridionalLoadMost: 30e6, MeridionalLoadLeast: -80e6, PressureLeast: 0.4}
	S := material.Stress{HoopPressure: 700e6, MeridionalPressure: 350e6, MeridionalLoadMost: 210e6, MeridionalLoadLeast: -560e6, PressureLeast: 0.4}
	a, b := l.Equivalent(s), big.Equivalent(S)
	checktest.Close(t, "demand", b.Demand.Value, 7*a.Demand.Value, 1e-12)
	checktest.Close(t, "capacity", b.Capacity.Value, 7*a.Capacity.Value, 1e-12)
	c, d := l.Normal(50e6, 30e6, -80e6, 0.85), big.Normal(350e6, 210e6, -560e6, 0.85)
	checktest.Close(t, "normal demand", d.Demand.Value, 7*c.Demand.Value, 1e-12)
	checktest.Close(t, "normal capacity", d.Capacity.Value, 7*c.Capacity.Value, 1e-12)
}

// TestPressureMayVanish: a pressure that relieves is tried at its smallest and
// at 0, unless the smallest is certain.
func TestPressureMayVanish(t *testing.T) {
	l := flight245(t)
	s := material.Stress{MeridionalPressure: -40e6, MeridionalLoadMost: 100e6, MeridionalLoadLeast: 100e6, PressureLeast: 0.5}
	checktest.Close(t, "pressure gone: 1.5 × 100", l.Equivalent(s).Demand.Value, 150e6, 1e-12)
	s.Present = true
	checktest.Close(t, "pressure at half: 1.5 × 100 − 20", l.Equivalent(s).Demand.Value, 130e6, 1e-12)
}
