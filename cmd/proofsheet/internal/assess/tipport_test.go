package assess_test

import (
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
)

// tubeAtTip returns the demonstration tank with its vent as the end of the forward cone.
func tubeAtTip(t *testing.T, more ...string) *report.Sheet {
	t.Helper()
	return sheet(t, changed(t, "demo", append([]string{
		"segment_seam_clock = \"0 deg\"\ntip = { diameter = \"60 mm\", close = \"plate\", thickness = \"14 mm\" }\n\n[[port]]", "segment_seam_clock = \"0 deg\"\ntip = { diameter = \"60 mm\", close = \"port\", port = \"vent\" }\n\n[[port]]",
		"radius = \"110 mm\"\nclock = \"60 deg\"\ntube = { outside_diameter = \"26.9 mm\", wall = \"3.6 mm\"", "tube = { outside_diameter = \"72 mm\", wall = \"6 mm\"",
	}, more...)...))
}

// A tube that closes a cone's tip is a joint, which its head's checks hold: nothing of
// it is left open, no caution calls it a hole over the apex, and a pressure is shown up to
// which people may be near.
func TestPortThatClosesATip(t *testing.T) {
	s := tubeAtTip(t)
	for _, r := range s.Checks {
		if strings.HasPrefix(r.ID, "port.vent/") && r.Status() != check.NotApplicable {
			t.Errorf("%s: %v, %s", report.FullID(r), r.Status(), r.Reason())
		}
	}
	for _, id := range []string{"head.forward/tip@meop", "head.forward/tip-junction@meop", "head.forward/tip-junction@proof"} {
		if r := find(t, s, id); r.Status() != check.Satisfied {
			t.Errorf("%s: %v, %s", id, r.Status(), r.Reason())
		}
	}
	for _, c := range s.Cautions {
		if strings.Contains(c, "apex") {
			t.Errorf("caution: %s", c)
		}
	}
	for _, p := range s.Permissible {
		if p.Part == "port.vent" {
			t.Errorf("a pressure of a part that is held with its head: %+v", p)
		}
	}
}

// What the joint's checks leave out is not assessed, and says why once a case.
func TestPortAtATipLeavesOpen(t *testing.T) {
	const surge = "line = { length = \"2 m\", velocity = \"3 m/s\", closing_time = \"0.05 s\", wave_speed = \"1000 m/s\" }"
	const full = "inside = \"8 mm\"\nweld = { outside_leg = \"7 mm\", inside_leg = \"5 mm\", groove = \"full\" }\n\n[[port]]\nname = \"pressurant\""
	for _, row := range []struct{ check, to, want string }{
		{"weld", strings.Replace(full, `, groove = "full"`, "", 1), "not welded through"},
		{"thrust", strings.Replace(full, "}\n", "}\nload = { force = \"10 N\", moment = \"0 N m\" }\n", 1), "not worked into the joint"},
		{"insert", strings.Replace(full, "}\n", "}\ninsert = { outside_diameter = \"110 mm\", thickness = \"18 mm\", seam = \"girth\" }\n", 1), "not covered"},
		{"hammer", strings.Replace(full, "}\n", "}\n"+surge+"\n", 1), "surge"},
	} {
		open := 0
		for _, r := range tubeAtTip(t, full, row.to).Checks {
			if strings.HasPrefix(r.ID, "port.vent/") && r.Status() == check.NotAssessed {
				open++
				if r.ID != "port.vent/"+row.check || !strings.Contains(r.Reason(), row.want) {
					t.Errorf("%s: %s", report.FullID(r), r.Reason())
				}
			}
		}
		if open == 0 {
			t.Errorf("%s is not open", row.check)
		}
	}
}
