package assess

import (
	"os"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

// A plate of 60 mm closes the tip of a cone of 45 deg and 12 − 0.3 mm, at an angle: the joint there claims √(R t/cos α), by hand R
// 30 + 5.85/cos 45° = 38.2731 mm and t the nominal 12 mm, √(38.2731 × 12/0.707107) = 25.4856 mm, of which no port counts metal.
func TestTipClaimsItsZone(t *testing.T) {
	src, err := os.ReadFile("../../../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	in, err := tank.Read("demo.toml", src, nil)
	if err != nil {
		t.Fatal(err)
	}
	m, err := NewTrial(in)
	if err != nil {
		t.Fatal(err)
	}
	w := m.ports[0].wall
	checktest.Printed(t, "tip [mm]", w.Tip*1e3, "38.2731")
	checktest.Printed(t, "zone of the tip [mm]", w.InboardZone*1e3, "25.4856")
	// A port at 85 mm: s = 85/sin 45° = 120.208, to the tip 120.208 − 54.1264 − 25.4856 = 40.596 mm.
	p := m.ports[0].port
	p.Radius = 0.085
	r, err := p.Area(w, port.Load{Pressure: 1e6}, port.Strengths{Wall: 1e8, Tube: 1e8, EfficiencyMeridional: 1, EfficiencyTransverse: 1, EfficiencyTube: 1})
	if err != nil {
		t.Fatal(err)
	}
	checktest.Printed(t, "limit inboard [mm]", r.Meridional.Inboard.Limit*1e3, "40.596")
}
