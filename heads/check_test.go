package heads_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// vessel returns limits with one allowable everywhere, S [Pa].
func vessel(S float64) heads.Allowables {
	l := material.Limits{Rule: material.Vessel, S: S, Yield: 1.5 * S, Ultimate: 3.5 * S}
	return heads.Allowables{Parent: l, Zone: l, SeamSegment: l, SeamGirth: l}
}

var sound = heads.Seams{Segment: 1, Girth: 1}

// gas is a uniform pressure p [Pa].
func gas(p float64) heads.Loading {
	return heads.Loading{
		Pressure: func(float64) float64 { return p },
		Force:    func(_, r float64) float64 { return p * math.Pi * r * r },
	}
}

// status fails the test unless the check says what it should.
func status(t *testing.T, where string, r check.Result, want check.Status) {
	t.Helper()
	if r.Status() != want {
		t.Errorf("%s: %v (%s), want %v", where, r.Status(), r.Reason(), want)
	}
}

// By hand: cone 30 deg, D 0.4 m + 2 mm of corrosion, p 2.5 MPa, S 120 MPa, E 0.85.
func TestCheckThicknessByHand(t *testing.T) {
	h := head(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 30 * deg, Thickness: 0.008})
	w := heads.Wall{Thickness: 0.0067, Corrosion: 0.001}
	r := heads.CheckThickness(h, "aft", heads.Demand{Pressure: 2.5e6}, w, vessel(120e6), heads.Seams{Segment: 0.85, Girth: 0.85})
	want := 2.5e6 * 0.402 / (2 * math.Cos(30*deg) * (120e6*0.85 - 0.6*2.5e6))
	checktest.Close(t, "required", r.Demand.Value, want, 1e-12)
	status(t, "cone", r, check.Satisfied)
	if r.ID != "head.aft/thickness" || r.Title != "Aft head: thickness by the rule set" || r.Rule != "vessel" {
		t.Errorf("%q %q %q", r.ID, r.Title, r.Rule)
	}
	w.Thickness = want * 0.999
	status(t, "a wall a little under", heads.CheckThickness(h, "aft", heads.Demand{Pressure: 2.5e6}, w, vessel(120e6), heads.Seams{Segment: 0.85, Girth: 0.85}), check.NotSatisfied)
}

// By hand: flight, line load against yield with 1.25 and pressure with 1.5/0.9, against
// ultimate with 1.5 and 2.0, in the girth form of a cone.
func TestCheckThicknessFlightLineLoad(t *testing.T) {
	l := material.Limits{Rule: material.Flight, Yield: 240e6, Ultimate: 300e6,
		YieldOnPressure: 1.5 / 0.9, YieldOnLoad: 1.25, UltimateOnPressure: 2, UltimateOnLoad: 1.5}
	l.S = math.Min(240e6/(1.5/0.9), 150e6)
	a := heads.Allowables{Parent: l, Zone: l, SeamSegment: l, SeamGirth: l}
	h := head(t, "cone", heads.Geometry{InsideDiameter: 0.4, HalfAngle: 30 * deg, Thickness: 0.008})
	const p, f, E = 1e6, 5e5, 0.7
	r := heads.CheckThickness(h, "aft", heads.Demand{Pressure: p, LineLoad: f}, heads.Wall{Thickness: 0.008}, a, heads.Seams{Segment: 1, Girth: E})
	cos, want := math.Cos(30*deg), 0.0
	for _, c := range [][3]float64{{240e6, 1.5 / 0.9, 1.25}, {300e6, 2, 1.5}} {
		S := c[0] / c[1]
		want = math.Max(want, p*0.4/(4*cos*(S*E+0.2*p))+f*c[2]/c[1]/(S*E*cos))
	}
	checktest.Close(t, "required", r.Demand.Value, want, 1e-12)
	if !strings.Contains(r.Note, "girth seam") {
		t.Error(r.Note)
	}
}

