package heads

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Corner is a sharp joint between cone and cylinder as the rule sets judge it. Their verdict is never
// that of the joint: at 30 degrees a corner may pass them with a bending stress of 3.9 S. The junction check decides.
type Corner struct {
	Small      bool    // the small end of the cone; else the large one
	HalfAngle  float64 // α [rad]
	Radius     float64 // inside radius of the cylinder at the corner, corroded [m]
	ShellWall  float64 // ts, less corrosion and tolerance [m]
	ConeWall   float64 // tc, the same [m]
	ShellNeed  float64 // t, required of the cylinder for pressure [m]
	ConeNeed   float64 // tr, required of the cone for pressure at the corner [m]
	ShellFree  float64 // length of cylinder up to its next joint; +Inf: long [m]
	ConeFree   float64 // length of cone along its wall up to its next joint; +Inf: long [m]
	Pressure   float64 // p at the corner, highest [Pa]
	LineLoad   float64 // f1, from line loads per circumference, tension positive [N/m]
	S          float64 // Ss, allowable stress of the cylinder; European: f, the lower of both walls [Pa]
	Efficiency float64 // E1, long seam of the cylinder; European: z of the small end [-]
	Modulus    float64 // Es, of the wall on which a ring stands [Pa]
	Added      float64 // area of metal added at the corner that counts, see [AddedArea] [m2]
	AddedS     float64 // Sr, allowable stress of the added metal [Pa]
	AddedE     float64 // Er, Young's modulus of the added metal [Pa]
}

// The angle Δ [deg] up to which a corner needs no added metal, by p/(Ss E1).
var (
	largeDelta = [][2]float64{{0, 0}, {0.001, 11}, {0.002, 15}, {0.003, 18}, {0.004, 21}, {0.005, 23}, {0.006, 25}, {0.007, 27}, {0.008, 28.5}, {0.009, 30}}
	smallDelta = [][2]float64{{0, 0}, {0.002, 4}, {0.005, 6}, {0.01, 9}, {0.02, 12.5}, {0.04, 17.5}, {0.08, 24}, {0.10, 27}, {0.125, 30}}
)

// Delta returns the half angle Δ [rad] up to which the vessel rule asks for no added metal at a corner, at
// x = p/(Ss E1) [-] ≥ 0: straight between the rows, to 0 at 0, and 30 deg from the last row up.
//
// Source: ASME VIII-1 Appendix 1-5, large end read in Moss p. 213, small end recalled; below the first row common practice.
func Delta(x float64, small bool) (float64, error) {
	if err := check.Within("heads.Delta", "p/(Ss E1)", x, 0, math.MaxFloat64, "table of the vessel rule"); err != nil {
		return math.NaN(), err
	}
	table := largeDelta
	if small {
		table = smallDelta
	}
	for i := 1; i < len(table); i++ {
		a, b := table[i-1], table[i]
		if x <= b[0] {
			return (a[1] + (b[1]-a[1])*(x-a[0])/(b[0]-a[0])) * math.Pi / 180, nil
		}
	}
	return table[len(table)-1][1] * math.Pi / 180, nil
}

// Reinforcement is what the vessel rule asks of a corner.
type Reinforcement struct {
	Delta     float64 // angle that needs none [rad]
	Factor    float64 // k, 1 without an added ring [-]
	Force     float64 // Q, axial force per circumference [N/m]
	Required  float64 // area that must be found, 0: none [m2]
	Available float64 // in the walls beyond what pressure needs, the lower of two forms [m2]
}

// Reinforcement returns the area by the vessel rule, α up to 30 deg:
//
//	A_r = (k Q R/(Ss E1)) (1 − Δ/α) tan α    Q = p R/2 + f1    k = max(1, Ss Es/(Sr Er)) with added metal
//	large: A_e = (ts − t) sqrt(R ts) + (tc − tr) sqrt(R tc/cos α), not above 4 min(ts − t, tc − tr/cos α) sqrt(R ts)
//	small: A_e = 0.78 sqrt(R ts) [(ts − t) + (tc − tr)/cos α]
//
// Source: ASME VIII-1 Appendix 1-5, edition before 2021 (A_r read in Farr and Jawad 3.37, the available areas recalled; the
// 2021 edition allows less).
func (c Corner) Reinforcement() (Reinforcement, error) {
	if err := c.valid(math.Pi / 6); err != nil {
		return Reinforcement{}, err
	}
	r := Reinforcement{Factor: 1, Force: c.Pressure*c.Radius/2 + c.LineLoad}
	var err error
	if r.Delta, err = Delta(c.Pressure/(c.S*c.Efficiency), c.Small); err != nil {
		return Reinforcement{}, err
	}
	if c.Added > 0 {
		if !(c.AddedS > 0 && c.AddedE > 0 && c.Modulus > 0) {
			return Reinforcement{}, errors.New("strength or stiffness of the added metal is not known")
		}
		r.Factor = math.Max(1, c.S*c.Modulus/(c.AddedS*c.AddedE))
	}
	if c.HalfAngle > r.Delta*(1+rounding) {
		r.Required = math.Max(0, r.Factor*r.Force*c.Radius/(c.S*c.Efficiency)*(1-r.Delta/c.HalfAngle)*math.Tan(c.HalfAngle))
	}
	cos, ds, dc, root := math.Cos(c.HalfAngle), c.ShellWall-c.ShellNeed, c.ConeWall-c.ConeNeed, math.Sqrt(c.Radius*c.ShellWall)
	if c.Small {
		r.Available = 0.78 * root * (ds + dc/cos)
		return r, nil
	}
	r.Available = math.Min(ds*root+dc*math.Sqrt(c.Radius*c.ConeWall/cos), 4*math.Min(ds, c.ConeWall-c.ConeNeed/cos)*root)
	return r, nil
}

