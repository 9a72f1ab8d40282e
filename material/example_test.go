package material_test

import (
	"fmt"

	"proofsheet/material"
)

// A wall of 3 mm 6061-T6 and its TIG weld: the weld zone is a material of its
// own, half as strong.
func ExampleQuery_WeldZone() {
	q := material.Query{Alloy: "6061-T6", Spec: "EN 485-2", Thickness: 0.003, Temperature: 293.15, Process: "tig"}
	parent, _ := q.Parent()
	zone, _ := q.WeldZone()
	factors, _ := material.DefaultFactors(material.Vessel)
	p, _ := parent.Limits(material.Vessel, factors, material.LimitOptions{})
	z, _ := zone.Limits(material.Vessel, factors, material.LimitOptions{})
	fmt.Printf("parent %.0f/%.0f MPa, S %.1f MPa\n", parent.Yield.Value/1e6, parent.Ultimate.Value/1e6, p.S/1e6)
	fmt.Printf("zone   %.0f/%.0f MPa, S %.1f MPa\n", zone.Yield.Value/1e6, zone.Ultimate.Value/1e6, z.S/1e6)
	// Output:
	// parent 240/290 MPa, S 82.9 MPa
	// zone   92/140 MPa, S 40.0 MPa
}

// Hoop 100 and axial 50 MPa from pressure, −60 MPa from bending, by flight.
func ExampleLimits_Equivalent() {
	parent, _ := material.Query{Alloy: "304L", Spec: "ASTM A240", Thickness: 0.003, Temperature: 293.15}.Parent()
	factors, _ := material.DefaultFactors(material.Flight)
	l, _ := parent.Limits(material.Flight, factors, material.LimitOptions{})
	j := l.Equivalent(material.Stress{HoopPressure: 100e6, MeridionalPressure: 50e6, MeridionalLoadMost: 60e6, MeridionalLoadLeast: -60e6})
	fmt.Printf("%s %.1f MPa against %s %.0f MPa\n", j.Demand.Symbol, j.Demand.Value/1e6, j.Capacity.Symbol, j.Capacity.Value/1e6)
	// Output: σ_eq 166.7 MPa against F_ty 170 MPa
}

// Efficiency 0.85 across a seam by the vessel rule.
func ExampleLimits_Normal() {
	l := material.Limits{Rule: material.Vessel, S: 113.3e6}
	j := l.Normal(80e6, 5e6, -5e6, 0.85)
	fmt.Printf("%.0f MPa against %.1f MPa\n", j.Demand.Value/1e6, j.Capacity.Value/1e6)
	// Output: 85 MPa against 96.3 MPa
}
