package shell_test

import (
	"fmt"

	"proofsheet/shell"
)

// A tank of 400 mm bore and 6 mm wall at 25 bar.
func ExampleCylinder_HoopStress() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.006}
	σ, err := c.HoopStress(2.5e6)
	fmt.Printf("%.1f MPa, %v\n", σ/1e6, err)
	// Output: 84.6 MPa, <nil>
}

// Beside the ullage pressure a bending moment of 3 kN m stretches one side.
func ExampleCylinder_LongitudinalStress() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.006}
	r := c.MidRadius()
	σ, err := c.LongitudinalStress(c.ClosedEndForce(2.5e6) + 3e3/(3.14159265*r*r))
	fmt.Printf("%.1f MPa, %v\n", σ/1e6, err)
	// Output: 46.2 MPa, <nil>
}

// A thick tube: the stress at the bore is above the mean p R/t of 50 MPa.
func ExampleCylinder_LameStress() {
	c := shell.Cylinder{InsideRadius: 0.050, Thickness: 0.010}
	hoop, radial, axial, err := c.LameStress(10e6, 0, 0.050)
	fmt.Printf("%.1f, %.1f, %.1f MPa, %v\n", hoop/1e6, radial/1e6, axial/1e6, err)
	// Output: 55.5, -10.0, 22.7 MPa, <nil>
}

func ExampleCylinder_YieldPressures() {
	c := shell.Cylinder{InsideRadius: 0.050, Thickness: 0.010}
	mises, tresca, err := c.YieldPressures(200e6)
	fmt.Printf("%.1f, %.1f MPa, %v\n", mises/1e6, tresca/1e6, err)
	// Output: 35.3, 30.6 MPa, <nil>
}

func ExampleCylinder_CollapsePressures() {
	c := shell.Cylinder{InsideRadius: 0.050, Thickness: 0.010}
	mises, tresca, err := c.CollapsePressures(200e6)
	fmt.Printf("%.1f, %.1f MPa, %v\n", mises/1e6, tresca/1e6, err)
	// Output: 42.1, 36.5 MPa, <nil>
}

// The long seam asks for more than the girth seam of the same efficiency.
func ExampleCylinder_RequiredThicknessHoop() {
	c := shell.Cylinder{InsideRadius: 0.200}
	long, _ := c.RequiredThicknessHoop(2.5e6, 115e6, 0.85)
	girth, _ := c.RequiredThicknessGirth(2.5e6, 0, 115e6, 0.85)
	fmt.Printf("%.3f and %.3f mm\n", long*1e3, girth*1e3)
	// Output: 5.195 and 2.545 mm
}

func ExampleCylinder_RequiredThicknessHoopEU() {
	c := shell.Cylinder{InsideRadius: 0.200}
	long, _ := c.RequiredThicknessHoopEU(2.5e6, 115e6, 0.85)
	fmt.Printf("%.3f mm\n", long*1e3)
	// Output: 5.181 mm
}

func ExampleCylinder_GirthGoverns() {
	c := shell.Cylinder{InsideRadius: 0.960}
	governs, err := c.GirthGoverns(2e6, 2e6, 0, 120e6, 0.90, 0.40)
	fmt.Println(governs, err)
	// Output: true <nil>
}

func ExampleSphere_RequiredThickness() {
	wall, _ := shell.Sphere{InsideRadius: 0.200}.RequiredThickness(2.5e6, 115e6, 0.85)
	fmt.Printf("%.3f mm\n", wall*1e3)
	// Output: 2.564 mm
}

func ExampleVonMises() {
	fmt.Printf("%.1f, %.1f\n", shell.VonMises(100, 50), shell.Tresca(100, -50))
	// Output: 86.6, 150.0
}

func ExampleCylinder_Growth() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.006, Length: 1.2}
	g, _ := c.Growth(84.6e6, 42.3e6, shell.Elastic{Modulus: 195e9, Poisson: 0.3})
	fmt.Printf("%.3f mm in diameter, %.3f mm in length, %.0f cm3\n", g.Diameter*1e3, g.Length*1e3, g.Volume*1e6)
	// Output: 0.150 mm in diameter, 0.104 mm in length, 128 cm3
}

// The same wall from outside and from inside: R_o = R + t.
func ExampleHoopThicknessOutside() {
	long, _ := shell.HoopThicknessOutside(0.205195, 2.5e6, 115e6, 0.85)
	girth, _ := shell.GirthThicknessOutside(0.202545, 2.5e6, 115e6, 0.85)
	sphere, _ := shell.SphereThicknessOutside(0.202564, 2.5e6, 115e6, 0.85)
	fmt.Printf("%.3f, %.3f, %.3f mm\n", long*1e3, girth*1e3, sphere*1e3)
	// Output: 5.195, 2.545, 2.564 mm
}

func ExampleCylinder_AllowablePressureHoop() {
	c := shell.Cylinder{InsideRadius: 0.200, Thickness: 0.0057}
	long, _ := c.AllowablePressureHoop(115e6, 0.85)
	girth, _ := c.AllowablePressureGirth(0, 115e6, 0.85)
	fmt.Printf("%.2f and %.2f bar\n", long/1e5, girth/1e5)
	// Output: 27.39 and 56.36 bar
}

// At the bore of a thick sphere.
func ExampleSphere_LameStress() {
	hoop, radial, _ := shell.Sphere{InsideRadius: 0.050, Thickness: 0.010}.LameStress(10e6, 0, 0.050)
	fmt.Printf("%.1f, %.1f MPa\n", hoop/1e6, radial/1e6)
	// Output: 25.6, -10.0 MPa
}
