package report

import "proofsheet/report/check"

// A Section is the tank as the sheet draws it: a cut along the axis, z forward
// from the aft seam, r from the axis. The drawing scales it and mirrors it.
type Section struct {
	Outlines   []Outline
	Rings      []Outline // bars round the cylinder, on its wall
	Covers     []Cover   // flat heads that are bolted on; their plates are among the outlines
	Ports      []PortOutline
	Seams      []SeamMark
	Lengthwise []SeamLine
	Levels     []Level
	Dimensions []Dimension
	Labels     []Label
	Worst      *Label // place of the least margin among the checks that have a place, or nil
}

// A Point is a place of the section.
type Point struct {
	Z float64 // station [m]
	R float64 // distance from the axis [m]; negative on the far side
}

// An Outline is the metal of one part: its inside and outside surfaces, both on
// the side r ≥ 0 and in the order of the meridian: an aft head from apex to seam,
// the cylinder from aft to forward, a forward head from seam to apex. The
// outlines stand in that order too, so that their inside surfaces join.
type Outline struct {
	Part            string
	Inside, Outside []Point
}

// A PortOutline is a tube turned about the axis into the plane of the cut, on
// the side its clock puts it: up to 180° on the side r ≥ 0, beyond on the other.
type PortOutline struct {
	Name            string
	Part            string  // it stands on: "cylinder", "head.aft", "head.forward"
	Inner, Outer    Point   // ends of the tube's axis, inside and outside the tank, r ≥ 0
	Clock           float64 // about the tank axis [rad]
	OutsideDiameter float64 // of the tube [m]
	InsideDiameter  float64 // of the tube [m]
	PadDiameter     float64 // outside diameter of the pad [m]; 0: none
	PadThickness    float64 // of the pad [m]; 0: none
	Wall            Point   // where the tube's axis meets the wall's mid-surface
}

// A Cover is what is drawn of a flat head that is bolted on, beside its plate.
type Cover struct {
	Part            string  // of the outline: "head.forward"
	Inside, Outside float64 // stations of its faces [m]
	Diameter        float64 // to which the plate is drawn [m]
	Circle, Hole    float64 // diameters of the bolt circle and of a hole [m]
	Seal            float64 // diameter of the seal [m]
	Count           int     // of the bolts
}

// A SeamMark is a weld seam that goes round the tank.
type SeamMark struct {
	Name string // joint of the tank file
	At   Point  // on the outside surface
}

// A SeamLine is a weld seam along the meridian, at a clock of the part.
type SeamLine struct {
	Part, Name string  // of the outline; joint of the tank file
	Clock      float64 // about the tank axis, clockwise for one who looks forward from aft [rad]
}

// A Level is the free surface of the liquid in one case, across the cut: from
// r < 0 to r > 0. The first is that of the case with the least margin, where it has
// one: the liquid is shaded up to it.
type Level struct {
	Case   string
	Points []Point
}

// A Dimension is a measured distance. One along z is drawn below the tank, one
// across it beside the tank.
type Dimension struct {
	Name     string // "inside diameter"; may be empty
	From, To Point
	Value    check.Quantity // printed exactly as given, in display units
}

// A Label is a remark with a leader to a place of the wall.
type Label struct {
	At   Point
	Text string
}
