package loads_test

import (
	"fmt"

	"proofsheet/loads"
)

// How high 100 l stand in a tank of 400 mm with 2:1 heads.
func ExampleLevelForVolume() {
	in := tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	z, err := loads.LevelForVolume(in, 0.100)
	fmt.Printf("%.4f m, %v\n", z, err)
	// Output: 0.7291 m, <nil>
}

// Liquid oxygen at 6 g under 20 bar, and with a lateral factor of 0.5 besides.
func ExampleNewState() {
	in := tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	for _, lateral := range []float64{0, 0.5} {
		s, err := loads.NewState(in, 2e6, loads.Liquid{Density: 1141, Mass: 150}, loads.Acceleration{Axial: 6, Lateral: lateral})
		if err != nil {
			fmt.Println(err)
			return
		}
		p, at := s.HighestPressure(in.Bounds())
		fmt.Printf("level %.3f m, highest %.4f MPa at %.3f m\n", s.SurfaceZ(), p/1e6, at)
	}
	// Output:
	// level 0.979 m, highest 2.0725 MPa at -0.100 m
	// level 0.979 m, highest 2.0726 MPa at -0.099 m
}

// The wall of a standing tank: gas pulls, the stack pushes and bends.
func ExampleState_WallForce() {
	in := tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	s, _ := loads.NewState(in, 2e6, loads.Liquid{Density: 1141, Mass: 150}, loads.Acceleration{Axial: 6})
	b := loads.Body{
		Radius:  func(float64) float64 { return 0.203 },
		Support: loads.Aft, AftJoint: 0, ForwardJoint: 1.2,
		Sections: []loads.Section{{Station: 1.2, Force: -20e3, Moment: 3e3}},
	}
	p, _, most, least, err := s.WallForce(0.5, b)
	fmt.Printf("%.0f from pressure, %.0f to %.0f kN/m from loads, %v\n", p/1e3, least/1e3, most/1e3, err)
	// Output: 203 from pressure, -39 to 7 kN/m from loads, <nil>
}

// A tank that hangs: the wall below the joint carries gas and all the liquid.
func ExampleState_FreeBody() {
	in := tank{R: 0.2, length: 1.2, aft: ellipsoid(0.2, 0.1), forward: ellipsoid(0.2, 0.1)}
	s, _ := loads.NewState(in, 1e6, loads.Liquid{Density: 1141, Mass: 150}, loads.Acceleration{Axial: 6})
	f, err := s.FreeBody(0.5, loads.Body{
		Radius:  func(float64) float64 { return 0.2 },
		Support: loads.Forward, AftJoint: 0, ForwardJoint: 1.2,
	})
	fmt.Printf("gas %.1f kN, liquid %.1f kN, %v\n", f.Ullage/1e3, f.LiquidMost/1e3, err)
	// Output: gas 125.7 kN, liquid 8.8 kN, <nil>
}

// The rim of an inward head is in compression.
func ExampleState_InwardHeadForce() {
	in := tank{R: 0.2, length: 0.6, aft: ellipsoid(0.2, 0.1), aftInward: true}
	s, _ := loads.NewState(in, 0.5e6, loads.Liquid{Density: 1141, Mass: 60}, loads.Acceleration{Axial: 5})
	V, err := s.InwardHeadForce(0.001)
	fmt.Printf("%.1f kN, %v\n", V/1e3, err)
	// Output: -65.8 kN, <nil>
}
