package assess

import (
	"errors"
	"fmt"
	"strings"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/shell"
)

const (
	weldZonesID    = "tank/weld-zones"
	weldZonesTitle = "Tank: softened weld zones"
)

// A zoneLimit returns what is allowed in the zone of a weld of a joint in a part,
// without joint efficiency.
type zoneLimit func(p part, joint string) (material.Limits, error)

// A zoneLayout is where the wall softens at one temperature.
type zoneLayout struct {
	lines  []*weldLine
	groups []zoneGroup
	from   check.Source // of the widths
	err    error
	// Some zone is of aluminium, whose width grows with the heat between passes.
	aluminium bool
}

// zonesAt returns the layout at a temperature T [K], remembered.
func (m *model) zonesAt(T float64) *zoneLayout {
	if l, ok := m.layouts[T]; ok {
		return l
	}
	l := &zoneLayout{}
	l.lines, l.from, l.err = m.weldLines(T)
	for _, w := range l.lines {
		for _, p := range w.parts {
			l.aluminium = l.aluminium || m.metals.at(p.material, welds(w.joint), p.nominal, T).parent.Family == material.Aluminium
		}
		if w.port != nil {
			l.err = errors.Join(l.err, w.port.wallErr, w.port.chordsErr)
		}
	}
	l.groups = m.merged(l.lines)
	m.layouts[T] = l
	return l
}

// checkWeldZones holds every weld zone of the tank in one state of a case to
// what the rule allows there.
func (m *model) checkWeldZones(s *loads.State, c *loadCase) check.Result {
	return m.weldZones(s, c, func(p part, joint string) (material.Limits, error) {
		a := m.allow(p, welds(joint), c)
		return a.zone, a.zoneErr
	})
}

// weldZones holds the largest equivalent membrane stress within the zone of every
// weld to the weakest limit of that weld and those whose zones have grown
// together with it, and returns the worst. In the cylinder the extremes along it
// are taken together, wherever on it the zone lies.
func (m *model) weldZones(s *loads.State, c *loadCase, limit zoneLimit) check.Result {
	l := m.zonesAt(c.temperature)
	if err := errors.Join(m.massErr, l.err); err != nil {
		return check.NotMade(weldZonesID, weldZonesTitle, err)
	}
	if len(l.lines) == 0 {
		return check.NotApplicableTo(weldZonesID, weldZonesTitle, "no wall of the tank loses strength beside its welds: there is no softened zone")
	}
	var worst check.Result
	at := ""
	for _, w := range l.lines {
		limits, err := w.limits(limit)
		if err != nil {
			return check.NotMade(weldZonesID, weldZonesTitle, fmt.Errorf("%s: %w", w.name, err))
		}
		for _, r := range m.zoneChecks(w, s, c, limits) {
			if r.Status() == check.NotAssessed {
				return check.NotMade(weldZonesID, weldZonesTitle, fmt.Errorf("%s: %s", w.name, r.Reason()))
			}
			if at == "" || r.Margin() < worst.Margin() {
				worst, at = r, w.title()
				worst.Inputs = append(worst.Inputs, check.Pa("R_p0.2,w", "yield strength in the zone", limits.Yield))
			}
		}
	}
	if at == "" {
		return check.NotApplicableTo(weldZonesID, weldZonesTitle, "every softened zone lies in a flat head, which carries pressure by bending: the thickness rule holds it")
	}
	return l.complete(worst, at)
}

// limits returns the weakest of what is allowed in the zone of a weld and of
// those that have grown together with it.
func (w *weldLine) limits(limit zoneLimit) (out material.Limits, err error) {
	for _, o := range append([]*weldLine{w}, w.meets...) {
		for _, p := range o.parts {
			l, err := limit(p, o.joint)
			if err == nil && out.Rule != "" {
				l, err = out.Lower(l)
			}
			if err != nil {
				return out, fmt.Errorf("%s: %w", p.name, err)
			}
			out = l
		}
	}
	return out, nil
}

