package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
	"proofsheet/shell/edge"
)

// A Neighbour is the cylinder that a head is welded to, at its seam or at a cone's tip, walls for strength.
type Neighbour struct {
	Wall        edge.Wall
	Radius      float64 // mid-wall radius, corroded [m]
	Free        float64 // length up to its next joint, +Inf: long [m]
	RingArea    float64 // of a narrow ring at the joint; 0: none [m2]
	RingModulus float64 // Young's modulus of the ring [Pa]
}

// valid refuses a neighbour without a radius.
func (n Neighbour) valid() error {
	return check.Within("heads.SeamJoint", "mid-wall radius of the cylinder (m)", n.Radius, math.SmallestNonzeroFloat64, math.MaxFloat64, "a cylinder at the joint")
}

// elastic returns the wall for edge theory, of Young's modulus E [Pa] and Poisson's ratio ν [-].
func (w Wall) elastic(E, ν float64) edge.Wall {
	return edge.Wall{Thickness: w.Thickness, ElasticModulus: E, Poisson: ν}
}

// ShortFlange reports whether the straight flange of a head is too short for its two ends to stand alone, the rim of the head
// and its weld to the cylinder, and the length 2.5 sqrt(R t) that it would need, clear [m], R and t of the head's wall at the rim. A head
// without a flange has its weld at the rim: one joint, not short.
func ShortFlange(h Head, w Wall) (clear float64, short bool) {
	g := h.Geometry()
	clear = edge.Clear(g.InsideDiameter/2+w.Corrosion+w.Thickness/2, w.Thickness)
	return clear, g.StraightFlange > 0 && !(g.StraightFlange >= clear)
}

// SeamJoint returns the closed edge solution of head and cylinder at the seam, the head's metal with Young's modulus E [Pa] and
// Poisson's ratio ν [-]: [edge.Cone.Solve] at the large end of a cone, [edge.Dome.Solve] for a hemisphere and an ellipsoid, with
// the offset of the mid-lines. A straight flange is a cylinder of the head's wall between both: shorter than 2.5 sqrt(R t), its
// weld and the head's rim interact, and there is no closed form; longer, the joint is that of head and flange. A torisphere, a toricone and a flat head have none either
// here, nor has an inward head: the numerical shell alone.
func SeamJoint(h Head, w Wall, E, ν float64, n Neighbour, l edge.Load) (edge.Joint, error) {
	g := h.Geometry()
	if err := n.valid(); err != nil {
		return edge.Joint{}, err
	}
	if g.Inward {
		return edge.Joint{}, errors.New("there is no closed form of an inward head's joint")
	}
	worn, err := Corroded(h, w.Corrosion)
	if err != nil {
		return edge.Joint{}, err
	}
	rim := worn.Geometry().InsideDiameter/2 + w.Thickness/2
	mine, shell, free, radius, offset := w.elastic(E, ν), n.Wall, n.Free, n.Radius, rim-n.Radius
	if f := g.StraightFlange; f > 0 {
		switch {
		case mine == shell && math.Abs(offset) <= rounding*rim:
			free += f // flange and cylinder are one
		case edge.Interact(f, rim, w.Thickness):
			return edge.Joint{}, fmt.Errorf("the straight flange of %.4g m is shorter than %.4g m: its weld and the rim of the head interact, and there is no closed form",
				f, edge.Clear(rim, w.Thickness))
		default:
			shell, free, offset, radius = mine, f, 0, rim
		}
	}
	switch h.Kind() {
	case "cone":
		return coneJoint(worn, w, mine, Neighbour{shell, radius, free, n.RingArea, n.RingModulus}, l, false)
	case "hemisphere", "ellipsoid":
		depth := worn.Geometry().Depth + w.Thickness/2
		return edge.Dome{Radius: radius, Depth: depth * radius / rim, Shell: shell, Head: mine, Offset: offset, ShellFree: free,
			RingArea: n.RingArea, RingModulus: n.RingModulus}.Solve(l)
	default:
		return edge.Joint{}, fmt.Errorf("there is no closed form of the joint of a %s", h.Kind())
	}
}

// TipJoint returns the closed edge solution of a truncated cone at its tip with the neck or tube n that closes it, at the
// small end: [edge.Cone.Solve], the cone's metal with E [Pa] and ν [-], the load l in the cone and in the neck [N/m].
func TipJoint(h Head, w Wall, E, ν float64, n Neighbour, l edge.Load) (edge.Joint, error) {
	g := h.Geometry()
	switch {
	case g.TipDiameter == 0 || (h.Kind() != "cone" && h.Kind() != "toricone"):
		return edge.Joint{}, errors.New("the head has no tip")
	case g.Inward:
		return edge.Joint{}, errors.New("there is no closed form of an inward head's tip")
	}
	if err := n.valid(); err != nil {
		return edge.Joint{}, err
	}
	worn, err := Corroded(h, w.Corrosion)
	if err != nil {
		return edge.Joint{}, err
	}
	return coneJoint(worn, w, w.elastic(E, ν), n, l, true)
}

// coneJoint is the corner of a corroded cone at its large or small end. Mid-lines that are apart at the seam cross a
// little beside it, where edge theory has the corner: not over half sqrt(R t), common practice.
func coneJoint(worn Head, w Wall, mine edge.Wall, n Neighbour, l edge.Load, small bool) (edge.Joint, error) {
	g := worn.Geometry()
	rim := g.InsideDiameter/2 + w.Thickness/(2*math.Cos(g.HalfAngle))
	long := (g.InsideDiameter - g.TipDiameter) / (2 * math.Sin(g.HalfAngle))
	if worn.Kind() == "toricone" {
		long = (g.InsideDiameter - 2*g.KnuckleRadius*(1-math.Cos(g.HalfAngle)) - g.TipDiameter) / (2 * math.Sin(g.HalfAngle))
	}
	if small {
		rim = g.TipDiameter/2 + w.Thickness/(2*math.Cos(g.HalfAngle))
	}
	if e := math.Abs(rim-n.Radius) / math.Tan(g.HalfAngle); !(e <= 0.5*math.Sqrt(n.Radius*n.Wall.Thickness)) {
		return edge.Joint{}, fmt.Errorf("the mid-lines of cone and cylinder cross %.4g m from their seam, too far for one corner", e)
	}
	return edge.Cone{Radius: n.Radius, HalfApex: g.HalfAngle, Shell: n.Wall, Cone: mine, Small: small, ShellFree: n.Free, ConeFree: long,
		RingArea: n.RingArea, RingModulus: n.RingModulus}.Solve(l)
}
