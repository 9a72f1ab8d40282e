package revolution

import (
	"fmt"
	"math"
	"sync"
)

// A finer is the model with every element halved, made once when first asked.
type finer struct {
	once  sync.Once
	model *Model
	err   error
}

// Refined returns the model of the same structure with every element halved. It
// is made once and kept.
func (m *Model) Refined() (*Model, error) {
	m.finer.once.Do(func() {
		s := m.s
		s.Mesh.halved++
		m.finer.model, m.finer.err = New(s)
	})
	return m.finer.model, m.finer.err
}

// A MeshError is how far a solution is from the one on elements half as long.
type MeshError struct {
	Stress float64 // greatest difference of any stress at any station, over the greatest stress of the state [-]
	At     Station // where
}

// MeshError solves the load again on elements half as long and compares the
// stresses of every station, membrane and both faces. With elements as fine as
// the default the error falls with the fourth power of their length, so that
// the difference is all of it but a sixteenth.
func (m *Model) MeshError(u *Solution, l Load) (MeshError, error) {
	fine, err := m.Refined()
	if err != nil { // not reached: the same structure made the coarse model
		return MeshError{Stress: math.NaN()}, err
	}
	v, err := fine.Solve(l)
	if err != nil {
		return MeshError{Stress: math.NaN()}, err
	}
	return u.against(v)
}

// against compares with the solution on halved elements: station j of a segment
// is station 2j of the finer one.
func (s *Solution) against(fine *Solution) (MeshError, error) {
	if len(fine.Stations) != 2*len(s.Stations)-len(s.m.walls) {
		return MeshError{Stress: math.NaN()}, fmt.Errorf("the meshes do not match: %d and %d stations", len(s.Stations), len(fine.Stations))
	}
	worst, most, at, j := 0.0, 0.0, 0, 0
	for i := range s.Stations {
		a := &s.Stations[i]
		if i > 0 {
			j += 2
			if a.Segment != s.Stations[i-1].Segment {
				j--
			}
		}
		d, scale := a.differ(&fine.Stations[j])
		if most = math.Max(most, scale); d > worst {
			worst, at = d, i
		}
	}
	if most == 0 {
		return MeshError{At: s.Stations[at]}, nil
	}
	return MeshError{Stress: worst / most, At: s.Stations[at]}, nil
}

// differ returns the greatest difference of a stress and the greatest stress [Pa].
func (a *Station) differ(b *Station) (d, most float64) {
	for i, x := range [3]Stress{a.Membrane, a.Inside, a.Outside} {
		y := [3]Stress{b.Membrane, b.Inside, b.Outside}[i]
		d = math.Max(d, math.Max(math.Abs(x.Meridional-y.Meridional), math.Abs(x.Hoop-y.Hoop)))
		most = math.Max(most, math.Max(math.Abs(y.Meridional), math.Abs(y.Hoop)))
	}
	return d, most
}
