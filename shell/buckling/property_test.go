package buckling_test

// What must hold for every shell.

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/report/check"
	"proofsheet/shell/buckling"
)

// anyTube draws a shell in the range of every method.
func anyTube(t *rapid.T) (buckling.Cylinder, buckling.Metal) {
	r := rapid.Float64Range(0.05, 2).Draw(t, "R")
	c := buckling.Cylinder{
		InsideRadius: r, Thickness: r / rapid.Float64Range(20, 900).Draw(t, "R/t"), Length: r * rapid.Float64Range(0.6, 12).Draw(t, "L/R"),
	}
	return c, rapid.SampledFrom([]buckling.Metal{steel304, aluminium, softMetal, metal(200, 0.3, 250, 5, "ferritic")}).Draw(t, "metal")
}

func allowable(c buckling.Cylinder, m buckling.Metal) float64 {
	_, low, err := c.Resistance(m, buckling.Options{Factor: 1.5}).External()
	if err != nil {
		return 0
	}
	return low.Allowable
}

func TestLongerIsNeverStronger(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, m := anyTube(t)
		longer := c
		longer.Length *= rapid.Float64Range(1, 3).Draw(t, "longer")
		if a, b := allowable(c, m), allowable(longer, m); !(a > 0 && b > 0 && b <= a*(1+1e-9)) {
			t.Fatalf("allowable %g, longer %g", a, b)
		}
	})
}

func TestThickerIsNeverWeaker(t *testing.T) {
	s := buckling.Station{Compression: 5e3, Moment: 1e3, Shear: 1e3, PressureLeast: -100, PressureMost: 1e4, LiquidHead: 1e4}
	rapid.Check(t, func(t *rapid.T) {
		c, m := anyTube(t)
		thicker := c
		thicker.Thickness *= rapid.Float64Range(1, 2).Draw(t, "thicker")
		if a, b := allowable(c, m), allowable(thicker, m); !(a > 0 && b >= a*(1-1e-9)) {
			t.Fatalf("allowable %g, thicker %g", a, b)
		}
		use := func(c buckling.Cylinder) float64 {
			u, err := c.Resistance(m, buckling.Options{Factor: 1.5}).Use(c.Line(s, 1.5), s.PressureLeast, s.PressureMost)
			if err != nil {
				t.Fatal(err)
			}
			return u.Ratio
		}
		if a, b := use(c), use(thicker); !(b <= a*(1+1e-3)) { // the mid-wall radius moves with the wall
			t.Fatalf("use %g, thicker %g", a, b)
		}
	})
}

// More load or less relief never raises the margin, and no two lists differ.
func TestMoreLoadIsNeverBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c, m := anyTube(t)
		r := c.Resistance(m, buckling.Options{Factor: 1.5})
		p := rapid.Float64Range(1, 1e6).Draw(t, "p")
		more := p * rapid.Float64Range(1, 5).Draw(t, "more")
		if a, b := r.CheckExternal(p).Margin(), r.CheckExternal(more).Margin(); b > a {
			t.Fatalf("margin %g under %g, %g under %g", a, p, b, more)
		}
		s := buckling.Station{
			Compression: rapid.Float64Range(0, 1e5).Draw(t, "C"), Moment: rapid.Float64Range(0, 1e4).Draw(t, "M"),
			Shear: rapid.Float64Range(0, 1e4).Draw(t, "V"), PressureLeast: rapid.Float64Range(-1e3, 1e5).Draw(t, "p_min"), PressureMost: 1e5,
		}
		worse := s
		worse.Compression *= rapid.Float64Range(1, 3).Draw(t, "C'")
		worse.Moment *= rapid.Float64Range(1, 3).Draw(t, "M'")
		worse.PressureLeast -= rapid.Float64Range(0, 1e4).Draw(t, "less")
		for _, zero := range []bool{true, false} {
			a, b := r.CheckCompression(s, zero), r.CheckCompression(worse, zero)
			if a.Status() == check.NotSatisfied && b.Status() == check.Satisfied || b.Margin() > a.Margin()*(1+1e-9)+1e-9 {
				t.Fatalf("margin %g, with more load %g", a.Margin(), b.Margin())
			}
			if b.Status() == check.Satisfied && !(b.Margin() >= 0) {
				t.Fatalf("satisfied with margin %g", b.Margin())
			}
		}
	})
}

