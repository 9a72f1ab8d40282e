package assess_test

import (
	"os"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/report/check"
)

// stiffened is a light tank with stiffened sharp cones, a neck and a plate at their
// tips, and seams out of line, changed.
func stiffened(t *testing.T, old, new string) map[string]check.Result {
	t.Helper()
	src, err := os.ReadFile("testdata/stiffened.toml")
	if err != nil || !strings.Contains(string(src), old) {
		t.Fatalf("%q is not in the tank: %v", old, err)
	}
	return byID(sheet(t, parse(t, "stiffened.toml", strings.Replace(string(src), old, new, 1))), "flown")
}

// Every joint and seam of the tank is assessed, holds, and is explained; a lateral
// load puts both sides of a ring in.
func TestStiffenedTank(t *testing.T) {
	all := stiffened(t, "", "")
	for _, id := range []string{"cylinder/misalignment", "cylinder/girth-misalignment", "head.aft/segment-misalignment", "head.forward/segment-misalignment",
		"head.aft/junction", "head.aft/tip-junction", "head.aft/corner", "head.aft/tip-corner", "head.aft/tip", "head.aft/ring",
		"head.forward/junction", "head.forward/tip-junction", "head.forward/corner", "head.forward/tip"} {
		r, ok := all[id]
		if !ok || r.Status() != check.Satisfied {
			t.Errorf("%s: %v, %s", id, r.Status(), r.Reason())
		}
		if e, ok := assess.Explain(id); !ok || e.Asks == "" {
			t.Errorf("%s is not explained", id)
		}
	}
	if r := all["head.forward/tip-corner"]; r.Status() != check.NotApplicable {
		t.Errorf("corner at a plate: %v", r.Status())
	}
}

// Without its ring, its thick wall, or its fit the tank stands worse.
func TestStiffeningHelps(t *testing.T) {
	all := stiffened(t, "", "")
	for _, row := range [][3]string{
		{"head.aft/junction", "ring = { width = \"30 mm\", thickness = \"10 mm\" }\n", ""},
		{"head.forward/junction", "seam_thickness = \"8 mm\"\nseam_width = \"60 mm\"\n", ""},
		{"head.aft/junction", "hi_lo = \"0.5 mm\"", "hi_lo = \"2 mm\""},
		{"cylinder/misalignment", "peaking = \"0.5 mm\"", "peaking = \"2 mm\""},
		{"cylinder/misalignment", "out_of_round = \"2 mm\"", "out_of_round = \"6 mm\""},
	} {
		if r := stiffened(t, row[1], row[2])[row[0]]; !(r.Margin() < all[row[0]].Margin()) {
			t.Errorf("%s: margin %.3f, %.3f with %q for %q", row[0], all[row[0]].Margin(), r.Margin(), row[2], row[1])
		}
	}
}

// The pressure up to which somebody may stand near counts the seams out of line: a
// long seam with enough peaking sets it, and sizing sees it too.
func TestPermissiblePressureCountsTheSeams(t *testing.T) {
	src, err := os.ReadFile("testdata/stiffened.toml")
	if err != nil {
		t.Fatal(err)
	}
	in := parse(t, "stiffened.toml", strings.Replace(string(src), "peaking = \"0.5 mm\"", "peaking = \"4 mm\"", 1))
	for _, row := range sheet(t, in).Permissible {
		if row.Part == "cylinder" && row.Check != "cylinder/misalignment" {
			t.Errorf("the cylinder's pressure of %g Pa is set by %q %s", row.Pressure, row.Check, row.Note)
		}
	}
	tr, err := assess.NewTrial(in)
	if err != nil {
		t.Fatal(err)
	}
	seen := false
	tr.Part("cylinder", func(r check.Result) bool { seen = seen || r.ID == "cylinder/misalignment"; return true })
	if !seen {
		t.Error("sizing does not see the seam")
	}
}
