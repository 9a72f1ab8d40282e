package tank

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"proofsheet/report/unit"
)

// A sheet is a file of comma-separated values named by the tank file.
type sheet struct {
	r        *reader
	name     string
	headings []string
	top      int // line of the headings
	rows     [][]string
	lines    []int             // line of each row
	columns  [][]int           // column of each field of each row
	at       map[string]int    // our name -> field
	units    map[string]string // our name -> unit in the heading
	kinds    map[string]column
	offered  map[string]bool // names offered for a heading that was not known
	texts    []string        // names of our columns that hold words
	gaps     []string        // names of our columns in which a field may be empty
}

// readTable opens and splits a file, and attaches it.
func (r *reader) readTable(key, name string) (*sheet, bool) {
	if r.open == nil {
		r.fault(key, "%q cannot be opened from here", name)
		return nil, false
	}
	data, err := r.open(name)
	if err != nil {
		r.fault(key, "%q cannot be read: %v", name, cause(err))
		return nil, false
	}
	r.attach(key, name, data)
	s := &sheet{
		r: r, name: name, at: map[string]int{}, units: map[string]string{},
		kinds: map[string]column{}, offered: map[string]bool{},
	}
	return s, s.split(data)
}

// attach keeps a file once.
func (r *reader) attach(key, name string, data []byte) {
	for _, a := range r.t.Attached {
		if a.Name == name {
			return
		}
	}
	r.t.Attached = append(r.t.Attached, Attachment{Key: key, Name: name, Data: data})
}

// cause drops "open path:" from an error: the path is told already.
func cause(err error) error {
	for {
		inner := errors.Unwrap(err)
		if inner == nil {
			return err
		}
		err = inner
	}
}

// split reads headings and rows.
func (s *sheet) split(data []byte) bool {
	if bytes.HasPrefix(data, []byte("%PDF-")) {
		s.fault(0, 0, "this is a PDF, not a table of comma-separated values; write the name of the .csv file")
		return false
	}
	if !utf8.Valid(data) {
		s.fault(0, 0, "is not UTF-8 text; save it as UTF-8")
		return false
	}
	first, _, _ := bytes.Cut(data, []byte("\n"))
	if tomlTable.Match(data) && !bytes.Contains(first, []byte(",")) {
		s.fault(1, 1, "this is a tank file, not a table of comma-separated values; write the name of the .csv file")
		return false
	}
	c := csv.NewReader(bytes.NewReader(remark.ReplaceAll(bytes.TrimPrefix(data, []byte("\ufeff")), []byte("#$1"))))
	c.Comment, c.TrimLeadingSpace, c.FieldsPerRecord = '#', true, -1
	for {
		record, err := c.Read()
		if errors.Is(err, io.EOF) {
			break
		}
		if err != nil {
			var parse *csv.ParseError
			if errors.As(err, &parse) {
				s.fault(parse.Line, parse.Column, "%v", parse.Err)
			} else {
				s.fault(0, 0, "%v", err)
			}
			return false
		}
		line, _ := c.FieldPos(0)
		// a decimal comma parts such a line as well
		if unfit := s.headings == nil || len(record) != len(s.headings); unfit && strings.Contains(strings.Join(record, ""), ";") {
			s.fault(line, 1, "the fields are parted by semicolons; write commas between them, and decimal points")
			return false
		}
		if s.headings == nil {
			s.headings, s.top = record, line
			continue
		}
		if len(record) != len(s.headings) && strings.Contains(strings.Join(append(record, s.headings...), ""), "\t") || len(record) == 1 && strings.Contains(s.headings[0], "\t") {
			s.fault(s.top, 1, "the fields are parted by tabs; write commas between them")
			return false
		}
		if len(s.headings) == 1 && len(record) > 1 {
			s.fault(s.top, 1, "%q is no line of headings; put a # before it if it is a remark", s.headings[0])
			return false
		}
		if len(record) != len(s.headings) {
			s.fault(line, 1, "has %s where the headings are %d; write each field, with a decimal point", plural(len(record), "field"), len(s.headings))
			return false
		}
		at := make([]int, len(record))
		for i := range record {
			_, at[i] = c.FieldPos(i)
		}
		s.rows, s.lines, s.columns = append(s.rows, record), append(s.lines, line), append(s.columns, at)
	}
	if s.headings == nil {
		s.fault(0, 0, "is empty; write a line of headings")
		return false
	}
	return true
}

// A line that opens a table of a tank file, and a remark that is indented or, as
// spreadsheets save it, quoted.
var (
	tomlTable = regexp.MustCompile(`(?m)^\[\[?[a-z]+[a-z0-9._-]*\]\]?[ \t]*\r?$`)
	remark    = regexp.MustCompile(`(?m)^[ \t"]+#(.*)$`)
)

// fault notes what is wrong in the file; line 0 is the headings.
func (s *sheet) fault(line, col int, format string, args ...any) {
	if line == 0 {
		line = s.top
	}
	s.r.faults = append(s.r.faults, Fault{
		File: s.name, Line: max(line, 1), Column: max(col, 1), What: fmt.Sprintf(format, args...),
	})
}

