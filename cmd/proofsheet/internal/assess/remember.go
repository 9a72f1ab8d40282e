package assess

import (
	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/shell"
)

// Remembered is what a model has looked up and need not look up again: nothing in
// it depends on a case but for its rule and the temperature of its metal.
type remembered struct {
	allowances map[allowanceKey]allowance
	cylinder   map[ruleAt]cylinderLimits
	heads      map[headAt]headLimits
	joints     map[headAt]jointLimit
	tips       map[headAt]jointLimit
}

func newRemembered() remembered {
	return remembered{map[allowanceKey]allowance{}, map[ruleAt]cylinderLimits{}, map[headAt]headLimits{}, map[headAt]jointLimit{}, map[headAt]jointLimit{}}
}

// A ruleAt is a rule with the temperature of the metal.
type ruleAt struct {
	rule material.Rule
	T    float64 // [K]
}

// byRule returns what a case brings to a limit.
func byRule(c *loadCase) ruleAt { return ruleAt{c.rule, c.temperature} }

// A headAt is a head beside it.
type headAt struct {
	end string
	ruleAt
}

// An allowanceKey is what an [allowance] depends on beside the tank.
type allowanceKey struct {
	name      string // of the material
	welds     welds
	thickness float64 // [m]
	ruleAt
}

// What headSeams and cylinderSeams return.
type (
	headLimits struct {
		seams heads.Seams
		a     heads.Allowables
		err   error
	}
	cylinderLimits struct {
		seams             shell.Seams
		a                 shell.Allowables
		longErr, girthErr error
	}
)

// once returns what is remembered under a key, made the first time.
func once[K comparable, V any](known map[K]V, k K, find func() V) V {
	v, ok := known[k]
	if !ok {
		v = find()
		known[k] = v
	}
	return v
}

// withoutPorts returns what is remembered that no port has a part in.
func (r remembered) withoutPorts() remembered {
	own := newRemembered()
	own.allowances = r.allowances
	return own
}
