package material

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// Stress is the membrane stress at a point, by origin, tension positive.
type Stress struct {
	HoopPressure, MeridionalPressure        float64 // from pressure, liquid head included [Pa]
	MeridionalLoadMost, MeridionalLoadLeast float64 // both extremes of what line loads add [Pa]
	PressureLeast                           float64 // smallest simultaneous pressure / pressure [-]
	Present                                 bool    // the least values are certain: 0 is not tried
}

// Judged is one comparison ready for a check.Result.
type Judged struct {
	Formula          string
	Demand, Capacity check.Quantity
	Factor           float64 // [-]; 1, as the factors are inside
	Inputs           []check.Quantity
	Note             string
	Err              error
}

// EquivalentStress returns the measure of a membrane stress state of two
// principal stresses [Pa], a magnitude [Pa]: the larger of the largest principal
// stress and von Mises, and Tresca where the signs differ:
//
//	σ = max(|σ1|, |σ2|, √(σ1² − σ1 σ2 + σ2²)),  |σ1 − σ2| if σ1 σ2 < 0
//
// Von Mises alone falls to 0.87 of the larger stress in a cylinder. Of two stresses of
// one sign it never exceeds the larger one, σ1² − σ1 σ2 + σ2² ≤ σ1² for 0 ≤ σ2 ≤ σ1, and
// of two signs never their difference, so that no root is taken.
func EquivalentStress(a, b float64) float64 {
	if a*b < 0 {
		return math.Abs(a - b)
	}
	return max(math.Abs(a), math.Abs(b)) // keeps NaN
}

// A corner is one combination of factored stresses [Pa].
type corner struct {
	hoop, meridional float64 // [Pa]
	pressure, load   float64 // factors on the two parts [-]
	added            float64 // line-load stress before its factor [Pa]
	words            string
}

// maxCorners is the most combinations that [Stress.corners] forms.
const maxCorners = 9

// corners returns the n combinations that count with factors a on the part from
// pressure and b on that from line loads [-]:
//
//	(i)   a σp + b σL
//	(ii)  a σp + σL,   and 0 in place of σL unless it is certain
//	(iii) least σp + b σL, and 0 in place of it unless it is certain
//
// each with both extremes of σL. With a = b = 1 they are the corners of the
// vessel rules, in which a line load counts as it is given and is never taken
// as absent.
func (s Stress) corners(a, b float64, absent bool) (out [maxCorners]corner, n int) {
	add := func(pressure, load, added float64, words string) {
		out[n] = corner{pressure * s.HoopPressure, pressure*s.MeridionalPressure + load*added, pressure, load, added, words}
		n++
	}
	for _, load := range [2]float64{s.MeridionalLoadMost, s.MeridionalLoadLeast} {
		add(a, b, load, "pressure and line load together")
		add(a, 1, load, "line load unfactored")
		add(s.PressureLeast, b, load, "pressure at its smallest")
		if !s.Present {
			add(0, b, load, "pressure at its smallest")
		}
	}
	if absent && !s.Present {
		add(a, 1, 0, "line load absent")
	}
	return out, n
}

// finite reports whether every number is finite.
func finite(numbers ...float64) bool {
	for _, v := range numbers {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return false
		}
	}
	return true
}

// A side is one limit with its factors: yield or ultimate in flight, S else.
type side struct {
	symbol, name   string
	limit          float64 // [Pa]
	pressure, load float64 // factors [-]
}

// sides returns what a stress is held to, n limits.
func (l *Limits) sides() (out [2]side, n int) {
	if l.Rule != Flight {
		return [2]side{{"S", "allowable stress", l.S, 1, 1}}, 1
	}
	return [2]side{
		{"F_ty", "yield strength", l.Yield, l.YieldOnPressure, l.YieldOnLoad},
		{"F_tu", "ultimate strength", l.Ultimate, l.UltimateOnPressure, l.UltimateOnLoad},
	}, 2
}

