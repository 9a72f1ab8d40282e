package life_test

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

func crack(shape, depth float64) life.SurfaceCrack {
	if depth == 0 { // a crack in a half space
		return life.SurfaceCrack{Depth: 0.001, HalfLength: 0.001 / shape, Thickness: math.Inf(1), HalfWidth: math.Inf(1)}
	}
	return life.SurfaceCrack{Depth: depth, HalfLength: depth / shape, Thickness: 1, HalfWidth: math.Inf(1)}
}

// Unit values of an open crack-growth code of the Australian defence research organisation, read: deepest point, a/t = 0.
func TestNewmanRajuUnitValues(t *testing.T) {
	for _, row := range []struct{ shape, want float64 }{{1, 0.6625413488689131}, {0.5, 0.8959634744787476}} {
		checktest.Close(t, "deepest", value(t)(crack(row.shape, 0).Shape(life.AtDeepest)), row.want, 1e-15)
	}
}

// F/√Q of a wide plate worked apart from this package; at the face and at the deepest point.
func TestNewmanRajuTable(t *testing.T) {
	depths := []float64{0, 0.2, 0.4, 0.6, 0.8}
	for _, row := range []struct {
		shape      float64
		face, deep []string
	}{
		{0.2, []string{".5209", ".5590", ".6724", ".8560", "1.0940"}, []string{"1.0589", "1.1221", "1.3007", "1.5612", "1.8477"}},
		{0.4, []string{".6617", ".6928", ".7840", ".9270", "1.1012"}, []string{".9512", ".9834", "1.0724", "1.1955", "1.3150"}},
		{0.6, []string{".7181", ".7423", ".8135", ".9247", "1.0599"}, []string{".8427", ".8603", ".9085", ".9737", "1.0335"}},
		{1.0, []string{".7288", ".7437", ".7877", ".8582", ".9494"}, []string{".6625", ".6676", ".6814", ".7000", ".7171"}},
	} {
		for i, d := range depths {
			checktest.Printed(t, "face", value(t)(crack(row.shape, d).Shape(life.AtFace)), row.face[i])
			checktest.Printed(t, "deepest", value(t)(crack(row.shape, d).Shape(life.AtDeepest)), row.deep[i])
		}
	}
}

// Raju and Newman 1979, finite elements, recalled: surface correction F of the deepest and the face point; the
// equation is within 5 % of them.
func TestRajuNewman1979(t *testing.T) {
	for _, row := range []struct{ shape, depth, face, deep float64 }{
		{0.2, 0.2, 0.617, 1.173}, {0.2, 0.8, 1.190, 1.851}, {1, 0.2, 1.174, 1.049},
	} {
		scale := math.Sqrt(1 + 1.464*math.Pow(row.shape, 1.65)) // √Q
		checktest.Close(t, "face", value(t)(crack(row.shape, row.depth).Shape(life.AtFace))*scale, row.face, 0.05)
		checktest.Close(t, "deepest", value(t)(crack(row.shape, row.depth).Shape(life.AtDeepest))*scale, row.deep, 0.05)
	}
}

// A textbook leak-before-burst problem, read: 60 mm wall, 300 MPa, K = 1.1 (2/π) σ √(π a), K_Ic 88: a_c 55.85 mm, below the wall, so no leak
// before burst. The surface crack at 0.8 of the wall says the same by its point at the face.
func TestTextbookVessel(t *testing.T) {
	a := math.Pow(88/(1.1*2/math.Pi*300), 2) / math.Pi
	checktest.Printed(t, "a_c, cm", a*100, "5.585")
	s := life.SurfaceCrack{Depth: 0.8 * 0.060, HalfLength: 0.8 * 0.060, Thickness: 0.060, HalfWidth: math.Inf(1)}
	if k := value(t)(s.Worst(300 * MPa)); k < 88*MPa {
		t.Errorf("K at 0.8 of the wall is %g MPa m^0.5, below the toughness", k/MPa)
	}
	s.Depth, s.HalfLength = a, a
	v, err := s.Intensity(300*MPa, life.AtDeepest) // a/t 0.93: outside
	refused(t, "depth", v, err)
}

// A leak-before-burst problem of a course in Plymouth, inputs read: Ti-6Al-4V, K 115.4 MPa m^0.5, 0.75 of 910 MPa, a/c 0.4, wall 40 mm. Worked by hand:
// a_cr 9.22 mm; through crack of c 9.10 mm, which a wall of 3.64 mm has when the flaw breaks through.
func TestPlymouthVessel(t *testing.T) {
	const σ = 0.75 * 910 * MPa
	s := life.SurfaceCrack{Depth: 9.22e-3, HalfLength: 9.22e-3 / 0.4, Thickness: 0.040, HalfWidth: math.Inf(1)}
	checktest.Close(t, "K at 9.22 mm", value(t)(s.Intensity(σ, life.AtDeepest)), 115.4*MPa, 1e-3) // three digits of the depth
	c := value(t)(life.CriticalHalfLength(1e6, 3.64e-3, σ, 115.4*MPa))                            // a flat plate
	checktest.Printed(t, "c, mm", c*1e3, "9.10")
	checktest.Printed(t, "wall, mm", c*0.4*1e3, "3.64")
}

