package proof

import (
	"fmt"
	"math"
	"sort"

	"proofsheet/report/check"
)

const (
	setPass   = 0.02   // permanent over total expansion of the wall [-], practice
	setReject = 0.10   // read: 49 CFR 180.205 [-]
	setAgain  = 0.01   // on a second cycle [-], practice
	setStrain = 100e-6 // hoop strain left by a second cycle [-], practice
)

// A volumeChange is water that stayed in the tank between two readings at the
// reference pressure.
type volumeChange struct{ value, uncertainty float64 } // [m3]

// permanent judges what the wall did not give back:
//
//	PE = ΔV between the reference readings + (β − 3 α_v) V ΔT − C Δp
//	TE = V(p_max) − V(p_ref) − κ V (p_max − p_ref) − air
//
// TE is the growth of the wall alone: against the whole injected volume the
// limit would be too wide by what the water gives. Over 10 % of TE: fail. Up to
// 2 %, known within 2 %: pass. Between, or not known so well, a second cycle
// must leave no more than 1 % of TE or 2 u_PE, and no more than 100e-6 of hoop
// strain where that is read; without it: inconclusive. Every later way up over
// half the setting is asked the same, and one before the hold may leave 2 %.
//
// Source: 10 % of total expansion, 49 CFR 180.205, read; the rest, practice;
// volumes by balance, computed.
func (r *record) permanent() Finding {
	f := r.firstSet()
	for _, row := range r.references() {
		if r.moving(row) {
			return Finding{Title: f.Title, Values: f.Values, Reason: fmt.Sprintf("the volume was still moving at the reference pressure, at %g s: wait until the meter is still", r.l.Rows[row].Time)}
		}
	}
	te := math.NaN()
	if r.before >= 0 && len(r.points) > 0 {
		te = r.totalExpansion()
	}
	r.earlierClimbs(&f, te)
	r.laterClimbs(&f, te)
	return f
}

// references returns the rows of the reference readings of every way up.
func (r *record) references() (out []int) {
	for _, c := range r.climbed {
		for _, row := range []int{c.before, c.after} {
			if row >= 0 {
				out = append(out, row)
			}
		}
	}
	return out
}

// moving reports whether the volume went on changing in the last third of the stop of
// which a row is the reading.
func (r *record) moving(row int) bool {
	rows, from := r.l.Rows, r.stopFrom(row)
	third := rows[row].Time - (rows[row].Time-rows[from].Time)/3
	at := from + sort.Search(row-from, func(k int) bool { return rows[from+k].Time >= third })
	u := either(r.l.VolumeChange, volumeUncertainty, r.l.VolumeStep) // of a change this small the meter's share is nothing
	return math.Abs(rows[row].Volume-rows[at].Volume) > 2*u
}

// firstSet judges what the way up to the hold left.
func (r *record) firstSet() Finding {
	f := Finding{Title: "permanent set"}
	if r.before < 0 || r.after < 0 || len(r.points) == 0 {
		f.Reason = "not known without reference readings before and after"
		return f
	}
	te := r.totalExpansion()
	pe := r.left(r.before, r.after)
	share := pe.value / te
	u2 := 2 * pe.uncertainty
	f.Values = []Measured{
		within(check.M3("TE", "growth of the wall at the top", te), r.predictedGrowth(), stiffnessShare*r.predictedGrowth(), math.NaN()),
		atMost(check.M3("PE", "permanent growth", pe.value), setPass*te, u2),
		atMost(check.Num("PE/TE", "permanent over total growth", share), setPass, u2/te),
	}
	known := u2 <= setPass*te
	switch {
	case !(te > 0):
		f.Reason = "the growth of the wall is not known"
	case math.IsNaN(share + u2):
		f.Reason = "no water temperature at the reference readings: the volume cannot be corrected"
	case share > setPass && r.nothingReturned():
		f.Reason = "no volume is read as returned after the hold: a meter that counts only what goes in, or water that stayed; write what came back"
	case share > setReject:
		f.Outcome, f.Reason = Failed, "permanent growth over 10 % of the total: rejected"
	case pe.value < -math.Max(u2, setPass*te):
		f.Reason = "more water came back than went in: the readings are not understood"
	case share <= setPass && known:
		f.Outcome, f.Reason = Passed, "permanent growth within 2 % of the total, uncertainty within it too"
	default:
		return r.secondCycle(f, te, known)
	}
	return f
}

