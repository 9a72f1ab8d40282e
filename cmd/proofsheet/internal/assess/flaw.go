package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
	"proofsheet/shell/life"
)

const (
	flawID    = "tank/flaw-growth"
	flawTitle = "Tank: a flaw that the examination missed, over every cycle"
)

// checkFlaw asks, for every seam whose flaw is given, whether it stays within the
// wall over every cycle: those of service from the highest stress of any case to the
// lowest of any, those of the proof from theirs, by the fastest law that is known, as
// welded.
func (m *model) checkFlaw(cases []*loadCase) (out []check.Result) {
	for _, w := range m.lifeWelds() {
		var r check.Result
		switch {
		case w.joint != nil && w.joint.Flaw != nil:
			r = m.flawIn(w, cases)
		case w.of != nil && w.of.Flaw != nil:
			r = check.NotMade(flawID, flawTitle, fmt.Errorf("joint %s, with which it is welded, states a flaw: no formula is known here for one in the weld of a tube, beside the hole; judge it apart", w.of.Name))
		default:
			continue
		}
		if r.Status() == check.NotAssessed {
			r.Err = fmt.Errorf("%s: %s", w.where, r.Reason())
		}
		if out == nil {
			out = []check.Result{r}
		} else {
			out[0] = worse(out[0], r)
		}
	}
	return out
}

// flawIn makes the check in one seam.
func (m *model) flawIn(w lifeWeld, cases []*loadCase) check.Result {
	if w.joint.Examination != "full" {
		return check.NotMade(flawID, flawTitle, fmt.Errorf("joint %s is not examined over its whole length (examination %s): no examination bounds its flaw", w.joint.Name, w.joint.Examination))
	}
	cycles, err := m.lifeCycles(cases)
	service, serviceErr := m.flawedWall(w, cases, span{})
	if err = errors.Join(err, serviceErr); err != nil {
		return check.NotMade(flawID, flawTitle, err)
	}
	var n, np float64
	atProof := service
	for _, c := range cycles {
		if c.name != "proof" {
			n += c.count
			continue
		}
		np = c.count
		if atProof, err = m.flawedWall(w, c.at, service.span); err != nil {
			return check.NotMade(flawID, flawTitle, err)
		}
	}
	var laws []life.Record // of both metals: which of them the crack runs in is not known
	for _, p := range w.parts {
		mat, _ := m.t.FindMaterial(p.material)
		laws = append(laws, life.RecordsOf(mat.Alloy, m.familyOf(mat.Name))...)
	}
	flaw := life.Flaw{Depth: *w.joint.Flaw, Shape: life.DefaultShape, Thickness: service.Thickness, Radius: service.Radius}
	return life.CheckFlaw(flawID, flawTitle, service.Wall, atProof.Wall, flaw, laws, n, np)
}

// A weldedWall is the wall at a seam with what the stress across it runs over.
type weldedWall struct {
	life.Wall
	span span
}

// weldWall gathers the wall at a seam at the stress across it in all cases, with the
// weaker of the metals it joins and the bending of its misalignment; toughness 0 where one
// of them has none. A crack along a seam that goes round the tank bulges less than one along
// it: the radius counts as if it did not.
func (m *model) weldWall(w lifeWeld, cases []*loadCase) (out weldedWall, err error) {
	out.Wall = life.Wall{Where: w.where, Yield: math.Inf(1), Ultimate: math.Inf(1), Toughness: math.Inf(1), Thickness: math.Inf(1), Radius: m.cyl.mid()}
	if w.radius > 0 {
		out.Radius = w.radius
	}
	for _, p := range w.parts {
		k := 0.0
		if mat, _ := m.t.FindMaterial(p.material); mat.Toughness != nil {
			k = *mat.Toughness
			if k < out.Toughness {
				out.Source = check.Source{Doc: mat.ToughnessSource, Where: "given in the tank file", How: check.Practice}
			}
		}
		out.Toughness, out.Thickness = math.Min(out.Toughness, k), math.Min(out.Thickness, p.least)
	}
	if w.err != nil {
		return out, w.err
	}
	lo, hi := m.in.Bounds()
	for _, c := range cases {
		for _, at := range c.moments() {
			for _, p := range w.parts {
				x := m.metals.at(p.material, m.weldsOf(p), p.nominal, at.temperature)
				if err := errors.Join(p.refused, x.zoneErr, x.zone.Brittle); err != nil {
					return out, err
				}
				out.Yield, out.Ultimate = math.Min(out.Yield, x.zone.Yield.Value), math.Min(out.Ultimate, x.zone.Ultimate.Value)
			}
			for _, s := range at.states {
				σ, err := w.stress(s, at)
				if err != nil {
					return out, err
				}
				p, _ := s.HighestPressure(lo, hi)
				out.Pressure = math.Max(out.Pressure, p)
				out.span = out.span.with(σ)
			}
		}
	}
	out.Hoop = out.span.membrane()
	out.Local = out.span.largest() + w.bend*out.Hoop
	return out, nil
}

// flawedWall is that of a seam in which a flaw is thought. The range goes down to the least
// of other as well: that of service, which may follow the proof.
func (m *model) flawedWall(w lifeWeld, cases []*loadCase, other span) (out weldedWall, err error) {
	for _, p := range w.parts {
		if mat, _ := m.t.FindMaterial(p.material); mat.Toughness == nil {
			return out, fmt.Errorf("no lower bound of the toughness is known: write toughness of material %s with toughness_source", p.material)
		}
		if m.familyOf(p.material) != m.familyOf(w.parts[0].material) {
			return out, errors.New("the seam joins metals of two families: no growth law is known of it")
		}
	}
	out, err = m.weldWall(w, cases)
	out.Range = out.span.bent(w.bend).most - other.with(out.span).bent(w.bend).least
	return out, err
}
