package port

import (
	"math"

	"proofsheet/report/check"
)

// A StressArea is the stress method on the half section through a port: the average
// stress of the metal near the hole, and what it makes of the local membrane stress.
type StressArea struct {
	WallReach, Outside, Inside            float64 // L_R along the wall, L_H along the tube outside, wall included, L_I inside [m]
	Slenderness                           float64 // λ [-]
	WallArea, TubeArea, InsideArea, Welds float64 // A_1, A_2, A_3, A_41 + A_43 [m2]
	Force                                 float64 // f_N + f_S + f_Y, per length of section [N/m]
	Capacity                              float64 // p_max [Pa]
}

// fourthOpinion fills in the stress method for a tube in a cylinder, a cone (as the
// cylinder of its normal radius) or a dome (as the sphere of its radius), without pad
// or insert, not set on the wall, up to 45 degrees off its normal:
//
//	LR = min(√(Reff t), 2Rn), LH = min(√(Rn tn), projection, 8t) + t, LI = min(√(Rn tn), projection, 8t)
//	A1 = t LR max[(λ/5)^0.85, 1] (dome t LR), A2 = tn LH, A3 = tn LI, λ = min[(2Rn + tn)/√((2Reff + t) t), 12]
//	AT = E1 A1 + frn (A2 + A3) + A41 + A43,  Rxn = tn/ln(1 + tn/Rn), Rxs = t/ln(1 + t/Reff)
//	fN = p Rxn LH, fS = p Rxs (LR + tn), fY = p Rxs Rn/cos φ   (dome: fS and fY halved)
//	p_max = min[1.5 S/(2Ap/AT − Rxs/t), S t/Rxs],  Ap = (fN + fS + fY)/p   (dome: Rxs/2 in both)
//
// Beside the cylinder's radius R_n/cos φ is the far half of the bore as an arc,
// R_eff [acos(x0/R_eff) − acos((x0 + R_n)/R_eff)]; as recalled, half of it or R_n.
// L_R is cut off where metal ends. Elsewhere there is none.
//
// Source: ASME VIII-2 part 4.5, recalled; first figures reproduce example E4.5.1 of
// PTB-3 as recalled. Test: stressarea_test.go.
func (r *AreaReport) fourthOpinion(cut limits) {
	p, w, s := r.Port, r.Wall, r.Strengths
	radius, dome, reaches := p.stressRadius(w)
	if !reaches || r.Load.Convex || p.Pad != nil || p.Insert != nil || p.Fit == On || r.Chords.Obliquity > clearObliquity+angleSlack {
		return
	}
	t, tn, rn := w.Thickness, p.TubeWall, p.OutsideDiameter/2-p.TubeWall
	q := StressArea{Slenderness: math.Min((2*rn+tn)/math.Sqrt((2*radius+t)*t), 12)}
	m := r.Meridional
	end := math.Min(cut.outboard-m.Outboard.HalfOutside, cut.inboard-m.Inboard.HalfOutside)
	q.WallReach = math.Max(0, math.Min(math.Min(math.Sqrt(radius*t), 2*rn), end))
	most := math.Min(math.Sqrt(rn*tn), 8*t)
	q.Outside = math.Min(most, p.outsideNormal(w, r.Chords.Obliquity)) + t
	if p.Fit == Through {
		q.Inside = math.Min(most, p.insideNormal(w, r.Chords.Obliquity))
	}
	half, growth := 1.0, math.Max(math.Pow(q.Slenderness/5, 0.85), 1)
	if dome {
		half, growth = 0.5, 1
	}
	q.WallArea, q.TubeArea, q.InsideArea = t*q.WallReach*growth, tn*q.Outside, math.Min(tn, p.InsideWall)*q.Inside
	q.Welds = m.Outboard.A41 + m.Outboard.A43
	rxn, rxs := tn/math.Log1p(tn/rn), t/math.Log1p(t/radius)
	hole := rn / math.Cos(r.Chords.Obliquity)
	if r.Chords.Hillside { // the far half of the bore as an arc
		x := math.Abs(p.Offset)
		hole = radius * (math.Acos(x/radius) - math.Acos((x+rn)/radius))
	}
	ap := rxn*q.Outside + half*rxs*(q.WallReach+tn+hole)
	at := s.EfficiencyMeridional*q.WallArea + r.Ratios.FR2*(q.TubeArea+q.InsideArea) + q.Welds
	q.Force = r.Load.Pressure * ap
	q.Capacity = s.Wall * t / (half * rxs)
	if over := 2*ap/at - half*rxs/t; !(over <= 0) {
		q.Capacity = math.Min(q.Capacity, 1.5*s.Wall/over)
	}
	r.Stress = &q
}

// stressRadius returns R_eff of the method [m], inside, and whether the wall is a dome;
// not where the method does not reach.
func (p Port) stressRadius(w Wall) (radius float64, dome, ok bool) {
	t := w.Thickness
	switch {
	case w.Surface == Cylinder:
		return w.Radius - t/2, false, true
	case p.inKnuckle(w) || p.outsideMiddle(w):
		return math.NaN(), false, false
	case w.Surface == Cone:
		return p.Radius/math.Cos(w.HalfApex) - t/2, false, true
	case w.Surface == Sphere:
		return w.Radius - t/2, true, true
	case w.Surface == Torisphere:
		return w.Crown - t/2, true, true
	case w.Surface == Ellipsoid:
		d, h := 2*w.Radius-t, w.Depth-t/2
		return 0.9 * d / 6 * (2 + d*d/(4*h*h)), true, true
	}
	return math.NaN(), false, false
}

const stressName = "stress method"

// stressFormula is the comparison of the stress method as printed.
const stressFormula = "p ≤ p_max = min[1.5 S/(2A_p/A_T − R_xs/t), S t/R_xs], A_p = R_xn L_H + R_xs (L_R + t_n + R_n/cos φ), A_T = E_1 A_1 + f_r2 (A_2 + A_3) + A_41 + A_43 (dome: R_xs/2)"

func (q *StressArea) inputs() []check.Quantity {
	if q == nil {
		return nil
	}
	return []check.Quantity{check.M("L_R", "stress method, wall", q.WallReach), check.M("L_H", "stress method, tube outside and wall", q.Outside), check.M("L_I", "stress method, tube inside", q.Inside),
		check.Num("λ", "stress method, slenderness", q.Slenderness), check.M2("A_1", "stress method, wall", q.WallArea), check.M2("A_2", "stress method, tube outside", q.TubeArea),
		check.M2("A_3", "stress method, tube inside", q.InsideArea), check.M2("A_41 + A_43", "stress method, welds of a side", q.Welds), check.Pa("p_max", "stress method", q.Capacity)}
}
