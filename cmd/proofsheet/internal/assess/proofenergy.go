package assess

import (
	"fmt"
	"math"

	"proofsheet/loads/proof"
	"proofsheet/report"
	"proofsheet/report/check"
)

// proofEnergy fills in what is stored in the tank at the set pressure.
func (r *run) proofEnergy(s *report.Proof) {
	if r.proof.plan.In.Method == proof.Pneumatic {
		plan := r.proof.plan
		g := proof.Gas{Volume: r.in.Volume(), Pressure: plan.Top + 2*plan.GaugeUncertainty + plan.Overshoot, Outside: atmosphere, Ratio: 1.4}
		e, err := g.Energy()
		if err == nil {
			s.StoredEnergy, s.FluidEnergy = e.Isentropic, e.Isentropic
			s.Notes = append(s.Notes, "Stored at the test: "+gasWords(e)+".")
			var d float64
			if d, err = proof.StandOff(e.Isentropic); err == nil {
				s.StandOff = &d
				s.Notes = append(s.Notes, r.blast(d, e.Isentropic))
			}
		}
		if err != nil {
			s.Notes = append(s.Notes, "Distance: not assessed, "+err.Error()+".")
		}
		s.Notes = append(s.Notes, r.fragments(g.Pressure))
		return
	}
	for _, q := range r.proofQuantities() {
		switch q.Key {
		case "proof.volume_growth":
			s.Growth = q.Value
		case "proof.injected_volume":
			s.Injected = q.Value
		case "proof.stiffness":
			s.Stiffness = q.Value
		case "proof.drift":
			s.Drift = q.Value
		case "proof.liquid_energy":
			s.FluidEnergy = q.Value
		case "proof.wall_energy":
			s.WallEnergy = q.Value
		}
	}
	s.StoredEnergy = s.FluidEnergy + s.WallEnergy
	s.Notes = append(s.Notes, r.trappedAir(), "Fragments, plugs and fittings that let go are not covered by any number here: the barrier is for them.")
}

// blast says what the distance d [m] is for, where gas stores e [J].
func (r *run) blast(d, e float64) string {
	out := "The distance is for the blast alone, by the later form of the rule with its factor of 2 (recalled)"
	if p, err := proof.IncidentPressure(d, proof.TNT(e)); err == nil {
		out += fmt.Sprintf("; there as much TNT on the ground would make %s (4.5 kPa breaks windows)", report.Show(check.Pa("", "", p), r.t.Sheet.Units, report.Up))
	}
	return out + "."
}

// plugMass [kg] and plugTravel [m] are those for which the velocity of a fitting is
// shown: light, and pushed far, since neither is known.
const plugMass, plugTravel = 0.02, 0.5

// fragments says that no distance covers what flies, and how fast a plug of the
// widest port leaves at the pressure p [Pa].
func (r *run) fragments(p float64) string {
	out := "Fragments, plugs and fittings that let go fly farther and are not covered: a man was killed at 350 m where the rule gives 325 m. Nobody in line with a port, an end or a hose; a barrier on top of the distance"
	bore, name := 0.0, ""
	for _, q := range r.ports {
		if d := q.in.Tube.OutsideDiameter - 2*q.port.TubeWall; d > bore {
			bore, name = d, q.in.Name
		}
	}
	if v, err := proof.PlugVelocity(p, math.Pi/4*bore*bore, plugTravel, plugMass); err == nil && bore > 0 {
		out += fmt.Sprintf("; by v = √(2 p A s/m) a fitting of %.0f g that lets go at port %s and is pushed over %.1f m leaves at %.0f m/s",
			1e3*plugMass, name, plugTravel, math.Ceil(v))
	}
	return out + "."
}
