package buckling_test

import (
	"math"
	"testing"

	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

// Cone of 30 degrees, r 50 to 200, t 2 mm, wall that stays elastic: P_cr
// 726.593 kN, M_cr 22.5684 kN m; FS 1.5, by hand.
func TestCheckConeCompression(t *testing.T) {
	hard := metal(193, 0.3, 3000, 20, "ferritic")
	k := buckling.ConeCompression{
		End: "head.aft", Title: "Aft head", Cone: halfCone, Metal: hard, Factor: 1.5,
		Station: buckling.Station{Compression: 100e3, Moment: 2e3},
	}
	got := k.Check(true)
	status(t, got, check.Satisfied, "SP-8019: R_c 0.207, R_b 0.133", "knock-down 0.33")
	checktest.Printed(t, "sum", got.Demand.Value, "0.3394") // 150/726.593 + 3/22.5684
	// 1 MPa relieves π 49.134² mm² times it, 7.584 kN: 142.416/726.593 + …
	k.Station.PressureLeast, k.Station.PressureMost = 1e6, 1e6
	got = k.Check(false)
	status(t, got, check.Satisfied, "Without ullage pressure the use is 0.34")
	checktest.Printed(t, "with pressure", got.Demand.Value, "0.3289")
	checktest.Printed(t, "pressure does not count", k.Check(true).Demand.Value, "0.3394")
	// tension takes from the bent side
	k.Station = buckling.Station{Moment: 2e3, Pull: 40e3}
	checktest.Printed(t, "bent side", k.Check(true).Demand.Value, "0.0886") // (3 − 40·0.05/2)/22.5684
	// vacuum: its axial share on the outside radius, with FS, and its own
	k.Station = buckling.Station{PressureLeast: -50e3}
	low, err := buckling.Lowest(halfCone.External(hard, 1.5))
	must(t, low, err)
	axial := 1.5 * 50e3 * math.Pi * math.Pow(0.05+0.001*math.Cos(math.Pi/6), 2) / 726593
	checktest.Close(t, "vacuum", k.Check(true).Demand.Value, 50e3/low.Allowable+axial, 1e-6)
	// plasticity: the small end of soft steel
	k.Metal, k.Station = steel304, buckling.Station{Compression: 60e3}
	soft := k.Check(true)
	yield := 205e6 * 2 * math.Pi * 0.05 * 0.002 * math.Cos(math.Pi/6)
	if least := 1.5 * 60e3 / yield; soft.Demand.Value < least {
		t.Errorf("use %g, %g at yield", soft.Demand.Value, least)
	}
}

func TestConeCompressionRefuses(t *testing.T) {
	good := buckling.ConeCompression{End: "head.aft", Title: "Aft head", Cone: halfCone, Metal: steel304, Factor: 1.5, Station: buckling.Station{Compression: 1e3, Moment: 10}}
	status(t, good.Check(true), check.Satisfied)
	for i, bend := range []func(*buckling.ConeCompression){
		func(k *buckling.ConeCompression) { k.Factor = 0.5 }, func(k *buckling.ConeCompression) { k.Station.Shear = 1 },
		func(k *buckling.ConeCompression) { k.Station.Compression = nan }, func(k *buckling.ConeCompression) { k.Cone.SmallRadius = 0 },
		func(k *buckling.ConeCompression) { k.Cone.HalfAngle = 65 * math.Pi / 180 }, // bending to 60 only
		func(k *buckling.ConeCompression) { k.Metal.Yield = nan },
	} {
		k := good
		bend(&k)
		if got := k.Check(true).Status(); got != check.NotAssessed {
			t.Errorf("%d: %v", i, got)
		}
	}
}

// A hole wider than a tenth of the diameter or higher than a fifth of the
// length leaves compression unassessed, and pressure from outside alone.
func TestOpenings(t *testing.T) {
	s := buckling.Station{Compression: 1e3}
	for _, row := range []struct {
		width, height float64
		want          check.Status
	}{
		{0.0599, 0.299, check.Satisfied}, {0.0601, 0.299, check.NotAssessed}, {0.0599, 0.301, check.NotAssessed}, {nan, 0.01, check.NotAssessed},
	} {
		c := plain
		c.Openings = []buckling.Opening{{Name: "fill", Width: row.width, Height: row.height}}
		r := c.Resistance(steel304, buckling.Options{Factor: 1.5})
		status(t, r.CheckCompression(s, true), row.want)
		status(t, r.CheckExternal(1e3), check.Satisfied)
		if ratio, err := r.Ratio(s, true); (err == nil) != (row.want == check.Satisfied) || err == nil && math.IsNaN(ratio) {
			t.Errorf("%g, %g: ratio %g, %v", row.width, row.height, ratio, err)
		}
	}
}

// The quick ratio is the one that the check decides by.
func TestRatioIsTheCheck(t *testing.T) {
	r := resistance(1.5)
	s := buckling.Station{Compression: 60e3, Moment: 8e3, PressureLeast: 0.1e6, PressureMost: 0.12e6, LiquidHead: 0.02e6}
	for _, zero := range []bool{true, false} {
		ratio, err := r.Ratio(s, zero)
		checktest.Close(t, "margin", 1/must(t, ratio, err)-1, r.CheckCompression(s, zero).Margin(), 1e-12)
	}
	s.Moment = nan
	_, err := r.Ratio(s, true)
	outside(t, "moment", err)
}

func BenchmarkRatio(b *testing.B) {
	r := resistance(1.5)
	s := buckling.Station{Compression: 60e3, Moment: 8e3, PressureLeast: 0.1e6, PressureMost: 0.12e6}
	for b.Loop() {
		if _, err := r.Ratio(s, true); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkResistance(b *testing.B) {
	for b.Loop() {
		plain.Resistance(steel304, buckling.Options{Factor: 1.5})
	}
}
