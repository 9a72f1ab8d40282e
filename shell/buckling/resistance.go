package buckling

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// Options are what the rule set and the user say about the method.
type Options struct {
	Factor      float64 // FS, buckling factor [-]
	Gain        Gain    // by inside pressure, from the user's table; none: 0
	Class       Class   // of EN 1993-1-6; "" is C
	ClassSource string  // measurement that shows class A or B
}

// A Resistance is what one cylinder can bear: worked out once, then asked for
// many stations and instants.
type Resistance struct {
	c              Cylinder
	m              Metal
	o              Options
	axial, bending AxialStress // without gain
	shear          ShearStress
	shearTakenLong bool
	european       float64 // σ_x,Rcr [Pa]
	external       []Method
	lowest         Method
	err            error // nothing can be said

	errC, errShear, errEx error // of compression, shear, pressure from outside
}

// Resistance works out what the cylinder can bear. Faults of the input or a
// method out of range come out of the checks, which are then not assessed.
func (c Cylinder) Resistance(m Metal, o Options) *Resistance {
	r := &Resistance{c: c, m: m, o: o, lowest: Method{Allowable: math.NaN()}}
	r.err = errors.Join(c.valid(m), check.Within("buckling.Options", "buckling factor", o.Factor, 1, math.MaxFloat64, "never below one"))
	if (o.Class == "A" || o.Class == "B") && o.ClassSource == "" {
		r.err = errors.Join(r.err, errors.New("fabrication class "+string(o.Class)+" needs measured dimples and their source"))
	}
	if r.err != nil {
		return r
	}
	t := c.Tube()
	var errC, errB error
	r.axial, errC = t.CompressionStress(m, 0)
	r.bending, errB = t.BendingStress(m, 0)
	if r.errC = errors.Join(errC, errB, c.openings()); r.errC == nil {
		r.european = t.EuropeanCriticalStress(m)
	}
	r.shear, r.shearTakenLong, r.errShear = t.torsion(m)
	if r.external, r.errEx = c.External(m, o.Class, o.Factor); r.errEx == nil {
		r.lowest, r.errEx = Lowest(r.external)
	}
	return r
}

// External returns every method for pressure from outside, and the one that
// governs; its Allowable is in pascal.
func (r *Resistance) External() ([]Method, Method, error) {
	return r.external, r.lowest, errors.Join(r.err, r.errEx)
}

// A Station is what acts at one section of the cylinder in one case at one
// instant: limit loads, no factor in them, magnitudes unless a sign is named.
type Station struct {
	Compression   float64 // resultant of what compresses the ring: external forces, inertia, liquid hanging below a taper [N]
	Pull          float64 // what pulls on it, smallest simultaneous [N]
	LiquidPull    float64 // liquid standing higher than a cylinder's own, smallest simultaneous [N]
	Moment        float64 // M [N m]
	Shear         float64 // V [N]
	Torque        float64 // T [N m]
	PressureLeast float64 // p_min, smallest simultaneous ullage pressure across the wall, with sign [Pa]
	PressureMost  float64 // p_g, largest simultaneous local pressure, liquid head included, with sign [Pa]
	LiquidHead    float64 // what the liquid adds to the local pressure [Pa]
	Wind          float64 // pressure of the wind on the wall from outside, taken all round [Pa]
}

// unpressured returns the same station with no ullage pressure.
func (s Station) unpressured() Station {
	s.PressureLeast, s.PressureMost = 0, s.LiquidHead
	return s
}

func (s Station) valid() error {
	const fn = "buckling.Station"
	for _, v := range []struct {
		what string
		got  float64
	}{
		{"axial compression [N]", s.Compression}, {"pull [N]", s.Pull}, {"pull of the liquid [N]", s.LiquidPull}, {"bending moment [N m]", s.Moment},
		{"shear force [N]", s.Shear}, {"torque [N m]", s.Torque}, {"liquid head [Pa]", s.LiquidHead}, {"wind [Pa]", s.Wind},
	} {
		if err := check.Within(fn, v.what, v.got, 0, math.MaxFloat64, "a magnitude"); err != nil {
			return err
		}
	}
	if err := number(fn, "smallest pressure [Pa]", s.PressureLeast); err != nil {
		return err
	}
	return check.Within(fn, "largest local pressure [Pa]", s.PressureMost, s.PressureLeast, math.MaxFloat64, "not below the smallest")
}

// A Line is the design load per length of circumference at one station, the
// buckling factor inside and the relief taken.
type Line struct {
	Total    float64 // N, compression; negative: tension [N/m]
	Axial    float64 // N_c, share of the axial force [N/m]
	Bending  float64 // N_b, share of bending [N/m]
	Relief   float64 // taken by the ullage pressure, negative when it adds [N/m]
	Shear    float64 // τ, from V and T, factor inside [Pa]
	External float64 // p_ext, outside minus inside, no factor [Pa]
}

