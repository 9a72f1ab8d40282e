package assess

import (
	"fmt"

	"proofsheet/shell/edge"
)

// A jointBend is the bending that a hi-lo gives a wall at a joint, to one side.
type jointBend struct {
	sign  int     // 1: tension inside
	ratio float64 // of bending to meridional membrane stress [-]
	ν     float64 // Poisson's ratio [-]
	words string
}

// bends returns the bending of the hi-lo at the joint of a head, in the wall on
// one side of it. The offset of the mid-lines as drawn is in the numerical shell;
// the hi-lo hops to either side of that round a seam, and comes on top.
func (w *wholeTank) bends(joint shellJoint, side int) []jointBend {
	h := joint.h
	if joint.tip || h.seam == nil || given(h.seam.HiLo) == 0 {
		return nil
	}
	return w.hiLo[h.end][side]
}

// hiLoOf works out the bending of the hi-lo of a head's seam in the cylinder and
// in the head: in the thinner wall t by edge.HiLo; what is left of the moment
// N e is the thicker wall's, 6e/T − k t/T of its own membrane stress.
func (m *model) hiLoOf(h *headPart, k shellKey) (out [2][]jointBend, err error) {
	e := given(h.seam.HiLo)
	walls := [2]float64{m.cyl.least, h.least}
	if k.nominal {
		walls = [2]float64{m.cyl.nominal, h.nominal}
	}
	thin, err := edge.HiLo(walls[0], walls[1], e)
	if err != nil {
		return out, fmt.Errorf("joint %s: %w", h.seam.Name, err)
	}
	for side, p := range [2]*part{m.cyl, &h.part} {
		ratio, other := thin, walls[1-side]
		if t := walls[side]; t > other {
			ratio = 6*e/t - thin*other/t
		}
		_, ν, err := m.elastic(p, k.T)
		if err != nil {
			return out, err
		}
		words := fmt.Sprintf(" at the joint, its hi-lo of %.4g mm bending the wall", e*1e3)
		out[side] = []jointBend{{1, ratio, ν, words + " inwards"}, {-1, ratio, ν, words + " outwards"}}
	}
	return out, nil
}

// bent returns the stresses of a place with the bending of the hi-lo there.
func (ref stationRef) bent(all []stationStress) []stationStress {
	if ref.bend == 0 {
		return all
	}
	out := make([]stationStress, len(all))
	for i, s := range all {
		out[i] = stationStress{s.pressure.Bent(ref.ratio, ref.ν), s.most.Bent(ref.ratio, ref.ν), s.least.Bent(ref.ratio, ref.ν)}
	}
	return out
}

// placesBent returns the places of a joint at which a hi-lo bends the wall.
func (m *model) placesBent(joint shellJoint, st *shellState) (out []stationRef) {
	if joint.tip || joint.h.seam == nil || given(joint.h.seam.HiLo) == 0 {
		return nil
	}
	for i, d := range m.reachesOf(joint, st) {
		if d.along != 0 {
			continue
		}
		for _, b := range st.whole.bends(joint, d.side) {
			out = append(out, stationRef{index: i, side: d.side, bend: b.sign, ratio: float64(b.sign) * b.ratio, ν: b.ν})
		}
	}
	return out
}
