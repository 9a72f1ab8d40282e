package port_test

// A tube beside the cylinder's radius. PO-26: ASME PTB-4 E4.5.2 (formula and offsets
// recalled, in inches). The rest is computed apart: outline from points of both surfaces.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// hill returns a cylinder and a tube beside its radius; all in mm.
func hill(r, t, od, tn, x0 float64) (port.Port, port.Wall) {
	return port.Port{Name: "p", OutsideDiameter: od * mm, TubeWall: tn * mm, Station: 0.5, Offset: x0 * mm, Outside: 0.1, Fit: port.Flush, FullGroove: true, OutsideLeg: 4 * mm},
		port.Wall{Surface: port.Cylinder, Thickness: t * mm, Radius: r * mm, Length: 1}
}

func TestHillsideOfPTB4(t *testing.T) {
	p := port.Port{Name: "h", OutsideDiameter: (7.87 + 1) * inch, TubeWall: 0.5 * inch, Station: 100 * inch, Offset: 34.875 * inch}
	w := port.Wall{Surface: port.Cylinder, Thickness: 1.6875 * inch, Radius: 75.969 * inch, Length: 200 * inch}
	c, err := p.Chords(w)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "PO-26 chord", c.Transverse/inch, "8.8627")
	checktest.Printed(t, "PO-26 φ", c.Obliquity/deg, "27.33")
	checktest.Close(t, "PO-26 as ID/cos φ", c.Transverse/inch, 8.859, 5e-4)
	checktest.Close(t, "axial chord is the bore", c.Meridional/inch, 7.87, 1e-12)
	// PTB-4's own form: 2 Rm √(1 − cos²(a/2)), a the angle between both edges.
	a := math.Acos((34.875-7.87/2)/75.969) - math.Acos((34.875+7.87/2)/75.969)
	checktest.Close(t, "second form", c.Transverse/inch, 2*75.969*math.Sqrt(1-math.Pow(math.Cos(a/2), 2)), 1e-9)
}

// The outline as 200 000 points on both surfaces: chords, perimeter; area by the flat of
// the wall, ∮ x d(R θ).
func TestHillsideOutline(t *testing.T) {
	const n = 200000
	for _, row := range []struct{ r, od, x0 float64 }{{150, 38.1, 60}, {150, 38.1, -60}, {200, 50.8, 140}, {200, 60, 10}} {
		p, w := hill(row.r, 3, row.od, 2, row.x0)
		c, err := p.Chords(w)
		if err != nil {
			t.Fatal(err)
		}
		cut, err := p.CutOut(w)
		if err != nil {
			t.Fatal(err)
		}
		at := func(ψ float64) (x, y, z float64) { // along the cylinder, beside the radius, up
			x, y = row.od/2*math.Sin(ψ), row.x0+row.od/2*math.Cos(ψ)
			return x, y, math.Sqrt(row.r*row.r - y*y)
		}
		perimeter, area := 0.0, 0.0
		x1, y1, z1 := at(0)
		for i := 1; i <= n; i++ {
			x2, y2, z2 := at(2 * math.Pi * float64(i) / n)
			perimeter += math.Sqrt((x2-x1)*(x2-x1) + (y2-y1)*(y2-y1) + (z2-z1)*(z2-z1))
			area += (x1 + x2) / 2 * row.r * (math.Atan2(y2, z2) - math.Atan2(y1, z1))
			x1, y1, z1 = x2, y2, z2
		}
		checktest.Close(t, "perimeter", cut.Perimeter/mm, perimeter, 1e-8)
		checktest.Close(t, "area", cut.Area/mm/mm, math.Abs(area), 1e-8)
		_, ya, za := at(0)
		_, yb, zb := at(math.Pi)
		checktest.Close(t, "chord", c.OutsideTransverse/mm, math.Hypot(ya-yb, za-zb), 1e-12)
		y0, z0 := row.x0, math.Sqrt(row.r*row.r-row.x0*row.x0)
		checktest.Close(t, "rising part", c.OutsideSides[0]/mm, math.Hypot(ya-y0, za-z0), 1e-12)
		checktest.Close(t, "falling part", c.OutsideSides[1]/mm, math.Hypot(yb-y0, zb-z0), 1e-12)
		checktest.Close(t, "pierce", p.PierceClock(w), math.Atan2(y0, z0), 1e-12)
	}
}

