package proof

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Method is the way the tank is loaded.
type Method string

const (
	Hydrostatic Method = "hydrostatic" // full of liquid, bled
	Pneumatic   Method = "pneumatic"   // full of gas
)

// A Rule holds the numbers that one rule set puts into the plan. They come in
// as numbers, so that an override travels the same way as a default.
type Rule struct {
	Rule             string       // "vessel", "vessel-eu", "flight"
	PF               float64      // proof factor that the correction CF multiplies [-]
	LeastPF          float64      // factor never gone below, CF not applied; 0: none [-]
	K                float64      // limit on membrane stress at proof, share of yield [-]
	LeastHold        float64      // shortest hold the rule asks for; 0: none [s]
	OneRatio         bool         // one correction for the whole tank, the lowest
	IgnoreEfficiency bool         // a seam's efficiency does not multiply K
	Source           check.Source // of PF
	LimitSource      check.Source // of K
}

// Factor returns what the service pressure is multiplied by [-], from the
// correction cf [-]:
//
//	F = max(CF PF, PF_least)
//
// A corrected leg and a flat leg stand side by side in the European rule; the
// others have the first alone. Source: [Rule.Source].
func (r Rule) Factor(cf float64) float64 { return math.Max(cf*r.PF, r.LeastPF) }

// valid reports the first number of r that cannot be used.
func (r Rule) valid() error {
	name := func(what string) string { return "rule " + r.Rule + ": " + what }
	return errors.Join(
		check.Within("proof.Rule", name("proof factor"), r.PF, 1, 10, "a proof loads at least to the service pressure"),
		check.Within("proof.Rule", name("least proof factor"), r.LeastPF, 0, 10, "none, or a factor"),
		check.Within("proof.Rule", name("limit at proof"), r.K, 0.1, 1, "share of yield"),
		check.Within("proof.Rule", name("least hold"), r.LeastHold, 0, 24*3600, "a time"),
	)
}

// Limit returns the strictest membrane limit at proof over the rules [-], as a
// share of yield, where the efficiency of the seam is e [-] (1 off a seam), and
// the rule it comes from:
//
//	k E, or k alone where the rule ignores E at proof
//
// Source: [Rule.LimitSource] of the rule named.
func Limit(rules []Rule, e float64) (float64, Rule, error) {
	if err := check.Within("proof.Limit", "joint efficiency", e, 0.1, 1, "an efficiency"); err != nil {
		return math.NaN(), Rule{}, err
	}
	if len(rules) == 0 {
		return math.NaN(), Rule{}, errors.New("no rule gives a limit at proof")
	}
	least, from := math.Inf(1), Rule{}
	for _, r := range rules {
		if err := r.valid(); err != nil {
			return math.NaN(), Rule{}, err
		}
		k := r.K * e
		if r.IgnoreEfficiency {
			k = r.K
		}
		if k < least {
			least, from = k, r
		}
	}
	return least, from, nil
}

// DefaultRule returns the numbers of a rule set where nothing is overridden, for
// joints that are all examined or not. The limit of "vessel" and "flight" is
// 0.90 of yield in water and 0.80 in gas; an unknown rule or method is an error.
func DefaultRule(rule string, m Method, examined bool) (Rule, error) {
	if m != Hydrostatic && m != Pneumatic {
		return Rule{}, fmt.Errorf("unknown proof method %q: hydrostatic or pneumatic", m)
	}
	gas := m == Pneumatic
	limit := check.Source{Doc: "46 CFR (2004)", Where: "54.10-10", How: check.Read}
	k := 0.90
	if gas {
		k, limit = 0.80, check.Source{Doc: "ASME VIII-2", Where: "part 4.1.6, recalled; confirm", How: check.Memory}
	}
	switch rule {
	case "vessel":
		r := Rule{Rule: rule, PF: 1.3, K: k, OneRatio: true, LimitSource: limit,
			Source: check.Source{Doc: "ASME VIII-1", Where: "UG-99(b)", How: check.Read}}
		if gas {
			r.PF, r.Source.Where = 1.1, "UG-100"
		}
		return r, nil
	case "vessel-eu":
		src := check.Source{Doc: "European method", Where: "recalled; confirm", How: check.Memory}
		r := Rule{Rule: rule, PF: 1.25, LeastPF: 1.43, K: 1 / 1.05, LeastHold: 30 * 60,
			IgnoreEfficiency: true, Source: src, LimitSource: src}
		if !examined {
			r.PF, r.LeastPF = 2.2, 0
		}
		return r, nil
	case "flight":
		return Rule{Rule: rule, PF: 1.5, K: k, LimitSource: limit, Source: check.Source{
			Doc: "student launch event rules (2023), V1.3", Where: "6.23-6.25", How: check.Read}}, nil
	}
	return Rule{}, fmt.Errorf("no proof factor is known for rule %q", rule)
}
