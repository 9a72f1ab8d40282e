package assess

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads/proof"
	"proofsheet/material/fluid"
	"proofsheet/report/check"
	"proofsheet/shell/life"
	"proofsheet/shell/revolution"
)

const (
	leakID    = "tank/leak-before-burst"
	leakTitle = "Tank: a crack leaks before it bursts the tank"
)

// A cracked is a part that a crack along it is thought into, with what holds it.
type cracked struct {
	part  *part
	joint *tank.Joint // in which it lies; nil: none
}

// flatLeaks says which flat walls are part of the tank, for which no criterion is known.
func (m *model) flatLeaks() error {
	for _, h := range m.ends() {
		switch tip := h.in.Tip; {
		case h.in.Shape == "flat":
			return fmt.Errorf("%s: a flat wall bends under the pressure: no criterion is known here by which a crack in it leaks before it runs", strings.ToLower(h.title))
		case tip != nil && tip.Close == "plate":
			return fmt.Errorf("%s: the plate at its tip bends under the pressure: no criterion is known here by which a crack in it leaks before it runs", strings.ToLower(h.title))
		}
	}
	return nil
}

// crackedParts are the parts of the shell with a membrane.
func (m *model) crackedParts() (out []cracked) {
	out = append(out, cracked{m.cyl, m.long})
	for _, h := range m.ends() {
		if h.in.Shape != "flat" {
			out = append(out, cracked{&h.part, h.segment})
		}
	}
	return out
}

// toxic contents by the name of the built-in fluid: acutely toxic by every route, category 3 of the
// classification of chemicals (recalled). The others are fuels and gases that are not.
var toxic = []string{"methanol"}

// leakHarms says why a leak of the contents is no safe end, or nothing.
func (m *model) leakHarms() error {
	name := m.t.Contents.Fluid
	if name == "" {
		return errors.New("the contents are given by their density alone: whether a leak of them is harmless is not known")
	}
	dangers := proof.Dangers(name)
	for _, d := range []proof.Danger{proof.Oxygen, proof.Peroxide, proof.Nitrous} {
		if slices.Contains(dangers, d) {
			return fmt.Errorf("a leak of %s is no safe end: leak before burst does not count for it, whatever the numbers", d)
		}
	}
	if f, _ := fluid.Find(name); slices.Contains(toxic, f.Name) {
		return fmt.Errorf("a leak of %s, which is toxic, is no safe end: leak before burst does not count for it, whatever the numbers", name)
	}
	if slices.Contains(dangers, proof.Unknown) {
		return fmt.Errorf("whether a leak of %s is harmless is not known", name)
	}
	return nil
}

// checkLeak asks whether a crack in any part leaks before it runs, at the highest
// pressure of any case.
func (m *model) checkLeak(cases []*loadCase) check.Result {
	if err := m.leakHarms(); err != nil {
		return check.NotMade(leakID, leakTitle, err)
	}
	var all []check.Result
	for _, k := range m.crackedParts() {
		w, err := m.wallCracked(k, cases)
		all = append(all, leakOf(w.Wall, err, k.part))
	}
	for _, w := range m.lifeWelds() {
		if w.joint != nil && !w.along {
			if w.plain != nil { // as of the shell beside a port: what the port raises is not asked
				w.stress = w.plain
			}
			got, err := m.weldWall(w, cases)
			all = append(all, leakOf(got.Wall, err, w.parts...))
		}
	}
	if err := m.flatLeaks(); err != nil {
		all = append(all, check.NotMade(leakID, leakTitle, err))
	}
	worst := all[0]
	for _, r := range all[1:] {
		worst = worse(worst, r)
	}
	if s := worst.Status(); s == check.Satisfied || s == check.NotSatisfied {
		worst.Note += "; asked of the shell and the seams round it, not of the tubes of ports; whether a leak is harmless where it happens is for those who run the tank to say"
	}
	return worst
}

// leakOf makes the check of one wall, of the metals of the parts, or says why it cannot be
// gathered.
func leakOf(w life.Wall, err error, parts ...*part) check.Result {
	r := check.NotMade(leakID, leakTitle, err)
	if err == nil {
		r = w.Check(leakID, leakTitle)
		_, err = w.Leak()
	}
	if err != nil {
		r.Err = fmt.Errorf("%s: %w", w.Where, err)
	}
	if w.Toughness == 0 {
		var names []string
		for _, p := range parts {
			if !slices.Contains(names, p.material) {
				names = append(names, p.material)
			}
		}
		r.Err = fmt.Errorf("%w; write toughness of material %s with toughness_source: tabled values are typical and pass nothing", r.Err, strings.Join(names, ", "))
	}
	return r
}

