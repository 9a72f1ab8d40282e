package material

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// hotGrace is how far above 20 °C a strength without a curve is kept, with a
// note; hotter it is refused [K].
const hotGrace = 323.15

// worse returns the less certain of two ways of knowing.
func worse(a, b check.How) check.How {
	if a == check.Unstated || b == check.Unstated {
		return check.Unstated
	}
	return max(a, b)
}

// strengthAt returns a strength [Pa] at T [K] from its room-temperature
// minimum v:
//
//	T ≤ 293 K: v, or with the cold option v · ratio(T)
//	T > 293 K: the least of v, v · ratio(T) and every absolute table
//
// A table that begins above 293 K is joined to v at 293 K. Without a curve
// v is kept up to 323 K with a note and refused above; nothing is taken beyond
// the last point of a curve.
func strengthAt(v Value, ratio Curve, tables []Curve, T float64, cold bool) (Value, error) {
	if math.IsNaN(v.Value) {
		return v, nil
	}
	if T <= roomTemperature {
		return coldStrength(v, ratio, T, cold), nil
	}
	out, known := v, false
	take := func(value float64, s check.Source, how string) {
		known = true
		if value < out.Value {
			out = Value{Value: value, Source: check.Source{Doc: v.Source.Doc, Where: v.Source.Where, How: worse(v.Source.How, s.How)}, Note: how + s.Doc}
		}
	}
	if r, err := ratio.At(T); err == nil {
		take(v.Value*r, ratio.Source, fmt.Sprintf("times %.4g for temperature: ", r))
	}
	for _, c := range tables {
		if len(c.Points) > 0 && c.Points[0].T > roomTemperature {
			c.Points = append([]Point{{T: roomTemperature, Value: v.Value}}, c.Points...)
		}
		if x, err := c.At(T); err == nil {
			take(x, c.Source, "minimum at temperature: ")
		}
	}
	switch {
	case known:
		return out, nil
	case T <= hotGrace:
		out.Note = join(out.Note, "no curve over temperature: room value kept up to 50 degC")
		return out, nil
	}
	return missing, fmt.Errorf("no curve of strength over temperature reaches %.4g °C, and without one the room value holds to 50 °C only", T-zeroCelsius)
}

// coldStrength returns the strength at or below 293 K. The ratio is a typical
// curve, so it is used only where the user asks for it; where it does not
// reach, the ratio is 1.
func coldStrength(v Value, ratio Curve, T float64, cold bool) Value {
	r, err := ratio.At(T)
	if !cold || err != nil || T >= roomTemperature {
		return v
	}
	v.Value *= r
	v.Source.How = worse(v.Source.How, ratio.Source.How)
	v.Note = join(v.Note, fmt.Sprintf("cold option: minimum times %.4g, a typical curve: %s", r, ratio.Source.Doc))
	return v
}

// join puts two notes together.
func join(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// tables returns the absolute curves that may be used, by property.
func (a *Alloy) tables(of func(HotTable) Curve) []Curve {
	var out []Curve
	for _, h := range a.Hot {
		if h.Shown == "" {
			out = append(out, of(h))
		}
	}
	return out
}

// rounding is what a limit in °C loses when it is printed in whole kelvin: 338 K
// is 65 °C [K].
const rounding = 0.15

// temperatureFits returns an error outside the alloy's range, and apart from
// it the reason why the metal is brittle.
func (a *Alloy) temperatureFits(T float64) (brittle, err error) {
	if T >= a.LeastTemperature && T <= a.MostTemperature+rounding {
		return nil, nil
	}
	if a.ColdBrittle && T < a.LeastTemperature && T > 0 {
		return fmt.Errorf("%s is brittle when cold: no toughness is known below %.4g °C, the metal is at %.4g °C", a.Name, a.LeastTemperature-zeroCelsius, T-zeroCelsius), nil
	}
	err = fmt.Errorf("%s is for use from %.4g to %.4g °C, the metal is at %.4g °C", a.Name, a.LeastTemperature-zeroCelsius, a.MostTemperature+rounding-zeroCelsius, T-zeroCelsius)
	for _, c := range a.Cautions {
		if T > a.MostTemperature && strings.HasPrefix(c, "not above") {
			err = fmt.Errorf("%w: %s", err, c)
		}
	}
	return nil, err
}
