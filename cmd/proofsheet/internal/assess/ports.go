package assess

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// A portPart is one opening with the wall it stands in.
type portPart struct {
	in      tank.Port
	host    part
	head    *headPart // nil on the cylinder
	z       float64   // where the tube's axis meets the mid-surface [m]
	wall    port.Wall
	wallErr error
	port    port.Port
	// Chords of the cut-out as it is cut: nominal walls.
	chords    port.Chords
	chordsErr error
	placed    func() check.Result // where it stands, found once
}

// metal returns the volume of the tube's metal, its round or elliptical pad and what
// an insert has over the wall [m3].
func (p *portPart) metal() float64 {
	t, od := p.in.Tube.Wall, p.in.Tube.OutsideDiameter
	v := math.Pi * (od - t) * t * (p.in.Outside + p.in.Inside + p.host.nominal)
	if pad := p.in.Pad; pad != nil && pad.OutsideDiameter != nil {
		d := *pad.OutsideDiameter
		long := d
		if pad.Length != nil {
			long = *pad.Length
		}
		v += math.Pi / 4 * (d*long - od*od) * pad.Thickness
	}
	if in := p.in.Insert; in != nil {
		v += math.Pi / 4 * in.OutsideDiameter * in.OutsideDiameter * (in.Thickness - p.host.nominal)
	}
	return v
}

// newPorts resolves the ports on their walls.
func (m *model) newPorts() {
	for _, in := range m.t.Port {
		m.ports = append(m.ports, m.newPort(in))
	}
}

// newPort resolves one port.
func (m *model) newPort(in tank.Port) *portPart {
	p := &portPart{in: in, host: *m.cyl}
	switch in.On {
	case "aft":
		p.head = m.aft
	case "forward":
		p.head = m.fwd
	}
	if p.head != nil {
		p.host = p.head.part
	}
	p.wall, p.wallErr = m.portWall(p, false)
	p.port = portOf(in, p.host.corrosion)
	p.port.Sizes = port.Sizes{Tube: in.Tube.Wall - p.host.corrosion, Wall: p.host.nominal - p.host.corrosion}
	if in.Insert != nil {
		p.port.Sizes.Wall = in.Insert.Thickness - p.host.corrosion
	}
	if in.Pad != nil {
		p.port.Sizes.Pad = in.Pad.Thickness
	}
	p.z = m.portStation(p)
	nominal := portOf(in, 0)
	nominal.TubeWall = in.Tube.Wall
	wall, err := m.portWall(p, true)
	p.chords, p.chordsErr = nominal.Chords(wall)
	p.chordsErr = errors.Join(err, p.chordsErr)
	p.placed = sync.OnceValue(func() check.Result { return p.port.CheckPlacement(p.wall) })
	return p
}

// portOf returns the opening with its tube's wall for strength: tolerance and
// corrosion off, twice on what projects inside.
func portOf(in tank.Port, corrosion float64) port.Port {
	p := port.Port{
		Name: in.Name, OutsideDiameter: in.Tube.OutsideDiameter,
		TubeWall:   in.Tube.Wall - in.Tube.UnderTolerance - corrosion,
		InsideWall: in.Tube.Wall - in.Tube.UnderTolerance - 2*corrosion,
		Radius:     given(in.Radius), Station: given(in.Station), Offset: in.Offset, Clock: in.Clock, Parallel: in.Axis == "parallel",
		Outside: in.Outside, Inside: in.Inside,
		OutsideLeg: in.Weld.OutsideLeg, InsideLeg: in.Weld.InsideLeg, Groove: in.Weld.Groove, FullGroove: in.Weld.GrooveFull,
	}
	switch in.Fit {
	case "flush":
		p.Fit = port.Flush
	case "on":
		p.Fit = port.On
	}
	if in.Weld.OutsideThroat > 0 {
		p.OutsideLeg = in.Weld.OutsideThroat * math.Sqrt2
	}
	if in.Weld.InsideThroat > 0 {
		p.InsideLeg = in.Weld.InsideThroat * math.Sqrt2
	}
	if in.Pad != nil {
		d := given(in.Pad.OutsideDiameter)
		if in.Pad.Lip != nil {
			d = in.Tube.OutsideDiameter + 2**in.Pad.Lip
		}
		p.Pad = &port.Pad{OutsideDiameter: d, Length: given(in.Pad.Length), Lip: given(in.Pad.Lip), Thickness: in.Pad.Thickness - in.Pad.UnderTolerance, Leg: in.Pad.Leg}
	}
	if q := in.Insert; q != nil {
		p.Insert = &port.Insert{OutsideDiameter: q.OutsideDiameter, Thickness: q.Thickness - q.UnderTolerance - corrosion, Efficiency: 1} // its own: withInsert
	}
	return p
}