func TestCheckThicknessNotMade(t *testing.T) {
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.1})
	w, a := heads.Wall{Thickness: 0.009}, vessel(120e6)
	d := heads.Demand{Pressure: 1e5}
	status(t, "as it stands", heads.CheckThickness(h, "aft", d, w, a, sound), check.Satisfied)
	status(t, "vacuum", heads.CheckThickness(h, "aft", heads.Demand{Pressure: -1e5}, w, a, sound), check.NotApplicable)
	status(t, "pressure missing", heads.CheckThickness(h, "aft", heads.Demand{Pressure: math.NaN()}, w, a, sound), check.NotAssessed)
	status(t, "line load missing", heads.CheckThickness(h, "aft", heads.Demand{LineLoad: math.NaN()}, w, a, sound), check.NotAssessed)
	status(t, "no wall", heads.CheckThickness(h, "aft", d, heads.Wall{}, a, sound), check.NotAssessed)
	status(t, "no efficiency", heads.CheckThickness(h, "aft", d, w, a, heads.Seams{Segment: math.NaN(), Girth: 1}), check.NotAssessed)
	status(t, "no limits", heads.CheckThickness(h, "aft", d, w, heads.Allowables{}, sound), check.NotAssessed)
	noGirth := a
	noGirth.SeamGirth = material.Limits{Rule: material.Vessel} // the head's own would stand in for it
	status(t, "no limit across the girth seam", heads.CheckThickness(h, "aft", d, w, noGirth, sound), check.NotAssessed)
	unknown := a
	unknown.ZoneKnown = errors.New("no value for the weld zone")
	status(t, "weld zone unknown", heads.CheckThickness(h, "aft", d, w, unknown, sound), check.NotAssessed)
	status(t, "weld zone unknown", heads.CheckMembrane(h, "aft", w, gas(1e5), unknown, sound), check.NotAssessed)
	in := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1, Inward: true})
	status(t, "inward", heads.CheckThickness(in, "aft", d, w, a, sound), check.NotApplicable)
	flat := head(t, "flat", heads.Geometry{InsideDiameter: 0.1})
	status(t, "flat, no corner factor", heads.CheckThickness(flat, "forward", d, w, a, sound), check.NotAssessed)
	status(t, "flat membrane", heads.CheckMembrane(flat, "forward", w, gas(1e5), a, sound), check.NotApplicable)
}

// By hand, at mid-wall radii: hemisphere p r/(2 t), 2:1 ellipsoid p a²/(2 b t) at the
// crown, cone p r/(t cos α) at the rim.
func TestCheckMembraneByHand(t *testing.T) {
	const p, wall = 1.5e6, 0.006
	w := heads.Wall{Thickness: wall, Corrosion: 0.001}
	const o = 0.001 + wall/2
	for _, row := range []struct {
		shape string
		g     heads.Geometry
		want  float64
	}{
		{"hemisphere", heads.Geometry{}, p * (0.5 + o) / (2 * wall)},
		{"ellipsoid", heads.Geometry{Aspect: 2}, p * (0.5*0.5/0.25 + o) / (2 * wall)},
		{"cone", heads.Geometry{HalfAngle: 30 * deg}, p * (0.5 + o/math.Cos(30*deg)) / (wall * math.Cos(30*deg))},
		{"torisphere", heads.Geometry{CrownRadius: 0.9, KnuckleRadius: 0.1}, p * (0.9 + o) / (2 * wall)},
	} {
		row.g.InsideDiameter = 1
		h := head(t, row.shape, row.g)
		r := heads.CheckMembrane(h, "forward", w, gas(p), vessel(200e6), sound)
		checktest.Close(t, row.shape, r.Demand.Value, row.want, 1e-9)
		status(t, row.shape, r, check.Satisfied)
		if r.ID != "head.forward/membrane" || r.Capacity.Value != 200e6 {
			t.Errorf("%s: %q against %g", row.shape, r.ID, r.Capacity.Value)
		}
		status(t, row.shape+", weaker", heads.CheckMembrane(h, "forward", w, gas(p), vessel(row.want*0.999), sound), check.NotSatisfied)
	}
	// A straight flange is a cylinder: p r/t, more than the crown of a hemisphere.
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1, StraightFlange: 0.03})
	r := heads.CheckMembrane(h, "aft", w, gas(p), vessel(200e6), sound)
	checktest.Close(t, "flange", r.Demand.Value, p*(0.5+o)/wall, 1e-9)
	if !strings.Contains(r.Note, "straight flange") {
		t.Error(r.Note)
	}
}

// Welds: the girth seam takes the meridional stress with its efficiency; welds in the
// head make every point zone, and the hoop crosses them.
func TestCheckMembraneWelds(t *testing.T) {
	const p, wall = 1.5e6, 0.005
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	w, σ := heads.Wall{Thickness: wall}, p*(0.5+wall/2)/(2*wall)
	r := heads.CheckMembrane(h, "aft", w, gas(p), vessel(200e6), heads.Seams{Segment: 1, Girth: 0.6})
	checktest.Close(t, "girth", r.Demand.Value, σ, 1e-9)
	checktest.Close(t, "girth limit", r.Capacity.Value, 120e6, 1e-12)
	r = heads.CheckMembrane(h, "aft", w, gas(p), vessel(200e6), heads.Seams{Segment: 0.7, Girth: 1, Segmented: true})
	checktest.Close(t, "segments", r.Capacity.Value, 140e6, 1e-12)

	soft := vessel(200e6)
	soft.Zone.S = 90e6
	for _, row := range []struct {
		where string
		s     heads.Seams
		want  float64
	}{
		{"no zone", sound, 200e6},
		{"zone of the girth seam", heads.Seams{Segment: 1, Girth: 1, ZoneWidth: 0.02}, 90e6},
		{"zone of a port", heads.Seams{Segment: 1, Girth: 1, ZoneWidth: 1e-9, PortZones: [][2]float64{{0.1, 0.2}}}, 90e6},
		{"segments", heads.Seams{Segment: 1, Girth: 1, Segmented: true, ZoneWidth: 0.02}, 90e6},
	} {
		if r := heads.CheckMembrane(h, "aft", w, gas(p), soft, row.s); r.Capacity.Value != row.want {
			t.Errorf("%s: limit %g, want %g", row.where, r.Capacity.Value, row.want)
		}
	}
}

