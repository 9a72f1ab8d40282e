package assess

import (
	"math"
	"slices"

	"proofsheet/heads"
)

// An interior is the inside of the tank along its axis, z forward from the aft
// seam, nominal walls: cylinder between two heads, either of which may bulge
// inward. It serves loads as its Interior.
type interior struct {
	radius float64 // of the cylinder, inside [m]
	length float64 // between the head seams [m]
	aft    end
	fwd    end
}

// An end is a head on its seam with its straight flange.
type end struct {
	head   heads.Head
	radius float64 // of its straight flange, inside [m]
	flange float64 // straight flange [m]
	inward bool
}

// reach returns how far the end goes beyond its seam, away from the cylinder
// [m].
func (e end) reach() float64 {
	if e.inward {
		return e.flange
	}
	return e.flange + e.head.Depth()
}

// volume returns what the end adds to the tank, the straight flange included;
// an inward head takes away [m3].
func (e end) volume() float64 {
	v := math.Pi * e.radius * e.radius * e.flange
	if e.inward {
		return v - e.head.Volume()
	}
	return v + e.head.Volume()
}

// radii returns the radii between which liquid stands at a distance u beyond
// the seam, positive away from the cylinder [m].
func (e end) radii(u float64) (inner, outer float64) {
	if !e.inward {
		if u <= e.flange {
			return 0, e.radius
		}
		return 0, e.head.Radius(u - e.flange)
	}
	if x := e.flange - u; x < e.head.Depth() { // x from the rim, towards the apex
		return e.head.Radius(x), e.radius
	}
	return 0, e.radius
}

// beyond returns the volume farther than u beyond the seam [m3], for u from
// minus the depth of an inward head up to the reach. What an inward head takes
// out of the cylinder is counted here, negative.
func (e end) beyond(u float64) float64 {
	area := math.Pi * e.radius * e.radius
	if !e.inward {
		if u <= e.flange {
			return area*(e.flange-math.Max(u, 0)) + e.head.Volume()
		}
		return e.head.VolumeFromApex(math.Max(e.reach()-u, 0))
	}
	straight := area * math.Max(e.flange-math.Max(u, 0), 0)
	depth := e.head.Depth()
	x := math.Max(math.Min(e.flange-u, depth), 0)
	return straight - (e.head.Volume() - e.head.VolumeFromApex(depth-x))
}

// Bounds returns the lowest and highest inside point [m].
func (in *interior) Bounds() (lo, hi float64) {
	return -in.aft.reach(), in.length + in.fwd.reach()
}

// Breaks returns where the inside changes its piece, in rising order [m].
func (in *interior) Breaks() []float64 {
	lo, hi := in.Bounds()
	zs := []float64{lo, 0, in.length, hi}
	for _, x := range in.aft.head.Breaks() {
		zs = append(zs, -in.aft.station(x))
	}
	for _, x := range in.fwd.head.Breaks() {
		zs = append(zs, in.length+in.fwd.station(x))
	}
	zs = append(zs, -in.aft.station(in.aft.head.Depth()), in.length+in.fwd.station(in.fwd.head.Depth()), -in.aft.flange, in.length+in.fwd.flange)
	return sortedWithin(zs, lo, hi)
}

// station returns the distance beyond the seam of a point of the head x from
// its rim [m]; negative inside the cylinder.
func (e end) station(x float64) float64 {
	if e.inward {
		return e.flange - x
	}
	return e.flange + x
}

// Radii returns the radii between which liquid stands at z [m].
func (in *interior) Radii(z float64) (inner, outer float64) {
	switch {
	case z < 0:
		return in.aft.radii(-z)
	case z > in.length:
		return in.fwd.radii(z - in.length)
	}
	outer = in.radius
	if in.aft.inward {
		inner, _ = in.aft.radii(-z)
	}
	if in.fwd.inward && inner == 0 {
		inner, _ = in.fwd.radii(z - in.length)
	}
	return inner, outer
}

// Volume returns the volume of the tank inside [m3].
func (in *interior) Volume() float64 {
	return in.aft.volume() + math.Pi*in.radius*in.radius*in.length + in.fwd.volume()
}

// VolumeBelow returns the volume aft of the plane z [m3], exact.
func (in *interior) VolumeBelow(z float64) float64 {
	lo, hi := in.Bounds()
	z = math.Min(math.Max(z, lo), hi)
	cylinder := math.Pi * in.radius * in.radius * math.Min(math.Max(z, 0), in.length)
	return in.aft.beyond(-z) + cylinder + in.fwd.volume() - in.fwd.beyond(z-in.length)
}

// sortedWithin returns the stations strictly between lo and hi, rising, each
// once, with lo and hi at the ends [m].
func sortedWithin(zs []float64, lo, hi float64) []float64 {
	slices.Sort(zs)
	out := []float64{lo}
	for _, z := range zs {
		if z > out[len(out)-1]+1e-9 && z < hi-1e-9 {
			out = append(out, z)
		}
	}
	return append(out, hi)
}
