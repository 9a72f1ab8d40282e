package study

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// madeUp draws two inputs, x normal and y uniform, and answers with checks of
// which the share that fails is known.
func madeUp(samples int, fault func(x []float64) bool) *sampler {
	return &sampler{inputs: []tank.Scatter{{Key: "x", Shape: "normal"}, {Key: "y", Shape: "uniform"}}, cube: hypercube(Seed, 2, samples),
		try: func(x []float64) tried {
			if fault(x) {
				return tried{done: true, scores: x, err: errors.New("no tank")}
			}
			made := func(id string, margin float64) answer {
				a := answer{id, check.Satisfied, margin}
				if margin < 0 {
					a.status = check.NotSatisfied
				}
				return a
			}
			kink, jump, zero := 0.1*x[0]+0.02, 0.3, 0.2
			if x[0] > -1 {
				kink = -0.05*x[0] + 0.07
			}
			if x[0] > 1 {
				jump = -0.01
			}
			if x[0] > 0 {
				zero = math.Inf(1)
			}
			part := made("part", 0.1*x[0]+0.05)
			if x[1] > 0.5 {
				part = answer{"part", check.NotAssessed, math.NaN()}
			}
			return tried{done: true, scores: x, answers: []answer{
				made("smooth", math.Exp(0.05*x[0]+0.02*x[1]+0.003*x[0]*x[0]*x[1]+0.08)-1),
				made("kink", kink), made("jump", jump), part, made("zero demand", zero), made("reach", 1e-17*x[0]), made("rounding", 1e-12*x[0]*x[0]),
				made("constant", 2000), {"never", check.NotAssessed, math.NaN()}, {"none", check.NotApplicable, math.NaN()},
			}}
		}}
}

func never([]float64) bool { return false }

// TestSurfacesAgainstAllSamples studies checks of known shape twice, with
// surfaces and with every sample assessed. A smooth one must not differ in a single
// sample, and a surface never decides where there is none.
func TestSurfacesAgainstAllSamples(t *testing.T) {
	const n = 100000
	got := madeUp(n, never).study(context.Background(), n, false, nil)
	all := madeUp(n, never).study(context.Background(), n, true, nil)
	if got.Done != n || all.Done != n || all.Assessed != n || got.Assessed > n/20 || got.Order != 3 || all.Order != 0 {
		t.Fatalf("%+v\n%+v", got, all)
	}
	want := map[string]Way{"smooth": ViaSurface, "part": ViaPart, "zero demand": ViaPart, "reach": ViaPart, "rounding": ViaPart,
		"constant": ViaStill, "never": ViaStill, "jump": ViaPart, "kink": ViaPart}
	exact := map[string]Scattered{}
	for _, x := range all.Checks {
		exact[x.ID] = x
	}
	for _, x := range got.Checks {
		e := exact[x.ID]
		if x.Way != want[x.ID] || e.Way != ViaTank {
			t.Errorf("%s is decided by %s, want %s", x.ID, x.Way, want[x.ID])
		}
		delete(want, x.ID)
		switch {
		case x.Way == ViaPart && (x.Samples > got.Counted || x.ID != "part" && x.Samples != got.Counted):
			t.Errorf("%s is counted over %d samples, want %d", x.ID, x.Samples, got.Counted)
		case x.Way == ViaPart && !(x.Low <= e.Probability && e.Probability <= x.High):
			t.Errorf("%s: %g to %g, all samples have %g", x.ID, x.Low, x.High, e.Probability)
		case x.Way != ViaPart && (x.Fails != e.Fails || x.Samples != e.Samples || x.NotMade != e.NotMade):
			t.Errorf("%s: %+v, all samples give %+v", x.ID, x, e)
		case x.ID == "smooth" && (math.Abs(x.Mean-e.Mean) > 1e-4 || math.Abs(x.Deviation-e.Deviation) > 1e-4 ||
			x.Sensitivity[0].Key != "x" || math.Abs(x.Sensitivity[0].Correlation-e.Sensitivity[0].Correlation) > 1e-4):
			t.Errorf("%+v, all samples give %+v", x, e)
		}
	}
	if len(want) > 0 {
		t.Errorf("no answer for %v", want)
	}
}

