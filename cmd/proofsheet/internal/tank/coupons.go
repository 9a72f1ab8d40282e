package tank

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/report/unit"
)

// couponColumns are the numbers of a coupon file: strengths, or loads with the
// section they pulled.
var couponColumns = []column{
	{"ultimate", false, unit.Pressure, positive},
	{"yield", false, unit.Pressure, positive},
	{"load", false, unit.Force, positive},
	{"yield_load", false, unit.Force, positive},
	{"width", false, unit.Length, positive},
	{"thickness", false, unit.Length, positive},
	{"gauge_length", false, unit.Length, positive},
	{"temperature", false, unit.Temperature, positive},
}

// couponKeeps are the words that must be the same on every weld coupon of one
// set.
var couponKeeps = []string{"process", "filler", "bead", "plate", "welder"}

// leastCoupons is the smallest set of weld coupons that is read.
const leastCoupons = 3

// readCoupons reads a file of coupon tests.
func (r *reader) readCoupons(table string, j *Joint) {
	if !r.tableNamed(join(table, "coupons"), j.Coupons) {
		return
	}
	s, ok := r.readTable(join(table, "coupons"), j.Coupons)
	if !ok {
		return
	}
	s.texts = append([]string{"coupon", "kind", "failure"}, couponKeeps...)
	s.gaps = []string{"yield", "yield_load"}
	before := len(r.faults)
	s.match(couponColumns, nil)
	if !s.couponHeadings() || len(r.faults) > before {
		return
	}
	for i := range s.rows {
		if c, ok := s.coupon(i); ok {
			j.CouponRows = append(j.CouponRows, c)
		}
	}
	s.couponSet(j)
}

// couponHeadings checks that the columns suffice and do not contradict.
func (s *sheet) couponHeadings() bool {
	ok := true
	wrong := func(format string, args ...any) {
		s.fault(0, 0, format, args...)
		ok = false
	}
	for _, pair := range [][2]string{{"ultimate", "load"}, {"yield", "yield_load"}} {
		if s.has(pair[0]) && s.has(pair[1]) {
			wrong("has the columns %s and %s, which contradict each other; leave one out", pair[0], pair[1])
		}
	}
	if !s.has("ultimate") && !s.has("load") {
		if !s.offered["ultimate"] && !s.offered["load"] {
			wrong("has no column ultimate; write ultimate [MPa], or load [kN] with width [mm] and thickness [mm]")
		}
		return false
	}
	for _, name := range []string{"width", "thickness"} {
		if loads := s.has("load") || s.has("yield_load"); loads && !s.has(name) && !s.offered[name] {
			wrong("has loads but no column %s; write %s [mm]", name, name)
		}
	}
	return ok
}

// coupon reads one row.
func (s *sheet) coupon(row int) (Coupon, bool) {
	before := len(s.r.faults)
	c := Coupon{Name: s.words(row, "coupon"), Failure: s.words(row, "failure"), Line: s.lines[row], Said: map[string]string{}}
	switch kind := s.words(row, "kind"); kind {
	case "", "weld":
	case "parent":
		c.Parent = true
	default:
		s.fault(c.Line, s.columns[row][s.at["kind"]], "kind: %q must be weld or parent", kind)
	}
	for _, name := range couponKeeps {
		if w := s.words(row, name); w != "" {
			c.Said[name] = w
		}
	}
	ultimate, load := s.number(row, "ultimate"), s.number(row, "load")
	yield, yieldLoad := s.number(row, "yield"), s.number(row, "yield_load")
	width := s.number(row, "width")
	c.Thickness, c.GaugeLength, c.Temperature = s.number(row, "thickness"), s.number(row, "gauge_length"), s.number(row, "temperature")
	c.Yield = yield
	if width != nil && c.Thickness != nil {
		ultimate, c.Yield = stress(ultimate, load, *width**c.Thickness), stress(yield, yieldLoad, *width**c.Thickness)
	}
	if ultimate == nil {
		return c, false
	}
	c.Ultimate = *ultimate
	if !(c.Ultimate > 0) || math.IsInf(c.Ultimate, 0) || c.Yield != nil && !(*c.Yield > 0) {
		s.fault(c.Line, s.column(row, "load", "ultimate"), "load over width and thickness is no strength; look at the units of the headings")
		return c, false
	}
	if c.Yield != nil && *c.Yield > c.Ultimate {
		s.fault(c.Line, s.column(row, "yield", "yield_load"), "yield is above the ultimate of the same coupon; look for swapped columns")
	}
	return c, len(s.r.faults) == before
}

// stress returns a strength as written, or from a load over the section [m2].
func stress(written, load *float64, section float64) *float64 {
	if written != nil || load == nil {
		return written
	}
	v := *load / section
	return &v
}

// couponSet asks whether the weld coupons are one set: enough of them, each
// once, and of one sort.
func (s *sheet) couponSet(j *Joint) {
	count, first := 0, -1
	for i := range s.rows {
		if s.words(i, "kind") != "parent" {
			count++
		}
	}
	if count < leastCoupons {
		what := "coupon"
		if count < len(s.rows) {
			what = "weld coupon"
		}
		s.fault(0, 0, "holds %s; a basis needs at least 3", plural(count, what))
	}
	seen := map[string]int{}
	for i, c := range j.CouponRows {
		at := func(name string) int { return s.columns[slices.Index(s.lines, c.Line)][s.at[name]] }
		key := fmt.Sprint(c.Parent, c.Name)
		if line, twice := seen[key]; twice && c.Name != "" {
			s.fault(c.Line, at("coupon"), "coupon %q stands in line %d too; give each coupon a name of its own", c.Name, line)
		}
		seen[key] = c.Line
		if c.Parent {
			continue
		}
		if first < 0 {
			first = i
			s.couponProcess(j, c, at)
			continue
		}
		s.mixed(j.CouponRows[first], c, at)
	}
}

// couponProcess refuses coupons welded otherwise than the joint.
func (s *sheet) couponProcess(j *Joint, c Coupon, at func(string) int) {
	if p := c.Said["process"]; p != "" && j.Process != "" && !strings.EqualFold(p, j.Process) {
		s.fault(c.Line, at("process"), "process %q where the joint %s is welded by %q; pull coupons of the joint's own process", p, j.Name, j.Process)
	}
}

// How far the coupons of one set may differ from the first: practice.
const (
	mixedThickness   = 0.10 // share of it [-]
	mixedGauge       = 0.01 // share of it [-]
	mixedTemperature = 5    // [K]
)

// mixed refuses a coupon that is not of the sort of the first.
func (s *sheet) mixed(a, b Coupon, at func(string) int) {
	refuse := func(name string) {
		s.fault(b.Line, at(name), "%s %q where line %d has %q; one set is of one sort: give the others a joint and a file of their own",
			name, s.words(slices.Index(s.lines, b.Line), name), a.Line, s.words(slices.Index(s.lines, a.Line), name))
	}
	for _, name := range couponKeeps {
		if !strings.EqualFold(a.Said[name], b.Said[name]) {
			refuse(name)
		}
	}
	for _, q := range []struct {
		name string
		a, b *float64 // in SI
		most float64  // difference in SI
	}{
		{"thickness", a.Thickness, b.Thickness, mixedThickness * orZero(a.Thickness)},
		{"gauge_length", a.GaugeLength, b.GaugeLength, mixedGauge * orZero(a.GaugeLength)},
		{"temperature", a.Temperature, b.Temperature, mixedTemperature},
	} {
		if q.a != nil && q.b != nil && math.Abs(*q.a-*q.b) > q.most*(1+1e-9) {
			refuse(q.name)
		}
	}
}
