package port_test

import (
	"fmt"
	"math"

	"proofsheet/heads/port"
)

// A one-inch tube parallel to the axis of a 45 degree cone: its hole is longer
// than the tube is wide, and lies across the hoop stress.
func ExamplePort_Chords() {
	w := port.Wall{Surface: port.Cone, Thickness: 0.004, Radius: 0.2, HalfApex: math.Pi / 4}
	p := port.Port{Name: "feed", OutsideDiameter: 0.0254, TubeWall: 0.003, Radius: 0.060, Parallel: true}
	c, err := p.Chords(w)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("obliquity %.0f deg, hole %.3f by %.1f mm\n", c.Obliquity*180/math.Pi, c.OutsideMeridional*1e3, c.OutsideTransverse*1e3)
	// Output: obliquity 45 deg, hole 35.921 by 25.4 mm
}

// The same tube, thinner, in a wall of 3.8 mm: the whole section has metal
// enough, its outboard side alone has not.
func ExamplePort_Area() {
	w := port.Wall{Surface: port.Cone, Thickness: 0.0038, Radius: 0.2, HalfApex: math.Pi / 4}
	p := port.Port{Name: "feed", OutsideDiameter: 0.0254, TubeWall: 0.00165, Radius: 0.060, Parallel: true,
		Fit: port.Flush, Outside: 0.04, OutsideLeg: 0.003, FullGroove: true}
	s := port.Strengths{Wall: 80e6, Tube: 80e6, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1}
	r, err := p.Area(w, port.Load{Pressure: 2e6}, s)
	if err != nil {
		fmt.Println(err)
		return
	}
	m := r.Meridional
	fmt.Printf("whole %.3f, outboard %.3f, inboard %.3f: %v\n", m.Whole.Ratio(), m.Outboard.Ratio(), m.Inboard.Ratio(), r.Check("feed").Status())
	// Output: whole 1.027, outboard 0.751, inboard 1.303: not satisfied
}

func ExampleSphereFactor() {
	k1, _ := port.SphereFactor(2)
	fmt.Printf("2:1 ellipsoid: a sphere of %.2f D\n", k1)
	// Output: 2:1 ellipsoid: a sphere of 0.90 D
}

func ExampleNeckWall() {
	// A forum case on NPS 4 pipe, in mm: the table caps what the shell asks.
	fmt.Printf("%.2f mm\n", port.NeckWall(0.132, 1.57, 8.6, 5.27))
	// Output: 5.27 mm
}

func ExampleShareLimit() {
	// Limits of 100 and 150 mm overlap by 30; the smaller port keeps 82.
	fmt.Printf("%.0f mm\n", port.ShareLimit(100, 150, 4, 6, 220))
	// Output: 82 mm
}
