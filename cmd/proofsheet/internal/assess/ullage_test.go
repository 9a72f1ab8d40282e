package assess_test

import (
	"strings"
	"testing"
)

// A tank that is to be filled without any gas carries a caution.
func TestNoUllageIsACaution(t *testing.T) {
	const words = "No least ullage is kept"
	has := func(pairs ...string) bool {
		for _, c := range sheet(t, changed(t, "demo", pairs...)).Cautions {
			if strings.HasPrefix(c, words) {
				return true
			}
		}
		return false
	}
	if !has("least_ullage = 0.05", "least_ullage = 0.0") {
		t.Error("no caution without ullage")
	}
	if has() {
		t.Error("a caution with ullage")
	}
}
