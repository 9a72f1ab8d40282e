package study

import (
	"context"
	"fmt"
	"math"
	"runtime"
	"strings"
	"sync"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// An Axis is one input of a sweep with the values that it takes.
type Axis struct {
	Key    string
	Unit   string    // SI unit of Values
	Values []float64 // [see Unit]
}

// mostValues bounds an axis: what nobody waits for is a slip of the pen.
const mostValues = 10000

// ParseAxis reads KEY=A..B/STEP, or KEY=A,B,C, each value with its unit.
func ParseAxis(t *tank.Tank, text string) (Axis, error) {
	const form = "write it as cylinder.thickness=2mm..5mm/0.5mm or cylinder.thickness=2mm,3mm"
	key, values, ok := strings.Cut(text, "=")
	if !ok {
		return Axis{}, fmt.Errorf("%q has no =; %s", text, form)
	}
	a := Axis{Key: strings.TrimSpace(key)}
	if _, err := t.Number(a.Key); err != nil {
		return a, err
	}
	a.Unit, _ = t.KeyUnit(a.Key)
	if !strings.Contains(values, "..") {
		for _, v := range strings.Split(values, ",") {
			x, err := t.ParseNumber(a.Key, strings.TrimSpace(v))
			if err != nil {
				return a, err
			}
			a.Values = append(a.Values, x)
		}
		return a, nil
	}
	from, rest, _ := strings.Cut(values, "..")
	to, step, ok := strings.Cut(rest, "/")
	if !ok {
		return a, fmt.Errorf("%q has no step; %s", text, form)
	}
	var x [3]float64
	for i, v := range []string{from, to, step} {
		var err error
		if x[i], err = t.ParseNumber(a.Key, strings.TrimSpace(v)); err != nil {
			return a, err
		}
	}
	n := math.Floor((x[1]-x[0])/x[2] + 1e-9)
	if !(x[2] > 0) || !(n >= 0) || n > mostValues {
		return a, fmt.Errorf("%q: from, to and step do not make a rising row of at most %d values; write the smaller one first, and a step above zero that is not too small", text, mostValues)
	}
	for i := range int(n) + 1 {
		a.Values = append(a.Values, x[0]+float64(i)*x[2])
	}
	return a, nil
}

// A Variant is one tank of a sweep.
type Variant struct {
	At      []float64 // value of each axis [see Axis.Unit]
	Done    bool      // it was reached before the study was broken off
	Fault   string    // why the tank cannot be read or assessed
	Mass    float64   // of the empty tank [kg]
	Status  check.Status
	Check   string  // id@case with the least margin
	Margin  float64 // of that check [-]
	Fails   int     // checks that are not satisfied
	NotMade int     // checks that are not assessed
}

// Vary assesses the tank at every combination of one or two axes, on all
// processors, in any order; what was done when the context ends is kept. The progress
// function is told how many are done, from one goroutine at a time.
func Vary(ctx context.Context, t *tank.Tank, axes []Axis, progress func(done, all int)) ([]Variant, error) {
	if len(axes) == 0 || len(axes) > 2 {
		return nil, fmt.Errorf("a sweep has one or two inputs, not %d", len(axes))
	}
	var out []Variant
	for _, x := range axes[0].Values {
		if len(axes) == 1 {
			out = append(out, Variant{At: []float64{x}})
			continue
		}
		for _, y := range axes[1].Values {
			out = append(out, Variant{At: []float64{x, y}})
		}
	}
	shareOut(ctx, len(out), progress, func(i int) {
		values := map[string]float64{}
		for k, a := range axes {
			values[a.Key] = out[i].At[k]
		}
		at := out[i].At
		out[i] = variant(t, values)
		out[i].At, out[i].Done = at, true
	})
	return out, nil
}

// shareOut does n jobs on all processors until the context ends.
func shareOut(ctx context.Context, n int, progress func(done, all int), job func(i int)) {
	var wait sync.WaitGroup
	var mu sync.Mutex
	next, done := 0, 0
	take := func() (int, bool) {
		mu.Lock()
		defer mu.Unlock()
		if next >= n || ctx.Err() != nil {
			return 0, false
		}
		next++
		return next - 1, true
	}
	for range max(1, min(runtime.GOMAXPROCS(0), n)) {
		wait.Go(func() {
			for i, ok := take(); ok; i, ok = take() {
				job(i)
				mu.Lock()
				done++
				if progress != nil {
					progress(done, n)
				}
				mu.Unlock()
			}
		})
	}
	wait.Wait()
}

// variant assesses one tank of a sweep.
func variant(t *tank.Tank, values map[string]float64) (v Variant) {
	v.Mass, v.Margin = math.NaN(), math.NaN()
	changed, err := t.WithNumbers(values)
	if err != nil {
		v.Fault = firstLine(err)
		return v
	}
	checks, err := assess.Checks(changed)
	if err != nil {
		v.Fault = firstLine(err)
		return v
	}
	if tr, err := assess.NewTrial(changed); err == nil {
		if m, err := tr.DryMass(); err == nil {
			v.Mass = m
		}
	}
	v.Status = check.Verdict(checks)
	for _, r := range checks {
		switch r.Status() {
		case check.NotSatisfied:
			v.Fails++
		case check.NotAssessed:
			v.NotMade++
		}
	}
	for _, r := range checks {
		if r.ID == "proof/reach" && r.Margin() >= 0 {
			continue // the test pressure is chosen to make it nothing
		}
		if m := r.Margin(); math.IsNaN(v.Margin) || m < v.Margin {
			v.Check, v.Margin = report.FullID(r), m
		}
	}
	return v
}

func firstLine(err error) string {
	line, _, _ := strings.Cut(err.Error(), "\n")
	return line
}