// The area method by hand: R 200, t 6, OD 60.3 × 5, x0 100, p 2, S 80, full penetration.
// d = 2·200 sin{[acos(74.85/200) − acos(125.15/200)]/2} = 58.2926 (bore 50.3), C the same of
// 60.3: 69.9980, t_n′ 5.8527; t_r = 2·197/(80 − 1.2) = 5.0. Transverse, F ½: A = 58.2926·2.5.
// Meridional, F 1: A = 50.3·5.0.
func TestHillsideArea(t *testing.T) {
	p, w := hill(200, 6, 60.3, 5, 100)
	s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	r, err := p.Area(w, port.Load{Pressure: 2 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "d", r.Transverse.Bore/mm, "58.2926")
	checktest.Printed(t, "C", r.Transverse.Outside/mm, "69.9980")
	checktest.Printed(t, "t_n′", r.Transverse.TubeAlong/mm, "5.8527")
	checktest.Printed(t, "A transverse", r.Transverse.Whole.Required/mm/mm, "145.73")
	checktest.Printed(t, "A meridional", r.Meridional.Whole.Required/mm/mm, "251.50")
	checktest.Close(t, "sin β", r.Transverse.SinBeta, math.Cos(math.Asin(0.5)), 1e-12)
	if len(r.Pressure) != 4 || r.Piping != nil || r.Meridional.SinBeta != 1 {
		t.Errorf("%d sides by the pressure-area method, piping %v, sin β %g", len(r.Pressure), r.Piping, r.Meridional.SinBeta)
	}
	// p_max of the rising side by hand: r_is 197, l_so √(400·6) = 48.9898, a = 200 (asin
	// 0.65075 − asin 0.5) = 36.9946, A_ps = ½ 197² 85.9844/200, l′_b = √(55.3·5) = 16.6283,
	// A_fb = 5 (16.6283 + 6), A_fw = ½ 4² cos 30°, A_pb = ½ 50.3 (16.6283 + 6), A_pφ = ½ 50.3² tan 30°.
	ps, fs, fb, fw, pb, pφ := 0.5*197*197*85.9844/200, 6*48.9898, 5*22.6283, 8*math.Cos(30*deg), 0.5*50.3*22.6283, 0.5*50.3*50.3*math.Tan(30*deg)
	want := (fs + fb + fw) * 80 / (ps + pb + pφ/2 + (fs+fb+fw)/2)
	checktest.Close(t, "p_max, rising clock", r.Pressure[2].Capacity/mpa, want, 1e-5)
	if got := r.Check("p"); got.Status() == check.NotAssessed {
		t.Error(got.Reason())
	}
	// Mirrored, the sides change place and nothing else.
	q := p
	q.Offset = -p.Offset
	m, err := q.Area(w, port.Load{Pressure: 2 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "mirror", m.Transverse.Inboard.Available(), r.Transverse.Outboard.Available(), 1e-12)
	checktest.Close(t, "mirror, pressure area", m.Pressure[3].Capacity, r.Pressure[2].Capacity, 1e-12)
}

// Next to no offset is the radial tube: chords, areas, pressures.
func TestHillsideLimit(t *testing.T) {
	s := port.Strengths{Wall: 80 * mpa, Tube: 80 * mpa, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	p, w := hill(20000, 6, 60.3, 5, 1e-6) // wide: the saddle of the radial outline is left out there
	near, err := p.Area(w, port.Load{Pressure: 0.02 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	p.Offset = 0
	radial, err := p.Area(w, port.Load{Pressure: 0.02 * mpa}, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "transverse", near.Transverse.Whole.Available(), radial.Transverse.Whole.Available(), 1e-5)
	checktest.Close(t, "meridional", near.Meridional.Whole.Available(), radial.Meridional.Whole.Available(), 1e-9)
	p.Offset = 1e-9
	f, err := p.FilletFactor(w, true)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "fillet", f, 1, 1e-3)
}

// The fillet's worth by sums over the outline, angles by vectors: R 200, OD 60, x0 120.
func TestHillsideFillet(t *testing.T) {
	const n, R, a, x0 = 400000, 200.0, 30.0, 120.0
	p, w := hill(R, 4, 2*a, 3, x0)
	for _, outside := range []bool{true, false} {
		sum := 0.0
		for i := range n {
			ψ := 2 * math.Pi * (float64(i) + 0.5) / n
			y := x0 + a*math.Cos(ψ)
			z := math.Sqrt(R*R - y*y)
			dot := y / R * math.Cos(ψ) // normals of cylinder (0, y, z)/R and tube (sin ψ, cos ψ, 0)
			δ := math.Acos(dot)
			if outside {
				δ = math.Pi - δ
			}
			if δ >= math.Pi/3 {
				dz := y * a * math.Sin(ψ) / z
				sum += math.Min(1, math.Sqrt2*math.Cos(δ/2)) * math.Hypot(a, dz) * 2 * math.Pi / n
			}
		}
		got, err := p.FilletFactor(w, outside)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "fillet", got, sum/(2*math.Pi*a), 2e-4)
	}
}

func TestHillsideRefused(t *testing.T) {
	for _, row := range []struct {
		where string
		x0    float64
		ok    bool
	}{{"60 degrees", 173.2, true}, {"over 60 degrees", 173.3, false}, {"past the inside face", 190, false}, {"not a number", math.NaN(), false}} {
		p, w := hill(200, 3, 20, 2, row.x0)
		if _, err := p.Chords(w); (err == nil) != row.ok {
			t.Errorf("%s: %v", row.where, err)
		}
	}
	p, _ := hill(200, 3, 20, 2, 50)
	p.Radius, p.Parallel = 50*mm, true
	if _, err := p.Chords(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 200 * mm}); err == nil {
		t.Error("an offset on a head is taken")
	}
	p, w := hill(200, 3, 20, 2, 145)
	if c, err := p.Chords(w); err != nil || len(c.Cautions) != 1 {
		t.Errorf("46 degrees: %v, %q", err, c.Cautions)
	}
}

// Neighbours and seams are measured from where the axis pierces the wall, by hand: two
// tubes beside the same radius, 40 and −40 of 200: 2·200·asin 0.2 = 80.543 mm.
func TestHillsideSpacing(t *testing.T) {
	p, w := hill(200, 3, 20, 2, 40)
	q := p
	q.Offset = -p.Offset
	d, _, _ := port.CentreDistance(w, p, q)
	checktest.Printed(t, "between both", d/mm, "80.543")
	checktest.Printed(t, "to the seam at the radius", p.SeamDistance(w, 0)/mm, "40.272")
}
