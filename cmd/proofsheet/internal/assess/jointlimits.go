package assess

import (
	"errors"
	"math"

	"proofsheet/material"
)

// A jointLimit is what is allowed about a joint: on each wall away from welds
// and in their zone, how wide the zone is, and the efficiency of the girth weld.
type jointLimit struct {
	parent, zone [2]material.Limits // of the cylinder and of the head
	width        [2]float64         // of the zone beside the joint [m]; +Inf: everywhere
	girth        float64            // of the weld at the joint [-]
	course       float64            // of the girth seam between courses, close to it [-]
	along        [2]float64         // of the weld along each wall [-]; 1: none
	err          error
}

// jointLimits gathers them for a case, remembered.
func (m *model) jointLimits(h *headPart, c *loadCase) jointLimit {
	return once(m.known.joints, headAt{h.end, byRule(c)}, func() jointLimit { return m.findJointLimits(h, c) })
}

// tipLimits gathers the limits about the tip of a cone, remembered.
func (m *model) tipLimits(h *headPart, c *loadCase) jointLimit {
	return once(m.known.tips, headAt{h.end, byRule(c)}, func() jointLimit { return m.findTipLimits(h, c) })
}

// findJointLimits gathers the limits about the joint of a head.
func (m *model) findJointLimits(h *headPart, c *loadCase) (l jointLimit) {
	seams, a, err := m.headSeams(h, c)
	longSeams, b, longErr, girthErr := m.cylinderSeams(c)
	l.girth, l.course, l.along = seams.Girth, 1, [2]float64{1, 1}
	if m.girth != nil {
		l.course, l.err = m.girthEfficiency(m.girth, c, 2*(m.cyl.radius+m.cyl.nominal))
	}
	if m.long != nil {
		l.along[0] = longSeams.Long
	}
	if seams.Segmented {
		l.along[1] = seams.Segment
	}
	l.parent = [2]material.Limits{b.Parent, a.Parent}
	l.zone = [2]material.Limits{b.Zone, a.Zone}
	l.err = errors.Join(l.err, m.massErr, h.refused, err, longErr, girthErr, a.ZoneKnown, b.ZoneKnown, m.alike(h, c.temperature))
	var widthErr error
	if l.width, widthErr = m.jointZones(h, c.temperature); widthErr != nil {
		l.err = errors.Join(l.err, widthErr)
	}
	return l
}

// findTipLimits gathers the limits about the tip of a cone: of what closes it and
// of the cone, each by its weld, and the seams along both walls.
func (m *model) findTipLimits(h *headPart, c *loadCase) (l jointLimit) {
	l.along = [2]float64{1, 1}
	l.girth, l.err = m.tipWeld(h, c)
	seams, _, err := m.headSeams(h, c)
	if seams.Segmented {
		l.along[1] = seams.Segment
	}
	l.err = errors.Join(l.err, err)
	if l.along[0], err = m.tipSeam(h, c, seams); err != nil {
		l.err = errors.Join(l.err, err)
	}
	w, err := m.shellAt(shellKey{T: c.temperature})
	if err != nil {
		l.err = errors.Join(l.err, err)
		return l
	}
	near := w.segments[0]
	if h.end == "forward" {
		near = w.segments[w.ends-1]
	}
	for i, p := range []*part{near, &h.part} {
		a := m.allow(*p, "", c)
		l.parent[i], l.zone[i] = a.parent, a.zone
		l.width[i] = math.Inf(1) // small: the zone is taken everywhere about it
		l.err = errors.Join(l.err, a.parentErr, a.zoneErr)
	}
	l.err = errors.Join(l.err, m.massErr, h.refused)
	return l
}

// jointZones returns the width of the softened zone beside a joint on the
// cylinder and on the head [m]: 0 where nothing softens, without end where a
// weld along the wall or a port softens it at every station.
func (m *model) jointZones(h *headPart, T float64) (width [2]float64, err error) {
	w := m.atSeam(h)
	for i, p := range []*part{m.cyl, &h.part} {
		x := m.metals.at(p.material, w, p.nominal, T)
		if x.zoneErr != nil || !x.zone.Softened {
			continue
		}
		along := m.long != nil || m.girth != nil // a seam between courses may stand beside the joint
		if i == 1 {
			along = h.segment != nil
		}
		if _, ported := m.portWelds(p.name); along || ported {
			width[i] = math.Inf(1)
			continue
		}
		if width[i], err = m.widest(w, x.parent.Family, p.nominal); err != nil {
			return width, err
		}
	}
	return width, nil
}
