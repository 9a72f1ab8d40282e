package tank

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"proofsheet/report/unit"
)

// A Log is what was read in a proof test: a file of its own, beside the tank
// file. A reading that was not taken is NaN.
type Log struct {
	File   string
	Text   []byte
	Gauges []string // of strain, by their names behind "strain-"
	Others []string // further gauges of pressure, by their names behind "pressure-"
	Rows   []LogRow // times rise
	Unused []string // headings that are not ours
	Sheet  string   // first digits of the digest of the sheet that the log says it was taken for, "" where it says none

	// Standard uncertainties of a change of the readings, from behind the
	// headings; 0 where none is given.
	PressureChange    float64 // [Pa]
	VolumeChange      float64 // [m3]
	TemperatureChange float64 // [K]
	StrainChange      float64 // of the least sure gauge [-]

	// Steps in which the readings are written, of the coarsest column of a kind.
	PressureStep    float64 // of the first gauge [Pa]
	VolumeStep      float64 // [m3]
	TemperatureStep float64 // [K]
	StrainStep      float64 // [-]
}

// A LogRow is one instant of the test.
type LogRow struct {
	Line        int
	Time        float64   // from any zero [s]
	Pressure    float64   // shown by the gauge [Pa]
	Others      []float64 // and by the further ones [Pa]
	Volume      float64   // in the tank over a zero of the log's own [m3]
	Temperature float64   // of the water or gas [K]
	Wall        float64   // temperature of the wall [K]
	Strains     []float64 // [-]
}

// logColumns are the columns of a log. What is returned and what pump, hose and
// gauge line take up are off the volume; both grow as they are written.
var logColumns = []column{
	{"time", false, unit.Time, anyNumber},
	{"pressure", false, unit.Pressure, anyNumber},
	{"volume", false, unit.Volume, anyNumber},
	{"returned", false, unit.Volume, notNegative},
	{"line", false, unit.Volume, notNegative},
	{"temperature", false, unit.Temperature, positive},
	{"wall_temperature", false, unit.Temperature, positive},
}

// strainPrefix begins the heading of a strain gauge, pressurePrefix that of a further
// gauge of pressure.
const strainPrefix, pressurePrefix = "strain-", "pressure-"

// A line that means to name the sheet, and one that does.
var (
	sheetMeant = regexp.MustCompile(`(?i)^[ \t"]*#[ \t]*sheet\b`)
	sheetNamed = regexp.MustCompile(`(?i)^[ \t"]*#[ \t]*sheet[ \t]*:?[ \t]*([0-9a-f]{12,64})(?:[^0-9a-z]|$)`)
)

// ReadLog reads the log of a proof test, with gas or with water. The headings are time, pressure,
// volume, and where they were read returned, line, temperature,
// wall_temperature and strain-NAME, each with its unit in brackets and, if
// known, the uncertainty of a change behind it: "temperature [degC] ± 0.02 K".
// Further gauges are pressure-NAME. A line "# sheet: 0123456789ab" names the sheet by
// the digits on its pages; one that cannot be read is a fault.
// In gas no volume is needed, and none is used. Every fault of the file is told at
// once, with its line and column.
func ReadLog(name string, text []byte, gas bool) (*Log, error) {
	r := &reader{t: &Tank{File: name}}
	l := &Log{File: name, Text: text}
	s := &sheet{r: r, name: name, at: map[string]int{}, units: map[string]string{}, kinds: map[string]column{}, offered: map[string]bool{}}
	s.gaps = []string{"volume", "returned", "line", "temperature", "wall_temperature"}
	if s.split(text) {
		s.sheetOf(l, text)
		said := s.uncertainties()
		columns := slices.Clone(logColumns)
		for _, h := range s.headings {
			if heading, _ := cutUnit(h); strings.HasPrefix(heading, strainPrefix) && len(heading) > len(strainPrefix) {
				if !slices.Contains(l.Gauges, heading[len(strainPrefix):]) {
					l.Gauges = append(l.Gauges, heading[len(strainPrefix):])
					columns = append(columns, column{heading, false, unit.Strain, anyNumber})
					s.gaps = append(s.gaps, heading)
				}
			} else if strings.HasPrefix(strings.ToLower(heading), "strain") {
				s.fault(0, 0, "heading %q names no gauge; write %q", h, strainPrefix+"NAME ["+unit.Strain.Units()[0]+"]")
			} else if name, is := strings.CutPrefix(heading, pressurePrefix); is && name != "" {
				if !slices.Contains(l.Others, name) {
					l.Others = append(l.Others, name)
					columns = append(columns, column{heading, false, unit.Pressure, anyNumber})
					s.gaps = append(s.gaps, heading)
				}
			} else if strings.HasPrefix(strings.ToLower(heading), "pressure") && len(heading) > len("pressure") {
				s.fault(0, 0, "heading %q names no further gauge; write %q", h, pressurePrefix+"NAME ["+unit.Pressure.Units()[0]+"]")
			} else if _, u := cutUnit(h); strings.ToLower(heading) != "pressure" && slices.Contains(unit.Pressure.Units(), u) {
				s.fault(0, 0, "heading %q is a pressure and would not be judged; write %q for a further gauge, or leave the column out", h, pressurePrefix+"NAME ["+u+"]")
			}
		}
		s.match(columns, nil)
		s.logHeadings(gas)
		s.said(l, said)
		if len(r.faults) == 0 {
			s.logRows(l)
			s.steps(l)
		}
	}
	if len(r.faults) > 0 {
		return nil, r.faults.sorted(name)
	}
	if n, line := s.behindMarks(text); n > 0 {
		l.Unused = append(l.Unused, fmt.Sprintf("%s behind a #, the first in line %d: what it shows is not judged", plural(n, "row"), line))
	}
	if gas && s.has("volume") {
		l.Unused = append(l.Unused, "the column volume: in gas it tells nothing")
		for i := range l.Rows {
			l.Rows[i].Volume = math.NaN()
		}
	}
	for _, d := range r.t.Defaults {
		l.Unused = append(l.Unused, d.Why)
	}
	return l, nil
}

