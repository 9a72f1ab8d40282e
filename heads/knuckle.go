package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// ShieldDrucker returns the limit pressure of a torispherical head over its
// yield strength, p_lim/σ_y [-], at wall over crown radius tL = t/L [-], knuckle
// radius over diameter rD = r/D [-] and crown radius over diameter LD = L/D [-]:
//
//	p_lim/σ_y = (0.33 + 5.5 r/D) t/L + 28 (1 − 2.2 r/D)(t/L)² − 0.0006
//
// for 0.06 ≤ r/D ≤ 0.16, 0.6 ≤ L/D ≤ 1, 0.002 ≤ t/L ≤ 0.04; outside NaN and an
// error. It is a limit pressure, not an allowable.
//
// Source: Shield and Drucker (recalled); 5 to 16 % under computed limit loads.
func ShieldDrucker(tL, rD, LD float64) (float64, error) {
	const fn, why = "heads.ShieldDrucker", "limit pressure of Shield and Drucker"
	if err := errors.Join(
		check.Within(fn, "wall over crown radius", tL, 0.002*(1-rounding), 0.04*(1+rounding), why),
		check.Within(fn, "knuckle radius over diameter", rD, 0.06*(1-rounding), 0.16*(1+rounding), why),
		check.Within(fn, "crown radius over diameter", LD, 0.6*(1-rounding), 1+rounding, why),
	); err != nil {
		return math.NaN(), err
	}
	return (0.33+5.5*rD)*tL + 28*(1-2.2*rD)*tL*tL - 0.0006, nil
}

// A Dish is the torisphere that a knuckle is judged as; lengths inside [m].
type Dish struct {
	D, L, R float64 // diameter, crown and knuckle radius [m]
	T       float64 // wall [m]
}

// ThinKnuckle returns the elastic buckling pressure pe, the yield pressure py and the
// failure pressure pck [Pa] of a thin knuckle, with Young's modulus E and yield
// strength Sy [Pa]:
//
//	C1 = 9.31 r/D − 0.086 (r/D ≤ 0.08), 0.692 r/D + 0.605 (above)
//	C2 = 1.25 (r/D ≤ 0.08), 1.46 − 2.6 r/D (above)
//	Se = C1 E t/r    φ = sqrt(L t)/r    b = arccos[(0.5 D − r)/(L − r)]
//	Re = r + (0.5 D − r)/cos(b − φ) (φ < b), 0.5 D (else)
//	pe = Se t/{C2 Re [0.5 Re/r − 1]}    py = Sy t/{the same}
//	pck = 0.6 pe (pe ≤ py), 0.408 py + 0.192 pe (up to 8.29 py), 2 py (above)
//
// for 0.0005 ≤ t/L < 0.002 and 0.06 ≤ r/D ≤ 0.2; outside NaN and an error. A head bought by
// its outside diameter may miss 0.06 and L = D by 1 %, and D here is inside, up to 0.5 %
// less: it keeps its limit. Nothing is divided out: allow pck/1.5.
//
// Source: ASME VIII-1 Appendix 1-4(f) (recalled); pe agrees with computed linear bifurcation.
func (d Dish) ThinKnuckle(E, Sy float64) (pe, py, pck float64, err error) {
	const fn, why = "heads.Dish.ThinKnuckle", "thin knuckle of the vessel rule"
	rD, tL := d.R/d.D, d.T/d.L
	if err := errors.Join(
		check.Within(fn, "wall over crown radius", tL, 0.0005, math.Nextafter(0.002, 0), why),
		check.Within(fn, "knuckle radius over diameter", rD, 0.06*(1-grace), 0.2*(1+rounding), why),
		check.Within(fn, "crown radius over diameter", d.L/d.D, 0.5+rounding, (1+grace)*1.005, why),
		check.Within(fn, "Young's modulus (Pa)", E, 1, math.MaxFloat64, why),
		check.Within(fn, "yield strength (Pa)", Sy, 1, math.MaxFloat64, why),
	); err != nil {
		return math.NaN(), math.NaN(), math.NaN(), err
	}
	k := d.thin(E, Sy)
	return k.pe, k.py, k.pck, nil
}

