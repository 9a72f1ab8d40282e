package study

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"sync"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// DefaultStock are the walls taken where the file has no [stock] [m]: plate and
// sheet thicknesses in everyday metric supply, common practice, no source.
var DefaultStock = []float64{1e-3, 1.5e-3, 2e-3, 2.5e-3, 3e-3, 4e-3, 5e-3, 6e-3, 8e-3, 10e-3, 12e-3, 15e-3, 20e-3, 25e-3}

// A Row is what sizing says of one part or group of ports.
type Row struct {
	Part    string       // "cylinder", "head.aft", "port.fill"
	Status  check.Status // before
	Check   string       // id@case with the least margin before, "" when none was made
	Margin  float64      // of that check [-]
	Wall    float64      // of the part, or of a port's tube, as written [m]
	Least   float64      // least stock wall that would do; NaN where it was not sought or none does [m]
	Changes []Change     // what makes it hold; none where it holds or nothing in the stock does
	Why     string       // why it is left as it is, where it does not hold or cannot be sized
}

// A Change is one value of the tank file to be written anew.
type Change struct {
	tank.Change
	Was string // as the file says now; "" where the key is not written
}

// A Plan is the whole answer.
type Plan struct {
	Stock   []float64 // walls to choose from [m]
	Given   bool      // the file has a [stock]
	Rows    []Row
	Added   float64  // mass of the changes together [kg]
	Open    []string // ids still not satisfied with every change made
	NotMade []string // ids that are not assessed, before and after
	Text    []byte   // the tank file with every change; as it was where there is none
}

// Changed reports whether anything is to be changed.
func (p Plan) Changed() bool {
	for _, r := range p.Rows {
		if len(r.Changes) > 0 {
			return true
		}
	}
	return false
}

// Left reports whether a part or a group of ports is left as it is though it does not
// hold or cannot be sized.
func (p Plan) Left() bool {
	return slices.ContainsFunc(p.Rows, func(r Row) bool { return r.Why != "" })
}

// parts are what has a wall of its own, in the order they are sized.
var parts = []string{"cylinder", "head.aft", "head.forward"}

// A sizing is a tank on its way to a plan.
type sizing struct {
	first, now *tank.Tank
	before     *assess.Trial
	stock      []float64
	given      bool
	known      map[string]bool // ids that are not assessed in the tank as written
	lacks      map[string]*lack
	trials     map[*tank.Tank]*trial
	last       *ending
	rows       map[string]*Row
	order      []string
}

// Size finds the least changes that make every part and port of a tank hold.
// The error is that of an assessment, or of a stock that cannot be used.
func Size(t *tank.Tank) (*Plan, error) {
	z := &sizing{first: t, now: t, stock: DefaultStock, known: map[string]bool{}, lacks: map[string]*lack{}, rows: map[string]*Row{}, trials: map[*tank.Tank]*trial{}}
	if t.Stock != nil {
		z.stock, z.given = t.Stock.Thickness, true
	}
	if len(z.stock) == 0 {
		return nil, tank.Faults{t.Fault("stock.thickness", "is empty; write the walls you can buy, [\"3 mm\", \"4 mm\"]")}
	}
	var err error
	if z.before, err = assess.NewTrial(t); err != nil {
		return nil, err
	}
	z.survey()
	for range 4 { // a thicker neighbour may ask for more; it settles at once or not at all
		was := z.now
		if err := z.walls(); err != nil {
			return nil, err
		}
		if err := z.ports(); err != nil {
			return nil, err
		}
		if z.now == was {
			break
		}
		e, err := z.ended()
		if err != nil {
			return nil, err
		}
		if !slices.ContainsFunc(e.checks, z.curable) {
			break
		}
	}
	if err := z.withdraw(); err != nil {
		return nil, err
	}
	if err := z.leasts(); err != nil {
		return nil, err
	}
	return z.plan()
}

// survey enters every part and group with its state before, parts and ports side by side.
func (z *sizing) survey() {
	found := &trial{Trial: z.before, holds: map[string]standing{}}
	z.trials[z.first] = found
	beside, all := z.before.Fork(), groups(z.first)
	ofParts, ofPorts := make([][]check.Result, len(parts)), make([][]check.Result, len(all))
	var wait sync.WaitGroup
	wait.Go(func() {
		for i, group := range all {
			beside.Port(group, func(r check.Result) bool { ofPorts[i] = append(ofPorts[i], r); return true })
		}
	})
	for i, name := range parts {
		z.before.Part(name, func(r check.Result) bool { ofParts[i] = append(ofParts[i], r); return true })
		for _, r := range z.before.Proof(name) {
			r.Case = "proof"
			ofParts[i] = append(ofParts[i], r)
		}
	}
	wait.Wait()
	for i, name := range parts {
		z.enter(found, name, wallOf(z.first, name), ofParts[i])
	}
	for i, group := range all {
		z.enter(found, "port."+group, portOf(z.first, group).Tube.Wall, ofPorts[i])
	}
}

