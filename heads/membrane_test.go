package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check/checktest"
)

// Moss, Pressure Vessel Design Manual, p. 30 (read): the hoop at the rim of an
// ellipsoid turns to compression from R/h 1.42 up; exactly at sqrt 2. At 2:1 it is
// −p a, and it vanishes at r/a = 0.8165.
func TestEllipsoidHoopMoss(t *testing.T) {
	rim := func(aspect float64) float64 {
		ps := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 2, Aspect: aspect}).Points(4, 0)
		_, nθ, err := heads.Membrane(ps[len(ps)-1], 1, math.Pi)
		if err != nil {
			t.Fatal(err)
		}
		return nθ
	}
	if !(rim(1.414) > 0 && rim(1.415) < 0) {
		t.Errorf("hoop at the rim: %g at 1.414, %g at 1.415", rim(1.414), rim(1.415))
	}
	checktest.Close(t, "2:1 rim", rim(2), -1, 1e-12)
	r := math.Sqrt(2.0 / 3)
	pt, err := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 2, Aspect: 2}).PointAt(r, 0)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "change of sign, φ in degrees", pt.Phi/deg, "35.26")
	if _, nθ, _ := heads.Membrane(pt, 1, math.Pi*r*r); math.Abs(nθ) > 1e-9 {
		t.Errorf("hoop at r/a 0.8165 is %g", nθ)
	}
}

// Membrane hoop at the start of a knuckle over p R, by membrane theory: L = D, r 0.06 D −14.7;
// r 0.10 D −8.0; L 0.8 D, r 0.154 D −2.56: computed.
func TestKnuckleHoop(t *testing.T) {
	for _, row := range []struct {
		L, r float64
		want string
	}{{1, 0.06, "-14.7"}, {1, 0.1, "-8.0"}, {0.8, 0.154, "-2.56"}} {
		h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: row.L, KnuckleRadius: row.r})
		pt := h.Pieces(10, 0)[1][0]
		_, nθ, err := heads.Membrane(pt, 1, math.Pi*pt.R*pt.R)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, "knuckle", nθ/0.5, row.want)
	}
}

// Johnson, Advanced Structural Mechanics, p. 185 (read): in a conical tank full to
// its rim the hoop force is greatest at half the depth. Hung from its rim, its
// meridional force is greatest at three quarters (Timoshenko and Woinowsky-Krieger,
// recalled): ρ a H² tan α/(4 cos α) and 3 ρ a H² tan α/(16 cos α).
func TestConicalTankJohnson(t *testing.T) {
	const w, H, α = 9810.0, 2.0, 40 * deg // ρ a [N/m3], depth, half angle
	h := head(t, "cone", heads.Geometry{InsideDiameter: 2 * H * math.Tan(α), HalfAngle: α})
	var hoop, mer, atHoop, atMer float64
	for _, pt := range h.Points(2000, 0) {
		y := H - pt.X
		p := w * (H - y)
		nφ, nθ, err := heads.Membrane(pt, p, math.Pi*pt.R*pt.R*p+w*h.VolumeFromApex(y))
		if err != nil {
			t.Fatal(err)
		}
		checktest.Close(t, "N_φ", nφ, y*math.Tan(α)/(2*math.Cos(α))*w*(H-2*y/3), 1e-9)
		if nθ > hoop {
			hoop, atHoop = nθ, y
		}
		if nφ > mer {
			mer, atMer = nφ, y
		}
	}
	checktest.Close(t, "place of the largest hoop", atHoop, H/2, 1e-3) // spacing of the points
	checktest.Close(t, "place of the largest meridional force", atMer, 3*H/4, 1e-3)
	checktest.Close(t, "largest hoop", hoop, w*H*H*math.Tan(α)/(4*math.Cos(α)), 1e-6)
	checktest.Close(t, "largest meridional force", mer, 3*w*H*H*math.Tan(α)/(16*math.Cos(α)), 1e-6)
}

