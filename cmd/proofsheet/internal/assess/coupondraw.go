package assess

import (
	"errors"
	"fmt"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material/weld"
)

// draw puts a strength drawn for a study in place of the limit, for yield and ultimate
// by one deviate z [-]:
//
//	F = mean + z s
//
// The coupons must have passed as those of a limit do. Practice of the trade, and
// kind to the weld: mean and s are those of the coupons, as if they were known.
func (c *couponSet) draw(z float64) {
	c.ultimate.Limit = c.ultimate.Mean + z*c.ultimate.Deviation
	if c.measured {
		c.yield.Limit = c.yield.Mean + z*c.yield.Deviation
	}
	c.drawn = true
	if c.ultimateErr == nil && c.ultimate.Lowest || c.yieldErr == nil && c.yield.Lowest {
		c.ultimateErr = errors.New("normality is rejected, or there are too many coupons for its factor: they are not drawn from a normal population; leave the joint out of [scatter]")
	}
}

// where tells what the strength in use is.
func (c *couponSet) where() string {
	if c.drawn {
		return fmt.Sprintf("drawn as %d coupons scatter", len(c.weld))
	}
	return fmt.Sprintf("%s basis of %d coupons", c.basis, len(c.weld))
}

// checkDraws refuses a tank whose weld was drawn with a strength that no metal has.
func (m *model) checkDraws() error {
	for _, j := range m.t.Joint {
		if j.CouponDraw == nil {
			continue
		}
		c := m.metals.coupons(j.Name)
		switch key := "joint." + j.Name + ".coupons"; {
		case c.err() != nil: // the checks say why
		case !(c.ultimate.Limit > 0) || c.measured && !(c.yield.Limit > 0):
			return m.t.Fault(key, "the strength drawn, %.2f deviations from the mean, is not above zero", *j.CouponDraw)
		case c.measured && c.yield.Limit > c.ultimate.Limit:
			return m.t.Fault(key, "the yield drawn, %.2f deviations from the mean, is above the ultimate", *j.CouponDraw)
		}
	}
	return nil
}

// A CouponSpread is how the weld of a joint scatters.
type CouponSpread struct {
	Ultimate, Yield weld.Sample // Yield with N 0 where it was not measured [Pa]
}

// CouponScatter returns how the weld of a joint with coupons scatters, an error where
// they are not coupons to draw from.
func CouponScatter(t *tank.Tank, joint string) (CouponSpread, error) {
	j, ok := t.FindJoint(joint)
	if !ok {
		return CouponSpread{}, fmt.Errorf("no joint %s", joint)
	}
	mean := 0.0
	j.CouponDraw = &mean
	c := newCouponSet(t, j)
	if err := c.err(); err != nil {
		return CouponSpread{}, t.Fault("joint."+joint+".coupons", "%v", err)
	}
	return CouponSpread{Ultimate: c.ultimate, Yield: c.yield}, nil
}
