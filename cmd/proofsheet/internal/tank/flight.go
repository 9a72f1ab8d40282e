package tank

import (
	"fmt"
	"math"
	"reflect"
	"strings"

	"proofsheet/report/unit"
)

// A column is one quantity of a flight history.
type column struct {
	name string
	bare bool // a ratio or load factor: no unit
	unit unit.Kind
	sense
}

var flightColumns = []column{
	{"time", false, unit.Time, anyNumber},
	{"ullage_pressure", false, unit.Pressure, anyNumber},
	{"ullage_absolute", false, unit.AbsolutePressure, notNegative},
	{"outside_absolute", false, unit.AbsolutePressure, notNegative},
	{"altitude", false, unit.Length, anyNumber},
	{"axial_load_factor", true, 0, anyNumber},
	{"axial_acceleration", false, unit.Acceleration, anyNumber},
	{"lateral_load_factor", true, 0, anyNumber},
	{"liquid_mass", false, unit.Mass, notNegative},
	{"fill", true, 0, fullShare},
	{"level", false, unit.Length, notNegative},
	{"temperature", false, unit.Temperature, positive},
	{"axial_force", false, unit.Force, anyNumber},
	{"bending_moment", false, unit.Moment, anyNumber},
}

// HistoryHeadings returns the headings that a flight history may have, each with the
// first unit it is known by.
func HistoryHeadings() (out []string) {
	for _, c := range flightColumns {
		heading := c.name
		if !c.bare {
			heading += " [" + c.unit.Units()[0] + "]"
		}
		out = append(out, heading)
	}
	return out
}

func columnNames(cs []column) []string {
	names := make([]string, len(cs))
	for i, c := range cs {
		names[i] = c.name
	}
	return names
}

// columns reads [flight.columns].
func (r *reader) columns(f field, v any, path string, into reflect.Value) {
	m, ok := v.(map[string]any)
	if !ok {
		r.fault(path, "must be a table; write [flight.columns]")
		return
	}
	headings := map[string]string{}
	for _, key := range sortedKeys(m) {
		at := join(path, key)
		names := columnNames(flightColumns)
		s, ok := m[key].(string)
		switch near := nearWord(key, names); {
		case !ok:
			r.fault(at, "%s is not text; write the file's heading in quotes, as %s", show(m[key]), f.example)
		case near == key:
			headings[key] = s
		case near != "":
			r.faultAt(r.where(at, r.at.key), at, "unknown column; did you mean %s?", near)
		default:
			r.faultAt(r.where(at, r.at.key), at, "unknown column; write one of %s", strings.Join(names, ", "))
		}
	}
	into.Set(reflect.ValueOf(headings))
}

// checkFlight reads the history.
func (r *reader) checkFlight() {
	f := r.t.Flight
	if f == nil {
		return
	}
	r.orDefault("flight.people", &f.People, "clear", "a flight")
	if f.History == "" || !r.tableNamed("flight.history", f.History) {
		return
	}
	sheet, ok := r.readTable("flight.history", f.History)
	if !ok {
		return
	}
	before := len(r.faults)
	sheet.match(flightColumns, f.Columns)
	if !r.flightHeadings(sheet, f) || sheet.unreadable(before) {
		return
	}
	for i := range sheet.rows {
		if s, ok := r.state(sheet, i); ok {
			f.States = append(f.States, s)
		}
	}
	if len(sheet.rows) == 0 {
		sheet.fault(0, 0, "holds no rows; write at least one under the headings")
	}
	for i := 1; i < len(f.States); i++ {
		if before, now := f.States[i-1].Time, f.States[i].Time; now <= before {
			sheet.fault(f.States[i].Line, sheet.timeColumn(f.States[i].Line), "time: %g s does not come after the %g s of the row before", now, before)
		}
	}
	if len(r.faults) == before {
		r.checkBetween(sheet, f)
	}
}

