package material_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/material"

	"proofsheet/report/check/checktest"
)

// owned is an own steel as a certificate states it.
func owned() material.Own {
	nan := math.NaN()
	return material.Own{Family: "ferritic", Yield: 240e6, Ultimate: 360e6, ElasticModulus: 200e9, Poisson: 0.3, Density: 7850, Expansion: nan,
		Elongation: 0.22, Allowable: nan, WeldedYield: nan, WeldedUltimate: nan, Source: "certificate 1"}
}

// No limits without factors, without strengths, of an unknown rule, and none that mix two rules.
func TestLimitsRefused(t *testing.T) {
	p, err := owned().Parent(room)
	if err != nil {
		t.Fatal(err)
	}
	vessel, _ := material.DefaultFactors(material.Vessel)
	flight, _ := material.DefaultFactors(material.Flight)
	none := flight
	none.LoadYieldFactor = math.NaN()
	low := vessel
	low.UltimateFactor = 0.99
	for _, row := range []struct {
		name   string
		rule   material.Rule
		f      material.Factors
		change func(*material.Properties)
		want   string
	}{
		{"a factor is not a number", material.Flight, none, nil, "missing or below 1"},
		{"a factor below 1", material.Vessel, low, nil, "missing or below 1"},
		{"no factors", material.Vessel, material.Factors{}, nil, "missing or below 1"},
		{"unknown rule", "boiler", vessel, nil, `unknown rule "boiler"`},
		{"no yield", material.Vessel, vessel, func(p *material.Properties) { p.Yield.Value = math.NaN() }, "yield or ultimate"},
		{"no ultimate when warm", material.Vessel, vessel, func(p *material.Properties) { p.RoomUltimate = 0 }, "yield or ultimate"},
		{"without end", material.Vessel, vessel, func(p *material.Properties) { p.RoomYield = math.Inf(1) }, "yield or ultimate"},
		{"brittle", material.Vessel, vessel, func(p *material.Properties) { p.Brittle = errors.New("brittle here") }, "brittle here"},
	} {
		q := p
		if row.change != nil {
			row.change(&q)
		}
		l, err := q.Limits(row.rule, row.f, material.LimitOptions{})
		checktest.Refused(t, row.name, err, row.want)
		if l.S != 0 || l.Yield != 0 {
			t.Errorf("%s: %+v", row.name, l)
		}
	}
	a, errA := p.Limits(material.Vessel, vessel, material.LimitOptions{})
	b, errB := p.Limits(material.Flight, flight, material.LimitOptions{})
	if errA != nil || errB != nil {
		t.Fatal(errA, errB)
	}
	_, err = a.Lower(b)
	checktest.Refused(t, "two rules", err, "do not go together")
	_, err = material.Limits{}.Lower(material.Limits{})
	checktest.Refused(t, "no rule", err, "do not go together")
}

// Steel of too little elongation is said under the European rule: PED annex I 7.5 asks for 14 %.
func TestElongationSaid(t *testing.T) {
	f, _ := material.DefaultFactors(material.VesselEU)
	for elongation, said := range map[float64]bool{0.14: false, 0.139: true, math.NaN(): true} {
		o := owned()
		o.Elongation = elongation
		p, err := o.Parent(room)
		if err != nil {
			t.Fatal(err)
		}
		l, err := p.Limits(material.VesselEU, f, material.LimitOptions{})
		if err != nil || strings.Contains(l.Note, "14 %") != said {
			t.Errorf("elongation %g: %q, %v", elongation, l.Note, err)
		}
	}
}

// Own values hold from 1 K to 50 °C, and say so above 20 °C.
func TestOwnTemperature(t *testing.T) {
	o := owned()
	p, err := o.Parent(310)
	if err != nil || !strings.Contains(strings.Join(p.Notes, "; "), "own values kept up to 50 degC") {
		t.Errorf("%q, %v", p.Notes, err)
	}
	for _, T := range []float64{math.NaN(), 0, 324} {
		_, err := o.WeldZone(T)
		checktest.Refused(t, "zone", err, "own values hold")
		_, err = o.TestedZone(T, pulled(200, 350))
		checktest.Refused(t, "zone of coupons", err, "own values hold")
	}
	hot := pulled(200, 350)
	hot.Temperature = 400
	_, err = o.TestedZone(room, hot)
	checktest.Refused(t, "coupons pulled hot", err, "at the temperature of the coupons")
	// Stated welded values stand where the coupons were pulled without yield.
	o.WeldedYield, o.WeldedUltimate = 180e6, 330e6
	z, err := o.TestedZone(room, pulled(0, 350))
	if err != nil || z.Yield.Value != 180e6 || z.Ultimate.Value != 350e6 {
		t.Errorf("%+v, %v", z, err)
	}
}

// A zone of coupons needs a parent.
func TestTestedZoneWithoutParent(t *testing.T) {
	_, err := material.Query{Alloy: "mithril"}.TestedZone(pulled(200, 300))
	checktest.Refused(t, "unknown alloy", err, "mithril")
}

// Factors that were made without a list of overrides keep one from there on, and the defaults stay.
func TestOverrideOfPlainFactors(t *testing.T) {
	f, _ := material.DefaultFactors(material.Vessel)
	f.Overrides = nil
	if err := f.Override(material.Vessel, "yield_factor", 2, "customer"); err != nil || f.YieldFactor != 2 || f.Overrides["yield_factor"] != "customer" {
		t.Errorf("%+v, %v", f, err)
	}
}

// Stresses whose sum runs over the end of the numbers are no comparison.
func TestStressWithoutEnd(t *testing.T) {
	l := flight245(t)
	j := l.Equivalent(material.Stress{HoopPressure: 1e308, MeridionalPressure: -1e308, PressureLeast: 1})
	checktest.Refused(t, "equivalent", j.Err, "no stress could be formed")
	if use := l.EquivalentUse(material.Stress{HoopPressure: 1e308, MeridionalPressure: -1e308, PressureLeast: 1}); !math.IsNaN(use) {
		t.Errorf("a use of %g", use)
	}
}

// Every rule set has a page: what its allowable is, and each of its factors with a source.
func TestRulePage(t *testing.T) {
	_, all, err := material.RulePage("")
	if err != nil {
		t.Fatal(err)
	}
	for _, rule := range []material.Rule{material.Vessel, material.VesselEU, material.Flight} {
		heading, rows, err := material.RulePage(string(rule))
		if err != nil || len(heading) != 4 || len(rows) >= len(all) {
			t.Fatal(rule, heading, len(rows), err)
		}
		f, _ := material.DefaultFactors(rule)
		text := ""
		for _, r := range rows {
			text += strings.Join(r, " ") + "\n"
		}
		for _, want := range []string{string(rule) + ": ", "allowable ", "yield_factor ", "proof_factor ", "Every factor may be written in [basis]"} {
			if !strings.Contains(text, want) {
				t.Errorf("%s lacks %q", rule, want)
			}
		}
		if strings.Contains(text, "load_yield_factor") != !math.IsNaN(f.LoadYieldFactor) {
			t.Errorf("%s: factors on line loads", rule)
		}
	}
	_, _, err = material.RulePage("boiler")
	checktest.Refused(t, "unknown", err, `unknown rule "boiler"`)
}
