package port

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// padReach returns how far the pad reaches from the tube's axis along the wall
// [m] in a plane at w [rad] to the meridional one, where the tube's outline
// reaches half [m]; 0 without a pad. Of an ellipse with the semi-axes a along the
// meridian and b across: 1/√[(cos w/a)² + (sin w/b)²].
//
// Source: geometry in the flat of the wall.
func (p Port) padReach(half, w float64) float64 {
	q := p.Pad
	switch {
	case q == nil:
		return 0
	case q.Lip > 0:
		return half + q.Lip
	case q.Length > 0:
		return 1 / math.Hypot(math.Cos(w)*2/q.Length, math.Sin(w)*2/q.OutsideDiameter)
	}
	return q.OutsideDiameter / 2
}

// Reach returns how far the outermost weld of the port is from its axis along the
// wall, in the direction in which its pad or insert is longest [m], where the tube's
// outline reaches half [m].
func (p Port) Reach(half float64) float64 {
	reach := math.Max(half, math.Max(p.padReach(half, 0), p.padReach(half, math.Pi/2)))
	if p.Insert != nil {
		reach = math.Max(reach, p.Insert.OutsideDiameter/2)
	}
	return reach
}

// least returns the least diameter of the pad [m] round a tube of the given
// outside diameter [m]: its edge is at least as long as that circle.
func (q *Pad) least(tube float64) float64 {
	switch {
	case q.Lip > 0:
		return tube + 2*q.Lip
	case q.Length > 0:
		return math.Min(q.Length, q.OutsideDiameter)
	}
	return q.OutsideDiameter
}

// wallMetal returns the section of the wall [m2] from the distance from to the
// distance to [m] from the tube's axis: the insert as far as it goes, the wall
// beyond. A taper is not counted.
//
// Source: common practice; the taper beyond the insert 1:3, ASME VIII-1 UW-13, recalled.
func (p Port) wallMetal(w Wall, from, to float64) float64 {
	q := p.Insert
	if q == nil {
		return w.Thickness * (to - from)
	}
	edge := math.Min(math.Max(q.OutsideDiameter/2, from), to)
	return q.Thickness*(edge-from) + w.Thickness*(to-edge)
}

// atHole returns the thickness of the wall that the tube is welded into [m].
func (p Port) atHole(w Wall) float64 {
	if p.Insert != nil {
		return p.Insert.Thickness
	}
	return w.Thickness
}

// fitsInsert returns an error for an insert that cannot count: thinner than the
// wall, or not beyond the hole it carries, or with a pad on it.
func (p Port) fitsInsert(w Wall, half float64) error {
	q := p.Insert
	switch {
	case q == nil:
		return nil
	case p.Pad != nil:
		return fmt.Errorf("port %s: a pad on an inserted plate is not covered; choose one of them", p.Name)
	case q.Thickness < w.Thickness*(1-1e-9):
		return fmt.Errorf("port %s: the inserted plate, %.4g mm left, is thinner than the wall, %.4g mm", p.Name, q.Thickness*1e3, w.Thickness*1e3)
	case !(q.OutsideDiameter/2 > half):
		return fmt.Errorf("port %s: the inserted plate reaches %.4g mm from the tube's axis, the hole in it %.4g mm", p.Name, q.OutsideDiameter*500, half*1e3)
	}
	return nil
}

// CheckInsert is port.NAME/insert: the wall at the butt weld round an inserted
// plate carries what it must without the port, the weld's efficiency on it:
//
//	max(t_r, N/S) ≤ E t
//
// t_r and N/S as in [Port.Area]. It does not apply without an insert. The plate's
// extra thickness on one side only bends the wall: [InsertBending].
//
// Source: ASME VIII-1 UG-27 and UG-32 with the joint's efficiency, recalled; that
// the weld round an insert is a seam of the wall and not of the opening, practice.
func (r AreaReport) CheckInsert(name string) check.Result {
	id, title := "port."+name+"/insert", "Port "+name+": weld round the inserted plate"
	q := r.Port.Insert
	if q == nil {
		return check.NotApplicableTo(id, title, "no inserted plate")
	}
	if err := r.incomplete(); err != nil {
		return check.NotMade(id, title, err)
	}
	if !(r.Strengths.Wall > 0) { // not reached: without it the report is not complete
		return check.NotMade(id, title, errors.New("the allowable stress of the wall is not known"))
	}
	t, resultant := r.Wall.Thickness, r.Load.mostAsked()
	return check.Result{
		ID: id, Title: title, Formula: "max(t_r, N/S_v) ≤ E t", Factor: 1,
		Inputs: []check.Quantity{check.Pa("p", "pressure at the port", r.Load.Pressure), check.M("t", "least wall beside the insert", t), check.M("t_i", "least thickness of the insert", q.Thickness),
			check.M("2 s_i", "diameter of the insert, along the wall", q.OutsideDiameter), check.Num("E", "efficiency of the butt weld round it", q.Efficiency),
			check.M("t_r", "wall required without the port", r.RequiredWall), check.NPerM("N", "largest membrane resultant, as it is asked", resultant), check.Pa("S_v", "allowable stress, wall", r.Strengths.Wall)},
		Demand:   check.M("t", "wall required", math.Max(r.RequiredWall, resultant/r.Strengths.Wall)),
		Capacity: check.M("E t", "wall with its weld's efficiency", q.Efficiency*t),
		Source:   check.Source{Doc: "ASME BPVC Section VIII Division 1, recalled; confirm", Where: "wall thickness rules with the joint's efficiency", How: check.Memory},
		Note:     "taper from insert to wall 1:3 or flatter, not counted; the bending by extra thickness on one side only is not in this check: port.NAME/misalignment",
	}
}