// sheetOf reads the lines that name the sheet; they must agree.
func (s *sheet) sheetOf(l *Log, text []byte) {
	n := 0
	for line := range strings.Lines(string(text)) {
		n++
		line = strings.TrimPrefix(line, "\ufeff")
		if !sheetMeant.MatchString(line) {
			continue
		}
		named := sheetNamed.FindStringSubmatch(strings.TrimRight(line, "\r\n"))
		switch {
		case named == nil:
			s.fault(n, 1, "this line names no sheet; write \"# sheet: \" and the digits on its pages, 12 at least, as \"# sheet: 0123456789ab\"")
		case l.Sheet != "" && l.Sheet != strings.ToLower(named[1]):
			s.fault(n, 1, "this line names another sheet than one before; leave one of them")
		default:
			l.Sheet = strings.ToLower(named[1])
		}
	}
}

// behindMarks counts the rows of readings that stand behind a #, and the line of the
// first.
func (s *sheet) behindMarks(text []byte) (rows, first int) {
	n := 0
	for line := range strings.Lines(string(text)) {
		n++
		rest, is := strings.CutPrefix(strings.TrimLeft(line, " \t\""), "#")
		if !is {
			continue
		}
		cells := strings.Split(rest, ",")
		if _, err := strconv.ParseFloat(strings.TrimSpace(cells[0]), 64); err == nil && len(cells) == len(s.headings) {
			if rows++; rows == 1 {
				first = n
			}
		}
	}
	return rows, first
}

// steps finds the steps in which the columns are written.
func (s *sheet) steps(l *Log) {
	for name := range s.at {
		c := s.kinds[name]
		for _, field := range []struct {
			kind unit.Kind
			into *float64
		}{{unit.Pressure, &l.PressureStep}, {unit.Volume, &l.VolumeStep}, {unit.Temperature, &l.TemperatureStep}, {unit.Strain, &l.StrainStep}} {
			if strings.HasPrefix(name, pressurePrefix) {
				continue // it is held to the first gauge, not read for changes
			}
			if step := s.step(name); c.name != "" && field.kind == c.unit && step > 0 {
				if v, err := spread(c.unit, strconv.FormatFloat(step, 'g', -1, 64), s.units[name]); err == nil {
					*field.into = max(*field.into, v)
				}
			}
		}
	}
}

// fewValues is how many different readings a step is told by; of fewer only the
// digits that were written speak [-].
const fewValues = 4

// step returns the largest of 1, 2 and 5 times a power of ten of which every number
// of a column is a multiple [in its unit]: what its instrument, or who wrote it
// down, rounds to. It is 0 where that is not told.
func (s *sheet) step(name string) float64 {
	digits := 0
	var cells []string
	for i := range s.rows {
		cell := strings.TrimSpace(s.rows[i][s.at[name]])
		if strings.ContainsAny(cell, "eE") {
			return 0
		}
		if cell != "" {
			_, decimals, _ := strings.Cut(cell, ".")
			digits, cells = max(digits, len(decimals)), append(cells, cell)
		}
	}
	if digits > 12 || len(cells) == 0 {
		return 0
	}
	different := map[int64]bool{}
	var common int64
	for _, cell := range cells {
		v, err := strconv.ParseFloat(cell, 64)
		if err != nil || math.Abs(v) > 1e15/math.Pow10(digits) {
			return 0
		}
		n := int64(math.Round(math.Abs(v) * math.Pow10(digits)))
		different[n] = true
		for n != 0 {
			common, n = n, common%n
		}
	}
	one := math.Pow10(-digits)
	if len(different) < fewValues {
		return one
	}
	most := int64(1)
	for power := int64(1); common%power == 0; power *= 10 {
		for _, k := range [...]int64{1, 2, 5} {
			if common%(k*power) == 0 {
				most = k * power
			}
		}
	}
	return float64(most) * one
}