// nothingReturned reports whether the volume never goes down between the top and the
// reference reading after it.
func (r *record) nothingReturned() bool {
	for i := r.reach + 1; i <= r.after; i++ {
		if r.l.Rows[i].Volume < r.shut[i-1]-noVolumeMoved {
			return false
		}
	}
	return true
}

// secondCycle judges a set between pass and reject, or one not known well
// enough, by what a second cycle leaves.
func (r *record) secondCycle(f Finding, te float64, known bool) Finding {
	if r.second < 0 {
		f.Reason = "permanent growth is not shown to be within 2 % of the total: a second cycle is needed"
		return f
	}
	pe := r.left(r.after, r.second)
	limit := math.Max(setAgain*te, 2*pe.uncertainty)
	f.Values = append(f.Values, atMost(check.M3("PE₂", "permanent growth of the second cycle", pe.value), limit, 2*pe.uncertainty))
	strain := math.NaN()
	for g, gauge := range r.l.Gauges {
		if gauge.Place == PlainHoop {
			s := r.l.Rows[r.second].Strains[g] - r.l.Rows[r.after].Strains[g]
			f.Values = append(f.Values, within(check.Num("Δε", gauge.Name+": strain left by the second cycle", s), 0, setStrain, 2*r.uStrain()))
			if math.IsNaN(strain) || math.Abs(s) > math.Abs(strain) {
				strain = s
			}
		}
	}
	switch {
	case math.IsNaN(pe.value + pe.uncertainty):
		f.Reason = "no water temperature at the reference readings of the second cycle"
	case pe.value > limit:
		f.Outcome, f.Reason = Failed, "the second cycle left permanent growth again"
	case math.Abs(strain) >= setStrain:
		f.Outcome, f.Reason = Failed, "the second cycle left hoop strain"
	case math.IsNaN(strain) && !known:
		f.Reason = "the volume is not known well enough to show the permanent growth, and no hoop strain was read"
	default:
		f.Outcome, f.Reason = Passed, "the second cycle left no further growth"
	}
	return f
}

// totalExpansion returns the growth of the wall from the reference pressure to
// the top of the way up [m3].
func (r *record) totalExpansion() float64 {
	top := r.points[len(r.points)-1]
	a, b := r.l.Rows[r.before], r.l.Rows[top]
	w, _ := r.water(r.set, top)
	te := b.Volume - a.Volume - w.Compressibility*r.t.Full.Volume*(b.Pressure-a.Pressure)
	if air := r.out.Line.Air; air > 0 {
		te -= air * (airShare(b.Pressure) - airShare(a.Pressure))
	}
	return te
}

// predictedGrowth returns what the plan predicts for it [m3]; it judges nothing,
// the stiffness has.
func (r *record) predictedGrowth() float64 {
	top := r.points[len(r.points)-1]
	return r.t.Full.Growth * (r.l.Rows[top].Pressure - r.l.Rows[r.before].Pressure)
}

// left returns the water that stayed in the tank between two rows near the
// reference pressure, at one pressure and temperature.
func (r *record) left(from, to int) volumeChange {
	a, b := r.l.Rows[from], r.l.Rows[to]
	w, known := r.water(referenceShare*r.set, from, to)
	if !known {
		return volumeChange{math.NaN(), math.NaN()}
	}
	c := r.stiffnessAt((a.Pressure + b.Pressure) / 2)
	free := (w.Expansion - 3*r.t.Full.WallExpansion) * r.t.Full.Volume // [m3/K]
	pe := b.Volume - a.Volume + free*(b.Temperature-a.Temperature) - c*(b.Pressure-a.Pressure)
	uV := math.Sqrt2 * r.uVolume(r.moved(from, to))
	if r.l.VolumeChange > 0 {
		uV = r.l.VolumeChange // stated for a change already
	}
	return volumeChange{pe, math.Sqrt(uV*uV + math.Pow(free*r.uTemperature(), 2) + math.Pow(c*r.uPressure(), 2))}
}

// moved returns the largest volume that went in and out between two rows [m3]:
// the meter errs by a share of it.
func (r *record) moved(from, to int) float64 {
	most := 0.0
	for i := from; i <= to; i++ {
		if v := r.l.Rows[i].Volume - r.l.Rows[from].Volume; math.Abs(v) > most {
			most = math.Abs(v)
		}
	}
	return most
}
