package assess

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/shell/life"
)

// screening says what flaw the proof finds in each part, or why it finds none. A
// flaw is only found by what the test surely reaches: the low pressure counts, on the
// thickest wall that the new metal may have, where the stress is least and a flaw of one
// depth opens least.
func (m *model) screening(t *proofTest) (out []string) {
	c, _, err := m.proofState(t)
	if err != nil {
		return []string{"What flaw the proof finds is not known: " + err.Error() + "."}
	}
	low := t.plan.Top / c.ullage
	for _, k := range m.crackedParts() {
		name, depth := strings.ToLower(k.part.title), math.NaN()
		full := m.newWall(k.part)
		thinned := k.part.least / full * math.Min((k.part.radius+full/2)/k.part.mid(), 1) // stress there over that of the least wall
		w, err := m.wallCracked(k, []*loadCase{c})
		if err == nil {
			_, err = w.Leak() // within what fracture mechanics speak of
		}
		if err == nil {
			mat, _ := m.t.FindMaterial(k.part.material)
			depth, err = life.Screened(life.DefaultShape, full, low*w.highest*thinned, w.Yield, given(mat.ToughnessMost))
		}
		if err != nil {
			out = append(out, fmt.Sprintf("Flaws in the %s: what the examination finds counts, since %s.", name, strings.ReplaceAll(err.Error(), "\n", "; ")))
			continue
		}
		out = append(out, fmt.Sprintf("Flaws in the %s: where its stress is highest, one deeper than %.2f mm, of depth over half length %.2g, would not survive the proof; shallower ones may be there. Counted with a new wall of %.2f mm, thicker than its nominal by as much as its tolerance allows it to be thinner.", name, math.Ceil(depth*1e5)/100, life.DefaultShape, full*1e3))
	}
	return out
}

// newWall returns the wall that a part may have when it is new [m]: what sheet may
// be thicker is not in the file, and counts as what it may be thinner (practice); never
// below what was measured.
func (m *model) newWall(p *part) float64 {
	tolerance := m.t.Cylinder.UnderTolerance
	for _, h := range m.ends() {
		if p == &h.part {
			tolerance = h.in.UnderTolerance
		}
	}
	return math.Max(p.nominal+given(tolerance), p.least+p.corrosion)
}
