package edge

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/material"
	"proofsheet/report/check"
)

// A Place is the stress at one place of a wall near a joint, by origin, with what holds there.
type Place struct {
	Where      string          // for the reader: "cylinder at the joint"; the same words match two methods and two cases
	Pressure   Stress          // from pressure, liquid head included
	LoadMost   Stress          // what line loads add, most tension
	LoadLeast  Stress          // the same, most compression
	Limits     material.Limits // of the wall there; of the weld zone within its width
	Efficiency float64         // of the weld that the meridional stress crosses there; 1 away from it [-]
}

// An Answer is what one method gives for a joint in one case.
type Answer struct {
	Places []Place
	Source check.Source
	Err    error // why the method has no answer, or nil
}

// A Junction is the check of a joint between head and cylinder.
type Junction struct {
	ID, Title     string     // "head.aft/junction"
	Closed        Answer     // edge theory
	Numerical     Answer     // the numerical shell: it governs
	Others        []Answer   // the numerical answers in the other operating cases, for the range
	Extremes      [][]Stress // the same as stresses, pressure and line loads together, for each place of the numerical answer in its order; or nil
	Sharp         bool       // a corner without a knuckle
	PressureLeast float64    // smallest simultaneous pressure over pressure [-]
	Present       bool       // the smallest pressure is certain: 0 is not tried
	Pressure      float64    // at the joint, for the reader [Pa]

	Collapse float64 // plastic collapse pressure of the numerical shell at its yield strength; 0: not run [Pa]

	Slender     float64 // mid-wall radius over the thinner wall at a sharp corner [-]
	Bifurcation float64 // lowest load factor of the numerical bifurcation in this case; 0: not run [-]
	Buckling    float64 // factor that it must reach where Slender is above 500, the rule's own [-]
}

// thinCorner is the radius over wall [-] up to which the limit of the range is met before the compressed ring of a
// large end buckles: at R/t 500 it does so at a meridional surface stress of 0.025 E (30 deg) to 0.0094 E (60 deg), computed.
const thinCorner = 500

// apart is the difference between both methods that is noted [-].
const apart = 0.10

// verdict is one comparison.
type verdict struct {
	where, formula   string
	demand, capacity check.Quantity
	inputs           []check.Quantity
}

// worst keeps the comparison with the least margin. Only that one is spelled out: a wall has hundreds of places.
type worst struct {
	verdict
	use  float64 // demand over capacity [-]
	made bool
}

// hold compares demand with capacity [Pa]. What is not a number is the worst and stays.
func (w *worst) hold(demand, capacity float64, words func() verdict) {
	if u := demand / capacity; !w.made || !(u <= w.use) && !math.IsNaN(w.use) {
		w.verdict, w.use, w.made = words(), u, true
	}
}

// Check sets the stresses of the numerical answer against the limits, the worse first:
//
//	local membrane, either sign     ≤ 1.5 S (across a weld E times that); flight: 1.5 of each strength, parts with their factors
//	range of membrane and bending   ≤ min(3 S, 2 Rp0.2), flight 2 F_ty; both faces, zero and every other case included
//
// both by [material.EquivalentStress], a sharp corner above R/t 500 to its bifurcation too, the pressure to p_c/1.5 where collapse was run, and the meridional stress across a weld alone. The closed form stands beside it; where the
// two differ by more than 10 % the note says so, in stress where both are small. Without a numerical answer the joint is not assessed: a closed form
// does not know the peak inside a head, and never passes one.
func (j Junction) Check() check.Result {
	r, ok := j.begin()
	if !ok {
		return r
	}
	var w worst
	for i, p := range j.Numerical.Places {
		if err := errors.Join(j.local(&w, p), j.span(&w, i, p)); err != nil {
			r.Err = fmt.Errorf("%s: %w", p.Where, err)
			return r
		}
	}
	if j.Sharp && j.Slender > thinCorner {
		w.hold(j.Buckling, j.Bifurcation, func() verdict {
			return verdict{"the corner as a whole", "k ≤ λ", check.Num("k", "factor asked for against buckling", j.Buckling), check.Num("λ", "load factor at bifurcation", j.Bifurcation),
				[]check.Quantity{check.Num("R/t", "mid-wall radius over wall", j.Slender)}}
		})
	}
	if j.Collapse > 0 {
		k := 1.5 // the factor of limit analysis
		for _, p := range j.Numerical.Places {
			if p.Limits.Rule == material.Flight {
				k = math.Max(k, p.Limits.YieldOnPressure)
			}
		}
		j.collapse(&w, k)
	}
	return j.finish(r, w.verdict)
}

// collapse holds k times the pressure to the collapse pressure. It never excuses a stress.
func (j Junction) collapse(w *worst, k float64) {
	w.hold(k*math.Abs(j.Pressure), j.Collapse, func() verdict {
		return verdict{"the joint as a whole", "k p ≤ p_c", check.Pa("k p", "factored pressure", k*math.Abs(j.Pressure)), check.Pa("p_c", "plastic collapse pressure", j.Collapse),
			[]check.Quantity{check.Num("k", "factor on collapse, inside the demand", k)}}
	})
}

