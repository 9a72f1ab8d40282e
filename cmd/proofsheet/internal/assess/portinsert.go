package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
	"proofsheet/shell/life"
)

// flushSource is where the bending by a plate that is thicker on one side comes from.
var flushSource = check.Source{Doc: "butt joint of unequal walls, form of BS 7910 Annex D", Where: "recalled; taken as flush on one face", How: check.Memory}

// lifeInsert is the butt weld round an inserted plate. The stress beside a port that
// replaces its area is nowhere above its stress index, and so not at the edge of the
// plate, which is part of what it is reinforced by; how much less it is there is not
// known. The bending by walls out of line and by the plate's one-sided thickness comes on
// top, of the wall's own membrane stress.
func (m *model) lifeInsert(p *portPart) lifeWeld {
	j := m.joint(p.in.Insert.Seam)
	w := m.lifePort(p)
	of := w.stress
	w.where, w.port, w.of, w.joint = "insert of port "+p.in.Name, false, nil, j
	if w.err != nil {
		return w
	}
	if j == nil {
		w.err = fmt.Errorf("joint %q of the insert is not in the tank file", p.in.Insert.Seam)
		return w
	}
	w.where += " (" + j.Name + ")"
	w.radius = p.port.NormalRadius(p.wall)
	w.local += ", hi-lo, peaking and the plate's thickness on one side"
	w.bend, w.err = m.insertBend(p, j)
	w.class = func() (life.Class, error) {
		return life.ClassOf(j.Kind, m.familyOf(p.host.material), j.Root != "", j.Examination == "full")
	}
	w.plain = func(s *loads.State, c *loadCase) (span, error) {
		got, err := m.insertSpan(p, s, c)
		return got[0].with(got[1]), err
	}
	w.stress = func(s *loads.State, c *loadCase) (span, error) {
		raised, err := of(s, c)
		wall, wallErr := w.plain(s, c)
		return span{raised.least, raised.most, wall.membraneLeast, wall.membraneMost}, errors.Join(err, wallErr)
	}
	return w
}

// insertBend returns the bending of the weld round an insert over the membrane stress
// across it [-], as life takes it: unpressurised, of the shortest roof.
func (m *model) insertBend(p *portPart, j *tank.Joint) (float64, error) {
	if j.HiLo == nil || j.Peaking == nil {
		return math.NaN(), fmt.Errorf("how far the walls are out of line is not known: write hi_lo and peaking of joint %s, as measured or as the welder holds it", j.Name)
	}
	e, ν, err := m.elastic(&p.host, roomTemperature)
	if err != nil {
		return math.NaN(), err
	}
	t := p.host.least
	k, err1 := edge.LongHiLo(t, t, *j.HiLo, ν)
	roof, err2 := edge.Peaking(*j.Peaking, math.Max(3**j.Peaking, t), t, 0, e, ν)
	step, err3 := port.InsertBending(t, p.port.Insert.Thickness, ν)
	return k + roof + step, errors.Join(err1, err2, err3)
}

// An insertSpan is what the hoop and the meridional stress of the wall run over under an
// inserted plate.
type insertSpan [2]span

// insertSpan finds it in one state. The weld runs round the plate: somewhere either stress
// is square to it, and nowhere is the stress across it more than the larger of the two.
func (m *model) insertSpan(p *portPart, s *loads.State, c *loadCase) (out insertSpan, err error) {
	var errs [2]error
	for i, d := range [2]direction{hoop, meridional} {
		out[i], errs[i] = m.spanWhere(s, c, d, m.alongPort(p))
		if m.ringNearPort(p) {
			ring, ringErr := m.spanAtRing(s, c, d)
			out[i], errs[i] = out[i].with(ring), errors.Join(errs[i], ringErr)
		}
	}
	return out, errors.Join(errs[:]...)
}

// insertSpans finds it over all operating states, of every insert; one that is not known
// has no entry.
func (m *model) insertSpans() map[string]insertSpan {
	all := map[string]insertSpan{}
	for _, p := range m.ports {
		if p.in.Insert == nil || p.wallErr != nil || p.chordsErr != nil {
			continue
		}
		var over insertSpan
		known := true
		for _, o := range m.operating {
			got, err := m.insertSpan(p, o.state, o.c)
			known = known && err == nil
			over = insertSpan{over[0].with(got[0]), over[1].with(got[1])}
		}
		if known {
			all[p.in.Name] = over
		}
	}
	return all
}

