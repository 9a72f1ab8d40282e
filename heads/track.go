package heads

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A track is the mid-surface of a head as places along it, apex first, the straight
// flange last, and so the girth seam too. It does not change once made.
type track struct {
	points []Point
	from   []float64 // along the wall to the girth seam [m]
	piece  []int     // number of the piece
	wall   Wall
}

// trackOf returns the track of a head of a wall; the last one is kept.
func trackOf(h Head, w Wall) (*track, error) {
	m, ok := h.(*meridian)
	if !ok {
		return newTrack(h, w)
	}
	if t := m.track.Load(); t != nil && t.wall == w {
		return t, nil
	}
	t, err := newTrack(h, w)
	if err == nil {
		m.track.Store(t)
	}
	return t, err
}

// newTrack makes it.
func newTrack(h Head, w Wall) (*track, error) {
	pieces := h.Pieces(samples, w.Corrosion+w.Thickness/2)
	if pieces == nil {
		return nil, errors.New("the wall is too thick for the radii of the head: it has no mid-surface")
	}
	t := &track{wall: w}
	for k, piece := range pieces {
		for _, pt := range piece {
			t.points, t.piece = append(t.points, pt), append(t.piece, k)
		}
	}
	rim := t.points[len(t.points)-1]
	if err := check.Within("heads.CheckMembrane", "mid-wall radius over wall at the seam", rim.R/w.Thickness, thinnest, math.MaxFloat64, "thin-wall membrane theory"); err != nil {
		return nil, err
	}
	t.from = make([]float64, len(t.points))
	flange := h.Geometry().StraightFlange
	from := flange
	for i := len(t.points) - 1; i >= 0; i-- {
		if i < len(t.points)-1 {
			from += math.Hypot(t.points[i].X-t.points[i+1].X, t.points[i].R-t.points[i+1].R)
		}
		t.from[i] = from
	}
	if flange > 0 { // a cylinder of the head's wall, up to the girth seam
		rim.R1, rim.R2, rim.Phi, rim.Piece = math.Inf(1), rim.R, math.Pi/2, "straight flange"
		t.points, t.piece, t.from = append(t.points, rim), append(t.piece, len(pieces)), append(t.from, 0)
	}
	return t, nil
}
