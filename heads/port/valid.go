package port

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

var inf = math.Inf(1)

// Faults are what is wrong with numbers; their words are made only for those that are.
type faults struct {
	port string // whose they are, or ""
	all  []error
}

// say adds a fault.
func (f *faults) say(format string, args ...any) {
	if f.port != "" {
		format = "port " + strings.ReplaceAll(f.port, "%", "%%") + ": " + format
	}
	f.all = append(f.all, fmt.Errorf(format, args...))
}

// positive asks that v [SI] is finite and greater than zero.
func (f *faults) positive(param string, v float64) {
	if !(v > 0 && v < inf) {
		f.say("%s is %.4g, must be a number greater than zero", param, v)
	}
}

// notNegative asks that v [SI] is finite and at least zero.
func (f *faults) notNegative(param string, v float64) {
	if !(v >= 0 && v < inf) {
		f.say("%s is %.4g, must be a number from zero up", param, v)
	}
}

// valid returns an error for a wall that does not describe a surface.
func (w Wall) valid() error {
	if w.Surface < Cylinder || w.Surface > Flat {
		return errors.New("the wall a port stands in is not described")
	}
	var f faults
	f.positive("wall thickness at the port", w.Thickness)
	f.positive(radiusOf[w.Surface], w.Radius)
	f.notNegative("tip radius", w.Tip)
	f.notNegative("edge radius", w.Edge)
	f.notNegative("zone of the outboard joint", w.OutboardZone)
	f.notNegative("zone of the inboard joint", w.InboardZone)
	switch w.Surface {
	case Cylinder:
		f.positive("length of the cylinder", w.Length)
	case Cone:
		if !(w.HalfApex > 0 && w.HalfApex < math.Pi/2) {
			f.say("half angle of the cone is %.4g deg, must lie between 0 and 90", w.HalfApex*180/math.Pi)
		}
	case Ellipsoid:
		f.positive("depth of the ellipsoid", w.Depth)
	case Torisphere:
		f.positive("knuckle radius", w.Knuckle)
		f.positive("crown radius", w.Crown)
		if !(w.Knuckle < w.Radius && w.Crown > w.Radius) {
			f.say("a torisphere needs a knuckle radius under half the diameter and a crown radius over it")
		}
	}
	if w.Edge > w.Radius {
		f.say("the part ends at %.4g m from the axis, beyond its radius %.4g m", w.Edge, w.Radius)
	}
	if t := w.Thickness; w.Surface != Flat && !(t < w.Radius) {
		f.all = append(f.all, check.Within("port.Wall", "wall over mid-surface radius", t/w.Radius, 0, 1, "a shell"))
	}
	return errors.Join(f.all...)
}

// radiusOf names the radius of every surface.
var radiusOf = func() (out [Flat + 1]string) {
	for s := Cylinder; s <= Flat; s++ {
		out[s] = "radius of the " + s.String()
	}
	return out
}()

// valid returns an error for a port whose numbers are missing or impossible.
func (p Port) valid() error {
	f := faults{port: p.Name}
	f.positive("outside diameter", p.OutsideDiameter)
	f.positive("tube wall, corroded", p.TubeWall)
	f.notNegative("radius", p.Radius)
	f.notNegative("offset", math.Abs(p.Offset))
	f.notNegative("outside projection", p.Outside)
	f.notNegative("inside projection", p.Inside)
	f.notNegative("outside leg", p.OutsideLeg)
	f.notNegative("inside leg", p.InsideLeg)
	f.notNegative("groove", p.Groove)
	if !(2*p.TubeWall < p.OutsideDiameter) {
		f.say("a tube of %.4g m wall has no bore at %.4g m outside diameter", p.TubeWall, p.OutsideDiameter)
	}
	if math.IsNaN(p.Station) || math.IsInf(p.Station, 0) {
		f.say("station is not a number")
	}
	if p.Inside > 0 {
		f.positive("inside wall, corroded on both faces", p.InsideWall)
		if p.Fit != Through {
			f.say("a tube that projects inside goes through the wall: fit through")
		}
	}
	p.Pad.valid(&f)
	p.Insert.valid(&f)
	return errors.Join(f.all...)
}

func (q *Pad) valid(f *faults) {
	if q == nil {
		return
	}
	f.positive("pad thickness", q.Thickness)
	f.notNegative("pad leg", q.Leg)
	f.notNegative("pad lip", q.Lip)
	f.notNegative("pad length", q.Length)
	if q.Lip == 0 {
		f.positive("pad diameter", q.OutsideDiameter)
	} else if q.Length != 0 {
		f.say("a pad has the same lip all round or a length, not both")
	}
}

func (q *Insert) valid(f *faults) {
	if q == nil {
		return
	}
	f.positive("insert diameter", q.OutsideDiameter)
	f.positive("insert thickness", q.Thickness)
	if !(q.Efficiency > 0 && q.Efficiency <= 1) {
		f.say("efficiency of the insert's butt weld is %.4g, must be above 0 and at most 1", q.Efficiency)
	}
}