// uncertainties cuts what stands behind ± off the headings.
func (s *sheet) uncertainties() map[int]string {
	out := map[int]string{}
	for i, h := range s.headings {
		for _, mark := range []string{"±", "+/-", "+-"} {
			if before, after, ok := strings.Cut(h, mark); ok {
				s.headings[i], out[i] = strings.TrimSpace(before), strings.TrimSpace(after)
				break
			}
		}
	}
	return out
}

// logHeadings asks for the columns without which there is no log of a test with
// gas, or with water.
func (s *sheet) logHeadings(gas bool) {
	needed := logColumns[:3]
	if gas {
		needed = logColumns[:2]
	}
	for _, need := range needed {
		if !s.has(need.name) && !s.offered[need.name] {
			s.fault(0, 0, "has no column %s; write %s", need.name, need.name+" ["+need.unit.Units()[0]+"]")
		}
	}
}

// said reads the uncertainties into the log.
func (s *sheet) said(l *Log, given map[int]string) {
	for name, i := range s.at {
		text, ok := given[i]
		c := s.kinds[name]
		if !ok || c.name == "" {
			continue
		}
		u, err := spread(c.unit, text, s.units[name])
		if err != nil {
			s.fault(0, 0, "heading %q: uncertainty %v", s.headings[i], err)
			continue
		}
		for _, field := range []struct {
			kind unit.Kind
			into *float64
			is   bool
		}{
			{unit.Pressure, &l.PressureChange, name == "pressure"}, {unit.Volume, &l.VolumeChange, true},
			{unit.Temperature, &l.TemperatureChange, true}, {unit.Strain, &l.StrainChange, true},
		} {
			if field.kind == c.unit && field.is {
				*field.into = max(*field.into, u)
			}
		}
	}
}

// numberAndUnit parts "0.004 bar" and "0.004bar".
var numberAndUnit = regexp.MustCompile(`^\s*([+-]?[0-9.]+(?:[eE][+-]?[0-9]+)?)\s*(.*?)\s*$`)

// spread reads a difference of a kind, in its own unit or in that of the column
// [SI unit of the kind].
func spread(kind unit.Kind, text, column string) (float64, error) {
	parts := numberAndUnit.FindStringSubmatch(text)
	if parts == nil {
		return math.NaN(), fmt.Errorf("%q is not a number", text)
	}
	number, u := parts[1], parts[2]
	if u == "" {
		u = column
	}
	value, err := unit.Parse(kind, number+" "+u)
	zero, errZero := unit.Parse(kind, "0 "+u)
	switch d := value - zero; {
	case err != nil:
		return math.NaN(), err
	case errZero != nil:
		return math.NaN(), errZero
	case !(d > 0):
		return math.NaN(), fmt.Errorf("%q must be above zero", text)
	default:
		return d, nil
	}
}

// logRows reads the rows and holds their times to rise.
func (s *sheet) logRows(l *Log) {
	if len(s.rows) == 0 {
		s.fault(0, 0, "holds no rows; write at least one under the headings")
	}
	get := func(i int, name string) float64 {
		if v := s.number(i, name); v != nil {
			return *v
		}
		return math.NaN()
	}
	last := math.Inf(-1)
	for i := range s.rows {
		row := LogRow{Line: s.lines[i], Time: get(i, "time"), Pressure: get(i, "pressure"), Volume: get(i, "volume"),
			Temperature: get(i, "temperature"), Wall: get(i, "wall_temperature")}
		for _, off := range []string{"returned", "line"} {
			if s.has(off) {
				row.Volume -= get(i, off)
			}
		}
		for _, g := range l.Gauges {
			row.Strains = append(row.Strains, get(i, strainPrefix+g))
		}
		for _, g := range l.Others {
			row.Others = append(row.Others, get(i, pressurePrefix+g))
		}
		for k, p := range append([]float64{row.Pressure}, row.Others...) {
			name := "pressure"
			if k > 0 {
				name = pressurePrefix + l.Others[k-1]
			}
			if p < -standardAtmosphere {
				s.fault(row.Line, s.column(i, name), "%s: %q is less than a vacuum; write what the gauge shows over the atmosphere", name, s.rows[i][s.at[name]]+" "+s.units[name])
			}
		}
		if row.Time <= last {
			s.fault(row.Line, s.column(i, "time"), "time: %g s does not come after the %g s of the row before; put the rows in order, and give readings of one second decimals", row.Time, last)
		}
		if !math.IsNaN(row.Time) {
			last = row.Time
		}
		l.Rows = append(l.Rows, row)
		if len(s.r.faults) >= mostFaults {
			s.fault(row.Line, 1, "and so on; %d faults are enough", mostFaults)
			return
		}
	}
}

// standardAtmosphere is ISO 2533's [Pa].
const standardAtmosphere = 101325

// mostFaults is how many faults of a log are told [-].
const mostFaults = 50
