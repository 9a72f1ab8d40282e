package assess

import (
	"os"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads"
	"proofsheet/report/check/checktest"
)

// Two ports that a line load could be taken to help: one on the hanging head, whose hoop
// grows where the meridian is pulled less (N_θ = r_2 (p − N_φ/r_1)), and one on a cylinder that
// is pressed along its axis by a load that may be absent.
const relievedPorts = `[[port]]
name = "outlet"
on = "aft"
radius = "60 mm"
tube = { outside_diameter = "20 mm", wall = "2 mm", material = "plate", seam = "none" }
fit = "through"
outside = "40 mm"
inside = "4 mm"
weld = { outside_leg = "3 mm", inside_leg = "3 mm", groove = "full" }

[[port]]
name = "side"
on = "cylinder"
station = "240 mm"
tube = { outside_diameter = "20 mm", wall = "2 mm", material = "plate", seam = "none" }
fit = "through"
outside = "40 mm"
inside = "4 mm"
weld = { outside_leg = "3 mm", inside_leg = "3 mm", groove = "full" }

`

func TestNoLineLoadRelievesAPort(t *testing.T) {
	src, err := os.ReadFile("../../../../testdata/tanks/rings.toml")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.NewReplacer(`rule = "vessel"`, `rule = "flight"`, `lateral_load_factor = 0.1`, `lateral_load_factor = 0.6`,
		`axial_compression = "2 kN"`, `axial_compression = "40 kN"`).Replace(strings.Replace(string(src), "[[case]]", relievedPorts+"[[case]]", 1))
	in, err := tank.Read("x.toml", []byte(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	m, err := NewTrial(in)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range m.cases {
		if c.name != "burnout" {
			continue
		}
		s := c.states[0]
		outlet, side := m.ports[0], m.ports[1]
		got, err := m.portLoad(outlet, s, c)
		if err != nil {
			t.Fatal(err)
		}
		pt, err := m.aft.strength.PointAt(0.06, m.aft.least/2)
		if err != nil {
			t.Fatal(err)
		}
		b := m.body(c)
		b.Radius = func(float64) float64 { return pt.R }
		f, err := s.FreeBody(m.station(m.aft, pt.X), b)
		if err != nil || !(f.Moment > 0) {
			t.Fatal(f, err)
		}
		pull := f.Ullage + f.LiquidMost
		_, pressed, _ := heads.Membrane(pt, got.Pressure, pull+min(f.LoadLeast-2*f.Moment/pt.R, 0)) // its own weight, which pulls, may be away
		pulled, _, _ := heads.Membrane(pt, got.Pressure, pull+f.LoadMost+2*f.Moment/pt.R)
		checktest.Close(t, "hoop on the side that bending presses", got.Hoop, pressed, 1e-9)
		checktest.Close(t, "meridian on the side that it pulls", got.Meridional, pulled, 1e-9)
		if got, err = m.portLoad(side, s, c); err != nil {
			t.Fatal(err)
		}
		axial, _, load, _, _ := s.WallForce(side.z, m.body(c))
		if !(load < 0) {
			t.Fatalf("%.4g N/m presses nothing", load)
		}
		checktest.Close(t, "cylinder, the load away", got.Meridional, axial, 1e-12)
	}
}
