package weld_test

import (
	"math"
	"testing"

	"proofsheet/material/weld"
	"proofsheet/report/check/checktest"
)

// An examination that is none gives no factor; a ratio of means is one.
func TestInspectionRefused(t *testing.T) {
	e, _, err := weld.Joint{Kind: weld.DoubleButt, Examination: "looked at"}.Inspection()
	if err == nil || !math.IsNaN(e) {
		t.Errorf("%g, %v", e, err)
	}
	checktest.Close(t, "ratio", weld.DescriptiveRatio(weld.Sample{Mean: 240e6}, weld.Sample{Mean: 320e6}), 0.75, 1e-12)
}
