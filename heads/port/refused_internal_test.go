package port

import (
	"math"
	"testing"

	"proofsheet/report/check"
)

// A comparison that is not a number governs whatever stands before or after it, one without a capacity next.
func TestGoverning(t *testing.T) {
	at := func(what string, demand, capacity float64) reading {
		return reading{what, check.Num("a", "", demand), check.Num("b", "", capacity)}
	}
	nan, none, most, less := at("nan", math.NaN(), 1), at("none", 1, 0), at("most", 3, 2), at("less", 1, 2)
	for _, row := range []struct {
		all  []reading
		want string
	}{
		{[]reading{less, most}, "most"}, {[]reading{most, less}, "most"}, {[]reading{most, none, less}, "none"},
		{[]reading{none, nan, most}, "nan"}, {[]reading{nan, none}, "nan"}, {[]reading{less, nan}, "nan"},
	} {
		if got := governing(row.all).what; got != row.want {
			t.Errorf("%v: %s governs", row.all, got)
		}
	}
}

// In a direction that is neither outboard nor inboard the transverse limit counts alone.
func TestToward(t *testing.T) {
	l := limits{outboard: 1, inboard: 2, transverse: 3}
	for _, row := range []struct{ w, want float64 }{{0, 1}, {math.Pi, 2}, {math.Pi / 2, 3}, {-math.Pi / 2, 3}, {1, 1}, {2, 2}} {
		if got := l.toward(row.w); got != row.want {
			t.Errorf("toward %g: %g, want %g", row.w, got, row.want)
		}
	}
}

// Where no area is positive the wall stands for them: nothing that is left could be printed as a capacity.
func TestCompareWithoutAreas(t *testing.T) {
	r := AreaReport{Wall: Wall{Thickness: 3e-3}}
	pl := Plane{Strip: 4e-3, Efficiency: 0.7}
	got := r.compare(pl, Areas{Required: 1e-5, A1: -1e-6}, "whole")
	if got.demand.Value != 4e-3 || math.Abs(got.capacity.Value-2.1e-3) > 1e-15 {
		t.Errorf("%+v", got)
	}
	got = r.compare(pl, Areas{Required: 1e-5, A1: -1e-6, A2: 2e-6}, "whole")
	if math.Abs(got.demand.Value-1.1e-5) > 1e-15 || got.capacity.Value != 2e-6 {
		t.Errorf("%+v", got)
	}
}

// A fillet of leg 4 whose limits are 1 off the wall and 2 along it counts as that rectangle, one within its limits as a triangle, and
// with 3 off the wall it loses the tip of leg 1.
func TestFilletWithin(t *testing.T) {
	for _, row := range []struct{ leg, high, wide, want float64 }{{4, 1, 2, 2}, {4, 4, 4, 8}, {4, 9, 9, 8}, {4, 3, 4, 7.5}, {4, 0, 4, 0}, {4, 4, math.NaN(), 0}} {
		if got := filletWithin(row.leg, row.high, row.wide); got != row.want {
			t.Errorf("leg %g within %g by %g: %g, want %g", row.leg, row.high, row.wide, got, row.want)
		}
	}
}