// thinKnuckle holds every step of [Dish.ThinKnuckle], for the sheet.
type thinKnuckle struct {
	C1, C2, φ, b, Re float64 // C1, C2 [-], φ and b [rad], Re [m]
	pe, py, pck      float64 // [Pa]
	radius, branch   string  // Re and pck as printed
}

// thin works [Dish.ThinKnuckle] out, its range being checked.
func (d Dish) thin(E, Sy float64) thinKnuckle {
	rD := d.R / d.D
	k := thinKnuckle{C1: 9.31*rD - 0.086, C2: 1.25, φ: math.Sqrt(d.L*d.T) / d.R, b: math.Acos((0.5*d.D - d.R) / (d.L - d.R)), Re: 0.5 * d.D, radius: "D/2"}
	if rD > 0.08 {
		k.C1, k.C2 = 0.692*rD+0.605, 1.46-2.6*rD
	}
	if k.φ < k.b {
		k.Re, k.radius = d.R+(0.5*d.D-d.R)/math.Cos(k.b-k.φ), "r + (D/2 − r)/cos(b − φ)"
	}
	per := d.T / (k.C2 * k.Re * (0.5*k.Re/d.R - 1))
	k.pe, k.py = k.C1*E*d.T/d.R*per, Sy*per
	switch G := k.pe / k.py; {
	case G <= 1:
		k.pck, k.branch = 0.6*k.pe, "0.6 p_e"
	case G <= 8.29:
		k.pck, k.branch = 0.408*k.py+0.192*k.pe, "0.408 p_t + 0.192 p_e"
	default:
		k.pck, k.branch = 2*k.py, "2 p_t"
	}
	return k
}

// A KnuckleMetal is what a knuckle is made of.
type KnuckleMetal struct {
	Yield          float64 // 0.2 % proof strength, welded where a weld is in the knuckle or its zone reaches it [Pa]
	ElasticModulus float64 // E [Pa]
	Factor         float64 // on yield: 1.5, by flight proof factor over proof limit where larger [-]
}

// A KnuckleLimit is one formula's answer for a knuckle.
type KnuckleLimit struct {
	Group     int     // 1 plastic collapse, 2 European buckling, 3 buckling with E
	Name      string  // for the reader
	Symbol    string  // of Allowable and of AtProof, p_c, p_y, p_b, p_ck
	Allowable float64 // in service [Pa]
	AtProof   float64 // while the proof pressure stands; +Inf where it is not asked [Pa]
	Source    check.Source

	steps          string           // as printed, up to the answer
	service, proof string           // as printed, what Allowable and AtProof are
	inputs         []check.Quantity // of them, beside those of every limit
}

// formula returns the steps and the limit as they are printed.
func (l KnuckleLimit) formula(atProof bool) string {
	side := l.service
	if atProof {
		side = l.proof
	}
	return l.steps + l.Symbol + " = " + side
}

// dish returns the torisphere that stands for the knuckle of a head, inside, corroded:
//
//	torisphere: itself; toricone: L = D1/(2 cos α)
//	ellipsoid, k = D/2h: r = D (0.5/k − 0.08), L = D (0.44 k + 0.02), k not under 1.7
//
// and no torisphere for a head without a knuckle, with the reason. L under 0.6 D is
// taken as 0.6 D, and r above 0.2 D as 0.2 D, both on the safe side.
func dish(h Head, w Wall) (d Dish, do float64, none string, err error) {
	n := h.Geometry()
	worn, err := Corroded(h, w.Corrosion)
	if err != nil {
		return d, 0, "", err
	}
	g := worn.Geometry()
	d = Dish{D: g.InsideDiameter, L: g.CrownRadius, R: g.KnuckleRadius, T: w.Thickness}
	do = n.InsideDiameter + 2*n.Thickness
	switch h.Kind() {
	case "torisphere":
	case "toricone":
		r := rule{g: g}
		d.L = r.large() / (2 * math.Cos(g.HalfAngle))
	case "ellipsoid":
		if n.Aspect <= math.Sqrt2 {
			return d, do, "the hoop of an ellipsoid no flatter than D/2h = 1.414 is tension everywhere", nil
		}
		if err := check.Within("heads.CheckKnuckle", "aspect D/2h", g.Aspect, math.Sqrt2*(1-grace), 2.2, "torisphere that stands for an ellipsoid"); err != nil {
			return d, do, "", err
		}
		k := math.Max(1.7, g.Aspect)
		d.R, d.L = d.D*(0.5/k-0.08), d.D*(0.44*k+0.02)
	default:
		return d, do, "a " + h.Kind() + " has no knuckle", nil
	}
	d.L, d.R = math.Max(d.L, 0.6*d.D), math.Min(d.R, 0.2*d.D)
	return d, do, "", check.Within("heads.CheckKnuckle", "wall (m)", w.Thickness, math.SmallestNonzeroFloat64, math.MaxFloat64, "a wall must be left")
}

