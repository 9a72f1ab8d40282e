package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Zone is the softened wall of a head beside welds that count as one.
type Zone struct {
	Girth      float64      // reach along the wall from the girth seam; 0: none [m]
	Everywhere bool         // a weld runs from apex to rim
	Radii      [][2]float64 // radii of the mid-surface between which it lies [m]
}

// zone returns the softened wall beside every weld of a head.
func (s Seams) zone() Zone {
	if !(s.ZoneWidth > 0) {
		return Zone{}
	}
	return Zone{s.ZoneWidth, s.Segmented, s.PortZones}
}

// inside reports of every place whether it lies in the zone or is the first one
// past its border, so that the border itself is never missed.
func (z Zone) inside(t *track) []bool {
	in := make([]bool, len(t.points))
	for i := range t.points {
		j := min(i+1, len(t.points)-1)
		if z.meets(t, i, j) {
			in[i], in[j] = true, true
		}
	}
	return in
}

// meets reports whether the zone lies on the stretch of wall between two places.
func (z Zone) meets(t *track, i, j int) bool {
	if z.Everywhere || z.Girth > 0 && min(t.from[i], t.from[j]) <= z.Girth {
		return true
	}
	a, b := t.points[i].R, t.points[j].R
	for _, r := range z.Radii {
		if max(a, b) >= r[0] && min(a, b) <= r[1] {
			return true
		}
	}
	return false
}

// CheckZone sets the largest equivalent membrane stress within a weld zone of a
// head, as [CheckMembrane] finds it, against what the zone allows, without
// joint efficiency. Hoop stress of membrane theory opposite to the pressure is
// left to the knuckle check there as here.
func CheckZone(h Head, end string, w Wall, l Loading, limits material.Limits, z Zone) check.Result {
	id, name := "head."+end+"/weld-zone", title(end, "membrane stress in a weld zone")
	if h.Kind() == "flat" {
		return check.NotApplicableTo(id, name, "a flat head carries pressure by bending, which the thickness rule holds")
	}
	worst, at, err := l.worstInZone(h, w, limits, z)
	if err != nil {
		return check.NotMade(id, name, err)
	}
	return check.Result{
		Rule: string(limits.Rule), ID: id, Title: name, Formula: worst.Formula,
		Inputs: append(at.inputs(w), worst.Inputs...),
		Demand: worst.Demand, Capacity: worst.Capacity, Factor: worst.Factor,
		Source: check.Source{Doc: "membrane equilibrium of a shell of revolution", Where: "heads, package comment", How: check.Computed},
		Note:   at.note(worst), Err: worst.Err,
	}
}

// worstInZone returns the worst equivalent stress of the places in a zone.
func (l Loading) worstInZone(h Head, w Wall, limits material.Limits, z Zone) (material.Judged, place, error) {
	if err := l.whole(w); err != nil {
		return material.Judged{}, place{}, err
	}
	t, err := trackOf(h, w)
	if err != nil {
		return material.Judged{}, place{}, err
	}
	g, in := h.Geometry(), z.inside(t)
	walked := walk{l: l, g: g, wall: w.Thickness, track: t, apart: in,
		due: func(all []trial, i int, p *place) []trial {
			if !in[i] {
				return all
			}
			return p.equivalents(all, &limits, "in the weld zone", g.Inward, &l)
		}}
	j, at, err := walked.worst()
	if err == nil && at.where == "" {
		err = errors.New("no point of the head lies in the weld zone")
	}
	return j, at, err
}

// knuckleStart returns the radius of the mid-surface [m] at which the knuckle of
// a head begins: that of an ellipsoid is the knuckle of the torisphere that
// stands for it, r = L (D/2 − r_k)/(L − r_k).
func knuckleStart(h Head, w Wall) (float64, error) {
	for _, piece := range h.Pieces(8, w.Corrosion+w.Thickness/2) {
		if piece[0].Piece == "knuckle" {
			return piece[0].R, nil
		}
	}
	d, _, none, err := dish(h, w)
	if none != "" {
		err = errors.New(none)
	}
	if err != nil {
		return math.NaN(), fmt.Errorf("where the knuckle begins is not known: %w", err)
	}
	return d.L * (d.D/2 - d.R) / (d.L - d.R), nil
}

// KnuckleInZone reports whether a weld lies in the knuckle of a head or its
// weld zone reaches it, so that the welded strength counts there. Where the
// knuckle cannot be found it counts too.
func (s Seams) KnuckleInZone(h Head, w Wall) bool {
	if !(s.ZoneWidth > 0) {
		return false
	}
	if s.Segmented || h.Geometry().StraightFlange <= s.ZoneWidth {
		return true
	}
	start, err := knuckleStart(h, w)
	for _, z := range s.PortZones {
		if err != nil || !(z[1] < start) { // a radius that is not a number counts too
			return true
		}
	}
	return false
}
