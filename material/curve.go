package material

import (
	"math"

	"proofsheet/report/check"
)

// At returns the value [SI unit of the property] at T [K], linear between the
// points. Outside the points it is NaN with a [*check.RangeError].
func (c Curve) At(T float64) (float64, error) {
	n := len(c.Points)
	if n == 0 {
		return math.NaN(), &check.RangeError{Func: "material.Curve.At", Param: "temperature [K]", Got: T,
			Least: math.Inf(1), Most: math.Inf(1), Why: "no curve is known"}
	}
	if err := check.Within("material.Curve.At", "temperature [K]", T, c.Points[0].T, c.Points[n-1].T, c.Source.Doc); err != nil {
		return math.NaN(), err
	}
	for i := 1; i < n; i++ {
		if a, b := c.Points[i-1], c.Points[i]; T < b.T {
			return a.Value + (b.Value-a.Value)*(T-a.T)/(b.T-a.T), nil
		} else if T == b.T { // not by way of the sum, which may miss the point by its last digit
			return b.Value, nil
		}
	}
	return c.Points[n-1].Value, nil
}

// nearRoom returns the value of the point nearest to 293.15 K [SI], which must
// be within 1 K of it.
func (c Curve) nearRoom() (float64, bool) {
	for _, p := range c.Points {
		if math.Abs(p.T-roomTemperature) <= 1 {
			return p.Value, true
		}
	}
	v, err := c.At(roomTemperature)
	return v, err == nil
}

// modulus returns E [Pa] at T [K]. Outside the alloy's own points it takes the
// temperature ratio of ModulusLike; colder than both it keeps the room value,
// which is a lower bound, and says so. Hotter than both there is none.
func (a *Alloy) modulus(T float64) (Value, error) {
	v, err := a.Modulus.At(T)
	if err == nil {
		return Value{Value: v, Source: a.Modulus.Source, Note: a.Modulus.Note}, nil
	}
	room, ok := a.Modulus.nearRoom()
	if !ok || math.IsNaN(T) {
		return missing, err
	}
	if like, found := FindAlloy(a.ModulusLike); found {
		at, errAt := like.Modulus.At(T)
		ref, errRef := like.Modulus.At(roomTemperature)
		if errAt == nil && errRef == nil {
			return Value{Value: room * at / ref, Source: check.Source{Doc: a.Modulus.Source.Doc + "; with temperature as " + like.Name, How: check.Practice}}, nil
		}
	}
	if T > roomTemperature+1 {
		return missing, err
	}
	return Value{Value: room, Source: a.Modulus.Source, Note: "room-temperature value kept below the curve: a lower bound"}, nil
}

// expansion returns the mean coefficient from 293 K to T [1/K]. Without a
// point that serves it is NaN with a note: few checks need it.
func (a *Alloy) expansion(T float64) Value {
	if v, err := a.Expansion.At(T); err == nil {
		return Value{Value: v, Source: a.Expansion.Source, Note: a.Expansion.Note}
	}
	// ΔL/L from 293 K divided by T − 293 K; near 293 K the quotient has no digits.
	if v, err := a.Contraction.At(T); err == nil && T <= 283 {
		return Value{Value: v / (T - 293), Source: a.Contraction.Source, Note: "from the contraction between 293 K and this temperature"}
	}
	if n := len(a.Expansion.Points); n > 0 && T >= zeroCelsius && T < a.Expansion.Points[0].T {
		p := a.Expansion.Points[0]
		return Value{Value: p.Value, Source: a.Expansion.Source, Note: "the mean between 20 and 100 degC"}
	}
	v := missing
	v.Note = "no expansion is known at this temperature"
	return v
}
