package port_test

// Rings on cones and domes: computed in the flat and in space. PO-32: UG-42(a)(1)
// sharing worked in two engineering forum threads (read).

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func TestRings(t *testing.T) {
	for _, row := range []struct {
		n     int
		e, α  float64
		along string
	}{{6, 60, 45, "61.406"}, {8, 80, 60, "61.628"}} {
		a, b := tube(12, 1, row.e), tube(12, 1, row.e)
		b.Clock = 2 * math.Pi / float64(row.n)
		d, wa, wb := port.CentreDistance(cone(row.α, 3), a, b)
		checktest.Printed(t, "ring on a cone", d/mm, row.along)
		checktest.Close(t, "both ends alike", wa, wb, 1e-12)
	}
	a, b := tube(12, 1, 60), tube(12, 1, 60)
	b.Clock = math.Pi / 3
	d, _, _ := port.CentreDistance(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}, a, b)
	checktest.Printed(t, "ring on a dome", d/mm, "60.000")
	b.Clock += 2 * math.Pi
	again, _, _ := port.CentreDistance(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}, a, b)
	checktest.Close(t, "a whole turn", again, d, 1e-9)
	b.Clock, b.Radius = 0, 100*mm
	d, wa, wb := port.CentreDistance(cone(30, 3), a, b)
	checktest.Close(t, "one generator", d, 80*mm, 1e-12)
	if wa != 0 || math.Abs(wb-math.Pi) > 1e-12 {
		t.Errorf("one generator: %g, %g, want 0 and π", wa, wb)
	}
}

func TestShareLimit(t *testing.T) {
	checktest.Printed(t, "PO-32, NPS 4 beside NPS 6", port.ShareLimit(100, 150, 4, 6, 220), "82")
	checktest.Close(t, "equal bores stop half way", port.ShareLimit(3.94, 3.94, 3.94, 3.94, 6.5), 3.25, 1e-12)
	if got := port.ShareLimit(3, 3, 1, 1, 7); got != 3 {
		t.Errorf("apart: %g, want the whole limit", got)
	}
	if !math.IsNaN(port.ShareLimit(3, 3, 1, 1, math.NaN())) {
		t.Error("NaN distance must not give a limit")
	}
}

func members(t float64, clocks ...float64) (port.Wall, []port.Member) {
	var all []port.Member
	var w port.Wall
	for _, c := range clocks {
		p, wall, load, s := areaCase(45, 60, t, 3, 1, 4, 6)
		p.Clock, w = c*deg, wall
		all = append(all, port.Member{Port: p, Load: load, Strengths: s})
	}
	return w, all
}

func TestCheckSpacing(t *testing.T) {
	for _, row := range []struct {
		name   string
		clocks []float64
		want   check.Status
	}{
		{"alone", []float64{0}, check.NotApplicable},
		{"opposite", []float64{0, 180}, check.Satisfied},
		{"touching", []float64{0, 24}, check.NotSatisfied},
		{"same place", []float64{0, 0}, check.NotAssessed},
		{"three, one touching", []float64{0, 180, 24}, check.NotSatisfied},
	} {
		w, all := members(4, row.clocks...)
		got := port.CheckSpacing(w, all, 0)
		if got.Status() != row.want {
			t.Errorf("%s: %v (%s %s), want %v", row.name, got.Status(), got.Note, got.Reason(), row.want)
		}
	}
	w, all := members(4, 0, 90)
	all[1].Port.Radius = math.NaN()
	if got := port.CheckSpacing(w, all, 0).Status(); got != check.NotAssessed {
		t.Errorf("a neighbour nowhere: %v", got)
	}
}

// Where limits overlap the metal between is shared: on one generator the
// comparison gets worse as a neighbour comes nearer.
func TestSharedMetal(t *testing.T) {
	margin := func(outward float64) float64 {
		w, all := members(3, 0, 0)
		for i := range all {
			all[i].Port.TubeWall, all[i].Port.Inside, all[i].Port.InsideLeg, all[i].Port.Fit = 2*mm, 0, 0, port.Flush
		}
		all[1].Port.Radius += outward * mm
		return port.CheckSpacing(w, all, 0).Margin()
	}
	if near, mid, far := margin(33), margin(38), margin(80); !(near < mid && mid < far) {
		t.Errorf("margins %g, %g, %g must grow with distance", near, mid, far)
	}
}

// Two ports on one generator that stand apart for area replacement but not for the
// pressure-area method: the walls that the method counts, 2 lso and the holes,
// overlap, and the metal between is shared. Equal ports stop half way.
func TestSharedPressureArea(t *testing.T) {
	shared := func(outward float64) []check.Quantity {
		w, all := members(6, 0, 0)
		all[1].Port.Radius += outward * mm
		got := port.CheckSpacing(w, all, 0)
		var out []check.Quantity
		for _, q := range got.Inputs {
			if q.Symbol == "p_max" {
				out = append(out, q)
			}
		}
		return out
	}
	// lso = √[(2·84.853 + 6)·6] = 32.469 mm; isolated from 2 (17.961 + 32.469) = 100.86 mm
	// along the generator, 71.32 mm in radius. The neighbour's own lso is longer.
	if got := shared(90); len(got) != 0 {
		t.Errorf("90 mm apart in radius: %v", got)
	}
	near, mid := shared(45), shared(60)
	if len(near) != 1 || len(mid) != 1 || !(near[0].Value < mid[0].Value) {
		t.Errorf("the nearer the less is carried: %v, %v", near, mid)
	}
}
