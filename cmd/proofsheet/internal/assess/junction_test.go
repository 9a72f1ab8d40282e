package assess_test

import (
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// Where pressure and load always act together, the smallest pressure of its band is
// tried with the load: under a strong compression a joint is worse for it.
func TestJunctionTriesTheLeastPressure(t *testing.T) {
	with := func(share float64) check.Result {
		return boost(t, func(c *tank.Case) {
			F := -900e3
			c.AxialForce, c.Present = &F, true
			least := share * *c.UllagePressure
			c.LeastUllagePressure = &least
		})["head.forward/junction"]
	}
	if full, third := with(1), with(0.3); !(third.Margin() < full.Margin()) {
		t.Errorf("margin %.4f with all of the pressure, %.4f with a third", full.Margin(), third.Margin())
	}
}

// A seam between courses close to a sharp corner is bent by it, and crossed by that
// stress with its own efficiency; far from it, it is not. Where its station is
// not said it may stand there.
func TestGirthSeamBesideACorner(t *testing.T) {
	with := func(stations string) check.Result {
		at := another("", "girth_seam")
		at[1] = strings.Replace(at[1], "full", "none", 1)
		return find(t, coneTank(t, plateTip, append(at, "girth_seam = \"k\"", "girth_seam = \"k\""+stations)...), "head.aft/junction@meop")
	}
	far, near, unsaid := with("\ngirth_stations = [\"300 mm\"]"), with("\ngirth_stations = [\"1 mm\"]"), with("")
	if !strings.Contains(near.Note, "girth seam between courses") || !(near.Margin() < far.Margin()) {
		t.Errorf("margin %.3f beside the corner, %.3f far from it; %s", near.Margin(), far.Margin(), near.Note)
	}
	if !(unsaid.Margin() <= near.Margin()) {
		t.Errorf("margin %.3f where the station is not said, %.3f at 1 mm", unsaid.Margin(), near.Margin())
	}
}

// Head and cylinder that grow by 12 and by 20 millionths a kelvin pull at each other
// at 45 degC by up to 200 GPa · 8e-6 · 25 = 40 MPa, which no check of the joint holds.
func TestHeadOfAnotherAlloy(t *testing.T) {
	src := "[material.n]\nfamily = \"ferritic\"\nyield = \"250 MPa\"\nultimate = \"450 MPa\"\nelastic_modulus = \"200 GPa\"\npoisson = 0.3\ndensity = \"7850 kg/m3\"\nexpansion = \"20e-6 1/K\"\nelongation = 0.2\nsource = \"invented\"\n"
	s := coneTank(t, plateTip, "[cylinder]\n", src+"[[case]]\nname = \"warm\"\nullage_pressure = \"5 bar\"\nfill = 0.1\ntemperature = \"45 degC\"\n[cylinder]\n",
		"align = \"middle\"\nmaterial = \"m\"", "align = \"middle\"\nmaterial = \"n\"")
	if r := find(t, s, "head.aft/junction@warm"); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "do not grow alike") {
		t.Errorf("warm: %v, %s", r.Status(), r.Reason())
	}
	if r := find(t, s, "head.aft/junction@meop"); r.Status() != check.Satisfied {
		t.Errorf("at 20 degC: %v, %s", r.Status(), r.Reason())
	}
}

// What the piping puts on a tube at a tip is not in the shell: said, never passed.
func TestLoadOnATip(t *testing.T) {
	src := `[[port]]
name = "drain"
on = "aft"
axis = "parallel"
radius = "0 mm"
tube = { outside_diameter = "64 mm", wall = "2 mm", under_tolerance = "0 mm", material = "m", seam = "none" }
outside = "60 mm"
weld = { outside_leg = "3 mm", groove = "full" }
`
	tip := "tip = { diameter = \"60 mm\", close = \"port\", port = \"drain\" }\n"
	build := func(more string) check.Result {
		one := strings.Replace(shellTank(2, 2, "shape = \"cone\"\nhalf_angle = \"30 deg\"\nforming = \"rolled\"\nsegment_seam = \"j\"\n"+tip), tip, "TIP", 1)
		one = strings.Replace(strings.Replace(one, tip, plateTip, 1), "TIP", tip, 1)
		one = strings.Replace(one, "yield = \"5 GPa\"\nultimate = \"20 GPa\"", "yield = \"250 MPa\"\nultimate = \"450 MPa\"", 1)
		return find(t, sheet(t, parse(t, "port.toml", one+src+more)), "head.aft/tip-junction@meop")
	}
	if r := build(""); r.Status() != check.Satisfied {
		t.Errorf("without a load: %v, %s", r.Status(), r.Reason())
	}
	if r := build("load = { force = \"200 N\", moment = \"15 N m\" }\n"); r.Status() != check.NotAssessed {
		t.Errorf("with a load: %v", r.Status())
	}
}

// Joints within 2.5 √(R t) of each other are named, both: 35.4 mm at R 100 mm and 2 mm.
func TestJointsThatInteract(t *testing.T) {
	notes := func(pairs ...string) string { return strings.Join(roundTank(t, pairs...).Notes, "\n") }
	for _, row := range [][3]string{
		{"length = \"600 mm\"", "length = \"35 mm\"", "The aft joint of the cylinder and its forward joint are 35 mm apart, less than 2.5 √(R t) = 35.36 mm"},
		{"align = \"middle\"", "align = \"middle\"\nstraight_flange = \"20 mm\"", "straight flange of 20 mm is shorter than 2.5 √(R t) = 35.36 mm"},
		{"girth_seam = \"j\"", "girth_seam = \"j\"\ngirth_stations = [\"30 mm\"]", "The aft joint and the girth seam at 30 mm are 30 mm apart"},
	} {
		if all := notes(row[0], row[1]); !strings.Contains(all, row[2]) {
			t.Errorf("no note says %q:\n%s", row[2], all)
		}
	}
	if all := notes("length = \"600 mm\"", "length = \"36 mm\""); strings.Contains(all, "disturb each other") {
		t.Errorf("36 mm apart they are said to interact:\n%s", all)
	}
}
