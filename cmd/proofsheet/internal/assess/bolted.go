package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/bolting"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/report/check"
)

// bolted reports whether a head is bolted on, not welded.
func (h *headPart) bolted() bool { return h.in.Closure == "bolted" }

// errBoltedEuropean says why a bolted cover has no thickness by the European rule.
var errBoltedEuropean = errors.New("bolted flat covers by the European set are not built in")

// boltedJoint returns a cover's bolts and seal at T [K] as part id, titled title; of
// the metals that are clamped the mean thermal expansions [1/K].
func boltedJoint(id, title string, b *tank.Bolts, s *tank.Seal, T float64, clamped [2]float64) (bolting.Joint, error) {
	j := bolting.Joint{ID: id, Title: title, Temperature: T, Clamped: clamped}
	if b == nil || s == nil {
		return j, errors.New("bolts and seal are not described")
	}
	th, err := bolting.ParseThread(b.Size)
	j.Bolts = bolting.Bolts{Thread: th, Count: b.Count, Circle: b.Circle, Hole: b.Hole, Strength: given(b.Strength), Preload: math.NaN(), Scatter: b.Scatter, Growth: math.NaN()}
	if b.Preload != nil {
		j.Bolts.Preload = *b.Preload
	}
	if b.Expansion != nil {
		j.Bolts.Growth = *b.Expansion
	}
	j.Seal = bolting.Seal{Gasket: s.Kind == "gasket", Diameter: s.Diameter, Squeeze: s.Squeeze, Width: s.Width, Factor: s.GasketFactor, Seating: s.SeatingStress}
	return j, err
}

// growth returns the mean thermal expansion of a material from 20 °C to T [K], in
// [1/K]; not a number where it is not known.
func (m *model) growth(name string, thickness, T float64) float64 {
	x := m.metals.at(name, "", thickness, T)
	if α := x.parent.Expansion.Value; x.parentErr == nil && α > 0 {
		return α
	}
	return math.NaN()
}

// headJoint returns the bolts and the seal of a bolted head at T [K].
func (m *model) headJoint(h *headPart, T float64) (bolting.Joint, error) {
	return boltedJoint(h.name, h.title, h.in.Bolts, h.in.Seal, T,
		[2]float64{m.growth(h.material, h.nominal, T), m.growth(m.cyl.material, m.cyl.nominal, T)})
}

// coverJoint returns the bolts and the seal of a port's cover at T [K].
func (m *model) coverJoint(p *portPart, T float64) (bolting.Joint, error) {
	clamped := [2]float64{math.NaN(), m.growth(p.in.Tube.Material, p.in.Tube.Wall, T)}
	if in := p.in.Cover; in != nil {
		clamped[0] = m.growth(in.Material, in.Thickness, T)
	}
	j, err := boltedJoint("port."+p.in.Name, "Port "+p.in.Name, p.in.Bolts, p.in.Seal, T, clamped)
	if l := p.in.Load; l != nil {
		g, _ := j.Seal.Line()
		j.Outside = bolting.Outside(math.Abs(l.Force), math.Abs(l.Moment), g)
	}
	return j, err
}

// boltAllowable returns what a rule allows the bolts of a joint [Pa].
func (m *model) boltAllowable(j bolting.Joint, rule material.Rule) (float64, error) {
	f, err := m.factors(rule)
	if err != nil {
		return math.NaN(), err
	}
	return bolting.Allowable(rule, f, j.Bolts.Strength)
}

// coverAllowable returns what the rule allows a bolted head: welded values where
// something is welded into it.
func (m *model) coverAllowable(h *headPart, c *loadCase) (float64, error) {
	if h.segment != nil {
		return math.NaN(), errors.New("a bolted cover made of pieces welded together is not covered")
	}
	a := m.allow(h.part, m.weldsOf(&h.part), c)
	if _, ported := m.portWelds(h.name); ported {
		return a.seam.S, a.zoneErr
	}
	return a.parent.S, a.parentErr
}

// shellEnd returns a head for the whole tank. A bolted one is left out: the cylinder
// ends there, free, with the pressure's thrust on it. What the flange ring does to the
// cylinder beside it is the ring's own matter, so that a cylinder whose other joint
// reaches that far is refused.
func (m *model) shellEnd(h *headPart, k shellKey) (shellHead, error) {
	if !h.bolted() {
		return m.shellHead(h, k)
	}
	R, t := m.midCylinder(k)
	if least := 2 * reach * math.Sqrt(R*t); m.t.Cylinder.Length < least {
		return shellHead{}, fmt.Errorf("the cylinder is shorter than %.0f mm: the flange ring of the bolted head would bear on the joint at its other end", least*1e3)
	}
	return shellHead{area: math.Pi * R * R}, nil
}

