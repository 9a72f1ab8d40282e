package revolution

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/blas"
	"gonum.org/v1/gonum/blas/blas64"
	"gonum.org/v1/gonum/lapack/lapack64"
)

const π = math.Pi

// A Solution is one state of the wall.
type Solution struct {
	Stations     []Station  // along the meridian, both sides of every joint
	Reactions    []Reaction // of the supports
	VolumeGrowth float64    // 2π ∫ w r ds, what the mid-surface sweeps outwards [m3]
	Residual     float64    // greatest unbalanced load after refinement over the greatest load, both in the scaled unknowns [-]
	Balance      float64    // axial loads and reactions together, over their sum without sign [-]

	m *Model
	u []float64
}

// A Reaction is what a support does to the wall.
type Reaction struct {
	Node   int
	Axial  float64 // total, positive forward [N]
	Radial float64 // per length of circumference, positive outward [N/m]
	Moment float64 // per length of circumference, as Force [N m/m]
}

// Solve returns the linear state under the load: small displacements, elastic.
// The factor of the model serves every load; one step of refinement follows.
// The residual stands in the solution; above 1e-6 the state is refused.
func (m *Model) Solve(l Load) (*Solution, error) {
	f, err := m.vector(l)
	if err != nil {
		return nil, err
	}
	u, r := make([]float64, m.n), make([]float64, m.n)
	copy(r, f)
	m.back(r)
	copy(u, r)
	m.unbalance(r, f, u)
	m.back(r)
	for i := range u {
		u[i] += r[i]
	}
	m.unbalance(r, f, u)
	s := &Solution{m: m, u: u, Residual: m.residual(r, f)}
	if !(s.Residual <= 1e-6) {
		return nil, fmt.Errorf("the numerical shell did not reach its equilibrium: residual %.2g", s.Residual)
	}
	s.react(r, f)
	for i, v := range m.volume {
		s.VolumeGrowth += 2 * π * v * u[i]
	}
	s.Stations = m.stations(u, false)
	return s, nil
}

// back solves the held and scaled system in place.
func (m *Model) back(x []float64) {
	for i, s := range m.scale {
		x[i] *= s
	}
	lapack64.Pbtrs(blas64.TriangularBand{Uplo: blas.Upper, Diag: blas.NonUnit, N: m.n, K: width, Stride: stride, Data: m.factor},
		blas64.General{Rows: m.n, Cols: 1, Stride: 1, Data: x})
	for i, s := range m.scale {
		x[i] *= s
	}
}

// unbalance sets r to f − K u of the free structure.
func (m *Model) unbalance(r, f, u []float64) {
	copy(r, f)
	blas64.Sbmv(-1, blas64.SymmetricBand{Uplo: blas.Upper, N: m.n, K: width, Stride: stride, Data: m.k},
		blas64.Vector{N: m.n, Inc: 1, Data: u}, 1, blas64.Vector{N: m.n, Inc: 1, Data: r})
}

// residual compares the unbalance r of the free unknowns with the load f; a
// load that is nothing leaves nothing.
func (m *Model) residual(r, f []float64) float64 {
	var worst, most float64
	for i, s := range m.scale {
		worst = math.Max(worst, math.Abs(r[i]*s))
		most = math.Max(most, math.Abs(f[i]*s))
		if math.IsNaN(r[i]) {
			return math.NaN()
		}
	}
	if most == 0 {
		return worst
	}
	return worst / most
}

// react fills reactions and balance from the unbalance r = f − K u.
func (s *Solution) react(r, f []float64) {
	m := s.m
	for _, p := range m.s.Supports {
		at, radius := m.nodes[p.Node], m.s.node(p.Node).R
		out := Reaction{Node: p.Node}
		if p.Axial {
			out.Axial = -2 * π * r[at+1]
		}
		if p.Radial && radius > 0 {
			out.Radial = -r[at] / radius
		}
		if p.Rotation && radius > 0 {
			out.Moment = -r[at+2] / radius
		}
		s.Reactions = append(s.Reactions, out)
	}
	var sum, gross float64
	add := func(x float64) { sum, gross = sum+x, gross+math.Abs(x) }
	for i := range m.elements {
		add(2 * π * f[m.elements[i].dof+1])
	}
	add(2 * π * f[m.nodes[len(m.nodes)-1]+1])
	held := map[int]bool{}
	for _, p := range s.Reactions {
		if !held[p.Node] {
			add(p.Axial)
		}
		held[p.Node] = held[p.Node] || p.Axial != 0
	}
	if gross > 0 {
		s.Balance = math.Abs(sum) / gross
	}
}