// zoneChecks makes the check of one zone in every part it lies in.
func (m *model) zoneChecks(w *weldLine, s *loads.State, c *loadCase, limits material.Limits) (out []check.Result) {
	add := func(r check.Result) {
		if r.Status() != check.NotApplicable {
			out = append(out, r)
		}
	}
	if w.lies("cylinder") {
		cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
		cond, err := m.cylinderCondition(s, c)
		r := cyl.CheckEquivalent(cond, shell.Allowables{Parent: limits, Zone: limits}, shell.Seams{})
		r.Err = errors.Join(r.Err, err)
		r.Note = strings.TrimSpace("in the cylinder " + r.Note)
		add(r)
	}
	for _, h := range m.ends() {
		if w.lies(h.name) {
			r := heads.CheckZone(h.nominal0, h.end, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}, m.headLoading(h, s, c), limits, w.inHead(h))
			r.Note = "in the " + h.end + " head, " + r.Note
			add(r)
		}
	}
	return out
}

// inHead returns the wall of its head that a weld has softened.
func (w *weldLine) inHead(h *headPart) (z heads.Zone) {
	switch w.form {
	case girthWeld:
		z.Girth = w.width
	case segmentWeld:
		z.Everywhere = true
	case portWeld:
		e, reach := given(w.port.in.Radius), w.half(w.port.in.Tube.OutsideDiameter)+w.width
		z.Radii = [][2]float64{{e - reach, e + reach}}
	case tipWeld:
		z.Radii = [][2]float64{{0, h.in.Tip.Diameter/2 + h.nominal + w.width}}
	}
	return z
}

// atSeam returns the welds whose zones lie at the seam of a head: its own joint
// and those whose zones have grown together with it.
func (m *model) atSeam(h *headPart) welds {
	if h.seam == nil {
		return ""
	}
	w := welds(h.seam.Name)
	for _, l := range m.zonesAt(roomTemperature).lines {
		if l.form == girthWeld && l.head == h {
			for _, o := range l.meets {
				w = w.and(welds(o.joint))
			}
		}
	}
	return w
}

// complete turns the worst check into that of the tank, with where every zone
// lies, how wide it is and which have merged.
func (l *zoneLayout) complete(r check.Result, at string) check.Result {
	where := r.Note
	r.ID, r.Title = weldZonesID, weldZonesTitle
	r.Formula += "; S of the zone without joint efficiency; one zone where d < b_1 + b_2"
	for _, g := range l.groups {
		for _, w := range g.welds {
			r.Inputs = append(r.Inputs, check.M("b", "zone to each side of "+w.name, w.width))
		}
		for _, p := range g.pairs {
			r.Inputs = append(r.Inputs, check.M("d", "along the wall between "+p.a.name+" and "+p.b.name, p.d))
		}
	}
	r.Source.How = weakest(r.Source.How, l.from.How)
	r.Source.Doc += "; extent of the zone: " + l.from.Doc
	r.Note = "worst in the zone of " + at + ": " + where + "; " + l.words()
	if l.aluminium {
		r.Note += "; widths are for walls no hotter than 60 degC between passes; a hotter one widens them by 1 + (T − 60)/120, which is not included"
	}
	return r
}

// words lists the zones: those that have merged, with the distances between
// their welds, and those that stand alone.
func (l *zoneLayout) words() string {
	var out []string
	for _, g := range l.groups {
		if len(g.pairs) == 0 {
			out = append(out, fmt.Sprintf("alone: %s, %.4g mm to each side", g.welds[0].name, g.welds[0].width*1e3))
			continue
		}
		var pairs []string
		for _, p := range g.pairs {
			pairs = append(pairs, p.words())
		}
		out = append(out, "one zone: "+strings.Join(pairs, ", "))
	}
	return strings.Join(out, "; ")
}

// words says how two welds stand to each other.
func (p zonePair) words() string {
	switch {
	case p.unsure():
		return p.a.name + " may meet " + p.b.name
	case p.d == 0:
		return p.a.name + " meets " + p.b.name
	}
	return fmt.Sprintf("%s and %s %.1f mm apart", p.a.name, p.b.name, p.d*1e3)
}

// zoneProcesses lists the welds of the tank whose zone is taken for TIG because
// nobody says how they are made.
func (m *model) zoneProcesses(T float64) (out []report.Row) {
	const why = "TIG softens more and further than MIG"
	seen := map[string]bool{}
	for _, g := range m.zonesAt(T).groups {
		for _, w := range g.welds {
			row := report.Row{Name: "joint." + w.joint + ".process", Value: "tig", Note: "nothing was written; " + why}
			if w.joint == "" {
				row.Name, row.Note = w.name+", process of its welds", "no joint speaks for them; "+why
			}
			if m.processOf(w.joint) == "" && !seen[row.Name] {
				seen[row.Name] = true
				out = append(out, row)
			}
		}
	}
	return out
}
