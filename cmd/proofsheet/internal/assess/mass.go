package assess

import (
	"fmt"
	"math"

	"proofsheet/loads"
)

// slices the cylinder is lumped into for its own weight.
const massSlices = 12

// structure returns the tank's own mass lumped at stations, mid-surface area ×
// nominal wall: shells with straight flanges, tip plates, tubes, round pads and rings;
// cut-outs, welds and fittings not counted. A missing density is an error.
func (m *model) structure() ([]loads.PointMass, error) {
	density := func(name string, wall float64) (float64, error) {
		p := m.metals.at(name, "", wall, roomTemperature)
		if p.parentErr != nil {
			return 0, p.parentErr
		}
		if d := p.parent.Density.Value; d > 0 {
			return d, nil
		}
		return 0, fmt.Errorf("material %q has no density", name)
	}
	ρ, err := density(m.cyl.material, m.cyl.nominal)
	if err != nil {
		return nil, err
	}
	var out []loads.PointMass
	L := m.t.Cylinder.Length
	slice := ρ * 2 * math.Pi * (m.cyl.radius + m.cyl.nominal/2) * m.cyl.nominal * L / massSlices
	for i := range massSlices {
		out = append(out, loads.PointMass{Z: L * (float64(i) + 0.5) / massSlices, Mass: slice})
	}
	if q := m.t.Cylinder.Rings; q != nil {
		bar, err := density(q.Material, q.Width)
		if err != nil {
			return nil, err
		}
		for _, z := range q.Stations {
			out = append(out, loads.PointMass{Z: z, Mass: m.ringMass(bar)})
		}
	}
	for _, h := range m.ends() {
		if ρ, err = density(h.material, h.nominal); err != nil {
			return nil, err
		}
		area, x := h.shellArea()
		out = append(out, loads.PointMass{Z: m.station(h, x), Mass: ρ * area * h.nominal})
		flange := 2 * math.Pi * (h.radius + h.nominal/2) * h.in.StraightFlange
		out = append(out, loads.PointMass{Z: m.station(h, -h.in.StraightFlange/2), Mass: ρ * flange * h.nominal})
		if tip := h.in.Tip; tip != nil && tip.Close == "plate" {
			r := tip.Diameter / 2
			out = append(out, loads.PointMass{Z: m.station(h, h.nominal0.Depth()), Mass: ρ * math.Pi * r * r * given(tip.Thickness)})
		}
	}
	for _, p := range m.ports {
		if ρ, err = density(p.in.Tube.Material, p.in.Tube.Wall); err != nil {
			return nil, err
		}
		out = append(out, loads.PointMass{Z: p.z, Mass: ρ * p.metal()})
	}
	return out, nil
}

// dryMass returns the sum of the masses [kg].
func dryMass(ms []loads.PointMass) float64 {
	sum := 0.0
	for _, m := range ms {
		sum += m.Mass
	}
	return sum
}

// station returns z of a point of a head x from the plane where it begins,
// its straight flange beyond the seam [m].
func (m *model) station(h *headPart, x float64) float64 {
	u := h.asEnd().station(x)
	if h.end == "aft" {
		return -u
	}
	return m.t.Cylinder.Length + u
}

// shellArea returns the nominal mid-surface area of the head without its
// flange [m2], and the x of its centroid [m], by frusta between close points.
func (h *headPart) shellArea() (area, x float64) {
	const perPiece = 200
	moment := 0.0
	pts := h.nominal0.Points(perPiece, h.nominal/2)
	for i := 1; i < len(pts); i++ {
		a, b := pts[i-1], pts[i]
		strip := math.Pi * (a.R + b.R) * math.Hypot(b.R-a.R, b.X-a.X)
		area += strip
		moment += strip * (a.X + b.X) / 2
	}
	return area, moment / area
}
