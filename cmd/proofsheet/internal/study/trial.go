package study

import (
	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// A trial is a tank on trial with what has been found of it.
type trial struct {
	*assess.Trial
	bare  *assess.Trial       // without the numerical shell, made when first asked for
	holds map[string]standing // parts and groups of ports that have been looked at
	may   map[string]bool     // parts that have been looked at without the shell
}

// A standing is what the checks of a part or a group of ports say of it.
type standing int

const (
	broken standing = iota // one is not satisfied, or no longer made
	partly                 // those that are made are satisfied; others are not made in the tank as written either
	whole                  // all are made and satisfied
)

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
	return &trial{Trial: tr, holds: map[string]standing{}}, nil
}

// partHolds reports whether a part holds in a tank as far as its checks are made, at
// proof too.
func (z *sizing) partHolds(tr *trial, name string) bool { return z.partStands(tr, name) != broken }

// partSized reports whether a part may be given the wall that it has in a tank: every
// check of it is made there, and satisfied.
func (z *sizing) partSized(tr *trial, name string) bool { return z.partStands(tr, name) == whole }

// partStands returns the standing of a part. What fails without the numerical shell is
// not asked of it.
func (z *sizing) partStands(tr *trial, name string) standing {
	got, known := tr.holds[name]
	if !known {
		if got = broken; tr.mayHold(name) {
			got = z.stands(tr.Trial, name)
		}
		tr.holds[name] = got
	}
	return got
}

// stands makes every check of a part.
func (z *sizing) stands(tr *assess.Trial, name string) standing {
	got := whole
	tr.Part(name, func(r check.Result) bool {
		got = min(got, z.standing(r))
		return got != broken
	})
	if got == broken {
		return got
	}
	for _, r := range tr.Proof(name) {
		got = min(got, z.standing(r))
	}
	return got
}

// standing is what one check leaves of a part.
func (z *sizing) standing(r check.Result) standing {
	switch {
	case z.fails(r):
		return broken
	case r.Status() == check.NotAssessed:
		return partly
	}
	return whole
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

// portHolds reports whether a group holds in a tank as far as its checks are made.
func (z *sizing) portHolds(tr *trial, group string) bool {
	got, known := tr.holds["port."+group]
	if !known {
		got = whole
		tr.Port(group, func(r check.Result) bool {
			got = min(got, z.standing(r))
			return got != broken
		})
		tr.holds["port."+group] = got
	}
	return got != broken
}
