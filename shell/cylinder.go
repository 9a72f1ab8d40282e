package shell

import (
	"errors"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Cylinder is a plain cylindrical shell.
type Cylinder struct {
	InsideRadius float64 // R, corroded [m]
	Thickness    float64 // t, least wall [m]
	Length       float64 // between head seams [m]
}

// Seams are the joint efficiencies that act in a cylinder, with their names.
type Seams struct {
	Long, Girth           float64 // E_l, E_g [-]
	LongJoint, GirthJoint string  // as the sheet calls them
}

// A Condition is what loads the cylinder in one case.
type Condition struct {
	Pressure              float64 // p, highest over the part [Pa]
	AxialMost, AxialLeast float64 // N_x from pressure and liquid, by free body, over the part [N/m]
	LoadMost, LoadLeast   float64 // N_x from line loads alone, both sides of bending [N/m]
	PressureLeast         float64 // smallest simultaneous pressure / pressure [-]
	Present               bool    // the smallest pressure is certain: 0 is not tried
}

// Allowables are the limits of the wall and of its welds.
type Allowables struct {
	Parent, Zone        material.Limits // away from welds, and in the softened zone without efficiency
	SeamLong, SeamGirth material.Limits // lower of parent and zone; the check applies the efficiency
	ZoneKnown           error           // why the zone cannot be assessed, or nil
}

// CheckHoop sets the hoop stress against the long seam.
func (c Cylinder) CheckHoop(cond Condition, a Allowables, s Seams) check.Result {
	return check.NotMade("cylinder/hoop", "Cylinder: hoop stress", errors.New("not assessed"))
}

// CheckLongitudinal sets the axial stress against the girth seams.
func (c Cylinder) CheckLongitudinal(cond Condition, a Allowables, s Seams) check.Result {
	return check.NotMade("cylinder/longitudinal", "Cylinder: axial stress", errors.New("not assessed"))
}

// CheckEquivalent sets the equivalent stress against wall and weld zone.
func (c Cylinder) CheckEquivalent(cond Condition, a Allowables, s Seams) check.Result {
	return check.NotMade("cylinder/equivalent", "Cylinder: equivalent stress", errors.New("not assessed"))
}

// CheckThickness sets the wall against the rule's required thickness.
func (c Cylinder) CheckThickness(rule material.Rule, cond Condition, a Allowables, s Seams) check.Result {
	return check.NotMade("cylinder/thickness", "Cylinder: required thickness", errors.New("not assessed"))
}
