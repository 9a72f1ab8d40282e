package tank

import (
	"slices"
	"strconv"
	"strings"

	"proofsheet/report/unit"
)

func (r *reader) checkSupport() {
	r.orDefault("support.at", &r.t.Support.At, "aft", "nothing was written")
	if r.t.Support.At == "aft" || r.t.Support.At == "forward" {
		r.onlyWith("support.assembly_temperature", "at = \"both\"")
	}
}

func (r *reader) checkProof() {
	p := &r.t.Proof
	r.orDefault("proof.method", &p.Method, "hydrostatic", "nothing was written")
	gas := p.Gas()
	if gas {
		r.orDefault("proof.fluid", &p.Fluid, "nitrogen", "a dry inert gas")
	} else {
		r.orDefault("proof.fluid", &p.Fluid, "water", "nothing was written")
	}
	if r.has("proof.fluid") && p.Fluid != "" && p.Method != "" && slices.Contains(gases, p.Fluid) != gas {
		r.contradict("proof.fluid", "method", "hydrostatic is with a liquid, pneumatic with a gas")
	}
	r.orDefault("proof.orientation", &p.Orientation, "upright", "nothing was written")
	r.orNumber("proof.temperature", &p.Temperature, 288.15, "15 degC", "nothing was written")
	if !r.has("proof.hold") {
		p.Hold = 600
		text, why := "10 min", "common practice"
		if r.t.Basis.Rule == "vessel-eu" {
			p.Hold, text, why = 1800, "30 min", "the European rule, recalled"
		}
		if p.WorkingTime != nil && 2**p.WorkingTime > p.Hold {
			p.Hold, text, why = 2**p.WorkingTime, "twice proof.working_time", "events' rule"
		}
		r.defaulted("proof.hold", text, why)
	}
	r.orNumber("proof.gauge_height", &p.GaugeHeight, 0, "0 m", "at the tank's highest inside point")
}

func (r *reader) checkStock() {
	s := r.t.Stock
	if s == nil {
		return
	}
	slices.Sort(s.Thickness)
	if len(slices.Compact(slices.Clone(s.Thickness))) < len(s.Thickness) {
		r.fault("stock.thickness", "names a wall twice")
	}
}

// scatterRows reads [scatter]: a key of this file and its spread.
func (r *reader) scatterRows(v any, path string) {
	m, ok := v.(map[string]any)
	if !ok {
		r.fault(path, "must be a table; write [scatter]")
		return
	}
	for _, key := range sortedKeys(m) {
		at := join(path, key)
		s, ok := m[key].(string)
		if !ok {
			if _, nested := m[key].(map[string]any); nested {
				r.fault(at, "the key must stand in quotes, as \"cylinder.thickness\" = \"normal 0.05 mm\"")
			} else {
				r.fault(at, "%s is not text; write it as \"normal 0.05 mm\"", show(m[key]))
			}
			continue
		}
		r.t.Scatter = append(r.t.Scatter, Scatter{Key: key})
		row := &r.t.Scatter[len(r.t.Scatter)-1]
		shape, spread, _ := strings.Cut(strings.TrimSpace(s), " ")
		row.Shape = shape
		_, weld := couponKey(key)
		switch {
		case weld || shape == CouponShape:
			r.couponSpread(row, key, spread, at)
		case shape != "normal" && shape != "uniform":
			r.fault(at, "%q must begin with normal or uniform; write it as \"normal 0.05 mm\"", s)
		default:
			r.spread(row, key, strings.TrimSpace(spread), at)
		}
	}
}

// couponSpread reads that a weld scatters as its coupons do.
func (r *reader) couponSpread(row *Scatter, key, rest, at string) {
	name, weld := couponKey(key)
	row.Spread = 1 // the deviate is drawn
	switch _, written := r.t.FindJoint(name); {
	case !weld:
		r.fault(at, "only the weld of a joint scatters as coupons do; write \"joint.NAME.coupons\" = \"coupons\", or \"normal 0.05 mm\" here")
	case row.Shape != CouponShape || rest != "":
		r.fault(at, "how far coupons scatter is in their file; write \"coupons\"")
	case !written:
		r.fault(at, "no [joint.%s] is written in this file", name)
	case !r.has(key):
		r.fault(at, "joint %s has no coupons; write coupons = \"FILE.csv\" in [joint.%s], or leave this line out", name, name)
	}
}

// spread reads how far a number scatters, in the unit of its key.
func (r *reader) spread(row *Scatter, key, text, at string) {
	f, ok := r.t.fieldOf(key)
	var x float64
	var err error
	switch {
	case !ok && r.t.nearKey(key) != "":
		r.fault(at, "is no key of this file; did you mean %s?", r.t.nearKey(key))
		return
	case !ok || !r.has(r.t.internal(key)):
		r.fault(at, "no such value is written in this file; name one that is, as \"cylinder.thickness\"")
		return
	case f.form == formNumber || f.form == formOverride:
		if x, err = strconv.ParseFloat(text, 64); err != nil {
			r.fault(at, "%q is not a bare number; write it as \"%s 0.01\"", text, row.Shape)
			return
		}
	case f.form != formQuantity:
		r.fault(at, "is no number; only numbers scatter")
		return
	case f.unit == unit.Temperature && !strings.HasSuffix(text, " K"):
		r.fault(at, "a spread of temperature is written in K, as \"%s 2 K\"", row.Shape)
		return
	default:
		if x, err = unit.Parse(f.unit, text); err != nil {
			r.fault(at, "%v", err)
			return
		}
	}
	if !(x > 0 && x < 1e30) {
		r.fault(at, "the spread must be greater than zero")
		return
	}
	row.Spread = x
}

// checkScatter orders the rows by key, so that a study draws them the same way.
func (r *reader) checkScatter() {
	slices.SortFunc(r.t.Scatter, func(a, b Scatter) int { return strings.Compare(a.Key, b.Key) })
}

// nearKey returns the key meant by one whose last word is a near miss.
func (t *Tank) nearKey(key string) string {
	i := strings.LastIndexByte(key, '.')
	table, ok := t.tableOf(key[:max(i, 0)])
	if near := nearKey(key[i+1:], table); ok && near != "" {
		return key[:i+1] + near
	}
	return ""
}

// tableOf returns the fields of a table by its path.
func (t *Tank) tableOf(path string) ([]field, bool) {
	fields, parts := root, strings.Split(path, ".")
	for i := 0; i < len(parts); i++ {
		f, ok := find(fields, parts[i])
		if !ok {
			return nil, false
		}
		fields = f.fields
		if f.form == formNamed || f.form == formTables {
			i++ // the name of the element
		}
	}
	return fields, true
}

// fieldOf returns the row of a key as the user writes it, "port.fill.radius".
func (t *Tank) fieldOf(key string) (field, bool) {
	fields, at := root, field{}
	parts := strings.Split(key, ".")
	for i := 0; i < len(parts); i++ {
		f, ok := find(fields, parts[i])
		if !ok {
			return field{}, false
		}
		at, fields = f, f.fields
		if f.form == formNamed || f.form == formTables {
			i++ // the name of the element
		}
	}
	return at, at.form != formTable && at.form != formNamed && at.form != formTables && at.key != ""
}