// Bhandari, Design of Machine Elements, ex. 22.2 (read): V 0.25 m3, length twice the
// diameter, hemispheres, p 5 MPa, 340 MPa over 4 -> D 492.372511, hemispheres 7.240772 mm.
func TestHemisphereBhandari(t *testing.T) {
	const D = 0.492372511
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: D})
	checktest.Close(t, "volume", math.Pi*D*D/4*2*D+2*h.Volume(), 0.25, 3e-9)
	ps := h.Points(5, 0)
	nφ, nθ, err := heads.Membrane(ps[2], 5e6, math.Pi*ps[2].R*ps[2].R*5e6)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "wall (mm)", nφ/(340e6/4)*1000, "7.240772")
	checktest.Close(t, "both ways alike", nθ, nφ, 1e-12)
}

// Towler and Sinnott, Chemical Engineering Design, 2013, p. 579 (read): a hemisphere
// of 7/17 of the cylinder's wall grows as much as the cylinder, ν 0.3.
func TestEqualDilationTowlerSinnott(t *testing.T) {
	const ν = 0.3
	ps := head(t, "hemisphere", heads.Geometry{InsideDiameter: 2}).Points(4, 0)
	rim := ps[len(ps)-1]
	nφ, nθ, err := heads.Membrane(rim, 1, math.Pi)
	if err != nil {
		t.Fatal(err)
	}
	rim.R1 = math.Inf(1)
	cφ, cθ, err := heads.Membrane(rim, 1, math.Pi)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "ratio of walls", (nθ-ν*nφ)/(cθ-ν*cφ), 7.0/17, 1e-12)
}

// Limits and balances under gas: N_φ = p r2/2 everywhere; the table of closed forms
// for sphere, cone and cylinder; on the axis both are p r2/2.
func TestMembraneGas(t *testing.T) {
	const p = 2e6
	for name, h := range every(t) {
		for _, pt := range h.Points(40, 0.003) {
			nφ, nθ, err := heads.Membrane(pt, p, math.Pi*pt.R*pt.R*p)
			if err != nil {
				t.Fatal(name, err)
			}
			if pt.R == 0 {
				nφ, nθ, _ = heads.Membrane(pt, p, 0)
			}
			checktest.Close(t, name+" N_φ", nφ, p*pt.R2/2, 1e-12)
			checktest.Close(t, name+" N_θ", nθ, p*pt.R2*(1-pt.R2/(2*pt.R1)), 1e-9)
			bigφ, bigθ, _ := heads.Membrane(heads.Point{R: 7 * pt.R, Phi: pt.Phi, R1: 7 * pt.R1, R2: 7 * pt.R2}, p*3/49, math.Pi*pt.R*pt.R*p*3)
			if pt.R > 0 {
				checktest.Close(t, name+" units", bigφ, nφ*3/7, 1e-12)
				checktest.Close(t, name+" units", bigθ, nθ*3/7, 1e-9)
			}
		}
	}
}

func TestMembraneRefuses(t *testing.T) {
	nan := math.NaN()
	good := heads.Point{R: 1, Phi: 1, R1: 2, R2: 1 / math.Sin(1)}
	for _, row := range []struct {
		pt   heads.Point
		p, V float64
	}{
		{heads.Point{R: 1, R1: math.Inf(1), R2: math.Inf(1)}, 1, 1},
		{good, nan, 1}, {good, 1, nan}, {good, 1, math.Inf(1)},
		{heads.Point{R: nan, Phi: 1, R1: 1, R2: 1}, 1, 1},
		{heads.Point{R: 1, Phi: 1, R1: 0, R2: 1}, 1, 1},
		{heads.Point{R: 0, Phi: 0, R1: 1, R2: 1}, 1, 1},
	} {
		if a, b, err := heads.Membrane(row.pt, row.p, row.V); err == nil || !math.IsNaN(a) || !math.IsNaN(b) {
			t.Errorf("Membrane(%+v, %g, %g) = %g, %g, %v", row.pt, row.p, row.V, a, b, err)
		}
	}
}
