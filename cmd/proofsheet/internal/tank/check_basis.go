package tank

import (
	"slices"
	"strings"

	"proofsheet/report/unit"
)

// nearWord returns the word meant: the same but for case, or a near miss.
func nearWord(word string, words []string) string {
	for _, w := range words {
		if strings.EqualFold(w, word) {
			return w
		}
	}
	return unit.Near(word, words)
}

func (r *reader) checkSheet() {
	s := &r.t.Sheet
	r.orDefault("sheet.units", &s.Units, "si", "display units")
	r.orDefault("sheet.paper", &s.Paper, "a4", "paper of the sheet")
}

// checkBasis gives each override its source, and refuses one without.
func (r *reader) checkBasis() {
	b := &r.t.Basis
	r.orDefault("basis.rule", &b.Rule, "vessel", "the rule for people near the tank")
	needs := func(key string) {
		path := join("basis", key)
		switch _, own := b.Sources[key]; {
		case !r.has(path) || own:
		case b.Source != "":
			b.setSource(key, b.Source)
		case !r.has(path + ".value"):
			r.fault(path, "is an override and needs source; write source = %q in [basis]", "document and place")
		}
	}
	for _, f := range basisKeys {
		if f.form == formOverride {
			needs(f.key)
		}
	}
	if b.Austenitic90 != nil && *b.Austenitic90 {
		needs("austenitic_90")
	}
	if b.CouponBasis == "B" {
		needs("coupon_basis")
	}
	r.orDefault("basis.coupon_basis", &b.CouponBasis, "A", "lower of the two bases")
}

func (r *reader) checkPressure() {
	p := &r.t.Pressure
	if !r.has("pressure") {
		return
	}
	r.orNumber("pressure.accumulation", &p.Accumulation, 0.10, "0.10", "share of the set pressure, common practice")
	if p.Relief == nil || p.MEOP <= 0 {
		return
	}
	if full := *p.Relief * (1 + p.Accumulation); full > p.MEOP*(1+1e-9) {
		r.fault("pressure.relief", "set pressure with its accumulation is %s, above meop %s; raise meop or lower relief",
			r.bar(full), r.bar(p.MEOP))
	}
}

// bar writes a pressure [Pa] in the unit the user wrote meop in, rounded up.
func (r *reader) bar(p float64) string {
	written, _ := lookUp(r.t.raw, "pressure.meop")
	s, _ := written.(string)
	return unit.Like(unit.Pressure, p, s)
}

func (r *reader) checkContents() {
	const table = "contents"
	c := &r.t.Contents
	if !r.has(table) {
		return
	}
	r.oneOf(table, "write a built-in fluid, or an own density with source", "fluid", "density")
	r.needs(table, "density", "source", `"where the density comes from"`)
	r.needs(table, "coldest", "warmest", `"35 degC"`)
	r.needs(table, "warmest", "coldest", `"5 degC"`)
	both := r.notBoth(table, "temperature", "coldest", "one temperature, or the coldest and the warmest")
	switch {
	case c.Temperature != nil:
		c.Coldest, c.Warmest = *c.Temperature, *c.Temperature
	case !r.has("contents.coldest") && !r.has("contents.warmest") && !r.has("contents.temperature"):
		t := 293.15
		c.Temperature, c.Coldest, c.Warmest = &t, t, t
		r.defaulted("contents.temperature", "20 degC", "nothing was written")
	case both && c.Coldest > 0 && c.Warmest > 0 && c.Coldest > c.Warmest:
		r.fault("contents.coldest", "is warmer than warmest; exchange the two")
	}
	r.orNumber("contents.least_ullage", &c.LeastUllage, 0.03, "0.03", "share of the tank's volume")
}

// ownKeys are the values of an own material.
var ownKeys = []string{
	"family", "yield", "ultimate", "elastic_modulus", "poisson", "density", "expansion",
	"elongation", "allowable", "welded_yield", "welded_ultimate", "source",
}

