package proof

import "proofsheet/report/check"

// CheckReach sets the pressure surely reached against the required one.
func (p *Plan) CheckReach() check.Result {
	return check.NotMade("proof/reach", "Proof reaches its factor at every point", ErrNoPoint)
}
