package assess

import (
	"math"

	"proofsheet/shell/edge"
)

// A span is what a stress across a weld runs over, zero included [Pa].
type span struct {
	least, most                 float64 // membrane and bending, on either face
	membraneLeast, membraneMost float64
}

func (a span) with(b span) span {
	return span{math.Min(a.least, b.least), math.Max(a.most, b.most), math.Min(a.membraneLeast, b.membraneLeast), math.Max(a.membraneMost, b.membraneMost)}
}

// bent adds to a span the bending of walls out of line, over the membrane stress [-]. It
// swings as the membrane stress does, from its least to its most.
func (a span) bent(ratio float64) span {
	return span{a.least + ratio*a.membraneLeast, a.most + ratio*a.membraneMost, a.membraneLeast, a.membraneMost}
}

// largest and membrane are the largest magnitude of the stress and of its membrane part [Pa].
func (a span) largest() float64  { return math.Max(a.most, -a.least) }
func (a span) membrane() float64 { return math.Max(a.membraneMost, -a.membraneLeast) }

// A direction is the shares of the meridional and of the hoop stress in one stress [-].
type direction struct{ meridional, hoop float64 }

var (
	meridional = direction{meridional: 1}
	hoop       = direction{hoop: 1}
)

// of returns the stress in a direction: inside, outside and in the middle of the wall.
func (d direction) of(s edge.Stress) [3]float64 {
	m := d.meridional*s.Meridional + d.hoop*s.Hoop
	b := d.meridional*s.MeridionalBending + d.hoop*s.HoopBending
	return [3]float64{m + b, m - b, m}
}

// spanOf returns the extremes of a stress in one direction, from what the pressure makes of
// it and what the loads do: the pressure in full, at its smallest beside the load, or away
// where the case does not say that both are always there. Both add up, so that the extremes
// of each make those of their sum.
func spanOf(pressure, most, least edge.Stress, c *loadCase, d direction) span {
	p, a, b := d.of(pressure), d.of(most), d.of(least)
	var low, high [3]float64
	for k, full := range p {
		share := c.pressureLeast() * full
		low[k], high[k] = math.Min(full, share), math.Max(full, share)
		if !c.present {
			low[k], high[k] = math.Min(low[k], 0), math.Max(high[k], 0)
		}
		low[k], high[k] = low[k]+math.Min(a[k], b[k]), high[k]+math.Max(a[k], b[k])
	}
	empty := span{}
	return empty.with(span{math.Min(low[0], low[1]), math.Max(high[0], high[1]), low[2], high[2]})
}

// spanAt returns the extremes of a stress at a station.
func (st *shellState) spanAt(i int, load seamLoad, c *loadCase, d direction) (out span) {
	sides, n := st.sides(i, load)
	for _, p := range sides[:n] {
		out = out.with(spanOf(p.pressure, p.most, p.least, c, d))
	}
	return out
}
