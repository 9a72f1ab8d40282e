package heads_test

import (
	"math"
	"testing"

	"proofsheet/heads"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The stress in a zone by hand: a cone of 30 deg carries p r/(t cos α) round it,
// so that the outer border of the zone governs; the next point of the meridian,
// at most 1/190 of the radius further out, may be the one that is shown.
func TestZoneOfAConeByHand(t *testing.T) {
	const p, wall, α = 1e6, 0.002, math.Pi / 6
	h := head(t, "cone", heads.Geometry{InsideDiameter: 1, HalfAngle: α})
	w := heads.Wall{Thickness: wall}
	limits := vessel(400e6).Parent
	hoop := func(r float64) float64 { return p * r / (wall * math.Cos(α)) }
	for _, row := range []struct {
		name string
		z    heads.Zone
		r    float64 // where the zone ends
	}{
		{"port", heads.Zone{Radii: [][2]float64{{0.1, 0.2}}}, 0.2},
		{"two ports", heads.Zone{Radii: [][2]float64{{0.1, 0.2}, {0.25, 0.3}}}, 0.3},
		{"girth seam", heads.Zone{Girth: 0.03}, 0.5 + wall/2/math.Cos(α)},
		{"seam from apex to rim", heads.Zone{Everywhere: true}, 0.5 + wall/2/math.Cos(α)},
	} {
		r := heads.CheckZone(h, "aft", w, gas(p), limits, row.z)
		status(t, row.name, r, check.Satisfied)
		if got := r.Demand.Value; !(got >= hoop(row.r)*(1-3e-3) && got <= hoop(row.r+0.5/190)*(1+3e-3)) {
			t.Errorf("%s: %.4g MPa, by hand %.4g MPa", row.name, got/1e6, hoop(row.r)/1e6)
		}
		checktest.Close(t, row.name+", limit without efficiency", r.Capacity.Value, 400e6, 1e-12)
	}
	// Twice the size and thrice the pressure: stress thrice.
	a := heads.CheckZone(h, "aft", w, gas(p), limits, heads.Zone{Girth: 0.03}).Demand.Value
	big := head(t, "cone", heads.Geometry{InsideDiameter: 2, HalfAngle: α})
	b := heads.CheckZone(big, "aft", heads.Wall{Thickness: 2 * wall}, gas(3*p), limits, heads.Zone{Girth: 0.06}).Demand.Value
	checktest.Close(t, "units", b, 3*a, 1e-9)
	for name, r := range map[string]check.Result{
		"no zone":   heads.CheckZone(h, "aft", w, gas(p), limits, heads.Zone{}),
		"elsewhere": heads.CheckZone(h, "aft", w, gas(p), limits, heads.Zone{Radii: [][2]float64{{2, 3}}}),
		"NaN":       heads.CheckZone(h, "aft", w, gas(math.NaN()), limits, heads.Zone{Girth: 0.03}),
	} {
		status(t, name, r, check.NotAssessed)
	}
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 1})
	status(t, "flat", heads.CheckZone(flat, "aft", w, gas(p), limits, heads.Zone{Girth: 0.03}), check.NotApplicable)
}

// A port whose zone reaches the knuckle softens it. By hand, inside D 1 m: crown
// 1 m and knuckle 100 mm meet at r = 1 × 0.4/0.9; the knuckle of a toricone of
// 45 deg begins at 0.4 + 0.1 cos 45°; a 2:1 ellipsoid is the torisphere of
// L 0.9, r 0.17: 0.9 × 0.33/0.73.
func TestZoneReachesTheKnuckle(t *testing.T) {
	w := heads.Wall{Thickness: 1e-6}
	for _, row := range []struct {
		shape string
		g     heads.Geometry
		start float64
	}{
		{"torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1}, 0.4 / 0.9},
		{"toricone", heads.Geometry{InsideDiameter: 1, HalfAngle: math.Pi / 4, KnuckleRadius: 0.1}, 0.4 + 0.1*math.Sqrt2/2},
		{"ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 2}, 0.9 * 0.33 / 0.73},
	} {
		row.g.Thickness, row.g.StraightFlange = w.Thickness, 0.1
		h := head(t, row.shape, row.g)
		to := func(r float64) bool {
			return heads.Seams{ZoneWidth: 0.03, PortZones: [][2]float64{{0.1, r}}}.KnuckleInZone(h, w)
		}
		if to(row.start-1e-3) || !to(row.start+1e-3) {
			t.Errorf("%s: the knuckle begins at %g m", row.shape, row.start)
		}
		if (heads.Seams{PortZones: [][2]float64{{0.1, 0.5}}}).KnuckleInZone(h, w) {
			t.Errorf("%s: a metal that does not soften has a zone", row.shape)
		}
		if !(heads.Seams{ZoneWidth: 0.1}).KnuckleInZone(h, w) || (heads.Seams{ZoneWidth: 0.0999}).KnuckleInZone(h, w) {
			t.Errorf("%s: zone of the girth seam and a straight flange of 100 mm", row.shape)
		}
	}
}