// checkPorts makes the checks of every port in one state of a case.
func (m *model) checkPorts(s *loads.State, c *loadCase) (out []check.Result) {
	members := make([]port.Member, len(m.ports))
	errs := make([]error, len(m.ports))
	for i, p := range m.ports {
		members[i], errs[i] = m.member(p, s, c)
	}
	walls := map[string]*wallPorts{}
	for i, p := range m.ports {
		out = append(out, m.checkPort(p, &members[i], errs[i], s, c)...)
		out = append(out, m.checkFitted(p, s, c)...)
		out = append(out, m.checkSpacing(i, members, errs, walls, port.Advise))
	}
	return out
}

// checkPortAmong makes every check of one port in one state of a case, with its
// neighbours, of which only the place counts.
func (m *model) checkPortAmong(p *portPart, s *loads.State, c *loadCase) []check.Result {
	members := make([]port.Member, len(m.ports))
	errs := make([]error, len(m.ports))
	at := 0
	for i, o := range m.ports {
		members[i], errs[i] = port.Member{Port: o.port}, errors.Join(o.wallErr, o.chordsErr)
		if o == p {
			at = i
			members[i], errs[i] = m.member(o, s, c)
		}
	}
	out := append(m.checkPort(p, &members[at], errs[at], s, c), m.checkFitted(p, s, c)...)
	return append(out, m.checkSpacing(at, members, errs, map[string]*wallPorts{}, unadvised))
}

// member gathers a port with its load and strengths in one state.
func (m *model) member(p *portPart, s *loads.State, c *loadCase) (port.Member, error) {
	strengths, err := m.portStrengths(p, c)
	load, loadErr := m.portLoad(p, s, c)
	q, insertErr := m.withInsert(p, c.rule)
	return port.Member{Port: q, Load: load, Strengths: strengths}, errors.Join(p.wallErr, err, loadErr, insertErr)
}

// withInsert returns the port with the efficiency of the weld round its insert.
func (m *model) withInsert(p *portPart, rule material.Rule) (port.Port, error) {
	q := p.port
	if q.Insert == nil {
		return q, nil
	}
	j := m.joint(p.in.Insert.Seam)
	if j == nil {
		return q, fmt.Errorf("joint %q of the insert is not in the tank file", p.in.Insert.Seam)
	}
	in := *q.Insert
	var err error
	in.Efficiency, _, err = asWeld(j).EfficiencyAt(string(rule), m.t.InsertPlace(p.in))
	q.Insert = &in
	return q, err
}

// checkPort makes the checks of one port by itself, and leaves the report on its areas
// with it.
func (m *model) checkPort(p *portPart, q *port.Member, err error, s *loads.State, c *loadCase) []check.Result {
	if m.closesTip(p) {
		return m.tipPort(p)
	}
	name := p.in.Name
	var r port.AreaReport
	if err == nil {
		if r, err = q.Port.Area(p.wall, q.Load, q.Strengths); err == nil {
			q.Report = &r
		}
	}
	placed := m.placement(p)
	if err != nil {
		out := []check.Result{placed}
		for _, c := range []struct{ id, title string }{{"area", "area replacement"}, {"neck", "least tube wall"}, {"weld", "attachment welds"}, {"thrust", "end thrust and load from outside"}} {
			out = append(out, check.NotMade("port."+name+"/"+c.id, "Port "+name+": "+c.title, err))
		}
		if p.in.Insert != nil {
			out = append(out, check.NotMade("port."+name+"/insert", "Port "+name+": weld round the inserted plate", err), m.checkInsertLine(p, s, c))
		}
		if p.in.Line != nil {
			out = append(out, check.NotMade("port."+name+"/hammer", hammerTitle(name), err))
		}
		return out
	}
	var x port.External
	if p.in.Load != nil {
		x = m.external(p, c)
	}
	out := []check.Result{placed, r.Check(name), r.CheckNeck(name), r.CheckWeld(name), r.CheckThrust(name, x)}
	if p.in.Insert != nil {
		out = append(out, r.CheckInsert(name), m.checkInsertLine(p, s, c))
	}
	if p.in.Line != nil {
		out = append(out, m.checkHammer(p, *q))
	}
	return out
}

