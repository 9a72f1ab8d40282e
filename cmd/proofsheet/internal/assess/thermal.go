package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/report/check"
	"proofsheet/shell"
	"proofsheet/shell/edge"
)

// leastStep is the difference of temperature below which the wall at the liquid's
// level counts as even [K].
const leastStep = 1.0

const (
	thermalID    = "cylinder/thermal"
	thermalTitle = "Cylinder: change of temperature at the level of the liquid"
)

// checkThermal asks what the change of temperature at the level of the liquid, and
// ends that hold the tank between them, do to the cylinder in one state: secondary
// stress with that of the pressure.
func (m *model) checkThermal(s *loads.State, c *loadCase) check.Result {
	const id, title = thermalID, thermalTitle
	liquid, step := m.farthest(c.metal)
	both := m.t.Support.At == "both"
	held := m.heldEnds(s, c)
	wet := s.Liquid.Mass > 0 && step >= leastStep
	inside := wet && m.levelInside(s)
	switch {
	case both: // the whole wall is as warm as it is, whatever stands in it
	case !(step >= leastStep):
		return check.NotApplicableTo(id, title, "metal and liquid are equally warm")
	case s.Liquid.Mass == 0:
		return check.NotApplicableTo(id, title, "the tank is empty")
	}
	warm := m.metals.at(m.cyl.material, "", m.cyl.nominal, c.temperature)
	α, ν, E := warm.parent.Expansion.Value, warm.parent.Poisson.Value, warm.parent.ElasticModulus.Value
	cold := m.metals.at(m.cyl.material, "", m.cyl.nominal, math.Min(liquid, c.metal))
	if cold.parentErr == nil {
		E = math.Max(E, cold.parent.ElasticModulus.Value) // of the stiffer, colder side
	}
	seams, a, longErr, girthErr := m.cylinderSeams(c)
	cond, condErr := m.cylinderCondition(s, c)
	var missing error
	if !(α > 0 && ν >= 0 && E > 0) {
		missing = fmt.Errorf("the expansion, the modulus or Poisson's ratio of %s is not known", m.cyl.material)
	}
	limit, formula, limitErr := edge.RangeLimit(a.Zone)
	if err := errors.Join(held.err, warm.parentErr, missing, longErr, girthErr, a.ZoneKnown, condErr, m.massErr, limitErr); err != nil {
		return check.NotMade(id, title, err)
	}
	cyl := shell.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
	metal := shell.Elastic{Modulus: E, Poisson: ν}
	th, err := cyl.TemperatureStep(metal, α*step, c.ramp)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	E_j := math.Min(seams.Long, seams.Girth)
	var head *check.Result
	if !inside {
		if wet {
			if r := m.levelInHead(s, c, step); !both {
				return r
			} else if r.Status() != check.NotApplicable {
				head = &r
			}
		}
		th = shell.StepStress{}
	}
	worst := worstThermal(cond, cyl, th, ν, held)
	out := check.Result{
		ID: id, Title: title, Formula: "p r/t ± σ_h, N/t ± σ_b ± σ_r, worse face ≤ E " + formula,
		Inputs: []check.Quantity{
			check.Pa("p", "pressure", cond.Pressure), check.M("r", "mid-wall radius", cyl.MidRadius()), check.M("t", "least wall", cyl.Thickness),
			{Symbol: "α", Name: "thermal expansion", Value: α, Unit: "1/K"}, check.Num("ΔT", "metal to liquid, the coldest or the warmest [K]", step),
			check.M("l", "length over which it changes", c.ramp), check.Pa("E_y", "modulus of the colder side", E), check.Num("ν", "Poisson's ratio", ν),
			check.Pa("σ_h", "hoop stress of the change", th.Hoop), check.Pa("σ_b", "bending of the change", th.Bending), check.Pa("σ_r", "axial stress between held ends", math.Max(held.push, held.pull)),
			check.Num("E", "joint efficiency, the least", E_j),
		},
		Demand: check.Pa("σ", "pressure and temperature together, worse face", worst), Capacity: check.Pa("E "+formula, "limit of the range, in the weld zone", E_j*limit),
		Factor: 1, Source: check.Source{Doc: "derived", Where: "beam on an elastic foundation; α by the mean from 20 °C", How: check.Computed},
		Note: "secondary stress; for a step σ_h = E_y α ΔT/2, σ_b = 0.2792 E_y α ΔT/√(1 − ν²), less over a length l (temperature_ramp)",
	}
	out.Inputs = append(out.Inputs, held.inputs()...)
	if head != nil {
		return worse(*head, out)
	}
	return out
}

// levelInside reports whether the liquid ends somewhere on the cylinder's wall: without an
// axial factor it may float anywhere.
func (m *model) levelInside(s *loads.State) bool {
	z := s.SurfaceZ()
	return !(z <= 0 || z >= m.t.Cylinder.Length)
}

// farthest returns the liquid's temperature farther from that of the metal T [K],
// and the difference [K].
func (m *model) farthest(T float64) (liquid, step float64) {
	c := m.t.Contents
	if math.Abs(T-c.Coldest) >= math.Abs(T-c.Warmest) {
		return c.Coldest, math.Abs(T - c.Coldest)
	}
	return c.Warmest, math.Abs(T - c.Warmest)
}

// worstThermal returns the largest equivalent stress [Pa] on a face under pressure
// and line loads with the thermal stress at either sign, and with what held ends do.
func worstThermal(cond shell.Condition, cyl shell.Cylinder, th shell.StepStress, ν float64, held heldWall) float64 {
	worst := 0.0
	hoop := cond.Pressure * cyl.MidRadius() / cyl.Thickness
	for _, N := range [...]float64{cond.AxialMost + cond.LoadMost, cond.AxialLeast + cond.LoadLeast} {
		for _, side := range [...]float64{-1, 1} {
			for _, end := range [...]float64{-held.push, held.pull} {
				s := edge.Stress{Meridional: N/cyl.Thickness + end, Hoop: hoop + side*th.Hoop,
					MeridionalBending: th.Bending, HoopBending: ν * th.Bending}
				worst = math.Max(worst, s.Surface())
			}
		}
	}
	return worst
}
