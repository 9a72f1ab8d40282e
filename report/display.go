package report

import (
	"math"

	"proofsheet/report/check"
)

// A Display is a unit in which an SI value is shown.
type Display struct {
	Unit   string  // as printed; "" for a pure number
	Divide float64 // SI value of one such unit [SI]
	Offset float64 // SI value of its zero: temperatures only [SI]
}

// Of returns the SI value v [SI] in this unit.
func (d Display) Of(v float64) float64 { return (v - d.Offset) / d.Divide }

// Values of the customary units, from the exact inch, pound and standard
// gravity [SI].
const (
	inch = 0.0254
	foot = 12 * inch
	lb   = 0.45359237
	lbf  = lb * 9.80665
	psi  = lbf / (inch * inch)
	// √0.0254
	rootInch = 0.159373774505092286
)

// rung is one unit of a ladder: it serves from the SI magnitude Least on.
type rung struct {
	least float64 // [SI]
	Display
}

// ladders holds, for each SI unit, the display units from large to small; the
// last serves everything below.
var ladders = map[string]map[string][]rung{
	"si": {
		"Pa":    {{1e10, Display{"GPa", 1e9, 0}}, {1e5, Display{"MPa", 1e6, 0}}, {100, Display{"kPa", 1e3, 0}}, {0, Display{"Pa", 1, 0}}},
		"m":     {{10, Display{"m", 1, 0}}, {0, Display{"mm", 1e-3, 0}}},
		"m2":    {{1, Display{"m²", 1, 0}}, {0, Display{"mm²", 1e-6, 0}}},
		"m3":    {{1e-3, Display{"l", 1e-3, 0}}, {0, Display{"ml", 1e-6, 0}}},
		"m4":    {{0, Display{"mm⁴", 1e-12, 0}}},
		"N":     {{1e3, Display{"kN", 1e3, 0}}, {0, Display{"N", 1, 0}}},
		"N/m":   {{1e3, Display{"N/mm", 1e3, 0}}, {0, Display{"N/m", 1, 0}}},
		"N m":   {{1e3, Display{"kN m", 1e3, 0}}, {0, Display{"N m", 1, 0}}},
		"J":     {{1e6, Display{"MJ", 1e6, 0}}, {1e3, Display{"kJ", 1e3, 0}}, {0, Display{"J", 1, 0}}},
		"s":     {{120, Display{"min", 60, 0}}, {0, Display{"s", 1, 0}}},
		"K":     {{0, Display{"°C", 1, 273.15}}},
		"rad":   {{0, Display{"°", math.Pi / 180, 0}}},
		"m3/Pa": {{0, Display{"ml/bar", 1e-11, 0}}},
		"Pa/K":  {{0, Display{"kPa/K", 1e3, 0}}},
		"1":     {{0, Display{"", 1, 0}}},
		"kg/m3": {{0, Display{"kg/m³", 1, 0}}},
		"m/s2":  {{0, Display{"m/s²", 1, 0}}},

		"Pa m^0.5": {{0, Display{"MPa √m", 1e6, 0}}},
		"Pa m3/s":  {{0, Display{"Pa m³/s", 1, 0}}},
	},
	"us": {
		"Pa":    {{1e10, Display{"Msi", 1e6 * psi, 0}}, {1e4 * psi, Display{"ksi", 1e3 * psi, 0}}, {0, Display{"psi", psi, 0}}},
		"m":     {{10, Display{"ft", foot, 0}}, {0, Display{"in", inch, 0}}},
		"m2":    {{0, Display{"in²", inch * inch, 0}}},
		"m3":    {{0, Display{"in³", inch * inch * inch, 0}}},
		"m4":    {{0, Display{"in⁴", inch * inch * inch * inch, 0}}},
		"N":     {{0, Display{"lbf", lbf, 0}}},
		"N/m":   {{0, Display{"lbf/in", lbf / inch, 0}}},
		"N m":   {{0, Display{"lbf ft", lbf * foot, 0}}},
		"J":     {{0, Display{"lbf ft", lbf * foot, 0}}},
		"s":     {{120, Display{"min", 60, 0}}, {0, Display{"s", 1, 0}}},
		"K":     {{0, Display{"°F", 5.0 / 9, 273.15 - 32*5.0/9}}},
		"rad":   {{0, Display{"°", math.Pi / 180, 0}}},
		"m3/Pa": {{0, Display{"in³/psi", inch * inch * inch / psi, 0}}},
		"Pa/K":  {{0, Display{"psi/°F", psi * 5 / 9, 0}}},
		"1":     {{0, Display{"", 1, 0}}},
		"kg":    {{0, Display{"lb", lb, 0}}},
		"kg/m3": {{0, Display{"lb/ft³", lb / (foot * foot * foot), 0}}},
		"m/s2":  {{0, Display{"ft/s²", foot, 0}}},

		"Pa m^0.5": {{0, Display{"ksi √in", 1e3 * psi * rootInch, 0}}},
		"Pa m3/s":  {{0, Display{"psi in³/s", psi * inch * inch * inch, 0}}},
	},
}

