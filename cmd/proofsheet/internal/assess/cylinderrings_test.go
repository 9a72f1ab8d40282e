package assess_test

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

const threeRings = `rings = { count = 3, width = "4 mm", height = "25 mm" }`

// lightTank returns the light tank that collapses in its drain, with lines after its
// long seam and pairs put in place of others.
func lightTank(t *testing.T, lines string, pairs ...string) *report.Sheet {
	t.Helper()
	src, err := os.ReadFile(filepath.Join(tanks, "drain.toml"))
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(src), "long_seam = \"seam\"\n", "long_seam = \"seam\"\n"+lines+"\n", 1)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("no %q in the tank", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return sheet(t, parse(t, "drain.toml", text))
}

// Three rings let the light tank stand its drain. They change nothing of what holds
// the pressure from inside, thrust or bending where no wind presses on the wall, and weigh what they weigh.
func TestRingsAgainstADrain(t *testing.T) {
	bare, with := lightTank(t, ""), lightTank(t, threeRings)
	for id, want := range map[string]check.Status{
		"cylinder/external@drain": check.Satisfied, "cylinder/compression@drain": check.Satisfied,
		"cylinder/rings@meop": check.Satisfied, "cylinder/rings@drain": check.Satisfied, "cylinder/rings@proof": check.Satisfied,
	} {
		if r := find(t, with, id); r.Status() != want {
			t.Errorf("%s is %v: %s", id, r.Status(), r.Reason())
		}
	}
	if r := find(t, bare, "cylinder/external@drain"); r.Status() != check.NotSatisfied {
		t.Errorf("without rings %v", r.Status())
	}
	for _, id := range []string{"cylinder/hoop@meop", "cylinder/equivalent@meop", "cylinder/thickness@meop", "cylinder/compression@meop", "cylinder/column@pad"} {
		if a, b := find(t, bare, id), find(t, with, id); math.Abs(a.Capacity.Value/b.Capacity.Value-1) > 1e-9 {
			t.Errorf("%s: capacity %g with rings, %g without", id, b.Capacity.Value, a.Capacity.Value)
		}
	}
	ρ := 7900.0 // of austenitic steel
	checktest.Close(t, "mass of the rings", quantity(t, with, "dry_mass")-quantity(t, bare, "dry_mass"), 3*ρ*2*math.Pi*(0.15+0.0012+0.0125)*0.004*0.025, 0.01)
	if !strings.Contains(strings.Join(with.Notes, "\n"), "they count against pressure from outside only") {
		t.Error("no note says what the rings count for")
	}
}

// The bending beside a ring by hand: with A reduced to the wall's radius,
// F = 2 p (1 − ν/2) A/(A β + 2 t), M = F/(4 β), σ = 6 M/t² (Timoshenko, recalled).
func TestRingBendingByHand(t *testing.T) {
	r := find(t, lightTank(t, threeRings), "cylinder/rings@proof")
	in := map[string]float64{}
	for _, q := range r.Inputs {
		in[q.Symbol] = q.Value
	}
	const R, wall, ν = 0.15 + 0.0011/2, 0.0011, 0.27
	A := 0.004 * 0.025 * math.Pow(R/(R+wall/2+0.0125), 2)
	β := math.Pow(3*(1-ν*ν), 0.25) / math.Sqrt(R*wall)
	F := 2 * in["p"] * (1 - ν/2) * A / (A*β + 2*wall)
	checktest.Close(t, "bending beside the ring", math.Abs(in["σ_φb"]), 6*F/(4*β)/(wall*wall), 0.01)
}