// worst holds every corner of s, measured by measure, to every side times
// efficiency [-], and returns the one with the least margin.
func (l *Limits) worst(s Stress, efficiency float64, measure func(corner) float64) (side, corner, float64, error) {
	var (
		at     side
		where  corner
		demand float64
		most   = math.Inf(-1)
	)
	sides, n := l.sides()
	for _, d := range sides[:n] {
		if !(d.limit > 0) || !(d.pressure >= 1) || !(d.load >= 1) || !finite(d.limit, d.pressure, d.load) {
			return side{}, corner{}, math.NaN(), fmt.Errorf("%s or its factor is not known", d.name)
		}
		corners, n := s.corners(d.pressure, d.load, l.Rule == Flight)
		for _, c := range corners[:n] {
			m := measure(c)
			if use := m / (d.limit * efficiency); use > most {
				most, at, where, demand = use, d, c, m
			}
		}
	}
	if math.IsInf(most, 0) {
		return side{}, corner{}, math.NaN(), fmt.Errorf("no stress could be formed")
	}
	return at, where, demand, nil
}

// The measures of a corner: the tension across a seam and the equivalent stress [Pa].
func tensionAcross(c corner) float64 { return max(0, c.meridional) }
func equivalentOf(c corner) float64  { return EquivalentStress(c.hoop, c.meridional) }

// NormalUse returns demand over capacity [-] of the same comparison as
// [Limits.Normal], without what a sheet prints; NaN where that one has an error.
// The stresses are in [Pa], the efficiency in [-].
func (l *Limits) NormalUse(pressure, loadMost, loadLeast, efficiency float64) float64 {
	if !finite(pressure, loadMost, loadLeast) || !(efficiency > 0 && efficiency <= 1) {
		return math.NaN()
	}
	s := Stress{MeridionalPressure: pressure, MeridionalLoadMost: loadMost, MeridionalLoadLeast: loadLeast}
	if l.Rule != Flight {
		return l.plainUse(s, func(_, meridional float64) float64 { return max(0, meridional) }) / efficiency
	}
	d, _, demand, _ := l.worst(s, efficiency, tensionAcross)
	return demand / (efficiency * d.limit)
}

// plainUse returns the largest measure of the corners of s over S [-], where no part has
// a factor of its own and all corners are a share of the pressure with a line load; NaN
// where S is not known.
func (l *Limits) plainUse(s Stress, measure func(hoop, meridional float64) float64) float64 {
	if !(l.S > 0) || math.IsInf(l.S, 1) {
		return math.NaN()
	}
	worst := 0.0
	for _, load := range [2]float64{s.MeridionalLoadMost, s.MeridionalLoadLeast} {
		worst = max(worst, measure(s.HoopPressure, s.MeridionalPressure+load))
		if s.PressureLeast != 1 {
			worst = max(worst, measure(s.PressureLeast*s.HoopPressure, s.PressureLeast*s.MeridionalPressure+load))
		}
		if !s.Present {
			worst = max(worst, measure(0, load))
		}
	}
	return worst / l.S
}

// EquivalentUse returns demand over capacity [-] of the same comparison as
// [Limits.Equivalent], without what a sheet prints; NaN where that one has an error.
func (l *Limits) EquivalentUse(s Stress) float64 {
	if !finite(s.HoopPressure, s.MeridionalPressure, s.MeridionalLoadMost, s.MeridionalLoadLeast, s.PressureLeast) {
		return math.NaN()
	}
	if l.Rule != Flight {
		return l.plainUse(s, EquivalentStress)
	}
	d, _, demand, _ := l.worst(s, 1, equivalentOf)
	return demand / d.limit
}

