package proof

import (
	"cmp"
	"math"
	"slices"

	"proofsheet/report/check"
)

// Shares of the setting by which the rows of a log are told apart [-]. Practice.
const (
	steadyShare    = 0.005 // rows this near to the first belong to one stop
	referenceReach = 0.02  // this near to the reference pressure a row is read as there
	onTheWay       = 0.3   // the way up to the steps begins above it
	endedShare     = 0.2   // and has ended under it: noise about one of them is no way up
	plateauShare   = 0.9   // the hold has ended below it
	secondShare    = 0.99  // a second cycle goes at least so high
	zeroShare      = 0.04  // under it a lowest reading is that of the open tank, over it that of the reference pressure
	begunShare     = 0.02  // a way up begins where the pressure was last so low
)

// segments finds the ways up, the hold and the reference readings. Judged in full
// is the way up that led to the hold.
func (r *record) segments() {
	rows := r.l.Rows
	r.reach, r.before, r.after, r.second = 0, -1, -1, -1
	last := math.NaN()
	for _, row := range rows {
		if !math.IsNaN(row.Volume) {
			last = row.Volume
		}
		r.shut = append(r.shut, last)
	}
	r.out.Hold = r.hold()
	r.climbed = r.climbs()
	r.main = r.mainClimb()
	if r.main < 0 { // it never went over 0.3 of the setting
		for i, row := range rows {
			if row.Pressure > rows[r.reach].Pressure {
				r.reach = i
			}
		}
		r.begun = r.beginning(0, r.reach)
		r.before = r.referenceIn(r.begun, r.reach)
		r.points = r.wayUp(climb{begun: r.begun, top: r.reach, down: len(rows)}, r.reach)
		return
	}
	c := r.climbed[r.main]
	r.reach, r.begun, r.before, r.after = c.top, c.begun, c.before, c.after
	for _, c := range r.climbed[r.main+1:] {
		if rows[c.top].Pressure >= secondShare*r.set {
			r.second = c.after
			break
		}
	}
	r.points = r.wayUp(c, max(r.out.Hold.To, c.top))
}

// referenceIn returns the row of the reference reading among rows from up to to: of
// those with a temperature, where any has one; -1 where none is.
func (r *record) referenceIn(from, to int) int {
	full := func(row LogRow) bool { return r.atReference(row) && !math.IsNaN(row.Temperature) }
	is := full
	at := r.stop(from, to, is)
	if at < 0 {
		is = r.atReference
		at = r.stop(from, to, is)
	}
	if at < 0 {
		return at
	}
	for middle := r.middle(from, at, is); at > from && r.l.Rows[at].Pressure-middle > 2*r.uPressure() && is(r.l.Rows[at-1]); {
		at-- // pumping had begun again
	}
	return at
}

// middle returns the median pressure of the rows before one, and it, that are as asked
// without a break [Pa].
func (r *record) middle(from, row int, is func(LogRow) bool) float64 {
	var ps []float64
	for i := row; i >= from && is(r.l.Rows[i]); i-- {
		ps = append(ps, r.l.Rows[i].Pressure)
	}
	slices.Sort(ps)
	return ps[len(ps)/2]
}

// stopFrom returns the first row of the stop to which a row belongs.
func (r *record) stopFrom(row int) int {
	rows, from := r.l.Rows, row
	for from > 0 && math.Abs(rows[from-1].Pressure-rows[row].Pressure) <= steadyShare*r.set {
		from--
	}
	return from
}

func (r *record) atReference(row LogRow) bool {
	return math.Abs(row.Pressure-referenceShare*r.set) <= referenceReach*r.set && r.read(row)
}

// next returns the first row from i on whose pressure is as asked; the number
// of rows where none is.
func (r *record) next(i int, is func(p float64) bool) int {
	for i = max(i, 0); i < len(r.l.Rows); i++ {
		if is(r.l.Rows[i].Pressure) {
			return i
		}
	}
	return len(r.l.Rows)
}