// checkBetween refuses more ullage pressure between two rows than the tank is built for:
// where the pressure inside is absolute and the one outside goes by the altitude, it may
// be higher there than at both.
func (r *reader) checkBetween(sheet *sheet, f *Flight) {
	meop := r.t.Pressure.MEOP
	for i := 1; i < len(f.States) && meop > 0; i++ {
		a, b := f.States[i-1], f.States[i]
		if p, t := highestBetween(a, b, meop); p > meop*(1+1e-9) {
			sheet.fault(b.Line, sheet.columnAt(b.Line, "ullage_absolute"), "ullage pressure %s across the wall at %.4g s, between this row and the one before, is above meop %s; raise meop", r.bar(p), t, r.bar(meop))
		}
	}
}

// highestBetween returns the highest ullage pressure across the wall [Pa] between two
// states and when [s]; those of the rows where no curve lies between or none can reach
// above limit [Pa]. The standard pressure falls ever slower with altitude, so that the
// pressure across the wall has one hill over a step, found by thirds.
func highestBetween(a, b State, limit float64) (p, at float64) {
	if !a.curved(b) || math.Max(*a.UllageAbsolute, *b.UllageAbsolute)-math.Min(*a.OutsideAbsolute, *b.OutsideAbsolute) <= limit {
		return math.Inf(-1), math.NaN()
	}
	lo, hi := 0.0, 1.0
	for range 100 {
		x, y := lo+(hi-lo)/3, hi-(hi-lo)/3
		if a.Between(b, x).UllagePressure < a.Between(b, y).UllagePressure {
			lo = x
		} else {
			hi = y
		}
	}
	top := a.Between(b, (lo+hi)/2)
	return top.UllagePressure, top.Time
}

// curved reports whether the ullage pressure across the wall bends between two states.
func (a State) curved(b State) bool {
	return a.UllageAbsolute != nil && b.UllageAbsolute != nil && a.Altitude != nil && b.Altitude != nil && *a.Altitude != *b.Altitude &&
		a.OutsideAbsolute != nil && b.OutsideAbsolute != nil
}

// Between returns the state a part s, 0 to 1, of the way to the next one: every written
// column is straight between its rows, and what follows from two of them is worked out
// there, so that the pressure outside is that of the altitude.
func (a State) Between(b State, s float64) State {
	mix := func(x, y float64) float64 { return x + s*(y-x) }
	both := func(x, y *float64) *float64 {
		if x == nil || y == nil {
			return nil
		}
		v := mix(*x, *y)
		return &v
	}
	curved := a.curved(b)
	a.Time, a.UllagePressure = mix(a.Time, b.Time), mix(a.UllagePressure, b.UllagePressure)
	a.AxialLoadFactor = mix(a.AxialLoadFactor, b.AxialLoadFactor)
	a.LateralLoadFactor = mix(a.LateralLoadFactor, b.LateralLoadFactor)
	a.UllageAbsolute, a.Altitude = both(a.UllageAbsolute, b.UllageAbsolute), both(a.Altitude, b.Altitude)
	a.OutsideAbsolute = both(a.OutsideAbsolute, b.OutsideAbsolute)
	a.LiquidMass, a.Fill, a.Level = both(a.LiquidMass, b.LiquidMass), both(a.Fill, b.Fill), both(a.Level, b.Level)
	a.Temperature = both(a.Temperature, b.Temperature)
	a.AxialForce, a.BendingMoment = both(a.AxialForce, b.AxialForce), both(a.BendingMoment, b.BendingMoment)
	if curved {
		if p, err := atmosphere(*a.Altitude); err == nil { // it was within the standard atmosphere at both
			a.OutsideAbsolute, a.UllagePressure = &p, *a.UllageAbsolute-p
		}
	}
	return a
}

// shortClimb is the most that the altitude may change over one step of a refined history
// [m]: over it the standard pressure is a parabola to within a pascal.
const shortClimb = 500.0

// Refined returns the states of a history with others between them wherever the pressure
// across the wall bends, close enough that a parabola through three of them meets it.
func (f *Flight) Refined() (out []State) {
	for i, b := range f.States {
		if i > 0 {
			if a := f.States[i-1]; a.curved(b) {
				n := math.Ceil(math.Abs(*b.Altitude-*a.Altitude) / shortClimb)
				for k := 1.0; k < n; k++ {
					out = append(out, a.Between(b, k/n))
				}
			}
		}
		out = append(out, b)
	}
	return out
}