// DisplayUnit returns the unit in which values of the SI unit are shown, the
// largest of them being of this magnitude [in unit]. A unit that the tables do
// not know is shown as it is.
func DisplayUnit(unit string, magnitude float64, system string) Display {
	if system != "us" {
		system = "si"
	}
	if unit == "-" {
		unit = "1"
	}
	ladder := ladders[system][unit]
	for _, r := range ladder {
		if math.Abs(magnitude) >= r.least {
			return r.Display
		}
	}
	if len(ladder) > 0 { // NaN: no magnitude
		return ladder[len(ladder)-1].Display
	}
	return Display{Unit: unit, Divide: 1}
}

// Show returns a quantity in display units, "2.61 MPa": an input to the
// nearest with up to six digits, a demand or capacity with four.
func Show(q check.Quantity, system string, dir Round) string {
	d := DisplayUnit(q.Unit, q.Value, system)
	return d.show(q.Value, dir)
}

// ShowPair returns demand and capacity in one unit, the demand rounded up and
// the capacity down.
func ShowPair(demand, capacity check.Quantity, system string) (d, c string) {
	if demand.Unit != capacity.Unit {
		return Show(demand, system, Up), Show(capacity, system, Down)
	}
	u := DisplayUnit(capacity.Unit, capacity.Value, system)
	if math.IsNaN(capacity.Value) {
		u = DisplayUnit(demand.Unit, demand.Value, system)
	}
	d, c = u.show(demand.Value, Up), u.show(capacity.Value, Down)
	if u.Offset != 0 || !ordered(demand.Value, capacity.Value) {
		return d, c
	}
	// Rounding apart must not turn the order of two close numbers round: a
	// satisfied check would print more demand than capacity.
	x, y := u.Of(demand.Value), u.Of(capacity.Value)
	for digits := shownDigits; digits <= mostDigits; digits++ {
		if parse(rounded(x, digits, Up)) <= parse(rounded(y, digits, Down)) {
			return u.with(Number(x, digits, Up)), u.with(Number(y, digits, Down))
		}
	}
	// The same number but for what no reader could use.
	return u.with(Number(x, shownDigits, Nearest)), u.with(Number(y, shownDigits, Nearest))
}

// shownDigits is how many significant digits a demand or a capacity has, and
// mostDigits how many where it takes more to keep their order.
const shownDigits, mostDigits = 4, 7

// ordered reports whether a demand is not above its capacity [both in one unit],
// both finite and neither zero.
func ordered(demand, capacity float64) bool {
	return demand <= capacity && demand*capacity != 0 && !math.IsInf(demand, 0) && !math.IsInf(capacity, 0)
}

// with returns a number with this unit.
func (d Display) with(text string) string {
	switch d.Unit {
	case "":
		return text
	case "°":
		return text + d.Unit
	}
	return text + " " + d.Unit
}

// show returns the SI value v [SI] with this unit.
func (d Display) show(v float64, dir Round) string {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		return "not available"
	}
	var text string
	switch {
	case d.Offset != 0: // temperatures: hundredths of a degree are enough
		text = trim(layout(int64(math.Round(d.Of(v)*100)), -2))
	case dir == Nearest:
		text = trim(Number(d.Of(v), 6, dir))
	default:
		text = Number(d.Of(v), shownDigits, dir)
	}
	return d.with(text)
}

// Gauge prints a pressure v [Pa] in the unit of the set pressure of the proof,
// whatever its size: one log has one unit, so that no reading is taken in a
// wrong one.
func (s *Sheet) Gauge(v float64, round Round) string {
	if math.IsNaN(v) {
		return "not determined"
	}
	const digits = 4
	unit := DisplayUnit("Pa", s.Proof.Pressure, s.Units)
	return Number(unit.Of(v), digits, round) + " " + unit.Unit
}
