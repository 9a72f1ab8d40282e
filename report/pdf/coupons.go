package pdf

import (
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/check"
)

// coupons prints the tensile coupons of a joint: what was measured, the limits
// drawn from it, the plot, and what they do not show.
func (p *paper) coupons(j report.JointSheet) {
	c := j.Coupons
	p.heading("Coupons of joint "+j.Name+": "+c.File, 40)
	p.paragraph(sentence(c.Said) + " The limit is mean − k s, with 95 % confidence below the strength of 99 % (A) or 90 % (B) of such welds.")
	p.y += 1
	p.table([]column{{"strength", 1, false, false}, {"n", 0.4, true, false}, {"mean", 1, true, false}, {"s (n − 1)", 0.9, true, false}, {"k", 0.7, true, false},
		{"limit", 1.1, true, false}, {"normality (Anderson-Darling)", 2.3, false, false}, {"farthest coupon", 2.3, false, false}}, p.couponLimits(c), 0)
	p.figure(couponFigure(j, p.sheet.Units, p.inner(), 66))
	var rows [][]cell
	for _, r := range c.Rows {
		rows = append(rows, plain(orDash(r.Name), r.Kind, p.strength(r.Ultimate), p.strength(r.Yield), orDash(r.Failure)))
	}
	p.table([]column{{"coupon", 1, false, false}, {"kind", 1, false, false}, {"ultimate", 1, true, false}, {"yield", 1, true, false}, {"broke in", 1.5, false, false}}, rows, 0)
	if len(c.Ratios) > 0 {
		p.heading("Efficiencies from coupons, for display", 15)
		rows = nil
		for _, v := range c.Ratios {
			value := report.Show(v.Quantity, p.sheet.Units, report.Nearest)
			if v.Quantity.Unit == "1" && !math.IsNaN(v.Quantity.Value) {
				value = report.Number(v.Quantity.Value, 3, report.Down)
			}
			rows = append(rows, plain(v.Quantity.Name, value, provenance(v.Source), v.Note))
		}
		p.table([]column{{"number", 2.2, false, false}, {"value", 0.8, true, false}, {"source (how)", 2, false, false}, {"use", 2.4, false, false}}, rows, 0)
	}
	p.list(c.Notes, small)
}

func (p *paper) couponLimits(c *report.CouponSheet) (rows [][]cell) {
	for _, l := range c.Limits {
		factor := "–"
		if l.Factor > 0 {
			factor = report.Number(l.Factor, 5, report.Up)
		}
		unit := report.DisplayUnit("Pa", l.Mean, p.sheet.Units)
		limit := l.Basis + ": " + fourDigits(l.Limit, unit, report.Down)
		outlier := l.Outlier
		if l.Refused != "" {
			limit += ", NOT USED"
			outlier += ". Not used: " + l.Refused
		}
		row := plain(l.Name, fmt.Sprint(l.N), fourDigits(l.Mean, unit, report.Nearest), fourDigits(l.Deviation, unit, report.Nearest), factor, limit, l.Normality, outlier)
		row[5].bold = true
		rows = append(rows, row)
	}
	return rows
}

// strength prints a strength v [Pa], a dash where it was not measured.
func (p *paper) strength(v float64) string {
	if math.IsNaN(v) {
		return "–"
	}
	return report.Show(check.Pa("", "", v), p.sheet.Units, report.Nearest)
}
