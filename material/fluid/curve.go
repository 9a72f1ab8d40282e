package fluid

import (
	"math"

	"proofsheet/report/check"
)

// Units in which the sources print, in SI.
const (
	bar         = 1e5    // [Pa]
	gpa         = 1e9    // [Pa]
	zeroCelsius = 273.15 // [K]
)

// A Value is a number with its provenance.
type Value struct {
	Value  float64      // in the SI unit of its property [see method]
	Source check.Source // document, place, how obtained
	Note   string       // what the reader must know beside it
}

// A point of a curve.
type point struct {
	x, y float64 // [K] or [Pa]; SI unit of the property [see curve]
}

// A curve is linear between its points and never goes beyond them.
type curve struct {
	points []point
	source check.Source
	note   string
}

// given is a value in a unit of its source, turned to SI.
func given(value, unit float64, s check.Source, note string) Value {
	return Value{Value: value * unit, Source: s, Note: note}
}

// kelvin is a curve over temperature [K]: pairs of T and value in unit.
func kelvin(unit float64, s check.Source, note string, pairs ...float64) curve {
	c := curve{source: s, note: note}
	for i := 0; i+1 < len(pairs); i += 2 {
		c.points = append(c.points, point{pairs[i], pairs[i+1] * unit})
	}
	return c
}

// celsius is kelvin for temperatures in °C.
func celsius(unit float64, s check.Source, note string, pairs ...float64) curve {
	c := kelvin(unit, s, note, pairs...)
	for i := range c.points {
		c.points[i].x += zeroCelsius
	}
	return c
}

// pressures is a curve over absolute pressure, pairs of bar and value.
func pressures(s check.Source, pairs ...float64) curve {
	c := kelvin(1, s, "", pairs...)
	for i := range c.points {
		c.points[i].x *= bar
	}
	return c
}

// at returns the value at x, and an error that names param outside the points.
func (c curve) at(param string, x float64) (Value, error) {
	n := len(c.points)
	none := Value{Value: math.NaN()}
	if n == 0 {
		return none, &check.RangeError{Func: "fluid", Param: param, Got: x, Least: math.Inf(1), Most: math.Inf(1), Why: "no values are known"}
	}
	if err := check.Within("fluid", param, x, c.points[0].x, c.points[n-1].x, "the published points end there"); err != nil {
		return none, err
	}
	v := Value{Value: c.points[n-1].y, Source: c.source, Note: c.note}
	for i := 1; i < n; i++ {
		if a, b := c.points[i-1], c.points[i]; x == b.x {
			v.Value = b.y
			break
		} else if x < b.x {
			v.Value = a.y + (b.y-a.y)*(x-a.x)/(b.x-a.x)
			break
		}
	}
	return v, nil
}
