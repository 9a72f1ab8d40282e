package port_test

// What a message tells to write is written, and the check holds; 0.2 mm or 0.2 degrees
// short of it, it does not.

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
)

// told returns the number that the text gives after a word.
func told(t *testing.T, text, pattern string) float64 {
	t.Helper()
	m := regexp.MustCompile(pattern).FindStringSubmatch(text)
	if m == nil {
		t.Fatalf("no %q in %q", pattern, text)
	}
	v, err := strconv.ParseFloat(m[1], 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestRoomAdvice(t *testing.T) {
	p, w, _, _ := areaCase(45, 60, 4, 3, 1, 4, 6)
	w.Radius, w.Tip = 150*mm, 30*mm
	for _, row := range []struct {
		e, back float64 // back: where it is short again
		status  check.Status
	}{{35, -0.2, check.NotAssessed}, {50, -0.2, check.NotSatisfied}, {132, 0.2, check.NotSatisfied}, {149, 0.2, check.NotAssessed}} {
		p.Radius = row.e * mm
		got := p.CheckPlacement(w)
		if got.Status() != row.status {
			t.Fatalf("e %g: %v, %s", row.e, got.Status(), got.Reason())
		}
		r := told(t, got.Note+got.Reason(), `there is room at radius = "([0-9.]+) mm"`)
		p.Radius = r * mm
		if got := p.CheckPlacement(w); got.Status() != check.Satisfied {
			t.Errorf("e %g: told %g, %v", row.e, r, got.Status())
		}
		p.Radius = (r + row.back) * mm
		if got := p.CheckPlacement(w); got.Status() == check.Satisfied {
			t.Errorf("e %g: told %g, %g holds too", row.e, r, r+row.back)
		}
	}
	w.Radius = 60 * mm
	p.Radius = 45 * mm
	if got := p.CheckPlacement(w); !strings.Contains(got.Note+got.Reason(), "no radius of this part has the room") {
		t.Errorf("a narrow cone: %s", got.Note+got.Reason())
	}
	barrel := port.Wall{Surface: port.Cylinder, Thickness: 4 * mm, Radius: 0.2, Length: 1}
	p.Parallel, p.Station = false, 20*mm
	z := told(t, p.CheckPlacement(barrel).Note, `there is room at station = "([0-9.]+) mm"`)
	if p.Station = z * mm; p.CheckPlacement(barrel).Status() != check.Satisfied {
		t.Errorf("told %g", z)
	}
	steep := cone(25, 4) // too oblique everywhere: no place is told
	p = tube(25.4, 3, 60)
	if got := p.CheckPlacement(steep); strings.Contains(got.Reason(), "room") {
		t.Errorf("too oblique: %s", got.Reason())
	}
}

// advised is the spacing of the first of two ports with what to write.
func advised(w port.Wall, pair []port.Member) check.Result {
	return port.Advise(port.CheckSpacing(w, pair, 0), w, pair, 0)
}

func TestNearAdvice(t *testing.T) {
	p, w, load, s := areaCase(45, 60, 4, 3, 1, 4, 6)
	ring := func(e, turned float64) check.Result {
		a, b := p, p
		a.Radius, b.Radius, b.Name, b.Clock = e*mm, e*mm, "q", turned*deg
		return advised(w, []port.Member{{Port: a, Load: load, Strengths: s}, {Port: b, Load: load, Strengths: s}})
	}
	tight := ring(60, 28)
	if tight.Status() != check.NotSatisfied || !strings.Contains(tight.Note, "too near to port q") {
		t.Fatalf("%v: %s", tight.Status(), tight.Note)
	}
	apart := told(t, tight.Note, `clocks ([0-9.]+) deg or more apart`)
	wide := told(t, tight.Note, `radius = "([0-9.]+) mm" or more for both`)
	if n := told(t, tight.Note, `even ring of ([0-9]+)`); n != math.Floor(360/apart) {
		t.Errorf("%g deg, ring of %g", apart, n)
	}
	for _, row := range []struct {
		e, turned float64
		holds     bool
	}{{60, apart, true}, {60, apart - 0.2, false}, {wide, 28, true}, {wide - 0.2, 28, false}} {
		if got := ring(row.e, row.turned); (got.Status() == check.Satisfied) != row.holds {
			t.Errorf("e %g, %g deg: %v, %s", row.e, row.turned, got.Status(), got.Note)
		}
	}
	if apart := ring(60, 120); strings.Contains(apart.Note, "too near") {
		t.Errorf("far apart: %s", apart.Note)
	}
	// On the cylinder by stations.
	a, b := p, p
	barrel := port.Wall{Surface: port.Cylinder, Thickness: 4 * mm, Radius: 0.2, Length: 1}
	a.Parallel, b.Parallel, a.Station, b.Station, b.Name = false, false, 400*mm, 430*mm, "q"
	got := advised(barrel, []port.Member{{Port: a, Load: load, Strengths: s}, {Port: b, Load: load, Strengths: s}})
	z := told(t, got.Note, `stations ([0-9.]+) mm or more apart`)
	b.Station = a.Station + z*mm
	if got := advised(barrel, []port.Member{{Port: a, Load: load, Strengths: s}, {Port: b, Load: load, Strengths: s}}); got.Status() != check.Satisfied {
		t.Errorf("told %g: %v, %s", z, got.Status(), got.Note)
	}
}