// checkInsertLine is port.NAME/misalignment: membrane and bending stress at the weld round
// an inserted plate, with its hi-lo and peaking where they are written and the plate taken
// as flush with the wall on one face, whichever of the wall's stresses is across.
func (m *model) checkInsertLine(p *portPart, s *loads.State, c *loadCase) check.Result {
	id, title := "port."+p.in.Name+"/misalignment", "Port "+p.in.Name+": weld round the inserted plate, bent"
	x, err := m.insertSeam(p, c)
	if err = errors.Join(p.wallErr, p.chordsErr, err); err != nil {
		return check.NotMade(id, title, err)
	}
	x.id, x.title = id, title
	at := m.alongInsert(p, s, c)
	seen := insertSpan{}
	if m.seamsSee != nil {
		var ok bool
		if seen, ok = m.seamsSee.inserts[p.in.Name]; !ok {
			at.err = errors.Join(at.err, errors.New("the stress at the insert is not known in every operating state"))
		}
	}
	var out [2]check.Result
	for i := range out {
		x.seen, x.reversed = &seen[i], seen[i].membraneLeast < 0
		turned := spots{err: at.err}
		for _, q := range at.at {
			if q.hoop == (i == 0) {
				turned.at = append(turned.at, q.spot)
			}
		}
		out[i] = x.worst(turned)
	}
	return worse(out[0], out[1])
}

// insertSeam is the weld round an inserted plate, held in its zone.
func (m *model) insertSeam(p *portPart, c *loadCase) (misalignedSeam, error) {
	x := misalignedSeam{wall: p.host.least}
	j := m.joint(p.in.Insert.Seam)
	if j == nil {
		return x, fmt.Errorf("joint %q of the insert is not in the tank file", p.in.Insert.Seam)
	}
	all, weldErr := m.weldsAt(p)
	a := m.allow(p.host, all, c)
	x.limits = a.zone
	var effErr, elasticErr error
	x.efficiency, _, effErr = asWeld(j).EfficiencyAt(string(c.rule), m.t.InsertPlace(p.in))
	x.e, x.ν, elasticErr = m.elastic(&p.host, c.temperature)
	x.causes = func(across float64) ([]edge.Misalignment, error) {
		out, err := m.alongCauses(j, x, across)
		k, stepErr := port.InsertBending(x.wall, p.port.Insert.Thickness, x.ν)
		return append(out, edge.Misalignment{Symbol: "k_s", Name: "plate flush with the wall on one face", Ratio: k, Source: flushSource}), errors.Join(err, stepErr)
	}
	return x, errors.Join(m.massErr, p.host.refused, weldErr, a.zoneErr, effErr, elasticErr)
}

// An insertSpot is a place of the weld where the hoop stress, or the meridional one, is
// across.
type insertSpot struct {
	spot
	hoop bool
}

// insertSpots are the places of the weld, or why they are not known.
type insertSpots struct {
	at  []insertSpot
	err error
}

// alongInsert returns the stress of the numerical shell under an insert, line loads at
// both extremes, each of both stresses across in turn.
func (m *model) alongInsert(p *portPart, s *loads.State, c *loadCase) (out insertSpots) {
	st := m.shellOf(s, c)
	if st.err != nil {
		return insertSpots{err: st.err}
	}
	lines, err := m.lineLoads(s, c, st)
	if err != nil {
		return insertSpots{err: err}
	}
	take := m.alongPort(p)
	for i, q := range st.pressure.Stations {
		if !take(st, i) {
			continue
		}
		for _, at := range st.stresses(i, lines[i]) {
			for _, l := range [2]edge.Stress{at.most, at.least} {
				x := plus(at.pressure, l)
				for _, face := range [2]float64{1, -1} {
					out.at = append(out.at, insertSpot{spot{z: q.Z, across: x.Hoop, along: x.Meridional + face*x.MeridionalBending, bend: math.Abs(x.HoopBending)}, true},
						insertSpot{spot{z: q.Z, across: x.Meridional, along: x.Hoop + face*x.HoopBending, bend: math.Abs(x.MeridionalBending)}, false})
				}
			}
		}
	}
	if out.at == nil {
		out.err = errors.New("no station of the numerical shell stands at the insert")
	}
	return out
}
