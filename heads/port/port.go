package port

import "math"

// A Fit says how the tube stands in the wall.
type Fit int

const (
	// Through: the tube passes the wall and projects inside.
	Through Fit = iota
	// Flush: the tube fills the hole and ends at the inside face.
	Flush
	// On: the tube abuts the outside face; the hole is its bore.
	On
)

// A Pad is a doubler round the tube: round in the flat of the wall, or, with a
// Length, elliptical, or, with a Lip, of the same width all round the hole's true
// outline. It is centred on the tube's axis.
type Pad struct {
	OutsideDiameter float64 // D_p, along the wall; of an ellipse its size across the meridional plane; with a Lip not used [m]
	Length          float64 // of an ellipse, in the meridional plane; 0 = round [m]
	Lip             float64 // width beyond the tube's outline, along the wall; 0 = round or elliptical [m]
	Thickness       float64 // t_e, least [m]
	Leg             float64 // leg of the fillet round its outer edge [m]
}

// An Insert is a round plate, thicker than the wall, let into it in place of the
// wall and joined to it by a butt weld; the tube stands in its middle.
type Insert struct {
	OutsideDiameter float64 // 2 s_i, along the wall, to the butt weld or where its taper begins [m]
	Thickness       float64 // t_i, least corroded; not under the wall's [m]
	Efficiency      float64 // of its butt weld, by inspection only; 0 to 1 [-]
}

// A Port is a tube in a wall.
type Port struct {
	Name            string
	OutsideDiameter float64 // of the tube [m]
	TubeWall        float64 // t_n, least corroded [m]
	InsideWall      float64 // t_i, least, corroded on both faces, of what projects inside; needed when Inside > 0 [m]
	Radius          float64 // e, tank axis to where the tube axis pierces the mid-surface; heads only [m]
	Station         float64 // cylinder only: from the aft seam [m]
	Clock           float64 // angle round the tank axis; of a tube beside the radius its direction [rad]
	Offset          float64 // x0, cylinder only: tube axis beside the radius at Clock and parallel to it, towards rising clock [m]
	Parallel        bool    // tube axis parallel to the tank axis; otherwise normal to the wall
	Fit             Fit
	Outside         float64 // projection from the wall's outer face, along the tube, at its short side [m]
	Inside          float64 // the same inside [m]
	OutsideLeg      float64 // fillet leg between tube and wall (or pad), outside [m]
	InsideLeg       float64 // the same inside [m]
	Groove          float64 // depth of a partial groove weld, 0 = none [m]
	FullGroove      bool    // full penetration, stated
	Pad             *Pad    // nil = none
	Insert          *Insert // nil = none
	Sizes           Sizes
}

// Sizes are the walls by which welds are sized: nominal, the corrosion off, not the
// least ones on which strength rests; 0 where only the least one is known.
type Sizes struct {
	Tube, Wall, Pad float64 // of the tube, of what it is welded into, of the pad [m]
}

// Chords is the size of a port's hole in its two planes.
type Chords struct {
	Obliquity                            float64 // φ, tube axis to wall normal [rad]
	Meridional, Transverse               float64 // d, bore chords [m]
	OutsideMeridional, OutsideTransverse float64 // C, outside-diameter chords: the cut-out [m]
	Outboard, Inboard                    float64 // bore half-chords in the meridional plane [m]
	OutsideOutboard, OutsideInboard      float64 // outside-diameter half-chords in the meridional plane [m]
	// Half-chords in the transverse plane, rising clock first: of bore and outside diameter [m].
	Sides, OutsideSides [2]float64
	Hillside            bool // the obliquity lies in the transverse plane
	Cautions            []string
}

// A Load is what the wall carries at the port in one case.
type Load struct {
	Pressure   float64 // highest across the wall over port and reinforcement, liquid head included [Pa]
	Hoop       float64 // N_θ, largest tensile membrane resultant across the meridional plane; 0 = pressure rule alone [N/m]
	Meridional float64 // N_φ, the same across the transverse plane; 0 = pressure rule alone [N/m]
	// What pressure and line loads ask across the same planes where each has factors of its
	// own: the resultant that by itself takes as much of S; 0 = Hoop and Meridional [N/m].
	HoopAsked, MeridionalAsked float64
	// Largest membrane stress, and at a face with bending, under hole and weld by a
	// numerical shell, either sign; needed for a load from outside where [Port.BesideRim],
	// not a number where it is not known [Pa].
	Membrane, Face float64
	Convex         bool    // the pressure acts on the convex side: Required is used and half the area is asked
	Required       float64 // thickness required of the wall without the port, by the rule for flat heads or for external pressure; flat and Convex only [m]
}

// asked returns the resultants that are set against S, across the meridional and the
// transverse plane [N/m].
func (l Load) asked() (hoop, meridional float64) {
	hoop, meridional = l.Hoop, l.Meridional
	if l.HoopAsked != 0 {
		hoop = l.HoopAsked
	}
	if l.MeridionalAsked != 0 {
		meridional = l.MeridionalAsked
	}
	return hoop, meridional
}

// mostAsked returns the larger of both [N/m].
func (l Load) mostAsked() float64 { return math.Max(l.asked()) }

// Strengths are the allowable stresses of one port; the welded values where an
// alloy softens, also for wall beyond the softened zone.
type Strengths struct {
	Wall, Tube, Pad float64 // S_v, S_n, S_p; Pad only with a pad [Pa]
	// Efficiency E_1 of the seam through the hole, by inspection only; 1 in
	// solid plate. In the meridional and in the transverse plane.
	EfficiencyMeridional, EfficiencyTransverse float64 // [-]
	EfficiencyTube                             float64 // E_t, of the tube's own long seam; 1 for a seamless tube, 0.3 to 1 [-]
}
