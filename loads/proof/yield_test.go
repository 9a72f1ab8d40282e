package proof_test

import (
	"math"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// Hoop that service pressure may make where test factor F meets test membrane
// k Sy: k/F of yield. 1.43 = 1.5/1.05 (PED 2014/68/EU annex I 7.4); 0.90 and 1.5
// of 46 CFR 54.10 give 0.600, so a wall sized at 2/3 Sy fails its own 1.5 proof.
func TestFactorsAndLimitsAgree(t *testing.T) {
	for _, row := range []struct {
		rule string
		want string
	}{{"flight", "0.600"}, {"vessel-eu", "0.666"}, {"vessel", "0.692"}} {
		r := rule(t, row.rule, proof.Hydrostatic)
		k, from, err := proof.Limit([]proof.Rule{r}, 1)
		if err != nil || from.Rule != row.rule {
			t.Fatalf("%v from %q", err, from.Rule)
		}
		checktest.Printed(t, row.rule, k/r.Factor(1), row.want)
	}
	checktest.Printed(t, "PED 7.4", 1.5/1.05, "1.4286")
	// Event rules (read) ask 1.5 beside a burst of 2.0, as the space rule's (1 + BF)/2 does (recalled).
	if f := rule(t, "flight", proof.Hydrostatic).Factor(1); f != (1+2.0)/2 {
		t.Errorf("flight: %g", f)
	}
	in := oxygenTank(t)
	in.Points = in.Points[:1]
	p := plan(t, in)
	σ := 2.0 / 3 * 205e6 * p.Points[0].Low / in.MEOP
	if s := p.CheckYield(proof.Stressed{Membrane: σ, Yield: 205e6, Efficiency: 1}).Status(); s != check.NotSatisfied {
		t.Errorf("wall at 2/3 yield under a 1.5 proof: %v", s)
	}
}

func TestStrictestLimit(t *testing.T) {
	all := []proof.Rule{rule(t, "vessel", proof.Hydrostatic), rule(t, "vessel-eu", proof.Hydrostatic)}
	for _, row := range []struct {
		rules []proof.Rule
		e     float64
		want  string
		from  string
	}{
		{all, 1, "0.900", "vessel"},
		{all, 0.85, "0.765", "vessel"},
		{all[1:], 0.85, "0.952", "vessel-eu"},
		{[]proof.Rule{rule(t, "vessel", proof.Pneumatic)}, 1, "0.800", "vessel"},
	} {
		k, from, err := proof.Limit(row.rules, row.e)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, from.Rule, k, row.want)
		if from.Rule != row.from {
			t.Errorf("limit from %q, want %q", from.Rule, row.from)
		}
	}
	for _, e := range []float64{0, 1.1, math.NaN()} {
		if k, _, err := proof.Limit(all, e); err == nil || !math.IsNaN(k) {
			t.Errorf("efficiency %g gives limit %g", e, k)
		}
	}
	if _, _, err := proof.Limit(nil, 1); err == nil {
		t.Error("no rule gives a limit")
	}
}

func TestCheckYieldEdges(t *testing.T) {
	p := plan(t, oxygenTank(t))
	at := func(membrane, yield, e float64) check.Status {
		return p.CheckYield(proof.Stressed{Part: "shell", Pressure: 4e6, Membrane: membrane, Yield: yield, Efficiency: e}).Status()
	}
	limit := 0.90 * 1 * 200e6
	for name, row := range map[string]struct {
		got, want check.Status
	}{
		"at the limit":       {at(limit, 200e6, 1), check.Satisfied},
		"one step over":      {at(math.Nextafter(limit, 1e9), 200e6, 1), check.NotSatisfied},
		"seam":               {at(0.9*0.7*200e6+1, 200e6, 0.7), check.NotSatisfied},
		"yield missing":      {at(1e6, math.NaN(), 1), check.NotAssessed},
		"stress missing":     {at(math.NaN(), 200e6, 1), check.NotAssessed},
		"efficiency missing": {at(1e6, 200e6, math.NaN()), check.NotAssessed},
		"efficiency left 0":  {at(1e6, 200e6, 0), check.NotAssessed},
	} {
		if row.got != row.want {
			t.Errorf("%s: %v, want %v", name, row.got, row.want)
		}
	}
}

