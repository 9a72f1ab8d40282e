package port_test

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// Second principal radius at the tube, by hand: ellipsoid 1 by 0.5 on its axis A²/h = 2, at r 0.6 √(1 − 0.36 × 0.75)/0.5 =
// 1.708801; cone of 30 deg half angle at 60 mm 60/cos 30° = 69.2820 mm.
func TestNormalRadius(t *testing.T) {
	at := func(w port.Wall, e float64) float64 { return port.Port{Radius: e}.NormalRadius(w) }
	ellipsoid := port.Wall{Surface: port.Ellipsoid, Radius: 1, Depth: 0.5}
	checktest.Printed(t, "ellipsoid, axis", at(ellipsoid, 0), "2.000000")
	checktest.Printed(t, "ellipsoid", at(ellipsoid, 0.6), "1.708801")
	checktest.Printed(t, "cone", at(port.Wall{Surface: port.Cone, Radius: 0.2, HalfApex: math.Pi / 6}, 0.06), "0.0692820")
	dish := port.Wall{Surface: port.Torisphere, Radius: 1, Crown: 2, Knuckle: 0.2}
	for name, got := range map[string]float64{"sphere": at(port.Wall{Surface: port.Sphere, Radius: 2}, 0.5), "crown": at(dish, 0.3), "crown, axis": at(dish, 0), "cylinder": at(port.Wall{Surface: port.Cylinder, Radius: 2}, 0)} {
		checktest.Close(t, name, got, 2, 1e-12)
	}
	if r := at(port.Wall{Surface: port.Flat, Radius: 1}, 0.1); !math.IsInf(r, 1) {
		t.Errorf("flat: %g", r)
	}
}
