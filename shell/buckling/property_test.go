package buckling_test

// What must hold for every shell.

import (
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
