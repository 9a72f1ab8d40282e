package unit

import "testing"

func TestNear(t *testing.T) {
	keys := []string{"thickness", "tip", "ring", "seam", "material", "under_tolerance"}
	for word, want := range map[string]string{
		"thicknes":       "thickness",
		"thikcness":      "thickness", // a swap is one slip
		"materiel":       "material",
		"under_tolerace": "under_tolerance",
		"tipp":           "tip",
		"ting":           "ring",
		"colour":         "",
		"x":              "", // too short to be a slip of anything
		"to":             "",
		"":               "",
		"materials_used": "material", // begins alike
		"under_thinning": "",         // less than half of under_tolerance
		"under_toler":    "under_tolerance",
		"ringshaped":     "", // four letters alike
	} {
		if got := Near(word, keys); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
	for word, want := range map[string]string{"elliptical": "ellipsoid", "hemispherical": "hemisphere", "torispherical": "torisphere", "conical": ""} {
		if got := Near(word, []string{"hemisphere", "ellipsoid", "torisphere", "cone", "toricone", "flat"}); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
	if got := Near("stiffener", []string{"stiffening", "stiffen"}); got != "stiffen" { // two slips, before what begins alike
		t.Errorf("stiffener: %q", got)
	}
	if got := Near("stiffly-set", []string{"stiffening", "stiffen"}); got != "" { // two begin alike
		t.Errorf("stiffly-set: %q", got)
	}
}
