package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material"
	"proofsheet/material/weld"
	"proofsheet/report/check"
)

// welds names the joints whose zones meet in a wall, a comma between them. The
// empty name stands for a weld that no joint describes, as that of a port; the
// weakest of them counts.
type welds string

// names returns each of them.
func (w welds) names() []string { return strings.Split(string(w), ",") }

// and returns both together, each name once.
func (w welds) and(o welds) welds {
	all := append(w.names(), o.names()...)
	slices.Sort(all)
	return welds(strings.Join(slices.Compact(all), ","))
}

// A couponSet is the coupons of one joint with what they show.
type couponSet struct {
	joint           tank.Joint
	basis           string
	weld            []tank.Coupon
	parent          []tank.Coupon
	ultimate, yield weld.Sample
	measured        bool // yield was measured on some coupon
	drawn           bool // the limits are drawn for a study

	ultimateErr, yieldErr error // why a limit is not used

	thickness   float64 // of the coupons, 0: not stated [m]
	gauge       float64 // longest over which yield was measured, 0: not stated [m]
	temperature float64 // of the test [K]
	told        bool    // the temperature was stated
}

// newCouponSet draws the limits from the coupons of a joint.
func newCouponSet(t *tank.Tank, j tank.Joint) *couponSet {
	c := &couponSet{joint: j, basis: j.CouponBasis, temperature: roomTemperature}
	if c.basis == "" {
		c.basis = t.Basis.CouponBasis
	}
	var ultimate, yield []float64
	for _, row := range j.CouponRows {
		if row.Parent {
			c.parent = append(c.parent, row)
			continue
		}
		c.weld = append(c.weld, row)
		ultimate = append(ultimate, row.Ultimate)
		if row.Yield != nil {
			yield = append(yield, *row.Yield)
		}
		if row.Temperature != nil && (!c.told || *row.Temperature < c.temperature) {
			c.temperature, c.told = *row.Temperature, true
		}
	}
	c.thickness, c.gauge = c.sizes()
	c.ultimate, c.ultimateErr = weld.BasisLimit(ultimate, c.basis)
	if c.measured = len(yield) > 0; c.measured {
		c.yield, c.yieldErr = weld.BasisLimit(yield, c.basis)
	}
	if z := j.CouponDraw; z != nil {
		c.draw(*z)
	}
	return c
}

// sizes returns the greatest thickness of the weld coupons and the longest gauge over
// which yield was measured, 0 where the file has no such column [m].
func (c *couponSet) sizes() (thickness, gauge float64) {
	for _, row := range c.weld {
		if row.Thickness != nil {
			thickness = math.Max(thickness, *row.Thickness)
		}
		if row.Yield != nil && row.GaugeLength != nil {
			gauge = math.Max(gauge, *row.GaugeLength)
		}
	}
	return thickness, gauge
}

// mostGauge is the longest gauge over which the yield of a weld is its own: the
// 50 mm or 2 in of the published welded minima, and what such a gauge may be off by
// [m]. Over 250 mm soft zone and hard parent mix, and yield comes out a third higher
// (Kissell and Ferry; the welding guide of the Japanese aluminium federation; read).
const mostGauge = 51e-3

// longGauge reports whether yield was measured over more than the weld. Where the file
// does not say, which it need not, page 1 does.
func (c *couponSet) longGauge() bool { return c.measured && c.gauge > mostGauge }

// err returns why the set gives no strength, nil where it does.
func (c *couponSet) err() error {
	switch {
	case c.ultimateErr != nil:
		return fmt.Errorf("ultimate: %w", c.ultimateErr)
	case c.yieldErr != nil:
		return fmt.Errorf("yield: %w", c.yieldErr)
	}
	return nil
}

// mostThickness is how many times a wall may be thicker or thinner than the
// coupons that speak for it [-]: practice of welding procedure tests.
const mostThickness = 2

// tested returns the limits for a wall of a thickness [m].
func (c *couponSet) tested(thickness float64) (material.Tested, error) {
	t := material.Tested{Ultimate: c.ultimate.Limit, Yield: math.NaN(), Temperature: c.temperature, LongGauge: c.longGauge(),
		Source: check.Source{Doc: c.joint.Coupons, Where: c.where(), How: check.Computed}}
	if c.measured {
		t.Yield = c.yield.Limit
	}
	if err := c.err(); err != nil {
		return t, err
	}
	if ratio := thickness / c.thickness; c.thickness > 0 && (ratio > mostThickness*(1+1e-9) || ratio < (1-1e-9)/mostThickness) {
		return t, fmt.Errorf("coupons %.4g mm thick do not speak for a wall of %.4g mm: pull coupons of at least half and at most twice its thickness", c.thickness*1e3, thickness*1e3)
	}
	return t, nil
}

