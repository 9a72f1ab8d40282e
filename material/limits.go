package material

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Term is one term of an allowable stress; the least governs.
type Term struct {
	Symbol, Name string
	Value        float64 // [Pa]
}

// Limits are the allowable stresses of one material by one rule set.
type Limits struct {
	Rule                                Rule
	S                                   float64 // allowable membrane stress; flight: of pressure alone [Pa]
	Terms                               []Term
	Governs                             string  // symbol of the least term
	Yield, Ultimate                     float64 // Rp0.2 and Rm at temperature [Pa]
	YieldOnPressure, UltimateOnPressure float64 // flight: factors on stress from pressure [-]
	YieldOnLoad, UltimateOnLoad         float64 // flight: factors on stress from line loads [-]
	Source                              check.Source
	Chosen                              string // how one of two branches was chosen, with its numbers
	Note                                string
}

// LimitOptions are what else bears on an allowable.
type LimitOptions struct {
	Group4       bool    // vessel-eu: a joint without examination
	AllowableCap float64 // caps S, ignored in flight [Pa]; 0 or NaN: none
}

// Limits returns the allowable stresses by rule r with factors f. The strengths
// of p are minima at temperature T; index 20 is room temperature.
//
//	vessel     S = min(Rm20/3.5, 1.1 Rm(T)/3.5, Rp20/1.5, Rp(T)/1.5)
//	vessel-eu  f = min(Rp0.2(T)/1.5, Rm20/2.4)
//	           austenitic, A ≥ 30 %: Rp1.0(T)/1.5
//	           austenitic, A ≥ 35 %: max(Rp1.0(T)/1.5, min(Rp1.0(T)/1.2, Rm(T)/3))
//	           without examination (group 4) 0.9 f
//	flight     S = min(Fty/(proof factor/proof limit), Ftu/burst factor)
//
// Symbols: Rp or Fty yield, Rm or Ftu ultimate [Pa]; A elongation [-]. With
// Austenitic90 the last term of vessel is 0.9 Rp(T), for austenitic steel with
// Rp20/Rm20 below 0.625 only, and not where the yield factor was overridden. Where Rp1.0 is not known, vessel-eu takes Rp0.2.
// Brittle metal, a missing strength and titanium under vessel-eu have no
// limits.
//
// Source: ASME BPVC II-D Appendix 1 (read); EN 13445-3 Table 6-1 (recalled);
// flight: common practice.
func (p Properties) Limits(r Rule, f Factors, o LimitOptions) (Limits, error) {
	if p.Brittle != nil {
		return Limits{}, p.Brittle
	}
	if err := f.sane(r); err != nil {
		return Limits{}, err
	}
	for _, v := range []float64{p.Yield.Value, p.Ultimate.Value, p.RoomYield, p.RoomUltimate} {
		if !(v > 0) || math.IsInf(v, 0) {
			return Limits{}, errors.New("yield or ultimate is not known")
		}
	}
	l := Limits{Rule: r, Yield: p.Yield.Value, Ultimate: p.Ultimate.Value, Source: ruleSources[r]}
	l.YieldOnPressure, l.UltimateOnPressure, l.YieldOnLoad, l.UltimateOnLoad = math.NaN(), math.NaN(), math.NaN(), math.NaN()
	var err error
	switch r {
	case Vessel:
		l.vessel(p, f)
	case VesselEU:
		err = l.european(p, f, o.Group4)
	case Flight:
		l.YieldOnPressure, l.UltimateOnPressure, l.YieldOnLoad, l.UltimateOnLoad = f.YieldFactor, f.UltimateFactor, f.LoadYieldFactor, f.LoadUltimateFactor
		l.Terms = []Term{
			{"F_ty/FS_y", fmt.Sprintf("yield by %.4g", f.YieldFactor), l.Yield / f.YieldFactor},
			{"F_tu/FS_u", fmt.Sprintf("ultimate by %.4g", f.UltimateFactor), l.Ultimate / f.UltimateFactor},
		}
	default:
		err = fmt.Errorf("unknown rule %q", r)
	}
	if err != nil {
		return Limits{}, err
	}
	if r != Flight {
		l.cap(p.Allowable, "allowable of the own material")
		l.cap(o.AllowableCap, "allowable stated")
	}
	l.govern()
	return l, nil
}

// over writes a term: "R_m/3.5", factor [-].
func over(symbol string, factor float64) string { return fmt.Sprintf("%s/%.4g", symbol, factor) }

// cap adds a stated allowable [Pa] as a term; 0 or NaN is none.
func (l *Limits) cap(s float64, name string) {
	if s > 0 {
		l.Terms = append(l.Terms, Term{"S", name, s})
	}
}

// govern takes the least term.
func (l *Limits) govern() {
	l.S = math.Inf(1)
	for _, t := range l.Terms {
		if t.Value < l.S {
			l.S, l.Governs = t.Value, t.Symbol
		}
	}
}

