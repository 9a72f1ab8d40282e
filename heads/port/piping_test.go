package port_test

// PO-05: ASME B31.3-2016 appendix H, example H301 metric (read). PO-23: example
// H302, inputs read, highest pressure computed. PO-27: example H303, recalled.
// PO-04: 16 NYCRR appendix 14-G, example 1 (read), the gas-pipe form: the same
// areas at 90 degrees with t = p D/(2 S F).

import (
	"errors"
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

func TestPipingH301(t *testing.T) {
	const kpa = 1e3
	th, err := port.PipeWall(2068*kpa, 219.1*mm, 110*mpa)
	if err != nil {
		t.Fatal(err)
	}
	tb, err := port.PipeWall(2068*kpa, 114.3*mm, 110*mpa)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "th", th/mm, "2.04")
	checktest.Printed(t, "tb", tb/mm, "1.07")
	q, err := port.PipingArea(port.Branch{RunDiameter: 219.1 * mm, Diameter: 114.3 * mm, RunWall: (0.875*8.18 - 2.5) * mm, Wall: (0.875*6.02 - 2.5) * mm,
		RunRequired: th, Required: tb, Angle: math.Pi / 2, Height: 1, Welds: 36e-6})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "d1", q.Hole/mm, "108.8")
	checktest.Close(t, "L4", q.Height/mm, 6.93, 0.012/6.93) // the source rounds the wall to 5.27 midway
	checktest.Printed(t, "A1", q.Required*1e6, "222")
	checktest.Printed(t, "A2, unrounded", q.Run*1e6, "284.2")
	checktest.Printed(t, "A3", q.Branch*1e6, "24")
	checktest.Printed(t, "sum, unrounded", (q.Run+q.Branch+q.Others)*1e6, "343.8")
}

func TestPipingH303(t *testing.T) {
	const s = 14400 * psi
	th, _ := port.PipeWall(500*psi, 16*inch, s)
	tb, _ := port.PipeWall(500*psi, 6.625*inch, s)
	checktest.Printed(t, "th", th/inch, "0.274")
	checktest.Printed(t, "tb", tb/inch, "0.113")
	q, err := port.PipingArea(port.Branch{RunDiameter: 16 * inch, Diameter: 6.625 * inch, RunWall: (0.875*0.5 - 0.1) * inch, Wall: (0.875*0.28 - 0.1) * inch,
		RunRequired: th, Required: tb, Angle: 60 * deg, PadDiameter: 12 * inch, PadThickness: 0.5 * inch, Height: 1})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "d1", q.Hole/inch, "7.315")
	checktest.Printed(t, "L4", q.Height/inch, "0.844")
	checktest.Printed(t, "A1", q.Required/in2, "2.273")
	checktest.Printed(t, "A2", q.Run/in2, "0.465")
	checktest.Close(t, "A3", q.Branch/in2, 0.061, 0.001/0.061) // the source rounds both walls midway: 0.0614 unrounded
	// The penalty on oblique branches beside their longer hole.
	for angle, want := range map[float64]string{90: "1.000", 60: "1.134", 45: "1.293"} {
		b := port.Branch{RunDiameter: 16 * inch, Diameter: 6.625 * inch, RunWall: 0.5 * inch, Wall: 0.28 * inch, RunRequired: th, Required: tb, Angle: angle * deg}
		if q, err = port.PipingArea(b); err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "penalty", q.Required/(th*q.Hole), want)
	}
}

// H302: 6061-T6 at 8000 psi welded, a ring of 6063-T6 at 5700 psi, walls less 12.5 %.
// The pad's area is printed (2.302 in2); with the weld of the tube alone, two
// fillets of 0.25 in throat, the areas meet at 620 psi.
func TestPipingH302(t *testing.T) {
	const p = 620 * psi
	th, _ := port.PipeWall(p, 12.75*inch, 8000*psi)
	tb, _ := port.PipeWall(p, 8.625*inch, 8000*psi)
	weld := math.Pow(0.25*math.Sqrt2, 2)
	b := port.Branch{RunDiameter: 12.75 * inch, Diameter: 8.625 * inch, RunWall: 0.601 * inch, Wall: 0.4375 * inch, RunRequired: th, Required: tb,
		Angle: math.Pi / 2, PadDiameter: 14 * inch, PadThickness: 0.601 * inch, PadRatio: 5700.0 / 8000, Height: 1}
	q, err := port.PipingArea(b)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "pad", q.Others/in2, "2.302")
	b.Welds = weld * in2
	if q, err = port.PipingArea(b); err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "areas meet", (q.Run+q.Branch+q.Others)/q.Required, 1, 2e-3)
}

