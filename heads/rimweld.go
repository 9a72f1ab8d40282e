package heads

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

const (
	rimThrust   = 1.5  // on the thrust of the pressure [-]
	rimFillet   = 0.49 // strength of a fillet in shear on its leg, over the allowable stress [-]
	mostFillets = 2
)

// CheckRimWeld is head.X/rim-weld: full fillets that lap an inward head to the
// cylinder carry its thrust in shear, 1.5 times the pressure's:
//
//	1.5 p π R² ≤ n 2π R a · 0.49 S
//
// p the highest pressure on the convex side [Pa], R the cylinder's inside radius [m], a
// the leg, of a full fillet the thinner wall [m], n fillets (plugs are not counted), S the
// allowable stress of the weld [Pa].
//
// Source: equilibrium; 1.5 of ASME VIII-1 UW-13(e), heads within a shell, and 0.49 of
// UW-15(c), both recalled.
func CheckRimWeld(end string, p, radius, leg float64, fillets int, s float64) check.Result {
	id, name := "head."+end+"/rim-weld", title(end, "shear of the fillets at its rim")
	if fillets < 1 || fillets > mostFillets || !(leg > 0 && radius > leg) {
		return check.NotMade(id, name, fmt.Errorf("%d fillets of %.4g mm at a radius of %.4g mm lap no head", fillets, leg*1e3, radius*1e3))
	}
	return check.Result{
		ID: id, Title: name, Formula: "1.5 p π R² ≤ n 2π R a · 0.49 S", Factor: 1,
		Inputs: []check.Quantity{check.Pa("p", "highest pressure on the convex side", p), check.M("R", "inside radius of the cylinder", radius),
			check.M("a", "leg of a full fillet: the thinner wall", leg), check.Num("n", "fillets", float64(fillets)), check.Pa("S", "allowable stress of the weld", s)},
		Demand:   check.N("T", "1.5 times the thrust on the head", rimThrust*p*math.Pi*radius*radius),
		Capacity: check.N("V", "strength of the fillets in shear", float64(fillets)*2*math.Pi*radius*leg*rimFillet*s),
		Source:   check.Source{Doc: "ASME BPVC Section VIII Division 1, recalled; confirm", Where: "UW-13(e), UW-15(c)", How: check.Memory},
		Note:     "the step between the walls bends both: that is not in it",
	}
}
