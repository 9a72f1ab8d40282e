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

// slightStep is the share of the limit of the range up to which the change of
// temperature at a level in a head is let pass [-]; common practice.
const slightStep = 0.1

// widestHead is the largest radius of curvature of any head over the radius of its
// cylinder [-]: a 3:1 ellipsoid at its crown. A cone of 60 degrees and a torisphere
// as flat as it may be have 2.
const widestHead = 3

// levelInHead answers where the level lies in a head. The wall there sees the same
// step as a cylinder's; over a length it sees more, the wider and thicker the wall,
// so the thicker wall at the largest radius of curvature is taken. To this is added
// the largest surface stress anywhere in the tank: the equivalent stress is a norm,
// and that of a sum is never above the sum. What does not pass so is not assessed.
// The temperature differs by step [K].
func (m *model) levelInHead(s *loads.State, c *loadCase, step float64) check.Result {
	h := m.fwd
	if !(s.SurfaceZ() > 0) {
		h = m.aft
	}
	l := m.jointLimits(h, c)
	st := m.shellOf(s, c)
	e, ν, err := m.elastic(&h.part, c.temperature)
	if err = errors.Join(l.err, st.err, err); err != nil {
		return check.NotMade(thermalID, thermalTitle, fmt.Errorf("the level of the liquid lies in %s: %w", h.name, err))
	}
	warm := m.metals.at(h.material, "", h.nominal, c.temperature)
	liquid, _ := m.farthest(c.metal)
	if cold := m.metals.at(h.material, "", h.nominal, math.Min(liquid, c.metal)); cold.parentErr == nil {
		e = math.Max(e, cold.parent.ElasticModulus.Value)
	}
	wide := shell.Cylinder{InsideRadius: widestHead * m.cyl.corroded(), Thickness: h.nominal, Length: m.t.Cylinder.Length}
	th, err := wide.TemperatureStep(shell.Elastic{Modulus: e, Poisson: ν}, warm.parent.Expansion.Value*step, c.ramp)
	limit, formula, limitErr := edge.RangeLimit(l.zone[1])
	peak, peakErr := m.peakSurface(s, c, st)
	if err = errors.Join(warm.parentErr, err, limitErr, peakErr); err != nil {
		return check.NotMade(thermalID, thermalTitle, fmt.Errorf("the level of the liquid lies in %s: %w", h.name, err))
	}
	E := min(l.girth, l.course, l.along[1])
	σ := edge.Stress{Hoop: th.Hoop, MeridionalBending: th.Bending, HoopBending: ν * th.Bending}.Surface()
	switch {
	case σ <= slightStep*E*limit:
		return check.NotApplicableTo(thermalID, thermalTitle, fmt.Sprintf("no level of the liquid lies in the cylinder; in %s the change of temperature puts up to %.2g MPa into the wall, a tenth of its limit at most", h.name, σ/1e6))
	case !(σ+peak <= E*limit):
		return check.NotMade(thermalID, thermalTitle, fmt.Errorf("the level of the liquid lies in %s: the change of temperature there, up to %.3g MPa, and the largest stress of the tank, %.3g MPa, are together over the limit of the range, %.3g MPa, and where they meet is not looked at; write temperature_ramp of the cases, or less liquid", h.name, σ/1e6, peak/1e6, E*limit/1e6))
	}
	return check.Result{
		ID: thermalID, Title: thermalTitle, Formula: "σ_T + σ_peak ≤ E " + formula,
		Inputs: []check.Quantity{
			check.Num("ΔT", "metal to liquid, the coldest or the warmest [K]", step), check.M("l", "length over which it changes", c.ramp),
			check.Pa("σ_T", "surface stress of the change, in "+h.name, σ), check.Pa("σ_peak", "largest surface stress of the tank, numerical shell", peak),
			check.Num("E", "joint efficiency, the least", E),
		},
		Demand: check.Pa("σ", "temperature at the level in "+h.name+" and largest stress together", σ+peak), Capacity: check.Pa("E "+formula, "limit of the range, in the weld zone", E*limit),
		Factor: 1, Source: check.Source{Doc: "derived", Where: "beam on an elastic foundation, and the numerical shell", How: check.Computed},
		Note: "the level lies in a head: an upper bound, wherever the two meet",
	}
}

// peakSurface returns the largest equivalent stress on a face of the shell, line
// loads included [Pa].
func (m *model) peakSurface(s *loads.State, c *loadCase, st *shellState) (peak float64, err error) {
	for _, h := range m.ends() {
		load, err := m.seamLoadAt(h, s, c, st)
		if err != nil {
			return math.NaN(), err
		}
		for i := range st.pressure.Stations {
			for _, x := range st.stresses(i, load) {
				peak = math.Max(peak, math.Max(plus(x.pressure, x.most).Surface(), plus(x.pressure, x.least).Surface()))
			}
		}
	}
	return peak, nil
}
