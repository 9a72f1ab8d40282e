package life

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Wall is the place at which leak before burst is asked for, at the highest pressure of service.
type Wall struct {
	Where     string
	Hoop      float64 // membrane stress across the crack [Pa]
	Local     float64 // membrane and bending there, misalignment in it; not below Hoop [Pa]
	Range     float64 // least to largest of it over all cycles, for the growth of a flaw; not below Local [Pa]
	Pressure  float64 // on the faces of a crack on the inside [Pa]
	Radius    float64 // mid-wall, second principal one [m]
	Thickness float64 // least [m]
	Yield     float64 // of the zone the crack lies in [Pa]
	Ultimate  float64 // of the zone [Pa]
	Toughness float64 // K_c of the zone, lower bound, at its worst temperature [Pa m½]
	Source    check.Source
}

// Leak is what a wall answers about leak before burst.
type Leak struct {
	Bulging      float64 // M of a crack of length 10 t, the larger form [-]
	Short        float64 // K at c = t: criterion A [Pa m½]
	Long         float64 // K at 2c = 10 t: criterion B [Pa m½]
	Plastic      float64 // σ_h M at 2c = 10 t [Pa]
	Flow         float64 // flow stress of the zone [Pa]
	Surface      float64 // K of a surface crack at 0.8 of the wall, the worst shape and point [Pa m½]
	SurfaceShape float64 // a/c of that crack [-]
	PlaneStrain  float64 // wall at which the toughness is that of plane strain, 2.5 (K_c/Sy)²; 0 without a toughness [m]
}

// shapes are the shapes of surface cracks that are tried [-].
var shapes = [...]float64{0.2, 0.4, 0.6, 0.8, 1}

// Leak returns the numbers behind [Wall.Check]; it needs no toughness. An error where the local stress is above 0.8 of
// the zone's yield: linear fracture mechanics do not hold there.
//
// Source: as [ThroughCrack.Intensity], with the larger of both bulging factors, and [SurfaceCrack.Intensity] with the pressure on the
// crack's faces.
func (w Wall) Leak() (l Leak, err error) {
	const fn = "life.Wall.Leak"
	if err = errors.Join(
		check.Within(fn, "hoop stress (Pa)", w.Hoop, math.SmallestNonzeroFloat64, math.MaxFloat64, "tension"),
		check.Within(fn, "pressure (Pa)", w.Pressure, 0, math.MaxFloat64, "on the inside"),
		check.Within(fn, "local stress over hoop stress", w.Local/w.Hoop, 1, math.MaxFloat64, "bending comes on top"),
		check.Within(fn, "local stress over the yield of the zone", w.Local/w.Yield, 0, lefm, "linear fracture mechanics"),
	); err != nil {
		return l, err
	}
	through := func(c float64) (k, m float64, err error) {
		a, b, err := ThroughCrack{c, w.Radius, w.Thickness}.Bulging()
		m = math.Max(a, b)
		return m * w.Hoop * math.Sqrt(math.Pi*c), m, err
	}
	var e1, e2, e3 error
	l.Short, _, e1 = through(w.Thickness)
	l.Long, l.Bulging, e2 = through(5 * w.Thickness)
	l.Plastic = w.Hoop * l.Bulging
	l.Flow, e3 = FlowStress(w.Yield, w.Ultimate)
	if err = errors.Join(e1, e2, e3); err != nil {
		return l, err
	}
	a := deepest * w.Thickness
	for _, s := range shapes {
		k, err := SurfaceCrack{a, a / s, w.Thickness, math.Inf(1)}.Worst(w.Local + w.Pressure)
		if err != nil { // not reached: depth and shapes are in range, and the stress has been asked for
			return l, err
		}
		if k > l.Surface {
			l.Surface, l.SurfaceShape = k, s
		}
	}
	if w.Toughness > 0 {
		l.PlaneStrain = 2.5 * (w.Toughness / w.Yield) * (w.Toughness / w.Yield)
	}
	return l, nil
}

// Needed returns the toughness [Pa m½] that the wall needs for criterion B and the surface crack.
// Source: as [Wall.Leak].
func (l Leak) Needed() float64 { return math.Max(l.Long, l.Surface) }

