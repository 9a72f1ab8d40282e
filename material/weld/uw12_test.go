package weld_test

import (
	"fmt"
	"math"
	"testing"

	"proofsheet/material/weld"
	"proofsheet/report/check"
)

// ASME BPVC VIII-1 Table UW-12, UW-12(d) and UW-3, 2013 and 2019 copies (read);
// EN 13445-3 5.6 (recalled).

var (
	long  = weld.Place{Category: "A", Longitudinal: true, Thickness: 0.006, OutsideDiameter: 0.4}
	girth = weld.Place{Category: "B", Thickness: 0.006, OutsideDiameter: 0.4}
	dome  = weld.Place{Category: "A", Thickness: 0.006, OutsideDiameter: 0.4} // girth of a hemisphere
	tube  = weld.Place{Category: "D", Thickness: 0.006, OutsideDiameter: 0.05}
)

func with(at weld.Place, t, d float64) weld.Place {
	at.Thickness, at.OutsideDiameter = t, d
	return at
}

func TestTableUW12(t *testing.T) {
	nan := math.NaN()
	convex := with(girth, 0.016, 2)
	convex.Convex = true
	for _, row := range []struct {
		kind             string
		at               weld.Place
		full, spot, none float64 // NaN: not permitted
	}{
		{weld.DoubleButt, long, 1, 0.85, 0.70},
		{weld.DoubleButt, tube, 1, 0.85, 0.70},
		{weld.DoubleButt, with(girth, 0.1, 3), 1, 0.85, 0.70},
		{weld.BackedButt, long, 0.90, 0.80, 0.65},
		{weld.BackedButt, girth, 0.90, 0.80, 0.65},
		{weld.SingleButt, girth, 0.60, 0.60, 0.60},
		{weld.SingleButt, dome, 0.60, 0.60, 0.60},
		{weld.SingleButt, with(girth, 0.016, 0.6), 0.60, 0.60, 0.60},
		{weld.SingleButt, long, nan, nan, nan},
		{weld.SingleButt, tube, nan, nan, nan},
		{weld.SingleButt, with(girth, 0.0161, 0.4), nan, nan, nan},
		{weld.SingleButt, with(girth, 0.006, 0.601), nan, nan, nan},
		{weld.SingleButt, with(girth, nan, 0.4), nan, nan, nan},
		{weld.SingleButt, with(girth, 0.006, nan), nan, nan, nan},
		{weld.RootSeen, long, nan, nan, nan}, // root not described: a single butt
		{weld.DoubleLap, with(long, 0.010, 2), 0.55, 0.55, 0.55},
		{weld.DoubleLap, with(long, 0.0101, 2), nan, nan, nan},
		{weld.DoubleLap, with(girth, 0.016, 2), 0.55, 0.55, 0.55},
		{weld.DoubleLap, with(girth, 0.0161, 2), nan, nan, nan},
		{weld.DoubleLap, dome, nan, nan, nan},
		{weld.PluggedLap, with(girth, 0.013, 0.6), 0.50, 0.50, 0.50},
		{weld.PluggedLap, with(girth, 0.0131, 0.6), nan, nan, nan},
		{weld.PluggedLap, with(girth, 0.013, 0.601), nan, nan, nan},
		{weld.PluggedLap, dome, nan, nan, nan},
		{weld.SingleLap, convex, 0.45, 0.45, 0.45},
		{weld.SingleLap, with(convex, 0.0161, 2), nan, nan, nan},
		{weld.SingleLap, with(girth, 0.006, 0.6), 0.45, 0.45, 0.45},
		{weld.SingleLap, with(girth, 0.0061, 0.6), nan, nan, nan},
		{weld.SingleLap, long, nan, nan, nan},
	} {
		for exam, want := range map[string]float64{"full": row.full, "spot": row.spot, "none": row.none, "": row.none} {
			for _, rule := range []string{"vessel", "flight"} {
				got, src, err := weld.Joint{Kind: row.kind, Examination: exam, Efficiency: math.NaN()}.EfficiencyAt(rule, row.at)
				permitted := !math.IsNaN(want)
				if permitted != (err == nil) || permitted && (got != want || src.How == check.Unstated) || !permitted && !math.IsNaN(got) {
					t.Errorf("%s %s %q %+v: %g, %v; want %g", rule, row.kind, exam, row.at, got, err, want)
				}
			}
		}
	}
}

func TestRootSeen(t *testing.T) {
	j := weld.Joint{Kind: weld.RootSeen, Examination: "spot", Root: "purged with argon, seen by borescope"}
	if e, _, err := j.EfficiencyAt("vessel", long); err != nil || e != 0.85 {
		t.Errorf("%g, %v", e, err)
	}
}

// UW-3: a cone joint is a butt up to 30 degrees; above, only a weld of both faces
// is worth one. Type 1 spot 0.85, type 3 none 0.60 of Table UW-12.
func TestJointAtACone(t *testing.T) {
	seen := weld.Joint{Kind: weld.RootSeen, Examination: "spot", Root: "purged, seen by borescope"}
	double := weld.Joint{Kind: weld.DoubleButt, Examination: "spot"}
	for _, row := range []struct {
		j    weld.Joint
		deg  float64
		want float64
	}{{seen, 30, 0.85}, {seen, 30.1, 0.60}, {seen, math.NaN(), 0.60}, {double, 45, 0.85}, {double, 30, 0.85}} {
		j := row.j.AtCone(row.deg * math.Pi / 180)
		if e, _, err := j.EfficiencyAt("vessel", girth); err != nil || e != row.want {
			t.Errorf("%s at %g deg: %g, %v", row.j.Kind, row.deg, e, err)
		}
		whole := map[float64]float64{0.85: 1, 0.60: 0.85}[row.want]
		if e, _ := weld.SeamlessEfficiency(j); e != whole {
			t.Errorf("one-piece cone, %s at %g deg: %g", row.j.Kind, row.deg, e)
		}
	}
}

