package heads

// A Geometry is a head as the tank file gives it. Every dimension is of the
// face inside the tank: the concave face of an outward head, the convex face
// of an inward one. A number that was not given is 0.
type Geometry struct {
	InsideDiameter float64 // D, at the seam, nominal [m]
	Depth          float64 // h, of the inside face, without the straight flange [m]
	HalfAngle      float64 // α, wall to tank axis [rad]
	Aspect         float64 // D/(2h) [-]
	CrownRadius    float64 // L [m]
	KnuckleRadius  float64 // r [m]
	TipDiameter    float64 // of a truncated cone, inside [m]
	StraightFlange float64 // length of the cylindrical part of the head [m]
	Thickness      float64 // nominal wall [m]
	Inward         bool    // pressure on the convex side
}

// A Shape is one kind of head: its name, the keys it takes and its constructor.
type Shape struct {
	Name     string                       // as in the tank file
	Takes    []string                     // keys of the tank file that mean something to it
	Requires [][]string                   // of each list at least one key must be given
	New      func(Geometry) (Head, error) // refuses, in words, what cannot be built

	vessel, european func(rule) ([]term, error) // thickness by the two families of rules
}

// Shapes are the heads the program knows. A new one is a file and a row.
var Shapes = []Shape{hemisphereShape, ellipsoidShape, torisphereShape, coneShape, toriconeShape, flatShape}

// FindShape returns the shape of that name.
func FindShape(name string) (Shape, bool) {
	for _, s := range Shapes {
		if s.Name == name {
			return s, true
		}
	}
	return Shape{}, false
}

// A Head is a head of revolution. x runs along the tank axis from the seam
// plane, where the head without its straight flange begins, towards the apex
// or tip at x = Depth, also for an inward head. Offsets are measured from the
// inside face through the wall, square to it, positive towards the face that
// is away from the tank's contents: half the wall is the mid-surface.
type Head interface {
	// Kind returns the name of the shape.
	Kind() string
	// Geometry returns the head with every dimension that its shape has filled in.
	Geometry() Geometry
	// Depth returns the depth of the inside face, without the flange [m].
	Depth() float64
	// Volume returns the volume between inside face and seam plane [m3], without
	// the flange, exact and positive; an inward head takes it from the tank.
	Volume() float64
	// VolumeFromApex returns the part of Volume within h [m] of apex or tip [m3],
	// exact; NaN outside 0 ≤ h ≤ Depth.
	VolumeFromApex(h float64) float64
	// Radius returns the radius of the inside face at x [m]; NaN outside 0 ≤ x ≤ Depth.
	Radius(x float64) float64
	// AxialAt returns x [m] of the parallel surface at radius r [m] and offset [m].
	AxialAt(r, offset float64) (x float64, err error)
	// PointAt returns the point of the parallel surface at radius r [m] and offset [m].
	PointAt(r, offset float64) (Point, error)
	// Points returns n points or more, apex or tip first, on the parallel surface at
	// offset [m], none twice, every piece with the same number; nil when there is no
	// such surface.
	Points(n int, offset float64) []Point
	// Pieces returns the same by piece, each with both of its ends; offset in [m].
	Pieces(n int, offset float64) [][]Point
	// Breaks returns x [m] of the inside face where one piece meets the next.
	Breaks() []float64
}

// A Point is a point of a meridian.
type Point struct {
	X     float64 // distance from the seam plane towards the apex [m]
	R     float64 // distance from the axis [m]
	Phi   float64 // φ, wall normal to tank axis [rad]
	R1    float64 // principal radius along the meridian [m], +Inf where straight
	R2    float64 // principal radius round the axis [m], r/sin φ
	Piece string  // crown | knuckle | cone | ellipsoid | sphere | flat
}