// A weak ring, one that trips, one on a port: the cylinder stands what it stands at its
// full length. Where the closed form does not hold the wall beside the ring is not assessed.
func TestRingsThatDoNotCount(t *testing.T) {
	bare := quantity(t, lightTank(t, ""), "cylinder.external_allowable")
	for name, row := range map[string]struct {
		lines  string
		status check.Status // of cylinder/rings
		counts bool
		why    string
	}{
		"weak":               {`rings = { count = 3, width = "4 mm", height = "1 mm" }`, check.Satisfied, false, ""},
		"trips":              {`rings = { count = 3, width = "1.5 mm", height = "29 mm" }`, check.Satisfied, false, ""},
		"inside":             {`rings = { count = 3, width = "4 mm", height = "25 mm", side = "inside" }`, check.Satisfied, true, ""},
		"beside the seam":    {`rings = { stations = ["20 mm", "450 mm"], width = "4 mm", height = "25 mm" }`, check.NotAssessed, true, "2.5 sqrt(R t)"},
		"close together":     {`rings = { stations = ["300 mm", "320 mm", "600 mm"], width = "4 mm", height = "25 mm" }`, check.NotAssessed, true, "2.5 sqrt(R t)"},
		"on the girth seam":  {threeRings + "\ngirth_seam = \"seam\"\ngirth_stations = [\"452 mm\"]", check.NotAssessed, false, "stands on the girth seam"},
		"girth seam unknown": {threeRings + "\ngirth_seam = \"seam\"", check.NotAssessed, false, "girth_stations"},
	} {
		s := lightTank(t, row.lines)
		r := find(t, s, "cylinder/rings@meop")
		if r.Status() != row.status || !strings.Contains(r.Reason(), row.why) {
			t.Errorf("%s: cylinder/rings is %v: %s", name, r.Status(), r.Reason())
		}
		if p := quantity(t, s, "cylinder.external_allowable"); (p > bare*(1+1e-9)) != row.counts || p < bare*(1-1e-9) {
			t.Errorf("%s: stands %g Pa, %g without rings", name, p, bare)
		}
		if strings.Contains(find(t, s, "cylinder/external@drain").Note, "rings, not counted") == row.counts && row.status == check.NotAssessed {
			t.Errorf("%s: the sheet does not say that the rings are not counted", name)
		}
	}
	port := lightTank(t, threeRings, "[head.aft]", `[[port]]
name = "tap"
on = "cylinder"
station = "460 mm"
tube = { outside_diameter = "20 mm", wall = "2 mm", material = "plate", seam = "none" }
weld = { outside_leg = "2 mm", groove = "full" }

[head.aft]`)
	if r := find(t, port, "cylinder/rings@meop"); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "meets port tap") || !strings.Contains(r.Reason(), "write cylinder.rings.stations that keep more than ") {
		t.Errorf("on a port: %v, %s", r.Status(), r.Reason())
	}
	mixed := lightTank(t, `rings = { count = 3, width = "4 mm", height = "25 mm", material = "bar" }`, "[joint.seam]", "[material.bar]\nalloy = \"6061-T6\"\n\n[joint.seam]")
	if r := find(t, mixed, "tank/weld-metals"); r.Status() != check.NotAssessed {
		t.Errorf("rings of aluminium on steel: %v", r.Status())
	}
}

// A girth seam in the bending beside a ring counts with its efficiency; farther off it
// does not.
func TestRingBesideASeam(t *testing.T) {
	margin := func(at string) float64 {
		s := lightTank(t, threeRings+"\ngirth_seam = \"weak\"\ngirth_stations = [\""+at+"\"]", "[joint.seam]", "[joint.weak]\nkind = \"double butt\"\n\n[joint.seam]")
		return find(t, s, "cylinder/rings@meop").Margin()
	}
	far, near := margin("550 mm"), margin("460 mm")
	if !(near < far) {
		t.Errorf("margin %g beside a seam, %g far from one", near, far)
	}
}

// Rings bring welds and bending of their own into life, leak before burst and the growth
// of a flaw: never a better answer than without them.
func TestLifeWithRings(t *testing.T) {
	src, err := os.ReadFile(filepath.Join(tanks, "life.toml"))
	if err != nil {
		t.Fatal(err)
	}
	of := func(lines string) *report.Sheet {
		return sheet(t, parse(t, "life.toml", strings.Replace(string(src), "long_seam = \"long\"\n", "long_seam = \"long\"\n"+lines+"\n", 1)))
	}
	bare, with := of(""), of(`rings = { count = 2, width = "8 mm", height = "40 mm" }`)
	for _, id := range []string{"tank/life", "tank/leak-before-burst", "tank/flaw-growth"} {
		a, b := find(t, bare, id), find(t, with, id)
		if b.Status() != check.Satisfied && b.Status() != check.NotSatisfied || !(b.Margin() <= a.Margin()*(1+1e-9)) {
			t.Errorf("%s: %v with margin %g, %g without rings: %s", id, b.Status(), b.Margin(), a.Margin(), b.Reason())
		}
	}
	if note := find(t, with, "tank/life").Note; !strings.Contains(note, "ring on the wall") || !strings.Contains(note, "splice of a ring") {
		t.Errorf("life does not list the welds of the rings: %s", note)
	}
	closer := of(`rings = { stations = ["10 mm"], width = "8 mm", height = "40 mm" }`)
	for _, id := range []string{"tank/life", "tank/leak-before-burst"} {
		if r := find(t, closer, id); r.Status() != check.NotAssessed {
			t.Errorf("%s beside the head's seam: %v", id, r.Status())
		}
	}
}
