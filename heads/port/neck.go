package port

import (
	"math"

	"proofsheet/report/check"
)

// pipes is the outside diameter and the standard wall of pipe [in].
//
// Source: ASME B36.10 sizes; ASME VIII-1 table UG-45 is 0.875 of the wall
// (recalled; 3/4 and 4 in read).
var pipes = [...][2]float64{{0.405, 0.068}, {0.540, 0.088}, {0.675, 0.091}, {0.840, 0.109}, {1.050, 0.113}, {1.315, 0.133}, {1.660, 0.140},
	{1.900, 0.145}, {2.375, 0.154}, {2.875, 0.203}, {3.500, 0.216}, {4.000, 0.226}, {4.500, 0.237}, {5.563, 0.258}, {6.625, 0.280},
	{8.625, 0.322}, {10.750, 0.365}, {12.750, 0.375}}

const inch = 0.0254 // [m]

// StandardNeck returns 0.875 of the standard wall [m] of the pipe with this
// outside diameter [m], or of the next larger listed pipe; the largest listed
// wall above 12.75 in. NaN for a diameter that is not a positive number.
func StandardNeck(outsideDiameter float64) float64 {
	if !(outsideDiameter > 0) {
		return math.NaN()
	}
	for _, row := range pipes {
		if outsideDiameter <= 1.002*row[0]*inch { // pipe is also sold by the inch size rounded to 0.1 mm
			return 0.875 * row[1] * inch
		}
	}
	return 0.875 * pipes[len(pipes)-1][1] * inch
}

// fittings is the least wall [mm] of fittings held by a fillet from one side only, to
// NPS 3, against their outside diameter as pipe [in].
//
// Source: ASME VIII-1 table UW-16.1, recalled; NPS 3/4 read in an engineering forum.
var fittings = [...][2]float64{{0.405, 2.7}, {0.540, 2.7}, {0.675, 2.7}, {0.840, 3.6}, {1.050, 4.2}, {1.315, 5.5}, {1.660, 7.5}, {1.900, 7.5},
	{2.375, 7.9}, {2.875, 9.5}, {3.500, 9.5}}

// FilletOnlyNeck returns the least wall [m] of a tube of this outside diameter [m]
// that is held by a fillet from one side only, of the next larger listed size; not
// ok, and NaN, above NPS 3 and for a diameter that is not a positive number.
func FilletOnlyNeck(outsideDiameter float64) (wall float64, ok bool) {
	for _, row := range fittings {
		if outsideDiameter > 0 && outsideDiameter <= 1.002*row[0]*inch {
			return row[1] * 1e-3, true
		}
	}
	return math.NaN(), false
}

// NeckWall returns the least wall of the tube at the vessel [m]:
//
//	t = max(ta, min(tb3, max(tb1, tb2)))
//
// ta is needed for the tube's own pressure, tb1 and tb2 for the wall it stands in
// under internal and external pressure, tb3 is [StandardNeck]; all [m], without
// corrosion.
//
// Source: ASME VIII-1 UG-45, order of choices read in two cases of an engineering forum (neck_test.go).
func NeckWall(ta, tb1, tb2, tb3 float64) float64 {
	return math.Max(ta, math.Min(tb3, math.Max(tb1, tb2)))
}

// CheckNeck is port.NAME/neck: the least tube wall against [NeckWall], ta being
// trn of [Port.Area] with the tube's own seam, p Rn/(Sn Et − 0.6p), and the wall at
// the port not taken under 1/16 in; of a tube held by a fillet from one side only not
// under [FilletOnlyNeck]. Loads from outside are [AreaReport.CheckThrust].
func (r AreaReport) CheckNeck(name string) check.Result {
	id, title := "port."+name+"/neck", "Port "+name+": least tube wall"
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	tb1, tb2 := r.RequiredWall, 0.0
	if r.Load.Convex {
		tb1, tb2 = 0, r.RequiredWall
	}
	tb1 = math.Max(tb1, inch/16)
	tb3 := StandardNeck(r.Port.OutsideDiameter)
	need, note := NeckWall(r.RequiredTube, tb1, tb2, tb3), ""
	if p := r.Port; p.Groove == 0 && !p.FullGroove && !(p.InsideLeg > 0 && p.Fit == Through) {
		if least, ok := FilletOnlyNeck(p.OutsideDiameter); ok && least > need {
			need, note = least, "held by a fillet from one side only: table UW-16.1 (recalled) asks for more than UG-45"
		}
	}
	return check.Result{
		ID: id, Title: title, Formula: "t_n ≥ max(t_a, min(t_b3, max(t_b1, t_b2))); t_a = p R_n/(S_n E_t − 0.6p)",
		Inputs: []check.Quantity{check.Pa("p", "pressure at the port", r.Load.Pressure), check.M("R_n", "tube inside radius", r.Port.OutsideDiameter/2-r.Port.TubeWall),
			check.Pa("S_n", "allowable stress, tube", r.Strengths.Tube), check.Num("E_t", "efficiency of the tube's own seam", r.Strengths.EfficiencyTube), check.M("t_a", "tube wall for its own pressure", r.RequiredTube), check.M("t_b1", "vessel wall at the port, pressure inside, at least 1/16 in", tb1),
			check.M("t_b2", "vessel wall at the port, pressure on the convex side", tb2), check.M("t_b3", "0.875 of the standard pipe wall", tb3)},
		Demand: check.M("t", "least tube wall required", need), Capacity: check.M("t_n", "least tube wall", r.Port.TubeWall), Factor: 1,
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, 2010", Where: "order of choices of UG-45 read; table of pipe walls recalled, confirm", How: check.Memory},
		Note:   note,
	}
}

// CheckNeckAtProof is port.NAME/neck at the highest pressure of a test, S_n of the
// report being the share of yield that is allowed there: the tube's wall for its own
// pressure,
//
//	t_n ≥ t_a = p R_n/(S_n E_t − 0.6p)
//
// What UG-45 asks for beside it is a size, held in service.
//
// Source: ASME VIII-1 UG-27 (read), the share of yield in place of the allowable stress.
func (r AreaReport) CheckNeckAtProof(name string) check.Result {
	id, title := "port."+name+"/neck", "Port "+name+": tube wall"
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	return check.Result{
		ID: id, Title: title, Formula: "t_n ≥ t_a = p R_n/(S_n E_t − 0.6p)", Factor: 1,
		Inputs: []check.Quantity{check.Pa("p", "pressure at the port", r.Load.Pressure), check.M("R_n", "tube inside radius", r.Port.OutsideDiameter/2-r.Port.TubeWall),
			check.Pa("S_n", "limit of the tube at proof", r.Strengths.Tube), check.Num("E_t", "efficiency of the tube's own seam", r.Strengths.EfficiencyTube)},
		Demand: check.M("t_a", "tube wall for its own pressure", r.RequiredTube), Capacity: check.M("t_n", "least tube wall", r.Port.TubeWall),
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-27, with the share of yield at proof", How: check.Read},
		Note:   "the sizes that UG-45 asks for beside it are held in service",
	}
}