// Check asks whether a crack in the wall leaks before it runs, at the highest pressure of service:
//
//	B: K(2c = 10 t) ≤ K_c      M σ_h ≤ flow stress      surface crack of a = 0.8 t, both points: K ≤ K_c
//
// with K_c a lower bound of the zone; the worst of the three is shown. Criterion A, K(c = t) ≤ K_c, is a note and passes nothing.
// Whether a leak is harmless is not asked here.
//
// Source: criterion B of space practice (recalled).
func (w Wall) Check(id, title string) check.Result {
	r := check.Result{ID: id, Title: title, Factor: 1, Source: check.Source{Doc: "leak before burst of space practice, Folias, Newman and Raju", Where: "criterion B", How: check.Memory}}
	l, err := w.Leak()
	switch {
	case err != nil:
		r.Err = err
		return r
	case !(w.Toughness > 0) || math.IsInf(w.Toughness, 1):
		r.Err = fmt.Errorf("no lower bound of the toughness of the zone is known; at least %.1f MPa m^0.5 is needed in %s", math.Ceil(l.Needed()/mpa*10)/10, w.Where)
		return r
	}
	r.Inputs = w.inputs(l)
	r.Demand, r.Capacity, r.Formula = check.PaRootM("K_B", "stress intensity of a crack of 10 t through the wall, "+w.Where, l.Long), check.PaRootM("K_c", "toughness of the zone, lower bound", w.Toughness), "M σ_h √(π 5 t) ≤ K_c"
	use := l.Long / w.Toughness
	if u := l.Surface / w.Toughness; u > use {
		use = u
		r.Demand, r.Formula = check.PaRootM("K_s", "stress intensity of a surface crack at 0.8 of the wall, "+w.Where, l.Surface), "(F/√Q) (σ + p) √(π 0.8 t) ≤ K_c"
	}
	if l.Plastic/l.Flow > use {
		r.Demand, r.Capacity, r.Formula = check.Pa("M σ_h", "membrane stress with bulging, "+w.Where, l.Plastic), check.Pa("σ_f", "flow stress of the zone", l.Flow), "M σ_h ≤ σ_f"
	}
	r.Note = w.note(l)
	return r
}

func (w Wall) inputs(l Leak) []check.Quantity {
	return []check.Quantity{
		check.Pa("σ_h", "membrane stress across the crack", w.Hoop), check.Pa("σ", "membrane and bending at the place", w.Local),
		check.Pa("p", "pressure on the faces of the crack", w.Pressure), check.M("R", "mid-wall radius", w.Radius), check.M("t", "least wall", w.Thickness),
		check.Num("M", "bulging of a crack of 10 t, larger form", l.Bulging), check.Pa("R_p0.2,w", "yield strength of the zone", w.Yield),
		check.Pa("σ_f", "flow stress of the zone", l.Flow), check.Pa("M σ_h", "membrane stress with bulging", l.Plastic),
		check.PaRootM("K_A", "stress intensity of a crack of 2 t through the wall", l.Short), check.PaRootM("K_B", "the same of 10 t", l.Long),
		check.PaRootM("K_s", "surface crack at 0.8 of the wall", l.Surface), check.Num("a/c", "its shape, the worst", l.SurfaceShape),
		check.PaRootM("K_c", "toughness of the zone, lower bound", w.Toughness),
	}
}

func (w Wall) note(l Leak) string {
	n := "criterion B; "
	if l.Short <= w.Toughness && l.Long > w.Toughness {
		n += "criterion A (a crack of 2 t) alone holds, which passes nothing; "
	}
	if w.Thickness < l.PlaneStrain {
		n += fmt.Sprintf("the wall is thinner than the %.0f mm of plane strain: fracture mechanics are an indication here; ", math.Ceil(l.PlaneStrain*1e3))
	}
	return n + "a regulator or a liquid under its own vapour pressure keeps the pressure up while the tank leaks; toughness: " + w.Source.Doc + " (" + w.Source.How.String() + ")"
}
