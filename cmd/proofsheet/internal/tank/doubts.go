package tank

import (
	"fmt"
	"math"

	"proofsheet/report/unit"
)

// The limits beyond which a length or an angle is asked about. They are far from what is
// built, so that nobody learns to pass over what is asked [-].
const (
	thickShare = 0.2 // wall over inside radius: thin-wall checks end at 0.1
	slender    = 40  // length over diameter
)

// Doubts returns what is read and may be meant, but looks like a slip of a unit or a
// digit. The tank is assessed as it is written.
func (t *Tank) Doubts() (out []Fault) {
	out = append(out, t.thickWalls()...)
	if inside := t.Cylinder.NominalInsideDiameter(); t.Cylinder.Length > slender*inside {
		out = append(out, t.Fault("cylinder.length", "%s is %.3g times the diameter; is the unit right?", t.Written("cylinder.length"), t.Cylinder.Length/inside))
	}
	turned := func(key string, clock float64) {
		if text := t.Written(key); math.Abs(clock) > 2*math.Pi*(1+1e-9) && text != "" {
			out = append(out, t.Fault(key, "%s is more than a turn; the same place is %q", text, unit.Like(unit.Angle, math.Mod(clock, 2*math.Pi), text)))
		}
	}
	turned("cylinder.long_seam_clock", t.Cylinder.LongSeamClock)
	turned("head.aft.segment_seam_clock", t.Head.Aft.SegmentSeamClock)
	turned("head.forward.segment_seam_clock", t.Head.Forward.SegmentSeamClock)
	seen := map[string]bool{}
	for _, p := range t.Port {
		if !seen[p.Group] { // the others of a group are turned on from its clock
			seen[p.Group] = true
			turned("port."+p.Group+".clock", p.Clock)
		}
	}
	return out
}

// thickWalls are those of shells, not of plates, that no thin-wall check takes.
func (t *Tank) thickWalls() (out []Fault) {
	ask := func(key string, wall, inside float64) {
		if inside > 0 && wall > thickShare*inside/2 {
			out = append(out, t.Fault(key, "%s is %.2g of the inside radius, and the checks of a thin wall end at 0.1; is the unit right?", t.Written(key), wall/(inside/2)))
		}
	}
	ask("cylinder.thickness", t.Cylinder.Thickness, t.Cylinder.NominalInsideDiameter())
	for end, h := range map[string]Head{"aft": t.Head.Aft, "forward": t.Head.Forward} {
		if h.Shape != "flat" {
			ask(fmt.Sprintf("head.%s.thickness", end), h.Thickness, t.SeamInsideDiameter(h))
		}
	}
	return Faults(out).sorted(t.File)
}