// KnuckleLimits returns every formula for the knuckle of a head that is in its range:
//
//	(1) Shield-Drucker p_lim/k, and European p_y with f = σ_y/k
//	(2) European p_b with f_b = σ_y/k, at a wall up to 0.005 Di
//	(3) pck/k of a thin knuckle, with k the factor on yield
//
// The proof pressure is held to p_lim, pck and p_b with f_b = σ_y/1.05. t/L above 0.04 counts as 0.04,
// r/D above 0.16 as 0.16 in the first. It is an error when none of group (1)
// is in range, and when t/L is under 0.002 without group (3): a limit that may be the
// lowest is never left out unsaid.
//
// Sources: as at [ShieldDrucker], [Dish.ThinKnuckle], and EN 13445-3 (recalled).
func KnuckleLimits(h Head, w Wall, m KnuckleMetal) ([]KnuckleLimit, error) {
	d, do, none, err := dish(h, w)
	switch {
	case err != nil:
		return nil, err
	case none != "":
		return nil, errors.New(none)
	}
	const fn = "heads.KnuckleLimits"
	if err := errors.Join(
		check.Within(fn, "yield strength (Pa)", m.Yield, 1, math.MaxFloat64, "knuckle formulas"),
		check.Within(fn, "Young's modulus (Pa)", m.ElasticModulus, 1, math.MaxFloat64, "knuckle formulas"),
		check.Within(fn, "factor on yield", m.Factor, 1.5, math.MaxFloat64, "1.5 is the least"),
		check.Within(fn, "knuckle radius over outside diameter", d.R/do, 0.06*(1-grace), 1, "knuckle formulas"),
		check.Within(fn, "crown radius over outside diameter", d.L/do, 0, 1+grace, "knuckle formulas"),
	); err != nil {
		return nil, err
	}
	all := append(d.plastic(do, m), d.european(do, m)...)
	thin := d.T/d.L < 0.002
	_, _, pck, err := d.ThinKnuckle(m.ElasticModulus, m.Yield)
	if err == nil {
		all = append(all, d.thinLimit(pck, m))
	}
	if thin && err != nil {
		return nil, fmt.Errorf("a knuckle with t/L under 0.002 needs its thin-wall limit: %w", err)
	}
	if len(all) == 0 || all[0].Group != 1 {
		return nil, fmt.Errorf("no formula for plastic collapse of the knuckle holds at t/L %.4g, r/D %.4g, L/D %.4g", d.T/d.L, d.R/do, d.L/do)
	}
	return all, nil
}

// plastic returns the Shield-Drucker limit, if in range; do is the outside diameter [m].
// The limit rises with r/D, so the outside diameter is on the safe side of the inside
// one; and a head bought with L = D and r = 0.06 D by its outside diameter stays in range.
func (d Dish) plastic(do float64, m KnuckleMetal) []KnuckleLimit {
	x := math.Max(0.06, math.Min(0.16, d.R/do)) // under 0.06 within the grace that KnuckleLimits allows
	y := math.Min(0.04, d.T/math.Max(d.L, 0.6*do))
	q, err := ShieldDrucker(y, x, math.Min(1, math.Max(0.6, d.L/do)))
	if err != nil || !(q > 0) {
		return nil
	}
	p := q * m.Yield
	const side = "[(0.33 + 5.5 x) y + 28 (1 − 2.2 x) y² − 0.0006] "
	const steps = "x = max(0.06, min(r/D_o, 0.16)); y = min(t/max(L, 0.6 D_o), 0.04); "
	return []KnuckleLimit{{Group: 1, Name: "plastic collapse by Shield and Drucker", Symbol: "p_c", Allowable: p / m.Factor, AtProof: p,
		Source: check.Source{Doc: "Shield and Drucker", Where: "limit pressure of torispherical heads, recalled; confirm", How: check.Memory},
		steps:  steps, service: side + "(σ_y/k)", proof: side + "σ_y",
		inputs: []check.Quantity{check.M("D_o", "outside diameter, nominal wall", do), check.Num("x", "knuckle radius over outside diameter, in its range", x),
			check.Num("y", "wall over crown radius, in its range", y)}}}
}

