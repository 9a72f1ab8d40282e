package report_test

import (
	"fmt"

	"proofsheet/report"
	"proofsheet/report/check"
)

// A demand is rounded up and a capacity down, so that the sheet never looks
// better than its numbers.
func ExampleShowPair() {
	demand, capacity := report.ShowPair(check.Pa("σ_h", "hoop stress", 92.891e6), check.Pa("S", "allowable", 96.309e6), "si")
	fmt.Println(demand, "against", capacity)
	// Output: 92.90 MPa against 96.30 MPa
}

func ExampleMargin() {
	r := check.Result{Demand: check.Pa("σ", "stress", 100e6), Capacity: check.Pa("S", "allowable", 99.6e6), Factor: 1}
	fmt.Println(report.Margin(r), r.Status())
	// Output: -0.01 not satisfied
}
