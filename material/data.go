package material

import (
	"math"

	"proofsheet/report/check"
)

// Families of alloys: what decides rules and welds.
const (
	Austenitic = "austenitic"
	Duplex     = "duplex"
	Ferritic   = "ferritic"
	Aluminium  = "aluminium"
	Titanium   = "titanium"
)

// Groups: finer than the family where the weld zone needs it.
const (
	annealedAustenitic     = "austenitic stainless steel"
	coldWorkedAustenitic   = "cold-worked austenitic stainless steel"
	duplexSteel            = "duplex stainless steel"
	heatTreatableAluminium = "heat-treatable aluminium"
	workHardeningAluminium = "work-hardening aluminium"
	aluminiumLithium       = "aluminium-lithium"
	alphaBetaTitanium      = "alpha-beta titanium"
	lowAlloySteel          = "low-alloy steel"
	carbonSteel            = "carbon steel"
)

// Kinds of weld-zone rows. The first two are used for aluminium, the third for
// steel; class rules and typical values are shown only.
const (
	hazZone      = "heat-affected zone"
	minimumZone  = "welded minimum"
	annealedZone = "annealed minimum"
	classZone    = "class rules, shown only"
	typicalZone  = "typical, shown only"
)

// Units in which the sources print, in SI.
const (
	mm      = 1e-3
	mpa     = 1e6
	gpa     = 1e9
	percent = 1e-2
)

const (
	roomTemperature = 293.15 // 20 °C, to which minima refer [K]
	zeroCelsius     = 273.15 // [K]
)

// missing is a number that no source gave.
var missing = Value{Value: math.NaN(), Note: "not stated by a source"}

// given is a value in a unit of its source, turned to SI.
func given(value, unit float64, s check.Source, note string) Value {
	return Value{Value: value * unit, Source: s, Note: note}
}

// kelvin is a curve over temperature [K]: pairs of T and value in unit.
func kelvin(unit float64, s check.Source, note string, pairs ...float64) Curve {
	c := Curve{Source: s, Note: note}
	for i := 0; i+1 < len(pairs); i += 2 {
		c.Points = append(c.Points, Point{T: pairs[i], Value: pairs[i+1] * unit})
	}
	return c
}

// celsius is kelvin for temperatures in °C.
func celsius(unit float64, s check.Source, note string, pairs ...float64) Curve {
	c := kelvin(unit, s, note, pairs...)
	for i := range c.Points {
		c.Points[i].T += zeroCelsius
	}
	return c
}

// likeValue takes the value of another alloy as a matter of practice.
func likeValue(v Value, why string) Value {
	v.Source = check.Source{Doc: why + "; value: " + v.Source.Doc, How: check.Practice}
	return v
}

// likeCurve takes the curve of another alloy as a matter of practice.
func likeCurve(c Curve, why string) Curve {
	c.Source = check.Source{Doc: why + "; curve: " + c.Source.Doc, How: check.Practice}
	return c
}

// families lists the alloys in the order they are printed.
var families = []*Alloy{
	&alloy304, &alloy304L, &alloy316, &alloy316L, &alloy321,
	&alloy301QuarterHard, &alloy304QuarterHard,
	&alloy6061T6, &alloy6082T6,
	&alloy5083O, &alloy5083H116, &alloy5086O, &alloy5086H116, &alloy5052O, &alloy5052H32,
	&alloy2219T87, &alloy2219T62, &alloy2195T8, &alloy7020T6,
	&alloyTi6Al4V,
	&alloy2205, &alloy4130, &alloyS355J2, &alloyP265GH,
}
