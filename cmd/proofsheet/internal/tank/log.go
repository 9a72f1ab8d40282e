package tank

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"proofsheet/report/unit"
)

// A Log is what was read in a proof test: a file of its own, beside the tank
// file. A reading that was not taken is NaN.
type Log struct {
	File   string
	Text   []byte
	Gauges []string // of strain, by their names behind "strain-"
	Rows   []LogRow // times rise
	Unused []string // headings that are not ours
	Sheet  string   // first digits of the digest of the sheet that the log says it was taken for, "" where it says none

	// Standard uncertainties of a change of the readings, from behind the
	// headings; 0 where none is given.
	PressureChange    float64 // [Pa]
	VolumeChange      float64 // [m3]
	TemperatureChange float64 // [K]
	StrainChange      float64 // of the least sure gauge [-]
}

// A LogRow is one instant of the test.
type LogRow struct {
	Line        int
	Time        float64   // from any zero [s]
	Pressure    float64   // shown by the gauge [Pa]
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

// strainPrefix begins the heading of a strain gauge.
const strainPrefix = "strain-"

// sheetNamed is the line that names the sheet.
var sheetNamed = regexp.MustCompile(`(?m)^#[ \t]*sheet:[ \t]*([0-9a-f]{12,64})[ \t]*\r?$`)

// ReadLog reads the log of a proof test, with gas or with water. The headings are time, pressure,
// volume, and where they were read returned, line, temperature,
// wall_temperature and strain-NAME, each with its unit in brackets and, if
// known, the uncertainty of a change behind it: "temperature [degC] ± 0.02 K".
// A line "# sheet: 0123456789ab" names the sheet by the digits on its pages.
// In gas no volume is needed, and none is used. Every fault of the file is told at
// once, with its line and column.
func ReadLog(name string, text []byte, gas bool) (*Log, error) {
	r := &reader{t: &Tank{File: name}}
	l := &Log{File: name, Text: text}
	s := &sheet{r: r, name: name, at: map[string]int{}, units: map[string]string{}, kinds: map[string]column{}, offered: map[string]bool{}}
	s.gaps = []string{"volume", "returned", "line", "temperature", "wall_temperature"}
	if s.split(text) {
		if named := sheetNamed.FindSubmatch(text); named != nil {
			l.Sheet = string(named[1])
		}
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
			}
		}
		s.match(columns, nil)
		s.logHeadings(gas)
		s.said(l, said)
		if len(r.faults) == 0 {
			s.logRows(l)
		}
	}
	if len(r.faults) > 0 {
		return nil, r.faults.sorted(name)
	}
	if gas && s.has("volume") {
		l.Unused = append(l.Unused, "the column volume: in gas it tells nothing")
	}
	for _, d := range r.t.Defaults {
		l.Unused = append(l.Unused, d.Why)
	}
	return l, nil
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

// spread reads a difference of a kind, in its own unit or in that of the column
// [SI unit of the kind].
func spread(kind unit.Kind, text, column string) (float64, error) {
	number, u, _ := strings.Cut(text, " ")
	if strings.TrimSpace(u) == "" {
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
		if row.Time <= last {
			s.fault(row.Line, s.column(i, "time"), "time: %g s does not come after the %g s of the row before", row.Time, last)
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

// mostFaults is how many faults of a log are told [-].
const mostFaults = 50
