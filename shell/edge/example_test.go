package edge_test

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/shell/edge"
)

// A cone of 30 degrees on a cylinder, R/t = 100, at a pressure that makes p R/t = 100 MPa: the corner is in compression
// round the tank, and sees almost four times the hoop stress of the cylinder along it.
func ExampleCone_Solve() {
	steel := edge.Wall{Thickness: 0.002, ElasticModulus: 200e9, Poisson: 0.3}
	c := edge.Cone{Radius: 0.2, HalfApex: 30 * math.Pi / 180, Shell: steel, Cone: steel, ShellFree: 1.2, ConeFree: 0.3}
	j, err := c.Solve(edge.Gas(1e6, 0.2))
	fmt.Printf("hoop %.1f MPa, meridional %.1f MPa, %v\n", j.Shell.Hoop/1e6, j.Shell.MeridionalSurface()/1e6, err)
	// Output: hoop -73.9 MPa, meridional 371.4 MPa, <nil>
}

// A quarter of the wall of hi-lo bends a long seam by three quarters of its hoop stress.
func ExampleHiLo() {
	k, err := edge.HiLo(0.006, 0.006, 0.0015)
	fmt.Printf("%.2f %v\n", k, err)
	// Output: 0.75 <nil>
}

// A closed form alone never passes a joint, however low the stress.
func ExampleJunction_Check() {
	l := material.Limits{Rule: material.Vessel, S: 115e6, Yield: 170e6}
	closed := edge.Answer{Places: []edge.Place{{Where: "cylinder at the joint", Pressure: edge.Stress{Meridional: 1e6, Hoop: 2e6}, Limits: l, Efficiency: 1}}}
	j := edge.Junction{ID: "head.aft/junction", Closed: closed, Sharp: true, Slender: 34}
	fmt.Println(j.Check().Status())
	j.Numerical = edge.Answer{Err: errors.New("the meridian does not close")}
	fmt.Println(j.Check().Reason())
	// Output:
	// not assessed
	// no answer of the numerical shell: the meridian does not close
}
