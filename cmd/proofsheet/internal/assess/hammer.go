package assess

import (
	"fmt"

	"proofsheet/heads/port"
	"proofsheet/loads"
	"proofsheet/report/check"
)

func hammerTitle(name string) string { return "Port " + name + ": water hammer on the tube" }

// checkHammer asks whether the tube of a port bears the pressure at the port with
// the rise of a valve that closes in its line: the least tube wall at both together,
// a momentary pressure held to the limit of a lasting one. The fast form counts
// also where the closing is slow, since most valves stop the flow at the end of
// their stroke; the slow one is named beside it.
func (m *model) checkHammer(p *portPart, q port.Member) check.Result {
	id, title := "port."+p.in.Name+"/hammer", hammerTitle(p.in.Name)
	in := p.in.Line
	line := loads.Line{Length: in.Length, Velocity: in.Velocity, Density: m.cold, Sound: in.WaveSpeed}
	fast, _, err := line.Hammer(0)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	closing, slow, err := line.Hammer(in.ClosingTime)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	load := q.Load
	load.Pressure += fast
	r, err := q.Port.Area(p.wall, load, q.Strengths)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	out := r.CheckNeck(p.in.Name)
	out.ID, out.Title = id, title
	out.Formula = "Δp = ρ c v at the port besides its pressure p_0; " + out.Formula
	out.Inputs = append([]check.Quantity{
		check.Pa("p_0", "pressure at the port", q.Load.Pressure), check.KgPerM3("ρ", "density of the liquid, most", m.cold),
		{Symbol: "c", Name: "wave speed in the line", Value: in.WaveSpeed, Unit: "m/s"}, {Symbol: "v", Name: "velocity in the line", Value: in.Velocity, Unit: "m/s"},
		check.Pa("Δp", "rise when the valve closes", fast)}, out.Inputs...)
	out.Note = "the valve closes fast"
	if slow {
		out.Note = fmt.Sprintf("closing evenly the rise would be %.4g MPa; few valves close so", closing/1e6)
	}
	return out
}
