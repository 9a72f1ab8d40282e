package assess

import (
	"math"
	"slices"
	"strings"
)

// zoneNotes returns what is said of the weld zone beyond the parent's notes.
func zoneNotes(x metal) (out []string) {
	if x.zoneErr != nil {
		return nil
	}
	for _, n := range x.zone.Notes {
		if !slices.Contains(x.parent.Notes, n) {
			out = append(out, "weld zone: "+strings.TrimPrefix(n, "weld zone "))
		}
	}
	return out
}

// angleJoint says how a joint counts where a cone meets the cylinder at more
// than 30 degrees; corner is the half-apex angle [rad], not a number elsewhere.
func angleJoint(corner float64) string {
	if !(corner > math.Pi/6*(1+1e-9)) {
		return ""
	}
	return "an angle joint, over 30 deg: it counts by its kind and examination, one welded from one side as a single butt; the stresses of the corner decide"
}