// valid refuses what no rule takes; most is the largest half angle [rad].
func (c Corner) valid(most float64) error {
	const why = "corner of cone and cylinder"
	positive := func(name string, v float64) error {
		return check.Within("heads.Corner", name, v, math.SmallestNonzeroFloat64, math.MaxFloat64, why)
	}
	return errors.Join(
		check.Within("heads.Corner", "half angle (rad)", c.HalfAngle, math.SmallestNonzeroFloat64, most*(1+rounding), why),
		positive("inside radius (m)", c.Radius), positive("wall of the cylinder (m)", c.ShellWall), positive("wall of the cone (m)", c.ConeWall),
		check.Within("heads.Corner", "required wall of the cylinder (m)", c.ShellNeed, 0, math.MaxFloat64, why),
		check.Within("heads.Corner", "required wall of the cone (m)", c.ConeNeed, 0, math.MaxFloat64, why),
		check.Within("heads.Corner", "pressure on the concave side (Pa)", c.Pressure, 0, math.MaxFloat64, why),
		check.Within("heads.Corner", "line load (N/m)", c.LineLoad, -math.MaxFloat64, math.MaxFloat64, why),
		positive("allowable stress (Pa)", c.S), check.Within("heads.Corner", "joint efficiency", c.Efficiency, 0.01, 1, why),
		check.Within("heads.Corner", "added area (m2)", c.Added, 0, math.MaxFloat64, why),
	)
}

// AddedArea returns the area [m2] of metal added at a corner that counts as its reinforcement: a ring or a thicker strip
// of the wall, width [m] along the wall, centred on the corner, height [m] beyond the wall, on a cylinder of inside radius R [m] and
// wall t [m]:
//
//	A = height · min(width, 2 sqrt(R t)),  its centroid within 0.25 sqrt(R t) of the corner
//
// offset [m] is the distance of its middle from the corner; beyond 0.25 sqrt(R t) nothing counts.
//
// Source: ASME VIII-1 Appendix 1-5 (sqrt(R t) read, the centroid recalled).
func AddedArea(width, height, offset, R, t float64) (float64, error) {
	const fn, why = "heads.AddedArea", "added metal at a corner"
	if err := errors.Join(
		check.Within(fn, "width (m)", width, 0, math.MaxFloat64, why), check.Within(fn, "height (m)", height, 0, math.MaxFloat64, why),
		check.Within(fn, "offset (m)", offset, -math.MaxFloat64, math.MaxFloat64, why),
		check.Within(fn, "radius (m)", R, math.SmallestNonzeroFloat64, math.MaxFloat64, why), check.Within(fn, "wall (m)", t, math.SmallestNonzeroFloat64, math.MaxFloat64, why),
	); err != nil {
		return math.NaN(), err
	}
	reach := math.Sqrt(R * t)
	if math.Abs(offset) > 0.25*reach {
		return 0, nil
	}
	lo, hi := math.Max(offset-width/2, -reach), math.Min(offset+width/2, reach)
	return height * math.Max(0, hi-lo), nil
}

// Check sets the area that the vessel rule asks for at the corner against what is there (head.X/corner, at the
// tip head.X/tip-corner).
func (c Corner) Check(end string) check.Result {
	id, name, which := "head."+end+"/corner", title(end, "corner to the cylinder, reinforcing area"), "large"
	if c.Small {
		id, name, which = "head."+end+"/tip-corner", title(end, "corner at the tip, reinforcing area"), "small"
	}
	if c.HalfAngle > math.Pi/6*(1+rounding) {
		return check.NotApplicableTo(id, name, "the area rule ends at 30 degrees: the stresses of head."+end+"/junction decide alone")
	}
	r, err := c.Reinforcement()
	switch {
	case err != nil:
		return check.NotMade(id, name, err)
	case r.Required == 0:
		return check.NotApplicableTo(id, name, fmt.Sprintf("the vessel rule asks for no added area up to %.1f degrees at this pressure, or the force does not pull; head.%s/junction decides", r.Delta*180/math.Pi, end))
	}
	have := math.Max(math.SmallestNonzeroFloat64, r.Available+c.Added) // no metal to spare has no area, and fails
	return check.Result{Rule: string(material.Vessel), ID: id, Title: name, Formula: "(k Q R/(Ss E1)) (1 − Δ/a) tan a ≤ A_e + A_added", Factor: 1,
		Inputs: []check.Quantity{
			check.Pa("p", "pressure at the corner", c.Pressure), check.M("R", "inside radius of the "+which+" end, corroded", c.Radius), check.Rad("a", "half apex angle", c.HalfAngle),
			check.NPerM("Q", "axial force per circumference", r.Force), check.Pa("Ss", "allowable stress of the cylinder", c.S), check.Num("E1", "long-seam efficiency", c.Efficiency),
			check.Rad("Δ", "half angle that needs none", r.Delta), check.Num("k", "added metal over wall", r.Factor),
			check.M("ts", "wall of the cylinder", c.ShellWall), check.M("t", "required of it", c.ShellNeed), check.M("tc", "wall of the cone", c.ConeWall), check.M("tr", "required of it", c.ConeNeed),
			check.M2("A_e", "area free in the walls", r.Available), check.M2("A_added", "added area within the limits", c.Added),
		},
		Demand: check.M2("A_r", "required area", r.Required), Capacity: check.M2("A", "area that counts", have),
		Source: check.Source{Doc: "ASME BPVC Section VIII Division 1, before 2021; Farr and Jawad; Moss", Where: "areas of cone-to-cylinder joints, recalled in part; confirm", How: check.Memory},
		Note:   "the area alone does not show the corner safe: head." + end + "/junction decides",
	}
}
