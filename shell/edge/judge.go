package edge

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/material"
	"proofsheet/report/check"
)

// inputs lists the four components of a stress, and more.
func inputs(s Stress, more ...check.Quantity) []check.Quantity {
	return append([]check.Quantity{
		check.Pa("σ_φm", "meridional membrane stress", s.Meridional), check.Pa("σ_θm", "hoop membrane stress", s.Hoop),
		check.Pa("σ_φb", "meridional bending stress, tension inside positive", s.MeridionalBending), check.Pa("σ_θb", "hoop bending stress", s.HoopBending),
	}, more...)
}

// pressures are the n shares of the pressure that may stand with the line loads.
func (j Junction) pressures() (shares [3]float64, n int) {
	if j.Present {
		return [3]float64{1, j.PressureLeast}, 2
	}
	return [3]float64{1, j.PressureLeast, 0}, 3
}

// states appends the stresses, without factors, that a place sees in this case.
func (j Junction) states(all []Stress, p Place) []Stress {
	shares, n := j.pressures()
	for _, k := range shares[:n] {
		for _, l := range [3]Stress{{}, p.LoadMost, p.LoadLeast} {
			if s := combine(k, p.Pressure, 1, l); !slices.Contains(all, s) {
				all = append(all, s)
			}
		}
	}
	return all
}

// most is the number of stresses that one case makes at a place, at most.
const most = 12

// local holds the membrane stress to 1.5 of every strength, with the factors of flight: pressure
// factored with any line load, and line loads factored with any share of the pressure.
func (j Junction) local(w *worst, p Place) error {
	cs, err := criteria(p.Limits)
	if err != nil {
		return err
	}
	for _, c := range cs {
		corners, n := j.corners(p, c)
		for _, s := range corners[:n] {
			limit, m, across := 1.5*c.strength, s.Membrane(), math.Abs(s.Meridional)
			ins := func(more ...check.Quantity) []check.Quantity {
				return append(inputs(s, check.Pa(c.symbol, "strength or allowable stress", c.strength),
					check.Num("k_p", "factor on pressure, inside the stress", c.pressure), check.Num("k_l", "factor on line loads", c.load)), more...)
			}
			w.hold(m, limit, func() verdict {
				return verdict{p.Where + ", local membrane", "σ_m ≤ 1.5 " + c.symbol, check.Pa("σ_m", "local membrane stress", m), check.Pa("1.5 "+c.symbol, "limit of local membrane stress", limit), ins()}
			})
			w.hold(across, limit*p.Efficiency, func() verdict {
				return verdict{p.Where + ", local membrane across the weld", "|σ_φm| ≤ 1.5 E " + c.symbol, check.Pa("σ_φm", "meridional membrane stress", across),
					check.Pa("1.5 E "+c.symbol, "limit across the weld", limit*p.Efficiency), ins(check.Num("E", "joint efficiency", p.Efficiency))}
			})
		}
	}
	return nil
}

// proof holds one stress s of a place to the limits at proof.
func (j Junction) proof(w *worst, p Place, s Stress) {
	y := p.Limits.Yield
	strength := check.Pa("Rp0.2", "yield strength", y)
	w.hold(s.Membrane(), y, func() verdict {
		return verdict{p.Where + ", local membrane", "σ_m ≤ Rp0.2", check.Pa("σ_m", "local membrane stress at proof", s.Membrane()), strength, inputs(s, strength)}
	})
	w.hold(math.Abs(s.Meridional), p.Efficiency*y, func() verdict {
		return verdict{p.Where + ", local membrane across the weld", "|σ_φ| ≤ E Rp0.2", check.Pa("σ_φ", "meridional membrane stress at proof", math.Abs(s.Meridional)),
			check.Pa("E Rp0.2", "yield strength across the weld", p.Efficiency*y), inputs(s, strength, check.Num("E", "joint efficiency", p.Efficiency))}
	})
	if j.Sharp {
		w.hold(s.Surface(), 2*y, func() verdict {
			return verdict{p.Where + ", membrane and bending", "σ_mb ≤ 2 Rp0.2", check.Pa("σ_mb", "membrane and bending stress at proof", s.Surface()),
				check.Pa("2 Rp0.2", "twice the yield strength", 2*y), inputs(s, strength)}
		})
	}
}

// corners returns the n stresses of a place with the factors of a criterion. A line load without its factor lies
// between none and the factored one, where no measure is larger.
func (j Junction) corners(p Place, c criterion) (all [most]Stress, n int) {
	shares, k := j.pressures()
	for _, l := range [3]Stress{p.LoadMost, p.LoadLeast, {}} {
		all[n] = combine(c.pressure, p.Pressure, c.load, l)
		n++
		for _, share := range shares[:k] {
			all[n] = combine(share, p.Pressure, c.load, l)
			n++
		}
	}
	return all, n
}

// span holds the range of membrane and bending, over this case, every other one and zero.
func (j Junction) span(w *worst, i int, p Place) error {
	limit, formula, err := RangeLimit(p.Limits)
	if err != nil {
		return err
	}
	all := append(j.states(make([]Stress, 0, 4*most), p), Stress{})
	for _, o := range j.Others {
		if o.Err != nil {
			return fmt.Errorf("another case has no stress at this place, and the range is not known: %w", o.Err)
		}
		if i >= len(o.Places) || o.Places[i].Where != p.Where {
			return fmt.Errorf("another case has no stress at this place, and the range is not known")
		}
		q := o.Places[i]
		if !(q.Pressure.finite() && q.LoadMost.finite() && q.LoadLeast.finite()) {
			return fmt.Errorf("the stress of another case is not a number")
		}
		all = append(all, Junction{}.states(nil, q)...) // its pressure may be absent
	}
	if j.Extremes != nil {
		if i >= len(j.Extremes) {
			return fmt.Errorf("the other cases have no stress at this place, and the range is not known")
		}
		for _, s := range j.Extremes[i] {
			if !s.finite() {
				return fmt.Errorf("the stress of another case is not a number")
			}
			if !slices.Contains(all, s) {
				all = append(all, s)
			}
		}
	}
	lim := limitInputs(p.Limits)
	for a := range all {
		for b := range a {
			d := combine(1, all[a], -1, all[b])
			most, across := d.Surface(), d.MeridionalSurface()
			w.hold(most, limit, func() verdict {
				return verdict{p.Where + ", membrane and bending", "Δσ_mb ≤ " + formula, check.Pa("Δσ_mb", "range of membrane and bending stress", most),
					check.Pa(formula, "limit of the range", limit), inputs(d, lim...)}
			})
			w.hold(across, p.Efficiency*limit, func() verdict {
				return verdict{p.Where + ", membrane and bending across the weld", "Δσ_φ ≤ E " + formula, check.Pa("Δσ_φ", "range of meridional stress across the weld", across),
					check.Pa("E "+formula, "limit of the range across the weld", p.Efficiency*limit), inputs(d, append(lim[:len(lim):len(lim)], check.Num("E", "joint efficiency", p.Efficiency))...)}
			})
		}
	}
	return nil
}

// limitInputs are the strengths that [RangeLimit] takes.
func limitInputs(l material.Limits) []check.Quantity {
	if l.Rule == material.Flight {
		return []check.Quantity{check.Pa("F_ty", "yield strength", l.Yield)}
	}
	return []check.Quantity{check.Pa("S", "allowable stress", l.S), check.Pa("Rp0.2", "yield strength", l.Yield)}
}
