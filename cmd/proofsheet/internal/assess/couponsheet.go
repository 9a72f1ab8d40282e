package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material/weld"
	"proofsheet/report"
	"proofsheet/report/check"
)

// toleranceSource is where the factor k comes from, and the test of normality
// that the limit leans on.
var toleranceSource = check.Source{Doc: "one-sided tolerance limit, exact noncentral t, confidence 95 %; normality by Anderson-Darling in Stephens' form", How: check.Memory}

// couponSheet returns what the sheet shows of the coupons of a joint, nil where
// it has none.
func (r *run) couponSheet(j *tank.Joint) *report.CouponSheet {
	c := r.metals.coupons(j.Name)
	if c == nil {
		return nil
	}
	s := &report.CouponSheet{File: j.Coupons, Said: c.said(), Ratios: r.couponRatios(c), Notes: append(c.notes(), r.couponUse(c)...)}
	for _, row := range j.CouponRows {
		kind, yield := "weld", math.NaN()
		if row.Parent {
			kind = "parent"
		}
		if row.Yield != nil {
			yield = *row.Yield
		}
		s.Rows = append(s.Rows, report.CouponRow{Name: row.Name, Kind: kind, Failure: row.Failure, Ultimate: row.Ultimate, Yield: yield})
	}
	s.Limits = append(s.Limits, limitRow("ultimate", c.ultimate, c.ultimateErr, c.weld))
	if c.measured {
		s.Limits = append(s.Limits, limitRow("yield", c.yield, c.yieldErr, c.withYield()))
	}
	return s
}

// withYield returns the weld coupons on which yield was measured.
func (c *couponSet) withYield() (out []tank.Coupon) {
	for _, row := range c.weld {
		if row.Yield != nil {
			out = append(out, row)
		}
	}
	return out
}

// limitRow returns one strength of a set for the sheet; of are its coupons.
func limitRow(name string, s weld.Sample, err error, of []tank.Coupon) report.CouponLimit {
	l := report.CouponLimit{Name: name, Basis: s.Basis, N: len(of), Mean: s.Mean, Deviation: s.Deviation, Factor: s.Factor, Limit: s.Limit, Source: toleranceSource}
	if err != nil {
		l.Refused = err.Error()
	}
	if s.Outlier.Limit == 0 { // nothing was computed
		return l
	}
	verdict := "not rejected"
	if s.Normality.Rejected {
		verdict = "REJECTED"
	}
	l.Normality = fmt.Sprintf("A² %.4f, modified %.4f, 5 %% point 0.752: %s", s.Normality.Statistic, s.Normality.Modified, verdict)
	if s.Lowest {
		l.Normality += "; the limit is the lowest coupon"
	}
	row := of[s.Outlier.Index]
	l.Outlier = fmt.Sprintf("%s, %.2f s from the mean, usual up to %.2f", couponName(row), s.Outlier.Distance, s.Outlier.Limit)
	if s.Outlier.Is {
		l.Outlier += ": OUTLIER"
	}
	return l
}

// couponName names a coupon, by its line where it has no name.
func couponName(c tank.Coupon) string {
	if c.Name != "" {
		return "coupon " + c.Name
	}
	return fmt.Sprintf("the coupon of line %d", c.Line)
}

// said returns what the file says of all weld coupons, and what it does not.
func (c *couponSet) said() string {
	first := c.weld[0]
	var known, missing []string
	for _, name := range []string{"process", "filler", "bead", "plate", "welder"} {
		if v := first.Said[name]; v != "" {
			known = append(known, name+" "+v)
		} else {
			missing = append(missing, name)
		}
	}
	for _, q := range []struct {
		name  string
		value *float64
	}{{"thickness", first.Thickness}, {"gauge length", first.GaugeLength}} {
		if q.value != nil {
			known = append(known, fmt.Sprintf("%s %.4g mm", q.name, *q.value*1e3))
		} else {
			missing = append(missing, q.name)
		}
	}
	if c.told {
		known = append(known, fmt.Sprintf("pulled at %.4g °C", c.temperature-273.15))
	} else {
		missing = append(missing, "temperature (20 °C taken)")
	}
	text := "Stated: nothing"
	if known != nil {
		text = "Stated: " + strings.Join(known, ", ")
	}
	if missing != nil {
		text += ". Not stated: " + strings.Join(missing, ", ")
	}
	return text
}

