package check_test

import (
	"errors"
	"math"
	"testing"

	"proofsheet/report/check"
)

func made(demand, capacity, factor float64) check.Result {
	return check.Result{
		Demand: check.Pa("σ", "stress", demand), Capacity: check.Pa("S", "allowable", capacity), Factor: factor,
	}
}

func TestStatus(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	withErr := made(1, 2, 1)
	withErr.Err = errors.New("no")
	withNaN := made(1, 2, 1)
	withNaN.Inputs = []check.Quantity{check.M("t", "wall", nan)}
	for name, row := range map[string]struct {
		r    check.Result
		want check.Status
	}{
		"zero value":        {check.Result{}, check.NotAssessed},
		"covered":           {made(1, 2, 1.5), check.Satisfied},
		"exactly":           {made(1, 1.5, 1.5), check.Satisfied},
		"short":             {made(1, 1.4, 1.5), check.NotSatisfied},
		"no demand":         {made(0, 1, 1), check.Satisfied},
		"factor under one":  {made(1, 2, 0.9), check.NotAssessed},
		"NaN demand":        {made(nan, 2, 1), check.NotAssessed},
		"NaN capacity":      {made(1, nan, 1), check.NotAssessed},
		"infinite capacity": {made(1, inf, 1), check.NotAssessed},
		"infinite demand":   {made(inf, 1, 1), check.NotAssessed},
		"negative demand":   {made(-1, 1, 1), check.NotAssessed},
		"no capacity":       {made(1, 0, 1), check.NotAssessed},
		"error":             {withErr, check.NotAssessed},
		"NaN input":         {withNaN, check.NotAssessed},
		"does not arise":    {check.NotApplicableTo("a/b", "A", "no such weld"), check.NotApplicable},
		"no reason given":   {check.NotApplicableTo("a/b", "A", ""), check.NotAssessed},
		"not made":          {check.NotMade("a/b", "A", errors.New("why")), check.NotAssessed},
	} {
		if got := row.r.Status(); got != row.want {
			t.Errorf("%s: %v, want %v", name, got, row.want)
		}
		if got := row.r.Status(); got == check.NotAssessed && row.r.Reason() == "" {
			t.Errorf("%s: not assessed without a reason", name)
		}
	}
}

func TestVerdictAndGoverning(t *testing.T) {
	good, tight, bad := made(1, 3, 1), made(1, 1.1, 1), made(2, 1, 1)
	absent := check.NotApplicableTo("x/y", "X", "none")
	for name, row := range map[string]struct {
		rs        []check.Result
		want      check.Status
		governing int
	}{
		"nothing":             {nil, check.NotAssessed, -1},
		"only not applicable": {[]check.Result{absent}, check.NotAssessed, -1},
		"all good":            {[]check.Result{good, absent, tight}, check.Satisfied, 2},
		"one unmade":          {[]check.Result{good, {}}, check.NotAssessed, 0},
		"one bad":             {[]check.Result{{}, good, bad}, check.NotSatisfied, 2},
	} {
		if got := check.Verdict(row.rs); got != row.want {
			t.Errorf("%s: verdict %v, want %v", name, got, row.want)
		}
		if got := check.Governing(row.rs); got != row.governing {
			t.Errorf("%s: governing %d, want %d", name, got, row.governing)
		}
	}
}

func FuzzStatus(f *testing.F) {
	f.Add(1.0, 2.0, 1.5)
	f.Fuzz(func(t *testing.T, demand, capacity, factor float64) {
		r := made(demand, capacity, factor)
		if r.Status() == check.Satisfied && !(r.Margin() >= 0) {
			t.Errorf("satisfied with margin %g: %g, %g, %g", r.Margin(), demand, capacity, factor)
		}
	})
}

func TestWithin(t *testing.T) {
	for _, got := range []float64{math.Nextafter(1, 0), math.Nextafter(2, 3), math.NaN()} {
		var out *check.RangeError
		if err := check.Within("f", "x", got, 1, 2, "test"); !errors.As(err, &out) {
			t.Errorf("%g: %v, want a RangeError", got, err)
		}
	}
	for _, got := range []float64{1, 2} {
		if err := check.Within("f", "x", got, 1, 2, "test"); err != nil {
			t.Errorf("%g: %v", got, err)
		}
	}
}
