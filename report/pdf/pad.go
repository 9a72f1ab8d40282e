package pdf

import (
	"math"

	"proofsheet/report"
	"proofsheet/report/drawing"
)

// pad draws a pad as two strips on the outside of the wall, from the tube to
// the pad's edge along the meridian; a strip for which the wall is too short is
// left out.
func (v view) pad(c *report.Section, t report.PortOutline, side float64) {
	face, at := closest(c, t.Wall)
	for _, end := range []float64{1, -1} {
		a, okA := along(face, at+end*t.OutsideDiameter/2)
		b, okB := along(face, at+end*t.PadDiameter/2)
		length := math.Hypot(b.Z-a.Z, b.R-a.R)
		if !okA || !okB || length == 0 {
			continue
		}
		nz, nr := (a.R-b.R)/length, (b.Z-a.Z)/length // normal of the wall
		if (t.Outer.Z-t.Inner.Z)*nz+(t.Outer.R-t.Inner.R)*nr < 0 {
			nz, nr = -nz, -nr
		}
		lift := func(q report.Point) report.Point {
			return report.Point{Z: q.Z + t.PadThickness*nz, R: q.R + t.PadThickness*nr}
		}
		strip := v.mirrored([]report.Point{a, b, lift(b), lift(a)}, side)
		v.f.Fills = append(v.f.Fills, drawing.Fill{Points: strip, Grey: 0.6})
		v.f.Polylines = append(v.f.Polylines, drawing.Polyline{Points: strip, Closed: true, Pen: drawing.Pen{Width: 0.13}})
	}
}

// closest returns the outside surface which comes nearest to a place of the
// wall, and how far along it that is [m].
func closest(c *report.Section, wall report.Point) (face []report.Point, at float64) {
	least := math.Inf(1)
	for _, o := range c.Outlines {
		run := 0.0
		for i := 1; i < len(o.Outside); i++ {
			a, b := o.Outside[i-1], o.Outside[i]
			dz, dr := b.Z-a.Z, b.R-a.R
			length := math.Hypot(dz, dr)
			if length == 0 {
				continue
			}
			s := math.Max(0, math.Min(length, ((wall.Z-a.Z)*dz+(wall.R-a.R)*dr)/length))
			off := math.Hypot(a.Z+dz*s/length-wall.Z, a.R+dr*s/length-wall.R)
			if off < least {
				least, face, at = off, o.Outside, run+s
			}
			run += length
		}
	}
	return face, at
}

// along returns the place at a distance s [m] along a surface; ok is false
// beyond its ends.
func along(face []report.Point, s float64) (q report.Point, ok bool) {
	if s < 0 {
		return q, false
	}
	for i := 1; i < len(face); i++ {
		a, b := face[i-1], face[i]
		length := math.Hypot(b.Z-a.Z, b.R-a.R)
		if s <= length && length > 0 {
			return report.Point{Z: a.Z + (b.Z-a.Z)*s/length, R: a.R + (b.R-a.R)*s/length}, true
		}
		s -= length
	}
	return q, false
}