func TestGasPipeBranch(t *testing.T) {
	const p, f = 650 * psi, 0.6
	th, tb := p*24*inch/(2*46000*psi*f), p*8.625*inch/(2*35000*psi*f)
	checktest.Printed(t, "t", th/inch, "0.283")
	checktest.Close(t, "tb", tb/inch, 0.133, 0.0006/0.133) // 0.1335 unrounded
	b := port.Branch{RunDiameter: 24 * inch, Diameter: 8.625 * inch, RunWall: 0.312 * inch, Wall: 0.322 * inch, RunRequired: th, Required: tb, Angle: math.Pi / 2,
		PadDiameter: 15.5 * inch, PadThickness: 0.25 * inch, BranchRatio: 35.0 / 46, Welds: 0.125 * in2, Height: 1}
	q, err := port.PipingArea(b)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "d", q.Hole/inch, "7.981")
	checktest.Printed(t, "L", q.Height/inch, "0.78")
	checktest.Printed(t, "A1", q.Run/in2, "0.23")
	checktest.Printed(t, "A2 by strength", q.Branch/in2, "0.22")
	checktest.Printed(t, "pad and fillets", q.Others/in2, "1.84")
	// By hand, unrounded: 7.981·0.02939 + 2·0.78·0.18850·35/46 + 1.71875 + 0.125.
	checktest.Printed(t, "available, unrounded", (q.Run+q.Branch+q.Others)/in2, "2.302")
	checktest.Printed(t, "required, unrounded", q.Required/in2, "2.256")
}

func TestPipingRange(t *testing.T) {
	b := port.Branch{RunDiameter: 0.4, Diameter: 0.05, RunWall: 5 * mm, Wall: 3 * mm, RunRequired: 2 * mm, Required: 1 * mm, Angle: 45 * deg, Height: 1}
	if _, err := port.PipingArea(b); err != nil {
		t.Errorf("45 degrees: %v", err)
	}
	for name, change := range map[string]func(*port.Branch){
		"under 45 degrees":     func(b *port.Branch) { b.Angle = 44.9 * deg },
		"over 90 degrees":      func(b *port.Branch) { b.Angle = 90.1 * deg },
		"NaN angle":            func(b *port.Branch) { b.Angle = math.NaN() },
		"NaN wall":             func(b *port.Branch) { b.RunWall = math.NaN() },
		"thin run, big branch": func(b *port.Branch) { b.RunWall, b.Diameter = 3*mm, 0.21 },
	} {
		c := b
		change(&c)
		var out *check.RangeError
		if q, err := port.PipingArea(c); !errors.As(err, &out) || !math.IsNaN(q.Required) {
			t.Errorf("%s: %v, %g", name, err, q.Required)
		}
	}
	if v, err := port.PipeWall(1e6, 0.1, math.NaN()); err == nil || !math.IsNaN(v) {
		t.Errorf("NaN stress: %g, %v", v, err)
	}
	// Length × 7: areas × 49.
	q, _ := port.PipingArea(b)
	for _, v := range []*float64{&b.RunDiameter, &b.Diameter, &b.RunWall, &b.Wall, &b.RunRequired, &b.Required, &b.Height} {
		*v *= 7
	}
	big, err := port.PipingArea(b)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "units", big.Run+big.Branch, 49*(q.Run+q.Branch), 1e-12)
}

// The third opinion stands in the area check of a cone from 45 degrees up, and a
// note says why it does not below.
func TestPipingInTheCheck(t *testing.T) {
	for α, reaches := range map[float64]bool{60: true, 45: true, 40: false} {
		p, w, load, s := areaCase(α, 60, 4, 3, 1, 4, 6)
		r, err := p.Area(w, load, s)
		if err != nil {
			t.Fatal(err)
		}
		if got := r.Piping != nil; got != reaches || (len(r.Notes) > 0) == reaches {
			t.Errorf("α %g: piping form %v, notes %v", α, got, r.Notes)
		}
	}
	// TC-F by hand: D = 2·60/cos 45 + 3.8 = 173.506, th = 2·173.506/(2(80 + 0.8)) =
	// 2.14735; d1 = 31.2541; A1 = 2.14735·31.2541·1.29289 = 86.771; A2 = 31.2541 (3.8 −
	// 2.14735) = 51.652; tb = 2·25.4/161.6 = 0.31436, A3 = 2·4.125 (1.65 − 0.31436)/sin 45 =
	// 15.583; welds 6.364.
	p, w, load, s := areaCase(45, 60, 3.8, 1.65, 1, 3, 0)
	r, err := p.Area(w, load, s)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "A1", r.Piping.Required*1e6, 86.771, 1e-5)
	checktest.Close(t, "A2", r.Piping.Run*1e6, 51.652, 1e-5)
	checktest.Close(t, "A3", r.Piping.Branch*1e6, 15.583, 4e-5)
	checktest.Close(t, "A4", r.Piping.Others*1e6, 6.364, 1e-4)
}