// A rocket course's worked problem, read: K 150 MPa m^0.5, an edge crack of Y 1.12 at the yield of 390 MPa runs from 37.5 mm. A surface crack as shallow as the range allows,
// a/c 0.2, in a thick wall has 1.0589/1.12 of that K: the edge crack is its bound.
func TestRocketCourseCrack(t *testing.T) {
	a := math.Pow(150/(1.12*390), 2) / math.Pi
	checktest.Printed(t, "a_cr, mm", a*1e3, "37.54")
	s := life.SurfaceCrack{Depth: a, HalfLength: a / 0.2, Thickness: math.Inf(1), HalfWidth: math.Inf(1)}
	checktest.Close(t, "K", value(t)(s.Worst(390*MPa)), 1.0589/1.12*150*MPa, 1e-4)
}

func TestSurfaceCrackOutsideItsRange(t *testing.T) {
	good := life.SurfaceCrack{Depth: 2e-3, HalfLength: 5e-3, Thickness: 5e-3, HalfWidth: 0.1}
	value(t)(good.Shape(life.AtFace))
	for name, change := range map[string]func(*life.SurfaceCrack){
		"deeper than long":  func(s *life.SurfaceCrack) { s.HalfLength = 1.9e-3 },
		"too long":          func(s *life.SurfaceCrack) { s.HalfLength = 10.1e-3 },
		"beyond 0.8":        func(s *life.SurfaceCrack) { s.Thickness = 2.49e-3 },
		"narrow plate":      func(s *life.SurfaceCrack) { s.HalfWidth = 9.9e-3 },
		"no depth":          func(s *life.SurfaceCrack) { s.Depth = 0 },
		"depth missing":     func(s *life.SurfaceCrack) { s.Depth = math.NaN() },
		"wall missing":      func(s *life.SurfaceCrack) { s.Thickness = math.NaN() },
		"width missing":     func(s *life.SurfaceCrack) { s.HalfWidth = math.NaN() },
		"length is missing": func(s *life.SurfaceCrack) { s.HalfLength = math.NaN() },
	} {
		s := good
		change(&s)
		v, err := s.Shape(life.AtDeepest)
		refused(t, name, v, err)
	}
	for name, edge := range map[string]life.SurfaceCrack{
		"0.8 of the wall": {Depth: 4e-3, HalfLength: 1e-2, Thickness: 5e-3, HalfWidth: math.Inf(1)},
		"as deep as long": {Depth: 1e-3, HalfLength: 1e-3, Thickness: 5e-3, HalfWidth: math.Inf(1)},
		"a/c of 0.2":      {Depth: 1e-3, HalfLength: 5e-3, Thickness: 5e-3, HalfWidth: math.Inf(1)},
	} {
		if _, err := edge.Shape(life.AtFace); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	v, err := good.Intensity(math.NaN(), life.AtFace)
	refused(t, "stress", v, err)
	v, err = good.Worst(-1)
	refused(t, "compression", v, err)
	wide := good
	wide.HalfWidth = math.Inf(1)
	if value(t)(good.Shape(life.AtFace)) <= value(t)(wide.Shape(life.AtFace)) {
		t.Error("a narrow plate is no worse than a wide one")
	}
	big := life.SurfaceCrack{Depth: 7 * 2e-3, HalfLength: 7 * 5e-3, Thickness: 7 * 5e-3, HalfWidth: 7 * 0.1}
	checktest.Close(t, "change of units", value(t)(big.Intensity(3.0/49, life.AtFace)), value(t)(good.Intensity(1, life.AtFace))*3*math.Sqrt(7)/49, 1e-14)
}

// K of either point grows with the depth for every shape, so that 0.8 of the wall is the worst.
func TestIntensityGrowsWithDepth(t *testing.T) {
	for _, shape := range []float64{0.2, 0.4, 0.6, 0.8, 1} {
		for _, φ := range []float64{life.AtFace, life.AtDeepest} {
			last := 0.0
			for a := 0.02; a <= 0.8; a += 0.02 {
				k := value(t)(crack(shape, a).Intensity(1, φ))
				if k <= last {
					t.Errorf("a/c %g, φ %g: K falls at a/t %g", shape, φ, a)
				}
				last = k
			}
		}
	}
}
