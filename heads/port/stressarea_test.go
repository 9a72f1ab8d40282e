package port_test

// PO-28: ASME PTB-3 example E4.5.1, recalled. The other two openings, PO-25 and PO-01
// of published_test.go, by the same method: computed apart from the package.

import (
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

func TestStressMethod(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 1.6875 * inch, Radius: (75.125 + 1.6875/2) * inch, Length: 500 * inch}
	p := port.Port{Name: "n", OutsideDiameter: 2 * 12.75 * inch, TubeWall: 4.625 * inch, Station: 250 * inch, Outside: 20 * inch, OutsideLeg: 0.375 * inch, Fit: port.Flush, FullGroove: true}
	r, err := p.Area(w, port.Load{Pressure: 356 * psi}, strengths(22400, 22400))
	if err != nil {
		t.Fatal(err)
	}
	q := r.Stress
	checktest.Printed(t, "LR", q.WallReach/inch, "11.2594")
	checktest.Printed(t, "LH", q.Outside/inch, "7.8176")
	checktest.Printed(t, "λ", q.Slenderness, "1.3037")
	checktest.Printed(t, "A1", q.WallArea/in2, "19.000")
	checktest.Close(t, "A2", q.TubeArea/in2, 36.156, 0.001/36) // the source multiplies the rounded L_H
	// P_L = 16 026 psi, the wall's own hoop, against 33 600: p_max by S t/Rxs is 356·22400/16026.
	checktest.Close(t, "p_max", q.Capacity/psi, 356*22400.0/16026, 1e-4)
}

func TestStressMethodOnTwoOpenings(t *testing.T) {
	p, w, load, s := megyesy()
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "PO-25 with its weld, the wall's own hoop", r.Stress.Capacity/psi, "360.8")
	p.OutsideLeg = 0
	if r, err = p.Area(w, load, s); err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "PO-25 without the weld", r.Stress.Capacity/psi, "350.3")
	const d = 41.75
	head := port.Wall{Surface: port.Ellipsoid, Thickness: inch, Radius: (d/2 + 0.5) * inch, Depth: (d/4 + 0.5) * inch}
	hole := port.Port{Name: "manhole", OutsideDiameter: 10.25 * inch, TubeWall: 1.125 * inch, Parallel: true, Outside: inch * 6, Fit: port.Flush, FullGroove: true}
	if r, err = hole.Area(head, port.Load{Pressure: 700 * psi}, strengths(17500, 17500)); err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "PO-01", r.Stress.Capacity/psi, "919.3")
	// Where the method does not reach there is none.
	hole.Fit = port.On
	if r, err = hole.Area(head, port.Load{Pressure: 700 * psi}, strengths(17500, 17500)); err != nil || r.Stress != nil {
		t.Errorf("set on the wall: %v, %v", r.Stress, err)
	}
	q, cw, cl, cs := areaCase(40, 60, 4, 3, 1, 4, 6)
	if r, err = q.Area(cw, cl, cs); err != nil || r.Stress != nil {
		t.Errorf("50 degrees off the normal: %v, %v", r.Stress, err)
	}
}

// Length × 7, force × 3: pressures × 3/49; and a seam through the hole never helps.
func TestStressMethodScales(t *testing.T) {
	p, w, load, s := areaCase(60, 60, 3, 2, 1, 3, 6)
	a, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	const l, f = 7, 3.0 / 49
	q := p
	for _, v := range []*float64{&q.OutsideDiameter, &q.TubeWall, &q.InsideWall, &q.Radius, &q.Outside, &q.Inside, &q.OutsideLeg, &q.InsideLeg, &w.Thickness, &w.Radius} {
		*v *= l
	}
	for _, v := range []*float64{&load.Pressure, &s.Wall, &s.Tube} {
		*v *= f
	}
	b, err := q.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "p_max", b.Stress.Capacity, f*a.Stress.Capacity, 1e-12)
	s.EfficiencyMeridional = 0.7
	if seam, err := q.Area(w, load, s); err != nil || seam.Stress.Capacity > b.Stress.Capacity {
		t.Errorf("a seam through the hole: %g against %g, %v", seam.Stress.Capacity, b.Stress.Capacity, err)
	}
}
