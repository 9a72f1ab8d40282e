package assess

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/material/weld"
	"proofsheet/report/check"
)

// A weldLine is one weld of the shell with the softened wall beside it.
type weldLine struct {
	name   string
	form   weldForm
	joint  string    // in the tank file; "" where none describes it
	parts  []part    // the walls it lies in that soften
	width  float64   // b_haz to each side of its centre line, the widest of its walls [m]
	z      float64   // of a girth [m]
	unsaid bool      // a seam whose place, station or clock, is not given
	clock  float64   // of a seam along the shell [rad]
	head   *headPart // of a weld in a head or at its seam
	port   *portPart
	meets  []*weldLine // closer along the wall than both widths
}

type weldForm int

const (
	longWeld    weldForm = iota // along the cylinder
	girthWeld                   // round the cylinder
	segmentWeld                 // in a head, from its seam to its apex or tip
	portWeld
	tipWeld
)

// title names a weld with those whose zones have grown together with its own.
func (w *weldLine) title() string {
	if w.meets == nil {
		return w.name
	}
	var names []string
	for _, o := range w.meets {
		names = append(names, o.name)
	}
	return w.name + ", grown together with " + strings.Join(names, ", ")
}

// lies reports whether a weld lies in a part.
func (w *weldLine) lies(name string) bool {
	return slices.ContainsFunc(w.parts, func(p part) bool { return p.name == name })
}

// half returns how far the outermost weld of a port is from its axis [m].
func (w *weldLine) half(chord float64) float64 {
	return w.port.port.Reach(chord / 2)
}

// weldLines returns every weld of the shell beside which the wall softens at a
// temperature T [K], where the widths come from, and why a zone is not known.
func (m *model) weldLines(T float64) (all []*weldLine, from check.Source, err error) {
	from.How = check.Read
	var faults zoneFaults
	add := func(w weldLine, parts ...part) {
		for _, p := range parts {
			b, src, soft, err := m.zoneWidth(p, w.joint, T)
			faults.add(w.name, err)
			if soft {
				w.parts, w.width, from.How = append(w.parts, p), math.Max(w.width, b), weakest(from.How, src.How)
				if !strings.Contains(from.Doc, src.Doc) {
					from.Doc = strings.TrimPrefix(from.Doc+"; "+src.Doc, "; ")
				}
			}
		}
		if w.parts != nil {
			all = append(all, &w)
		}
	}
	m.cylinderLines(add)
	for _, h := range m.ends() {
		m.headLines(h, add)
	}
	for _, p := range m.ports {
		if p.head != nil && p.head.in.Tip != nil && p.head.in.Tip.Port == p.in.Name {
			continue // its weld is that of the tip
		}
		add(weldLine{name: "port " + p.in.Name, form: portWeld, joint: p.in.Weld.Joint, head: p.head, port: p, z: p.z}, p.host)
	}
	return all, from, faults.err()
}

// zoneFaults are the reasons why zones are not known, each with its welds.
type zoneFaults struct {
	why   []error
	welds [][]string
}

func (f *zoneFaults) add(weld string, err error) {
	if err == nil {
		return
	}
	for i, known := range f.why {
		if known.Error() == err.Error() {
			f.welds[i] = append(f.welds[i], weld)
			return
		}
	}
	f.why, f.welds = append(f.why, err), append(f.welds, []string{weld})
}

func (f *zoneFaults) err() error {
	var errs []error
	for i, why := range f.why {
		errs = append(errs, fmt.Errorf("%s: %w", strings.Join(slices.Compact(f.welds[i]), ", "), why))
	}
	return errors.Join(errs...)
}

// seamStation is where the seam to a head lies, over the cylinder's length [-].
var seamStation = map[string]float64{"aft": 0, "forward": 1}

// cylinderLines adds the seams of the cylinder, those to the heads among them.
func (m *model) cylinderLines(add func(weldLine, ...part)) {
	if m.long != nil {
		add(weldLine{name: "long seam (" + m.long.Name + ")", form: longWeld, joint: m.long.Name, clock: m.t.Cylinder.LongSeamClock, unsaid: m.t.Cylinder.LongSeamAnywhere}, *m.cyl)
	}
	for _, h := range m.ends() {
		if h.seam != nil {
			add(weldLine{name: h.end + " seam (" + h.seam.Name + ")", form: girthWeld, joint: h.seam.Name, z: seamStation[h.end] * m.t.Cylinder.Length, head: h}, *m.cyl, h.part)
		}
	}
	if m.girth == nil {
		return
	}
	if len(m.t.Cylinder.GirthStations) == 0 {
		add(weldLine{name: "girth seam (" + m.girth.Name + ", station not given)", form: girthWeld, joint: m.girth.Name, unsaid: true}, *m.cyl)
	}
	for _, z := range m.t.Cylinder.GirthStations {
		add(weldLine{name: fmt.Sprintf("girth seam (%s) at %.4g mm", m.girth.Name, z*1e3), form: girthWeld, joint: m.girth.Name, z: z}, *m.cyl)
	}
}

// headLines adds the welds inside a head. What closes a tip is welded to it; only
// a port can say how.
func (m *model) headLines(h *headPart, add func(weldLine, ...part)) {
	if h.segment != nil {
		add(weldLine{name: h.end + " head seam (" + h.segment.Name + ")", form: segmentWeld, joint: h.segment.Name, clock: h.in.SegmentSeamClock, unsaid: h.in.SegmentSeamAnywhere, head: h}, h.part)
	}
	if h.in.Tip == nil {
		return
	}
	tip := weldLine{name: "tip of the " + h.end + " head", form: tipWeld, head: h}
	for _, p := range m.ports {
		if p.head == h && p.in.Name == h.in.Tip.Port {
			tip.joint = p.in.Weld.Joint
		}
	}
	add(tip, h.part)
}

// zoneWidth returns the width of the zone [m] in a part beside a weld of a
// joint, and whether the metal softens at all.
func (m *model) zoneWidth(p part, joint string, T float64) (float64, check.Source, bool, error) {
	if p.refused != nil {
		return 0, check.Source{}, false, p.refused
	}
	x := m.metals.at(p.material, welds(joint), p.nominal, T)
	if err := errors.Join(x.parentErr, x.zoneErr); err != nil {
		return 0, check.Source{}, false, err
	}
	if !x.zone.Softened {
		return 0, check.Source{}, false, nil
	}
	b, src, err := weld.ZoneWidth(m.processOf(joint), x.parent.Family, p.nominal)
	return b, src, true, err
}

// processOf returns the process of a joint, "" where it is not stated.
func (m *model) processOf(joint string) string {
	j, _ := m.t.FindJoint(joint)
	return j.Process
}

// weakest returns the less certain of two provenances.
func weakest(a, b check.How) check.How {
	rank := []check.How{check.Read, check.Computed, check.Practice, check.Memory}
	if slices.Index(rank, b) > slices.Index(rank, a) {
		return b
	}
	return a
}