// The same for heads: a thicker one is never weaker.
func TestThickerHeadIsNeverWeaker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.Float64Range(0.05, 2).Draw(t, "R")
		wall := r / rapid.Float64Range(40, 900).Draw(t, "R/t")
		more := rapid.Float64Range(1, 2).Draw(t, "thicker")
		depth := r / rapid.Float64Range(1, 3).Draw(t, "aspect")
		α := rapid.Float64Range(0.18, 1.04).Draw(t, "half angle")
		for name, h := range map[string]func(t float64) buckling.HeadShape{
			"hemisphere": func(t float64) buckling.HeadShape { return buckling.NewHemisphere(r, t) },
			"ellipsoid":  func(t float64) buckling.HeadShape { return buckling.NewEllipsoid(r, depth, t) },
			"torisphere": func(t float64) buckling.HeadShape { return buckling.NewTorisphere(2*r, t) },
			"cone": func(t float64) buckling.HeadShape {
				return buckling.Cone{HalfAngle: α, SmallRadius: 0.2 * r, LargeRadius: r, Thickness: t}
			},
		} {
			a, errA := buckling.Lowest(h(wall).External(steel304, 1.5))
			b, errB := buckling.Lowest(h(wall*more).External(steel304, 1.5))
			if errA != nil || errB != nil || !(b.Allowable >= a.Allowable*(1-1e-9)) {
				t.Fatalf("%s: %g, thicker %g: %v, %v", name, a.Allowable, b.Allowable, errA, errB)
			}
		}
	})
}

// Whatever numbers arrive, a check ends, and what it calls satisfied is so.
func TestAnyNumbers(t *testing.T) {
	odd := rapid.OneOf(rapid.Float64Range(1e-4, 3), rapid.Float64(), rapid.SampledFrom([]float64{0, -1, math.NaN(), math.Inf(1), math.Inf(-1), 1e300, 1e-300}))
	rapid.Check(t, func(t *rapid.T) {
		d := func(name string) float64 { return odd.Draw(t, name) }
		c := buckling.Cylinder{InsideRadius: d("R"), Thickness: d("t"), Length: d("L"), Ends: [2]buckling.End{{Kind: buckling.Dished, Depth: d("depth")}, {}}}
		m := steel304
		if rapid.Bool().Draw(t, "odd metal") {
			m.Modulus, m.Poisson = d("E"), d("nu")
		}
		r := c.Resistance(m, buckling.Options{Factor: 1.5})
		s := buckling.Station{Compression: d("C"), Moment: d("M"), Shear: d("V"), PressureLeast: d("p"), PressureMost: d("p most"), LiquidHead: d("head")}
		for _, got := range []check.Result{
			r.CheckCompression(s, true), r.CheckExternal(d("p_ext")), r.CheckColumn(buckling.Column{Radius: d("R"), Thickness: d("t"), Length: d("L"), Factor: 1}, buckling.ColumnLoad{External: d("C")}),
			buckling.CheckHeadExternal("head.aft", "Aft head", buckling.NewEllipsoid(d("R"), d("h"), d("t")), m, d("p"), 1.5),
			buckling.CheckHeadExternal("head.aft", "Aft head", buckling.Cone{HalfAngle: d("α"), LargeRadius: d("R"), Thickness: d("t")}, m, d("p"), 1.5),
		} {
			if got.Status() == check.Satisfied && !(got.Margin() >= 0) || got.Status() == check.NotAssessed && got.Reason() == "" {
				t.Fatalf("%s: %v, margin %g", got.ID, got.Status(), got.Margin())
			}
		}
	})
}