// timeColumn returns where a line holds its time.
func (s *sheet) timeColumn(line int) int { return s.columnAt(line, "time") }

// columnAt returns where a line holds a quantity.
func (s *sheet) columnAt(line int, name string) int {
	for i, l := range s.lines {
		if l == line {
			return s.column(i, name)
		}
	}
	return 1
}

// unreadable reports whether a heading has a unit that no row can be read with.
func (s *sheet) unreadable(before int) bool {
	for _, f := range s.r.faults[before:] {
		if f.File == s.name && strings.HasPrefix(f.What, "heading") && !strings.Contains(f.What, "is not known") {
			return true
		}
	}
	return false
}

// flightHeadings checks that the columns suffice and do not contradict.
func (r *reader) flightHeadings(s *sheet, f *Flight) bool {
	before := len(r.faults)
	for _, choice := range [][]string{
		{"time"}, {"ullage_pressure", "ullage_absolute"},
		{"axial_load_factor", "axial_acceleration"}, {"liquid_mass", "fill", "level"},
	} {
		var found []string
		for _, name := range choice {
			if s.has(name) {
				found = append(found, name)
			}
		}
		switch {
		case len(found) == 0 && !s.offered[choice[0]]:
			s.fault(0, 0, "has no column %s; write one, or name its heading in [flight.columns]", strings.Join(choice, " or "))
		case len(found) > 1:
			s.fault(0, 0, "has the columns %s, which contradict each other; leave all but one out", strings.Join(found, " and "))
		}
	}
	if s.has("outside_absolute") && s.has("altitude") {
		s.fault(0, 0, "has outside_absolute and altitude, which contradict each other; leave one out")
	}
	if s.has("ullage_absolute") && !s.has("outside_absolute") && !s.has("altitude") {
		s.fault(0, 0, "has ullage_absolute; it needs a column outside_absolute or altitude")
	}
	if s.has("axial_acceleration") && f.Acceleration == "" && !r.has("flight.acceleration") {
		r.fault("flight.history", "has axial_acceleration and needs to know of what sort; write acceleration = \"sensed\" or \"vertical\"")
	}
	return len(r.faults) == before
}

// state reads one row of the history.
func (r *reader) state(s *sheet, row int) (State, bool) {
	before := len(r.faults)
	get := func(name string) *float64 { return s.number(row, name) }
	out := State{
		Line: s.lines[row], Time: orZero(get("time")),
		OutsideAbsolute: get("outside_absolute"), LateralLoadFactor: orZero(get("lateral_load_factor")),
		LiquidMass: get("liquid_mass"), Fill: get("fill"), Level: get("level"), Temperature: get("temperature"),
		AxialForce: get("axial_force"), BendingMoment: get("bending_moment"),
	}
	out.UllageAbsolute, out.Altitude = get("ullage_absolute"), get("altitude")
	if z := out.Altitude; z != nil {
		if p, err := atmosphere(*z); err != nil {
			s.fault(out.Line, 1, "%v", err)
		} else {
			out.OutsideAbsolute = &p
		}
	}
	if p := get("ullage_pressure"); p != nil {
		out.UllagePressure = *p
	}
	if p := out.UllageAbsolute; p != nil && out.OutsideAbsolute != nil {
		out.UllagePressure = *p - *out.OutsideAbsolute
	}
	if meop := r.t.Pressure.MEOP; meop > 0 && out.UllagePressure > meop*(1+1e-9) {
		s.fault(out.Line, s.column(row, "ullage_pressure", "ullage_absolute"), "ullage pressure %s across the wall is above meop %s; raise meop", r.bar(out.UllagePressure), r.bar(meop))
	}
	if n := get("axial_load_factor"); n != nil {
		out.AxialLoadFactor = *n
	}
	if a := get("axial_acceleration"); a != nil {
		out.AxialLoadFactor = *a / standardGravity
		if r.t.Flight.Acceleration == "vertical" {
			out.AxialLoadFactor++
		}
	}
	return out, len(r.faults) == before
}

// standardGravity is g0 [m/s2].
const standardGravity = 9.80665

func plural(n int, word string) string {
	if n == 1 {
		return "1 " + word
	}
	return fmt.Sprintf("%d %ss", n, word)
}
