package life

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// mpa is one MPa m^0.5 [Pa m½].
const mpa = 1e6

// A Law is how fast a crack grows.
type Law interface {
	// Rate returns da/dN [m per cycle] at the range ΔK [Pa m½] and the ratio R of least to largest stress [-].
	Rate(ΔK, R float64) (float64, error)
}

// A Forman is a growth law that quickens as the toughness nears.
type Forman struct {
	C  float64 // constant, with ΔK and K_c in MPa m^0.5 [m per cycle]
	N  float64 // exponent [-]
	Kc float64 // toughness of the fit [Pa m½]
}

// Rate returns the growth per cycle [m per cycle] at ΔK [Pa m½] and R [-]:
//
//	da/dN = C ΔK^n / ((1 − R) K_c − ΔK)
//
// ΔK > 0 and below (1 − R) K_c, R from 0 to 0.7. Constants from 0.1 to 6 in n: swapped ones are refused.
//
// Source: Forman; constants of Schwarmann 1986 by way of an open list (read).
func (f Forman) Rate(ΔK, R float64) (float64, error) {
	const fn = "life.Forman.Rate"
	if err := errors.Join(
		check.Within(fn, "growth constant", f.C, math.SmallestNonzeroFloat64, 1, "m/cycle in MPa m^0.5"),
		check.Within(fn, "growth exponent", f.N, 0.1, 6, "a metal; larger ones are misprints"),
		check.Within(fn, "toughness of the fit (Pa m^0.5)", f.Kc, mpa, 1000*mpa, "a metal"),
		check.Within(fn, "stress ratio", R, 0, 0.7, "tension throughout"),
		check.Within(fn, "range of stress intensity (Pa m^0.5)", ΔK, math.SmallestNonzeroFloat64, (1-R)*f.Kc*(1-1e-9), "below the toughness of the fit"),
	); err != nil {
		return math.NaN(), err
	}
	return f.C * math.Pow(ΔK/mpa, f.N) / (((1-R)*f.Kc - ΔK) / mpa), nil
}

// A Paris is a power law of growth.
type Paris struct {
	C float64 // constant, with ΔK in MPa m^0.5 [m per cycle]
	M float64 // exponent [-]
}

// ParisFromNewton returns the law whose constant C [mm per cycle] is for ΔK in N/mm^1.5, exponent m [-]; one MPa m^0.5 is
// 31.62 of them. Source: units.
func ParisFromNewton(C, m float64) Paris {
	return Paris{C: C * math.Pow(math.Sqrt(1000), m) * 1e-3, M: m}
}

// Rate returns the growth per cycle [m per cycle] at ΔK [Pa m½]; R [-] from 0 to 0.7 does not count:
//
//	da/dN = C ΔK^m
//
// Source: Paris.
func (p Paris) Rate(ΔK, R float64) (float64, error) {
	if err := errors.Join(p.valid("life.Paris.Rate"),
		check.Within("life.Paris.Rate", "stress ratio", R, 0, 0.7, "tension throughout"),
		check.Within("life.Paris.Rate", "range of stress intensity (Pa m^0.5)", ΔK, math.SmallestNonzeroFloat64, 1000*mpa, "a metal")); err != nil {
		return math.NaN(), err
	}
	return p.C * math.Pow(ΔK/mpa, p.M), nil
}

// An UpTo is a power law that is known up to a ΔK.
type UpTo struct {
	Paris
	Most float64 // ΔK [Pa m½]
}

// Rate returns the growth per cycle [m per cycle] at ΔK [Pa m½], at most Most, and R [-]. Source: [Paris.Rate].
func (u UpTo) Rate(ΔK, R float64) (float64, error) {
	if err := check.Within("life.UpTo.Rate", "range of stress intensity (Pa m^0.5)", ΔK, 0, u.Most, "up to where the line is known to bound"); err != nil {
		return math.NaN(), err
	}
	return u.Paris.Rate(ΔK, R)
}

