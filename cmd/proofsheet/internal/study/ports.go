package study

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/cmd/proofsheet/internal/tank"
)

// A fitting is what may be changed at a port.
type fitting struct {
	tube    float64 // wall [m]; 0: as written
	pad     float64 // thickness [m]; 0: as written
	across  float64 // the pad's outside diameter [m]
	legs    float64 // added to both fillets [m]
	changes int
	mass    float64 // added [kg]
}

// apply makes the change to one port. A pad that is added takes the tolerance of
// its wall [m].
func (f fitting) apply(p *tank.Port, toleranceWritten bool, padTolerance float64) {
	if f.tube > 0 {
		if !toleranceWritten { // the default is a share of the wall
			p.Tube.UnderTolerance *= f.tube / p.Tube.Wall
		}
		p.Tube.Wall = f.tube
	}
	if f.pad > 0 {
		across := f.across
		if p.Pad == nil {
			p.Pad = &tank.Pad{UnderTolerance: padTolerance}
		}
		p.Pad.OutsideDiameter, p.Pad.Length, p.Pad.Lip, p.Pad.Thickness, p.Pad.Leg = &across, nil, nil, f.pad, f.pad
	}
	for _, leg := range []*float64{&p.Weld.OutsideLeg, &p.Weld.InsideLeg} {
		if *leg > 0 {
			*leg += f.legs
		}
	}
}

// ports fits every group that does not hold. On each wall with such a group
// the wall itself is tried thicker too, and the least mass altogether stays.
func (z *sizing) ports() error {
	for _, part := range parts {
		tr, err := z.trial(z.now)
		if err != nil {
			return err
		}
		failing := z.failing(tr, part)
		if len(failing) == 0 {
			continue
		}
		if err := z.fitWall(part, failing); err != nil {
			return err
		}
	}
	return nil
}

// failing returns the groups on a part that do not hold.
func (z *sizing) failing(tr *trial, part string) (out []string) {
	for _, group := range groups(z.now) {
		if hostOf(z.now, group) == part && !z.portHolds(tr, group) {
			out = append(out, group)
		}
	}
	return out
}

// An option is one wall with what its ports then need.
type option struct {
	t        *tank.Tank
	wall     float64 // [m]; 0: as it is
	fittings map[string]fitting
	failed   []string
	mass     float64 // added [kg]
	changes  int
}

// better reports whether a is to be preferred: fewer ports left failing, less
// mass, fewer changes.
func (a option) better(b option) bool {
	if len(a.failed) != len(b.failed) {
		return len(a.failed) < len(b.failed)
	}
	const even = 1e-9 // masses this near are equal [kg]
	if math.Abs(a.mass-b.mass) > even {
		return a.mass < b.mass
	}
	return a.changes < b.changes
}

// fitWall finds the best wall of a part with its ports fitted, and makes the
// changes.
func (z *sizing) fitWall(part string, failing []string) error {
	tr, err := z.trial(z.now)
	if err != nil {
		return err
	}
	was, err := tr.DryMass()
	if err != nil {
		return err
	}
	best := z.fitted(option{t: z.now}, tr, part)
	hopeless := 0 // they stand in the wrong place, which no wall cures
	for _, group := range best.failed {
		if z.beyondMetal(tr.Trial, group) {
			hopeless++
		}
	}
	for _, wall := range z.stock {
		if len(best.failed) == hopeless && len(best.fittings) == 0 {
			break // nothing is left for a wall to do
		}
		if wall <= wallOf(z.now, part) || measured(z.now, part) {
			continue
		}
		t, err := z.now.With(part+".thickness", Length(wall))
		if err != nil {
			continue
		}
		thick, err := z.newTrial(t)
		if err != nil {
			continue
		}
		is, err := thick.DryMass()
		if err != nil {
			return err
		}
		o := option{t: t, wall: wall, mass: is - was, changes: 1}
		if len(best.failed) == hopeless && o.mass >= best.mass {
			break // the wall alone weighs more than the fittings it could save
		}
		if !z.partSized(thick, part) {
			continue
		}
		if o = z.fitted(o, thick, part); o.better(best) {
			best = o
		}
	}
	return z.adopt(part, best, failing)
}

// fitted completes an option with the lightest fittings.
func (z *sizing) fitted(o option, from *trial, part string) option {
	o.fittings = map[string]fitting{}
	tr := from.Trial
	for _, group := range z.failing(from, part) {
		f, next, ok := z.fit(tr, group)
		if !ok {
			o.failed = append(o.failed, group)
			continue
		}
		tr = next // its neighbours see the port as it will be
		o.fittings[group] = f
		o.mass += f.mass
		o.changes += f.changes
	}
	return o
}

// adopt writes an option into the rows and into the tank.
func (z *sizing) adopt(part string, o option, failing []string) error {
	for _, group := range failing {
		row := z.rows["port."+group]
		switch row.Why = ""; {
		case !slices.Contains(o.failed, group):
		case z.beyondMetal(z.before, group):
			row.Why = "it stands where no metal helps: move it until port." + group + "/placement is satisfied"
		case z.lacks["port."+group] != nil:
			row.Why = z.lacks["port."+group].String()
		default:
			row.Why = "nothing in the stock does: no pad, tube or wall of it holds every check of this port"
		}
	}
	if o.wall > 0 && len(o.failed) < len(failing) {
		z.change(z.rows[part], part+".thickness", o.wall)
		z.now = o.t
	}
	for _, group := range groups(z.now) {
		f, ok := o.fittings[group]
		if !ok {
			continue
		}
		z.adoptFitting(group, f)
	}
	e, err := z.written()
	if err == nil {
		z.now = e.tank
	}
	return err
}

// adoptFitting writes one fitting.
func (z *sizing) adoptFitting(group string, f fitting) {
	row, p, at := z.rows["port."+group], portOf(z.now, group), "port."+group
	type value struct{ key, text string }
	var values []value
	if f.tube > 0 {
		values = append(values, value{at + ".tube.wall", Length(f.tube)})
	}
	for key, leg := range map[string]float64{".weld.outside_leg": p.Weld.OutsideLeg, ".weld.inside_leg": p.Weld.InsideLeg} {
		if f.legs > 0 && leg > 0 {
			values = append(values, value{at + key, Length(leg + f.legs)})
		}
	}
	slices.SortFunc(values, func(a, b value) int { return len(a.key) - len(b.key) })
	for _, v := range values {
		z.write(row, v.key, fmt.Sprintf("%q", v.text))
	}
	if f.pad > 0 {
		z.write(row, at+".pad", fmt.Sprintf("{ outside_diameter = %q, thickness = %q, leg = %q }", Length(f.across), Length(f.pad), Length(f.pad)))
	}
}
