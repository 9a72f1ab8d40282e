package report_test

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/report"
	"proofsheet/report/check"
)

// leading returns the number at the start of a shown quantity.
func leading(t *rapid.T, shown string) float64 {
	number, _, _ := strings.Cut(shown, " ")
	v, err := strconv.ParseFloat(number, 64)
	if err != nil {
		t.Fatalf("%q: %v", shown, err)
	}
	return v
}

// TestHandSum redoes p r / t with the numbers as printed, as the person who
// checks the sheet does: the answer is the printed demand, up to one unit of
// its last digit.
func TestHandSum(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := rapid.Float64Range(1e5, 9e6).Draw(t, "p")
		r := rapid.Float64Range(0.02, 2).Draw(t, "r")
		wall := rapid.Float64Range(0.0005, 0.02).Draw(t, "t")
		system := rapid.SampledFrom([]string{"si", "us"}).Draw(t, "system")
		σ := p * r / wall
		by := leading(t, report.Show(check.Pa("", "", p), system, report.Nearest)) *
			leading(t, report.Show(check.M("", "", r), system, report.Nearest)) /
			leading(t, report.Show(check.M("", "", wall), system, report.Nearest))
		unit := report.DisplayUnit("Pa", σ, system)
		by *= report.DisplayUnit("Pa", p, system).Divide / unit.Divide
		printed := leading(t, report.Show(check.Pa("", "", σ), system, report.Up))
		step := math.Pow(10, math.Floor(math.Log10(printed))-3)
		// Six digits of three inputs leave 1.5e-5 of the answer open: 0.15 of a
		// unit in the last of four digits.
		if by > printed+0.15*step || by < printed-1.15*step {
			t.Errorf("by hand %g, printed %g", by, printed)
		}
	})
}
