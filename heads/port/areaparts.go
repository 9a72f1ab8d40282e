package port

import "math"

// additions fills in what tube, welds and pad bring to one side.
func (r *AreaReport) additions(a *Areas, pl Plane) {
	p, fr := r.Port, r.Ratios
	a.A2 = (p.TubeWall - r.RequiredTube) * fr.FR2 * pl.NormalLimit
	a.A3 = p.InsideWall * fr.FR2 * pl.InsideLimit
	if p.Fit != Through {
		a.A3 = 0
	}
	ratio, te := fr.FR2, 0.0
	if p.Pad != nil {
		ratio, te = fr.FR3, p.Pad.Thickness
		a.A5 = (math.Min(a.HalfPad, a.Limit) - a.HalfOutside) * p.Pad.Thickness * fr.FR4
		if a.HalfPad <= a.Limit {
			a.A42 = p.Pad.Leg * p.Pad.Leg / 2 * fr.FR4
		}
	}
	outside, inside := p.fillets(r.Wall, r.Chords.Obliquity)
	if outside {
		a.A41 = filletWithin(p.OutsideLeg, pl.NormalLimit-te, a.Limit-a.HalfOutside) * pl.SinBeta * ratio
	}
	if inside {
		a.A43 = filletWithin(p.InsideLeg, pl.InsideLimit, a.Limit-a.HalfOutside) * pl.SinBeta * fr.FR2
	}
}

// fillets reports whether the tube sticks out far enough for its fillets, outside
// (over the pad) and inside; one that ends below its fillet has none.
func (p Port) fillets(w Wall, φ float64) (outside, inside bool) {
	te := 0.0
	if p.Pad != nil {
		te = p.Pad.Thickness
	}
	return p.OutsideLeg > 0 && p.outsideNormal(w, φ)-te >= p.OutsideLeg, p.InsideLeg > 0 && p.Fit == Through && p.insideNormal(w, φ) >= p.InsideLeg
}

// filletWithin returns the area [m2] of a fillet of equal legs [m] that lies no further
// off the wall than high and no further along it than wide [m].
//
// Source: ASME VIII-1 UG-40, limits of reinforcement (read); cut computed.
func filletWithin(leg, high, wide float64) float64 {
	if !(high > 0 && wide > 0) {
		return 0
	}
	if high+wide <= leg {
		return high * wide
	}
	off := func(limit float64) float64 { x := math.Max(0, leg-limit); return x * x / 2 }
	return leg*leg/2 - off(high) - off(wide)
}

// add sums a side into the whole section; A1 has its own rule.
func (a *Areas) add(side Areas) {
	a.A2 += side.A2
	a.A3 += side.A3
	a.A41 += side.A41
	a.A42 += side.A42
	a.A43 += side.A43
	a.A5 += side.A5
}