// enter makes the row of a part or a group from its checks.
func (z *sizing) enter(found *trial, name string, wall float64, checks []check.Result) {
	row := &Row{Part: name, Status: check.NotApplicable, Wall: wall, Margin: math.Inf(1), Least: math.NaN()}
	for _, r := range checks {
		switch s := r.Status(); {
		case s == check.NotAssessed:
			z.known[r.ID] = true
			z.lacks[name] = z.lacks[name].with(r)
			if row.Status != check.NotSatisfied {
				row.Status = s
			}
		case s == check.NotSatisfied:
			row.Status = s
		case s == check.Satisfied && row.Status == check.NotApplicable:
			row.Status = s
		}
		if m := r.Margin(); m < row.Margin {
			row.Margin, row.Check = m, r.ID+"@"+r.Case
		}
	}
	z.rows[name] = row
	z.order = append(z.order, name)
	switch found.holds[name] = partly; {
	case row.Status == check.NotSatisfied:
		found.holds[name] = broken
	case z.lacks[name] == nil:
		found.holds[name] = whole
	default:
		row.Why = z.lacks[name].String() // what fails beside it may yet be looked for a wall
	}
}

// curable reports whether a check speaks against the tank as changed and may still be
// made to hold: it belongs to a part or a port, and that has not been given up.
func (z *sizing) curable(r check.Result) bool {
	if row := z.rows[ownerOf(z.now, r.ID)]; row != nil {
		return row.Why == "" && z.fails(r)
	}
	return r.Status() == check.NotSatisfied // of the tank as a whole, at the test above all
}

// fails reports whether a check speaks against a change: it is not satisfied, or
// the change has left it unmade.
func (z *sizing) fails(r check.Result) bool {
	s := r.Status()
	return s == check.NotSatisfied || s == check.NotAssessed && !z.known[r.ID]
}

// change enters a new length in a row, in place of an earlier one of the same
// key.
func (z *sizing) change(row *Row, key string, v float64) {
	z.write(row, key, fmt.Sprintf("%q", Length(v)))
}

// write enters a new value in a row.
func (z *sizing) write(row *Row, key, value string) {
	c := Change{Change: tank.Change{Key: key, Value: value}, Was: z.first.Written(key)}
	for i := range row.Changes {
		if row.Changes[i].Key == key {
			row.Changes[i] = c
			return
		}
	}
	row.Changes = append(row.Changes, c)
}

// An ending is the file with every change written into it.
type ending struct {
	text    []byte
	changes []tank.Change
	tank    *tank.Tank
	checks  []check.Result // what a whole assessment says of it; nil until it is asked
}

// written writes every change into the file's text; the last one made is kept.
func (z *sizing) written() (*ending, error) {
	e := &ending{text: z.first.Text, tank: z.first}
	for _, name := range z.order {
		for _, c := range z.rows[name].Changes {
			e.changes = append(e.changes, c.Change)
		}
	}
	if z.last != nil && slices.Equal(z.last.changes, e.changes) {
		return z.last, nil
	}
	var err error
	if len(e.changes) > 0 {
		if e.text, err = z.first.Edit(e.changes); err != nil {
			return nil, err
		}
		if e.tank, err = z.first.Again(e.text); err != nil {
			return nil, err
		}
	}
	z.last = e
	return e, nil
}

// ended lets a whole assessment of the file as written have the last word.
func (z *sizing) ended() (*ending, error) {
	e, err := z.written()
	if err == nil && e.checks == nil {
		e.checks, err = assess.Checks(e.tank)
	}
	return e, err
}

// plan gathers the rows and what is left open.
func (z *sizing) plan() (*Plan, error) {
	e, err := z.ended()
	if err != nil {
		return nil, err
	}
	p := &Plan{Stock: z.stock, Given: z.given, Text: e.text}
	for _, name := range z.order {
		p.Rows = append(p.Rows, *z.rows[name])
	}
	for _, r := range e.checks {
		switch r.Status() {
		case check.NotSatisfied:
			if !slices.Contains(p.Open, r.ID) {
				p.Open = append(p.Open, r.ID)
			}
		case check.NotAssessed:
			if !slices.Contains(p.NotMade, r.ID) {
				p.NotMade = append(p.NotMade, r.ID)
			}
		}
	}
	p.Added, err = added(z.before, e.tank)
	return p, err
}

// ownerOf returns the part or the group of ports to which a check belongs.
func ownerOf(t *tank.Tank, id string) string {
	owner, _, _ := strings.Cut(id, "/")
	for _, p := range t.Port {
		if owner == "port."+p.Name {
			return "port." + p.Group
		}
	}
	return owner
}

// Length writes a length v [m] as a tank file has it, in millimetres.
func Length(v float64) string {
	s := fmt.Sprintf("%.3f", v*1e3)
	return strings.TrimRight(strings.TrimRight(s, "0"), ".") + " mm"
}

// groups returns the ports as written, each once.
func groups(t *tank.Tank) (out []string) {
	for _, p := range t.Port {
		if !slices.Contains(out, p.Group) {
			out = append(out, p.Group)
		}
	}
	return out
}

// portOf returns the first port of a group.
func portOf(t *tank.Tank, group string) tank.Port {
	for _, p := range t.Port {
		if p.Group == group {
			return p
		}
	}
	return tank.Port{}
}

// hostOf returns the part that a group stands on.
func hostOf(t *tank.Tank, group string) string {
	if on := portOf(t, group).On; on != "cylinder" {
		return "head." + on
	}
	return "cylinder"
}