func (p Paris) valid(fn string) error {
	return errors.Join(check.Within(fn, "growth constant", p.C, math.SmallestNonzeroFloat64, 1, "m/cycle in MPa m^0.5"),
		check.Within(fn, "growth exponent", p.M, 0.1, 6, "a metal; larger ones are misprints"))
}

// Cycles returns the cycles [-] from the depth a0 to af [m] with a shape factor Y [-] that does not change, under the stress
// range Δσ [Pa]:
//
//	N = [af^(1−m/2) − a0^(1−m/2)]/[C (Y Δσ √π)^m (1 − m/2)],  m = 2: ln(af/a0)/[C (Y Δσ √π)²]
//
// Source: Paris, integrated.
func (p Paris) Cycles(a0, af, Y, Δσ float64) (float64, error) {
	const fn = "life.Paris.Cycles"
	if err := errors.Join(p.valid(fn), check.Within(fn, "first depth (m)", a0, math.SmallestNonzeroFloat64, af, "a crack that grows"),
		check.Within(fn, "last depth (m)", af, a0, math.MaxFloat64, "a crack that grows"),
		check.Within(fn, "shape factor", Y, 0.1, 10, "a crack"),
		check.Within(fn, "stress range (Pa)", Δσ, math.SmallestNonzeroFloat64, math.MaxFloat64, "a cycle")); err != nil {
		return math.NaN(), err
	}
	k := p.C * math.Pow(Y*Δσ/mpa*math.Sqrt(math.Pi), p.M)
	e := 1 - p.M/2
	if e == 0 {
		return math.Log(af/a0) / k, nil
	}
	return (math.Pow(af, e) - math.Pow(a0, e)) / (k * e), nil
}

// Ligament returns the stress [Pa] at which the wall left under a surface crack of depth a and half length c [m] yields, in a
// cylinder of mid-wall radius R and wall t [m], yield strength of the zone σ_y [Pa]:
//
//	σ_y (1 − a/t)/(1 − a/(t M)),  M = Folias(c²/(R t))
//
// the outline of the crack taken as a rectangle. Source: Kiefner and others, ASTM STP 536, 1973 (recalled).
func Ligament(a, c, R, t, yield float64) (float64, error) {
	m, _, err := ThroughCrack{c, R, t}.Bulging()
	if err = errors.Join(err, check.Within("life.Ligament", "crack depth over wall", a/t, 0, 1, "part of the wall"),
		check.Within("life.Ligament", "yield strength (Pa)", yield, 1, math.MaxFloat64, "a metal")); err != nil {
		return math.NaN(), err
	}
	if a == 0 {
		return yield, nil
	}
	return yield * (1 - a/t) / (1 - a/t/m), nil
}

// A Flaw is what may have been missed, in a wall of a cylinder.
type Flaw struct {
	Depth     float64 // a0 [m]
	Shape     float64 // a/c, kept as it grows [-]
	Thickness float64 // t [m]
	Radius    float64 // R, mid-wall [m]
}

// DefaultShape is the depth over half length of a flaw whose shape nobody states [-]; practice.
const DefaultShape = 0.4

// A Growth is the life of a flaw.
type Growth struct {
	Cycles float64 // up to the end, without the scatter factor [-]
	Depth  float64 // at the end [m]
	End    string  // what ends it: "toughness", "range of the formula", "net section"
}

// Grow returns the life of a surface flaw under cycles from R σ to σ [Pa], R [-], by a law, at the toughness K_c [Pa m½] and
// yield strength [Pa] of the zone:
//
//	N = ∫ da/(da/dN),  ΔK = (1 − R) σ √(π a) F/√Q at the deepest point
//
// to the first of K = K_c at face or deepest point, a = 0.8 t, and σ at [Ligament]. The last ligament is given away. No
// cycle is left of a flaw at its toughness or net section at the start; one at 0.8 of the wall is refused. Source: [SurfaceCrack.Shape]; integration.
func (f Flaw) Grow(σ, R float64, law Law, Kc, yield float64) (Growth, error) {
	return f.grow(σ, (1-R)*σ, R, law, Kc, yield)
}

