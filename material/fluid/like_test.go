package fluid

import (
	"slices"
	"strings"
	"testing"
)

// A word of the trade leads to the fluids that it may mean, all of them built in, and a
// word that means none to none.
func TestLike(t *testing.T) {
	for word, want := range map[string]string{
		"kerosene": "RP-1 JetA", "Kerosene": "RP-1 JetA", "nitrous": "N2O", "nitrous oxide": "N2O", "oxygen": "LOX", "liquid oxygen": "LOX",
		"CH4": "LCH4", "methane": "LCH4", "IPA": "isopropanol", "": "", "hydrazine": "", "liquid": "LOX LN2 LCH4",
	} {
		if got := strings.Join(Like(word), " "); got != want {
			t.Errorf("%q: %q, want %q", word, got, want)
		}
	}
	if got := Like("hydrogen peroxide"); len(got) < 4 || slices.ContainsFunc(got, func(n string) bool { return !strings.HasPrefix(n, "HTP-") }) {
		t.Errorf("hydrogen peroxide: %v", got)
	}
	for word, names := range tradeNames {
		for _, n := range names {
			if _, ok := Find(n); !ok || word != strings.ToLower(word) {
				t.Errorf("%s: %s is no built-in fluid, or the word has capitals", word, n)
			}
		}
	}
	Like("kerosene")[0] = "changed"
	if Like("kerosene")[0] != "RP-1" {
		t.Error("a caller changes the table")
	}
}
