package buckling

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A ConeCompression is what the check of a cone's section in compression needs.
type ConeCompression struct {
	End, Title string  // "head.aft", "Aft head"
	Cone       Cone    // from the section, its small radius, to the large end
	Metal      Metal   // see Metal
	Factor     float64 // FS, buckling factor [-]
	Station    Station // limit loads of the section; shear and torque are refused
}

// A coneUse is the linear sum for a cone:
//
//	P = FS C − C_rel − p π r_i², R_c = P/P_cr, R_b = FS M/M_cr, R_p = p_ext/p_a
type coneUse struct {
	force, moment    float64 // P, FS M
	forceCr, momentC float64
	external, allow  float64
	sum              float64
}

// Check is head.X/compression: the linear sum R_c + R_b + R_p of SP-8019 at the
// section of the small radius, at the smallest ullage pressure and at none, as
// [Resistance.CheckCompression] has it. Critical force and moment are lowered
// by plasticity. Both edges of the cone must be ringed.
func (k ConeCompression) Check(zeroDecides bool) check.Result {
	id, title := k.End+"/compression", k.Title+": buckling in compression and bending"
	err := errors.Join(k.Station.valid(), check.Within("buckling.ConeCompression", "buckling factor", k.Factor, 1, math.MaxFloat64, "never below one"))
	if k.Station.Shear != 0 || k.Station.Torque != 0 {
		err = errors.Join(err, errors.New("no method for shear or torsion of a cone is at hand"))
	}
	if err != nil {
		return check.NotMade(id, title, err)
	}
	u, err := k.use(k.Station)
	bare, errB := k.use(k.Station.unpressured())
	if err == nil {
		err = errB // the resistance is the same: only pressure from outside can differ
	}
	note := fmt.Sprintf("Without ullage pressure the use is %.3g.", up(bare.sum))
	s := k.Station
	switch {
	case zeroDecides && !(bare.sum <= u.sum):
		u, s, note = bare, s.unpressured(), "Decided without ullage pressure."
	case bare.sum > 1 && u.sum <= 1:
		note = fmt.Sprintf("The tank needs its pressure to stand: without it the use is %.3g.", up(bare.sum))
	}
	return check.Result{
		ID: id, Title: title, Factor: 1, Err: err,
		Formula:  "P/P_cr + FS M/M_cr + p_ext/p_a ≤ 1; P = FS C − C_rel − p π r_i²",
		Inputs:   k.inputs(s, u),
		Demand:   check.Num("ΣR", "linear sum, factor inside, relief taken", u.sum),
		Capacity: check.Num("1", "its limit", 1),
		Source:   check.Source{Doc: "NASA SP-8019, Buckling of Thin-Walled Truncated Cones", Where: "compression, bending, interaction", How: check.Memory},
		Note: fmt.Sprintf("SP-8019: R_c %.3g, R_b %.3g, R_p %.3g; knock-down 0.33 in compression, 0.41 in bending, of the cylinder under 10 degrees. "+
			"Imperfection assumed: that of the tests behind them; both edges ringed. %s", up(math.Max(u.force, 0)/u.forceCr), up(u.moment/u.momentC), up(u.external/u.allow), note),
	}
}

// use works out the sum at one state of the section.
func (k ConeCompression) use(s Station) (coneUse, error) {
	c, m := k.Cone, k.Metal
	u := coneUse{momentC: 1, allow: 1, sum: math.NaN(), external: math.Max(0, -s.PressureLeast)}
	var err, errM, errP error
	if u.forceCr, err = c.CompressionForce(m); err != nil {
		return u, err
	}
	cos := math.Cos(c.HalfAngle)
	ring := 2 * math.Pi * c.SmallRadius * c.Thickness * cos
	if err := positive("buckling.ConeCompression", "radius of the section [m]", c.SmallRadius); err != nil {
		return u, err
	}
	u.forceCr = m.PlasticCompression(u.forceCr/ring) * ring
	if s.Moment > 0 {
		u.momentC, errM = c.BendingMoment(m)
		u.momentC = m.PlasticCompression(u.momentC/(ring*c.SmallRadius/2)) * ring * c.SmallRadius / 2
	}
	if u.external > 0 {
		var low Method
		low, errP = Lowest(c.External(m, k.Factor))
		u.allow = low.Allowable
	}
	r, pressure := c.SmallRadius-c.Thickness*cos/2, s.PressureLeast
	if pressure < 0 {
		r, pressure = c.SmallRadius+c.Thickness*cos/2, k.Factor*pressure
	}
	u.force = k.Factor*s.Compression - s.Pull - s.LiquidPull - pressure*math.Pi*r*r
	u.moment = k.Factor * s.Moment
	// the axial tension relieves the bent side, as in the cylinder: the share
	// of bending is what is left of it
	left := u.moment
	if u.force < 0 {
		left = math.Max(0, u.moment+u.force*c.SmallRadius/2)
	}
	u.sum = math.Max(u.force, 0)/u.forceCr + left/u.momentC + u.external/u.allow
	return u, errors.Join(errM, errP)
}

func (k ConeCompression) inputs(s Station, u coneUse) []check.Quantity {
	shape, _ := k.Cone.Describe()
	q := append([]check.Quantity{
		check.N("C", "axial compression, limit", s.Compression), check.N("C_rel", "axial pull, smallest simultaneous", s.Pull+s.LiquidPull),
		check.NM("M", "bending moment, limit", s.Moment), check.Num("FS", "buckling factor on line loads, not on the relief", k.Factor),
		check.Pa("p_min", "smallest simultaneous ullage pressure", s.PressureLeast),
	}, shape...)
	q = append(q, check.Pa("E", "elastic modulus, lowest", k.Metal.Modulus), check.Pa("σ_y", "yield strength, weld zone included", k.Metal.Yield),
		check.N("P", "design force", u.force), check.N("P_cr", "critical force", u.forceCr))
	if s.Moment > 0 {
		q = append(q, check.NM("M_cr", "critical moment", u.momentC))
	}
	if u.external > 0 {
		q = append(q, check.Pa("p_ext", "pressure from outside", u.external), check.Pa("p_a", "its lowest allowable", u.allow))
	}
	return q
}