// A crackedWall is the wall of a part, and its highest membrane stress anywhere [Pa].
type crackedWall struct {
	life.Wall
	highest float64
}

// wallCracked gathers a part at the highest stress of any case.
func (m *model) wallCracked(k cracked, cases []*loadCase) (crackedWall, error) {
	w := crackedWall{}
	w.Wall = life.Wall{Where: strings.ToLower(k.part.title), Radius: math.NaN(), Thickness: k.part.least, Yield: math.Inf(1), Ultimate: math.Inf(1)}
	if mat, ok := m.t.FindMaterial(k.part.material); ok && mat.Toughness != nil {
		w.Toughness, w.Source = *mat.Toughness, check.Source{Doc: mat.ToughnessSource, Where: "given in the tank file", How: check.Practice}
	}
	bend := 0.0
	var err error
	if k.joint != nil {
		if bend, _, err = m.misaligned(k.joint, true, []*part{k.part}); err != nil {
			return w, err
		}
		w.Where += ", " + k.joint.Name
	}
	for _, c := range cases {
		for _, at := range c.moments() {
			x := m.metals.at(k.part.material, m.weldsOf(k.part), k.part.nominal, at.temperature)
			if err := errors.Join(k.part.refused, x.zoneErr, x.zone.Brittle); err != nil {
				return w, err
			}
			w.Yield, w.Ultimate = math.Min(w.Yield, x.zone.Yield.Value), math.Min(w.Ultimate, x.zone.Ultimate.Value)
			if err := m.crackedAt(&w, k, at, bend); err != nil {
				return w, err
			}
		}
	}
	return w, nil
}

// crackedAt raises the stresses of a wall to those of one case; bend is the bending
// of misalignment over the membrane [-]. The membrane stress is that of the place where a
// long crack bulges most: a tighter radius may ask more than a higher stress.
func (m *model) crackedAt(w *crackedWall, k cracked, c *loadCase, bend float64) error {
	for _, s := range c.states {
		if k.part == m.cyl && m.t.Cylinder.Rings != nil {
			if err := m.crackedAtRing(&w.Wall, s, c, bend); err != nil {
				return err
			}
		}
		st := m.shellOf(s, c)
		if err := errors.Join(m.massErr, st.err); err != nil {
			return err
		}
		lines, err := m.lineLoads(s, c, st)
		if err != nil {
			return err
		}
		for i, q := range st.pressure.Stations {
			if st.whole.segments[q.Segment] != k.part {
				continue
			}
			w.Pressure = math.Max(w.Pressure, m.worstAt(s, math.Max(math.Min(q.Z, m.highest0()), m.lowest0())))
			across, along := st.spanAt(i, lines[i], c, hoop), st.spanAt(i, lines[i], c, meridional)
			most := math.Max(across.membrane(), along.membrane())
			w.Local = math.Max(w.Local, math.Max(across.largest(), along.largest())+bend*most)
			w.highest = math.Max(w.highest, most)
			R := slenderAt(st.pressure.Stations, i) * k.part.least
			if !(life.Bulged(most, R, w.Thickness) <= life.Bulged(w.Hoop, w.Radius, w.Thickness)) {
				w.Hoop, w.Radius = most, R
			}
		}
	}
	return nil
}

// slenderAt returns radius over wall at a station [-]; on the axis, where it is not
// a number, that of the next station in the same part.
func slenderAt(stations []revolution.Station, i int) float64 {
	for _, j := range []int{i, i + 1, i - 1} {
		if j >= 0 && j < len(stations) && stations[j].Segment == stations[i].Segment && stations[j].Slender > 0 {
			return stations[j].Slender
		}
	}
	return math.NaN()
}

// lowest0 and highest0 are where the inside begins and ends [m].
func (m *model) lowest0() float64  { lo, _ := m.in.Bounds(); return lo }
func (m *model) highest0() float64 { _, hi := m.in.Bounds(); return hi }
