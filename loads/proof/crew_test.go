package proof_test

import (
	"math"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check/checktest"
)

// crew goes up the first cycle with a pencil, by the words of the plan: at half the
// setting the level; up to 0.7 of it what a step added against what it should add, with
// the air that the level lets in; from 0.8 on the straight line through the readings
// from half on; the band of the step, or of all that went in where wider. It returns
// what stops the test.
func crew(rows []proof.Reading, l proof.Limits, volume func(share float64) float64) string {
	var ps, vs []float64
	excess := 0.0
	for _, r := range rows {
		if r.Step.Cycle != 1 || r.Step.Share < 0.5 || r.Step.Name == "examination" {
			continue
		}
		v := volume(r.Step.Share)
		n := len(vs)
		off := math.NaN()
		switch {
		case n == 0:
			if v < l.HalfLeast || v > l.HalfMost {
				return "level"
			}
			excess = math.Max(0, v-r.Injected.Total)
		case n < 3:
			off = v - vs[n-1] - r.Added
			if off > 0 {
				off = math.Max(0, off-l.AirAgain*excess)
			}
		default:
			line := proof.FitLine(ps, vs, 0, 0)
			at, _ := line.At(r.Pressure)
			off = v - at
		}
		if band := math.Max(r.StopBand, 0.02*v); off > band {
			return "over"
		} else if off < -band {
			return "under"
		}
		ps, vs = append(ps, r.Pressure), append(vs, v)
	}
	return ""
}

// What the plan says at the pump stops no tank that the method lets pass, soft by up to
// a tenth or with air up to 0.5 % of the volume, and stops one that yields. Limits of
// predicted volume ± band for each step stopped the first. From 0.6 MPa of MEOP up: in
// a test at 0.3 MPa as much air bends the line by more than the band, and the plan asks
// what is wrong with the meter.
func TestPlanAtThePump(t *testing.T) {
	for _, meop := range []float64{0.6e6, 1.2e6, 3e6, 6e6} {
		in := oxygenTank(t)
		in.MEOP, in.Points = meop, []proof.Point{{Name: "top", Service: meop, Ratios: plate}}
		p := plan(t, in)
		f := tankA.full(t, 20, 0)
		rows, err := p.Readings(f)
		if err != nil {
			t.Fatal(err)
		}
		l, err := p.Limits(f)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range []struct {
			name   string
			softer float64 // share [-]
			air    float64 // share of the volume [-]
			yield  float64 // at the setting, from 0.75 of it on, share of the volume injected [-]
			want   string
		}{
			{name: "as predicted"}, {name: "soft", softer: 0.03}, {name: "softer", softer: 0.09}, {name: "stiff", softer: -0.09},
			{name: "air", air: 0.002}, {name: "more air", air: 0.0049}, {name: "soft and air", softer: 0.09, air: 0.0049},
			{name: "much air", air: 0.02, want: "level"}, {name: "blocked", softer: -0.3, want: "level"}, {name: "yields", yield: 0.06, want: "over"},
			{name: "soft and yields", softer: 0.05, yield: 0.08, want: "over"},
		} {
			tank := f
			tank.Growth += row.softer * (f.Growth + f.Compressibility*f.Volume)
			tank.Air = row.air * f.Volume
			top := rows[len(rows)-2].Injected.Total
			got := crew(rows, l, func(share float64) float64 {
				v, err := tank.Injected(share * rows[len(rows)-2].Pressure)
				if err != nil {
					t.Fatal(err)
				}
				return v.Total + row.yield*top*math.Max(0, share-0.75)/0.25
			})
			if got != row.want {
				t.Errorf("%g MPa, %s: %q, want %q", meop/1e6, row.name, got, row.want)
			}
		}
	}
}

// The band of the plan and the band of the record are one function, of the volume that
// went in.
func TestOneBand(t *testing.T) {
	test, log := recordTest(t), handLog{}.log(t)
	test.Plan.Steps = plan(t, oxygenTank(t)).Steps
	for i := range test.Plan.Steps {
		test.Plan.Steps[i].Pressure = test.Plan.Steps[i].Share * referencePressure
	}
	rows, err := test.Plan.Readings(test.Full)
	if err != nil {
		t.Fatal(err)
	}
	got, err := test.Judge(log)
	if err != nil {
		t.Fatal(err)
	}
	told := 0
	for _, q := range got.Readings {
		for _, r := range rows {
			if r.Step.Cycle != 1 || math.Abs(q.Pressure/r.Step.Pressure-1) > 1e-6 || math.IsNaN(q.Band) {
				continue
			}
			told++
			if math.IsNaN(r.StopBand) {
				t.Errorf("at %.2f of the setting the record tells a departure, the plan none", r.Step.Share)
			}
			// The plan's volume is that of the least pressure the gauge can mean.
			checktest.Close(t, "band", q.Band, proof.StopBand(r.Injected.Total/0.99), 1e-4)
		}
	}
	if told < 4 {
		t.Errorf("%d steps compared", told)
	}
}