// vessel fills the terms of II-D Appendix 1. The ratio of ultimate is not
// taken above 1, nor that of yield, as the room terms stay.
func (l *Limits) vessel(p Properties, f Factors) {
	last := Term{over("R_p(T)", f.YieldFactor), fmt.Sprintf("yield at temperature by %.4g", f.YieldFactor), l.Yield / f.YieldFactor}
	_, changed := f.Overrides["yield_factor"]
	switch {
	case f.Austenitic90 && changed:
		l.Note = "the higher set of austenitic allowables is not taken beside a yield factor of its own"
	case f.Austenitic90 && p.Family == Austenitic && p.RoomYield/p.RoomUltimate < 0.625:
		last = Term{"0.9 R_p(T)", "0.9 of yield at temperature", 0.9 * l.Yield}
		l.Note = "higher set of austenitic allowables: permanent strain is possible, never for flanges"
	case f.Austenitic90:
		l.Note = "the higher set of austenitic allowables does not apply to this material"
	}
	l.Terms = []Term{
		{over("R_m", f.UltimateFactor), fmt.Sprintf("ultimate by %.4g", f.UltimateFactor), p.RoomUltimate / f.UltimateFactor},
		{over("1.1 R_m(T)", f.UltimateFactor), fmt.Sprintf("1.1 of ultimate at temperature by %.4g", f.UltimateFactor), 1.1 * l.Ultimate / f.UltimateFactor},
		{over("R_p", f.YieldFactor), fmt.Sprintf("yield by %.4g", f.YieldFactor), p.RoomYield / f.YieldFactor},
		last,
	}
}

// european fills the term of EN 13445-3 Table 6-1 for the material's column.
func (l *Limits) european(p Properties, f Factors, group4 bool) error {
	if p.Family == Titanium {
		return errors.New("vessel-eu has no allowable stress for titanium")
	}
	if group4 && p.Family == Aluminium {
		return errors.New("vessel-eu does not admit aluminium with joints that are not examined")
	}
	byYield := func(symbol, name string, v float64) Term {
		return Term{over(symbol, f.YieldFactor), fmt.Sprintf("%s by %.4g", name, f.YieldFactor), v / f.YieldFactor}
	}
	_, changed := f.Overrides["yield_factor"]
	switch known := p.Proof1.Value > 0 && p.Family == Austenitic; {
	case known && p.Elongation.Value >= 0.35 && !changed: // with another yield factor the second branch has none
		first, second := p.Proof1.Value/f.YieldFactor, min(p.Proof1.Value/1.2, l.Ultimate/3)
		l.Terms = []Term{byYield("R_p1.0", "1 % proof strength", p.Proof1.Value)}
		if second > first {
			l.Terms = []Term{{"min(R_p1.0/1.2, R_m/3)", "austenitic of 35 % elongation and more", second}}
		}
		l.Chosen = fmt.Sprintf("the larger of R_p1.0/%.4g = %.1f MPa and min(R_p1.0/1.2 = %.1f MPa, R_m/3 = %.1f MPa), elongation 35 %% and more",
			f.YieldFactor, first/mpa, p.Proof1.Value/1.2/mpa, l.Ultimate/3/mpa)
	case known && p.Elongation.Value >= 0.30:
		l.Terms = []Term{byYield("R_p1.0", "1 % proof strength", p.Proof1.Value)}
	default:
		l.Terms = []Term{byYield("R_p0.2", "yield at temperature", l.Yield),
			{over("R_m", f.UltimateFactor), fmt.Sprintf("ultimate by %.4g", f.UltimateFactor), p.RoomUltimate / f.UltimateFactor}}
	}
	switch {
	case p.Group == heatTreatableAluminium || p.Group == aluminiumLithium:
		l.Note = "precipitation-hardening aluminium is outside the stated factors of PED annex I 7.1.2: equal safety has to be shown"
	case (p.Family == Ferritic || p.Family == Duplex) && !(p.Elongation.Value >= 0.14):
		l.Note = "steel for this rule needs an elongation of 14 % (PED annex I 7.5)"
	}
	if group4 {
		for i := range l.Terms {
			l.Terms[i].Symbol, l.Terms[i].Value = "0.9 "+l.Terms[i].Symbol, 0.9*l.Terms[i].Value
		}
		l.Note = join(l.Note, "joints not examined: 0.9 of the allowable, and limits on steel, pressure and size that are not checked here")
	}
	return nil
}

// Lower returns, for the stress normal to a seam, the lower of the limits of
// the parent and those of its weld zone, each number for itself.
func (l Limits) Lower(o Limits) (Limits, error) {
	if l.Rule != o.Rule || l.Rule == "" {
		return Limits{}, fmt.Errorf("limits of rule %q and %q do not go together", l.Rule, o.Rule)
	}
	out := l
	if o.S < l.S {
		out = o
	}
	out.Yield, out.Ultimate = min(l.Yield, o.Yield), min(l.Ultimate, o.Ultimate)
	if l.Rule != Flight {
		return out, nil
	}
	out.YieldOnPressure, out.UltimateOnPressure = max(l.YieldOnPressure, o.YieldOnPressure), max(l.UltimateOnPressure, o.UltimateOnPressure)
	out.YieldOnLoad, out.UltimateOnLoad = max(l.YieldOnLoad, o.YieldOnLoad), max(l.UltimateOnLoad, o.UltimateOnLoad)
	out.S = min(out.Yield/out.YieldOnPressure, out.Ultimate/out.UltimateOnPressure)
	return out, nil
}