// grow returns it where the stress σ [Pa] ends the life and the range Δσ [Pa] drives it.
func (f Flaw) grow(σ, Δσ, R float64, law Law, Kc, yield float64) (Growth, error) {
	end, err := f.end(σ, Kc, yield)
	if err != nil {
		return Growth{math.NaN(), math.NaN(), ""}, err
	}
	if end.Depth <= f.Depth {
		return end, nil
	}
	n, err := f.integrate(end.Depth, Δσ, R, law)
	end.Cycles = n
	return end, err
}

func (f Flaw) crack(a float64) SurfaceCrack {
	return SurfaceCrack{Depth: a, HalfLength: a / f.Shape, Thickness: f.Thickness, HalfWidth: math.Inf(1)}
}

// end finds the depth at which the life is over.
func (f Flaw) end(σ, Kc, yield float64) (Growth, error) {
	const fn = "life.Flaw.Grow"
	over := func(a float64) (string, error) {
		k, err := f.crack(a).Worst(σ)
		s, err2 := Ligament(a, a/f.Shape, f.Radius, f.Thickness, yield)
		switch {
		case err != nil || err2 != nil:
			return "", errors.Join(err, err2)
		case k >= Kc:
			return "toughness", nil
		case σ >= s:
			return "net section", nil
		}
		return "", nil
	}
	if err := errors.Join(
		check.Within(fn, "wall (m)", f.Thickness, math.SmallestNonzeroFloat64, math.MaxFloat64, "a wall"),
		check.Within(fn, "first depth over wall", f.Depth/f.Thickness, 1e-6, deepest*(1-1e-6), "up to 0.8 of the wall"),
		check.Within(fn, "toughness (Pa m^0.5)", Kc, math.SmallestNonzeroFloat64, 1000*mpa, "a metal"),
		check.Within(fn, "stress (Pa)", σ, math.SmallestNonzeroFloat64, yield, "below the yield strength of the zone"),
	); err != nil {
		return Growth{}, err
	}
	first, err := over(f.Depth)
	if err != nil {
		return Growth{}, err
	}
	if first != "" {
		return Growth{Depth: f.Depth, End: first}, nil
	}
	last := deepest * f.Thickness
	why, err := over(last)
	if err != nil { // not reached: the same shape was in range at the first depth
		return Growth{}, err
	}
	if why == "" {
		return Growth{Depth: last, End: "range of the formula"}, nil
	}
	lo, hi := f.Depth, last
	for range 60 {
		mid := (lo + hi) / 2
		if w, _ := over(mid); w == "" {
			lo = mid
		} else {
			hi, why = mid, w
		}
	}
	return Growth{Depth: lo, End: why}, nil
}

// integrate counts the cycles of the range Δσ [Pa] from the first depth to a [m], by Simpson's rule over ln a.
func (f Flaw) integrate(a, Δσ, R float64, law Law) (float64, error) {
	const steps = 400
	l0, l1 := math.Log(f.Depth), math.Log(a)
	h, sum := (l1-l0)/steps, 0.0
	for i := 0; i <= steps; i++ {
		x := math.Exp(l0 + float64(i)*h)
		k, err := f.crack(x).Intensity(Δσ, AtDeepest)
		if err != nil { // not reached: the same shape was in range at both ends
			return math.NaN(), err
		}
		rate, err := law.Rate(k, R)
		if err != nil {
			return math.NaN(), err
		}
		w := 2.0
		switch {
		case i == 0 || i == steps:
			w = 1
		case i%2 == 1:
			w = 4
		}
		sum += w * x / rate
	}
	return sum * h / 3, nil
}
