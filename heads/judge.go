package heads

import (
	"math"

	"proofsheet/material"
)

// A trial is one comparison that is due at a place: an equivalent stress, or
// the stress square to a seam.
type trial struct {
	limits     *material.Limits
	stress     material.Stress // of an equivalent stress
	across     [3]float64      // stress square to a seam: from pressure, and both extremes from line loads [Pa]
	efficiency float64         // of that seam; 0: an equivalent stress [-]
	where      string
}

// use returns demand over capacity [-].
func (t *trial) use() float64 {
	if t.efficiency == 0 {
		return t.limits.EquivalentUse(t.stress)
	}
	return t.limits.NormalUse(t.across[0], t.across[1], t.across[2], t.efficiency)
}

// judged returns the comparison as the sheet prints it.
func (t *trial) judged() material.Judged {
	if t.efficiency == 0 {
		return t.limits.Equivalent(t.stress)
	}
	return t.limits.Normal(t.across[0], t.across[1], t.across[2], t.efficiency)
}

// trials appends every comparison that is due at a place; zone marks one in a
// weld zone, rim the last one, which the girth seam crosses. An efficiency of 0 is given as not a
// number, so that it is never taken for a stress without a seam.
func (a *Allowables) trials(all []trial, at *place, inward bool, l *Loading, s *Seams, zone, rim bool) []trial {
	if zone {
		all = at.equivalents(all, &a.Zone, "in the weld zone", inward, l)
	} else {
		all = at.equivalents(all, &a.Parent, "in the wall", inward, l)
	}
	hoopHeld := at.hoopHeld(inward)
	seam := func(limits *material.Limits, stress, most, least, efficiency float64, where string) {
		if !(efficiency > 0) {
			efficiency = math.NaN()
		}
		all = append(all, trial{limits: limits, across: [3]float64{stress, most, least}, efficiency: efficiency, where: where})
	}
	if s.Segmented {
		const across = "across the welds inside the head"
		seam(&a.SeamSegment, at.mer, at.loadMost, at.loadLeast, s.Segment, across)
		if hoopHeld {
			most, least := at.hoopLoads()
			seam(&a.SeamSegment, at.hoop, most, least, s.Segment, across)
		}
	}
	if rim {
		seam(&a.SeamGirth, at.mer, at.loadMost, at.loadLeast, s.Girth, "across the girth seam")
	}
	return all
}

// equivalents appends the equivalent stresses that are due at a place.
func (at *place) equivalents(all []trial, limits *material.Limits, where string, inward bool, l *Loading) []trial {
	hoops, n := at.hoops(at.hoopHeld(inward))
	for _, σθ := range hoops[:n] {
		all = append(all, trial{limits: limits, where: where, stress: material.Stress{
			HoopPressure: σθ, MeridionalPressure: at.mer,
			MeridionalLoadMost: at.loadMost, MeridionalLoadLeast: at.loadLeast,
			PressureLeast: l.PressureLeast, Present: l.Present,
		}})
	}
	return all
}

// hoopHeld reports whether the hoop stress of membrane theory is held to the
// limit. On an outward head it is unless it is opposite to the pressure; on an
// inward one only a knuckle is left out, since the rim of an inward ellipsoid is
// truly in tension.
func (at *place) hoopHeld(inward bool) bool {
	if inward {
		return at.Piece != "knuckle"
	}
	return at.hoop*at.p >= 0
}

// hoops returns the n hoop stresses [Pa] to be tried: from pressure, and with what the line
// loads add through the curvature of the meridian, σ_θ = −(r2/r1) σ_φ, which is
// counted with the factors of pressure, the higher ones.
func (at *place) hoops(held bool) (out [3]float64, n int) {
	if !held {
		return out, 1
	}
	most, least := at.hoopLoads()
	if most == 0 && least == 0 {
		return [3]float64{at.hoop}, 1
	}
	return [3]float64{at.hoop, at.hoop + most, at.hoop + least}, 3
}

// hoopLoads returns the hoop stress from line loads, most and least [Pa].
func (at *place) hoopLoads() (most, least float64) {
	ratio := -at.R2 / at.R1
	u, v := ratio*at.loadMost, ratio*at.loadLeast
	return math.Max(u, v), math.Min(u, v)
}