// coupons returns the set of a joint, nil where it has none.
func (ms metals) coupons(name string) *couponSet {
	j, ok := ms.t.FindJoint(name)
	if !ok || j.Coupons == "" {
		return nil
	}
	c, ok := ms.pulled[name]
	if !ok {
		c = newCouponSet(ms.t, j)
		ms.pulled[name] = c
	}
	return c
}

// zone returns the weld zone of a material as one weld makes it: from coupons
// where its joint has them, else from the tables.
func (ms metals) zone(in tank.Material, q material.Query, name string) (material.Properties, error) {
	j, _ := ms.t.FindJoint(name)
	q.Process = j.Process
	c := ms.coupons(name)
	if c == nil {
		if in.Own() {
			return ownOf(in).WeldZone(q.Temperature)
		}
		return q.WeldZone()
	}
	tested, err := c.tested(q.Thickness)
	if err != nil {
		return material.Properties{}, fmt.Errorf("coupons of joint %s: %w", name, err)
	}
	var p material.Properties
	if in.Own() {
		p, err = ownOf(in).TestedZone(q.Temperature, tested)
	} else {
		p, err = q.TestedZone(tested)
	}
	if err != nil {
		return p, fmt.Errorf("coupons of joint %s: %w", name, err)
	}
	return p, nil
}

// zoneOf returns the weakest zone of the welds that meet.
func (ms metals) zoneOf(in tank.Material, q material.Query, w welds) (z material.Properties, err error) {
	for i, name := range w.names() {
		p, err := ms.zone(in, q, name)
		switch {
		case err != nil && name == "" && slices.ContainsFunc(ms.t.Joint, func(j tank.Joint) bool { return j.Coupons != "" }):
			return p, fmt.Errorf("a weld names no joint with coupons (in a port's weld write joint = the name of one that it is made as): %w", err)
		case err != nil:
			return p, err
		case i == 0:
			z = p
		default:
			z = z.Weaker(p)
		}
	}
	return z, nil
}

// widest returns the width of the widest zone of the welds that meet, for a
// wall of a thickness [m].
func (m *model) widest(w welds, family string, thickness float64) (width float64, err error) {
	for _, name := range w.names() {
		b, _, err := weld.ZoneWidth(m.processOf(name), family, thickness)
		if err != nil {
			return math.NaN(), err
		}
		width = math.Max(width, b)
	}
	return width, nil
}

// portWelds returns the welds of the ports of a part, and whether there are any.
func (m *model) portWelds(part string) (w welds, any bool) {
	for _, p := range m.ports {
		switch own := welds(p.in.Weld.Joint); {
		case p.host.name != part:
		case any:
			w = w.and(own)
		default:
			w, any = own, true
		}
	}
	return w, any
}

// atPart returns the welds of a part together: the joints given and its ports.
func (m *model) atPart(part string, js ...*tank.Joint) welds {
	w, some := m.portWelds(part)
	for _, j := range js {
		switch {
		case j == nil:
		case !some:
			w, some = welds(j.Name), true
		default:
			w = w.and(welds(j.Name))
		}
	}
	return w
}

// aroundCylinder returns the welds that meet the cylinder's wall at girths of a
// joint: those in the cylinder and, where a head is joined by it, those whose
// zones have grown together with the zone of that seam.
func (m *model) aroundCylinder(j *tank.Joint) welds {
	w := m.atPart("cylinder", j)
	for _, h := range m.ends() {
		if h.seam != nil && h.seam.Name == j.Name {
			w = w.and(m.atSeam(h))
		}
	}
	return w
}

// weldsOf returns all welds that meet a part: those in it, and those whose zones
// have grown together with the zone of a head's seam.
func (m *model) weldsOf(p *part) welds {
	for _, h := range m.ends() {
		switch {
		case h.name != p.name:
		case h.seam == nil:
			return m.atPart(p.name, h.segment)
		default:
			return m.atPart(p.name, h.seam, h.segment).and(m.atSeam(h))
		}
	}
	w := m.atPart(p.name, append(m.girthJoints(), m.long)...)
	for _, j := range m.girthJoints() {
		w = w.and(m.aroundCylinder(j))
	}
	return w
}