// european returns p_y and p_b, if in range; do is the outside diameter [m].
func (d Dish) european(do float64, m KnuckleMetal) []KnuckleLimit {
	x, w := math.Max(0.06, d.R/d.D), 0.75*d.L+0.2*d.D
	if d.T < 0.001*do || d.T > 0.08*do || d.R < 2*d.T || x > 0.2+rounding {
		return nil
	}
	f, β := m.Yield/m.Factor, beta(d.T/d.L, x)
	all := []KnuckleLimit{{Group: 1, Name: "yield of the knuckle by EN 13445-3", Symbol: "p_y", Allowable: f * d.T / (β * w), AtProof: math.Inf(1), Source: european,
		service: "σ_y t/[k β (0.75 L + 0.2 D)]",
		inputs:  []check.Quantity{check.Num("β", "EN 13445-3, factor of the knuckle at t/L and r/D", β)}}}
	if d.T <= 0.005*d.D {
		b := d.buckling()
		const side = "[t/(0.75 L + 0.2 D)]^1.5 (r/D)^0.825"
		all = append(all, KnuckleLimit{Group: 2, Name: "buckling of the knuckle by EN 13445-3", Symbol: "p_b", Allowable: b * f, AtProof: b * m.Yield / 1.05, Source: european,
			service: "111 (σ_y/k) " + side, proof: "111 (σ_y/1.05) " + side})
	}
	return all
}

// thinLimit returns the limit of a thin knuckle whose failure pressure is pck [Pa].
func (d Dish) thinLimit(pck float64, m KnuckleMetal) KnuckleLimit {
	k := d.thin(m.ElasticModulus, m.Yield)
	l := KnuckleLimit{Group: 3, Name: "buckling of a thin knuckle by ASME VIII-1", Symbol: "p_ck", Allowable: pck / m.Factor, AtProof: pck,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "thin knuckle, recalled; confirm", How: check.Memory},
		inputs: []check.Quantity{check.Pa("E", "Young's modulus", m.ElasticModulus), check.Num("C_1", "factor of the elastic stress", k.C1), check.Num("C_2", "factor of the knuckle's radius", k.C2),
			check.Num("φ", "angle in radians", k.φ), check.Num("b", "angle of the knuckle in radians", k.b), check.M("R_e", "radius that is judged", k.Re),
			check.Pa("p_e", "elastic buckling", k.pe), check.Pa("p_t", "yield", k.py)}}
	l.steps = "C_1 = 9.31 r/D − 0.086; C_2 = 1.25; "
	if d.R/d.D > 0.08 {
		l.steps = "C_1 = 0.692 r/D + 0.605; C_2 = 1.46 − 2.6 r/D; "
	}
	l.steps += "φ = √(L t)/r; cos b = (D/2 − r)/(L − r); R_e = " + k.radius + "; " +
		"p_e = C_1 E t²/[r C_2 R_e (R_e/(2 r) − 1)]; p_t = σ_y t/[C_2 R_e (R_e/(2 r) − 1)]; "
	l.service, l.proof = "("+k.branch+")/k", k.branch
	return l
}

// buckling returns p_b/f_b [-], the European form.
func (d Dish) buckling() float64 {
	return 111 * math.Pow(d.T/(0.75*d.L+0.2*d.D), 1.5) * math.Pow(d.R/d.D, 0.825)
}
