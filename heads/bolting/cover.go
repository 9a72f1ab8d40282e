package bolting

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// plateFactor is C of a bolted cover [-], whose rim turns freely on its seal.
//
// Source: ASME VIII-1 UG-34, read.
const plateFactor = 0.3

// leverFactor is what a moment W h_G round the rim gives in bending [-]: 1.9, of
// 6/π = 1.91 for a plate under an even rim moment.
//
// Source: ASME VIII-1 UG-34, read.
const leverFactor = 1.9

var coverSource = check.Source{Doc: "ASME BPVC Section VIII Division 1", Where: "UG-34, bolted cover with edge moment", How: check.Read}

// lever returns h_G, from the bolt circle to the seal's reaction [m].
func (j Joint) lever() float64 {
	g, _ := j.Seal.Line()
	return (j.Bolts.Circle - g) / 2
}

// covers returns the two states that bend a cover, s the allowable stress of the
// bolts [Pa]: in operation with the larger of W_m1 and the preload, and seated without
// pressure with the larger of (A_m + A_b) S_a/2 and the preload. From outside, the
// pressure p [Pa] bends it as much.
func (j Joint) covers(p, s float64) (operating, seating coverState) {
	tight := 0.0
	if j.Bolts.stated() {
		tight = j.tightest()
	}
	wm1, wm2 := j.operating(p), j.Seal.Seat()
	seated := (math.Max(wm1, wm2) + j.Bolts.rootArea()*s) / 2
	return coverState{"in operation", math.Abs(p), math.Max(wm1, tight)}, coverState{"seated, no pressure", 0, math.Max(seated, tight)}
}

type coverState struct {
	name string
	p, w float64 // pressure [Pa], bolt load [N]
}

// bending returns the largest bending stress of a cover of thickness t [m], in [Pa]:
//
//	σ_b = [C p + 1.9 W h_G/G³] G²/t²
func (j Joint) bending(x coverState, t float64) float64 {
	g, _ := j.Seal.Line()
	return (plateFactor*x.p + leverFactor*x.w*j.lever()/(g*g*g)) * g * g / (t * t)
}

// CoverThickness returns the thickness [m] that a cover needs under the pressure p
// [Pa], the larger in operation and seated; allowable stress of the cover and of the
// bolts [Pa]:
//
//	t = G √[C p/S + 1.9 W h_G/(S G³)],  C = 0.3, h_G = (C_b − G)/2
//
// It is what is left under grooves and holes. Seated, W is the mean of what the bolts
// need and what they could carry, and never below the largest preload.
//
// Source: ASME VIII-1 UG-34 (read).
func (j Joint) CoverThickness(p, cover, bolts float64) (float64, error) {
	if err := j.valid(p); err != nil {
		return math.NaN(), err
	}
	if !(cover > 0 && bolts > 0) {
		return math.NaN(), errors.New("allowable stress of cover and bolts must be greater than zero")
	}
	a, b := j.covers(p, bolts)
	return math.Sqrt(math.Max(j.bending(a, 1), j.bending(b, 1)) / cover), nil
}

// CheckCover is the thickness t [m] of a cover, corroded, against [Joint.CoverThickness];
// id is the check's own.
func (j Joint) CheckCover(id string, p, t, cover, bolts float64) check.Result {
	title := j.Title + ": thickness of the bolted cover"
	need, err := j.CoverThickness(p, cover, bolts)
	if err != nil {
		return check.NotMade(id, title, err)
	}
	a, b := j.covers(p, bolts)
	governs := a.name
	if j.bending(b, 1) > j.bending(a, 1) {
		governs = b.name
	}
	pressure := "p"
	if p < 0 { // from outside it bends as much
		pressure = "|p|"
	}
	return check.Result{ID: id, Title: title, Factor: 1, Source: coverSource,
		Formula: "t_o = G √[0.3 " + pressure + "/S + 1.9 W_o h_G/(S G³)]; t_s = G √[1.9 W_s h_G/(S G³)]; max(t_o, t_s) ≤ t",
		Inputs: append(j.inputs(p), check.M("h_G", "lever arm from bolt circle to seal", j.lever()), check.Pa("S", "allowable stress of the cover", cover), check.Pa("S_a", "allowable stress of the bolts", bolts),
			check.N("W_o", "bolt load, "+a.name, a.w), check.N("W_s", "bolt load, "+b.name, b.w),
			check.M("t_o", "required, "+a.name, math.Sqrt(j.bending(a, 1)/cover)), check.M("t_s", "required, "+b.name, math.Sqrt(j.bending(b, 1)/cover))),
		Demand: check.M("t_req", "thickness required", need), Capacity: check.M("t", "least thickness", t),
		Note: "governs: " + governs + "; the thickness counts under grooves and the ends of holes"}
}

// ProofBending returns the bending stress of a cover of thickness t [m] at the highest
// pressure p of a test [Pa], in operation or, if that is more, as it was tightened [Pa].
func (j Joint) ProofBending(p, t, bolts float64) (float64, error) {
	if err := j.valid(p); err != nil {
		return math.NaN(), err
	}
	if !(t > 0 && bolts > 0) {
		return math.NaN(), errors.New("thickness of the cover and allowable stress of its bolts must be greater than zero")
	}
	a, b := j.covers(p, bolts)
	return math.Max(j.bending(a, t), j.bending(b, t)), nil
}
