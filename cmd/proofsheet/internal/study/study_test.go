package study_test

import (
	"context"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
)

// TestParseAxis reads rows of values, and refuses what makes none.
func TestParseAxis(t *testing.T) {
	in := read(t, "demo.toml")
	for text, want := range map[string][]float64{
		"cylinder.thickness=2mm..5mm/0.5mm":     {0.002, 0.0025, 0.003, 0.0035, 0.004, 0.0045, 0.005},
		"cylinder.thickness=1/8 in, 5 mm":       {0.003175, 0.005},
		"case.burnout.axial_load_factor=1..3/1": {1, 2, 3},
	} {
		a, err := study.ParseAxis(in, text)
		if err != nil || len(a.Values) != len(want) {
			t.Errorf("%s: %v, %v", text, a.Values, err)
			continue
		}
		for i := range want {
			if math.Abs(a.Values[i]-want[i]) > 1e-12 {
				t.Errorf("%s: %v, want %v", text, a.Values, want)
			}
		}
	}
	for text, want := range map[string]string{
		"cylinder.thickness":                "has no =",
		"cylinder.thickness=2mm..5mm":       "has no step",
		"cylinder.thickness=5mm..2mm/1mm":   "write the smaller one first",
		"cylinder.thickness=2mm..5mm/0mm":   "rising row",
		"cylinder.thickness=2..5/1":         "unit",
		"cylinder.thicknes=2mm..5mm/1mm":    "did you mean cylinder.thickness?",
		"cylinder.material=a,b":             "is no number",
		"cylinder.corrosion=0mm..1mm/0.5mm": "is not written",
	} {
		if _, err := study.ParseAxis(in, text); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v, want %q", text, err, want)
		}
	}
}

// TestVaryIsTheCheck sweeps two inputs: each variant is what the tank written so
// gives by itself.
func TestVaryIsTheCheck(t *testing.T) {
	in := read(t, "kerosene.toml")
	a, err := study.ParseAxis(in, "cylinder.thickness=4mm,6mm")
	if err != nil {
		t.Fatal(err)
	}
	b, err := study.ParseAxis(in, "pressure.meop=10bar,12bar")
	if err != nil {
		t.Fatal(err)
	}
	vs, err := study.Vary(context.Background(), in, []study.Axis{a, b}, nil)
	if err != nil || len(vs) != 4 {
		t.Fatalf("%v, %d variants", err, len(vs))
	}
	written, err := in.With("cylinder.thickness", "6 mm")
	if err != nil {
		t.Fatal(err)
	}
	if written, err = written.With("pressure.meop", "12 bar"); err != nil {
		t.Fatal(err)
	}
	checks, err := assess.Checks(written)
	if err != nil {
		t.Fatal(err)
	}
	least := math.Inf(1)
	for _, r := range checks {
		if m := r.Margin(); r.ID != "proof/reach" && m < least {
			least = m
		}
	}
	if v := vs[3]; !v.Done || v.Margin != least || !(v.Mass > vs[0].Mass) {
		t.Errorf("%+v, want least margin %g", v, least)
	}
}

// TestVaryBrokenOff keeps what is done when the context has ended.
func TestVaryBrokenOff(t *testing.T) {
	in := read(t, "kerosene.toml")
	a, err := study.ParseAxis(in, "cylinder.thickness=4mm..8mm/1mm")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(context.Background())
	vs, err := study.Vary(ctx, in, []study.Axis{a}, func(done, _ int) {
		if done == 1 {
			stop()
		}
	})
	if err != nil {
		t.Fatal(err)
	}
	done := 0
	for _, v := range vs {
		if v.Done {
			done++
		}
	}
	if done == 0 || done == len(vs) {
		t.Errorf("%d of %d done", done, len(vs))
	}
}

