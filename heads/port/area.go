package port

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// An AreaReport holds every intermediate area of one port in one case.
type AreaReport struct {
	Port            Port
	Wall            Wall
	Load            Load
	Strengths       Strengths
	Chords          Chords
	RequiredWall    float64 // t_r of the seamless wall at the tube axis [m]
	RequiredFormula string
	RequiredTube    float64 // t_rn of the tube with its own seam [m]
	Ratios          Ratios
	Meridional      Plane
	Transverse      Plane
	Pressure        []PressureArea // second opinion, outboard and inboard; empty where the method does not reach
	Piping          *Piping        // third opinion on a cylinder or cone; nil where the piping form does not reach
	Stress          *StressArea    // fourth opinion, a tube without pad or insert; nil where it does not reach
	Notes           []string       // what a reader should know of the methods used
	Err             error          // why the report is incomplete; no check is made from it then
	Faults          []Fault        // what makes the port not satisfied whatever the areas say
	Cautions        []string
}

// incomplete returns why no check may be made from the report, or nil.
func (r AreaReport) incomplete() error {
	if r.Err == nil && (r.Meridional.Name == "" || r.Transverse.Name == "") {
		return errors.New("the areas of this port were not worked out")
	}
	return r.Err
}

// A Fault is a condition that the areas cannot make good: demand over capacity.
type Fault struct {
	What             string
	Demand, Capacity check.Quantity
}

// Ratios are the strength ratios f_r1 to f_r4, each capped at 1.
type Ratios struct {
	FR1, FR2, FR3, FR4 float64 // [-]
}

// A Plane is the area check in one plane.
type Plane struct {
	Name          string
	Bore, Outside float64 // d and C [m]
	TubeAlong     float64 // t_n′ = (C − d)/2, tube wall along the vessel wall [m]
	SinBeta       float64 // of the angle between tube and wall [-]
	Factor        float64 // F [-]
	Strip         float64 // F t_r, raised to N/S where that is larger [m]
	Efficiency    float64 // E_1 [-]
	ParallelLimit float64 // L_p [m]
	WallLimit     float64 // L_p of A_1 alone: with t_n′ where E_1 t is under F t_r, else L_p [m]
	NormalLimit   float64 // H [m]
	InsideLimit   float64 // h counted [m]
	Whole         Areas
	Outboard      Areas
	Inboard       Areas
}

// Areas are required and available areas of a whole section or of one side.
type Areas struct {
	Limit, HalfBore, HalfOutside  float64 // L_s, c and half outside chord; of a side [m]
	HalfPad                       float64 // reach of the pad from the tube's axis; of a side, 0 = no pad [m]
	Required                      float64 // A, or A/2 of a side [m2]
	A1, A2, A3, A41, A42, A43, A5 float64 // [m2]
}

// Available returns A1 + A2 + A3 + A41 + A42 + A43 + A5 [m2]; a negative A1 is
// kept.
func (a Areas) Available() float64 { return a.A1 + a.A2 + a.A3 + a.A41 + a.A42 + a.A43 + a.A5 }

// Ratio returns available over required area [-]; +Inf where nothing is asked.
func (a Areas) Ratio() float64 { return a.Available() / a.Required }

