package port

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A PressureArea is the second opinion on one side of the port in the
// meridional plane: the pressure that the metal near the hole can carry.
type PressureArea struct {
	Side                       string
	WallRadius                 float64 // r_is [m]
	WallLength, TubeLength     float64 // l_so along the wall, l'_b along the tube outside [m]
	InsideLength               float64 // l'_bi along the tube inside [m]
	WallArea, TubeArea         float64 // Afs, Afb [m2]
	PadArea, WeldArea          float64 // Afp, Afw [m2]
	WallPressure, TubePressure float64 // Aps, Apb: areas the pressure acts on [m2]
	ObliquePressure            float64 // Ap_φ [m2]
	Capacity                   float64 // p_max [Pa]
}

// secondOpinion fills in the pressure-area method on both sides, in the
// meridional plane:
//
//	p_max = [(Afs E1 + Afw) fs + Afb fob + Afp fop] / [Aps + Apb + ½ Apφ + ½ (Afs + Afw + Afb + Afp)]
//	lso = √[(2 ris + t) t], lbo = √[(OD − tn) tn], inside half of it
//	cylinder Aps = ris (lso + a), cone Aps = ½ (lso + a)[2 ris ± (lso + a) tan α],
//	dome     Aps = ½ ris² (lso + a)/(½ t + ris)
//	Apb = ½ ID (l′b + t), Apφ = ½ ID² tan φ
//
// Beside the cylinder's radius both sides of the transverse plane too, where the long
// chord lies, by the dome's Aps: the longitudinal stress is that of a sphere; Apφ is
// counted in both planes, on the safe side.
//
// An inserted plate counts as far as it goes. fob and fop are the lesser of wall and tube, wall and pad; a is the outside
// half-chord (sphere: arc). It does not reach flat heads, pressure on the
// convex side, or a hole in a knuckle: there the report holds none and says so.
//
// Source: European method, EN 13445-3 clause 9, recalled; the cone term is a
// hoop balance, computed. Tests: oblique_test.go, published_test.go, limits_test.go.
func (r *AreaReport) secondOpinion(cut limits) error {
	p, w := r.Port, r.Wall
	if w.Surface == Flat || r.Load.Convex || p.inKnuckle(w) {
		r.Cautions = append(r.Cautions, fmt.Sprintf("port %s: the pressure-area method does not reach this wall; area replacement alone speaks", p.Name))
		return nil
	}
	if err := r.pressureRange(); err != nil {
		return err
	}
	c := r.Chords
	outboard, inboard := c.OutsideOutboard, c.OutsideInboard
	if w.Surface == Sphere || w.Surface == Torisphere {
		outboard, inboard = p.arcs(w)
	}
	r.Pressure = []PressureArea{
		r.pressureSide("outboard", 1, outboard, cut.outboard, r.Meridional.Outboard),
		r.pressureSide("inboard", -1, inboard, cut.inboard, r.Meridional.Inboard),
	}
	if c.Hillside {
		rising, falling := p.sideArcs(w)
		r.Pressure = append(r.Pressure, r.pressureSide(risingSide, 1, rising, cut.transverse, r.Transverse.Outboard),
			r.pressureSide(fallingSide, -1, falling, cut.transverse, r.Transverse.Inboard))
	}
	return nil
}

// arcs returns the outside-diameter arcs on a spherical wall either side of the
// tube axis [m].
func (p Port) arcs(w Wall) (outboard, inboard float64) {
	rms := w.Radius
	if w.Surface == Torisphere {
		rms = w.Crown
	}
	a := p.OutsideDiameter / 2
	if !p.Parallel {
		arc := rms * math.Asin(a/rms)
		return arc, arc
	}
	at := math.Asin(p.Radius / rms)
	return rms * (math.Asin((p.Radius+a)/rms) - at), rms * (at - math.Asin((p.Radius-a)/rms))
}

// The sides of the transverse plane of a tube beside the cylinder's radius.
const risingSide, fallingSide = "rising clock", "falling clock"

// sideArcs returns the outside-diameter arcs on a cylinder either side of a tube beside
// its radius, rising clock first [m].
func (p Port) sideArcs(w Wall) (rising, falling float64) {
	a, r := p.OutsideDiameter/2, w.Radius
	at := math.Asin(p.Offset / r)
	return r * (math.Asin((p.Offset+a)/r) - at), r * (at - math.Asin((p.Offset-a)/r))
}

// curvature returns r_is [m] of the method: the wall's radius at the port.
func (p Port) curvature(w Wall) float64 {
	t := w.Thickness
	switch w.Surface {
	case Cone:
		return p.Radius / math.Cos(w.HalfApex)
	case Ellipsoid:
		di, hi := 2*w.Radius-t, w.Depth-t/2
		return 0.44*di*di/(2*hi) + 0.02*di
	case Torisphere:
		return w.Crown - t/2
	}
	return w.Radius - t/2
}

