package revolution

import (
	"errors"
	"math"
)

// Plus returns s + f o, the state under the loads of s and f times those of o [-],
// without volume from the moderate rotations: small displacements add up. Residual
// and balance are the larger of the two.
//
// Both must be linear states of one model; otherwise it is an error.
func (s *Solution) Plus(f float64, o *Solution) (*Solution, error) {
	if s.m != o.m || len(s.Stations) != len(o.Stations) {
		return nil, errors.New("states of two models of the numerical shell do not add up")
	}
	out := &Solution{m: s.m, VolumeGrowth: s.VolumeGrowth + f*o.VolumeGrowth,
		Residual: math.Max(s.Residual, o.Residual), Balance: math.Max(s.Balance, o.Balance)}
	out.u = make([]float64, len(s.u))
	for i, v := range s.u {
		out.u[i] = v + f*o.u[i]
	}
	for i, r := range s.Reactions {
		q := o.Reactions[i]
		out.Reactions = append(out.Reactions, Reaction{r.Node, r.Axial + f*q.Axial, r.Radial + f*q.Radial, r.Moment + f*q.Moment})
	}
	out.Stations = make([]Station, len(s.Stations))
	for i := range s.Stations {
		a, b, c := &s.Stations[i], &o.Stations[i], &out.Stations[i]
		c.Segment, c.Arc, c.R, c.Z, c.Slender = a.Segment, a.Arc, a.R, a.Z, a.Slender
		c.Radial, c.Axial, c.Rotation = a.Radial+f*b.Radial, a.Axial+f*b.Axial, a.Rotation+f*b.Rotation
		c.NPhi, c.NTheta, c.MPhi, c.MTheta = a.NPhi+f*b.NPhi, a.NTheta+f*b.NTheta, a.MPhi+f*b.MPhi, a.MTheta+f*b.MTheta
		c.Membrane, c.Inside, c.Outside = a.Membrane.plus(f, b.Membrane), a.Inside.plus(f, b.Inside), a.Outside.plus(f, b.Outside)
	}
	return out, nil
}

// plus returns s + f o.
func (s Stress) plus(f float64, o Stress) Stress {
	return Stress{s.Meridional + f*o.Meridional, s.Hoop + f*o.Hoop}
}
