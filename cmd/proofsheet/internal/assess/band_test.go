package assess_test

import (
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// boost returns the checks of the flown case of the kerosene tank, edited.
func boost(t *testing.T, edit func(c *tank.Case)) map[string]check.Result {
	t.Helper()
	in := read(t, "kerosene")
	for i := range in.Case {
		if in.Case[i].Name == "boost" {
			edit(&in.Case[i])
		}
	}
	return byID(sheet(t, in), "boost")
}

// A step from 1 to 4 with the factor 1.5 is the case of 5.5 itself.
func TestDynamicFactorIsOnTheStep(t *testing.T) {
	step := boost(t, func(c *tank.Case) {
		c.AxialLoadFactor = 4
		before, D := 1.0, 1.5
		c.AxialLoadFactorBefore, c.DynamicFactor = &before, &D
	})
	plain := boost(t, func(c *tank.Case) { c.AxialLoadFactor = 5.5 })
	for id, r := range plain {
		if got := step[id]; got.Demand != r.Demand || got.Status() != r.Status() {
			t.Errorf("%s: %v after the step, %v at 5.5", id, got.Demand, r.Demand)
		}
	}
}

// A wider band of the ullage pressure never gives a better margin, under a strong
// compression with the pressure certain to be there.
func TestLeastUllagePressureNeverHelps(t *testing.T) {
	press := func(c *tank.Case, share float64) {
		F := -600e3
		c.AxialForce, c.Present = &F, true
		least := share * *c.UllagePressure
		c.LeastUllagePressure = &least
	}
	full := boost(t, func(c *tank.Case) { press(c, 1) })
	half := boost(t, func(c *tank.Case) { press(c, 0.5) })
	for id, r := range full {
		if got := half[id]; got.Margin() > r.Margin()+1e-12 {
			t.Errorf("%s: margin %.4f with half of the pressure, %.4f with all", id, got.Margin(), r.Margin())
		}
	}
}
