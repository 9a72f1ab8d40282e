package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// roundTank is a cylinder of mid-wall radius 100 mm and wall 2 mm between
// hemispheres under 10 bar of gas, joints of which are changed: p R/t is 50 MPa.
func roundTank(t *testing.T, pairs ...string) *report.Sheet {
	t.Helper()
	src := shellTank(2, 2, "shape = \"hemisphere\"\nforming = \"pressed\"\nforming_thinning = 0.0\nsegment_seam = \"none\"")
	src = strings.Replace(src, "yield = \"5 GPa\"\nultimate = \"20 GPa\"", "yield = \"250 MPa\"\nultimate = \"450 MPa\"", 1)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(src, pairs[i]) {
			t.Fatalf("%q is not in the tank", pairs[i])
		}
		src = strings.ReplaceAll(src, pairs[i], pairs[i+1])
	}
	return sheet(t, parse(t, "round.toml", src))
}

// another is a joint k beside j, its own keys, that takes the place of j at a key.
func another(keys, at string) []string {
	return []string{"[cylinder]\n", "[joint.k]\nkind = \"double butt\"\nexamination = \"full\"\n" + keys + "\n[cylinder]\n", at + " = \"j\"", at + " = \"k\""}
}

// A hi-lo bends the hoop stress at a long seam and the axial stress at a girth
// seam, twice as dear: 3 e/t, at the long seam over 1 − ν² (BS 7910 Annex D, recalled).
// In mid-cylinder 0.25 p R/t of hi-lo gives 1.824 and 0.875 p R/t.
func TestHiLoOfSeams(t *testing.T) {
	s := roundTank(t, another("hi_lo = \"0.5 mm\"", "long_seam")...)
	r := find(t, s, "cylinder/misalignment@meop")
	checktest.Close(t, "long seam, k", input(t, r, "k_e"), 0.75/0.91, 1e-9)
	checktest.Close(t, "long seam, surface over p R/t, hoop 1.031 beside a hemisphere", r.Demand.Value/50e6, 1.031*(1+0.75/0.91), 0.01)
	s = roundTank(t, append(another("hi_lo = \"0.5 mm\"", "girth_seam"), "long_seam = \"j\"", "long_seam = \"j\"\ngirth_stations = [\"300 mm\"]")...)
	r = find(t, s, "cylinder/girth-misalignment@meop")
	checktest.Close(t, "girth seam, k", input(t, r, "k_e"), 0.75, 1e-9)
	checktest.Close(t, "girth seam, surface over p R/t: hoop 1 + ν 0.375", r.Demand.Value/50e6, 1+0.3*0.375, 0.01)
	checktest.Close(t, "girth seam, axial", input(t, r, "σ_m")/25e6, 1, 0.01)
}

// At the seam of a hemisphere of the same wall there is no bending but the hi-lo's:
// a whole wall of it gives 0.5 (1 + 3) p R/t across the weld, which without
// examination governs the joint.
func TestHiLoOfHeadSeam(t *testing.T) {
	with := func(e string) check.Result {
		at := another("hi_lo = \""+e+"\"", "\nseam")
		at[1] = strings.Replace(at[1], "full", "none", 1)
		return find(t, roundTank(t, at...), "head.aft/junction@meop")
	}
	bent := with("2 mm")
	checktest.Close(t, "across the weld over p R/t", bent.Demand.Value/50e6, 2, 0.01)
	if !strings.Contains(bent.Note, "hi-lo of 2 mm") {
		t.Errorf("the note does not say where: %s", bent.Note)
	}
	if plain := with("0 mm"); !(plain.Margin() > bent.Margin()) {
		t.Errorf("margin %g without the hi-lo, %g with it", plain.Margin(), bent.Margin())
	}
	if r := with("2.5 mm"); r.Status() != check.NotAssessed {
		t.Errorf("a hi-lo beyond the wall: %v", r.Status())
	}
}

// Peaking of 1 mm on 2 mm: without a length it is the steepest roof, 6 d/t over
// 1 − ν², less the little that pressure straightens it: k = (2 · 3 mm/2 mm) sqrt(2.73 · 50/200000) = 0.078,
// tanh(k)/k 0.998. A longer straight part bends less. Round the tank it is not assessed.
func TestPeakingOfSeams(t *testing.T) {
	r := find(t, roundTank(t, another("peaking = \"1 mm\"", "long_seam")...), "cylinder/misalignment@meop")
	checktest.Close(t, "steepest", input(t, r, "k_p"), 3/0.91*0.998, 2e-3)
	long := find(t, roundTank(t, another("peaking = \"1 mm\"\npeaking_length = \"40 mm\"", "long_seam")...), "cylinder/misalignment@meop")
	if k := input(t, long, "k_p"); !(k < 2.5) {
		t.Errorf("over 40 mm k is %g", k)
	}
	s := roundTank(t, append(another("peaking = \"1 mm\"", "\nseam"), "girth_seam = \"j\"", "girth_seam = \"k\"")...)
	for _, id := range []string{"head.aft/misalignment@meop", "cylinder/girth-misalignment@meop"} {
		if got := find(t, s, id).Status(); got != check.NotAssessed {
			t.Errorf("%s: %v", id, got)
		}
	}
}

