package loads

import (
	"errors"
	"fmt"
	"math"
)

// WallForce returns the force in the wall per length of circumference [N/m],
// along the meridian and tension positive, on the plane z [m]:
//
//	N = F/(2 π r cos α) ± M/(π r² cos α)
//
// pressureMost and pressureLeast hold gas and liquid: they differ by n_x g0 m_liq
// where both joints may carry the tank, the most as it hangs and the least as it
// stands for n_x > 0. loadMost and loadLeast are the loads alone on the two sides
// of the bending; the liquid's weight is in none of them. r is the mid-wall
// radius and α the angle of the wall to the axis. The relief of an axial load by
// pressure comes from the free body, never from the local p r/2.
//
// It holds for a round, thin wall below 80 degrees of α; the flat of a head has
// no such force. Source: [State.FreeBody] and beam theory, in doc.go.
func (s *State) WallForce(z float64, b Body) (pressureMost, pressureLeast, loadMost, loadLeast float64, err error) {
	nan := math.NaN()
	f, err := s.FreeBody(z, b)
	if err != nil {
		return nan, nan, nan, nan, err
	}
	r, α := b.Radius(z), 0.0
	if b.HalfAngle != nil {
		α = b.HalfAngle(z)
	}
	if !(r > 0) || !(math.Abs(α) <= 80*math.Pi/180) {
		return nan, nan, nan, nan, fmt.Errorf("no force along the wall at z = %.4g m: radius %.4g m, wall %.3g deg from the axis", z, r, α*180/math.Pi)
	}
	round := 2 * math.Pi * r * math.Cos(α)
	bending := 2 * f.Moment / r
	pressureMost = (f.Ullage + f.LiquidMost) / round
	pressureLeast = (f.Ullage + f.LiquidLeast) / round
	loadMost = (f.LoadMost + bending) / round
	loadLeast = (f.LoadLeast - bending) / round
	if math.IsNaN(pressureMost + pressureLeast + loadMost + loadLeast) {
		return nan, nan, nan, nan, errors.New("the force in the wall is not a number: a load, mass or radius is missing")
	}
	return pressureMost, pressureLeast, loadMost, loadLeast, nil
}

// headForce returns ∫ (p − p_u) dA [N] over the inside of the plane z [m], the
// liquid's own pressure on the cut. With s = c − n_x z, and x0 = −s/n_y the line
// where the free plane meets the cut:
//
//	∫ (s + n_y x) dA over x ≥ x0 = s A + n_y (2/3)(r² − x0²)^(3/2)
func (s *State) headForce(z float64) float64 {
	_, r := s.in.Radii(z)
	depth := s.depth(z, 0)
	weight := s.Liquid.Density * StandardGravity
	y := s.Acceleration.Lateral
	if y == 0 {
		return weight * max(0, depth) * math.Pi * r * r
	}
	x0 := min(max(-depth/y, -r), r)
	return weight * (depth*segmentArea(r, x0/r) + y*2/3*math.Pow((r-x0)*(r+x0), 1.5))
}

// clearOfInwardHead returns z itself, or the station [m] of the crown of the
// inward head that stands beside it.
func (s *State) clearOfInwardHead(z float64) (float64, error) {
	if inner, _ := s.in.Radii(z); !(inner > 0) {
		return z, nil
	}
	at := math.NaN()
	for _, b := range s.zs {
		inner, outer := s.in.Radii(b)
		if inner <= 1e-9*outer && !(math.Abs(b-z) >= math.Abs(at-z)) {
			at = b
		}
	}
	if math.IsNaN(at) {
		return at, errors.New("the inside of the tank has no station clear of its inward head")
	}
	return at, nil
}

// InwardHeadForce returns the axial force [N], tension positive, that gas and
// liquid put into the wall of an inward head on the cut z [m], from the part of
// the head between the cut and its crown:
//
//	V = −∫ p̄ dA, A = π r_in²
//
// p̄ being the mean of the pressure round the ring, so that V is compression;
// for a flat level V = −[π r_in² p(z) − n_x ρ g0 × (volume within the head
// beyond the cut)]. The wall of the cylinder beside it is [State.FreeBody]'s.
//
// It holds between rim and crown of an inward head; elsewhere it is an error.
//
// Source: equilibrium of the part of the head (computed).
func (s *State) InwardHeadForce(z float64) (float64, error) {
	if inner, _ := s.in.Radii(z); !(inner > 0) {
		return math.NaN(), fmt.Errorf("no inward head stands at z = %.4g m", z)
	}
	crown, err := s.clearOfInwardHead(z)
	if err != nil {
		return math.NaN(), err
	}
	if reach := s.Acceleration.Lateral * s.domeRadius(z); reach == 0 || !s.fluid || s.covers(z, crown, reach) {
		return -s.PressureAt(z, 0)*math.Pi*math.Pow(s.domeRadius(z), 2) - s.domeWeight(z, crown), nil
	}
	const rings = 500 // midpoint rule: 1e-5 of the force
	force, outer := 0.0, z
	for i := 1; i <= rings; i++ { // rings crowd toward the crown, where the wall lies flat
		u := 1 - float64(i)/rings
		inner := crown + (z-crown)*u*u
		r1, _ := s.in.Radii(outer)
		r2, _ := s.in.Radii(inner)
		force -= s.ringPressure((outer+inner)/2) * math.Pi * (r1*r1 - r2*r2)
		outer = inner
	}
	return force, nil
}

// domeRadius returns the radius of the inward head at z [m].
func (s *State) domeRadius(z float64) float64 {
	r, _ := s.in.Radii(z)
	return r
}

// covers reports whether the free plane leaves an inward head between the cut z and
// its crown [m] wet all round or dry all round, lateral factor times radius being reach
// [m]: then the mean pressure of each ring is that of the axis.
func (s *State) covers(z, crown, reach float64) bool {
	a, b := s.depth(z, 0), s.depth(crown, 0)
	return min(a, b) >= reach || max(a, b) <= -reach
}

// domeWeight returns n_x ρ g0 times the volume within an inward head between its crown
// and the cut z [m] that lies below the free level [N], with the sign in which the
// pressure grows from the crown to the cut.
func (s *State) domeWeight(z, crown float64) float64 {
	n := s.Acceleration.Axial
	if !s.fluid || n == 0 {
		return 0
	}
	a, b, sign := crown, z, 1.0
	if a > b {
		a, b, sign = z, crown, -1
	}
	if level := s.plane / n; n > 0 {
		b = min(b, level)
	} else {
		a = max(a, level)
	}
	sum := 0.0
	for i := 1; i < len(s.zs); i++ {
		if z1, z2 := max(s.zs[i-1], a), min(s.zs[i], b); z1 < z2 {
			sum += panel(z1, z2, func(z float64) float64 { r := s.domeRadius(z); return math.Pi * r * r })
		}
	}
	return sign * n * s.Liquid.Density * StandardGravity * sum
}

// ringPressure returns the mean pressure [Pa] round the inward head at z [m]:
// with a lateral factor above 0, s = c − n_x z and θ0 = acos(−s/(n_y r)) cut to [0, π],
//
//	p̄ = p_u + ρ g0 (s θ0 + n_y r sin θ0)/π
func (s *State) ringPressure(z float64) float64 {
	r, _ := s.in.Radii(z)
	reach, depth := s.Acceleration.Lateral*r, s.depth(z, 0)
	θ := math.Acos(min(max(-depth/reach, -1), 1))
	return s.UllagePressure + s.Liquid.Density*StandardGravity*(depth*θ+reach*math.Sin(θ))/math.Pi
}
