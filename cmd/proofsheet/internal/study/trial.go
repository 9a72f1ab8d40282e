package study

import (
	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// A trial is a tank on trial with what has been found of it.
type trial struct {
	*assess.Trial
	bare  *assess.Trial   // without the numerical shell, made when first asked for
	holds map[string]bool // parts and groups of ports that have been looked at
	may   map[string]bool // parts that have been looked at without the shell
}

// trial resolves a tank; what was found of it before is kept.
func (z *sizing) trial(t *tank.Tank) (*trial, error) {
	if known, ok := z.trials[t]; ok {
		return known, nil
	}
	got, err := z.newTrial(t)
	if err == nil {
		z.trials[t] = got
	}
	return got, err
}

// newTrial resolves a tank that differs from the first one in its walls.
func (z *sizing) newTrial(t *tank.Tank) (*trial, error) {
	tr, err := z.before.Like(t)
	if err != nil {
		return nil, err
	}
	return &trial{Trial: tr, holds: map[string]bool{}}, nil
}

// partHolds reports whether a part holds in a tank, at proof too. What fails without
// the numerical shell is not asked of it.
func (z *sizing) partHolds(tr *trial, name string) bool {
	ok, known := tr.holds[name]
	if !known {
		ok = tr.mayHold(name) && z.stands(tr.Trial, name)
		tr.holds[name] = ok
	}
	return ok
}

// stands makes every check of a part.
func (z *sizing) stands(tr *assess.Trial, name string) bool {
	ok := true
	tr.Part(name, func(r check.Result) bool {
		ok = !z.fails(r)
		return ok
	})
	if !ok {
		return false
	}
	for _, r := range tr.Proof(name) {
		ok = ok && !z.fails(r)
	}
	return ok
}

// mayHold reports whether nothing of a part is not satisfied without the numerical
// shell.
func (tr *trial) mayHold(name string) bool {
	if tr.bare == nil {
		tr.bare, tr.may = tr.Bare(), map[string]bool{}
	}
	ok, known := tr.may[name]
	if !known {
		ok = tr.bareHolds(name)
		tr.may[name] = ok
	}
	return ok
}

// bareHolds makes the checks of a part without the numerical shell.
func (tr *trial) bareHolds(name string) bool {
	ok := true
	tr.bare.Part(name, func(r check.Result) bool {
		ok = r.Status() != check.NotSatisfied
		return ok
	})
	if !ok {
		return false
	}
	for _, r := range tr.bare.Proof(name) {
		ok = ok && r.Status() != check.NotSatisfied
	}
	return ok
}

// portHolds reports whether a group holds in a tank.
func (z *sizing) portHolds(tr *trial, group string) bool {
	ok, known := tr.holds["port."+group]
	if !known {
		ok = true
		tr.Port(group, func(r check.Result) bool {
			ok = !z.fails(r)
			return ok
		})
		tr.holds["port."+group] = ok
	}
	return ok
}
