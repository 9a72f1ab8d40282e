package proof

import (
	"math"
	"slices"

	"proofsheet/report/check"
)

const (
	strainShare   = 0.10  // of the predicted strain [-], practice
	straightShare = 0.05  // loss of linearity at the top, share of the strain [-], practice
	creepMost     = 50e-6 // in the hold [-], practice
	lowerHalf     = 0.75  // of the setting: the straight line is laid through the readings below [-]
)

// strains judges every gauge: the slope of those in the plain cylinder, the
// straightness and the creep of all.
func (r *record) strains() Finding {
	f := Finding{Title: "strains", Outcome: NotRead,
		Reason: "no strain was read: a local yield at a port, a knuckle or a junction would not have been seen"}
	for g := range r.l.Gauges {
		o, reason, values := r.gauge(g)
		f.Values = append(f.Values, values...)
		if worseThan(o, f.Outcome) {
			f.Outcome, f.Reason = o, r.l.Gauges[g].Name+": "+reason
		}
	}
	switch {
	case f.Outcome == Passed:
		f.Reason = "straight and still; those of the plain cylinder within 10 % of the prediction"
	case f.Outcome == NotRead && r.gas():
		f.Outcome, f.Reason = Inconclusive, "no strain was read: in gas nothing else tells a yield"
	}
	return f
}

// worseThan orders the outcomes of gauges: fail, inconclusive, pass, not read.
func worseThan(a, b Outcome) bool {
	rank := map[Outcome]int{Failed: 3, Inconclusive: 2, Passed: 1, NotRead: 0}
	return rank[a] > rank[b]
}

// gauge judges the gauge of an index.
func (r *record) gauge(g int) (Outcome, string, []Measured) {
	at, name := r.l.Gauges[g].Place, r.l.Gauges[g].Name
	low, all := r.strainRows(g)
	if len(low) < straightFrom || len(all) == len(low) {
		return Inconclusive, "too few readings to tell whether it is straight", nil
	}
	top := all[len(all)-1]
	zero, slope := r.strainLine(low, g)
	strain := slope * r.l.Rows[top].Pressure
	loss := r.l.Rows[top].Strains[g] - zero - strain
	u, limit := 2*r.uStrain(), straightShare*math.Abs(strain)
	creep, known := r.creep(g, slope)
	values := []Measured{
		r.predictedStrain(at, name, strain, r.l.Rows[top].Pressure, u),
		within(check.Num("Δε", name+": off its straight line at the top", loss), 0, limit, u),
		within(check.Num("Δε", name+": creep in the hold", creep), 0, creepMost, u),
	}
	q := values[0]
	if c, left, read := r.worstKept(g, slope); c != nil {
		values = append(values, within(check.Num("Δε", name+": kept at the reference pressure", left), 0, math.Max(limit, u), u))
		switch {
		case math.Abs(left) > math.Max(limit, u):
			return Failed, r.along(*c, "keeps strain at the reference pressure: a yield where it sits"), values
		case !read:
			return Inconclusive, r.along(*c, "not read at the reference pressure before and after"), values
		}
	}
	if c, off, is := r.worstElsewhere(g, slope); is {
		values = append(values, within(check.Num("Δε", name+": off its straight line on another way up", off), 0, limit, u))
		if math.Abs(off) > math.Max(limit, u) {
			return Failed, r.along(c, "leaves its straight line: a yield where it sits"), values
		}
	}
	switch {
	case known && math.Abs(creep) > creepMost:
		return Failed, "creeps in the hold", values
	case math.Abs(loss) > math.Max(limit, u):
		return Failed, "leaves its straight line: a yield where it sits", values
	case !known:
		return Inconclusive, "not read through the hold", values
	case at == Elsewhere && !(math.Abs(strain) > u):
		return Inconclusive, "does not answer to the pressure beyond its uncertainty: dead, or too poor for where it sits", values
	case math.Abs(loss) > limit:
		return Inconclusive, "not read well enough to tell whether it is straight", values
	case at == PlainHoop && !(math.Abs(q.Value-q.Predicted) <= q.Band):
		return Inconclusive, "off the predicted strain by more than 10 %: another wall, another place or a bad gauge; explain it", values
	case at == PlainAxial && !(math.Abs(q.Value-q.Predicted) <= q.Band+math.Min(u, 2*strainChange)): // small beside a gauge's noise, but no more than by default
		return Inconclusive, "off the predicted strain by more than 10 % and its uncertainty; explain it", values
	}
	return Passed, "", values
}

