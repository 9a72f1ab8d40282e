package heads_test

import (
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/material"
)

// A cone of 45 degrees on a cylinder of 300 mm.
func ExampleFindShape() {
	cone, _ := heads.FindShape("cone")
	h, err := cone.New(heads.Geometry{InsideDiameter: 0.3, HalfAngle: math.Pi / 4, Thickness: 0.004})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("depth %.0f mm, volume %.3f l\n", 1000*h.Depth(), 1000*h.Volume())
	_, err = cone.New(heads.Geometry{InsideDiameter: 0.3, HalfAngle: math.Pi / 4, Depth: 0.2, Thickness: 0.004})
	fmt.Println(err)
	// Output:
	// depth 150 mm, volume 3.534 l
	// the cone closes at 0.15 m, before its depth of 0.2 m
}

// A 2:1 head of 400 mm under 25 bar: the wall by the vessel rule, and back.
func ExampleRequiredThickness() {
	s, _ := heads.FindShape("ellipsoid")
	h, _ := s.New(heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 0.006})
	t, governs, _, err := heads.RequiredThickness(h, material.Vessel, 2.5e6, 115e6, 1, 0.85, heads.RuleOptions{})
	fmt.Printf("%.3f mm by %s, %v\n", 1000*t, governs, err)
	// Output: 4.357 mm by ellipsoid, <nil>
}

// The pressure that the same rule permits at a wall of 5 mm.
func ExampleAllowablePressure() {
	s, _ := heads.FindShape("ellipsoid")
	h, _ := s.New(heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 0.006})
	p, governs, _, err := heads.AllowablePressure(h, material.Vessel, 115e6, 1, 0.85, heads.RuleOptions{Wall: heads.Wall{Thickness: 0.005}})
	fmt.Printf("%.3f MPa by %s, %v\n", p/1e6, governs, err)
	// Output: 2.868 MPa by ellipsoid, <nil>
}

// Membrane forces at the rim of a 2:1 head under gas: the hoop is compression.
func ExampleMembrane() {
	s, _ := heads.FindShape("ellipsoid")
	h, _ := s.New(heads.Geometry{InsideDiameter: 0.4, Aspect: 2, Thickness: 0.006})
	rim, _ := h.PointAt(0.2, 0)
	const p = 2e6
	nφ, nθ, err := heads.Membrane(rim, p, p*math.Pi*rim.R*rim.R)
	fmt.Printf("%.0f and %.0f N/mm, %v\n", nφ/1000, nθ/1000, err)
	// Output: 200 and -400 N/mm, <nil>
}

// The European knuckle factor at r/Di 0.1 and e/R 0.005.
func ExampleBeta() {
	β, err := heads.Beta(0.005, 0.1)
	fmt.Printf("%.4f %v\n", β, err)
	// Output: 0.9499 <nil>
}

// The volume near the bottom of a dished head, for a level.
func ExampleHead() {
	s, _ := heads.FindShape("torisphere")
	h, _ := s.New(heads.Geometry{InsideDiameter: 0.5, CrownRadius: 0.5, KnuckleRadius: 0.05, Thickness: 0.004})
	fmt.Printf("%.2f l of %.2f l within 50 mm of the apex\n", 1000*h.VolumeFromApex(0.05), 1000*h.Volume())
	// Output: 3.80 l of 12.37 l within 50 mm of the apex
}

// A 10 % head at the limit pressure of Shield and Drucker, and what a thin one bears.
func ExampleShieldDrucker() {
	q, err := heads.ShieldDrucker(0.01, 0.1, 1)
	fmt.Printf("p_lim = %.5f σ_y, %v\n", q, err)
	// Output: p_lim = 0.01038 σ_y, <nil>
}

func ExampleDish_ThinKnuckle() {
	pe, py, pck, err := heads.Dish{D: 1, L: 1, R: 0.1, T: 0.001}.ThinKnuckle(200e9, 250e6)
	fmt.Printf("%.4f %.4f %.4f MPa, %v\n", pe/1e6, py/1e6, pck/1e6, err)
	// Output: 0.7121 0.1320 0.1906 MPa, <nil>
}
