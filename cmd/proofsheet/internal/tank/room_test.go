package tank

import (
	"os"
	"strings"
	"testing"
)

// What no welder can do is told: a pad narrower than the fillet that lies on it, a
// fillet higher than the edge it is laid along, a joint thickened over more than half
// the cylinder from either end.
func TestRoomForWelds(t *testing.T) {
	const port = `inside = "8 mm"` + "\n"
	text, err := os.ReadFile("../../../../testdata/tanks/life.toml")
	if err != nil {
		t.Fatal(err)
	}
	src := string(text)
	for name, row := range map[string]struct{ at, add, says string }{
		"room":    {port, `pad = { outside_diameter = "50 mm", thickness = "5 mm", leg = "5 mm" }` + "\n", ""},
		"narrow":  {port, `pad = { outside_diameter = "34 mm", thickness = "5 mm", leg = "3 mm" }` + "\n", "port.outlet.pad.outside_diameter: the tube's own fillet"},
		"lip":     {port, `pad = { lip = "4 mm", thickness = "5 mm", leg = "3 mm" }` + "\n", "port.outlet.pad.lip: the tube's own fillet"},
		"edge":    {port, `pad = { outside_diameter = "60 mm", thickness = "2 mm", leg = "5 mm" }` + "\n", "port.outlet.pad.leg: the weld at the edge"},
		"thick":   {"[head.aft]\n", "seam_thickness = \"8 mm\"\nseam_width = \"450 mm\"\n", ""},
		"thicker": {"[head.aft]\n", "seam_thickness = \"8 mm\"\nseam_width = \"451 mm\"\n", "head.aft.seam_width: is over half"},
	} {
		if !strings.Contains(src, row.at) {
			t.Fatalf("no %q", row.at)
		}
		_, err := Read("life.toml", []byte(strings.Replace(src, row.at, row.at+row.add, 1)), nil)
		if (err != nil) != (row.says != "") || err != nil && !strings.Contains(err.Error(), row.says) {
			t.Errorf("%s: %v, want %q", name, err, row.says)
		}
	}
}
