package assess

import (
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report"
	"proofsheet/report/check"
)

// standing returns the tank on the pad with its fullest liquid under an ullage
// pressure [Pa], by the rule that holds with people near: no lateral and no
// line loads.
func (m *model) standing(meop *loadCase, ullage float64) (*loadCase, error) {
	c := &loadCase{name: "standing", people: "near", rule: m.nearRule(), ullage: ullage, axial: 1,
		volume: meop.volume, temperature: meop.temperature, coldest: meop.coldest}
	return c, m.fill(c, m.cold, c.volume*m.cold)
}

// nearRule is the rule that people near a tank are protected by.
func (m *model) nearRule() material.Rule {
	if material.Rule(m.t.Basis.Rule) == material.VesselEU {
		return material.VesselEU
	}
	return material.Vessel
}

// permissible returns, part by part, the highest ullage pressure at which every
// check that is made of the part holds, standing at its fullest, by the rule for
// people near; the weakest first in what it names.
func (m *model) permissible(meop *loadCase) []report.PermissiblePressure {
	var out []report.PermissiblePressure
	add := func(name string, checks func(c *loadCase) []check.Result) {
		p, by := m.highest(meop, checks)
		row := report.PermissiblePressure{Part: name, Pressure: p, Check: by, Rule: string(m.nearRule())}
		if math.IsNaN(p) {
			row.Note = "not assessed: " + by
			row.Check = ""
		}
		out = append(out, row)
	}
	add("cylinder", func(c *loadCase) []check.Result { return m.checkCylinder(c.states[0], c) })
	for _, h := range m.ends() {
		add(h.name, func(c *loadCase) []check.Result { return m.checkHead(h, c.states[0], c) })
	}
	for _, p := range m.ports {
		add("port."+p.in.Name, func(c *loadCase) []check.Result { return []check.Result{m.checkPort(p, c.states[0], c)} })
	}
	return out
}

// highest closes in on the highest ullage pressure [Pa] at which the checks
// hold, rounded down, and names the check that sets it; NaN with the reason
// where one cannot be made.
func (m *model) highest(meop *loadCase, checks func(c *loadCase) []check.Result) (float64, string) {
	worst := func(p float64) (check.Status, string) {
		c, err := m.standing(meop, p)
		if err != nil {
			return check.NotAssessed, err.Error()
		}
		rs := checks(c)
		for _, r := range rs {
			if r.Status() == check.NotAssessed {
				return check.NotAssessed, r.ID + ": " + r.Reason()
			}
		}
		if i := check.Governing(rs); i >= 0 {
			return check.Verdict(rs), rs[i].ID
		}
		return check.NotAssessed, "no check applies"
	}
	lo, hi := 0.0, m.t.Pressure.MEOP
	state, by := worst(hi)
	if state == check.NotAssessed {
		return math.NaN(), by
	}
	for range 8 { // double until something gives
		if state != check.Satisfied {
			break
		}
		lo, hi = hi, 2*hi
		if state, _ = worst(hi); state == check.NotAssessed { // out of a formula's range: it ends here
			state = check.NotSatisfied
		}
	}
	for range 24 {
		mid := (lo + hi) / 2
		s, id := worst(mid)
		if s == check.Satisfied {
			lo = mid
		} else {
			hi = mid
			if s == check.NotSatisfied {
				by = id
			}
		}
	}
	return lo, by
}

// nearPressure returns the highest ullage pressure at which every check that
// the tank has holds with people near [Pa]; 0, with the reason, when one is not
// assessed.
func nearPressure(parts []report.PermissiblePressure, unbuilt []check.Result) (p float64, why string) {
	for _, r := range unbuilt {
		if r.Status() == check.NotAssessed {
			return 0, fmt.Sprintf("0 because %s is not assessed", r.ID)
		}
	}
	p = math.Inf(1)
	for _, row := range parts {
		if math.IsNaN(row.Pressure) {
			return 0, fmt.Sprintf("0 because %s is %s", row.Part, row.Note)
		}
		if row.Pressure < p {
			p, why = row.Pressure, "set by "+row.Check
		}
	}
	return p, why
}
