package revolution

import "math"

// An element is a piece of one segment: τ0 ≤ τ ≤ τ1 of its curve. Its twelve
// unknowns stand together from dof on; order tells where each of the two ends'
// six stands among them.
type element struct {
	segment int
	τ0, τ1  float64
	dof     int
	joint   bool // its end is a joint, numbered the other way round
	arm     arm  // from the node before it to where its wall begins
}

// An arm is a rigid link between two mid-surfaces [m].
type arm struct{ r, z float64 }

const (
	finest  = 0.25 // element size over √(r₂ t) at a joint
	growing = 0.1  // by how much of the distance from the joint elements grow
	probes  = 96   // places at which the density of a segment is taken
)

// A graded is the running integral of the element density over one segment.
type graded [probes + 1]float64

// density fills the running integral of 1/h over the segment's curve, h being
// the element size asked for: a quarter of √(r₂ t) at both ends, growing with the
// distance from the nearer, but never over an eighth of the segment's length.
func (s Structure) density(i int) *graded {
	c, t := s.Segments[i].Curve, s.Segments[i].Thickness
	var fs [probes + 1]frame
	var x [probes + 1]float64
	for p := range fs {
		fs[p] = c.at(float64(p) / probes)
		if p > 0 {
			x[p] = x[p-1] + (fs[p].j+fs[p-1].j)/(2*probes)
		}
	}
	length := x[probes]
	l0, l1 := edgeLength(fs[0], fs[probes/2], t, length), edgeLength(fs[probes], fs[probes/2], t, length)
	g := new(graded)
	last := 0.0
	for p := range fs {
		h := math.Min(finest*l0+growing*x[p], finest*l1+growing*(length-x[p]))
		d := fs[p].j / math.Min(h, length/8)
		if p > 0 {
			g[p] = g[p-1] + (d+last)/(2*probes)
		}
		last = d
	}
	return g
}

// edgeLength is √(r₂ t) at an end, r₂ = r/sin φ; a pole takes it from inside the
// segment and a plate from its radius.
func edgeLength(f, mid frame, t, length float64) float64 {
	r2 := func(f frame) float64 { return f.r / math.Max(math.Abs(f.tz), f.r/(f.r+length)) }
	r := r2(f)
	if f.r == 0 {
		r = r2(mid)
	}
	return math.Min(math.Sqrt(r*t), length)
}

// cuts returns the τ at which n elements of equal density end.
func (g *graded) cuts(n int) []float64 {
	out := make([]float64, n+1)
	out[n] = 1
	p := 0
	for i := 1; i < n; i++ {
		want := g[probes] * float64(i) / float64(n)
		for g[p+1] < want {
			p++
		}
		out[i] = (float64(p) + (want-g[p])/(g[p+1]-g[p])) / probes
	}
	return out
}

// elements makes the mesh and returns it with the number of unknowns and the
// first unknown of every node's displacements.
func (s Structure) elements() (es []element, unknowns int, nodes []int) {
	gs, total := make([]*graded, len(s.Segments)), 0.0
	for i := range s.Segments {
		gs[i] = s.density(i)
		total += gs[i][probes]
	}
	scale := 1.0
	if s.Mesh.Elements > 0 {
		scale = float64(s.Mesh.Elements) / total
	}
	nodes, dof := make([]int, len(s.Segments)+1), 0
	for i := range s.Segments {
		n := max(2, int(math.Round(gs[i][probes]*scale)))
		τ := gs[i].cuts(n)
		for range s.Mesh.halved {
			τ = halved(τ)
		}
		n = len(τ) - 1
		for k := range n {
			e := element{segment: i, τ0: τ[k], τ1: τ[k+1], dof: dof}
			dof += half
			if k == n-1 && i < len(s.Segments)-1 {
				e.joint = true
				dof += half - shared // the strains of the far side are its own
				nodes[i+1] = dof
			}
			es = append(es, e)
		}
		if i > 0 {
			end, start := s.Segments[i-1].Curve.at(1), s.Segments[i].Curve.at(0)
			es[len(es)-n].arm = s.Segments[i].arm(end, start)
		}
	}
	nodes[len(s.Segments)] = dof
	return es, dof + half, nodes
}

// arm is the rigid link of a segment that may begin off the one before; without
// Linked what is left is rounding.
func (g Segment) arm(end, start frame) arm {
	if !g.Linked {
		return arm{}
	}
	return arm{r: start.r - end.r, z: start.z - end.z}
}

func halved(τ []float64) []float64 {
	out := make([]float64, 0, 2*len(τ))
	for i := range len(τ) - 1 {
		out = append(out, τ[i], (τ[i]+τ[i+1])/2)
	}
	return append(out, 1)
}
