package assess

import (
	"errors"
	"math"
	"os"
	"path/filepath"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/buckling"
)

// flown returns the model and the cases of the tank with a flight history.
func flown(t *testing.T) (*model, map[string]*loadCase) {
	t.Helper()
	const folder = "../../../../testdata/tanks"
	open := func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(folder, name)) }
	src, err := open("flight.toml")
	if err != nil {
		t.Fatal(err)
	}
	in, err := tank.Read("flight.toml", src, open)
	if err != nil {
		t.Fatal(err)
	}
	m, err := newModel(in)
	if err != nil {
		t.Fatal(err)
	}
	if m.masses, err = m.structure(); err != nil {
		t.Fatal(err)
	}
	cases, err := m.cases()
	if err != nil {
		t.Fatal(err)
	}
	byName := map[string]*loadCase{}
	for _, c := range cases {
		byName[c.name] = c
	}
	return m, byName
}

// On the pad by hand (computed): 700 N and the structure forward of the cut press,
// the liquid does not; the aft seam has the wind's moment and the liquid's head.
// Drained, the pressure is one atmosphere from outside and relieves nothing.
func TestStabilityLoadsByHand(t *testing.T) {
	m, cases := flown(t)
	pad := cases["pad"]
	ls, err := m.stabilityLoads(pad.states[0], pad)
	if err != nil {
		t.Fatal(err)
	}
	forward := 0.0
	for _, p := range m.masses {
		if p.Z > 0 && p.Z <= m.t.Cylinder.Length {
			forward += p.Mass
		}
	}
	at := ls[0]
	checktest.Close(t, "compression at the aft seam", at.compression, 700+9.80665*forward, 1e-9)
	checktest.Close(t, "moment there", at.moment, 80.97, 2e-3)
	s := pad.states[0]
	checktest.Close(t, "liquid head there", at.liquidHead, s.Liquid.Density*9.80665*s.SurfaceZ(), 1e-9)
	if at.pull != 0 || math.Abs(at.liquidPull) > 1e-6 || at.pressureLeast != 0 || !pad.standsBare() {
		t.Errorf("%+v, bare %v", at, pad.standsBare())
	}
	external, liquid, err := m.columnLoad(s, pad)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "column, external", external, at.compression, 1e-9)
	checktest.Close(t, "column, liquid", liquid, 9.80665*s.MassForward(0), 1e-9)
	drain := cases["drain"]
	if ls, err = m.stabilityLoads(drain.states[0], drain); err != nil || ls[0].pressureLeast != -101325 {
		t.Errorf("drained: %+v, %v", ls, err)
	}
}

// A section force that pulls relieves only where the case says it is always there.
func TestPullMayBeAbsent(t *testing.T) {
	m, cases := flown(t)
	c := *cases["fuelled"]
	c.sections[0].Force = 5000
	for _, present := range []bool{false, true} {
		c.present = present
		ls, err := m.stabilityLoads(c.states[0], &c)
		if err != nil {
			t.Fatal(err)
		}
		if (ls[0].pull > 0) != present || ls[0].compression > 1e-6 {
			t.Errorf("present %v: %+v", present, ls[0])
		}
	}
}

// Stability takes the smallest ullage pressure of the band, and the liquid's head as
// it stands.
func TestStabilityAtTheLeastPressure(t *testing.T) {
	m, cases := flown(t)
	c := *cases["fuelled"]
	full, err := m.stabilityLoads(c.states[0], &c)
	if err != nil {
		t.Fatal(err)
	}
	c.least = 1.2e5
	band, err := m.stabilityLoads(c.states[0], &c)
	if err != nil {
		t.Fatal(err)
	}
	if band[0].pressureLeast != 1.2e5 || full[0].pressureLeast != 2e5 || band[0].liquidHead != full[0].liquidHead || band[0].pressureMost != full[0].pressureMost {
		t.Errorf("%+v, with the whole pressure %+v", band[0], full[0])
	}
}

// Shear counts as four times as much compression in a cone that torsion does not
// buckle first: by hand R/t 100, 45 degrees, whole cone, (ρ/t)^0.25 (L/ρ)^0.5 is 4.10
// (computed). A slimmer one, and one under ten degrees, is refused.
func TestShearOnACone(t *testing.T) {
	cone := func(slender, degrees float64) buckling.Cone {
		return buckling.Cone{HalfAngle: degrees * math.Pi / 180, LargeRadius: 1, Thickness: 1 / slender}
	}
	got, err := shearOnCone(cone(100, 45), cone(100, 45), 250)
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "shear", got, 1000, 1e-12)
	for _, c := range []buckling.Cone{cone(100, 9.9), cone(100, 20), cone(1000, 45), cone(100, math.NaN())} {
		var out *check.RangeError
		if v, err := shearOnCone(c, c, 250); !errors.As(err, &out) || !math.IsNaN(v) {
			t.Errorf("%+v: %g, %v", c, v, err)
		}
	}
	if v, err := shearOnCone(cone(100, 9.9), cone(100, 9.9), 0); v != 0 || err != nil {
		t.Errorf("no shear: %g, %v", v, err)
	}
}

// A gust of 20 m/s is 245 Pa by hand; it presses on the wall on the pad, on no head,
// and nowhere else.
func TestGustOnThePad(t *testing.T) {
	m, cases := flown(t)
	checktest.Close(t, "gust", cases["pad"].gust, 245, 1e-9)
	got := m.checkExternal(cases["pad"])
	checktest.Close(t, "pressure from outside", got.Demand.Value, 245, 1e-9)
	for name, c := range cases {
		if name != "pad" && c.gust != 0 {
			t.Errorf("%s: %g Pa", name, c.gust)
		}
	}
	if r := m.checkHeadExternal(m.aft, cases["pad"].states[0], cases["pad"]); r.Status() != check.NotApplicable {
		t.Errorf("head: %v", r.Status())
	}
}
