package loads

import (
	"fmt"
	"math"
	"sort"

	"proofsheet/report/check"
)

// StandardGravity is g0, which turns a load factor into an acceleration
// [m/s2]. Source: exact by definition, 3rd CGPM (1901).
const StandardGravity = 9.80665

// An Interior is the inside of a tank, a solid of revolution about z, which
// points forward and starts at the aft seam.
type Interior interface {
	// Bounds returns the aftmost and foremost inside stations [m].
	Bounds() (lo, hi float64)
	// Breaks returns the stations between which the meridian is smooth [m].
	Breaks() []float64
	// Radii returns the inside radius of the wall at z, and the radius of an
	// inward head that stands in the tank there, else 0 [m].
	Radii(z float64) (inner, outer float64)
	// Volume returns the whole inside volume [m3].
	Volume() float64
	// VolumeBelow returns the inside volume aft of the plane z [m3].
	VolumeBelow(z float64) float64
}

// LevelForVolume returns the station z [m] of a flat level that has the volume
// v [m3] aft of it, by Newton's method kept inside a bracket:
//
//	V(z) = v, dV/dz = π (r² − r_in²)
//
// It holds for 0 ≤ v ≤ the whole volume; otherwise the error is a
// [*check.RangeError] and the level is NaN.
//
// Source: V(z) is the interior's own; the root is independent of its shape.
func LevelForVolume(in Interior, v float64) (float64, error) {
	total := in.Volume()
	if err := check.Within("loads.LevelForVolume", "liquid volume [m3]", v, 0, total, "the inside of the tank"); err != nil {
		return math.NaN(), err
	}
	a, b := in.Bounds()
	if v == 0 {
		return a, nil
	}
	if v == total {
		return b, nil
	}
	for _, z := range in.Breaks() { // narrow the bracket to one smooth piece
		if z <= a || z >= b {
			continue
		}
		if in.VolumeBelow(z) < v {
			a = z
		} else {
			b = z
		}
	}
	return newtonLevel(in, v, a, b)
}

// newtonLevel solves V(z) = v between a and b [m].
func newtonLevel(in Interior, v, a, b float64) (float64, error) {
	z, tolerance := (a+b)/2, 1e-14*(math.Abs(a)+math.Abs(b))
	for range 200 {
		f := in.VolumeBelow(z) - v
		if f < 0 {
			a = z
		} else {
			b = z
		}
		inner, outer := in.Radii(z)
		next := z - f/(math.Pi*(outer*outer-inner*inner))
		if !(next > a && next < b) { // also catches a slope of zero
			next = (a + b) / 2
		}
		if math.Abs(next-z) <= tolerance || b-a <= tolerance {
			return next, nil
		}
		z = next
	}
	return math.NaN(), fmt.Errorf("no level found for a liquid volume of %.4g m3: the volume of the tank does not rise steadily with the level", v)
}

// pieces returns the stations between which the interior is smooth, ends
// included, in rising order [m].
func pieces(in Interior) []float64 {
	lo, hi := in.Bounds()
	zs := []float64{lo}
	breaks := append([]float64(nil), in.Breaks()...)
	sort.Float64s(breaks)
	for _, z := range breaks {
		if z > zs[len(zs)-1] && z < hi {
			zs = append(zs, z)
		}
	}
	return append(zs, hi)
}

// largest returns the greatest value of f over the smooth pieces of zs that
// lie between z1 and z2, and where [m]: it samples each piece and closes in on
// the best sample by golden section.
func largest(zs []float64, z1, z2 float64, f func(z float64) float64) (most, at float64) {
	most, at = f(z1), z1
	take := func(z float64) {
		if v := f(z); v > most {
			most, at = v, z
		}
	}
	take(z2)
	for i := 1; i < len(zs); i++ {
		a, b := math.Max(zs[i-1], z1), math.Min(zs[i], z2)
		if a >= b {
			continue
		}
		const samples = 16
		step, best, bestAt := (b-a)/samples, math.Inf(-1), a
		for k := 0; k <= samples; k++ {
			z := a + float64(k)*step
			if v := f(z); v > best {
				best, bestAt = v, z
			}
		}
		take(bestAt)
		take(golden(f, math.Max(a, bestAt-step), math.Min(b, bestAt+step)))
	}
	return most, at
}

// golden returns where f is greatest between a and b, f having one hill there.
func golden(f func(float64) float64, a, b float64) float64 {
	const ratio = 0.6180339887498949 // (√5 − 1)/2
	c, d := b-ratio*(b-a), a+ratio*(b-a)
	fc, fd := f(c), f(d)
	for range 40 { // the bracket shrinks by 0.618 each time: 4e-9 of it is left
		if fc > fd {
			b, d, fd = d, c, fc
			c = b - ratio*(b-a)
			fc = f(c)
		} else {
			a, c, fc = c, d, fd
			d = a + ratio*(b-a)
			fd = f(d)
		}
	}
	return (a + b) / 2
}