// justHolds returns the wall [mm] of a cylinder at which a check just holds, between
// two others.
func justHolds(t *testing.T, file, id string, lo, hi float64) float64 {
	margin := func(mm float64) float64 {
		v, err := read(t, file).WithNumbers(map[string]float64{"cylinder.thickness": mm / 1e3})
		if err != nil {
			t.Fatal(err)
		}
		checks, err := assess.ChecksWithoutShell(v)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range checks {
			if report.FullID(r) == id {
				return r.Margin()
			}
		}
		t.Fatal(id)
		return 0
	}
	for range 40 {
		if mid := (lo + hi) / 2; margin(mid) < 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// TestScatterProbability draws the wall of a cylinder about the value at which a
// check just holds: the share of failures is the normal distribution's.
func TestScatterProbability(t *testing.T) {
	const id = "cylinder/hoop@meop"
	hi := justHolds(t, "kerosene.toml", id, 1, 8)
	const spread = 0.2
	in := read(t, "kerosene.toml", `thickness = "5 mm"`, `thickness = "4.2 mm"`, "[proof]", "[scatter]\n\"cylinder.thickness\" = \"normal 0.2 mm\"\n\n[proof]")
	want := distuv.UnitNormal.CDF((hi - 4.2) / spread)
	const n = 120
	got, err := study.Scatters(context.Background(), in, n, study.ScatterOptions{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	again, err := study.Scatters(context.Background(), in, n, study.ScatterOptions{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i, x := range got.Checks {
		if y := again.Checks[i]; x.ID != y.ID || x.Mean != y.Mean && !math.IsNaN(x.Mean) || x.Fails != y.Fails {
			t.Fatalf("a second study differs: %+v, %+v", x, y)
		}
		if x.ID != id {
			continue
		}
		if math.Abs(x.Probability-want) > 2.0/n || x.Low > want || x.High < want { // a part met once decides to one sample
			t.Errorf("%g of %d fail, %g to %g, want %g", x.Probability, n, x.Low, x.High, want)
		}
		if len(x.Sensitivity) != 1 || !(x.Sensitivity[0].Correlation > 0.99) {
			t.Errorf("sensitivity %+v", x.Sensitivity)
		}
		return
	}
	t.Error("no answer for " + id)
}

// TestScatterOfMany does the same for 20,000 samples, of which surfaces decide most:
// the parts that are met decide to one sample.
func TestScatterOfMany(t *testing.T) {
	const id, n, mean, spread = "cylinder/hoop@meop", 20000, 1.2, 0.02
	want := distuv.UnitNormal.CDF((justHolds(t, "drain.toml", id, 1, 2) - mean) / spread)
	in := read(t, "drain.toml", "[proof]", "[scatter]\n\"cylinder.thickness\" = \"normal 0.02 mm\"\n\n[proof]")
	got, err := study.Scatters(context.Background(), in, n, study.ScatterOptions{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range got.Checks {
		if x.ID == id {
			if x.Way != study.ViaSurface || x.Samples != n || math.Abs(x.Probability-want) > 2.0/n || x.Low > want || x.High < want || !(want > 1e-3) || got.Assessed > n/10 {
				t.Errorf("%+v, want %g; %d assessed", x, want, got.Assessed)
			}
			return
		}
	}
	t.Error("no answer for " + id)
}

// TestScatterOfCoupons draws the weld from the eight coupons of the example, 308.5 ± 7.67184
// MPa by hand. The hoop stress of this wall is met by the mean strength with a margin m, so that the
// check fails below mean/(1 + m): the share is the normal distribution's.
func TestScatterOfCoupons(t *testing.T) {
	const id, n, mean, deviation = "cylinder/hoop@meop", 200, 308.5, 7.67184
	thin := []string{`thickness = "5 mm"`, `thickness = "2.85 mm"`, "[proof]", "[scatter]\n\"joint.seam.coupons\" = \"coupons\"\n\n[proof]"}
	in := read(t, "coupons.toml", thin...)
	middle, err := in.WithNumbers(map[string]float64{"joint.seam.coupons": 0})
	if err != nil {
		t.Fatal(err)
	}
	checks, err := assess.ChecksWithoutShell(middle)
	if err != nil {
		t.Fatal(err)
	}
	want := math.NaN()
	for _, r := range checks {
		if report.FullID(r) == id {
			want = distuv.UnitNormal.CDF((mean/(1+r.Margin()) - mean) / deviation)
		}
	}
	got, err := study.Scatters(context.Background(), in, n, study.ScatterOptions{}, nil)
	if err != nil {
		t.Fatal(err)
	}
	for _, x := range got.Checks {
		if x.ID == id {
			if math.Abs(x.Probability-want) > 1.0/n || !(want > 0.01 && want < 0.99) || !(x.Sensitivity[0].Correlation > 0.99) {
				t.Errorf("%+v, want %g", x, want)
			}
			return
		}
	}
	t.Error("no answer for " + id)
}

// TestScatterRefusesCoupons that say nothing of how their weld scatters, with their place.
func TestScatterRefusesCoupons(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(tanks, "coupons.toml"))
	if err != nil {
		t.Fatal(err)
	}
	same := "coupon,ultimate [MPa]\na,300\nb,300\nc,300\n"
	in, err := tank.Read("coupons.toml", append(src, "\n[scatter]\n\"joint.seam.coupons\" = \"coupons\"\n"...), func(string) ([]byte, error) { return []byte(same), nil })
	if err != nil {
		t.Fatal(err)
	}
	if _, err := study.Scatters(context.Background(), in, 10, study.ScatterOptions{}, nil); err == nil || !strings.Contains(err.Error(), "joint.seam.coupons: ultimate: all coupons show the same strength") {
		t.Errorf("%v", err)
	}
}

// TestUnseen: 1 − 0.05^(1/n) by hand, 59 tanks leave a twentieth.
func TestUnseen(t *testing.T) {
	if got := study.Unseen(59); math.Abs(got-0.0495) > 5e-5 || study.Unseen(0) != 1 {
		t.Errorf("%g", got)
	}
}

// TestWilson: 0 of 10 gives 0 to 0.2775, 1 of 10 0.0179 to 0.4042 (Wilson score
// intervals as tables print them, recalled).
func TestWilson(t *testing.T) {
	for _, row := range []struct {
		k, n      int
		low, high float64
	}{{0, 10, 0, 0.2775}, {1, 10, 0.0179, 0.4042}} {
		p, low, high := study.Wilson(row.k, row.n)
		if p != float64(row.k)/float64(row.n) || math.Abs(low-row.low) > 5e-5 || math.Abs(high-row.high) > 5e-5 {
			t.Errorf("%d of %d: %g, %g to %g", row.k, row.n, p, low, high)
		}
	}
	if p, low, high := study.Wilson(0, 0); !math.IsNaN(p) || low != 0 || high != 1 {
		t.Error("nothing drawn tells something")
	}
}

// TestScatterNeedsInputs refuses a file without [scatter].
func TestScatterNeedsInputs(t *testing.T) {
	if _, err := study.Scatters(context.Background(), read(t, "demo.toml"), 10, study.ScatterOptions{}, nil); err == nil || !strings.Contains(err.Error(), "[scatter]") {
		t.Errorf("%v", err)
	}
}

// scattered is the demonstration tank with its pressures a bar below what it is built for, and
// three inputs that scatter.
func scattered(t testing.TB) *tank.Tank {
	return read(t, "demo.toml", `relief = "22.5 bar"`, `relief = "21 bar"`, `ullage_pressure = "25 bar"`, `ullage_pressure = "24 bar"`,
		"[proof]", "[scatter]\n\"cylinder.thickness\" = \"normal 0.05 mm\"\n\"case.burnout.axial_load_factor\" = \"uniform 0.5\"\n\"pressure.meop\" = \"normal 0.2 bar\"\n\n[proof]")
}

// BenchmarkScatter draws 100,000 samples without the numerical shell.
func BenchmarkScatter(b *testing.B) {
	in := scattered(b)
	for b.Loop() {
		got, err := study.Scatters(context.Background(), in, 100000, study.ScatterOptions{}, nil)
		if err != nil || got.Done != 100000 {
			b.Fatal(err)
		}
		b.ReportMetric(float64(got.Assessed+got.Design), "tanks")
	}
}

// BenchmarkScatterExact assesses every one of 500.
func BenchmarkScatterExact(b *testing.B) {
	in := scattered(b)
	for b.Loop() {
		if _, err := study.Scatters(context.Background(), in, 500, study.ScatterOptions{Exact: true}, nil); err != nil {
			b.Fatal(err)
		}
	}
}
