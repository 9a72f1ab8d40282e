package study

import (
	"fmt"
	"math"
	"sort"
	"sync"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
)

// walls thickens every part that does not hold to the least wall of the stock
// that does.
func (z *sizing) walls() error {
	for _, name := range parts {
		tr, err := z.trial(z.now)
		if err != nil {
			return err
		}
		if z.partHolds(tr, name) {
			continue
		}
		wall, t, why := z.thicken(name, wallOf(z.now, name))
		row := z.rows[name]
		if why != "" && name != "cylinder" { // a joint may need more of both walls
			done, err := z.thickenBoth(name)
			if err != nil {
				return err
			}
			if done {
				row.Why = ""
				continue
			}
		}
		if l := z.lacks[name]; why == noneDoes(z.stock) && l != nil {
			why = l.String()
		}
		if row.Why = why; why != "" {
			continue
		}
		z.now = t
		z.change(row, name+".thickness", wall)
	}
	return nil
}

// thickenBoth finds the pair of walls of cylinder and head with the least mass
// with which both hold, and makes the change.
func (z *sizing) thickenBoth(head string) (bool, error) {
	if measured(z.now, "cylinder") || measured(z.now, head) {
		return false, nil
	}
	var best *tank.Tank
	least, walls := math.Inf(1), [2]float64{}
	for _, cylinder := range z.stock {
		if cylinder < wallOf(z.now, "cylinder") {
			continue
		}
		a, err := z.now.With("cylinder.thickness", Length(cylinder))
		if err != nil {
			continue
		}
		for _, wall := range z.stock {
			if wall < wallOf(z.now, head) {
				continue
			}
			t, err := a.With(head+".thickness", Length(wall))
			if err != nil {
				continue
			}
			tr, err := z.newTrial(t)
			if err != nil {
				continue
			}
			mass, err := tr.DryMass()
			if err != nil {
				return false, err
			}
			if mass >= least {
				break // thicker heads weigh more still
			}
			if z.partSized(tr, head) && z.partSized(tr, "cylinder") {
				best, least, walls = t, mass, [2]float64{cylinder, wall}
				break
			}
		}
	}
	if best == nil {
		return false, nil
	}
	was := z.now
	z.now = best
	for i, name := range [2]string{"cylinder", head} {
		if walls[i] != wallOf(was, name) {
			z.change(z.rows[name], name+".thickness", walls[i])
		}
	}
	return true, nil
}

// thicken returns the least wall of the stock over a least one [m] with which a
// part holds, and the tank with it, or why there is none.
func (z *sizing) thicken(name string, over float64) (float64, *tank.Tank, string) {
	if measured(z.now, name) {
		return 0, nil, "its wall was measured (least_thickness): it is not sized"
	}
	for _, wall := range z.stock {
		if wall <= over {
			continue
		}
		t, err := z.now.With(name+".thickness", Length(wall))
		if err != nil {
			continue
		}
		if tr, err := z.trial(t); err == nil && z.partSized(tr, name) {
			return wall, t, ""
		}
	}
	return 0, nil, noneDoes(z.stock)
}

// noneDoes says that no wall of a stock does.
func noneDoes(stock []float64) string {
	return fmt.Sprintf("nothing in the stock, up to %s, does", Length(stock[len(stock)-1]))
}

// leasts finds, for each part that is not changed and holds, the thinnest stock
// wall that would still do, and for each port the thinnest tube; none for a part on which
// a check of a port is not made. The parts are looked
// at side by side.
func (z *sizing) leasts() error {
	var wait sync.WaitGroup
	for _, name := range parts {
		row := z.rows[name]
		if len(row.Changes) > 0 || row.Why != "" || measured(z.now, name) || z.portsLack(name) {
			continue
		}
		wait.Go(func() { row.Least = z.leastWall(name) })
	}
	wait.Wait()
	tr, err := z.trial(z.now)
	if err != nil {
		return err
	}
	for _, group := range groups(z.now) {
		if row := z.rows["port."+group]; len(row.Changes) == 0 && row.Why == "" {
			row.Least = z.leastTube(tr.Trial, group)
		}
	}
	return nil
}

