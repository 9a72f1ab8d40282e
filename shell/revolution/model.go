package revolution

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

// A Model is the mesh of a structure with its stiffness assembled and factored
// once. It does not change after New, so that any number of goroutines may
// solve with it at a time.
type Model struct {
	s        Structure
	elements []element
	shapes   []shape
	points   []point // gauss of each element
	walls    []stiff // of each segment
	arms     []arm   // from the node before each segment to where its wall begins
	nodes    []int   // first unknown of each node's displacements
	fixed    []int   // unknowns that are held, growing
	n        int     // number of unknowns

	k      []float64 // stiffness of the free structure, band, per radian
	factor []float64 // Cholesky factor of the scaled and held stiffness
	scale  []float64 // 1/√ of its diagonal; 0 where held
	volume []float64 // volume displaced by each unknown, per radian

	finer finer
}

// A point is a point of integration: frame, metric of its element and weight.
type point struct {
	frame
	w float64 // weight times ds/dξ times r: area per radian [m2]
}

const (
	width  = span - 1 // superdiagonals of the band
	stride = span
)

// New builds the model, or says what is wrong with the structure. A structure
// that its supports leave free to move is refused.
func New(s Structure) (*Model, error) {
	if err := s.fault(); err != nil {
		return nil, err
	}
	m := &Model{s: s, walls: make([]stiff, len(s.Segments)), arms: make([]arm, len(s.Segments))}
	for i, g := range s.Segments {
		m.walls[i] = g.stiff()
	}
	m.elements, m.n, m.nodes = s.elements()
	for _, e := range m.elements {
		if e.arm != (arm{}) {
			m.arms[e.segment] = e.arm
		}
	}
	m.holds()
	m.k = make([]float64, m.n*stride)
	m.shapes, m.points = make([]shape, len(m.elements)), make([]point, gauss*len(m.elements))
	for i := range m.elements {
		m.place(i)
		m.stiffen(i)
	}
	for _, g := range s.Rings {
		m.ring(g, m.k)
	}
	var err error
	if m.volume, err = m.vector(Uniform(1)); err != nil { // not reached: a pressure of 1 Pa is finite everywhere
		return nil, err
	}
	if err := m.factorise(); err != nil {
		return nil, err
	}
	return m, nil
}

// holds lists the unknowns that supports and the axis hold.
func (m *Model) holds() {
	held := make([]bool, m.n)
	for _, p := range m.s.Supports {
		at := m.nodes[p.Node]
		held[at] = held[at] || p.Radial
		held[at+1] = held[at+1] || p.Axial
		held[at+2] = held[at+2] || p.Rotation
	}
	for _, node := range []int{0, len(m.s.Segments)} {
		if m.s.node(node).R == 0 {
			held[m.nodes[node]], held[m.nodes[node]+2] = true, true
		}
	}
	for i, h := range held {
		if h {
			m.fixed = append(m.fixed, i)
		}
	}
}

// place fills the geometry of element i.
func (m *Model) place(i int) {
	e := &m.elements[i]
	c := m.s.Segments[e.segment].Curve
	Δ := e.τ1 - e.τ0
	m.shapes[i] = shapeOf(e, c.at(e.τ0), c.at(e.τ1))
	for g := range gauss {
		f := c.at(e.τ0 + abscissae[g]*Δ)
		f.j, f.dj = f.j*Δ, f.dj*Δ*Δ
		m.points[i*gauss+g] = point{frame: f, w: weights[g] * f.j * f.r}
	}
}

// stiffen adds the stiffness of element i:
//
//	K = ∫ Bᵀ D B r ds, B the four strains of strains
func (m *Model) stiffen(i int) {
	e, sh := &m.elements[i], &m.shapes[i]
	wall := m.walls[e.segment]
	band := m.k[e.dof*stride : (e.dof+span)*stride]
	for g := range gauss {
		p := &m.points[i*gauss+g]
		h := bases[g].along(p.j, p.dj)
		var b, db [span][4]float64
		for a := range span {
			u := sh.unknown(a, &h)
			ε := p.strains(u)
			ns, nθ, ms, mθ := wall.resultants(ε)
			b[a] = [4]float64{ε.s, ε.θ, ε.κs, ε.κθ}
			db[a] = [4]float64{ns * p.w, nθ * p.w, ms * p.w, mθ * p.w}
		}
		for a := range span {
			row, x := band[a*stride:a*stride+span-a], &db[a]
			for c := range row {
				y := &b[a+c]
				row[c] += x[0]*y[0] + x[1]*y[1] + x[2]*y[2] + x[3]*y[3]
			}
		}
	}
}

// ring adds a ring at its node: with r_c the radius of its centroid, which moves
// out by u_r + β z_c, per radian
//
//	½ E A (u_c/r_c)² r_c + ½ E I (β/r_c)² r_c
func (m *Model) ring(g Ring, k []float64) {
	rc := m.s.node(g.Node).R + g.Offset.R
	ea, ei := g.Modulus*g.Area/rc, g.Modulus*g.Axial/rc
	at := m.nodes[g.Node] * stride
	z := g.Offset.Z
	k[at] += ea                   // u_r u_r
	k[at+2] += ea * z             // u_r β
	k[at+2*stride] += ea*z*z + ei // β β
}

// factorise scales the held stiffness to a unit diagonal and factors it.
func (m *Model) factorise() error {
	m.factor, m.scale = make([]float64, len(m.k)), make([]float64, m.n)
	for i := range m.scale {
		m.scale[i] = 1 / math.Sqrt(m.k[i*stride])
	}
	for _, i := range m.fixed {
		m.scale[i] = 0
	}
	for i := range m.n {
		for d := 0; d < stride && i+d < m.n; d++ {
			m.factor[i*stride+d] = m.k[i*stride+d] * m.scale[i] * m.scale[i+d]
		}
		if m.scale[i] == 0 {
			m.factor[i*stride] = 1
		}
	}
	_, ok := lapack64.Pbtrf(blas64.SymmetricBand{Uplo: blas.Upper, N: m.n, K: width, Stride: stride, Data: m.factor})
	if !ok || !finite(m.scale...) {
		return fmt.Errorf("the stiffness of %s to %s is singular: a part is free to move or a wall is too thin for the numbers",
			m.s.Segments[0].Name, m.s.Segments[len(m.s.Segments)-1].Name)
	}
	return nil
}

// Elements returns the number of elements of the mesh.
func (m *Model) Elements() int { return len(m.elements) }