// The rim of a 2:1 ellipsoid and a knuckle are judged by the meridional stress: a
// torisphere is not refused for the −14.7 p R/t of membrane theory. Inward, the rim of an
// ellipsoid is in tension and is judged, with its zone of a girth seam.
func TestCheckMembraneKnuckle(t *testing.T) {
	const p, wall = 1e6, 0.005
	h := head(t, "torisphere", heads.Geometry{InsideDiameter: 1, CrownRadius: 1, KnuckleRadius: 0.06})
	r := heads.CheckMembrane(h, "aft", heads.Wall{Thickness: wall}, gas(p), vessel(200e6), sound)
	checktest.Close(t, "crown governs", r.Demand.Value, p*(1+wall/2)/(2*wall), 1e-9)

	in := head(t, "ellipsoid", heads.Geometry{InsideDiameter: 1, Aspect: 2, Inward: true})
	load := gas(p)
	load.Force = func(_, r float64) float64 { return -p * math.Pi * r * r }
	r = heads.CheckMembrane(in, "aft", heads.Wall{Thickness: wall}, load, vessel(400e6), sound)
	pts := in.Points(10, wall/2)
	rim := pts[len(pts)-1]
	hoop := -p * rim.R2 * (1 - rim.R2/(2*rim.R1)) / wall
	mer := -p * rim.R2 / 2 / wall
	checktest.Close(t, "Tresca at the rim of an inward head", r.Demand.Value, hoop-mer, 1e-9)
}

// Liquid: a cone full to its rim, hung from it, is worst at half its depth.
func TestCheckMembraneLiquid(t *testing.T) {
	const w, H, α, wall = 1e6, 2.0, 40 * deg, 0.02
	h := head(t, "cone", heads.Geometry{InsideDiameter: 2 * H * math.Tan(α), HalfAngle: α})
	load := heads.Loading{
		Pressure: func(x float64) float64 { return w * x },
		Force:    func(x, r float64) float64 { return math.Pi*r*r*w*x + w*h.VolumeFromApex(h.Depth()-x) },
	}
	r := heads.CheckMembrane(h, "aft", heads.Wall{Thickness: wall}, load, vessel(500e6), sound)
	checktest.Close(t, "place", r.Inputs[0].Value, H/2, 0.02)                                  // mid-wall instead of inside
	checktest.Close(t, "stress", r.Demand.Value, w*H*H*math.Tan(α)/(4*math.Cos(α))/wall, 0.03) // the same
}

// A line load adds to the meridional stress, and through the curvature to the hoop.
func TestCheckMembraneLineLoad(t *testing.T) {
	const p, n, wall = 1e6, 4e5, 0.005
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	load := gas(p)
	load.LoadMost = func(float64) float64 { return n }
	load.LoadLeast = func(float64) float64 { return 0 }
	r := heads.CheckMembrane(h, "aft", heads.Wall{Thickness: wall}, load, vessel(1e9), heads.Seams{Segment: 1, Girth: 1})
	if !(r.Demand.Value >= (p*(0.5+wall/2)/2+n)/wall*(1-1e-12)) {
		t.Errorf("demand %g leaves the line load out", r.Demand.Value)
	}
	load.LoadLeast = func(float64) float64 { return math.NaN() }
	status(t, "line load missing", heads.CheckMembrane(h, "aft", heads.Wall{Thickness: wall}, load, vessel(1e9), sound), check.NotAssessed)
}

func TestCheckMembraneNotMade(t *testing.T) {
	h := head(t, "hemisphere", heads.Geometry{InsideDiameter: 1})
	a := vessel(1e9)
	for where, r := range map[string]check.Result{
		"no loading":         heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.01}, heads.Loading{}, a, sound),
		"no wall":            heads.CheckMembrane(h, "aft", heads.Wall{}, gas(1e5), a, sound),
		"wall NaN":           heads.CheckMembrane(h, "aft", heads.Wall{Thickness: math.NaN()}, gas(1e5), a, sound),
		"corrosion NaN":      heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.01, Corrosion: math.NaN()}, gas(1e5), a, sound),
		"pressure NaN":       heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.01}, gas(math.NaN()), a, sound),
		"thick wall":         heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.0527}, gas(1e5), a, sound), // (0.5 + t/2)/t = 9.99
		"efficiency missing": heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.01}, gas(1e5), a, heads.Seams{Segment: 1, Girth: math.NaN()}),
		"limits missing":     heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.01}, gas(1e5), heads.Allowables{}, sound),
	} {
		status(t, where, r, check.NotAssessed)
	}
	status(t, "just thin", heads.CheckMembrane(h, "aft", heads.Wall{Thickness: 0.0526}, gas(1e5), a, sound), check.Satisfied)
}
