package assess

import (
	"errors"
	"math"

	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material/weld"
	"proofsheet/report/check"
)

// convexLoaded reports whether a head has the pressure on its convex side in any
// operating state: it bulges inward, or the pressure is from outside.
func (m *model) convexLoaded(h *headPart) bool {
	if h.in.Shape == "flat" {
		return false
	}
	if h.in.Bulge == "inward" {
		return true
	}
	return m.drawn
}

// checkConvex holds the strength of a head with the pressure on its convex side;
// head.X/external holds its buckling.
func (m *model) checkConvex(h *headPart, s *loads.State, c *loadCase) check.Result {
	id, title := h.name+"/convex", h.title+": thickness with the pressure on the convex side"
	_, a, err := m.headSeams(h, c)
	d, demandErr := m.headDemand(h, s, c, heads.Loading{})
	if err = errors.Join(m.massErr, h.refused, err, demandErr); err != nil {
		return check.NotMade(id, title, err)
	}
	p := m.onConvex(h, s)
	if p <= 0 {
		return check.NotApplicableTo(id, title, "no pressure on the convex side in this case")
	}
	return heads.CheckThicknessConvex(h.nominal0, h.end, p, d, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}, a)
}

// onConvex returns the highest pressure on the convex side of a head in a state,
// at its rim or anywhere on it [Pa]; below zero where it is on the other side. Outside
// an outward head the liquid's head relieves nothing: the ullage pressure stands for it all.
func (m *model) onConvex(h *headPart, s *loads.State) float64 {
	rim, crown := m.station(h, 0), m.station(h, h.nominal0.Depth())
	from, to := math.Min(rim, crown), math.Max(rim, crown)
	if h.in.Bulge == "inward" {
		p, _ := s.HighestPressure(from, to)
		return p
	}
	return -s.UllagePressure
}

// laps returns how many fillets lap a head to the cylinder; 0 for a butt weld.
func (h *headPart) laps() int {
	switch {
	case h.seam == nil:
	case h.seam.Kind == weld.DoubleLap:
		return 2
	case h.seam.Kind == weld.SingleLap || h.seam.Kind == weld.PluggedLap:
		return 1
	}
	return 0
}

// lapped reports whether a head bulges inward and is lapped to the cylinder, so that
// its fillets carry it in shear.
func (h *headPart) lapped() bool {
	return h.in.Bulge == "inward" && h.in.Shape != "flat" && h.laps() > 0
}

// checkRimWeld holds the fillets of an inward head that is lapped to the cylinder, allowed
// the allowable stress of its weld [Pa].
func (m *model) checkRimWeld(h *headPart, s *loads.State, allowed float64, err error) check.Result {
	r := heads.CheckRimWeld(h.end, math.Max(m.onConvex(h, s), 0), m.cyl.corroded(), math.Min(h.least, m.cyl.least), h.laps(), allowed)
	if err != nil {
		return check.NotMade(r.ID, r.Title, err)
	}
	return r
}
