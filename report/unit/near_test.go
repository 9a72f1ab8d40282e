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
	} {
		if got := Near(word, keys); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
}
