package heads

import (
	"math"

	"proofsheet/material"
)

// A verdict is one comparison at a place, with the words for where it is.
type verdict struct {
	material.Judged
	where string
}

// judge returns every comparison that is due at a place; rim marks the last
// one, which the girth seam crosses.
func (a Allowables) judge(at place, inward bool, l Loading, s Seams, rim bool) []verdict {
	limits, where := a.Parent, "in the wall"
	if s.inZone(at) {
		limits, where = a.Zone, "in the weld zone"
	}
	hoopHeld := at.hoopHeld(inward)
	var all []verdict
	for _, σθ := range at.hoops(hoopHeld) {
		all = append(all, verdict{limits.Equivalent(material.Stress{
			HoopPressure: σθ, MeridionalPressure: at.mer,
			MeridionalLoadMost: at.loadMost, MeridionalLoadLeast: at.loadLeast,
			PressureLeast: l.PressureLeast, Present: l.Present,
		}), where})
	}
	if s.Segmented {
		across := "across the welds inside the head"
		all = append(all, verdict{a.SeamSegment.Normal(at.mer, at.loadMost, at.loadLeast, s.Segment), across})
		if hoopHeld {
			most, least := at.hoopLoads()
			all = append(all, verdict{a.SeamSegment.Normal(at.hoop, most, least, s.Segment), across})
		}
	}
	if rim {
		all = append(all, verdict{a.SeamGirth.Normal(at.mer, at.loadMost, at.loadLeast, s.Girth), "across the girth seam"})
	}
	return all
}

// hoopHeld reports whether the hoop stress of membrane theory is held to the
// limit. On an outward head it is unless it is opposite to the pressure; on an
// inward one only a knuckle is left out, since the rim of an inward ellipsoid is
// truly in tension.
func (at place) hoopHeld(inward bool) bool {
	if inward {
		return at.Piece != "knuckle"
	}
	return at.hoop*at.p >= 0
}

// hoops returns the hoop stresses [Pa] to be tried: from pressure, and with what the line
// loads add through the curvature of the meridian, σ_θ = −(r2/r1) σ_φ, which is
// counted with the factors of pressure, the higher ones.
func (at place) hoops(held bool) []float64 {
	if !held {
		return []float64{0}
	}
	most, least := at.hoopLoads()
	if most == 0 && least == 0 {
		return []float64{at.hoop}
	}
	return []float64{at.hoop, at.hoop + most, at.hoop + least}
}

// hoopLoads returns the hoop stress from line loads, most and least [Pa].
func (at place) hoopLoads() (most, least float64) {
	ratio := -at.R2 / at.R1
	u, v := ratio*at.loadMost, ratio*at.loadLeast
	return math.Max(u, v), math.Min(u, v)
}

// inZone reports whether a place lies in the zone of a weld. A weld that runs
// from apex to rim has its zone at every radius.
func (s Seams) inZone(at place) bool {
	if s.ZoneWidth <= 0 {
		return false
	}
	if s.Segmented || at.from <= s.ZoneWidth {
		return true
	}
	for _, z := range s.PortZones {
		if at.R >= z[0] && at.R <= z[1] {
			return true
		}
	}
	return false
}