// Line returns the design load [N/m] of a station, factor the buckling factor
// FS [-]:
//
//	N = [FS C − pull]/(2πR) + FS M/(πR²) − [p_min R_i²/(2R) + liquid/(2πR)]
//	N_b = min(N, FS M/(πR²)), N_c = N − N_b
//	τ = FS [V/(πRt) + T/(2πR²t)]
//
// A suction, p_min < 0, presses on the outside radius and carries FS. The
// pressure counts once, here. The wind on the wall presses from outside all round and not
// along the axis: p_ext = wind − p_min, where that is above nothing.
//
// Source: statics; the relief unfactored by NASA/SP-8007-2020 sec. 3.0 (read).
func (c Cylinder) Line(s Station, factor float64) Line {
	r := c.MidRadius()
	l := Line{External: math.Max(0, s.Wind-s.PressureLeast)}
	l.Relief = s.PressureLeast * c.InsideRadius * c.InsideRadius / (2 * r)
	if s.PressureLeast < 0 {
		l.Relief = factor * s.PressureLeast * c.outsideRadius() * c.outsideRadius() / (2 * r)
	}
	bending := factor * s.Moment / (math.Pi * r * r)
	l.Total = (factor*s.Compression-s.Pull-s.LiquidPull)/(2*math.Pi*r) + bending - l.Relief
	if l.Total > 0 {
		l.Bending = math.Min(l.Total, bending)
		l.Axial = l.Total - l.Bending
	}
	l.Shear = factor * (s.Shear/(math.Pi*r*c.Thickness) + s.Torque/(2*math.Pi*r*r*c.Thickness))
	return l
}

// A Use is how much of the resistance a line load asks.
type Use struct {
	Line
	Axials          AxialStress // σ_c and its steps
	Bendings        AxialStress // σ_b and its steps
	Compression     float64     // R_c = N_c/(t σ_c) [-]
	Bent            float64     // R_b = N_b/(t σ_b) [-]
	Sheared         float64     // R_s = τ/τ_cr [-]
	Pressed         float64     // R_p = p_ext/p_a [-]
	Sum             float64     // R_c + R_b + R_s + R_p [-]
	European        European
	EuropeanRatio   float64 // (N/t)/σ_x,Rd [-]
	Ratio           float64 // the larger of the two; at most 1 stands [-]
	EuropeanGoverns bool
}

// Use returns how much of the resistance the line load asks at the smallest
// ullage pressure least and the largest local pressure most [Pa], across the
// wall. The sum is linear.
func (r *Resistance) Use(l Line, least, most float64) (Use, error) {
	u := Use{Line: l, Axials: r.axial, Bendings: r.bending, Ratio: math.NaN()}
	if err := errors.Join(r.err, r.errC); err != nil {
		return u, err
	}
	t, err := r.c.Tube(), error(nil)
	if len(r.o.Gain.Points) > 0 {
		var gain float64
		if gain, err = r.o.Gain.At(math.Max(least, 0) / r.m.Modulus * math.Pow(t.slender(), 2)); err != nil {
			return u, err
		}
		var errB error
		u.Axials, err = t.CompressionStress(r.m, gain)
		u.Bendings, errB = t.BendingStress(r.m, gain)
		err = errors.Join(err, errB)
	}
	u.Compression = l.Axial / (t.Thickness * u.Axials.Critical)
	u.Bent = l.Bending / (t.Thickness * u.Bendings.Critical)
	if l.Shear != 0 {
		u.Sheared = l.Shear / r.shear.Critical
		err = errors.Join(err, r.errShear)
	}
	if l.External != 0 {
		u.Pressed = l.External / r.lowest.Allowable
		err = errors.Join(err, r.errEx)
	}
	u.Sum = u.Compression + u.Bent + u.Sheared + u.Pressed
	var bad error
	u.European, bad = t.european(r.m, r.o.Class, r.european, least, most)
	u.EuropeanRatio = math.Max(l.Total, 0) / t.Thickness / u.European.Design
	if l.Total <= 0 {
		u.EuropeanRatio = 0
	}
	u.EuropeanGoverns = u.EuropeanRatio > u.Sum
	u.Ratio = math.Max(u.Sum, u.EuropeanRatio)
	return u, errors.Join(err, bad, l.valid())
}

// valid returns an error unless every number of the line load is one.
func (l Line) valid() error {
	for _, v := range []float64{l.Total, l.Axial, l.Bending, l.Relief, l.Shear, l.External} {
		if err := number("buckling.Line", "design load", v); err != nil {
			return err
		}
	}
	return nil
}
