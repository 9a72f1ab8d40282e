package report

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A CouponSheet is the tensile coupons of one joint and what they show.
type CouponSheet struct {
	File   string
	Said   string // what the file says of all weld coupons: process, thickness, …
	Rows   []CouponRow
	Limits []CouponLimit
	Ratios []ValueRow // efficiencies, for display
	Notes  []string   // cautions of the set
}

// A CouponRow is one coupon.
type CouponRow struct {
	Name, Kind, Failure string
	Ultimate, Yield     float64 // NaN: not measured [Pa]
}

// A CouponLimit is the lower limit of one strength of a set.
type CouponLimit struct {
	Name            string // "ultimate"
	Basis           string // A or B
	N               int
	Mean, Deviation float64 // s, with n − 1 [Pa]
	Factor          float64 // k [-]; NaN: the limit is the lowest coupon, or there is none
	Limit           float64 // as it came out, also where it is not used [Pa]
	Normality       string
	Outlier         string
	Refused         string // why it is not used; "": used
	Source          check.Source
}

// line returns the limit as one line of the text sheet.
func (l CouponLimit) line(joint, system string) string {
	unit := DisplayUnit("Pa", l.Mean, system)
	show := func(v float64, dir Round) string {
		if math.IsNaN(v) {
			return "none"
		}
		return Number(unit.Of(v), 4, dir) + " " + unit.Unit
	}
	text := fmt.Sprintf("coupons of %s, %s: %d, mean %s, s %s", joint, l.Name, l.N, show(l.Mean, Nearest), show(l.Deviation, Nearest))
	if l.Factor > 0 {
		text += ", k " + Number(l.Factor, 5, Up)
	}
	text += fmt.Sprintf(", %s limit %s", l.Basis, show(l.Limit, Down))
	if l.Refused != "" {
		text += ", NOT USED: " + l.Refused
	}
	for _, more := range []string{l.Normality, l.Outlier} {
		if more != "" {
			text += "; " + more
		}
	}
	return text
}
