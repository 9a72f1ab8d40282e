package proof_test

import (
	"fmt"
	"math"

	"proofsheet/loads/proof"
)

// A liquid oxygen tank that stands 1.2 m deep under 6 g, proofed upright in
// water for flight: the gauge must show more than 1.5 times MEOP.
func ExampleNewPlan() {
	flight, _ := proof.DefaultRule("flight", proof.Hydrostatic, true)
	same := []proof.Ratio{{Material: "plate", Value: 1}}
	p, err := proof.NewPlan(proof.Inputs{
		Method: proof.Hydrostatic, Rules: []proof.Rule{flight}, MEOP: 3e6, WaterDensity: 998.2, Near: math.NaN(),
		Points: []proof.Point{
			{Name: "top", Service: 3e6, Ratios: same},
			{Name: "bottom", Service: 3e6 + 1141*9.80665*6*1.2, WaterDepth: 1.2, Ratios: same},
		},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("gauge %.3f MPa, hold %.0f s\n", p.Setting/1e6, p.Hold)
	for _, s := range p.Points {
		fmt.Printf("%-6s required %.4f, shown %.4f, at most %.4f MPa\n", s.Name, s.Required/1e6, s.Low/1e6, s.High/1e6)
	}
	fmt.Println(p.CheckReach().Status(), p.ExaminationFrom)
	// Output:
	// gauge 4.656 MPa, hold 600 s
	// top    required 4.5000, shown 4.6091, at most 4.7488 MPa
	// bottom required 4.6208, shown 4.6208, at most 4.7605 MPa
	// satisfied no pressure is shown safe for people near: remote viewing only
}

// A 6061 tank of 150 mm radius and 3 mm wall, water at 20 °C: a tenth of a
// kelvin moves the pressure as much as a leak of a millilitre.
func ExampleFull_Drift() {
	water, _ := proof.WaterAt(293.15, 4.5e6)
	wall := proof.Wall{Thickness: 0.003, ElasticModulus: 68.9e9, Poisson: 0.33}
	shell, _ := wall.CylinderGrowth(0.15, 0.9)
	end, _ := wall.HemisphereGrowth(0.15)
	tank := proof.Full{Volume: 0.077754, Growth: shell + 2*end, Compressibility: water.Compressibility,
		Expansion: water.Expansion, WallExpansion: 23.6e-6}
	drift, _ := tank.Drift(4.5e6)
	leak, _ := tank.LeakFall(4.5e6)
	fmt.Printf("%.1f kPa in 0.1 K, %.1f kPa in 1 ml\n", drift*0.1/1e3, leak*1e-6/1e3)
	// Output: 8.5 kPa in 0.1 K, 7.6 kPa in 1 ml
}

// The same tank filled with air in place of water.
func ExampleStandOff() {
	e, _ := proof.Gas{Volume: 0.077754, Pressure: 4.5e6, Outside: proof.Atmosphere, Ratio: 1.4}.Energy()
	r, _ := proof.StandOff(e.Isentropic)
	fmt.Printf("%.3f MJ, %.3f kg TNT, %.0f m\n", e.Isentropic/1e6, proof.TNT(e.Isentropic), r)
	// Output: 0.594 MJ, 0.139 kg TNT, 30 m
}

// A cone of 30 degrees on a cylinder of its own wall, R/t 100.
func ExampleWall_ConeGrowth() {
	w := proof.Wall{Thickness: 0.002, ElasticModulus: 70e9, Poisson: 0.33}
	g, _ := w.ConeGrowth(proof.Cone{Radius: 0.2, HalfAngle: math.Pi / 6, CylinderThickness: 0.002})
	fmt.Printf("%.1f ml at 3 MPa\n", g*3e6*1e6)
	// Output: 130.9 ml at 3 MPa
}

// Hot in service, cold in the test: the wall is loaded harder.
func ExampleCorrectionFactor() {
	parent, _ := proof.NewRatio("plate", 205e6, 170e6)
	zone, _ := proof.NewRatio("plate, weld zone", 90e6, 95e6)
	cf, _ := proof.CorrectionFactor([]proof.Ratio{parent, zone})
	fmt.Printf("%.3f\n", cf)
	// Output: 1.206
}

// A wall that uses 0.97 of its limit at proof leaves 3 % for the relief valve.
func ExamplePlan_Relief() {
	p := &proof.Plan{In: proof.Inputs{Method: proof.Hydrostatic}, Setting: 4e6}
	r, _ := p.Relief(0.97)
	fmt.Printf("%.3f MPa\n", r/1e6)
	_, err := p.Relief(0.99)
	fmt.Println(err != nil)
	// Output:
	// 4.124 MPa
	// true
}
