package port

import (
	"errors"
	"fmt"
	"math"
)

// ratios returns the strength ratios, each capped at 1: of the tube through the
// wall (1 when it abuts), of tube, of the weaker of tube and pad, and of the pad,
// to the wall.
//
// Source: ASME VIII-1 UG-37(a), through case read, set-on recalled.
func (s Strengths) ratios(p Port) Ratios {
	fr := Ratios{FR1: math.Min(1, s.Tube/s.Wall)}
	fr.FR2, fr.FR3, fr.FR4 = fr.FR1, fr.FR1, 1
	if p.Fit == On {
		fr.FR1 = 1
	}
	if p.Pad != nil {
		fr.FR4 = math.Min(1, s.Pad/s.Wall)
		fr.FR3 = math.Min(fr.FR2, fr.FR4)
	}
	return fr
}

// valid returns an error for strengths that are missing or impossible.
func (s Strengths) valid(pad bool) error {
	var f faults
	f.positive("allowable stress of the wall at the port", s.Wall)
	f.positive("allowable stress of the tube", s.Tube)
	if pad {
		f.positive("allowable stress of the pad", s.Pad)
	}
	efficiency := func(plane string, e float64) {
		if !(e > 0 && e <= 1) {
			f.say("efficiency of the seam through the port in the %s plane is %.4g, must be above 0 and at most 1", plane, e)
		}
	}
	efficiency("meridional", s.EfficiencyMeridional)
	efficiency("transverse", s.EfficiencyTransverse)
	switch e := s.EfficiencyTube; {
	case e == 0:
		f.say("the efficiency of the tube's seam is missing")
	case !(e >= 0.3 && e <= 1):
		f.say("the efficiency of the tube's seam is %.4g, must be from 0.3 to 1", e)
	}
	return errors.Join(f.all...)
}

// valid returns an error for a load that is missing or of the wrong sense.
func (l Load) valid() error {
	var f faults
	f.notNegative("pressure at the port", l.Pressure)
	f.notNegative("tensile resultant across the meridional plane", l.Hoop)
	f.notNegative("tensile resultant across the transverse plane", l.Meridional)
	f.notNegative("factored resultant across the meridional plane", l.HoopAsked)
	f.notNegative("factored resultant across the transverse plane", l.MeridionalAsked)
	f.notNegative("required thickness of the part", l.Required)
	return errors.Join(f.all...)
}

// fitting returns an error for a joint that the rules do not cover: a set-on
// tube more than 30 degrees off the wall's normal without full penetration, and a
// groove deeper than the wall that is left for strength, whose metal is not there.
func (p Port) fitting(w Wall, φ float64) error {
	if p.Fit == On && φ > math.Pi/6+angleSlack && !p.FullGroove {
		return fmt.Errorf("port %s: a tube set on the wall %.1f deg off its normal needs a joint bevelled to full penetration", p.Name, φ*180/math.Pi)
	}
	if p.Groove > p.atHole(w)*(1+1e-9) && !p.FullGroove {
		return fmt.Errorf("port %s: a groove of %.4g mm is deeper than the %.4g mm of wall left after tolerance, thinning and corrosion: count no more than that, or weld through and write groove = \"full\"",
			p.Name, p.Groove*1e3, p.atHole(w)*1e3)
	}
	return nil
}

// outsideNormal returns what the tube sticks out of the wall on its shorter side,
// measured normal to the wall [m].
func (p Port) outsideNormal(w Wall, φ float64) float64 {
	if w.Inward {
		φ = p.steeper(w, φ)
	}
	return p.Outside * math.Cos(φ)
}

// insideNormal returns the same inside [m].
func (p Port) insideNormal(w Wall, φ float64) float64 {
	if !w.Inward {
		φ = p.steeper(w, φ)
	}
	return p.Inside * math.Cos(φ)
}

// steeper returns the obliquity [rad] at the outboard edge of a parallel tube, or at the
// far edge of one beside the cylinder's radius: on a dome's concave face the tube is shorter there, and the wall steeper.
func (p Port) steeper(w Wall, φ float64) float64 {
	if p.hillside(w) {
		return math.Asin((math.Abs(p.Offset) + p.OutsideDiameter/2) / w.Radius)
	}
	if !p.Parallel {
		return φ
	}
	return math.Max(φ, w.normalAngle(p.Radius+p.OutsideDiameter/2))
}