// CheckProof sets the stresses at the proof pressure against the yield strength Rp0.2:
//
//	local membrane ≤ E Rp0.2    membrane and bending of a sharp corner ≤ 2 Rp0.2
//
// E the efficiency of a weld there for the stress across it; the caller sets it to 1 where the rule has none at proof. A sharp corner beyond 2 Rp0.2 yields in the proof: it needs a knuckle
// or a limit-load calculation, and is not satisfied. The bending of a joint without a corner is secondary and not held at proof.
func (j Junction) CheckProof() check.Result {
	r, ok := j.begin()
	if !ok {
		return r
	}
	var w worst
	yields := false
	for _, p := range j.Numerical.Places {
		y := p.Limits.Yield
		if !(y > 0) || math.IsInf(y, 1) {
			r.Err = fmt.Errorf("%s: the yield strength is not known", p.Where)
			return r
		}
		for _, s := range j.states(nil, p) {
			j.proof(&w, p, s)
			yields = yields || j.Sharp && s.Surface() > 2*y
		}
	}
	if j.Collapse > 0 {
		j.collapse(&w, 1)
	}
	r = j.finish(r, w.verdict)
	if yields {
		r.Advice = "the corner yields in the proof: it needs a knuckle or a limit-load calculation"
	}
	return r
}

// begin refuses a joint whose numerical answer is missing or not a number.
func (j Junction) begin() (check.Result, bool) {
	r := check.Result{ID: j.ID, Title: j.Title, Factor: 1, Source: j.Numerical.Source}
	switch {
	case j.Numerical.Err != nil:
		r.Err = fmt.Errorf("no answer of the numerical shell: %w", j.Numerical.Err)
	case len(j.Numerical.Places) == 0:
		r.Err = errors.New("no answer of the numerical shell, and a closed form alone never passes a joint")
	case !(j.PressureLeast <= 1) || math.IsInf(j.PressureLeast, -1):
		r.Err = errors.New("the smallest simultaneous pressure must not exceed the pressure")
	case j.Sharp && !(j.Slender > 0):
		r.Err = errors.New("the radius over wall of the corner is missing")
	case j.Sharp && j.Slender > thinCorner && !(j.Bifurcation > 0 && j.Buckling >= 1):
		r.Err = fmt.Errorf("radius over wall is %.0f: above %d the ring of the corner may buckle first, and its bifurcation was not run", j.Slender, thinCorner)
	case !(j.Collapse >= 0) || math.IsInf(j.Collapse, 1):
		r.Err = errors.New("the collapse pressure is not a number")
	case math.IsNaN(j.Pressure):
		r.Err = errors.New("the pressure at the joint is missing")
	}
	for _, p := range j.Numerical.Places {
		if !(p.Pressure.finite() && p.LoadMost.finite() && p.LoadLeast.finite()) {
			r.Err = errors.Join(r.Err, fmt.Errorf("%s: the stress is not a number", p.Where))
		}
		if err := check.Within("edge.Junction.Check", "joint efficiency", p.Efficiency, math.SmallestNonzeroFloat64, 1, "a share of the wall's strength"); err != nil {
			r.Err = errors.Join(r.Err, fmt.Errorf("%s: %w", p.Where, err))
		}
		r.Rule = string(p.Limits.Rule)
	}
	return r, r.Err == nil
}

// finish fills in the worst comparison, and what the other method says.
func (j Junction) finish(r check.Result, v verdict) check.Result {
	r.Formula, r.Demand, r.Capacity = v.formula, v.demand, v.capacity
	r.Inputs = append([]check.Quantity{check.Pa("p", "pressure at the joint", j.Pressure)}, v.inputs...)
	notes := []string{"worst place: " + v.where + ", numerical shell"}
	r.Inputs, notes = j.beside(r.Inputs, notes)
	r.Note = strings.Join(notes, "; ")
	return r
}

// smallShare is the share of the yield strength under which the two methods are compared
// by their difference: a ratio of two stresses of no account says nothing [-].
const smallShare = 0.1

// beside puts the closed form next to the numerical answer, place by place.
func (j Junction) beside(ins []check.Quantity, notes []string) ([]check.Quantity, []string) {
	if j.Closed.Err != nil {
		return ins, append(notes, "no closed form beside it: "+j.Closed.Err.Error())
	}
	met := false
	for _, c := range j.Closed.Places {
		for _, n := range j.Numerical.Places {
			if c.Where != n.Where {
				continue
			}
			met = true
			a, b := c.worst(), n.worst()
			ins = append(ins,
				check.Pa("σ_m,c", c.Where+": local membrane, closed form", a[0]), check.Pa("σ_m,n", "the same, numerical shell", b[0]),
				check.Pa("σ_mb,c", c.Where+": membrane and bending, closed form", a[1]), check.Pa("σ_mb,n", "the same, numerical shell", b[1]))
			for i, what := range []string{"local membrane", "membrane and bending"} {
				if d := math.Abs(a[i]-b[i]) / b[i]; a[i] != b[i] && !(d <= apart) {
					by := fmt.Sprintf("%.0f %%", 100*d)
					if most := math.Max(a[i], b[i]); most < smallShare*n.Limits.Yield {
						by = fmt.Sprintf("%.2g MPa, both under a tenth of the yield strength", math.Abs(a[i]-b[i])/1e6)
					}
					notes = append(notes, fmt.Sprintf("%s, %s: closed form and numerical shell differ by %s", c.Where, what, by))
				}
			}
		}
	}
	if !met {
		notes = append(notes, "no closed form beside it")
	}
	return ins, notes
}

// worst returns the largest local membrane and surface measure [Pa] over the extremes of line loads.
func (p Place) worst() (w [2]float64) {
	for _, l := range []Stress{p.LoadMost, p.LoadLeast} {
		s := combine(1, p.Pressure, 1, l)
		w[0], w[1] = math.Max(w[0], s.Membrane()), math.Max(w[1], s.Surface())
	}
	return w
}
