package life_test

import (
	"fmt"

	"proofsheet/shell/life"
)

// A butt weld of class 63 sees 150 MPa a thousand times: with the scatter factor of 4 it may 37 044 times.
func ExampleClass_Cycles() {
	n, err := life.Class{Detail: "butt weld, root seen", FAT: 63e6}.Cycles(150e6)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("fails after %.0f, allowed %.0f\n", n, n/life.ScatterFactor)
	// Output: fails after 148176, allowed 37044
}

// A crack of 30 mm through the wall of a light tank, 150 MPa of hoop stress.
func ExampleThroughCrack_Intensity() {
	k, err := life.ThroughCrack{HalfLength: 15e-3, Radius: 150e-3, Thickness: 3e-3}.Intensity(150e6)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("K = %.1f MPa m^0.5\n", k/1e6)
	// Output: K = 41.5 MPa m^0.5
}
