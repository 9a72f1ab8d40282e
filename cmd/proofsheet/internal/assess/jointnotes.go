package assess

import (
	"fmt"
	"math"

	"proofsheet/heads"
	"proofsheet/shell/edge"
)

// alignmentNotes says where a hi-lo or an oval goes beyond what the vessel rule
// lets a builder leave, and that a measured oval is no part of the stability.
func (m *model) alignmentNotes() (out []string) {
	seam := func(name, where string, e, t float64, long bool) {
		limit, ok := alignmentLimit(t, long)
		switch {
		case e <= 0:
		case !ok:
			out = append(out, fmt.Sprintf("%s, joint %s: no alignment limit is at hand for a wall of %.4g mm; the hi-lo of %.4g mm is only checked for its stress.", where, name, t*1e3, e*1e3))
		case e > limit:
			out = append(out, fmt.Sprintf("%s, joint %s: the hi-lo of %.4g mm is more than the %.4g mm that the vessel rule lets stand at a wall of %.4g mm (recalled; confirm). Its stress is checked; the limit of workmanship is not met.",
				where, name, e*1e3, limit*1e3, t*1e3))
		}
	}
	if j := m.long; j != nil {
		seam(j.Name, "Long seam", given(j.HiLo), m.cyl.nominal, true)
	}
	if j := m.girth; j != nil {
		seam(j.Name, "Girth seam", given(j.HiLo), m.cyl.nominal, false)
	}
	for _, h := range m.ends() {
		if j := h.segment; j != nil {
			seam(j.Name, h.title+", segment seam", given(j.HiLo), h.nominal, true)
		}
		if j := h.seam; j != nil {
			seam(j.Name, h.title+", seam", given(j.HiLo), math.Min(h.nominal, m.cyl.nominal), h.in.Shape == "hemisphere")
		}
	}
	if d := m.t.Cylinder.OutOfRound; d != nil {
		share := *d / (2 * m.cyl.radius)
		out = append(out, fmt.Sprintf("Out of round by %.4g mm, %.3g %% of the diameter: bending at the seam is checked; the stability checks keep the roundness that they assume.", *d*1e3, 100*share))
		if share > mostOval {
			out = append(out, "Out of round by more than 1 % of the diameter, which the vessel rule lets stand (recalled; confirm).")
		}
	}
	return out
}

// mostOval is the largest less the smallest diameter over the nominal one that the
// vessel rule lets stand [-]: ASME VIII-1 UG-80, recalled.
const mostOval = 0.01

// alignmentLimit returns the hi-lo that the vessel rule lets stand at a wall t [m],
// at seams along the shell (and round a hemisphere) or round it [m]; not ok beyond
// what is at hand.
//
//	t ≤ 13 mm: t/4    to 19 mm: 3 mm along, t/4 round    to 38 mm: 3 mm along, 5 mm round
//
// Source: ASME VIII-1 UW-33, recalled.
func alignmentLimit(t float64, long bool) (limit float64, ok bool) {
	switch {
	case t <= 13e-3, t <= 19e-3 && !long:
		return t / 4, t > 0
	case t <= 38e-3 && long:
		return 3e-3, true
	case t <= 38e-3:
		return 5e-3, true
	}
	return math.NaN(), false
}

// interactionNotes names the joints that stand within each other's reach, 2.5 √(R t):
// closed forms do not hold there, the numerical shell sees both at once.
func (m *model) interactionNotes() (out []string) {
	pair := func(a, b string, distance, R, t float64) {
		if edge.Interact(distance, R, t) {
			out = append(out, fmt.Sprintf("%s and %s are %.4g mm apart, less than 2.5 √(R t) = %.4g mm: they disturb each other. The numerical shell holds both together; no closed form does.",
				a, b, distance*1e3, 1e3*edge.Clear(R, t)))
		}
	}
	R, t := m.cyl.mid(), m.cyl.least
	pair("The aft joint of the cylinder", "its forward joint", m.t.Cylinder.Length, R, t)
	for _, z := range m.t.Cylinder.GirthStations {
		seam := fmt.Sprintf("the girth seam at %.4g mm", z*1e3)
		pair("The aft joint", seam, z, R, t)
		pair("The forward joint", seam, m.t.Cylinder.Length-z, R, t)
	}
	for _, h := range m.ends() {
		g := h.strength.Geometry()
		if clear, short := heads.ShortFlange(h.nominal0, heads.Wall{Thickness: h.least, Corrosion: h.corrosion}); short {
			out = append(out, fmt.Sprintf("%s: its straight flange of %.4g mm is shorter than 2.5 √(R t) = %.4g mm: its weld to the cylinder and its rim disturb each other. The numerical shell holds both together; no closed form does.",
				h.title, h.in.StraightFlange*1e3, clear*1e3))
		}
		if h.in.Tip != nil {
			pair(h.title+": its joint to the cylinder", "its tip", slant(g, g.InsideDiameter), (g.InsideDiameter/2+h.least/2)/math.Cos(g.HalfAngle), h.least)
			if p := m.portNamed(h.in.Tip.Port); h.in.Tip.Close == "port" && p != nil {
				pair(h.title+": its tip", "the end of tube "+p.in.Name, p.in.Outside, p.in.Tube.OutsideDiameter/2-p.port.TubeWall/2, p.port.TubeWall)
			}
		}
	}
	return append(out, m.tipNotes()...)
}

// tipNotes says what is taken for granted at tips that the file says little of.
func (m *model) tipNotes() (out []string) {
	for _, h := range m.ends() {
		if h.in.Tip == nil {
			continue
		}
		if h.in.Tip.Close != "plate" {
			out = append(out, h.title+": the tube or neck at its tip is taken to go on for 4 √(R t) or more with one wall, closed there; its weld to the cone, where no joint is named for it, as a double butt without examination.")
		}
		if r := (h.in.Tip.Diameter + h.nominal) / 2 / math.Cos(h.strength.Geometry().HalfAngle); r < thinWall*h.least {
			out = append(out, fmt.Sprintf("%s: at its tip the radius over the wall is %.2g, under %g: the stress of the thin shell is raised there by 1 + t/(2 r), common practice.", h.title, r/h.least, thinWall))
		}
	}
	return out
}