// pressureRange returns an error outside the sizes the method holds for.
func (r *AreaReport) pressureRange() error {
	od, ris := r.Port.OutsideDiameter, r.Port.curvature(r.Wall)
	switch r.Wall.Surface {
	case Cylinder, Cone:
		return check.Within("port.Area", "tube diameter over twice the wall's radius of curvature", od/(2*ris), 0, 1, "pressure-area method, recalled")
	}
	return check.Within("port.Area", "tube diameter over the head's outside diameter", od/(2*r.Wall.Radius+r.Wall.Thickness), 0, 0.6, "pressure-area method, recalled")
}

// pressureSide works out one side; sign is the cosine to straight outboard, a the outside
// half-chord and cut the distance along the wall where metal stops counting [m].
func (r *AreaReport) pressureSide(side string, sign, a, cut float64, areas Areas) PressureArea {
	p, w, s := r.Port, r.Wall, r.Strengths
	t, tn, id, φ := w.Thickness, p.TubeWall, p.OutsideDiameter-2*p.TubeWall, r.Chords.Obliquity
	q := PressureArea{Side: side, WallRadius: p.curvature(w)}
	lbo := math.Sqrt((p.OutsideDiameter - tn) * tn)
	q.WallLength = math.Min(math.Sqrt((2*q.WallRadius+t)*t), cut-a)
	q.TubeLength = math.Min(lbo, p.outsideNormal(w, φ))
	ti := p.atHole(w)
	q.WallArea = p.wallMetal(w, a, a+q.WallLength)
	q.TubeArea = tn * (q.TubeLength + ti)
	switch p.Fit {
	case On:
		q.WallArea, q.TubeArea = q.WallArea+ti*tn, tn*q.TubeLength
	case Through:
		q.InsideLength = math.Min(lbo/2, p.insideNormal(w, φ))
		q.TubeArea += math.Min(tn, p.InsideWall) * q.InsideLength
	}
	q.WeldArea = r.weldArea(areas, q)
	fop := s.Wall
	if p.Pad != nil {
		fop = math.Min(s.Wall, s.Pad)
		length := math.Min(areas.HalfPad-areas.HalfOutside, q.WallLength)
		q.PadArea = math.Max(0, length) * math.Min(p.Pad.Thickness, t)
	}
	q.WallPressure = wallPressure(w, q.WallRadius, q.WallLength+a, sign)
	efficiency := s.EfficiencyMeridional
	if side == risingSide || side == fallingSide {
		q.WallPressure, efficiency = domePressure(w, q.WallRadius, q.WallLength+a), s.EfficiencyTransverse
	}
	q.TubePressure = id * (q.TubeLength + ti) / 2
	q.ObliquePressure = id * id * math.Tan(φ) / 2
	force := (q.WallArea*efficiency+q.WeldArea)*s.Wall + q.TubeArea*math.Min(s.Wall, s.Tube) + q.PadArea*fop
	q.Capacity = force / (q.WallPressure + q.TubePressure + q.ObliquePressure/2 +
		(q.WallArea+q.WeldArea+q.TubeArea+q.PadArea)/2)
	return q
}

// wallPressure returns Aps [m2] over a reach along the wall [m] from the tube
// axis, ris the wall's radius [m], sign the cosine to straight
// outboard.
func wallPressure(w Wall, ris, reach, sign float64) float64 {
	switch w.Surface {
	case Cylinder:
		return ris * reach
	case Cone:
		return reach / 2 * (2*ris + sign*reach*math.Tan(w.HalfApex))
	}
	return domePressure(w, ris, reach)
}

// domePressure is [wallPressure] where half of p r is carried [m2].
func domePressure(w Wall, ris, reach float64) float64 {
	return ris * ris * reach / 2 / (w.Thickness/2 + ris)
}

// weldArea returns the fillets of one side within the lengths that count along
// wall and tube, without strength ratios [m2].
func (r *AreaReport) weldArea(a Areas, q PressureArea) float64 {
	sum, te, sinβ := 0.0, 0.0, math.Min(r.Meridional.SinBeta, r.Transverse.SinBeta)
	if pad := r.Port.Pad; pad != nil {
		te = pad.Thickness
		if a.A42 > 0 {
			sum += filletWithin(pad.Leg, pad.Leg, a.HalfOutside+q.WallLength-a.HalfPad)
		}
	}
	if a.A41 > 0 {
		sum += filletWithin(r.Port.OutsideLeg, q.TubeLength-te, q.WallLength) * sinβ
	}
	if a.A43 > 0 {
		sum += filletWithin(r.Port.InsideLeg, q.InsideLength, q.WallLength) * sinβ
	}
	return sum
}
