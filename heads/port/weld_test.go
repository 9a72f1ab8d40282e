package port_test

// PO-16, PO-17: questions of an API 510 course (read) on UW-16(i) and (j), answers computed.
// PO-25 weld paths and the oblique fillet factors: computed.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func TestTwoFillets(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 0.875 * inch, Radius: 30 * inch, Length: 200 * inch}
	p := port.Port{Name: "n", OutsideDiameter: 6 * inch, TubeWall: 0.5 * inch, InsideWall: 0.5 * inch, Station: 100 * inch, Outside: 6 * inch, Inside: inch,
		OutsideLeg: 0.375 * inch, InsideLeg: 0.375 * inch}
	r, err := p.Area(w, port.Load{Pressure: 100 * psi}, strengths(20000, 20000))
	if err != nil {
		t.Fatal(err)
	}
	got := r.CheckWeld("n")
	checktest.Printed(t, "sum required", got.Demand.Value/inch, "0.625")
	// The source takes the throat as 0.7 leg, 0.525; exact is 0.530.
	checktest.Close(t, "sum given", got.Capacity.Value/inch, 0.525, 0.0102)
	if got.Status() != check.NotSatisfied {
		t.Errorf("two 3/8 fillets: %v", got.Status())
	}
	p.OutsideLeg, p.InsideLeg = 0.5*inch, 0.5*inch
	if r, err = p.Area(w, port.Load{Pressure: 100 * psi}, strengths(20000, 20000)); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckWeld("n"); got.Status() != check.Satisfied {
		t.Errorf("two 1/2 fillets: %v, %s", got.Status(), got.Note)
	}
	p.OutsideLeg, p.InsideLeg = 0, 0
	if r, err = p.Area(w, port.Load{Pressure: 100 * psi}, strengths(20000, 20000)); err != nil {
		t.Fatal(err)
	}
	if got := r.CheckWeld("n"); got.Status() == check.Satisfied || got.Reason() == "" {
		t.Errorf("no weld at all: %v, %q", got.Status(), got.Reason())
	}
}

// PO-17: question of an API 510 course on UW-16(j) (read), answer computed: shell 28,
// nozzle 16 mm, inner weld 12 mm of throat: together 1.25 · 16 = 20, so 8 mm outside.
func TestTwoPartialWelds(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 28 * mm, Radius: 1, Length: 5}
	for throat, want := range map[float64]check.Status{8.01: check.Satisfied, 7.99: check.NotSatisfied} {
		p := port.Port{Name: "n", OutsideDiameter: 200 * mm, TubeWall: 16 * mm, Station: 2.5, Outside: 0.1, Fit: port.Flush, OutsideLeg: throat * math.Sqrt2 * mm, Groove: 12 * mm}
		r, err := p.Area(w, port.Load{Pressure: 0.5 * mpa}, strengths(20000, 20000))
		if err != nil {
			t.Fatal(err)
		}
		if got := r.CheckWeld("n"); got.Status() != want {
			t.Errorf("throat %g mm: %v, %s", throat, got.Status(), got.Note)
		}
	}
}

func TestWeldPaths(t *testing.T) {
	const lbf = 4.4482216152605
	p, w, load, s := megyesy()
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	paths, err := r.WeldPaths(r.Meridional)
	if err != nil {
		t.Fatal(err)
	}
	// The source prints five digits of sums of areas kept in full.
	checktest.Close(t, "W1-1", paths[0].Needed/lbf, 16175, 5e-4)
	checktest.Close(t, "W", paths[1].Needed/lbf, 22400, 5e-4)
	checktest.Printed(t, "path 1", paths[0].Strength/lbf, "82370")
	checktest.Printed(t, "outer fillet", paths[1].Strength/lbf, "38244")
}

func TestFilletFactor(t *testing.T) {
	for _, row := range []struct {
		where    string
		α, od, e float64
		want     string
	}{
		{"TC-A", 45, 25.4, 60, "0.815"}, {"TC-D", 30, 25.4, 75, "0.926"}, {"PC-04", 60, 38.1, 80, "0.967"},
		{"normal to the wall in the limit", 90 - 1e-6, 25.4, 60, "1.000"},
	} {
		got, err := tube(row.od, 2, row.e).FilletFactor(cone(row.α, 3), true)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.where, got, row.want)
	}
	// Far from the axis the cone is a plane, and the inside fillet the outside one's mirror.
	far := cone(45, 3)
	far.Radius = 1e6
	out, err := tube(25.4, 2, 1e6).FilletFactor(far, true)
	if err != nil {
		t.Fatal(err)
	}
	in, err := tube(25.4, 2, 1e6).FilletFactor(far, false)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "mirror", in, out, 1e-4)
	if got, err := tube(25.4, 2, math.NaN()).FilletFactor(cone(45, 3), true); err == nil || !math.IsNaN(got) {
		t.Errorf("NaN radius: %g, %v", got, err)
	}
}
