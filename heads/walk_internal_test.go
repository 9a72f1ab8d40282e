package heads

import (
	"math"
	"math/rand/v2"
	"testing"

	"proofsheet/material"
)

// Drawn heads under a level of liquid, lateral load, masses and bending on them: what the
// walk finds is what looking at every place finds, to a thousandth.
func TestWalkFindsTheWorstPlace(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	between := func(a, b float64) float64 { return a + (b-a)*rng.Float64() }
	tried, refused := 0, 0
	for range 4000 {
		h := drawnHead(between, rng.IntN(6))
		w := Wall{Thickness: h.Geometry().Thickness}
		l := drawnLoading(h, between, rng.IntN(8))
		a := drawnAllowables(between, rng.IntN(2) == 0)
		s := Seams{Segment: 0.85, Girth: 0.7, Segmented: rng.IntN(3) == 0}
		if rng.IntN(2) == 0 {
			r := between(0, 0.5)
			s.ZoneWidth, s.PortZones = between(0.01, 0.1), [][2]float64{{r, r + between(0.01, 0.2)}}
		}
		track, err := trackOf(h, w)
		if err != nil {
			refused++
			continue
		}
		j, at, err := worstPoint(h, w, l, a, s)
		all, there := everyPlace(t, h, w, l, a, s, track)
		got := j.Demand.Value * j.Factor / j.Capacity.Value
		if tried++; err != nil || !(got >= all*(1-1e-3)) {
			t.Errorf("%s, D/2h %.3g: %.6g at r %.4g m (%s), every place %.6g at r %.4g m, %v", h.Kind(), h.Geometry().Aspect, got, at.R, at.where, all, there, err)
		}
	}
	t.Logf("%d tried, %d refused", tried, refused)
	if refused > tried {
		t.Errorf("%d of %d refused", refused, refused+tried)
	}
}

// everyPlace returns the largest use of all places of a head [-] and the radius there [m].
func everyPlace(t *testing.T, h Head, w Wall, l Loading, a Allowables, s Seams, track *track) (most, r float64) {
	g, zone := h.Geometry(), s.zone().inside(track)
	for i, pt := range track.points {
		p := place{Point: pt, from: track.from[i]}
		if err := l.stress(&p, g, w.Thickness); err != nil {
			t.Fatal(err)
		}
		for _, x := range a.trials(nil, &p, g.Inward, &l, &s, zone[i], i == len(track.points)-1) {
			if use := x.use(); use > most {
				most, r = use, p.R
			}
		}
	}
	return most, r
}

func drawnHead(between func(a, b float64) float64, shape int) Head {
	g := Geometry{InsideDiameter: 1, Thickness: math.Exp(between(math.Log(0.0005), math.Log(0.03)))}
	name := ""
	switch shape {
	case 0:
		name = "hemisphere"
	case 1, 2:
		name, g.Aspect = "ellipsoid", between(1, 2.6)
		if shape == 2 {
			g.Inward = true
		}
	case 3:
		name, g.CrownRadius, g.KnuckleRadius = "torisphere", between(0.7, 1), between(0.06, 0.2)
	case 4:
		name, g.HalfAngle, g.TipDiameter = "cone", between(0.1, 1.2), between(0.02, 0.4)
	default:
		name, g.HalfAngle, g.KnuckleRadius, g.TipDiameter = "toricone", between(0.2, 1.1), between(0.06, 0.2), between(0.02, 0.2)
	}
	if between(0, 1) < 0.5 && name != "cone" && !g.Inward {
		g.StraightFlange = between(0.01, 0.1)
	}
	s, _ := FindShape(name)
	h, err := s.New(g)
	if err != nil {
		panic(name + ": " + err.Error())
	}
	return h
}

// drawnLoading hangs or stands liquid in a head. kinds are three bits: the liquid lies at the
// seam, a lateral factor, masses with bending.
func drawnLoading(h Head, between func(a, b float64) float64, kinds int) Loading {
	depth := h.Depth()
	pu := math.Exp(between(math.Log(1e3), math.Log(3e6)))
	ρa := math.Exp(between(math.Log(1e3), math.Log(3e5))) // [N/m3]
	level := between(-1, 1) * depth
	up := kinds&1 != 0 // the liquid lies toward the seam
	tilt := 0.0
	if kinds&2 != 0 {
		tilt = between(0, 1)
	}
	wet := func(x, side float64) float64 { // depth of the wall under the level [m]
		x = min(max(x, 0), depth)
		d := x - level
		if up {
			d = level - x
		}
		return max(0, d+side*tilt*h.Radius(x))
	}
	beyond := func(x float64) float64 { // volume of liquid between the cut and the apex [m3]
		x = min(max(x, 0), depth)
		if up {
			if level <= x {
				return 0
			}
			return h.VolumeFromApex(depth-x) - h.VolumeFromApex(depth-min(level, depth))
		}
		return h.VolumeFromApex(depth - max(x, level, 0))
	}
	l := Loading{PressureLeast: between(0, 1), Present: between(0, 1) < 0.5}
	l.Pressure = func(x float64) float64 { return pu + ρa*wet(x, 1) }
	way := 1.0
	if up {
		way = -1
	}
	l.Force = func(x, r float64) float64 {
		return (pu+ρa*wet(x, 0))*math.Pi*r*r + way*ρa*beyond(x)
	}
	if h.Geometry().Inward {
		force := l.Force
		l.Force = func(x, r float64) float64 { return -force(x, r) }
		return l
	}
	if kinds&4 == 0 {
		return l
	}
	big := pu * math.Exp(between(math.Log(1e-5), math.Log(0.1))) // [N], [N m]
	var at, mass [3]float64
	for i := range at {
		at[i], mass[i] = between(0, 1.001)*depth, between(-0.2, 1)*big
	}
	moment := between(0, 0.3) * big
	line := func(x, side float64) float64 {
		x = min(max(x, 0), depth)
		r, sum, m := h.Radius(x)+h.Geometry().Thickness/2, 0.0, 0.0
		for i := range at {
			if at[i] >= x || at[i] > depth {
				sum += mass[i]
				m += math.Abs(mass[i]) * math.Abs(at[i]-x) * 0.3
			}
		}
		if sum != 0 {
			m += moment * (depth - x)
		}
		return (sum + side*2*m/r) / (2 * math.Pi * r)
	}
	l.LoadMost = func(x float64) float64 { return line(x, 1) }
	l.LoadLeast = func(x float64) float64 { return line(x, -1) }
	return l
}

func drawnAllowables(between func(a, b float64) float64, flight bool) Allowables {
	limits := func(S float64) material.Limits {
		l := material.Limits{Rule: material.Vessel, S: S, Yield: 1.5 * S, Ultimate: 3.5 * S}
		if flight {
			l.Rule, l.YieldOnPressure, l.UltimateOnPressure, l.YieldOnLoad, l.UltimateOnLoad = material.Flight, 1.1, 1.5, 1.1, 1.4
		}
		return l
	}
	S := 1e8
	zone := limits(S * between(0.4, 1))
	return Allowables{Parent: limits(S), Zone: zone, SeamSegment: zone, SeamGirth: zone}
}