func TestEuropean(t *testing.T) {
	for exam, want := range map[string]float64{"full": 1, "spot": 0.85, "none": 0.7} {
		for _, kind := range []string{weld.DoubleButt, weld.BackedButt} {
			if z, src, err := (weld.Joint{Kind: kind, Examination: exam}).EfficiencyAt("vessel-eu", girth); err != nil || z != want || src.How != check.Memory {
				t.Errorf("%s %s: %g, %v", kind, exam, z, err)
			}
		}
	}
	for _, kind := range []string{weld.SingleButt, weld.RootSeen, weld.DoubleLap, weld.PluggedLap, weld.SingleLap} {
		if _, _, err := (weld.Joint{Kind: kind, Examination: "full"}).EfficiencyAt("vessel-eu", girth); err == nil {
			t.Errorf("%s was admitted by vessel-eu", kind)
		}
	}
}

func TestStatedEfficiency(t *testing.T) {
	for _, row := range []struct {
		e      float64
		source string
		ok     bool
	}{{0.80, "procedure 7", true}, {1, "procedure 7", true}, {0.80, "", false}, {1.01, "x", false}, {-0.5, "x", false}, {math.Inf(1), "x", false}} {
		got, _, err := weld.Joint{Kind: weld.SingleButt, Efficiency: row.e, EfficiencySource: row.source}.EfficiencyAt("vessel", long)
		if (err == nil) != row.ok || row.ok && got != row.e {
			t.Errorf("%+v: %g, %v", row, got, err)
		}
	}
}

func TestRefusals(t *testing.T) {
	for name, row := range map[string]struct {
		j    weld.Joint
		rule string
		at   weld.Place
	}{
		"kind":     {weld.Joint{Kind: "glue", Examination: "full"}, "vessel", long},
		"no kind":  {weld.Joint{}, "vessel", long},
		"exam":     {weld.Joint{Kind: weld.DoubleButt, Examination: "some"}, "vessel", long},
		"rule":     {weld.Joint{Kind: weld.DoubleButt}, "other", long},
		"category": {weld.Joint{Kind: weld.DoubleButt}, "vessel", weld.Place{}},
	} {
		if e, _, err := row.j.EfficiencyAt(row.rule, row.at); err == nil || !math.IsNaN(e) {
			t.Errorf("%s: %g, %v", name, e, err)
		}
	}
}

func TestSeamless(t *testing.T) {
	good := weld.Joint{Kind: weld.DoubleButt, Examination: "spot"}
	for _, row := range []struct {
		where  string
		joints []weld.Joint
		want   float64
	}{
		{"spot double butt", []weld.Joint{good}, 1},
		{"backed butt, full", []weld.Joint{good, {Kind: weld.BackedButt, Examination: "full"}}, 1},
		{"one end not examined", []weld.Joint{good, {Kind: weld.DoubleButt}}, 0.85},
		{"type 3", []weld.Joint{{Kind: weld.SingleButt, Examination: "full"}}, 0.85},
		{"root not described", []weld.Joint{{Kind: weld.RootSeen, Examination: "full"}}, 0.85},
		{"unknown kind", []weld.Joint{{Kind: "glue", Examination: "full"}}, 0.85},
		{"no joint known", nil, 0.85},
	} {
		if e, src := weld.SeamlessEfficiency(row.joints...); e != row.want || src.How != check.Read {
			t.Errorf("%s: %g", row.where, e)
		}
	}
}

func TestKindsAndListing(t *testing.T) {
	for _, k := range weld.Kinds() {
		if k.Source.Doc == "" || k.Source.How == check.Unstated || !(k.None > 0) {
			t.Errorf("%s: %+v", k.Name, k)
		}
		if _, rows, err := weld.Listing(k.Name); err != nil || len(rows) < 1 {
			t.Errorf("%s: %d rows, %v", k.Name, len(rows), err)
		}
	}
	if _, rows, err := weld.Listing(""); err != nil || len(rows) < len(weld.Kinds()) {
		t.Errorf("%d rows, %v", len(rows), err)
	}
	if _, _, err := weld.Listing("glue"); err == nil {
		t.Error("an unknown kind was listed")
	}
}

// A one-sided seam without backing may close a girth and not a long seam.
func ExampleJoint_EfficiencyAt() {
	j := weld.Joint{Kind: weld.SingleButt}
	e, _, _ := j.EfficiencyAt("vessel", weld.Place{Category: "B", Thickness: 0.006, OutsideDiameter: 0.4})
	fmt.Println("girth:", e)
	_, _, err := j.EfficiencyAt("vessel", weld.Place{Category: "A", Longitudinal: true, Thickness: 0.006, OutsideDiameter: 0.4})
	fmt.Println("long:", err)
	// Output:
	// girth: 0.6
	// long: "single butt" is not permitted here: a one-sided butt without backing may close a girth, never a long seam: weld both sides, keep a backing, or write kind = "single butt, root seen" with root = how it was seen
}
