package assess

import (
	"math"

	"proofsheet/heads/port"
	"proofsheet/shell"
)

// portWall describes the wall at a port by its mid-surface: of the nominal wall
// for the cut-out, of the corroded least wall for strength. A sharp joint
// claims the metal beside it: as far as of the nominal wall, whose zone is wider, so that a
// thinner wall never leaves a port more of it.
func (m *model) portWall(p *portPart, nominal bool) (port.Wall, error) {
	t, inside := p.host.least, p.host.corroded()
	if nominal {
		t, inside = p.host.nominal, p.host.radius
	}
	if p.head == nil {
		w, err := port.OnCylinder(shell.Cylinder{InsideRadius: inside, Thickness: t, Length: m.t.Cylinder.Length})
		zone := math.Sqrt(w.Radius * p.host.nominal)
		if sharp(m.fwd) {
			w.OutboardZone = zone
		}
		if sharp(m.aft) {
			w.InboardZone = zone
		}
		return w, err
	}
	h := p.head.strength
	if nominal {
		h = p.head.nominal0
	}
	w, err := port.OnHead(h, t)
	if p.head.in.Shape == "cone" { // a flat head bends all over: no zone of it is the joint's alone
		w.OutboardZone = math.Sqrt(w.Radius * p.host.nominal / math.Cos(w.HalfApex))
	}
	if w.Tip > 0 { // plate, neck and tube meet the cone at its tip at an angle
		w.InboardZone = math.Sqrt(w.Tip * p.host.nominal / math.Cos(w.HalfApex))
	}
	if s := p.head.in.Seal; p.head.bolted() && s != nil {
		w.Seal = (s.Diameter - s.Width) / 2 // an O-ring is written without a width
	}
	return w, err
}

// sharp reports whether a head meets the cylinder at an angle.
func sharp(h *headPart) bool { return h.in.Shape == "cone" || h.in.Shape == "flat" }

// portStation returns where the tube's axis meets the mid-surface [m].
func (m *model) portStation(p *portPart) float64 {
	if p.head == nil {
		return given(p.in.Station)
	}
	x, err := p.head.nominal0.AxialAt(given(p.in.Radius), p.host.nominal/2)
	if err != nil { // refused where the chords are found
		x = p.head.nominal0.Depth()
	}
	return m.station(p.head, x)
}
