package port

// A Surface is the kind of wall a port stands in.
type Surface int

const (
	// NoSurface is the zero value; nothing is assessed on it.
	NoSurface Surface = iota
	// Cylinder is the tank's cylinder.
	Cylinder
	// Cone is the plain part of a conical or toriconical head.
	Cone
	// Sphere is a hemisphere or a part of one.
	Sphere
	// Ellipsoid is a half ellipsoid of revolution.
	Ellipsoid
	// Torisphere is a spherical crown with its knuckle.
	Torisphere
	// Flat is a flat head.
	Flat
)

// String returns the surface's name as it is printed.
func (s Surface) String() string {
	names := [...]string{"unknown surface", "cylinder", "cone", "sphere", "ellipsoid", "torisphere", "flat"}
	if s < 0 || int(s) >= len(names) {
		return names[0]
	}
	return names[s]
}

// A Wall is the part a port stands in, described by its mid-surface: inside
// dimension, corroded, plus half the wall. A field that the surface does not use
// is left at 0.
type Wall struct {
	Surface   Surface
	Thickness float64 // t, least corroded wall at the port [m]
	Radius    float64 // mid-surface radius: cylinder, sphere; equator of ellipsoid and torisphere; large end of cone; edge of flat [m]
	Depth     float64 // ellipsoid: mid-surface semi-axis along the tank axis [m]
	HalfApex  float64 // cone: angle between wall and tank axis [rad]
	Crown     float64 // torisphere: mid-surface crown radius [m]
	Knuckle   float64 // torisphere, and a cone with KnuckleAtEdge: mid-surface knuckle radius [m]
	Length    float64 // cylinder: between the seams to the heads [m]
	Tip       float64 // mid-surface radius where a cone, sphere or flat is cut off toward the axis; 0 = runs to the apex [m]
	Edge      float64 // mid-surface radius where this piece ends outboard (knuckle tangent of a toricone); 0 = at Radius [m]

	// Zones along the wall claimed by a joint's own reinforcement, not to be
	// counted twice: outboard edge (cylinder: forward) and tip (cylinder: aft).
	OutboardZone, InboardZone float64 // [m]
	Inward                    bool    // the concave face is away from the contents
	KnuckleAtEdge             bool    // the piece ends outboard in a knuckle

	// Flat, bolted on: the plate goes on past its rim at Radius, up to where its
	// seal bears inside the bolts; 0: welded in at the rim [m].
	Seal float64
}
