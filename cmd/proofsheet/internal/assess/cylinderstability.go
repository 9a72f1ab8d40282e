package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/shell/buckling"
)

const (
	compressionID, compressionTitle = "cylinder/compression", "Cylinder: buckling in compression and bending"
	externalID, externalTitle       = "cylinder/external", "Cylinder: external pressure"
	columnID, columnTitle           = "cylinder/column", "Cylinder: buckling as a column"
)

// leastHead is how thin a head's wall may be against the cylinder's for the head
// to hold the cylinder round [-]: common practice.
const leastHead = 1.0 / 3

// A stableKey is all that the cylinder's stability depends on beside the file.
type stableKey struct {
	rule material.Rule
	T    float64 // [K]
}

// A stableCylinder is what the cylinder bears at one state of its metal: inside
// its own wall, and under pressure from outside with the thinnest wall between
// the heads, a thinner straight flange among them.
type stableCylinder struct {
	plain, outside *buckling.Resistance
	metal          buckling.Metal
	factor         float64 // [-]
	err            error
}

// at returns the resistance that holds for the smallest pressure across the wall, less
// the wind on it [Pa].
func (s *stableCylinder) at(least float64) *buckling.Resistance {
	if least < 0 {
		return s.outside
	}
	return s.plain
}

// stable returns the cylinder's resistance under a rule at T [K], remembered.
func (m *model) stable(rule material.Rule, T float64) *stableCylinder {
	key := stableKey{rule, T}
	if s, ok := m.stables[key]; ok {
		return s
	}
	s := m.newStable(rule, T)
	m.stables[key] = s
	return s
}

func (m *model) newStable(rule material.Rule, T float64) *stableCylinder {
	s := &stableCylinder{}
	f, factorErr := m.factors(rule)
	s.factor = f.BucklingFactor
	var metalErr error
	s.metal, metalErr = m.stableMetal(m.cyl, T)
	c, endErr := m.stableShape()
	c.Rings = m.stiffening(T)
	if s.err = errors.Join(factorErr, metalErr, endErr); s.err != nil {
		return s
	}
	o := buckling.Options{Factor: s.factor}
	s.plain = c.Resistance(s.metal, o)
	s.outside = s.plain
	if thin := m.leastBetween(); thin < c.Thickness {
		c.Thickness = thin
		s.outside = c.Resistance(s.metal, o)
	}
	return s
}

// stableMetal returns the metal of a part for stability at T [K], the warmest of
// the case: there modulus and strength are at their lowest. Where a weld lies in
// the part, the strength is that of its zone if it is the weaker. What the cold stiffens
// is not counted: the modulus is never above that at 20 degC, to which the wall may warm.
func (m *model) stableMetal(p *part, T float64) (buckling.Metal, error) {
	w := m.weldsOf(p)
	in, _ := m.t.FindMaterial(p.material)
	x := m.metals.at(p.material, w, p.nominal, T)
	if err := errors.Join(p.refused, x.parentErr); err != nil {
		return buckling.Metal{}, err
	}
	_, ports := m.portWelds(p.name)
	yield, welded := x.parent.Yield.Value, w != "" || ports || p.name == "cylinder" && m.t.Cylinder.Rings != nil // the weld of a port may name no joint
	if welded {
		if x.zoneErr != nil {
			return buckling.Metal{}, x.zoneErr
		}
		yield = math.Min(yield, x.zone.Yield.Value) // keeps NaN
	}
	out := buckling.NewMetal(x.parent, in.Alloy, yield, welded)
	if T < roomTemperature {
		room := m.metals.at(p.material, w, p.nominal, roomTemperature)
		if room.parentErr != nil {
			return buckling.Metal{}, room.parentErr
		}
		out.Modulus = math.Min(out.Modulus, room.parent.ElasticModulus.Value)
	}
	return out, nil
}

// stableShape returns the cylinder between the tangents of its heads, corroded.
func (m *model) stableShape() (buckling.Cylinder, error) {
	c := buckling.Cylinder{InsideRadius: m.cyl.corroded(), Thickness: m.cyl.least, Length: m.t.Cylinder.Length}
	c.Roundness = given(m.t.Cylinder.OutOfRound) / (4 * m.cyl.mid()) // an oval departs from the circle by a quarter of what its diameters differ by
	var errs []error
	for i, h := range m.ends() {
		c.Length += h.in.StraightFlange
		if h.in.Shape != "flat" && h.least < leastHead*m.cyl.least {
			errs = append(errs, fmt.Errorf("%s is thinner than a third of the cylinder and does not hold it round", h.name))
		}
		switch g := h.strength.Geometry(); {
		case h.in.Bulge == "inward" || h.in.Shape == "flat": // support at its seam
		case h.in.Shape == "cone" || h.in.Shape == "toricone":
			c.Ends[i] = buckling.End{Kind: buckling.Conic, Depth: h.strength.Depth(), HalfAngle: g.HalfAngle}
		default:
			c.Ends[i] = buckling.End{Kind: buckling.Dished, Depth: h.strength.Depth()}
		}
	}
	for _, p := range m.ports {
		if p.head == nil {
			errs = append(errs, p.chordsErr)
			c.Openings = append(c.Openings, buckling.Opening{Name: "port " + p.in.Name, Width: p.chords.OutsideTransverse, Height: p.chords.OutsideMeridional})
		}
	}
	return c, errors.Join(errs...)
}

// leastBetween returns the thinnest wall between the tangents of the heads [m].
func (m *model) leastBetween() float64 {
	t := m.cyl.least
	for _, h := range m.ends() {
		if h.in.StraightFlange > 0 {
			t = math.Min(t, h.least)
		}
	}
	return t
}

