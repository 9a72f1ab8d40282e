package proof

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// NotExercised is what a plain pressure proof leaves untried; the sheet prints
// it beside the reach.
const NotExercised = "Not exercised by this test: line loads, bending, lateral load, buckling, thermal gradients, service cold."

// CheckReach sets the pressure surely reached against the required one, at the
// point where the two are nearest:
//
//	p_low ≥ p_req
//
// Its note names the over-test elsewhere, each part whose own correction the
// test does not meet, and what the test leaves untried.
func (p *Plan) CheckReach() check.Result {
	const id, title = "proof/reach", "Proof reaches its factor at every point"
	if len(p.Points) == 0 {
		return check.NotMade(id, title, ErrNoPoint)
	}
	at, most := p.Points[0], p.Points[0]
	for _, s := range p.Points {
		if !(s.OverTest >= at.OverTest) { // NaN governs
			at = s
		}
		if s.OverTest > most.OverTest {
			most = s
		}
	}
	return check.Result{
		ID: id, Title: title, Rule: at.Rule,
		Formula: "p_low = p_set − u_g + ρ g0 (z_g + h_w) ≥ p_req = F p_svc",
		Inputs: []check.Quantity{
			check.Pa("p_svc", "highest service pressure at "+at.Name, at.Service),
			check.Num("CF", "temperature correction", at.CF),
			check.Num("F", "factor on service pressure", at.Factor),
			check.Pa("p_set", "proof pressure at the gauge", p.Setting),
			check.Pa("u_g", "uncertainty of the gauge", p.GaugeUncertainty),
			check.KgPerM3("ρ", "density of the test fluid", p.In.WaterDensity),
			check.M("z_g", "gauge above the highest inside point", p.In.GaugeHeight),
			check.M("h_w", "depth in the test liquid", at.WaterDepth),
			check.Num("p_low/p_req", "largest over-test, at "+most.Name, most.OverTest),
		},
		Demand:   check.Pa("p_req", "required proof pressure at "+at.Name, at.Required),
		Capacity: check.Pa("p_low", "pressure surely reached there", at.Low),
		Factor:   1, Source: p.rule(at.Rule).Source, Note: p.reachNote(most),
	}
}

// reachNote says in words what the numbers of the reach do not.
func (p *Plan) reachNote(most Shown) string {
	var words []string
	if most.OverTest > 1.005 {
		words = append(words, fmt.Sprintf("%s sees %.1f %% more than required.", most.Name, 100*(most.OverTest-1)))
	}
	for _, s := range p.Points {
		if s.HotShort {
			words = append(words, fmt.Sprintf("%s is hotter in service than the rest: its own correction of %.3f is not demonstrated.", s.Name, s.OwnCF))
		}
	}
	return strings.Join(append(words, NotExercised), " ")
}

func (p *Plan) rule(name string) Rule {
	for _, r := range p.In.Rules {
		if r.Rule == name {
			return r
		}
	}
	return Rule{} // not reached: the rules of a plan are its own
}

// Membrane returns the measure of membrane stress [Pa] that is held to a
// limit, from the two principal stresses in the wall [Pa], tension positive:
//
//	max(|σ1|, |σ2|, √(σ1² − σ1σ2 + σ2²)), and |σ1 − σ2| where the signs differ
//
// Von Mises alone would pass a closed cylinder at 1.155 times its limit.
// Source: practice, combining the principal stress with von Mises and Tresca.
func Membrane(σ1, σ2 float64) float64 {
	mises := math.Sqrt(math.Max(0, σ1*σ1-σ1*σ2+σ2*σ2))
	if math.IsNaN(σ1) || math.IsNaN(σ2) {
		return math.NaN()
	}
	measure := math.Max(mises, math.Max(math.Abs(σ1), math.Abs(σ2)))
	if σ1*σ2 < 0 {
		measure = math.Max(measure, math.Abs(σ1-σ2))
	}
	return measure
}

// A Stressed is one place at proof, its stress taken at the point's p_high.
type Stressed struct {
	Part       string  // "cylinder, long seam"
	Pressure   float64 // p_high at the place [Pa]
	Membrane   float64 // general membrane stress, as [Membrane] or normal to a seam [Pa]
	Yield      float64 // of the parent or the weld zone, at the test temperature [Pa]
	Efficiency float64 // of the seam where the stress is normal to one; else 1 [-]
	Bending    float64 // primary bending with the membrane; 0: none [Pa]
}