// coverPressure returns the pressure that bends a cover most, of the highest and the lowest
// across it [Pa].
func coverPressure(highest, lowest float64) float64 {
	if lowest < 0 && -lowest > math.Abs(highest) {
		return lowest
	}
	return highest
}

// checkBoltedHead makes the checks of a bolted head: its thickness, in place of the
// rule for a welded one, and its bolts, its seal and what its bolt holes leave of it.
// Pressures [Pa]: highest on the head, and lowest.
func (m *model) checkBoltedHead(h *headPart, highest, lowest float64, c *loadCase) (thickness check.Result, joint []check.Result) {
	j, err := m.headJoint(h, c.temperature)
	sb, boltErr := m.boltAllowable(j, c.rule)
	s, coverErr := m.coverAllowable(h, c)
	if c.rule == material.VesselEU {
		coverErr = errors.Join(coverErr, errBoltedEuropean)
	}
	bend, plateErr := coverPressure(highest, lowest), errors.Join(err, boltErr, coverErr)
	return orNot(plateErr, j.CheckCover(h.name+"/thickness", bend, h.least, s, sb)), []check.Result{
		orNot(errors.Join(err, boltErr), j.CheckBolts(highest, sb)), orNot(err, j.CheckSeal(highest, bolting.Separation)),
		orNot(plateErr, j.CheckLigament(h.name+"/ligament", bend, h.least, s, sb))}
}

// orNot returns a check, or that it is not made where err says why.
func orNot(err error, r check.Result) check.Result {
	if err == nil {
		return r
	}
	return check.NotMade(r.ID, r.Title, err)
}

// lowestOn returns the lowest pressure across a head in one state [Pa].
func (m *model) lowestOn(h *headPart, s *loads.State) float64 {
	lo, hi := m.in.Bounds()
	if h.end == "aft" {
		return s.LowestPressure(lo, 0)
	}
	return s.LowestPressure(m.t.Cylinder.Length, hi)
}

// boltedBending is the largest bending stress of a bolted head at proof [Pa].
func (m *model) boltedBending(h *headPart, p, T float64) (float64, error) {
	j, err := m.headJoint(h, T)
	if err != nil {
		return math.NaN(), err
	}
	if h.segment != nil {
		return math.NaN(), errors.New("a bolted cover made of pieces welded together is not covered")
	}
	return j.ProofBending(p, h.least, j.Bolts.Strength/4)
}

// proofBolted holds bolts and seals of bolted heads and covers, and the threads of
// bosses, at the highest pressure of the test. Without a plan each is listed with the reason.
func (m *model) proofBolted(t *proofTest) (out []check.Result) {
	c, s, k, err := &loadCase{temperature: m.t.Proof.Temperature}, (*loads.State)(nil), math.NaN(), t.err
	if err == nil {
		var stateErr, limitErr error
		c, s, stateErr = m.proofState(t)
		k, _, limitErr = proof.Limit(t.rules, 1)
		err = errors.Join(stateErr, limitErr)
	}
	for _, h := range m.ends() {
		if !h.bolted() {
			continue
		}
		j, jointErr := m.headJoint(h, c.temperature)
		p := math.NaN()
		if err == nil {
			d, demandErr := m.headDemand(h, s, &loadCase{rule: material.Vessel}, m.headLoading(h, s, c))
			p, jointErr = d.Pressure, errors.Join(jointErr, demandErr)
		}
		parent, zone, yieldErr := m.proofYields(&h.part)
		out = append(out, orNot(errors.Join(err, jointErr), j.CheckBoltsAtProof(p, k)), orNot(errors.Join(err, jointErr), j.CheckSeal(p, 1)),
			m.proofLigament(t, j, h.name, "bolted "+h.end+" head", p, h.least, math.Min(parent, zone), errors.Join(err, jointErr, yieldErr)))
	}
	for _, p := range m.ports {
		out = append(out, m.proofFitted(t, p, s, c, k, err)...)
	}
	return out
}

// proofLigament holds a cover of thickness wall [m] between its bolt holes at the highest
// pressure p of the test to the limit of bending, yield its own [Pa].
func (m *model) proofLigament(t *proofTest, j bolting.Joint, part, name string, p, wall, yield float64, err error) check.Result {
	id, title := part+"/ligament", j.Title+": cover between its bolt holes at proof"
	σ, bendErr := j.RimBending(p, wall, j.Bolts.Strength/4)
	if err = errors.Join(err, bendErr); err != nil {
		return check.NotMade(id, title, err)
	}
	r := t.plan.CheckBending(proof.Stressed{Part: name, Pressure: p, Bending: σ, Yield: yield, Efficiency: 1})
	r.ID, r.Title = id, title
	return r
}