// TestFaultySamples: where some tanks are none no surface decides, and the share of
// those that are none is that of the samples drawn, not of the design.
func TestFaultySamples(t *testing.T) {
	const n = 50000
	got := madeUp(n, func(x []float64) bool { return x[0] > 1 }).study(context.Background(), n, false, nil)
	if got.Done != n || got.Assessed != got.Counted || got.Counted != trialSamples+n/budget || got.Order != 0 {
		t.Fatalf("%+v", got)
	}
	_, low, high := Wilson(got.Faulty, got.Assessed)
	if p := distuv.UnitNormal.CDF(-1); p < low || p > high || got.Fault != "no tank" {
		t.Errorf("%d of %d are faulty, want %g", got.Faulty, got.Assessed, p)
	}
	for _, x := range got.Checks {
		if x.Way != ViaPart {
			t.Errorf("%s is decided by %s", x.ID, x.Way)
		}
	}
	// Beyond the range of surfaces every sample is assessed: those are counted.
	got = madeUp(n, func(x []float64) bool { return x[0] > reach }).study(context.Background(), n, false, nil)
	if want := n * distuv.UnitNormal.CDF(-reach); got.Order != 3 || math.Abs(float64(got.Faulty)-want) > 1 {
		t.Errorf("order %d, %d faulty, want %.1f", got.Order, got.Faulty, want)
	}
}

// TestScatterOnAnyMachine: one processor and two give the same numbers.
func TestScatterOnAnyMachine(t *testing.T) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(0))
	const n = 20000
	var first string
	for processors := 1; processors <= 2; processors++ {
		runtime.GOMAXPROCS(processors)
		got := fmt.Sprintf("%+v", *madeUp(n, never).study(context.Background(), n, false, nil))
		if first == "" {
			first = got
		}
		if got != first {
			t.Errorf("%s\n%s", first, got)
		}
	}
}

// TestScatterMemory: what is alive in the middle of a study does not grow with its
// samples.
func TestScatterMemory(t *testing.T) {
	live := func(n int) (most uint64) {
		var m runtime.MemStats
		last := 0
		madeUp(n, never).study(context.Background(), n, false, func(done, all int) {
			if all == n && done-last > n/8 {
				last = done
				runtime.GC()
				runtime.ReadMemStats(&m)
				most = max(most, m.HeapInuse)
			}
		})
		return most
	}
	if few, many := live(10000), live(300000); few == 0 || many > few+2<<20 {
		t.Errorf("%d bytes alive with 300,000 samples, %d with 10,000", many, few)
	}
}

// TestScatterBrokenOff keeps what was assessed.
func TestScatterBrokenOff(t *testing.T) {
	const n = 20000
	for _, after := range []int{100, 1200, 5000} {
		ctx, stop := context.WithCancel(context.Background())
		got := madeUp(n, never).study(ctx, n, false, func(done, all int) {
			if done >= after && (all == n) == (after == 5000) {
				stop()
			}
		})
		stop()
		if got.Done == 0 || got.Done >= n || len(got.Checks) == 0 {
			t.Errorf("broken off after %d: %d done, %d checks", after, got.Done, len(got.Checks))
		}
	}
}

// TestHypercube meets each part once, in an order that is no order.
func TestHypercube(t *testing.T) {
	for _, n := range []int{2, 3, 7, 64, 1000, 4097} {
		c := hypercube(Seed, 3, n)
		for k := range 3 {
			met := make([]bool, n)
			for i := range n {
				u := c.at(k, i)
				part := int(u * float64(n))
				if !(u > 0 && u < 1) || met[part] {
					t.Fatalf("%d samples, input %d: %g is met twice", n, k, u)
				}
				met[part] = true
			}
		}
	}
	const n = 10000
	c := hypercube(Seed, 4, n)
	at := func(k, i int) float64 {
		if k < 0 {
			return (float64(i) + 0.5) / n
		}
		return c.at(k, i)
	}
	for a := -1; a < 4; a++ {
		for b := a + 1; b < 4; b++ {
			sum, next := 0.0, 0.0
			for i := range n {
				sum += 12 * (at(a, i) - 0.5) * (at(b, i) - 0.5) / n
				next += 12 * (at(b, i) - 0.5) * (at(b, (i+1)%n) - 0.5) / n
			}
			if math.Abs(sum) > 4/math.Sqrt(n) || math.Abs(next) > 4/math.Sqrt(n) {
				t.Errorf("inputs %d and %d go together by %g, one sample with the next by %g", a, b, sum, next)
			}
		}
	}
	// The first of many samples are drawn like all: the share below a tenth.
	c, below := hypercube(Seed, 1, 100000), 0
	for i := range 3000 {
		if c.at(0, i) < 0.1 {
			below++
		}
	}
	if _, low, high := Wilson(below, 3000); low > 0.1 || high < 0.1 {
		t.Errorf("%d of the first 3000 lie below a tenth", below)
	}
}

