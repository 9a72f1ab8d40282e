package bolting

import (
	"fmt"
	"math"

	"proofsheet/report/check"
)

var ligamentSource = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "ligament of UG-53 read; rim moment of UG-34 read, its use outside of the seal recalled, confirm", How: check.Memory}

// Ligament returns E, what the bolt holes leave of a cover on its bolt circle [-]:
//
//	E = (p − d_h)/p,  p = C sin(π/n)
//
// d_h the holes, p the straight distance between two of them [m]. Holes narrower than
// their bolts, or that touch, are an error and NaN.
//
// Source: ASME VIII-1 UG-53(b), read.
func (b Bolts) Ligament() (float64, error) {
	p := b.spacing()
	if !(b.Hole >= b.Thread.Major && b.Hole < p) {
		return math.NaN(), fmt.Errorf("bolt holes of %.4g mm, bolts of %.4g mm, %.4g mm apart on their circle: write bolts.hole between the last two", b.Hole/mm, b.Thread.Major/mm, p/mm)
	}
	return (p - b.Hole) / p, nil
}

// rim returns the largest bolt load of a cover and its name, s the allowable stress of
// the bolts [Pa].
func (j Joint) rim(p, s float64) coverState {
	a, b := j.covers(p, s)
	if b.w > a.w {
		return b
	}
	return a
}

// RimBending returns the bending stress of a cover of thickness t [m] between its bolt
// holes [Pa], p the pressure and bolts the allowable stress of the bolts [Pa]:
//
//	σ = 1.9 W h_G/(E G t²)
//
// The moment is that on the seal's circle, where it is largest; towards the bolts it
// falls to nothing.
//
// Source: as [Joint.CheckLigament].
func (j Joint) RimBending(p, t, bolts float64) (float64, error) {
	if err := j.valid(p); err != nil {
		return math.NaN(), err
	}
	if !(t > 0 && bolts > 0) {
		return math.NaN(), fmt.Errorf("a cover of %.4g mm and bolts of %.4g MPa have no bending stress", t/mm, bolts/1e6)
	}
	e, err := j.Bolts.Ligament()
	g, _ := j.Seal.Line()
	return leverFactor * j.rim(p, bolts).w * j.lever() / (e * g * t * t), err
}

// CheckLigament is X/ligament: the thickness t [m] of a cover, corroded, where the bolts
// go through it, under their moment on the seal:
//
//	t ≥ √[1.9 W h_G/(E S G)]
//
// p the pressure, cover and bolts the allowable stresses [Pa]; id is the check's own.
//
// Source: ASME VIII-1 UG-34, the term of the rim moment (read), which it asks of the plate
// outside of a groove too (recalled); E of UG-53 on it is common practice, on the safe side.
func (j Joint) CheckLigament(id string, p, t, cover, bolts float64) check.Result {
	title := j.Title + ": cover between its bolt holes"
	σ, err := j.RimBending(p, 1, bolts)
	if err == nil && !(cover > 0) {
		err = fmt.Errorf("the allowable stress of the cover is %.4g MPa", cover/1e6)
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	e, _ := j.Bolts.Ligament()
	w := j.rim(p, bolts)
	return check.Result{ID: id, Title: title, Formula: "E = (p_h − d_h)/p_h; t_req = √[1.9 W h_G/(E S G)] ≤ t", Factor: 1, Source: ligamentSource,
		Inputs: append(j.inputs(p), check.M("p_h", "from one bolt to the next", j.Bolts.spacing()), check.M("d_h", "bolt holes", j.Bolts.Hole), check.Num("E", "ligament between the bolt holes", e),
			check.M("h_G", "lever arm from bolt circle to seal", j.lever()), check.N("W", "largest bolt load, "+w.name, w.w), check.Pa("S", "allowable stress of the cover", cover)),
		Demand: check.M("t_req", "thickness required between the bolt holes", math.Sqrt(σ/cover)), Capacity: check.M("t", "least thickness", t),
		Note: "the cover is taken as thick at its bolts as within; a recess there, and how far its rim goes on outside of the bolts, are not in the tank file"}
}
