package edge_test

import (
	"fmt"
	"math"

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