// Normal compares the stress across a seam of joint efficiency [-]: the part
// from pressure and both extremes of the part from line loads [Pa], tension
// positive. The demand is the largest tension of all corners, 0 where there is
// none; compression of a seam is held by [Limits.Equivalent] and stability.
// The pressure may be absent.
//
//	k_p σ_p + k_l σ_l ≤ E S
func (l Limits) Normal(pressure, loadMost, loadLeast, efficiency float64) Judged {
	j := Judged{Formula: l.formula("k_p σ_p + k_l σ_l ≤ E "), Factor: 1}
	if !finite(pressure, loadMost, loadLeast) {
		j.Err = fmt.Errorf("the stress across the seam is not known")
		return j
	}
	if j.Err = check.Within("material.Limits.Normal", "joint efficiency", efficiency, math.SmallestNonzeroFloat64, 1, "joint efficiencies"); j.Err != nil {
		return j
	}
	s := Stress{MeridionalPressure: pressure, MeridionalLoadMost: loadMost, MeridionalLoadLeast: loadLeast}
	d, c, demand, err := l.worst(s, efficiency, tensionAcross)
	if j.Err = err; err != nil {
		return j
	}
	j.Formula = d.formula("k_p σ_p + k_l σ_l ≤ E " + d.symbol)
	j.Demand = check.Pa("σ", "stress across the seam", demand)
	j.Capacity = check.Pa("E "+d.symbol, "seam "+d.name, efficiency*d.limit)
	j.Inputs = []check.Quantity{
		check.Pa("σ_p", "stress from pressure", pressure), check.Pa("σ_l", "stress from line loads", c.added),
		check.Num("k_p", "on pressure, "+c.words, c.pressure), check.Num("k_l", "on line loads", c.load),
		check.Num("E", "joint efficiency", efficiency), check.Pa(d.symbol, d.name, d.limit),
	}
	j.Note = l.Note
	return j
}

// Equivalent compares the membrane stress at a point, by [EquivalentStress] of
// the worst corner, with the limits, without joint efficiency.
func (l Limits) Equivalent(s Stress) Judged {
	j := Judged{Formula: l.formula(equivalentFormula + " ≤ "), Factor: 1}
	if !finite(s.HoopPressure, s.MeridionalPressure, s.MeridionalLoadMost, s.MeridionalLoadLeast, s.PressureLeast) {
		j.Err = fmt.Errorf("the membrane stress is not known")
		return j
	}
	d, c, demand, err := l.worst(s, 1, equivalentOf)
	if j.Err = err; err != nil {
		return j
	}
	j.Formula = d.formula(equivalentFormula + " ≤ " + d.symbol)
	j.Demand = check.Pa("σ_eq", "equivalent membrane stress", demand)
	j.Capacity = check.Pa(d.symbol, d.name, d.limit)
	j.Inputs = []check.Quantity{
		check.Pa("σ_θp", "hoop stress from pressure", s.HoopPressure), check.Pa("σ_φp", "meridional stress from pressure", s.MeridionalPressure),
		check.Pa("σ_φl", "meridional stress from line loads", c.added),
		check.Num("k_p", "on pressure, "+c.words, c.pressure), check.Num("k_l", "on line loads", c.load),
		check.Pa("σ_θ", "hoop stress, factored", c.hoop), check.Pa("σ_φ", "meridional stress, factored", c.meridional),
		check.Pa(d.symbol, d.name, d.limit),
	}
	j.Note = l.Note
	return j
}

// equivalentFormula is von Mises beside the largest principal stress, and, since it
// is the larger only where the signs differ, Tresca.
const equivalentFormula = "σ_θ = k_p σ_θp, σ_φ = k_p σ_φp + k_l σ_φl; max(|σ_θ|, |σ_φ|, √(σ_θ² − σ_θ σ_φ + σ_φ²), |σ_θ − σ_φ|)"

// formula ends a formula that names the limit of a side with what it was chosen from.
func (d side) formula(text string) string {
	if d.symbol == "S" {
		return text
	}
	return text + ", the worse of F_ty and F_tu"
}

// formula ends a formula with what the rule holds it to.
func (l Limits) formula(head string) string {
	if l.Rule == Flight {
		return head + "F_ty and F_tu"
	}
	return head + "S"
}
