package weld

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

// ZoneWidth returns the width of the weld zone [m] on each side of the weld's
// centre line, for a wall of thickness [m] of one family of metal:
//
//	aluminium, MIG: 20 mm up to 6 mm thick, 30 to 12, 35 to 25, 40 above
//	aluminium, TIG or not stated: 30 mm up to 6 mm, the MIG width + 10 above
//	other metals: the larger of 25.4 mm and three times the thickness
//
// It is for an interpass temperature up to 60 °C; hotter widens it.
//
// Source: EN 1999-1-1 6.1.6.3 (20 and 30 mm read, the other MIG widths
// recalled, thicker TIG practice); other metals: older aluminium practice of
// 1 in or 3 t, taken for them as practice.
func ZoneWidth(process, family string, thickness float64) (float64, check.Source, error) {
	if !(thickness > 0) || math.IsInf(thickness, 0) {
		return math.NaN(), check.Source{}, &check.RangeError{Func: "weld.ZoneWidth", Param: "thickness [m]", Got: thickness, Least: 0, Most: math.Inf(1), Why: "a wall"}
	}
	switch family {
	case "aluminium":
		return aluminiumWidth(process, thickness)
	case "austenitic", "ferritic", "duplex", "titanium":
		return max(25.4*millimetres, 3*thickness), check.Source{Doc: "1 in or three times the thickness", How: check.Practice}, nil
	}
	return math.NaN(), check.Source{}, fmt.Errorf("no weld-zone width for family %q", family)
}

// aluminiumWidth is ZoneWidth for aluminium of thickness t [m], in m.
func aluminiumWidth(process string, t float64) (float64, check.Source, error) {
	source := check.Source{Doc: "EN 1999-1-1", Where: "6.1.6.3", How: check.Memory}
	upTo := func(most float64) bool { return t <= most*millimetres*(1+1e-9) }
	mig := 40.0 // [mm]
	switch {
	case upTo(6):
		mig, source.How = 20, check.Read
	case upTo(12):
		mig = 30
	case upTo(25):
		mig = 35
	}
	switch {
	case process == "mig":
		return mig * millimetres, source, nil
	case process != "tig" && process != "":
		return math.NaN(), check.Source{}, fmt.Errorf("process %q must be tig or mig", process)
	case !upTo(6):
		source.How = check.Practice
	}
	return (mig + 10) * millimetres, source, nil
}
