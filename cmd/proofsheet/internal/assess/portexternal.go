package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/heads"
	"proofsheet/heads/port"
	"proofsheet/material"
	"proofsheet/shell/buckling"
)

// An outsideKey is all that the wall required for pressure from outside depends on.
type outsideKey struct {
	part        string
	pressure, T float64 // [Pa], [K]
	rule        material.Rule
	welds       welds
}

// An outsideWall is that wall [m], or why it is not known.
type outsideWall struct {
	t   float64
	err error
}

// requiredOutside returns the wall [m] that the part of a port needs under the
// pressure p [Pa] on its convex side, the port left out: the least at which the
// lowest allowable of the stability methods covers it and, of a head, the concave
// formula at 1.67 p.
func (m *model) requiredOutside(p *portPart, pressure float64, c *loadCase) (float64, error) {
	all, err := m.weldsAt(p)
	if err != nil {
		return math.NaN(), err
	}
	key := outsideKey{p.host.name, pressure, c.temperature, c.rule, all}
	if w, ok := m.outside[key]; ok {
		return w.t, w.err
	}
	var w outsideWall
	w.t, w.err = m.outsideWall(p, pressure, c, all)
	if m.outside == nil {
		m.outside = map[outsideKey]outsideWall{}
	}
	m.outside[key] = w
	return w.t, w.err
}

// outsideWall works out [model.requiredOutside].
func (m *model) outsideWall(p *portPart, pressure float64, c *loadCase, all welds) (float64, error) {
	props := m.metals.at(p.host.material, all, p.host.nominal, c.temperature)
	f, err := m.factors(c.rule)
	if err = errors.Join(err, props.parentErr, props.zoneErr); err != nil {
		return math.NaN(), err
	}
	in, _ := m.t.FindMaterial(p.host.material)
	yield := math.Min(props.parent.Yield.Value, props.zone.Yield.Value)
	metal := buckling.NewMetal(props.parent, in.Alloy, yield, props.zone.Softened)
	t, err := thinnest(p.wall, pressure, func(w port.Wall) ([]buckling.Method, error) { return m.outsideMethods(p, w, metal, f.BucklingFactor) })
	if err != nil || p.head == nil {
		return t, err
	}
	a := m.allow(p.host, all, c)
	if a.zoneErr != nil {
		return math.NaN(), a.zoneErr
	}
	strength, _, _, err := heads.RequiredThicknessConvex(p.head.nominal0, c.rule, pressure, a.seam.S,
		heads.RuleOptions{Wall: heads.Wall{Thickness: p.host.least, Corrosion: p.host.corrosion}, Proof: yield})
	return math.Max(t, strength), err
}

// thinnest returns the least wall [m], up to ten times the wall there is, over which
// every wall up to the one there is carries the pressure [Pa] from outside; the
// mid-surface stays where it is.
func thinnest(w port.Wall, pressure float64, methods func(port.Wall) ([]buckling.Method, error)) (float64, error) {
	var last error
	carries := func(t float64) bool {
		v := w
		v.Thickness = t
		all, err := methods(v)
		if err != nil {
			last = err
			return false
		}
		least, err := buckling.Lowest(all)
		if err != nil {
			last = err
		}
		return err == nil && least.Allowable >= pressure
	}
	hi := w.Thickness
	for !carries(hi) {
		if hi *= 1.25; hi > 10*w.Thickness {
			return math.NaN(), fmt.Errorf("no wall of this part is found that carries %.4g kPa from outside: %w", pressure/1e3, errors.Join(last, errors.New("stability")))
		}
	}
	lo := hi
	for carries(lo) {
		if hi, lo = lo, lo/1.25; lo < w.Thickness/100 {
			return hi, nil
		}
	}
	for range 30 {
		if mid := (lo + hi) / 2; carries(mid) {
			hi = mid
		} else {
			lo = mid
		}
	}
	return hi, nil
}

// outsideMethods returns the stability methods for the part of a port with the wall
// w, factor the buckling factor [-].
func (m *model) outsideMethods(p *portPart, w port.Wall, metal buckling.Metal, factor float64) ([]buckling.Method, error) {
	half := w.Thickness / 2
	switch w.Surface {
	case port.Cylinder:
		c := buckling.Cylinder{InsideRadius: w.Radius - half, Thickness: w.Thickness,
			Length: w.Length + m.aft.in.StraightFlange + m.fwd.in.StraightFlange, Ends: [2]buckling.End{heldBy(m.aft), heldBy(m.fwd)}}
		return c.External(metal, "", factor)
	case port.Cone:
		large := w.Radius
		if w.Edge > 0 {
			large = w.Edge
		}
		return buckling.Cone{HalfAngle: w.HalfApex, SmallRadius: w.Tip, LargeRadius: large, Thickness: w.Thickness}.External(metal, factor), nil
	case port.Sphere:
		return buckling.NewHemisphere(w.Radius-half, w.Thickness).External(metal, factor), nil
	case port.Ellipsoid:
		return buckling.NewEllipsoid(w.Radius-half, w.Depth-half, w.Thickness).External(metal, factor), nil
	case port.Torisphere:
		return buckling.NewTorisphere(w.Crown-half, w.Thickness).External(metal, factor), nil
	}
	return nil, fmt.Errorf("pressure on the convex side of a %s", strings.ToLower(w.Surface.String()))
}

// heldBy describes a head as what holds the cylinder round under pressure from
// outside.
func heldBy(h *headPart) buckling.End {
	switch {
	case h.in.Shape == "flat" || h.in.Bulge == "inward":
		return buckling.End{Kind: buckling.Plain}
	case h.in.Shape == "cone" || h.in.Shape == "toricone":
		return buckling.End{Kind: buckling.Conic, Depth: h.nominal0.Depth(), HalfAngle: h.nominal0.Geometry().HalfAngle}
	}
	return buckling.End{Kind: buckling.Dished, Depth: h.nominal0.Depth()}
}
