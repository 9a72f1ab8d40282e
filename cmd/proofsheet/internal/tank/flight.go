package tank

import (
	"fmt"
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
}

// timeColumn returns where a line holds its time.
func (s *sheet) timeColumn(line int) int {
	for i, l := range s.lines {
		if l == line {
			return s.column(i, "time")
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
	if z := get("altitude"); z != nil {
		if p, err := atmosphere(*z); err != nil {
			s.fault(out.Line, 1, "%v", err)
		} else {
			out.OutsideAbsolute = &p
		}
	}
	if p := get("ullage_pressure"); p != nil {
		out.UllagePressure = *p
	}
	if p := get("ullage_absolute"); p != nil && out.OutsideAbsolute != nil {
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
