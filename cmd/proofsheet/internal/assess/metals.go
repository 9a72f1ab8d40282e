package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material"
)

// metals resolves the named materials of the tank and remembers what it found.
type metals struct {
	t      *tank.Tank
	found  map[metalKey]metal
	pulled map[string]*couponSet // by joint
	cold   map[coldWall]bool     // walls that may count on strength in the cold
}

type metalKey struct {
	name         string
	welds        welds
	thickness, T float64 // [m], [K]
}

// A metal is one material at one thickness and temperature. An error goes with
// properties that must not be used.
type metal struct {
	parent, zone       material.Properties
	parentErr, zoneErr error
}

func newMetals(t *tank.Tank) metals {
	return metals{t: t, found: map[metalKey]metal{}, pulled: map[string]*couponSet{}}
}

// at returns the named material at the thickness [m] and temperature T [K],
// with the zone that the welds make of it.
func (ms metals) at(name string, w welds, thickness, T float64) metal {
	key := metalKey{name, w, thickness, T}
	if m, ok := ms.found[key]; ok {
		return m
	}
	m := ms.resolve(key)
	ms.found[key] = m
	return m
}

func (ms metals) resolve(k metalKey) (m metal) {
	in, ok := ms.t.FindMaterial(k.name)
	if !ok {
		err := fmt.Errorf("material %q is not in the tank file", k.name)
		return metal{parentErr: err, zoneErr: err}
	}
	q := material.Query{Alloy: in.Alloy, Spec: in.Spec, Product: in.Product, Thickness: k.thickness,
		Tube: ms.tube(k.name, k.thickness), Temperature: k.T, ColdStrength: in.ColdStrength && ms.cold[coldWall{k.name, k.thickness, k.T}]}
	if in.Own() {
		m.parent, m.parentErr = ownOf(in).Parent(k.T)
	} else {
		m.parent, m.parentErr = q.Parent()
	}
	m.zone, m.zoneErr = ms.zoneOf(in, q, k.welds)
	return m
}

// tube reports whether a material is a tube without a welded seam where it has that
// thickness [m]. Plate of the same name and thickness has the weaker of both.
func (ms metals) tube(name string, thickness float64) bool {
	if c := ms.t.Cylinder; c.LongSeam == "none" && c.Material == name && c.Thickness == thickness {
		return true
	}
	for _, p := range ms.t.Port {
		if in := p.Tube; in.Material == name && in.Wall == thickness && (in.Seam == "none" || in.Seam == "") {
			return true
		}
	}
	return false
}

// ownOf returns the user's own values as the material room wants them.
func ownOf(in tank.Material) material.Own {
	v := func(p *float64) float64 {
		if p == nil {
			return math.NaN()
		}
		return *p
	}
	return material.Own{Family: in.Family, Source: in.Source, Yield: v(in.Yield), Ultimate: v(in.Ultimate),
		ElasticModulus: v(in.ElasticModulus), Poisson: v(in.Poisson), Density: v(in.Density),
		Expansion: v(in.Expansion), Elongation: v(in.Elongation), Allowable: v(in.Allowable),
		WeldedYield: v(in.WeldedYield), WeldedUltimate: v(in.WeldedUltimate)}
}

// An allowance is what a rule allows on a wall: away from welds, in the zone of
// a weld, and normal to a seam before its efficiency.
type allowance struct {
	parent, zone, seam material.Limits
	parentErr, zoneErr error
}

// allow returns what the rule of the case allows on the wall, where those welds
// meet it.
func (m *model) allow(p part, w welds, c *loadCase) allowance {
	return m.allowAt(p.material, w, p.nominal, c.temperature, c.rule, p.refused)
}

// allowAt returns what a rule allows on a material of a thickness [m] at T [K],
// remembered.
func (m *model) allowAt(name string, w welds, thickness, T float64, rule material.Rule, refused error) allowance {
	if refused != nil {
		return allowance{parentErr: refused, zoneErr: refused}
	}
	return once(m.known.allowances, allowanceKey{name, w, thickness, ruleAt{rule, T}}, func() allowance {
		return m.findAllowance(name, w, thickness, T, rule)
	})
}

// findAllowance finds it.
func (m *model) findAllowance(name string, w welds, thickness, T float64, rule material.Rule) (a allowance) {
	f, err := m.factors(rule)
	if err != nil {
		return allowance{parentErr: err, zoneErr: err}
	}
	props := m.metals.at(name, w, thickness, T)
	o := material.LimitOptions{Group4: m.group4}
	a.parentErr, a.zoneErr = props.parentErr, props.zoneErr
	if a.parentErr == nil {
		o.AllowableCap = props.parent.Allowable
		a.parent, a.parentErr = props.parent.Limits(rule, f, o)
	}
	if a.zoneErr == nil {
		a.zone, a.zoneErr = props.zone.Limits(rule, f, o)
	}
	if a.parentErr != nil || a.zoneErr != nil {
		a.zoneErr = errors.Join(a.parentErr, a.zoneErr)
		return a
	}
	a.seam, a.zoneErr = a.parent.Lower(a.zone)
	return a
}

// factors returns the factors of a rule with the overrides of [basis], which
// hold for the rule they were written under and, for people near, for the
// vessel rule that stands in for flight.
func (m *model) factors(rule material.Rule) (material.Factors, error) {
	f, err := material.DefaultFactors(rule)
	if err != nil {
		return f, err
	}
	if string(rule) != m.t.Basis.Rule {
		return f, nil
	}
	for _, o := range overrides(m.t.Basis) {
		if o.key == "austenitic_90" {
			f.Austenitic90 = true
			f.Overrides[o.key] = o.source
			continue
		}
		if err := f.Override(rule, o.key, o.value, o.source); err != nil {
			return f, err
		}
	}
	return f, nil
}

// An override is one factor of [basis] written in place of the rule's own.
type override struct {
	key    string
	value  float64 // [-]
	source string
}

// overrides lists what [basis] writes, in the order of its keys.
func overrides(b tank.Basis) (out []override) {
	for _, o := range []struct {
		key   string
		value *float64 // [-]
	}{
		{"yield_factor", b.YieldFactor}, {"ultimate_factor", b.UltimateFactor},
		{"load_yield_factor", b.LoadYieldFactor}, {"load_ultimate_factor", b.LoadUltimateFactor},
		{"buckling_factor", b.BucklingFactor}, {"proof_factor", b.ProofFactor},
		{"burst_factor", b.BurstFactor}, {"proof_limit", b.ProofLimit},
	} {
		if o.value != nil {
			out = append(out, override{o.key, *o.value, sourceOf(b, o.key)})
		}
	}
	if b.Austenitic90 != nil && *b.Austenitic90 {
		out = append(out, override{"austenitic_90", 1, sourceOf(b, "austenitic_90")})
	}
	return out
}

func sourceOf(b tank.Basis, key string) string {
	if s := b.Sources[key]; s != "" {
		return s
	}
	return b.Source
}
