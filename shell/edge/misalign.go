package edge

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// HiLo returns the bending stress over the stress across the seam, both in the thinner wall [-], of a
// butt joint whose mid-lines are e [m] apart, walls t1 and t2 [m] in any order:
//
//	σ_b/σ_m = 6 e/(t [1 + (T/t)^1.5])    t the thinner, T the thicker wall; equal: 3 e/t
//
// It is the value of a plate: at a long seam σ_m is the hoop stress, at a girth seam the axial stress, where unequal walls add the
// step of [GirthHiLo]. e up to the thinner wall.
//
// Source: form of BS 7910 Annex D (recalled); equal walls within 1.5 % of a numerical shell (computed).
func HiLo(t1, t2, e float64) (float64, error) {
	const fn, why = "edge.HiLo", "butt joints"
	t, T := math.Min(t1, t2), math.Max(t1, t2)
	if err := errors.Join(
		check.Within(fn, "thinner wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "thicker wall (m)", T, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "offset over the thinner wall", math.Abs(e)/t, 0, 1, why),
	); err != nil {
		return math.NaN(), err
	}
	return 6 * math.Abs(e) / (t * (1 + math.Pow(T/t, 1.5))), nil
}

// LongHiLo returns [HiLo] for a longitudinal seam, whose wall cannot curve along the tank, over 1 − ν², with Poisson's ratio
// ν [-]; walls and offset in [m]:
//
//	σ_b/σ_m = HiLo/(1 − ν²)
//
// Equilibrium alone gives it without the divisor; the larger is taken. σ_m is the hoop stress of the thinner wall, so that the same offset
// costs twice what it costs at a girth seam.
//
// Source: BS 7910 Annex D for shells (recalled).
func LongHiLo(t1, t2, e, ν float64) (float64, error) {
	k, err := HiLo(t1, t2, e)
	if err := errors.Join(err, check.Within("edge.LongHiLo", "Poisson's ratio", ν, 0, 0.5, "an isotropic solid")); err != nil {
		return math.NaN(), err
	}
	return k / (1 - ν*ν), nil
}

// GirthHiLo returns the bending stress over the axial stress, of the thinner wall [-], at the girth seam s under
// load l, in the wall that bends more, its Offset and its step together: the larger of the plate value of [HiLo], either sign of the offset in [Step.Solve]
// and the step alone plus the plate value. Hi-lo hops from one side to the other round a seam, so the sign is not known.
// An error where the axial stress is not tension.
//
// Source: edge theory; 1.20 to 1.22 against 1.19 of a numerical shell at T/t = 2, e = t/2 (computed).
func GirthHiLo(s Step, l Load) (float64, error) {
	plate, err := HiLo(s.First.Thickness, s.Second.Thickness, s.Offset)
	if err != nil {
		return math.NaN(), err
	}
	ref := l.AxialShell / s.First.Thickness
	if s.Second.Thickness < s.First.Thickness {
		ref = l.Axial / s.Second.Thickness
	}
	if err := check.Within("edge.GirthHiLo", "axial stress in the thinner wall (Pa)", ref, math.SmallestNonzeroFloat64, math.MaxFloat64, "hi-lo of a seam in tension"); err != nil {
		return math.NaN(), err
	}
	bending := func(e float64) (float64, error) {
		u := s
		u.Offset = e
		j, err := u.Solve(l)
		if err != nil {
			return math.NaN(), err
		}
		b := math.Max(peak(j.shell, j.HShell, j.MShell), peak(j.head, j.HHead*j.head.cos, j.MHead))
		return b / ref, nil
	}
	e := math.Abs(s.Offset)
	out, err1 := bending(e)
	in, err2 := bending(-e)
	step, err3 := bending(0)
	if err := errors.Join(err1, err2, err3); err != nil {
		return math.NaN(), err
	}
	return math.Max(math.Max(out, in), step+plate), nil
}

// Peaking returns the bending stress over the membrane hoop stress [-] at a longitudinal seam whose
// wall makes a roof of height d [m] with a straight length l [m] on each side, wall t [m], at the membrane stress σ [Pa] with
// Young's modulus E [Pa] and Poisson's ratio ν [-]:
//
//	k = (2 l/t) sqrt(3 (1 − ν²) σ/E)
//	far ends pinned: (6 d/t) tanh(k)/k    fixed: (3 d/t) tanh(k/2)/(k/2)
//
// the larger of both, over (1 − ν²). Pressure straightens the roof, so a low pressure has the larger ratio. Compression, σ below zero, bends it
// further: k with |σ| and tan in place of tanh, up to k = π/4, half the way to where the pinned strip buckles. d up to l/3.
//
// Source: beam-column (computed); the extra 1/(1 − ν²) of BS 7910 Annex D (recalled).
func Peaking(d, l, t, σ, E, ν float64) (float64, error) {
	const fn, why = "edge.Peaking", "a shallow roof at a seam"
	if err := errors.Join(
		check.Within(fn, "wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "length of the straight part (m)", l, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "height over length of the roof", math.Abs(d)/l, 0, 1.0/3, why),
		check.Within(fn, "membrane stress (Pa)", σ, -math.MaxFloat64, math.MaxFloat64, why),
		check.Within(fn, "Young's modulus (Pa)", E, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "Poisson's ratio", ν, 0, 0.5, why),
	); err != nil {
		return math.NaN(), err
	}
	k, bend := 2*l/t*math.Sqrt(3*(1-ν*ν)*math.Abs(σ)/E), math.Tanh
	if σ < 0 {
		bend = math.Tan
		if err := check.Within(fn, "k of the roof under compression", k, 0, math.Pi/4, "a strip well before it buckles"); err != nil {
			return math.NaN(), err
		}
	}
	over := func(k float64) float64 { // tanh(k)/k or tan(k)/k
		if k < 1e-6 {
			return 1
		}
		return bend(k) / k
	}
	a := math.Abs(d)
	return math.Max(6*a/t*over(k), 3*a/t*over(k/2)) / (1 - ν*ν), nil
}

// OutOfRound returns the bending stress over the membrane hoop stress [-] of a cylinder whose largest
// and least diameters differ by ΔD [m], mean diameter D [m], wall t [m], at the pressure p [Pa] ≥ 0 of the case, with Young's
// modulus E [Pa] and Poisson's ratio ν [-]:
//
//	σ_b/σ_m = 1.5 ΔD/t / [1 + 0.5 (1 − ν²) (p/E) (D/t)³]
//
// an oval (two waves), far from its ends, which only help; the denominator is the rounding by pressure, 1 + p/p_cr of the ring. ΔD up to 5 % of D, D/t from 20 up.
//
// Source: ring under pressure (computed); form recalled.
func OutOfRound(ΔD, D, t, p, E, ν float64) (float64, error) {
	const fn, why = "edge.OutOfRound", "an oval cylinder"
	if err := errors.Join(
		check.Within(fn, "wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "diameter over wall", D/t, 2*thinnest, math.MaxFloat64, why),
		check.Within(fn, "difference of diameters over diameter", ΔD/D, 0, 0.05, why),
		check.Within(fn, "pressure (Pa)", p, 0, math.MaxFloat64, why),
		check.Within(fn, "Young's modulus (Pa)", E, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
		check.Within(fn, "Poisson's ratio", ν, 0, 0.5, why),
	); err != nil {
		return math.NaN(), err
	}
	s := D / t
	return 1.5 * ΔD / t / (1 + 0.5*(1-ν*ν)*(p/E)*s*s*s), nil
}