// CheckYield holds the general membrane stress at p_high to the strictest
// limit of the rules:
//
//	P_m ≤ k E Sy
//
// A plan is issued only when this holds for parent and weld zone of every
// part. Source: [Rule.LimitSource] of the rule that is strictest.
func (p *Plan) CheckYield(s Stressed) check.Result {
	k, rule, err := Limit(p.In.Rules, s.Efficiency)
	return check.Result{
		ID: "proof/yield", Title: "Membrane stress at proof: " + s.Part, Rule: rule.Rule,
		Formula: "P_m(p_high) ≤ k E Sy",
		Inputs: []check.Quantity{
			check.Pa("p_high", "highest pressure at the place in the test", s.Pressure),
			check.Num("k", "share of yield allowed", rule.K),
			check.Num("E", "efficiency of the seam", efficiencyUsed(rule, s.Efficiency)),
			check.Pa("Sy", "yield strength at the test temperature", s.Yield),
		},
		Demand:   check.Pa("P_m", "membrane stress at proof", s.Membrane),
		Capacity: check.Pa("k E Sy", "limit at proof", k*s.Yield),
		Factor:   1, Source: rule.LimitSource, Err: err,
	}
}

func efficiencyUsed(r Rule, e float64) float64 {
	if r.IgnoreEfficiency {
		return 1
	}
	return e
}

// BendingLimit returns the limit on primary membrane plus bending at proof
// [Pa], for a membrane limit k [-], membrane stress P_m [Pa] and yield Sy [Pa]:
//
//	k ≥ 0.90: min(1.35 Sy, 2.35 Sy − 1.5 P_m)
//	k ≥ 0.80: min(1.20 Sy, 2.20 Sy − 1.5 P_m)
//
// A limit between takes the lower pair. Bending that limits itself, at a
// junction, is not meant. P_m runs from 0 to Sy, k from 0.80 to 1; outside,
// NaN and a [*check.RangeError].
//
// Source: ASME VIII-2 part 4.1.6, memory.
func BendingLimit(k, membrane, yield float64) (float64, error) {
	const fn = "proof.BendingLimit"
	if err := check.Within(fn, "membrane limit at proof, share of yield", k, 0.80, 1, "where the pairs are known"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "yield strength [Pa]", yield, 1, 1e11, "a strength"); err != nil {
		return math.NaN(), err
	}
	if err := check.Within(fn, "membrane stress over yield", membrane/yield, 0, 1, "plain yielding beyond"); err != nil {
		return math.NaN(), err
	}
	flat, slope := 1.20, 2.20
	if k >= 0.90 {
		flat, slope = 1.35, 2.35
	}
	return math.Min(flat*yield, slope*yield-1.5*membrane), nil
}

// CheckBending holds primary membrane plus bending at p_high, in a flat end or
// a cover, to [BendingLimit] at the strictest membrane limit of the rules; the
// seam's efficiency multiplies it.
func (p *Plan) CheckBending(s Stressed) check.Result {
	k, rule, err := Limit(p.In.Rules, 1)
	limit := math.NaN()
	if err == nil {
		limit, err = BendingLimit(k, s.Membrane, s.Yield)
	}
	if err == nil {
		err = check.Within("proof.Plan.CheckBending", "joint efficiency", s.Efficiency, 0.1, 1, "an efficiency")
	}
	return check.Result{
		ID: "proof/yield", Title: "Membrane and bending stress at proof: " + s.Part, Rule: rule.Rule,
		Formula: "P_m + P_b ≤ E min(1.35 Sy, 2.35 Sy − 1.5 P_m), 1.20 and 2.20 in gas",
		Inputs: []check.Quantity{
			check.Pa("p_high", "highest pressure at the place in the test", s.Pressure),
			check.Pa("P_m", "membrane stress", s.Membrane), check.Pa("P_b", "bending stress", s.Bending),
			check.Num("k", "share of yield allowed to the membrane", k),
			check.Num("E", "efficiency of the seam", s.Efficiency),
			check.Pa("Sy", "yield strength at the test temperature", s.Yield),
		},
		Demand:   check.Pa("P_m + P_b", "membrane and bending stress at proof", s.Membrane+math.Abs(s.Bending)),
		Capacity: check.Pa("limit", "limit at proof", s.Efficiency*limit),
		Factor:   1, Err: err,
		Source: check.Source{Doc: "ASME VIII-2", Where: "part 4.1.6, recalled; confirm", How: check.Memory},
	}
}
