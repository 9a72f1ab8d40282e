package assess

import (
	"testing"

	"proofsheet/report/check/checktest"
	"proofsheet/shell/revolution"
)

// Below radius over wall 10 a stress is raised by 1 + t/(2 r2): the membrane stress p R/t
// then covers Lamé's hoop stress at the bore of a thick tube down to 2.
func TestThickWallIsRaised(t *testing.T) {
	for x := 2.0; x < 10; x += 0.25 {
		q := revolution.Station{Slender: x, Membrane: revolution.Stress{Hoop: x}, Inside: revolution.Stress{Hoop: x}}
		ri, ro := x-0.5, x+0.5
		if lamé, got := (ro*ro+ri*ri)/(ro*ro-ri*ri), stressAt(&q).Hoop; !(got >= lamé) {
			t.Errorf("R/t %g: %g p, Lamé %g p", x, got, lamé)
		}
	}
	thin := revolution.Station{Slender: 10, Membrane: revolution.Stress{Hoop: 1}, Inside: revolution.Stress{Hoop: 3}}
	checktest.Close(t, "thin, membrane", stressAt(&thin).Hoop, 1, 1e-15)
	checktest.Close(t, "thin, bending", stressAt(&thin).HoopBending, 2, 1e-15)
}

// A mesh too coarse for its answer is refused.
func TestCoarseMesh(t *testing.T) {
	parts, err := revolution.Torisphere(100, 200, 12)
	if err != nil {
		t.Fatal(err)
	}
	build := func(elements int) error {
		var s revolution.Structure
		for _, p := range append(parts, revolution.Part{Curve: revolution.Line{From: revolution.Point{R: 100}, To: revolution.Point{R: 100, Z: 200}}}) {
			s.Segments = append(s.Segments, revolution.Segment{Curve: p.Curve, Thickness: 1, Modulus: 200000, Poisson: 0.3})
		}
		s.Supports = []revolution.Support{{Node: len(s.Segments), Axial: true, Radial: true, Rotation: true}}
		s.Mesh.Elements = elements
		m, err := revolution.New(s)
		if err != nil {
			t.Fatal(err)
		}
		l := revolution.Uniform(unitOfLoad)
		u, err := m.Solve(l)
		if err != nil {
			t.Fatal(err)
		}
		return fineEnough(m, u, l, meshLimit)
	}
	if err := build(0); err != nil {
		t.Errorf("the mesh as it is chosen: %v", err)
	}
	if build(4) == nil {
		t.Error("four elements are taken")
	}
}
