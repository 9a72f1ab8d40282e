package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/shell/buckling"
)

// weldApart is how far a ring stays from other welds and from ports, in walls of the
// cylinder on each side of it [-]: common practice.
const weldApart = 2

// stiffening returns the rings of the cylinder for stability at T [K], with what
// tolerance and corrosion leave of them, or nil where there are none.
func (m *model) stiffening(T float64) *buckling.Rings {
	in := m.t.Cylinder.Rings
	if in == nil {
		return nil
	}
	width, height := m.leastBar()
	x := m.metals.at(in.Material, m.weldsOf(m.cyl), in.Width, T)
	out := &buckling.Rings{Width: width, Height: height, Inside: in.Side == "inside",
		Modulus: x.parent.ElasticModulus.Value, Yield: math.Min(x.parent.Yield.Value, x.zone.Yield.Value), // keeps NaN
		Err: errors.Join(m.ringsFit(), x.parentErr, x.zoneErr)}
	for _, z := range in.Stations {
		out.Stations = append(out.Stations, z+m.aft.in.StraightFlange)
	}
	return out
}

// leastBar returns width and height of a ring for strength [m].
func (m *model) leastBar() (width, height float64) {
	in := m.t.Cylinder.Rings
	width, height = in.Width-given(in.UnderTolerance), in.Height-given(in.UnderTolerance)
	if in.Side == "inside" { // the contents take it from three sides
		width, height = width-2*m.cyl.corrosion, height-m.cyl.corrosion
	}
	return width, height
}

// ringsFit refuses rings that stand on a seam between courses or across a port.
func (m *model) ringsFit() error {
	in := m.t.Cylinder.Rings
	if in == nil {
		return nil
	}
	if m.girth != nil && len(m.t.Cylinder.GirthStations) == 0 {
		return errors.New("where the girth seam lies is not known, and a ring may stand on it: write cylinder.girth_stations")
	}
	clear := in.Width/2 + weldApart*m.cyl.nominal
	for _, z := range in.Stations {
		for _, s := range m.t.Cylinder.GirthStations {
			if math.Abs(z-s) < clear {
				return fmt.Errorf("the ring at %.4g mm stands on the girth seam at %.4g mm: two walls of the cylinder stay between them", z*1e3, s*1e3)
			}
		}
		for _, p := range m.ports {
			if p.head != nil {
				continue
			}
			reach := p.in.Tube.OutsideDiameter / 2
			if p.port.Pad != nil {
				reach = math.Max(reach, p.port.Pad.OutsideDiameter/2)
			}
			if p.in.Insert != nil {
				reach = math.Max(reach, p.in.Insert.OutsideDiameter/2)
			}
			if math.Abs(z-p.z) < clear+reach {
				return fmt.Errorf("the ring at %.4g mm meets port %s at %.4g mm: write cylinder.rings.stations that keep more than %.4g mm from it, to the middle of the ring", z*1e3, p.in.Name, p.z*1e3, math.Ceil((clear+reach)*1e4)/10)
			}
		}
	}
	return nil
}

// ringsNote says what the rings are, for the reader.
func (r *run) ringsNote() []string {
	in := r.t.Cylinder.Rings
	if in == nil {
		return nil
	}
	return []string{fmt.Sprintf("Rings of the cylinder, %d of flat bar %s, %.4g mm wide and %.4g mm high: they count against pressure from outside only, also where that stands beside compression: none of the membrane, bending and column checks, nor the strength in compression itself, takes credit for them, and the numerical shell and the growth at proof leave them out. They need a continuous weld on both sides and a spliced joint of full strength.",
		len(in.Stations), in.Side, in.Width*1e3, in.Height*1e3)}
}

// ringMass returns the mass of one ring [kg] of density ρ [kg/m3].
func (m *model) ringMass(ρ float64) float64 {
	in := m.t.Cylinder.Rings
	middle := m.cyl.radius + m.cyl.nominal + in.Height/2
	if in.Side == "inside" {
		middle = m.cyl.radius - in.Height/2
	}
	return ρ * 2 * math.Pi * middle * in.Width * in.Height
}