// leastWall returns the thinnest stock wall of a part with which it, its ports and
// its neighbours hold [m] and every check of it is made, on a mesh that is not halved to see
// whether it is fine enough; NaN where none up to its own does. A wall that fails without
// the numerical shell lets every thinner one fail, so that the first that may hold is
// found by halving; its own holds.
func (z *sizing) leastWall(name string) float64 {
	own := wallOf(z.now, name)
	var walls []float64
	for _, wall := range z.stock {
		if wall <= own {
			walls = append(walls, wall)
		}
	}
	found := map[float64]*trial{}
	with := func(wall float64) *trial {
		if tr, ok := found[wall]; ok {
			return tr
		}
		found[wall] = nil // the file itself may not stand with it
		if t, err := z.now.With(name+".thickness", Length(wall)); err == nil {
			if tr, err := z.newTrial(t); err == nil {
				found[wall] = tr
			}
		}
		return found[wall]
	}
	first := sort.Search(len(walls), func(i int) bool {
		if walls[i] == own {
			return true
		}
		tr := with(walls[i])
		return tr != nil && tr.mayHold(name)
	})
	for _, wall := range walls[first:] {
		if wall == own {
			return wall
		}
		if tr := with(wall); tr != nil && z.portsHold(tr, name) && z.jointsHold(tr, name) {
			return wall
		}
	}
	return math.NaN()
}

// jointsHold reports whether a part holds, and every other part with it that held
// before: a thinner wall changes the stress at its joints, which are the heads'.
func (z *sizing) jointsHold(tr *trial, name string) bool {
	if !z.partSized(tr, name) {
		return false
	}
	for _, other := range parts {
		if other != name && z.judged(other) && z.stands(tr.Trial, other) == broken { // its own wall is what it was: nothing fails early
			return false
		}
	}
	return true
}

// leastTube returns the thinnest stock wall of a group's tube with which it
// holds, everything else as it is [m]; NaN where none up to its wall does, and of a
// boss, whose bore its thread fixes.
func (z *sizing) leastTube(tr *assess.Trial, group string) float64 {
	if portOf(z.now, group).Kind == "boss" {
		return math.NaN()
	}
	for _, wall := range z.stock {
		if wall > portOf(z.now, group).Tube.Wall {
			break
		}
		if _, next, failed := z.tried(tr, group, fitting{tube: wall}, 0); failed == "" && next != nil {
			return wall
		}
	}
	return math.NaN()
}

// portsHold reports whether every port on a part holds.
func (z *sizing) portsHold(tr *trial, part string) bool {
	for _, group := range groups(z.now) {
		if hostOf(z.now, group) == part && z.judged("port."+group) && !z.portHolds(tr, group) {
			return false
		}
	}
	return true
}

// added returns the mass of a changed tank over the first one's [kg].
func added(before *assess.Trial, last *tank.Tank) (float64, error) {
	after, err := assess.NewTrial(last)
	if err != nil {
		return math.NaN(), err
	}
	was, err := before.DryMass()
	if err != nil {
		return math.NaN(), err
	}
	is, err := after.DryMass()
	return is - was, err
}

// wallOf returns the nominal wall of a part [m].
func wallOf(t *tank.Tank, name string) float64 {
	switch name {
	case "cylinder":
		return t.Cylinder.Thickness
	case "head.aft":
		return t.Head.Aft.Thickness
	}
	return t.Head.Forward.Thickness
}

// measured reports whether a part's wall is the least measured one, which a
// thicker sheet would not have.
func measured(t *tank.Tank, name string) bool {
	switch name {
	case "cylinder":
		return t.Cylinder.LeastThickness != nil
	case "head.aft":
		return t.Head.Aft.LeastThickness != nil
	}
	return t.Head.Forward.LeastThickness != nil
}