// Area replaces the metal that the port's hole takes out of the wall, in both
// planes, over the whole section and over each side of the tube axis alone:
//
//	A   = d tr F + 2 tn′ tr F (1 − fr1)                      required (half on a flat head and for Convex)
//	A1s = E1 t (Ls − c) − F Is − tn′ (E1 t − F tr)(1 − fr1)  wall, of a side; Is = tr (Ls − c),
//	      on a cone Is = k [s0 (Ls − c) ± (Ls² − c²)/2], tr growing outboard
//	A2s = (tn − trn) fr2 H      H = min(2.5t, 2.5tn + te, ho)
//	A3s = ti fr2 h              h = min(2.5t, 2.5ti, inside projection)
//	A41s, A43s = ½ leg² sin β fr, A42s = ½ leg² fr4; of A41s and A43s only what lies within H (less te), h and Ls
//	A5s = (min[Dp/2, Ls] − C/2) te fr4
//
// Where E1 t is under F tr the wall's own width is max(d, d/2 + tn′ + t) and the term in
// 1 − fr1 is left out: nothing else counts further out for that.
//
// An inserted plate of thickness ti counts with E1 ti in A1s as far as it goes, the
// wall beyond; the limits keep the wall's own t, which is on the safe side. A tube
// set on the wall has no metal in it: fr1 is 1 and the hole is its bore.
//
// With d the bore chord and C the outside chord of [Port.Chords], tn′ = (C − d)/2,
// Ls = max(d, d/2 + tn + t) cut off where the part, a knuckle, the 0.8 D circle,
// a tip or a joint's zone begins (neighbours: [CheckSpacing]), trn = p Rn/(Sn Et − 0.6p) with Et the efficiency of
// the tube's own long seam, Rn its inside radius, p up to 0.385 Sn Et.
// F is 1 in the meridional plane and 0.5 in the transverse plane of a cylinder
// or cone with full penetration and without a pad, otherwise 1, and F tr is
// never below N/S, N as [Load] asks it. A negative A1 is kept. Lengths in [m], areas in [m2].
//
// Source: ASME BPVC VIII-1 UG-37, UG-40 (areas, larger and smaller choices,
// limits read in worked sheets; weld ratios and cones recalled); each side alone
// UG-37(b) as quoted in UFC 4-159-01N; oblique terms computed. UG-37 takes trn of
// a seamless tube; Et in it is on the safe side, by practice. Tests:
// oblique_test.go, published_test.go, limits_test.go, tubeseam_test.go.
func (p Port) Area(w Wall, load Load, s Strengths) (AreaReport, error) {
	r := AreaReport{Port: p, Wall: w, Load: load, Strengths: s}
	r.Err = r.work()
	return r, r.Err
}

// work fills in the report in the order in which it is done by hand.
func (r *AreaReport) work() error {
	p, w, load, s := r.Port, r.Wall, r.Load, r.Strengths
	var err error
	if r.Chords, err = p.Chords(w); err != nil {
		return err
	}
	if err := errors.Join(load.valid(), s.valid(p.Pad != nil), p.fitting(w, r.Chords.Obliquity)); err != nil {
		return err
	}
	r.Cautions = append(r.Cautions, r.Chords.Cautions...)
	if err := r.require(); err != nil {
		return err
	}
	r.Ratios = s.ratios(p)
	cut := p.cuts(w)
	c := r.Chords
	if err := p.fitsInsert(w, c.largest()); err != nil {
		return err
	}
	meridional, transverse := c.planes()
	hoop, along := load.asked()
	r.Meridional = r.plane(section{name: "meridional", bore: c.Meridional, outside: c.OutsideMeridional, sinBeta: meridional,
		factor: 1, resultant: hoop, efficiency: s.EfficiencyMeridional,
		sides: [2]Areas{{Limit: cut.outboard, HalfBore: c.Outboard, HalfOutside: c.OutsideOutboard}, {Limit: cut.inboard, HalfBore: c.Inboard, HalfOutside: c.OutsideInboard}}})
	side := func(i int) Areas {
		return Areas{Limit: cut.transverse, HalfBore: c.Sides[i], HalfOutside: c.OutsideSides[i]}
	}
	r.Transverse = r.plane(section{name: "transverse", bore: c.Transverse, outside: c.OutsideTransverse, sinBeta: transverse,
		angle: math.Pi / 2, factor: r.factor(1), resultant: along, efficiency: s.EfficiencyTransverse, sides: [2]Areas{side(0), side(1)}})
	if c.Hillside {
		r.Notes = append(r.Notes, "in the transverse plane outboard is the side of rising clock")
	}
	r.judge()
	r.thirdOpinion()
	r.fourthOpinion(cut)
	return r.secondOpinion(cut)
}

// require fills in t_r and t_rn.
func (r *AreaReport) require() error {
	p, w, load, s := r.Port, r.Wall, r.Load, r.Strengths
	rn := p.OutsideDiameter/2 - p.TubeWall
	seamed := s.Tube * s.EfficiencyTube
	r.RequiredTube = load.Pressure * rn / (seamed - 0.6*load.Pressure)
	if err := check.Within("port.Area", "pressure over the tube's allowable stress at its seam", load.Pressure/seamed, 0, 0.385, "thin-wall thickness rules"); err != nil {
		return err
	}
	if w.Surface == Flat {
		if err := check.Within("port.Area", "bore over the flat head's diameter", r.Chords.Meridional/(2*w.edge()), 0, 0.5, "rule for an opening in a flat head, recalled: beyond it the head is a ring and needs a flange calculation; make the hole smaller"); err != nil {
			return err
		}
	}
	if w.Surface == Flat || load.Convex {
		r.RequiredWall, r.RequiredFormula = load.Required, "t_r by the rule for the part without its port"
		var f faults
		f.positive("thickness required of the "+w.Surface.String()+" without the port", load.Required)
		return errors.Join(f.all...)
	}
	if load.Required != 0 {
		return fmt.Errorf("port %s: a required thickness may be given for a flat head or pressure on the convex side only", p.Name)
	}
	var err error
	r.RequiredWall, r.RequiredFormula, err = p.RequiredWall(w, load.Pressure, s.Wall)
	return err
}

