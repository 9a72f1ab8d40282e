package tank

import "fmt"

// PadWind is the gust taken on a pad, beside what loads are written [m/s];
// common practice for a small launch site on a day it is used.
const PadWind = 20.0

// A ground is a ready-made ground case: what it takes where nothing is written.
// All of it is common practice, to be replaced by what was measured or agreed.
type ground struct {
	ullage         float64 // across the wall [Pa]
	ullageText     string
	ullageWhy      string
	axial, lateral float64 // [-]
	loadWhy        string
	full           bool // else empty
}

// grounds are the ready-made ground cases by their kind.
//
// Source: common practice: crane factor 2, 2 to 3 g vertical and 1.5 to 2 g
// along on the road, 10 to 30 g at the landing of a small rocket.
var grounds = map[string]ground{
	"pad": {ullageText: "0 bar", ullageWhy: "vented on the pad", full: true,
		axial: 1, loadWhy: "standing still"},
	"transport": {ullageText: "0 bar", ullageWhy: "vented in transport",
		axial: 2, lateral: 3, loadWhy: "lying on a road vehicle, 3 g down and 2 g along together"},
	"lift": {ullageText: "0 bar", ullageWhy: "vented while it is lifted",
		axial: 2, lateral: 2, loadWhy: "crane factor 2, along and across together for a sling in any direction"},
	"drain": {ullage: -101325, ullageText: "-1.01325 bar", ullageWhy: "drained with its vent closed, down to nothing inside",
		axial: 1, loadWhy: "standing still"},
	"landing": {ullageText: "0 bar", ullageWhy: "vented before it lands",
		axial: 30, loadWhy: "30 g, the upper end of what small rockets see"},
}

const practice = ", common practice"

// groundUllage fills in the ullage pressure of a ready-made case.
func (r *reader) groundUllage(path string, c *Case, g ground) {
	p := g.ullage
	c.UllagePressure = &p
	r.defaulted(path, g.ullageText, g.ullageWhy+practice)
}

// groundRest fills in load factors and liquid of a ready-made case.
func (r *reader) groundRest(table string, c *Case, g ground) {
	r.orNumber(join(table, "axial_load_factor"), &c.AxialLoadFactor, g.axial, fmt.Sprintf("%g", g.axial), g.loadWhy+practice)
	r.orNumber(join(table, "lateral_load_factor"), &c.LateralLoadFactor, g.lateral, fmt.Sprintf("%g", g.lateral), g.loadWhy+practice)
	if r.anyOf(table, "liquid_mass", "fill", "level") == "" {
		fill, why := 0.0, "empty"
		if g.full {
			fill, why = 1-r.t.Contents.LeastUllage, "full at the warmest, less its least ullage"
			c.Fullest = true
		}
		c.Fill = &fill
		r.defaulted(join(table, "fill"), fmt.Sprintf("%g", fill), why+practice)
	} else {
		r.oneOf(table, "write one; 0 is allowed", "liquid_mass", "fill", "level")
	}
	switch written := r.anyOf(table, "bending_moment", "shear_force", "loads"); {
	case c.Kind != "pad":
	case written == "":
		r.defaulted(join(table, "bending_moment"), fmt.Sprintf("wind of %g m/s on the tank alone", PadWind),
			"drag coefficient 1.2"+practice+"; wind on what stands above is missing, write bending_moment and shear_force")
	default:
		r.defaulted(join(table, "kind"), fmt.Sprintf("wind of %g m/s on the tank alone, added to %s", PadWind, written),
			"drag coefficient 1.2"+practice+"; where what is written holds the wind on the tank too, write ground = true in place of kind")
	}
}
