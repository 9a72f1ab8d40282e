package assess

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report"
	"proofsheet/report/check"
)

// columnDefaults says what is taken of the column where it is not written.
func (r *run) columnDefaults() (out []report.Row) {
	length, factor, _ := r.column()
	if r.t.Support.ColumnLength == nil {
		out = append(out, report.Row{Name: "support.column_length", Value: fmt.Sprintf("%.4g m", length), Note: "the tank's own overall length; a stack is longer"})
	}
	if r.t.Support.ColumnFactor == nil {
		out = append(out, report.Row{Name: "support.column_factor", Value: fmt.Sprintf("%g", factor), Note: "standing free, held at one end"})
	}
	return out
}

// stabilityQuantities returns what the cylinder bears: from outside, the least of
// all cases, and in compression in each.
func (r *run) stabilityQuantities() (out []report.NamedQuantity) {
	least, note := math.Inf(1), ""
	for _, c := range r.cases {
		p, by := r.externalAllowable(c)
		if math.IsNaN(p) {
			least, note = p, by
			break
		}
		if p < least {
			least, note = p, "case "+c.name+", "+by
		}
	}
	out = append(out, report.NamedQuantity{Key: "cylinder.external_allowable", Value: least, Unit: "Pa", Note: note})
	for _, c := range r.cases {
		n, note := r.compressionAllowable(c.name)
		out = append(out, report.NamedQuantity{Key: "cylinder.compression_allowable@" + c.name, Value: n, Unit: "N/m", Note: note})
	}
	return out
}

// externalAllowable returns the lowest allowable pressure from outside [Pa] with the
// metal of a case and the method it comes from, or NaN and why there is none.
func (r *run) externalAllowable(c *loadCase) (float64, string) {
	st := r.stable(c.rule, c.temperature)
	if st.err != nil {
		return math.NaN(), st.err.Error()
	}
	_, low, err := st.outside.External()
	if err != nil {
		return math.NaN(), err.Error()
	}
	return low.Allowable, low.Name
}

// compressionAllowable returns the line load that the cylinder bears in a case
// [N/m], at the mix of loads of the check, or NaN and why there is none.
func (r *run) compressionAllowable(name string) (float64, string) {
	for _, i := range r.ofCase(name) {
		got := r.checks[i]
		if got.ID != compressionID {
			continue
		}
		switch s := got.Status(); {
		case s != check.Satisfied && s != check.NotSatisfied:
			return math.NaN(), got.Reason()
		case got.Capacity.Unit != "N/m":
			return compressionAlone(got), "in compression alone: the wall is in axial tension"
		}
		return got.Capacity.Value, "at the mix of loads of the case"
	}
	return math.NaN(), "the check was not made"
}

// compressionAlone returns the line load [N/m] that the wall bears in compression
// alone, from the inputs of a check: t times the lower of both methods' stresses.
func compressionAlone(r check.Result) float64 {
	in := map[string]float64{"t": math.NaN(), "σ_c": math.NaN(), "χ σ_y/1.1": math.NaN()}
	for _, q := range r.Inputs {
		if _, ok := in[q.Symbol]; ok {
			in[q.Symbol] = q.Value
		}
	}
	return in["t"] * math.Min(in["σ_c"], in["χ σ_y/1.1"])
}

// stabilityNote says in one line how the tank stands against buckling in a case.
func (r *run) stabilityNote(name string) string {
	var parts []string
	for _, i := range r.ofCase(name) {
		got := &r.checks[i]
		switch _, kind, _ := strings.Cut(got.ID, "/"); kind {
		case "compression", "column", "external":
			if s := got.Status(); s == check.Satisfied || s == check.NotSatisfied {
				parts = append(parts, got.ID+" "+report.Margin(*got))
			} else if s == check.NotAssessed {
				parts = append(parts, got.ID+" not assessed")
			}
		}
	}
	return "margins against buckling: " + strings.Join(parts, ", ")
}

// ofCase returns which checks belong to a case, once all are made.
func (r *run) ofCase(name string) []int {
	if r.byCase == nil {
		r.byCase = map[string][]int{}
		for i := range r.checks {
			c := r.checks[i].Case
			r.byCase[c] = append(r.byCase[c], i)
		}
	}
	return r.byCase[name]
}