// match finds our columns among the headings: by the map where it names one,
// else by our own name with the unit in (…) or […].
func (s *sheet) match(columns []column, headings map[string]string) {
	used := map[int]bool{}
	for _, c := range columns {
		wanted, mapped := headings[c.name]
		for i, h := range s.headings {
			name, u := cutUnit(h)
			if mapped && strings.TrimSpace(h) != strings.TrimSpace(wanted) || !mapped && name != c.name {
				continue
			}
			if _, twice := s.at[c.name]; twice {
				s.fault(0, 0, "has the column %s twice; leave one out", c.name)
				continue
			}
			s.at[c.name], s.units[c.name], s.kinds[c.name], used[i] = i, u, c, true
			s.checkUnit(c, h, u)
		}
		if _, found := s.at[c.name]; mapped && !found {
			s.r.fault(join("flight.columns", c.name), "%q has no heading %q; its headings are %s", s.name, wanted, quotedList(s.headings))
		}
	}
	s.unused(columns, used)
}

// unused tells a heading that nearly is ours, and records the rest.
func (s *sheet) unused(columns []column, used map[int]bool) {
	for i, h := range s.headings {
		name, _ := cutUnit(h)
		if used[i] {
			continue
		}
		if slices.Contains(s.texts, name) {
			if _, twice := s.at[name]; twice {
				s.fault(0, 0, "has the column %s twice; leave one out", name)
			}
			s.at[name] = i
			continue
		}
		if near := nearWord(name, append(columnNames(columns), s.texts...)); near != "" {
			if _, have := s.at[near]; !have {
				s.offered[near] = true
				s.fault(0, 0, "heading %q is not known; did you mean %s?", h, near)
				continue
			}
		}
		s.r.t.Defaults = append(s.r.t.Defaults, Default{Key: s.name, Value: "not used", Why: fmt.Sprintf("column %q is not one of ours", h)})
	}
}

// checkUnit tries the unit of a heading on a one.
func (s *sheet) checkUnit(c column, heading, u string) {
	switch {
	case c.bare && u != "" && u != "-" && u != "1":
		s.fault(0, 0, "heading %q: %s is a bare number and has no unit", heading, c.name)
	case c.bare:
	case u == "":
		s.fault(0, 0, "heading %q has no unit; write it behind the name in brackets, as %q", heading, c.name+" ["+c.unit.Units()[0]+"]")
	default:
		if _, err := unit.Parse(c.unit, "1 "+u); err != nil {
			s.fault(0, 0, "heading %q: %v", heading, err)
		}
	}
}

// cutUnit splits "time (s)" or "time [s]".
func cutUnit(heading string) (name, u string) {
	h := strings.TrimSpace(heading)
	open := strings.IndexAny(h, "([")
	if open < 0 || !strings.HasSuffix(h, ")") && !strings.HasSuffix(h, "]") {
		return h, ""
	}
	return strings.TrimSpace(h[:open]), strings.TrimSpace(h[open+1 : len(h)-1])
}

func (s *sheet) has(name string) bool { _, ok := s.kinds[name]; return ok }

// column returns where a row holds the first of the names that has a column.
func (s *sheet) column(row int, names ...string) int {
	for _, n := range names {
		if s.has(n) {
			return s.columns[row][s.at[n]]
		}
	}
	return 1
}

// words returns a field as text, "" where there is no such column.
func (s *sheet) words(row int, name string) string {
	if i, ok := s.at[name]; ok {
		return strings.TrimSpace(s.rows[row][i])
	}
	return ""
}

// number returns a field in SI, nil where there is no such column. An empty or
// unreadable field is a fault: a gap in a record is not a zero.
func (s *sheet) number(row int, name string) *float64 {
	c, ok := s.kinds[name]
	if !ok {
		return nil
	}
	i := s.at[name]
	cell := strings.TrimSpace(s.rows[row][i])
	bad := func(format string, args ...any) *float64 {
		s.fault(s.lines[row], s.columns[row][i], name+": "+format, args...)
		return nil
	}
	if cell == "" && slices.Contains(s.gaps, name) {
		return nil // not measured
	}
	if cell == "" {
		return bad("the field is empty; a gap is not a zero, fill it or leave the row out")
	}
	x, err := strconv.ParseFloat(cell, 64)
	if err != nil || math.IsNaN(x) || math.IsInf(x, 0) || strings.ContainsAny(cell, "xX_pP") {
		if strings.Contains(cell, ":") {
			return bad("%q is a time of day; write %s from the start, as 0, 60, 120", cell, s.units[name])
		}
		return bad("%q is not a number", cell)
	}
	if !c.bare {
		if x, err = unit.Parse(c.unit, cell+" "+s.units[name]); err != nil {
			return bad("%v", err)
		}
	}
	if !c.sense.ok(x) {
		return bad("%s %s", cell, c.sense)
	}
	return &x
}