// An oval of 1 % rounded by its pressure, by hand: 1.5 · 2/2 over
// 1 + 0.5 · 0.91 · (1/200000) · 100³ = 3.275.
func TestOutOfRound(t *testing.T) {
	r := find(t, roundTank(t, "length = \"600 mm\"", "length = \"600 mm\"\nout_of_round = \"2 mm\""), "cylinder/misalignment@meop")
	checktest.Close(t, "k", input(t, r, "k_o"), 1.5/3.275, 1e-3)
	s := roundTank(t, "length = \"600 mm\"", "length = \"600 mm\"\nout_of_round = \"2 mm\"", "[cylinder]", "[[case]]\nname = \"drain\"\nullage_pressure = \"-0.2 bar\"\nfill = 0.1\n[cylinder]")
	if got := find(t, s, "cylinder/misalignment@drain").Status(); got != check.NotAssessed {
		t.Errorf("an oval under pressure from outside: %v", got)
	}
}

// The range runs to the opposite stress of another case: half the axial tension
// in compression adds half as much again at a girth seam, bending with it.
func TestMisalignedSeamTakesTheRange(t *testing.T) {
	at := append(another("hi_lo = \"0.5 mm\"", "girth_seam"), "long_seam = \"j\"", "long_seam = \"j\"\ngirth_stations = [\"300 mm\"]")
	alone := input(t, find(t, roundTank(t, at...), "cylinder/girth-misalignment@meop"), "σ_m")
	press := append(at, "[head.aft]", "[[case]]\nname = \"press\"\nullage_pressure = \"0.01 bar\"\nfill = 0.1\naxial_compression = \"15.708 kN\"\n[head.aft]")
	both := input(t, find(t, roundTank(t, press...), "cylinder/girth-misalignment@meop"), "σ_m")
	checktest.Close(t, "15.708 kN is 12.5 MPa on 2 π 100 mm · 2 mm", (both-alone)/12.5e6, 1, 0.01)
}

// Beyond the vessel rule's limits of workmanship (UW-33 and UG-80, recalled) the
// sheet says so: a quarter of 2 mm, 1 % of the diameter.
func TestAlignmentNotes(t *testing.T) {
	for _, row := range []struct {
		e, oval string
		want    []string
		not     string
	}{
		{"0.6 mm", "2 mm", []string{"hi-lo of 0.6 mm is more than the 0.5 mm", "more than 1 %"}, "no alignment limit"},
		{"0.5 mm", "1.9 mm", []string{"Out of round by 1.9 mm"}, "more than"},
	} {
		at := append(another("hi_lo = \""+row.e+"\"", "long_seam"), "length = \"600 mm\"", "length = \"600 mm\"\nout_of_round = \""+row.oval+"\"")
		all := strings.Join(roundTank(t, at...).Notes, "\n")
		for _, w := range row.want {
			if !strings.Contains(all, w) {
				t.Errorf("%s: no note says %q", row.e, w)
			}
		}
		if strings.Contains(all, row.not) {
			t.Errorf("%s: a note says %q", row.e, row.not)
		}
	}
}

// Drained, one atmosphere presses on the long seam from outside, and a tank that stands
// full with next to no ullage pressure has that range as well (computed): p R/t is 101 325 Pa × 50
// = 5.07 MPa, at most 1.031 of it beside a hemisphere and 1.824 with the hi-lo, 9.5 MPa, and
// its own liquid, under 1 m of water, at most a tenth of that more.
func TestReversedSeamNearNoPressure(t *testing.T) {
	at := append(another("hi_lo = \"0.5 mm\"", "long_seam"), "[head.aft]", "[[case]]\nname = \"drain\"\nkind = \"drain\"\n"+
		"[[case]]\nname = \"stands\"\nullage_pressure = \"1e-5 bar\"\nfill = 0.9\n[head.aft]",
		"density = \"0.01 kg/m3\"", "density = \"1000 kg/m3\"")
	r := find(t, roundTank(t, at...), "cylinder/misalignment@stands")
	if σ := r.Demand.Value / 1e6; !(σ > 9.2 && σ < 10.5) {
		t.Errorf("%.4g MPa, want 9.2 to 10.5", σ)
	}
}
