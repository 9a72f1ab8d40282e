package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report/check"
)

// course is a seam of a low class in the middle of the cylinder, clear of the joints of the
// heads, so that it governs; its hi-lo is to be filled in.
func course(hiLo string) []string {
	return []string{outlet, "", "meop = \"12 bar\"", "meop = \"30 bar\"", "relief = \"10.5 bar\"", "relief = \"27 bar\"",
		"[cylinder]\n", "[joint.course]\nkind = \"single butt\"\nexamination = \"full\"\nefficiency = 1\nsource = \"test\"\nhi_lo = \"" + hiLo + "\"\n\n[cylinder]\n",
		"long_seam = \"long\"", "girth_seam = \"course\"\ngirth_stations = [\"450 mm\"]\nlong_seam = \"long\""}
}

// swings holds the range of a kind of cycle at the seam between courses against a hand's [MPa].
func swings(t *testing.T, r check.Result, of string, want float64) {
	t.Helper()
	if got := rangeOf(r, of) / 1e6; !strings.Contains(r.Demand.Name, "girth seam") || !(got > want*0.9999 && got < want*1.003) {
		t.Errorf("%s, %s: range %g MPa, by hand %g", r.Demand.Name, of, got, want)
	}
}

// A load comes and goes without the pressure, unless the case says otherwise. By hand, R
// 152.35 mm, t 4.7 mm: 30 bar make 3 × 152.35/(2 × 4.7) = 48.62 MPa, 217 kN press with
// 217 000/(2π 152.35 × 4.7) = 48.23 MPa. From the load without pressure to the pressure without
// load are 96.85 MPa; where both are always there, from empty to
// 0.39. The own weight adds 0.1.
func TestLifeOfALoadWithoutItsPressure(t *testing.T) {
	at := func(more string) check.Result {
		return find(t, sheet(t, burnedOut(t, "ullage_pressure = \"30 bar\"\naxial_load_factor = 1.0\nfill = 0.0\ncycles = 50000\naxial_compression = \"217 kN\"\n"+more, course("0 mm")...)), "tank/life")
	}
	r := at("")
	swings(t, r, "burnout", 96.85)
	// 2·10⁶ (36/96.85)³ = 102 700 cycles; 4 × 50 000 are more.
	if r.Status() != check.NotSatisfied {
		t.Errorf("%v with a usage of %g", r.Status(), r.Demand.Value)
	}
	if r := at("present = true\n"); r.Status() != check.Satisfied {
		t.Errorf("always together: %v with a usage of %g", r.Status(), r.Demand.Value)
	}
}

// The bending of walls out of line swings as far as the membrane stress does: a hi-lo of 0.5 mm
// has 3 × 0.5/4.7 = 0.3191 of it, and the 96.85 MPa above become 127.76, not 96.85 + 0.3191 × 48.62.
func TestLifeOfAHiLoThatSwings(t *testing.T) {
	r := find(t, sheet(t, burnedOut(t, "ullage_pressure = \"30 bar\"\naxial_load_factor = 1.0\nfill = 0.0\ncycles = 50000\naxial_compression = \"217 kN\"\n", course("0.5 mm")...)), "tank/life")
	swings(t, r, "burnout", 127.76)
}

// What one case pulls and another presses is one range: 50 000 times 30 bar and 30 000 times 217 kN at 0 bar are
// 30 000 times 96.85 MPa, by the sums above, and 20 000 times 48.62. 2·10⁶ (36/96.85)³ = 102 700 cycles and
// 2·10⁶ (36/48.62)³ = 811 900: 30/102.7 + 20/811.9 = 0.3168; by themselves 0.0616 and 0.036.
func TestLifeOfTwoCases(t *testing.T) {
	r := find(t, sheet(t, burnedOut(t, "ullage_pressure = \"30 bar\"\naxial_load_factor = 1.0\nfill = 0.0\ncycles = 50000\n\n[[case]]\nname = \"coast\"\nullage_pressure = \"0 bar\"\naxial_load_factor = 1.0\nfill = 0.0\n"+
		"cycles = 30000\naxial_compression = \"217 kN\"\n", append(course("0 mm"), "cycles = 150", "cycles = 0", "cycles = 200", "cycles = 0")...)), "tank/life")
	swings(t, r, "burnout down to coast", 96.85)
	if got := r.Demand.Value; !(got > 0.3168 && got < 0.3168*1.02) || !strings.Contains(r.Note, "worst order") {
		t.Errorf("usage %g, by hand 0.3168: %s", got, r.Note)
	}
}

// A flaw in that seam, as welded, is driven by the whole range, compression too: 96.85 MPa, and
// the toughness is met by the larger of both ends of it, 48.62.
func TestFlawOfALoadWithoutItsPressure(t *testing.T) {
	change := course("0 mm\"\nflaw = \"0.5 mm")
	r := find(t, sheet(t, burnedOut(t, "ullage_pressure = \"30 bar\"\naxial_load_factor = 1.0\nfill = 0.0\ncycles = 50000\naxial_compression = \"217 kN\"\n",
		append(change, "flaw = \"1.5 mm\"\n", "")...)), "tank/flaw-growth")
	for _, q := range r.Inputs {
		want, held := map[string]float64{"Δσ": 96.85e6, "σ": 48.62e6}[q.Symbol]
		if held && !(q.Value > want*0.9999 && q.Value < want*1.004) {
			t.Errorf("%s: %g Pa, by hand %g", q.Name, q.Value, want)
		}
	}
	if !strings.Contains(r.Demand.Name, "girth seam (course)") {
		t.Error(r.Demand.Name, r.Reason())
	}
}