// checkStability makes the stability checks of the cylinder in one state.
func (m *model) checkStability(s *loads.State, c *loadCase) []check.Result {
	return []check.Result{m.checkCompression(s, c), m.checkColumn(s, c), m.checkExternal(c)}
}

// checkCompression holds the worst station of the cylinder.
func (m *model) checkCompression(s *loads.State, c *loadCase) check.Result {
	st := m.stable(c.rule, c.temperature)
	ls, err := m.stabilityLoads(s, c)
	if err = errors.Join(m.massErr, st.err, err); err != nil {
		return check.NotMade(compressionID, compressionTitle, err)
	}
	r, worst, most := st.at(math.Min(c.least, 0)-c.gust), ls[0], math.Inf(-1)
	for _, l := range ls {
		ratio, err := r.Ratio(l.station(), c.standsBare())
		if err != nil || math.IsNaN(ratio) {
			worst = l // a station that cannot be assessed decides
			break
		}
		if ratio > most {
			worst, most = l, ratio
		}
	}
	out := r.CheckCompression(worst.station(), c.standsBare())
	if out.Err == nil {
		out.Inputs = append(out.Inputs, check.M("z", "station, the worst of those looked at", worst.z))
		if m.t.Support.At == "both" {
			out.Inputs = append(append(out.Inputs, check.N("C_T", "of C, wall warmer than when both ends were made fast", worst.held)), m.heldEnds(s, c).inputs()...)
		}
	}
	return out
}

// station returns the load as the stability checks want it.
func (l stabilityLoad) station() buckling.Station {
	return buckling.Station{Compression: l.compression, Pull: l.pull, LiquidPull: l.liquidPull, Moment: l.moment, Shear: l.shear,
		PressureLeast: l.pressureLeast, PressureMost: l.pressureMost, LiquidHead: l.liquidHead, Wind: l.wind}
}

// checkColumn holds the tank, or the stack it stands in, as a strut.
func (m *model) checkColumn(s *loads.State, c *loadCase) check.Result {
	st := m.stable(c.rule, c.temperature)
	external, liquid, err := m.columnLoad(s, c)
	if err = errors.Join(m.massErr, st.err, err); err != nil {
		return check.NotMade(columnID, columnTitle, err)
	}
	if external+liquid == 0 {
		return check.NotApplicableTo(columnID, columnTitle, "nothing presses on the tank along its axis in this case, liquid included")
	}
	length, factor, assumed := m.column()
	return st.plain.CheckColumn(buckling.Column{Radius: m.cyl.mid(), Thickness: m.cyl.least, Length: length, Factor: factor},
		buckling.ColumnLoad{External: external, Liquid: liquid, Pressurised: c.least > 0 && !c.standsBare(), Assumed: assumed})
}

// column returns length [m] and factor [-] of the tank as a strut, and what was
// taken where they are not written: the tank standing free on its overall length.
func (m *model) column() (length, factor float64, assumed string) {
	lo, hi := m.in.Bounds()
	length, factor = hi-lo+m.aft.nominal+m.fwd.nominal, 2
	in := m.t.Support
	if in.ColumnLength != nil {
		length = *in.ColumnLength
	} else {
		assumed = fmt.Sprintf("support.column_length is not written: the tank's own overall length, %.4g m, is taken; a stack is longer", length)
	}
	if in.ColumnFactor != nil {
		factor = *in.ColumnFactor
	} else {
		if assumed != "" {
			assumed += ". "
		}
		assumed += "support.column_factor is not written: 2 is taken, standing free"
	}
	return length, factor, assumed
}

// outside returns the largest pressure from outside, outside minus inside [Pa];
// negative where the tank is always the higher. The liquid's head relieves nothing.
func (c *loadCase) outside() float64 { return -math.Min(c.least, c.ullage) }

// never says why pressure from outside does not arise in a case.
func (c *loadCase) never() string {
	if c.outside() == 0 {
		return `the ullage is vented in this case: as much pressure inside as outside; a drain with its vent closed is a case of its own (kind = "drain")`
	}
	return fmt.Sprintf(`the ullage is never below the pressure outside in this case, least %.4g bar above; a drain with its vent closed is a case of its own (kind = "drain")`, -c.outside()/1e5)
}

// checkExternal holds the cylinder under pressure from outside. A head that fails
// its own check there does not hold the cylinder round.
func (m *model) checkExternal(c *loadCase) check.Result {
	p := c.outside() + c.gust
	if p <= 0 {
		return check.NotApplicableTo(externalID, externalTitle, c.never())
	}
	st := m.stable(c.rule, c.temperature)
	if st.err != nil {
		return check.NotMade(externalID, externalTitle, st.err)
	}
	r := st.outside.CheckExternal(p)
	if c.gust > 0 && r.Err == nil {
		r.Inputs = append(r.Inputs, check.Pa("q_w", "pressure of the wind, taken all round; in p_ext", c.gust))
		r.Note += fmt.Sprintf(" The wind of %g m/s on the wall is in the pressure from outside.", tank.PadWind)
	}
	for _, h := range m.ends() {
		if h.in.Bulge == "inward" || h.in.Shape == "flat" || r.Status() != check.Satisfied {
			continue
		}
		if got := m.outsideHead(h, c, c.outside()); c.outside() > 0 && got.Status() != check.Satisfied {
			return check.NotMade(externalID, externalTitle, fmt.Errorf("%s is %s under this pressure and cannot be counted on to hold the cylinder round", h.name, got.Status()))
		}
	}
	return r
}
