package proof

import (
	"math"

	"proofsheet/report/check"
)

// gasVolumes is what the record of a test with gas leaves open.
const gasVolumes = "in gas no volume tells trapped air, a yield or permanent growth of the whole tank: this record can fail such a test, it cannot pass it"

// gasBalance accounts for the change of pressure of a closed tank full of gas
// between two rows:
//
//	Δp_res = P₂ − P₁ T₂/T₁,  P = p + 101 325 Pa
//	U = 2 √[(D u_dT)² + (ΔT u_D)² + u_dp²],  D = P₁/T₁,  u_D = 0.1 D
//
// Leak is the volume of gas at the atmosphere that Δp_res stands for,
// −Δp_res V/101 325 Pa. Left out: how far the gas is from ideal and the wall's
// growth by warmth, both within u_D over the 1 K of warming that is judged, and
// the weather's part in 101 325 Pa.
//
// Source: ideal gas, computed; uncertainties, practice.
func (r *record) gasBalance(from, to int) Decay {
	a, b := r.l.Rows[from], r.l.Rows[to]
	d := r.noDecay()
	d.Span, d.Start, d.End = Span{from, to}, a.Temperature, b.Temperature
	d.Change, d.Warming = b.Pressure-a.Pressure, b.Temperature-a.Temperature
	d.Allowed = decayShare * r.set * math.Min(1, (b.Time-a.Time)/r.t.Plan.Hold)
	d.Drift = (a.Pressure + Atmosphere) / a.Temperature
	d.Explained = d.Drift * d.Warming
	d.Residual = d.Change - d.Explained
	d.moving = 2 * math.Abs(d.Warming) * driftShare * d.Drift
	d.Uncertainty = 2 * math.Sqrt(math.Pow(d.Drift*r.uTemperature(), 2)+math.Pow(d.Warming*driftShare*d.Drift, 2)+math.Pow(r.uPressure(), 2))
	d.Leak = -d.Residual * r.t.Full.Volume / Atmosphere
	return d
}

// letIn reports whether the log shows that water or gas was let in between two rows
// which it does not tell: from one reading to the next the pressure, temperature and
// volume taken off, rises by twice its uncertainty. What is let in slowly no log of
// a gas shows.
func (r *record) letIn(from, to int) bool {
	for i := from; i < to; i++ {
		if d := r.balance(i, i+1); d.Residual > 2*d.Uncertainty {
			return true
		}
	}
	return false
}

// strainLeft judges what the wall of a tank full of gas did not give back, by the
// hoop strain left between the reference readings, pressure taken off by the
// gauge's own line:
//
//	Δε = ε₂ − ε₁ − s (p₂ − p₁)
//
// over 10 % of the strain at the top, and beyond its uncertainty: fail. Up to 2 %
// or its uncertainty, and with that under 100e-6: pass. Else a second cycle must
// leave no more than 1 % or its uncertainty, and with that under 100e-6; without
// one: inconclusive. It stands for the plain cylinder alone; gauges elsewhere are
// shown.
//
// Source: limits as for the permanent set by volume, of which 10 % are read (49
// CFR 180.205); that they are asked of a strain, practice.
func (r *record) strainLeft() Finding {
	f := Finding{Title: "strain left", Outcome: NotRead}
	for g, gauge := range r.l.Gauges {
		low, all := r.strainRows(g)
		if r.before < 0 || r.after < 0 || len(low) < straightFrom {
			continue
		}
		_, slope := r.strainLine(low, g)
		top := math.Abs(slope * (r.l.Rows[all[len(all)-1]].Pressure - r.l.Rows[r.before].Pressure))
		left := r.leftBetween(r.before, r.after, g, slope)
		q := check.Num("Δε", gauge.Name+": strain left at the reference pressure", left)
		if gauge.Place != PlainHoop {
			f.Values = append(f.Values, number(q, 2*r.uStrain()))
			continue
		}
		f.Values = append(f.Values, within(q, 0, math.Max(setPass*top, 2*r.uStrain()), 2*r.uStrain()))
		again := math.NaN()
		if r.second >= 0 {
			again = r.leftBetween(r.after, r.second, g, slope)
			q = check.Num("Δε", gauge.Name+": strain left by the second cycle", again)
			f.Values = append(f.Values, within(q, 0, math.Max(setAgain*top, 2*r.uStrain()), 2*r.uStrain()))
		}
		if o, reason := leftOf(left, again, top, 2*r.uStrain()); worseThan(o, f.Outcome) {
			f.Outcome, f.Reason = o, gauge.Name+": "+reason
		}
	}
	if f.Outcome == NotRead {
		f.Outcome, f.Reason = Inconclusive, "no hoop strain of the plain cylinder was read at the reference pressure before and after"
	}
	return f
}

// leftBetween returns the strain that a gauge kept between two rows, by the slope
// of its line [1/Pa]; read there, or at the same stop beside.
func (r *record) leftBetween(from, to, g int, slope float64) float64 {
	a, b := r.l.Rows[r.strainBeside(from, g)], r.l.Rows[r.strainBeside(to, g)]
	return b.Strains[g] - a.Strains[g] - slope*(b.Pressure-a.Pressure)
}

// strainBeside returns the row nearest to one, at the same stop, at which a gauge was
// read; the row itself where none is.
func (r *record) strainBeside(row, g int) int {
	same := func(i int) bool {
		return i >= 0 && i < len(r.l.Rows) && math.Abs(r.l.Rows[i].Pressure-r.l.Rows[row].Pressure) <= steadyShare*r.set
	}
	for i := row; same(i); i-- {
		if !math.IsNaN(r.l.Rows[i].Strains[g]) {
			return i
		}
	}
	for i := row; same(i); i++ {
		if !math.IsNaN(r.l.Rows[i].Strains[g]) {
			return i
		}
	}
	return row
}

// leftOf judges a hoop strain left by the first cycle and again by a second, NaN
// for none, of the strain at the top, with the uncertainty u, all [-].
func leftOf(left, again, top, u float64) (Outcome, string) {
	still := func(ε, share float64) bool {
		return math.Abs(ε) <= math.Max(share*top, u) && math.Abs(ε)+u < setStrain
	}
	switch {
	case math.Abs(left) > setReject*top && math.Abs(left) > u:
		return Failed, "over 10 % of the strain at the top was left: rejected"
	case math.Abs(again) >= setStrain:
		return Failed, "the second cycle left hoop strain"
	case still(left, setPass):
		return Passed, "what was left is within 2 % of the strain at the top, or its uncertainty"
	case !math.IsNaN(left) && still(again, setAgain):
		return Passed, "the second cycle left no further strain"
	}
	return Inconclusive, "what was left is not shown to be within 2 % of the strain at the top: a second cycle is needed, read well"
}
