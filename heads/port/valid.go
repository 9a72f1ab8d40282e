package port

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

var inf = math.Inf(1)

// positive returns an error unless v [SI] is finite and greater than zero.
func positive(param string, v float64) error {
	if v > 0 && v < inf {
		return nil
	}
	return fmt.Errorf("%s is %.4g, must be a number greater than zero", param, v)
}

// notNegative returns an error unless v [SI] is finite and at least zero.
func notNegative(param string, v float64) error {
	if v >= 0 && v < inf {
		return nil
	}
	return fmt.Errorf("%s is %.4g, must be a number from zero up", param, v)
}

// valid returns an error for a wall that does not describe a surface.
func (w Wall) valid() error {
	if w.Surface < Cylinder || w.Surface > Flat {
		return errors.New("the wall a port stands in is not described")
	}
	errs := []error{positive("wall thickness at the port", w.Thickness), positive("radius of the "+w.Surface.String(), w.Radius),
		notNegative("tip radius", w.Tip), notNegative("edge radius", w.Edge),
		notNegative("zone of the outboard joint", w.OutboardZone), notNegative("zone of the inboard joint", w.InboardZone)}
	switch w.Surface {
	case Cylinder:
		errs = append(errs, positive("length of the cylinder", w.Length))
	case Cone:
		if !(w.HalfApex > 0 && w.HalfApex < math.Pi/2) {
			errs = append(errs, fmt.Errorf("half angle of the cone is %.4g deg, must lie between 0 and 90", w.HalfApex*180/math.Pi))
		}
	case Ellipsoid:
		errs = append(errs, positive("depth of the ellipsoid", w.Depth))
	case Torisphere:
		errs = append(errs, positive("knuckle radius", w.Knuckle), positive("crown radius", w.Crown))
		if !(w.Knuckle < w.Radius && w.Crown > w.Radius) {
			errs = append(errs, errors.New("a torisphere needs a knuckle radius under half the diameter and a crown radius over it"))
		}
	}
	if w.Edge > w.Radius {
		errs = append(errs, fmt.Errorf("the part ends at %.4g m from the axis, beyond its radius %.4g m", w.Edge, w.Radius))
	}
	if t := w.Thickness; w.Surface != Flat && !(t < w.Radius) {
		errs = append(errs, check.Within("port.Wall", "wall over mid-surface radius", t/w.Radius, 0, 1, "a shell"))
	}
	return errors.Join(errs...)
}

// valid returns an error for a port whose numbers are missing or impossible.
func (p Port) valid() error {
	at := "port " + p.Name + ": "
	errs := []error{positive(at+"outside diameter", p.OutsideDiameter), positive(at+"tube wall, corroded", p.TubeWall),
		notNegative(at+"radius", p.Radius), notNegative(at+"offset", math.Abs(p.Offset)), notNegative(at+"outside projection", p.Outside), notNegative(at+"inside projection", p.Inside),
		notNegative(at+"outside leg", p.OutsideLeg), notNegative(at+"inside leg", p.InsideLeg), notNegative(at+"groove", p.Groove)}
	if !(2*p.TubeWall < p.OutsideDiameter) {
		errs = append(errs, fmt.Errorf("%sa tube of %.4g m wall has no bore at %.4g m outside diameter", at, p.TubeWall, p.OutsideDiameter))
	}
	if math.IsNaN(p.Station) || math.IsInf(p.Station, 0) {
		errs = append(errs, errors.New(at+"station is not a number"))
	}
	if p.Inside > 0 {
		errs = append(errs, positive(at+"inside wall, corroded on both faces", p.InsideWall))
		if p.Fit != Through {
			errs = append(errs, errors.New(at+"a tube that projects inside goes through the wall: fit through"))
		}
	}
	return errors.Join(append(errs, p.Pad.valid(at), p.Insert.valid(at))...)
}

func (q *Pad) valid(at string) error {
	if q == nil {
		return nil
	}
	errs := []error{positive(at+"pad thickness", q.Thickness), notNegative(at+"pad leg", q.Leg), notNegative(at+"pad lip", q.Lip), notNegative(at+"pad length", q.Length)}
	if q.Lip == 0 {
		errs = append(errs, positive(at+"pad diameter", q.OutsideDiameter))
	} else if q.Length != 0 {
		errs = append(errs, errors.New(at+"a pad has the same lip all round or a length, not both"))
	}
	return errors.Join(errs...)
}

func (q *Insert) valid(at string) error {
	if q == nil {
		return nil
	}
	errs := []error{positive(at+"insert diameter", q.OutsideDiameter), positive(at+"insert thickness", q.Thickness)}
	if !(q.Efficiency > 0 && q.Efficiency <= 1) {
		errs = append(errs, fmt.Errorf("%sefficiency of the insert's butt weld is %.4g, must be above 0 and at most 1", at, q.Efficiency))
	}
	return errors.Join(errs...)
}
