package assess

import (
	"math"
	"slices"
	"strings"

	"proofsheet/material"
	"proofsheet/report"
	"proofsheet/report/check"
)

// hottestNear returns the highest temperature of the metal in the cases with
// people near, and at least that of the standing tank [K].
func hottestNear(cases []*loadCase) float64 {
	T := cases[0].temperature
	for _, c := range cases {
		if c.people != "clear" {
			T = math.Max(T, c.temperature)
		}
	}
	return T
}

// standing returns the tank on the pad with its fullest liquid under an ullage
// pressure [Pa], by the rule that holds with people near: no lateral and no
// line loads.
func (m *model) standing(meop *loadCase, ullage float64) (*loadCase, error) {
	c := &loadCase{name: "standing", people: "near", rule: m.nearRule(), ullage: ullage, least: ullage, axial: 1,
		volume: meop.volume, temperature: meop.temperature, metal: meop.temperature, coldest: meop.coldest}
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
func (m *model) permissible(cases []*loadCase) []report.PermissiblePressure {
	meop := *cases[0]
	meop.temperature = hottestNear(cases)
	type part struct {
		name   string
		checks func(m *model, c *loadCase) []check.Result
	}
	parts := []part{{"cylinder", func(m *model, c *loadCase) []check.Result { return m.checkWholeCylinder(c.states[0], c) }}}
	for _, h := range m.ends() {
		parts = append(parts, part{h.name, func(m *model, c *loadCase) []check.Result { return m.checkHead(h, c.states[0], c) }})
	}
	for _, p := range m.ports {
		if m.closesTip(p) && !slices.ContainsFunc(m.checkPortAmong(p, meop.states[0], &meop), func(r check.Result) bool { return r.Status() != check.NotApplicable }) {
			continue // held with its head
		}
		parts = append(parts, part{"port." + p.in.Name, func(m *model, c *loadCase) []check.Result { return m.checkPortAmong(p, c.states[0], c) }})
	}
	if len(m.zonesAt(meop.temperature).groups) > 0 {
		parts = append(parts, part{"weld zones", func(m *model, c *loadCase) []check.Result { return []check.Result{m.checkWeldZones(c.states[0], c)} }})
	}
	out := make([]report.PermissiblePressure, len(parts))
	m.shared(len(parts), func(m *model, i int) {
		p, by := m.highest(&meop, func(c *loadCase) []check.Result { return parts[i].checks(m, c) })
		out[i] = report.PermissiblePressure{Part: parts[i].name, Pressure: p, Check: by, Rule: string(m.nearRule())}
		if math.IsNaN(p) {
			out[i].Check, out[i].Note = "", "not assessed: "+by
		}
	})
	return out
}

// highest closes in on the highest ullage pressure [Pa] at which the checks
// hold, from below to one part in ten thousand, and names the check that sets
// it; NaN with the reason where one cannot be made.
func (m *model) highest(meop *loadCase, checks func(c *loadCase) []check.Result) (float64, string) {
	lo, hi, p := 0.0, math.Inf(1), m.t.Pressure.MEOP
	by := ""
	for try := range 60 {
		state, margin, id := m.atUllage(meop, p, checks)
		switch {
		case state == check.NotAssessed && try == 0:
			return math.NaN(), id
		case state == check.Satisfied:
			lo = p
		default: // leaving a formula's range ends it there too
			hi = p
		}
		if state != check.NotAssessed {
			by = id
		}
		if !math.IsInf(hi, 1) && hi-lo <= 1e-4*hi {
			break
		}
		next := p * (1 + margin) * (1 - 2e-5) // stress is all but linear in the pressure
		switch {
		case next > lo && next < hi && !math.IsNaN(next) && try < 20:
			p = next
		case math.IsInf(hi, 1):
			p *= 2
		default:
			p = (lo + hi) / 2
		}
		if lo > 0 && math.Abs(p-lo) <= 5e-5*lo {
			break
		}
	}
	return lo, by
}

// atUllage makes the checks at one ullage pressure [Pa]: the verdict, the least
// margin and the check it belongs to, or the reason why one is not made.
func (m *model) atUllage(meop *loadCase, p float64, checks func(c *loadCase) []check.Result) (check.Status, float64, string) {
	c, err := m.standing(meop, p)
	if err != nil {
		return check.NotAssessed, math.NaN(), err.Error()
	}
	rs := checks(c)
	for _, r := range rs {
		if r.Status() == check.NotAssessed {
			return check.NotAssessed, math.NaN(), r.ID + ": " + r.Reason()
		}
	}
	verdict, i := check.Judge(rs)
	if i < 0 {
		return check.NotAssessed, math.NaN(), "no check applies"
	}
	return verdict, rs[i].Margin(), rs[i].ID
}

// nearPressure returns the highest ullage pressure at which every check that
// the tank has holds with people near [Pa]; 0, with the reason, when one is not
// assessed, or one of the tank as a whole does not hold.
func nearPressure(parts []report.PermissiblePressure, checks []check.Result) (p float64, why string) {
	for _, r := range checks {
		whole := strings.HasPrefix(r.ID, "tank/")
		if !whole && r.Case != "" { // a part has its own pressure
			continue
		}
		switch {
		case r.Status() == check.NotSatisfied && whole && r.ID != weldZonesID: // which has its own pressure
			return 0, r.ID + " is not satisfied"
		case r.Status() == check.NotAssessed && (whole || r.Case == ""):
			return 0, r.ID + " is not assessed"
		}
	}
	for _, row := range parts {
		if math.IsNaN(row.Pressure) {
			return 0, row.Part + " is " + row.Note
		}
	}
	p = math.Inf(1)
	for _, row := range parts {
		if row.Pressure < p {
			p, why = row.Pressure, "set by "+row.Check
		}
	}
	return p, why
}

// cappedAt holds the pressure with people near to MEOP: fatigue and leak before burst are
// judged up to there and no further, whatever the other checks would bear.
func cappedAt(meop, p float64, why string) (float64, string) {
	if p > meop {
		return meop, "MEOP: cycles and cracks are judged up to it"
	}
	return p, why
}