// hold returns the first stretch at the setting that is long enough; else the
// longest.
func (r *record) hold() Span {
	best := Span{0, -1}
	length := func(s Span) float64 {
		if s.To < s.From {
			return -1
		}
		return r.l.Rows[s.To].Time - r.l.Rows[s.From].Time
	}
	from := -1
	for i := 0; i <= len(r.l.Rows); i++ {
		if i < len(r.l.Rows) && r.l.Rows[i].Pressure >= r.set {
			if from < 0 {
				from = i
			}
			continue
		}
		if from < 0 {
			continue
		}
		if s := (Span{from, i - 1}); length(s) > length(best) {
			best = s
		}
		if length(best) >= r.t.Plan.Hold {
			return best
		}
		from = -1
	}
	return best
}

// stop returns the last row of the longest stop at one pressure among rows
// from up to (not with) to which are as asked; -1 where none is.
func (r *record) stop(from, to int, is func(LogRow) bool) int {
	best, longest := -1, -1.0
	start, last := -1, -1
	for i := max(from, 0); i < min(to, len(r.l.Rows)); i++ {
		row := r.l.Rows[i]
		if !is(row) {
			continue
		}
		if last < 0 || math.Abs(row.Pressure-r.l.Rows[start].Pressure) > steadyShare*r.set || i != last+1 {
			start = i
		}
		last = i
		if d := row.Time - r.l.Rows[start].Time; d >= longest {
			best, longest = i, d
		}
	}
	return best
}

// wayUp returns a row for each pressure at which a way up stopped: by
// twentieths of the setting below 0.45 of it, by tenths above, where the row is
// the last of the longest stop; and the top of the pump's last stroke, which
// ends at the row held at the latest.
func (r *record) wayUp(c climb, held int) []int {
	bin := func(p float64) int {
		if share := p / r.set; share >= 0.45 {
			return 100 + int(math.Round(10*share))
		}
		return int(math.Round(20 * p / r.set))
	}
	top := c.top
	for top+1 < len(r.l.Rows) && r.l.Rows[top+1].Pressure > r.l.Rows[top].Pressure && r.l.Rows[top+1].Volume > r.l.Rows[top].Volume {
		top++
	}
	for top < held && !r.read(r.l.Rows[top]) {
		top++
	}
	var points []int
	seen := map[int]bool{}
	for i := c.begun; i < c.top; i++ {
		b := bin(r.l.Rows[i].Pressure)
		if seen[b] || r.l.Rows[i].Pressure < 0 {
			continue
		}
		seen[b] = true
		at := r.stop(c.begun, c.top, func(row LogRow) bool { return r.read(row) && bin(row.Pressure) == b })
		if at >= 0 && b != bin(r.l.Rows[top].Pressure) {
			points = append(points, at)
		}
	}
	if r.read(r.l.Rows[top]) {
		points = append(points, top)
	}
	slices.SortStableFunc(points, func(a, b int) int { return cmp.Compare(r.l.Rows[a].Pressure, r.l.Rows[b].Pressure) })
	return points
}

// reference asks for readings at the reference pressure before and after.
func (r *record) reference() Finding {
	f := Finding{Title: "reference readings", Outcome: Passed, Reason: "read before and after the hold"}
	what := "strain"
	if !r.gas() {
		what = "volume"
		f.Notes = []string{"Volumes are of the tank alone: what pump, hose and gauge line take is to be off them."}
	}
	switch {
	case r.before < 0 && r.after < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure, neither before nor after the hold"
	case r.before < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure on the way up"
	case r.after < 0:
		f.Outcome, f.Reason = Inconclusive, "no "+what+" read near the reference pressure after the hold, before the tank is opened"
	}
	for _, q := range []struct {
		row  int
		name string
	}{{r.before, "pressure of the reading before"}, {r.after, "pressure of the reading after"}} {
		if q.row >= 0 {
			v := within(check.Pa("", q.name, r.l.Rows[q.row].Pressure), referenceShare*r.set, referenceReach*r.set, math.NaN())
			v.Bound = "planned"
			f.Values = append(f.Values, v)
		}
	}
	return f
}