// Von Mises alone passes a closed cylinder, σ1 = 2 σ2, at 1.155 of its limit.
func TestMembraneMeasure(t *testing.T) {
	for _, row := range []struct {
		σ1, σ2, want float64
		why          string
	}{
		{2, 1, 2, "principal, not 1.732"},
		{1, 1, 1, "sphere"},
		{1, -1, 2, "Tresca, not 1.732"},
		{-3, 0, 3, "compression"},
		{0, 0, 0, "nothing"},
	} {
		if got := proof.Membrane(row.σ1, row.σ2); got != row.want {
			t.Errorf("%g, %g: %g, want %g (%s)", row.σ1, row.σ2, got, row.want, row.why)
		}
	}
	checktest.Printed(t, "1.155", 2/math.Sqrt(4-2+1), "1.155")
	if !math.IsNaN(proof.Membrane(math.NaN(), 1)) || !math.IsNaN(proof.Membrane(1, math.NaN())) {
		t.Error("NaN stress gives a number")
	}
}

// Each pair of limits meets at P_m = 0.67 Sy; at P_m = 0.90 Sy there is 1.0 Sy left.
func TestBendingLimit(t *testing.T) {
	for _, row := range []struct {
		k, membrane float64
		want        string // share of yield
	}{
		{0.90, 0.3, "1.35"}, {0.90, 2.0 / 3, "1.35"}, {0.90, 0.90, "1.00"},
		{1 / 1.05, 0.3, "1.35"}, {0.80, 0.3, "1.20"}, {0.85, 0.80, "1.00"},
	} {
		got, err := proof.BendingLimit(row.k, row.membrane*2e8, 2e8)
		if err != nil {
			t.Error(err)
		}
		checktest.Printed(t, "share of yield", got/2e8, row.want)
	}
	for _, bad := range [][3]float64{{0.79, 1, 2}, {1.01, 1, 2}, {0.9, 2.1, 2}, {0.9, -1, 2}, {math.NaN(), 1, 2}, {0.9, math.NaN(), 2}, {0.9, 1, math.NaN()}} {
		if got, err := proof.BendingLimit(bad[0], bad[1], bad[2]); err == nil || !math.IsNaN(got) {
			t.Errorf("%v: %g, %v", bad, got, err)
		}
	}
	p := plan(t, oxygenTank(t))
	for name, row := range map[string]struct {
		s    proof.Stressed
		want check.Status
	}{
		"flat end":    {proof.Stressed{Membrane: 0, Bending: 1.34 * 2e8, Yield: 2e8, Efficiency: 1}, check.Satisfied},
		"too much":    {proof.Stressed{Membrane: 0, Bending: 1.36 * 2e8, Yield: 2e8, Efficiency: 1}, check.NotSatisfied},
		"other sense": {proof.Stressed{Membrane: 0, Bending: -1.36 * 2e8, Yield: 2e8, Efficiency: 1}, check.NotSatisfied},
		"seam":        {proof.Stressed{Membrane: 0, Bending: 1.34 * 2e8, Yield: 2e8, Efficiency: 0.85}, check.NotSatisfied},
		"missing":     {proof.Stressed{Membrane: 0, Bending: math.NaN(), Yield: 2e8, Efficiency: 1}, check.NotAssessed},
		"no E":        {proof.Stressed{Membrane: 0, Bending: 1e6, Yield: 2e8}, check.NotAssessed},
	} {
		if got := p.CheckBending(row.s).Status(); got != row.want {
			t.Errorf("%s: %v, want %v", name, got, row.want)
		}
	}
}
