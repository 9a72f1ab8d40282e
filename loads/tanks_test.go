package loads_test

import (
	"math"
	"testing"
)

// bottom is a head by its depth a [m], its radius at height h above its lowest
// inside point, and its volume up to h, as the published volumes have them.
type bottom struct {
	a      float64
	radius func(h float64) float64
	volume func(h float64) float64
	breaks []float64 // heights
}

func cone(R, a float64) bottom {
	return bottom{a, func(h float64) float64 { return R * h / a },
		func(h float64) float64 { return math.Pi * R * R * h * h * h / (3 * a * a) }, nil}
}

func ellipsoid(R, a float64) bottom {
	return bottom{a, func(h float64) float64 { return R / a * math.Sqrt(math.Max(0, h*(2*a-h))) },
		func(h float64) float64 { return math.Pi * R * R * h * h * (a - h/3) / (a * a) }, nil}
}

func dish(R, a float64) bottom {
	s := (a*a + R*R) / (2 * a)
	return bottom{a, func(h float64) float64 { return math.Sqrt(math.Max(0, h*(2*s-h))) },
		func(h float64) float64 { return math.Pi * h * h * (s - h/3) }, nil}
}

func flat() bottom {
	return bottom{0, func(float64) float64 { return 0 }, func(float64) float64 { return 0 }, nil}
}

// torisphere has the crown radius f D and the knuckle radius k D; the knuckle's
// volume is ∫ π (b + √(q² − y²))² dy in closed form, b = R − q.
func torisphere(R, f, k float64) bottom {
	L, q, b := 2*R*f, 2*R*k, R-2*R*k
	α := math.Asin((1 - 2*k) / (2 * (f - k)))
	a1, a2 := L*(1-math.Cos(α)), q*math.Cos(α)
	a := a1 + a2
	crown := func(h float64) float64 { return math.Pi * h * h * (L - h/3) }
	integral := func(y float64) float64 { // from 0 to y below the seam
		return b*b*y + b*(y*math.Sqrt(q*q-y*y)+q*q*math.Asin(y/q)) + q*q*y - y*y*y/3
	}
	return bottom{a,
		func(h float64) float64 {
			if h <= a1 {
				return math.Sqrt(math.Max(0, h*(2*L-h)))
			}
			return b + math.Sqrt(q*q-(a-h)*(a-h))
		},
		func(h float64) float64 {
			if h <= a1 {
				return crown(h)
			}
			return crown(a1) + math.Pi*(integral(a2)-integral(a-h))
		}, []float64{a1}}
}

// tank is an interior of two such heads on a cylinder, z = 0 at the aft seam;
// an inward head stands in the cylinder.
type tank struct {
	R, length    float64
	aft, forward bottom
	aftInward    bool
}

func (k tank) Bounds() (lo, hi float64) {
	if k.aftInward {
		return 0, k.length + k.forward.a
	}
	return -k.aft.a, k.length + k.forward.a
}

func (k tank) Breaks() []float64 {
	lo, hi := k.Bounds()
	zs := []float64{lo, 0, k.length, hi}
	if k.aftInward {
		zs = append(zs, k.aft.a)
	}
	for _, h := range k.aft.breaks {
		if k.aftInward {
			zs = append(zs, k.aft.a-h)
		} else {
			zs = append(zs, h-k.aft.a)
		}
	}
	for _, h := range k.forward.breaks {
		zs = append(zs, hi-h)
	}
	return zs
}

func (k tank) Radii(z float64) (inner, outer float64) {
	switch {
	case z < 0:
		return 0, k.aft.radius(math.Max(0, z+k.aft.a))
	case z > k.length:
		return 0, k.forward.radius(math.Max(0, k.length+k.forward.a-z))
	case k.aftInward && z < k.aft.a:
		return k.aft.radius(k.aft.a - z), k.R
	}
	return 0, k.R
}

func (k tank) Volume() float64 { _, hi := k.Bounds(); return k.VolumeBelow(hi) }

func (k tank) VolumeBelow(z float64) float64 {
	lo, hi := k.Bounds()
	z = math.Min(math.Max(z, lo), hi)
	section := math.Pi * k.R * k.R
	v := 0.0
	if k.aftInward {
		v = -(k.aft.volume(k.aft.a) - k.aft.volume(math.Max(0, k.aft.a-z)))
	} else {
		v = k.aft.volume(math.Min(z, 0) + k.aft.a)
	}
	v += section * math.Min(math.Max(z, 0), k.length)
	if z > k.length {
		v += k.forward.volume(k.forward.a) - k.forward.volume(hi-z)
	}
	return v
}

// turned is the same tank with its ends changed round, z counted from the
// other end.
type turned struct{ of tank }

func (k turned) Bounds() (lo, hi float64) { a, b := k.of.Bounds(); return -b, -a }
func (k turned) Breaks() []float64 {
	var zs []float64
	for _, z := range k.of.Breaks() {
		zs = append(zs, -z)
	}
	return zs
}
func (k turned) Radii(z float64) (inner, outer float64) { return k.of.Radii(-z) }
func (k turned) Volume() float64                        { return k.of.Volume() }
func (k turned) VolumeBelow(z float64) float64          { return k.Volume() - k.of.VolumeBelow(-z) }

// must returns v and ends the test on an error.
func must[T any](t testing.TB, v T, err error) T {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}
