package pdf

import (
	"math"
	"testing"

	"proofsheet/report"
)

// TestAlong walks a broken line whose lengths are plain: 3-4-5.
func TestAlong(t *testing.T) {
	face := []report.Point{{Z: 0, R: 0}, {Z: 3, R: 4}, {Z: 3, R: 4}, {Z: 13, R: 4}}
	for s, want := range map[float64]report.Point{0: {}, 2.5: {Z: 1.5, R: 2}, 5: {Z: 3, R: 4}, 9: {Z: 7, R: 4}, 15: {Z: 13, R: 4}} {
		got, ok := along(face, s)
		if !ok || math.Hypot(got.Z-want.Z, got.R-want.R) > 1e-12 {
			t.Errorf("at %g: %v, %v, want %v", s, got, ok, want)
		}
	}
	for _, s := range []float64{-0.1, 15.1} {
		if _, ok := along(face, s); ok {
			t.Errorf("a place at %g, beyond the ends", s)
		}
	}
}

func TestClosest(t *testing.T) {
	c := &report.Section{Outlines: []report.Outline{
		{Part: "a", Outside: []report.Point{{Z: 0, R: 0}, {Z: 0, R: 5}}},
		{Part: "b", Outside: []report.Point{{Z: 0, R: 5}, {Z: 10, R: 5}}}}}
	face, at := closest(c, report.Point{Z: 4, R: 4.9})
	if len(face) == 0 || face[1].Z != 10 || math.Abs(at-4) > 1e-12 {
		t.Errorf("%v at %g", face, at)
	}
}

// TestAftOf cuts a square of liquid level and tilted: the areas are those of
// the trapezium that is left.
func TestAftOf(t *testing.T) {
	square := []report.Point{{Z: 0, R: -1}, {Z: 4, R: -1}, {Z: 4, R: 1}, {Z: 0, R: 1}}
	for _, row := range []struct {
		a, b report.Point
		want float64
	}{
		{report.Point{Z: 1, R: -1}, report.Point{Z: 1, R: 1}, 2},
		{report.Point{Z: 1, R: 1}, report.Point{Z: 1, R: -1}, 2},
		{report.Point{Z: 1, R: -1}, report.Point{Z: 3, R: 1}, 4},
		{report.Point{Z: 9, R: -1}, report.Point{Z: 9, R: 1}, 8},
		{report.Point{Z: -1, R: -1}, report.Point{Z: -1, R: 1}, 0},
	} {
		area := 0.0
		ring := aftOf(square, row.a, row.b)
		for i, q := range ring {
			next := ring[(i+1)%len(ring)]
			area += (q.Z*next.R - next.Z*q.R) / 2
		}
		if math.Abs(math.Abs(area)-row.want) > 1e-12 {
			t.Errorf("%v to %v leaves %g, want %g", row.a, row.b, math.Abs(area), row.want)
		}
	}
}
