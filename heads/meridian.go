package heads

import (
	"fmt"
	"math"
	"sync/atomic"
)

// rounding is the relative distance by which a number may miss the end of its
// range and still be the end [-]: floating-point noise, far below any tolerance
// a tank is made to.
const rounding = 1e-12

// A meridian is a head as pieces, apex or tip first. All shapes are one.
type meridian struct {
	kind   string
	g      Geometry
	pieces []piece
	track  atomic.Pointer[track] // the last one asked for
}

func (m *meridian) Kind() string       { return m.kind }
func (m *meridian) Geometry() Geometry { return m.g }
func (m *meridian) Depth() float64     { return m.g.Depth }

func (m *meridian) Volume() float64 { return m.VolumeFromApex(m.g.Depth) }

func (m *meridian) VolumeFromApex(h float64) float64 {
	x, ok := m.within(m.g.Depth - h)
	if !ok {
		return math.NaN()
	}
	var v float64
	for _, p := range m.pieces {
		seam, apex := p.span()
		if x >= apex {
			continue
		}
		v += p.volume(math.Max(x, seam))
	}
	return v
}

// within returns x, or the end it misses by rounding only; false outside.
func (m *meridian) within(x float64) (float64, bool) {
	slack := rounding * (m.g.Depth + m.g.InsideDiameter)
	if !(x >= -slack && x <= m.g.Depth+slack) {
		return math.NaN(), false
	}
	return math.Max(0, math.Min(m.g.Depth, x)), true
}

func (m *meridian) Radius(x float64) float64 {
	x, ok := m.within(x)
	if !ok {
		return math.NaN()
	}
	last := len(m.pieces) - 1
	for _, p := range m.pieces[:last] {
		if seam, _ := p.span(); x >= seam {
			return p.radius(x)
		}
	}
	return m.pieces[last].radius(x)
}

func (m *meridian) Breaks() []float64 {
	var xs []float64
	for _, p := range m.pieces[:len(m.pieces)-1] {
		seam, _ := p.span()
		xs = append(xs, seam)
	}
	return xs
}

// offset turns a distance through the wall [m] into one from the concave side.
func (m *meridian) offset(o float64) float64 {
	if m.g.Inward {
		return -o
	}
	return o
}

// parallel refuses a parallel surface that would have a cusp, or NaN.
func (m *meridian) parallel(o float64) error {
	for _, p := range m.pieces {
		if !(p.tightest()+o > 0) {
			return fmt.Errorf("no parallel surface %.4g m from the inside of the %s: its %s has a radius of only %.4g m",
				math.Abs(o), m.kind, p.name(), p.tightest())
		}
	}
	return nil
}

func (m *meridian) AxialAt(r, offset float64) (float64, error) {
	p, err := m.PointAt(r, offset)
	return p.X, err
}

func (m *meridian) PointAt(r, offset float64) (Point, error) {
	nowhere := Point{X: math.NaN(), R: math.NaN(), Phi: math.NaN(), R1: math.NaN(), R2: math.NaN()}
	o := m.offset(offset)
	if err := m.parallel(o); err != nil {
		return nowhere, err
	}
	for i, p := range m.pieces {
		s := p.find(r, o)
		// A radius belongs to the piece whose seam end it does not pass; the first
		// piece also holds what lies a little inside its apex end (line.find).
		if s <= 1+rounding && (s >= -rounding || i == 0) {
			at := p.at(s, o)
			at.R = r
			return at, nil
		}
	}
	return nowhere, fmt.Errorf("the %s has no point at radius %.6g m: it runs from %.6g m to %.6g m",
		m.kind, r, m.g.TipDiameter/2, m.pieces[len(m.pieces)-1].at(1, o).R)
}

func (m *meridian) Pieces(n int, offset float64) [][]Point {
	o := m.offset(offset)
	if m.parallel(o) != nil {
		return nil
	}
	each := max(2, (n+len(m.pieces)-1)/len(m.pieces)+1)
	all := make([][]Point, len(m.pieces))
	for i, p := range m.pieces {
		for k := range each {
			all[i] = append(all[i], p.at(float64(k)/float64(each-1), o))
		}
	}
	return all
}

func (m *meridian) Points(n int, offset float64) []Point {
	var all []Point
	for i, ps := range m.Pieces(n, offset) {
		if i > 0 && len(all) > 0 {
			all = all[:len(all)-1] // the joint belongs to the outer piece
		}
		all = append(all, ps...)
	}
	return all
}
