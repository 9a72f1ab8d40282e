package weld

import (
	"math"
	"slices"

	"proofsheet/report/check"
)

// A Kind is one kind of joint, a row of the table.
type Kind struct {
	Name             string  // as in the tank file
	Letter           string  // type number of the table
	Limits           string  // limits of use, in words
	Full, Spot, None float64 // efficiency by examination [-]; NaN: no credit, None counts
	Source           check.Source
}

// Names of the kinds, as in the tank file.
const (
	DoubleButt  = "double butt"
	RootSeen    = "single butt, root seen"
	BackedButt  = "single butt with backing"
	SingleButt  = "single butt"
	DoubleLap   = "double lap"
	PluggedLap  = "single lap with plugs"
	SingleLap   = "single lap"
	millimetres = 1e-3 // [m]
)

// uw12 is the table the efficiencies come from.
var uw12 = check.Source{Doc: "ASME BPVC VIII-1 (2013 and 2019 copies)", Where: "Table UW-12", How: check.Read}

// rootPractice is for a one-sided weld taken as a two-sided one.
var rootPractice = check.Source{Doc: "ASME BPVC VIII-1", Where: "Table UW-12 type 1 and UW-35: other means giving equal quality inside and outside", How: check.Read}

// Kinds returns all kinds of joint in the order of the table.
func Kinds() []Kind { return slices.Clone(kinds) }

// noCredit marks an examination that a kind gets nothing for.
var noCredit = math.NaN()

var kinds = []Kind{
	{DoubleButt, "1", "none", 1.00, 0.85, 0.70, uw12},
	{RootSeen, "1", "root purged, fully penetrated and examined over its whole length, said in root; without it as single butt", 1.00, 0.85, 0.70, rootPractice},
	{BackedButt, "2", "none", 0.90, 0.80, 0.65, uw12},
	{SingleButt, "3", "circumferential only, wall up to 16 mm, outside diameter up to 600 mm, not for tubes", noCredit, noCredit, 0.60, uw12},
	{DoubleLap, "4", "longitudinal up to 10 mm; circumferential up to 16 mm, not for a hemisphere", noCredit, noCredit, 0.55, uw12},
	{PluggedLap, "5", "head up to 600 mm outside diameter to shell up to 13 mm, not for a hemisphere", noCredit, noCredit, 0.50, uw12},
	{SingleLap, "6", "head convex to pressure to shell up to 16 mm; or head up to 600 mm outside diameter and 6 mm", noCredit, noCredit, 0.45, uw12},
}

// find returns the kind of that name.
func find(name string) (Kind, bool) {
	for _, k := range kinds {
		if k.Name == name {
			return k, true
		}
	}
	return Kind{}, false
}