// worstKept returns the most that a gauge kept between the reference readings of a way
// up, pressure taken off by its slope [1/Pa], on which, and whether it was read on
// each; nil where no way up has both readings.
func (r *record) worstKept(g int, slope float64) (worst *climb, left float64, read bool) {
	read = true
	for k, c := range r.climbed {
		if c.before < 0 || c.after < 0 || r.l.Rows[c.top].Pressure < departureFrom*r.set {
			continue
		}
		switch d := r.leftBetween(c.before, c.after, g, slope); {
		case math.IsNaN(d):
			if read = false; worst == nil {
				worst, left = &r.climbed[k], d
			}
		case worst == nil || !(math.Abs(d) <= math.Abs(left)):
			worst, left = &r.climbed[k], d
		}
	}
	return worst, left, read
}

// worstElsewhere returns how far a gauge leaves, between the reference reading and the
// top of another way up, the line of its slope [1/Pa], and the way up where that
// is most; false where it was read on none.
func (r *record) worstElsewhere(g int, slope float64) (worst climb, off float64, is bool) {
	earlier, later := r.others()
	for _, c := range slices.Concat(earlier, later) {
		if c.before < 0 {
			continue
		}
		a, b := r.l.Rows[c.before], r.l.Rows[c.top]
		if d := b.Strains[g] - a.Strains[g] - slope*(b.Pressure-a.Pressure); !math.IsNaN(d) && (!is || math.Abs(d) > math.Abs(off)) {
			worst, off, is = c, d, true
		}
	}
	return worst, off, is
}

// strainRows returns the rows of the way up at which a gauge was read, and those
// of them through which its straight line is laid.
func (r *record) strainRows(g int) (low, all []int) {
	for _, i := range r.points {
		if math.IsNaN(r.l.Rows[i].Strains[g]) {
			continue
		}
		all = append(all, i)
		if r.l.Rows[i].Pressure <= lowerHalf*r.set {
			low = append(low, i)
		}
	}
	return low, all
}

// predictedStrain lays the strain of a gauge at a pressure p [Pa] beside what
// its place should show.
func (r *record) predictedStrain(at GaugePlace, name string, strain, p, u float64) Measured {
	q := check.Num("ε", name+": strain at the top", strain)
	s, err := r.t.Wall.ThickCylinderStrains(math.Max(0, p), r.t.Radius-r.t.Wall.Thickness/2)
	switch {
	case at == Elsewhere:
		return number(q, u)
	case err != nil:
		return within(q, math.NaN(), math.NaN(), u)
	case at == PlainAxial:
		return within(q, s.Axial, strainShare*math.Abs(s.Axial), u)
	}
	return within(q, s.Hoop, strainShare*s.Hoop, u)
}

// strainLine returns the straight line of a gauge through rows: zero [-] and
// slope [1/Pa].
func (r *record) strainLine(rows []int, g int) (zero, slope float64) {
	var n, sp, se, spp, spe float64
	for _, i := range rows {
		p, e := r.l.Rows[i].Pressure, r.l.Rows[i].Strains[g]
		n, sp, se, spp, spe = n+1, sp+p, se+e, spp+p*p, spe+p*e
	}
	slope = (n*spe - sp*se) / (n*spp - sp*sp)
	return (se - slope*sp) / n, slope
}

// creep returns how far a gauge moved in the hold beyond what the change of
// pressure explains [-], between its first and last readings, which are near the
// hold's ends.
func (r *record) creep(g int, slope float64) (float64, bool) {
	h, rows := r.out.Hold, r.l.Rows
	from, to := -1, -1
	for i := h.From; i <= h.To; i++ {
		if !math.IsNaN(rows[i].Strains[g]) {
			if to = i; from < 0 {
				from = i
			}
		}
	}
	if near := HoldReadings(r.t.Plan.Hold) * (1 + 1e-9); to <= from || rows[from].Time-rows[h.From].Time > near || rows[h.To].Time-rows[to].Time > near {
		return math.NaN(), false
	}
	return r.leftBetween(from, to, g, slope), true
}