func (r *reader) checkMaterials() {
	for _, m := range r.t.Material {
		table := join("material", m.Name)
		r.needs(table, "toughness", "toughness_source", `"where the toughness comes from"`)
		r.needs(table, "toughness_most", "toughness", `"60 MPa m^0.5"`)
		r.needs(table, "toughness_source", "toughness", `"60 MPa m^0.5"`)
		r.notAbove(table, "toughness", m.Toughness, "toughness_most", m.ToughnessMost)
		if s := m.StrainLife; s != nil && s.StrengthExponent < 0 && s.DuctilityExponent < 0 && s.DuctilityExponent >= s.StrengthExponent {
			r.fault(join(table, "strain_life.ductility_exponent"), "must be below strength_exponent: the plastic part falls faster")
		}
		if r.has(join(table, "alloy")) {
			for _, k := range ownKeys {
				if r.has(join(table, k)) {
					r.contradict(join(table, k), "alloy", "a built-in alloy brings its values; own values stand without alloy")
				}
			}
			continue
		}
		r.checkOwn(table, m)
	}
}

// checkOwn checks a material of own values.
func (r *reader) checkOwn(table string, m Material) {
	own := slices.ContainsFunc(ownKeys, func(k string) bool { return r.has(join(table, k)) })
	if !own {
		if !misspelt(r, table, materialKeys) {
			r.faultAt(r.where(table, r.at.key), table, "alloy is missing; write alloy = \"304L\", or own values with family and source")
		}
		return
	}
	for _, k := range []string{"family", "yield", "ultimate", "source"} {
		if f, _ := find(materialKeys, k); !r.has(join(table, k)) {
			r.faultAt(r.where(table, r.at.key), join(table, k), "is missing; own values need it: write %s = %s", k, f.example)
		}
	}
	for _, k := range []string{"spec", "product", "cold_strength"} {
		r.onlyWith(join(table, k), "a built-in alloy")
	}
	r.notAbove(table, "yield", m.Yield, "ultimate", m.Ultimate)
	r.notAbove(table, "welded_yield", m.WeldedYield, "yield", m.Yield)
	r.notAbove(table, "welded_ultimate", m.WeldedUltimate, "ultimate", m.Ultimate)
	r.notAbove(table, "welded_yield", m.WeldedYield, "welded_ultimate", m.WeldedUltimate)
}

// misspelt reports whether a table holds a key that no field has.
func misspelt(r *reader, table string, fields []field) bool {
	v, _ := lookUp(r.t.raw, table)
	m, _ := v.(map[string]any)
	for k := range m {
		if _, ok := find(fields, k); !ok {
			return true
		}
	}
	return false
}

// notAbove refuses a value above another one.
func (r *reader) notAbove(table, key string, v *float64, limitKey string, limit *float64) {
	if v != nil && limit != nil && *v > *limit {
		r.fault(join(table, key), "must not be above %s", limitKey)
	}
}

// misaligned checks the shape of a seam that is out of line: a roof at least
// three times as long on each side as high, which is as steep as the formula goes.
func (r *reader) misaligned(table string, j *Joint) {
	if j.Peaking == nil {
		r.onlyWith(join(table, "peaking_length"), "peaking")
		return
	}
	least := 3 * *j.Peaking
	switch {
	case *j.Peaking == 0:
	case j.PeakingLength == nil:
		j.PeakingLength = &least
		r.defaulted(join(table, "peaking_length"), "3 times peaking", "the steepest roof that the formula takes, and the worst")
	case *j.PeakingLength < least*(1-1e-9):
		r.fault(join(table, "peaking_length"), "must be at least three times peaking; a steeper roof has no formula")
	}
}

func (r *reader) checkJoints() {
	for i := range r.t.Joint {
		j := &r.t.Joint[i]
		table := join("joint", j.Name)
		r.orDefault(join(table, "examination"), &j.Examination, "none", "nothing was written")
		r.needs(table, "efficiency", "source", `"who allows it, document and place"`)
		if j.Kind != "" && j.Kind != seenRoot {
			r.onlyWith(join(table, "root"), "kind "+quote(seenRoot))
		}
		r.misaligned(table, j)
		if j.Coupons == "" {
			r.onlyWith(join(table, "coupon_basis"), "coupons")
		} else {
			if j.Efficiency != nil {
				r.fault(join(table, "efficiency"), "and coupons count the weld twice; leave one of them out (with coupons the examination sets the factor)")
			}
			r.readCoupons(table, j)
		}
		if basis := r.t.Basis; j.CouponBasis == "B" && basis.Source == "" && basis.Sources["coupon_basis"] == "" {
			r.fault(join(table, "coupon_basis"), "B is an override and needs source; write source in [basis]")
		}
	}
}

// seenRoot is the one-sided joint that counts as double butt.
const seenRoot = "single butt, root seen"