// A section is a plane through the port before its areas are known. Its sides
// come with the distance in Limit at which metal stops counting.
type section struct {
	name                           string
	bore, outside, sinBeta, factor float64
	angle                          float64 // to the meridional plane: 0 where the first side looks straight outboard [rad]
	resultant, efficiency          float64
	sides                          [2]Areas
}

// plane works out one plane.
func (r *AreaReport) plane(x section) Plane {
	p, w, fr := r.Port, r.Wall, r.Ratios
	d, e1, sides := x.bore, x.efficiency, x.sides
	te := 0.0
	if p.Pad != nil {
		te = p.Pad.Thickness
	}
	pl := Plane{Name: x.name, Bore: d, Outside: x.outside, TubeAlong: (x.outside - d) / 2, SinBeta: x.sinBeta, Efficiency: e1, Factor: x.factor}
	pl.Strip = math.Max(pl.Factor*r.RequiredWall, x.resultant/r.Strengths.Wall)
	t, tn, ftr := w.Thickness, p.TubeWall, pl.Strip
	pl.ParallelLimit = math.Max(d, d/2+tn+t)
	pl.WallLimit = pl.ParallelLimit
	if e1*t < ftr { // a wall that is short is short over the wider width
		pl.WallLimit = math.Max(d, d/2+pl.TubeAlong+t)
	}
	pl.NormalLimit = math.Min(math.Min(2.5*t, 2.5*p.TubeWall+te), p.outsideNormal(w, r.Chords.Obliquity))
	if p.Fit == Through && p.Inside > 0 {
		pl.InsideLimit = math.Min(math.Min(2.5*t, 2.5*p.InsideWall), p.insideNormal(w, r.Chords.Obliquity))
	}
	pl.Whole.Required = r.asked() * ftr * (d + 2*pl.TubeAlong*(1-r.Ratios.FR1))
	for i := range sides {
		a := &sides[i]
		limit := math.Min(pl.WallLimit, a.Limit)
		a.Limit = math.Min(pl.ParallelLimit, a.Limit)
		a.Required, a.HalfPad = pl.Whole.Required/2, p.padReach(a.HalfOutside, x.angle)
		relief := pl.TubeAlong * math.Max(0, e1*p.atHole(w)-ftr) * (1 - fr.FR1) // none of a short wall
		even := e1*p.wallMetal(w, a.HalfBore, limit) - ftr*(limit-a.HalfBore) - relief
		a.A1 = even
		if w.Surface == Cone && !r.Load.Convex && !p.inKnuckle(w) { // t_r grows as the slant distance from the apex
			grown := (limit*limit - a.HalfBore*a.HalfBore) / 2 * math.Sin(w.HalfApex) / p.Radius
			a.A1 -= ftr * grown * math.Cos(x.angle) * float64(1-2*i)
		}
		r.additions(a, pl)
		pl.Whole.A1 += even
	}
	pl.Outboard, pl.Inboard = sides[0], sides[1]
	pl.Whole.add(sides[0])
	pl.Whole.add(sides[1])
	return pl
}

// asked returns the share of the area that is asked [-]: half in a flat head
// and for pressure on the convex side.
//
// Source: ASME VIII-1 UG-39 recalled, UG-37(d)(1) read.
func (r *AreaReport) asked() float64 {
	if r.Wall.Surface == Flat || r.Load.Convex {
		return 0.5
	}
	return 1
}

// factor returns F [-] of a plane whose angle to the generator has the sine sin:
// 1 − ½ sin², on a cylinder or cone reinforced integrally; otherwise 1.
//
// Source: ASME VIII-1 figure UG-37 (ends of the chart and use read), the curve
// between from the membrane state (1, ½), computed.
func (r *AreaReport) factor(sin float64) float64 {
	single := r.Wall.Surface == Cylinder || r.Wall.Surface == Cone
	if single && r.Port.FullGroove && r.Port.Pad == nil && !r.Load.Convex && !r.Port.inKnuckle(r.Wall) {
		return 1 - sin*sin/2
	}
	return 1
}