// notes returns what the reader must know of the set.
func (c *couponSet) notes() (out []string) {
	seen := map[string]bool{}
	add := func(format string, args ...any) {
		if s := fmt.Sprintf(format, args...); !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	add("a plate limit: coupons of one plate, one welder and one day speak for that plate, welder and day; the tank's weld is like them only by its examination")
	if !c.measured {
		add("yield was not measured: the published yield of the weld zone stays, and without one the weld is not assessed")
	}
	for _, text := range c.warnings() {
		add("%s", text)
	}
	for _, x := range c.sets() {
		for _, text := range x.s.Cautions {
			add("%s: %s", x.name, text)
		}
		if x.s.Limit > 0 && x.s.Limit < 0.5*x.s.Mean {
			add("%s: the limit is under half of the mean: the scatter is large or the coupons are few; more coupons raise it", x.name)
		}
	}
	if n := len(c.withYield()); c.measured && n < len(c.weld) {
		add("yield was measured on %d of %d coupons only", n, len(c.weld))
	}
	for _, row := range c.weld {
		if strings.Contains(strings.ToLower(row.Failure), "grip") {
			add("%s broke in the grips: it showed less than its weld can bear, and stays", couponName(row))
		}
	}
	return out
}

// A strengthSet is one strength of a set of coupons.
type strengthSet struct {
	name string
	s    weld.Sample
	of   []tank.Coupon
}

// sets returns the strengths that were measured.
func (c *couponSet) sets() []strengthSet {
	out := []strengthSet{{"ultimate", c.ultimate, c.weld}}
	if c.measured {
		out = append(out, strengthSet{"yield", c.yield, c.withYield()})
	}
	return out
}

// warnings returns what must stand on page 1 of a set: very few coupons, outliers,
// and a yield that is not the weld's own.
func (c *couponSet) warnings() (out []string) {
	if c.thickness == 0 {
		out = append(out, "how thick the coupons are is not stated; they are taken as cut from this wall, and speak for half to twice their thickness: write thickness [mm]")
	}
	switch {
	case c.measured && c.gauge == 0:
		out = append(out, "yield: over what gauge it was measured is not stated; it is taken as that of the weld alone, which holds up to 50 mm: write gauge_length [mm]")
	case !c.longGauge():
	default:
		out = append(out, fmt.Sprintf("yield: measured over %.4g mm, weld and parent together, so that it may lower that of the tables and never raises it; measure over at most 50 mm", c.gauge*1e3))
	}
	for _, x := range c.sets() {
		if x.s.Outlier.Is {
			side := "high"
			if x.s.Outlier.Low {
				side = "low"
			}
			out = append(out, fmt.Sprintf("%s: %s is an outlier on the %s side; find out why. It stays in the set", x.name, couponName(x.of[x.s.Outlier.Index]), side))
		}
		if x.s.N < weld.FewCoupons {
			out = append(out, fmt.Sprintf("%s: only %d coupons; the factor is very large and a single coupon moves the limit far. %d or more are practice", x.name, x.s.N, weld.FewCoupons))
		}
	}
	return out
}

// partMaterials returns the walls that the joint's weld meets, one for each
// material and thickness.
func (r *run) partMaterials(c *couponSet) (out []use) {
	for _, u := range r.uses() {
		mine := slices.Contains(u.welds.names(), c.joint.Name)
		same := slices.ContainsFunc(out, func(o use) bool { return o.material == u.material && o.thickness == u.thickness })
		if mine && !same {
			out = append(out, u)
		}
	}
	return out
}

// couponUse says where the set may not fit the walls that it speaks for.
func (r *run) couponUse(c *couponSet) (out []string) {
	alloys := map[string]bool{}
	for _, u := range r.partMaterials(c) {
		m, _ := r.t.FindMaterial(u.material)
		alloys[m.Alloy+m.Family] = true
		if math.Abs(u.thickness/c.thickness-1) > 0.1 {
			out = append(out, fmt.Sprintf("coupons %.4g mm thick stand for the %.4g mm of %s", c.thickness*1e3, u.thickness*1e3, u.part))
		}
	}
	if len(alloys) > 1 {
		out = append(out, "the joint meets more than one alloy: coupons of one pair do not speak for another; give each its own joint")
	}
	if len(alloys) == 0 {
		out = append(out, "the joint is not used by cylinder, heads or ports")
	}
	return out
}

// couponQuantities returns the limits of every joint with coupons by name.
func (r *run) couponQuantities() (out []report.NamedQuantity) {
	for _, j := range r.t.Joint {
		c := r.metals.coupons(j.Name)
		if c == nil {
			continue
		}
		at, note := "joint."+j.Name+".", fmt.Sprintf("%s basis of %d coupons", c.basis, len(c.weld))
		if err := c.err(); err != nil {
			note += "; not used: " + err.Error()
		}
		add := func(key string, s weld.Sample) {
			out = append(out, report.NamedQuantity{Key: at + key + "_mean", Value: s.Mean, Unit: "Pa"}, report.NamedQuantity{Key: at + key + "_deviation", Value: s.Deviation, Unit: "Pa"},
				report.NamedQuantity{Key: at + key + "_limit", Value: s.Limit, Unit: "Pa", Note: note})
		}
		add("coupon_ultimate", c.ultimate)
		if c.measured {
			add("coupon_yield", c.yield)
		}
	}
	return out
}

// couponCautions returns what stands on page 1 of coupons.
func (r *run) couponCautions() (out []string) {
	for _, j := range r.t.Joint {
		c := r.metals.coupons(j.Name)
		if c == nil {
			continue
		}
		out = append(out, fmt.Sprintf("Joint %s leans on %d coupons (%s basis): they speak for the plate, welder and day they came from, and its examination must show that the tank's weld is like them.", j.Name, len(c.weld), c.basis))
		if err := c.err(); err != nil {
			out = append(out, fmt.Sprintf("The coupons of joint %s give no limit that may be used: %v.", j.Name, err))
		}
		for _, text := range c.warnings() {
			out = append(out, "Joint "+j.Name+", "+text+".")
		}
	}
	return out
}

// couponBasisRows prints a basis that is not the default.
func (r *run) couponBasisRows() (out []report.BasisRow) {
	add := func(name string) {
		o := override{key: "coupon_basis", source: sourceOf(r.t.Basis, "coupon_basis")}
		out = append(out, report.BasisRow{Name: name, Value: weld.BasisB, Override: true, Instead: weld.BasisA, Source: overrideSource(o)})
	}
	if r.t.Basis.CouponBasis == weld.BasisB {
		add("coupon_basis")
	}
	for _, j := range r.t.Joint {
		if j.CouponBasis == weld.BasisB {
			add("joint." + j.Name + ".coupon_basis")
		}
	}
	return out
}