// external returns what the piping puts on a port, with its factor and what the wall is
// held to beside it; the limit left out where it is not known.
func (m *model) external(p *portPart, c *loadCase) port.External {
	l := p.in.Load
	x := port.External{Force: math.Abs(l.Force), Moment: math.Abs(l.Moment), Factor: m.loadFactor(c.rule)}
	all, err := m.weldsAt(p)
	if a := m.allow(p.host, all, c); err == nil && a.zoneErr == nil {
		if limit, formula, err := edge.RangeLimit(a.seam); err == nil {
			x.Range, x.RangeFormula = limit, formula
		}
	}
	return x
}

// loadFactor returns the factor on a load of the piping over the one on pressure that the
// allowable stresses of a rule hold, the larger of yield and ultimate, never below 1 [-]:
// what a line pulls is known less well than the pressure.
func (m *model) loadFactor(rule material.Rule) float64 {
	f, err := m.factors(rule)
	if rule != material.Flight || err != nil { // what needs the rule is refused then
		return 1
	}
	return math.Max(1, math.Max(f.LoadYieldFactor/f.YieldFactor, f.LoadUltimateFactor/f.UltimateFactor))
}

// placement makes the check of where a port stands, which no case changes.
func (m *model) placement(p *portPart) check.Result {
	placed := p.placed()
	placed.Inputs = slices.Clone(placed.Inputs)
	switch {
	case m.closesTip(p):
		return check.NotApplicableTo(placed.ID, placed.Title, "it closes the cone's tip")
	case p.wallErr != nil:
		return check.NotMade(placed.ID, placed.Title, p.wallErr)
	}
	return placed
}

// unadvised leaves a check as it is: while a pressure or a size is searched for, nobody
// reads what to write.
func unadvised(r check.Result, _ port.Wall, _ []port.Member, _ int) check.Result { return r }

// checkSpacing makes the check of a port among the others of its wall; advise adds what
// to write. The walls' ports are gathered in walls, which serves all members of one state.
func (m *model) checkSpacing(at int, all []port.Member, errs []error, walls map[string]*wallPorts, advise func(check.Result, port.Wall, []port.Member, int) check.Result) check.Result {
	p := m.ports[at]
	if m.closesTip(p) {
		return check.NotApplicableTo("port."+p.in.Name+"/spacing", "Port "+p.in.Name+": distance to its neighbours", "it closes the cone's tip; its neighbours keep from the tip by their own place")
	}
	near := once(walls, p.host.name, func() *wallPorts { return m.portsOn(p, all, errs) })
	if near.err != nil {
		return check.NotMade("port."+p.in.Name+"/spacing", "Port "+p.in.Name+": distance to its neighbours", near.err)
	}
	return advise(near.among.CheckSpacing(near.index[at]), p.wall, near.members, near.index[at])
}

// The wallPorts are the ports of one wall, but for one that closes a tip.
type wallPorts struct {
	members []port.Member
	index   map[int]int // of a port of the tank among them
	among   *port.Neighbours
	err     error
}

// portsOn gathers those on the wall of a port.
func (m *model) portsOn(p *portPart, all []port.Member, errs []error) *wallPorts {
	w := &wallPorts{index: map[int]int{}}
	for i, o := range m.ports {
		if o.host.name != p.host.name || m.closesTip(o) {
			continue
		}
		if errs[i] != nil && w.err == nil {
			w.err = errOf(o, errs[i])
		}
		w.index[i] = len(w.members)
		w.members = append(w.members, all[i])
	}
	if w.err == nil {
		w.among = port.Among(p.wall, w.members)
	}
	return w
}

// errOf names the port of an error that does not name it itself.
func errOf(p *portPart, err error) error {
	if name := "port " + p.in.Name; !strings.HasPrefix(err.Error(), name) {
		return fmt.Errorf("%s: %w", name, err)
	}
	return err
}