// TestBasis counts terms and fits what they hold exactly.
func TestBasis(t *testing.T) {
	for _, row := range []struct{ inputs, order, size int }{{1, 3, 4}, {3, 2, 10}, {3, 3, 20}, {5, 3, 56}, {10, 2, 66}} { // (k+order)!/(k! order!)
		if b := newBasis(row.inputs, row.order); b.size() != row.size || termsOf(row.inputs, row.order) != row.size {
			t.Errorf("%+v: %d terms", row, b.size())
		}
	}
	b := newBasis(2, 3)
	f := func(x []float64) float64 { return 1 - 2*x[0] + 3*x[0]*x[1] - x[1]*x[1]*x[1] + 0.5*x[0]*x[0]*x[1] }
	c := hypercube(7, 2, 60)
	var points [][]float64
	values := [][]float64{nil}
	for i := range 60 {
		x := []float64{2*c.at(0, i) - 1, 2*c.at(1, i) - 1}
		points, values[0] = append(points, x), append(values[0], f(x))
	}
	got, err := b.fitted(points, values)
	if err != nil {
		t.Fatal(err)
	}
	terms := make([]float64, b.size())
	for _, x := range [][]float64{{0, 0}, {1, -1}, {0.3, 0.9}} {
		if b.terms(x, terms); math.Abs(value(got[0], terms)-f(x)) > 1e-12 {
			t.Errorf("%g at %v, want %g", value(got[0], terms), x, f(x))
		}
	}
	if _, err := b.fitted(points[:5], [][]float64{values[0][:5]}); err == nil {
		t.Error("five points determine ten terms")
	}
}

// TestSurfacesAgainstTanks asks surfaces of three tanks for samples that they
// may decide, and assesses these: no check of any may differ.
func TestSurfacesAgainstTanks(t *testing.T) {
	for _, row := range []struct {
		file    string
		samples int // the first 1000 of them tried the surfaces
		inputs  string
	}{
		{"drain.toml", 1800, "\"cylinder.thickness\" = \"normal 0.05 mm\"\n\"cylinder.length\" = \"normal 5 mm\"\n\"cylinder.inside_diameter\" = \"uniform 2 mm\"\n"},
		{"life.toml", 1800, "\"cylinder.thickness\" = \"normal 0.5 mm\"\n\"cylinder.inside_diameter\" = \"normal 2 mm\"\n"},
		{"kerosene.toml", 1400, "\"cylinder.thickness\" = \"normal 0.5 mm\"\n\"head.aft.thickness\" = \"normal 0.1 mm\"\n"},
	} {
		name := "../../../../testdata/tanks/" + row.file
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		in, err := tank.Read(name, append(src, "\n[scatter]\n"+row.inputs...), os.ReadFile)
		if err != nil {
			t.Fatal(err)
		}
		s, err := newSampler(in, row.samples, false)
		if err != nil {
			t.Fatal(err)
		}
		p := &plan{sampler: s, samples: row.samples, subset: row.samples}
		p.make(context.Background(), func(int, int) {})
		agree(t, row.file, p)
	}
}

// agree holds the surfaces of a plan against its samples.
func agree(t *testing.T, file string, p *plan) {
	e, asked, fails := p.evaluator(), 0, 0
	for i := len(p.known); i < p.samples; i++ {
		scores := make([]float64, len(p.widths))
		if p.sampler.scores(i, scores); !e.decides(scores) {
			continue
		}
		want := map[string]answer{}
		for j, f := range p.surfaces {
			want[f.id] = decided(e.values[j])
		}
		for _, a := range p.stills {
			want[a.id] = a
		}
		asked++
		d := p.sampler.try(scores)
		for _, a := range d.answers {
			w, ok := want[a.id]
			if ok && (w.status != a.status || math.Abs(math.Log1p(w.margin)-math.Log1p(a.margin)) > 0.5) {
				t.Errorf("%s: %s is %s %g, decided as %s %g at %v", file, a.id, a.status, a.margin, w.status, w.margin, scores)
			}
			if ok && a.status == check.NotSatisfied {
				fails++
			}
		}
		if d.err != nil {
			t.Errorf("%s: %v", file, d.err)
		}
	}
	t.Logf("%s: %d samples, %d surfaces, %d constants, %d not satisfied", file, asked, len(p.surfaces), len(p.stills), fails)
	if asked < (p.samples-trialSamples)*9/10 || len(p.surfaces) < 10 {
		t.Errorf("%s: %d samples, %d surfaces", file, asked, len(p.surfaces))
	}
}
