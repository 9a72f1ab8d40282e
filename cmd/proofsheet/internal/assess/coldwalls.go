package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/loads"
)

// A coldWall is metal as [metals] looks it up: a material at one thickness and
// temperature.
type coldWall struct {
	name         string
	thickness, T float64 // [m], [K]
}

// coldWalls finds the walls that may count on strength in the cold: those of a
// material with cold_strength that liquid covers wholly in every case whose metal has
// that temperature. A wall with gas on it warms within minutes, whatever the case
// writes of the rest, and the proof test is warm. Tubes, pads, rings and covers
// stand out of the liquid and count on nothing.
func (m *model) coldWalls(cases []*loadCase) {
	covered := map[coldWall]bool{}
	for _, c := range cases {
		for _, at := range c.moments() {
			if at.temperature >= roomTemperature {
				continue
			}
			for _, p := range m.shellWalls() {
				if mat, ok := m.t.FindMaterial(p.material); !ok || !mat.ColdStrength {
					continue
				}
				k := coldWall{p.material, p.nominal, at.temperature}
				if before, known := covered[k]; known && !before {
					continue
				}
				covered[k] = !slices.ContainsFunc(at.states, func(s *loads.State) bool { return !m.underLiquid(s, p, given(at.slosh)) })
			}
		}
	}
	if len(covered) == 0 {
		return
	}
	for k, all := range covered {
		covered[k] = all && !m.outOfLiquid(k)
	}
	m.metals.cold = covered
	clear(m.metals.found) // what was looked up while the cases were made knew of no liquid
	m.known = newRemembered()
}

// shellWalls returns the walls that hold the liquid.
func (m *model) shellWalls() []*part { return []*part{&m.aft.part, m.cyl, &m.fwd.part} }

// underLiquid reports whether the free surface lies above the whole of a part, with
// its tilt and with liquid that swings so high on the wall [m].
func (m *model) underLiquid(s *loads.State, p *part, swing float64) bool {
	_, top := m.in.Bounds()
	switch p {
	case &m.aft.part:
		top = 0
	case m.cyl:
		top = m.t.Cylinder.Length
	}
	a := s.Acceleration
	low := s.SurfaceZ() - m.in.radius*math.Abs(a.Lateral/a.Axial) - swing
	return a.Axial > 0 && low >= top // false where the surface is nowhere
}

// outOfLiquid reports whether metal that stands out of the liquid is looked up as
// the wall is.
func (m *model) outOfLiquid(k coldWall) bool {
	same := func(name string, thickness float64) bool { return name == k.name && thickness == k.thickness }
	if r := m.t.Cylinder.Rings; r != nil && same(r.Material, r.Width) {
		return true
	}
	for _, p := range m.t.Port {
		if same(p.Tube.Material, p.Tube.Wall) || p.Pad != nil && same(p.Pad.Material, p.Pad.Thickness) || p.Cover != nil && same(p.Cover.Material, p.Cover.Thickness) {
			return true
		}
	}
	return false
}

// coldCautions tells which walls lean on typical curves of strength in the cold, and
// which asked for it and do not.
func (m *model) coldCautions() (out []string) {
	var leans, warm []string
	for k, counts := range m.metals.cold {
		for _, p := range m.shellWalls() {
			if p.material != k.name || p.nominal != k.thickness {
				continue
			}
			text := fmt.Sprintf("%s at %.4g °C", strings.ToLower(p.title), k.T-273.15)
			if x := m.metals.at(k.name, "", k.thickness, k.T).parent; counts && x.Yield.Value == x.RoomYield && x.Ultimate.Value == x.RoomUltimate {
				continue // no curve reaches there, and nothing leans on it
			}
			if counts {
				leans = append(leans, text)
			} else {
				warm = append(warm, text)
			}
		}
	}
	slices.Sort(leans)
	slices.Sort(warm)
	if leans != nil {
		out = append(out, "Strength in the cold rests on typical curves, not on minima: "+strings.Join(leans, ", ")+". Where the verdict leans on them, hold them against tests of the metal at that temperature.")
	}
	if warm != nil {
		out = append(out, "cold_strength is not used where gas may stand on the wall: "+strings.Join(warm, ", ")+". The minima at room temperature hold there; a wall that is all under liquid in every case so cold may be written as a material of its own.")
	}
	return out
}
