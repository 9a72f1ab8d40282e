package report

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"strings"
	"text/tabwriter"
	"unicode/utf8"

	"proofsheet/report/check"
)

// A Record is the log of a proof test, judged: what was read beside what was
// predicted, and the verdict. Text, JSON and PDF are three views of it.
type Record struct {
	Verdict  string // "satisfied", "not satisfied", "inconclusive"
	Reason   string // of the finding that sets the verdict
	Log      Attachment
	Rows     int        // of the log [-]
	Combined string     // digest over the files of the tank and the log, in hexadecimal
	Sheet    string     // verdict line of the tank's own sheet
	Findings []Finding  // in their order
	Readings []RecordAt // of the way up
	Charts   []Chart
	Cautions []string
	Notes    []string
}

// A Finding is the answer to one question put to the log.
type Finding struct {
	Title   string
	Outcome string // "pass", "fail", "inconclusive", "not read"
	Reason  string
	Values  []RecordValue
	Notes   []string
}

// A RecordValue is a number of the record beside its prediction or limit. What
// is not known is NaN.
type RecordValue struct {
	Quantity    check.Quantity
	Reference   float64 // predicted, or allowed [in the unit of Quantity]
	Bound       string  // what Reference is: "predicted", "at most", "at least"; "" for none
	Band        float64 // allowed to either side of the prediction [in the unit of Quantity]
	Uncertainty float64 // expanded, k = 2 [in the unit of Quantity]
}

// A RecordAt is one reading of the way up.
type RecordAt struct {
	Time      float64 // of the log [s]
	Pressure  float64 // [Pa]
	Volume    float64 // over that of the fitted line at no pressure [m3]
	Predicted float64 // bled tank [m3]
	Line      float64 // what the earlier readings led to expect [m3]
	Band      float64 // departure from the line that stops the test [m3]
}

// Line returns the verdict in one line.
func (r *Record) Line() string { return "proof test " + r.Verdict + ": " + r.Reason }

// RecordText returns the record in words, in the units of the sheet. It opens
// and closes with the verdict.
func RecordText(s *Sheet, r *Record) string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s\n\nlog: %s, %d rows, SHA-256 %s\ntank: %s\n", r.Line(), r.Log.Name, r.Rows, r.Log.SHA256, r.Sheet)
	for i, f := range r.Findings {
		fmt.Fprintf(&b, "\n%d %s: %s: %s\n", i+1, f.Title, f.Outcome, f.Reason)
		b.WriteString(f.rows(s.Units))
		for _, n := range f.Notes {
			fmt.Fprintf(&b, "  note: %s\n", n)
		}
	}
	if len(r.Readings) > 0 {
		fmt.Fprintln(&b)
		w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
		fmt.Fprintln(w, "way up\tpressure\tvolume\tpredicted\tby the earlier line\tstop band")
		for i, q := range r.Readings {
			fmt.Fprintf(w, "%d\t%s\n", i+1, strings.Join(q.Cells(s.Units), "\t"))
		}
		w.Flush()
	}
	fmt.Fprintln(&b)
	for _, c := range r.Cautions {
		fmt.Fprintf(&b, "caution: %s\n", c)
	}
	for _, n := range r.Notes {
		fmt.Fprintf(&b, "note: %s\n", n)
	}
	fmt.Fprintf(&b, "\n%s\n", r.Line())
	return Fold(b.String())
}

// rows sets the numbers of a finding in columns; where a row would be wider than a
// line, what every value is held against goes under its name.
func (f Finding) rows(system string) string {
	var beside, under strings.Builder
	w := tabwriter.NewWriter(&beside, 0, 0, 2, ' ', 0)
	name := 0
	for _, v := range f.Values {
		fmt.Fprintf(w, "  %s\t%s\t%s\t%s\n", v.Quantity.Name, v.Show(v.Quantity.Value, system), v.Against(system), v.Spread(system))
		name = max(name, utf8.RuneCountInString(v.Quantity.Name))
	}
	w.Flush()
	if text := beside.String(); Fold(text) == text {
		return text
	}
	for _, v := range f.Values {
		fmt.Fprintf(&under, "  %-*s  %s\n", name, v.Quantity.Name, v.Show(v.Quantity.Value, system))
		if held := strings.Trim(v.Against(system)+", "+v.Spread(system), ", "); held != "" {
			fmt.Fprintf(&under, "    %s\n", held)
		}
	}
	return under.String()
}

// Cells returns pressure, volume, prediction, line and band as printed.
func (q RecordAt) Cells(system string) []string {
	volume := func(v float64) string { return RecordValue{Quantity: check.M3("", "", v)}.Show(v, system) }
	band := volume(q.Band)
	if !math.IsNaN(q.Band) {
		band = "± " + band
	}
	return []string{RecordValue{Quantity: check.Pa("", "", q.Pressure)}.Show(q.Pressure, system), volume(q.Volume), volume(q.Predicted), volume(q.Line), band}
}

// Show returns x [in the unit of the quantity] as it is printed: four digits,
// strains in millionths, "–" where it is not known.
func (v RecordValue) Show(x float64, system string) string {
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	if x == 0 {
		return "0"
	}
	if strings.Contains(v.Quantity.Symbol, "ε") {
		return trim(Number(x*1e6, 4, Nearest)) + "×10⁻⁶"
	}
	largest := math.Max(math.Abs(x), math.Abs(v.Quantity.Value))
	if v.Bound != "" && !math.IsNaN(v.Reference) {
		largest = math.Max(largest, math.Abs(v.Reference))
	}
	d := DisplayUnit(v.Quantity.Unit, largest, system)
	digits := 4
	if d.Offset != 0 {
		digits = 5
	}
	return d.with(trim(Number(d.Of(x), digits, Nearest)))
}

// Against returns the prediction with its band, or the limit.
func (v RecordValue) Against(system string) string {
	switch {
	case v.Bound == "":
		return ""
	case math.IsNaN(v.Reference):
		return v.Bound + ": not known"
	case math.IsNaN(v.Band):
		return v.Bound + " " + v.Show(v.Reference, system)
	}
	return v.Bound + " " + v.Show(v.Reference, system) + " ± " + v.Show(v.Band, system)
}

// Spread returns the uncertainty as printed.
func (v RecordValue) Spread(system string) string {
	if math.IsNaN(v.Uncertainty) {
		return ""
	}
	return "uncertain by " + v.Show(v.Uncertainty, system)
}

type jsonRecord struct {
	Format   int             `json:"format"`
	Program  jsonProgram     `json:"program"`
	Tank     jsonTank        `json:"tank"`
	Log      jsonFile        `json:"log"`
	Verdict  string          `json:"verdict"`
	Reason   string          `json:"reason"`
	Sheet    string          `json:"sheet"`
	Findings []jsonFinding   `json:"findings"`
	Readings []jsonRecordRow `json:"readings"`
	Cautions []string        `json:"cautions"`
	Notes    []string        `json:"notes"`
}

type jsonFinding struct {
	Title   string            `json:"title"`
	Outcome string            `json:"outcome"`
	Reason  string            `json:"reason"`
	Values  []jsonRecordValue `json:"values"`
	Notes   []string          `json:"notes"`
}

type jsonRecordValue struct {
	jsonQuantity
	Bound       string `json:"bound"`
	Reference   num    `json:"reference"`
	Band        num    `json:"band"`
	Uncertainty num    `json:"uncertainty"`
}

type jsonRecordRow struct {
	Time      num `json:"time"`
	Pressure  num `json:"pressure"`
	Volume    num `json:"volume"`
	Predicted num `json:"predicted"`
	Line      num `json:"line"`
	Band      num `json:"band"`
}

// RecordJSON returns the record in its JSON form: SI, null where a number is
// not known, bound empty where a value has neither prediction nor limit.
func RecordJSON(s *Sheet, r *Record) ([]byte, error) {
	out := jsonRecord{
		Format: Format, Program: jsonProgram(s.Program),
		Tank: jsonTank{s.Tank.File, s.Tank.SHA256, []jsonFile{}, s.Block.Title, s.Block.Number, s.Block.Revision},
		Log:  jsonFile{r.Log.Name, r.Log.SHA256}, Verdict: r.Verdict, Reason: r.Reason, Sheet: r.Sheet,
		Findings: []jsonFinding{}, Readings: []jsonRecordRow{},
		Cautions: append([]string{}, r.Cautions...), Notes: append([]string{}, r.Notes...),
	}
	for _, f := range s.Tank.Files {
		out.Tank.Files = append(out.Tank.Files, jsonFile(f))
	}
	for _, f := range r.Findings {
		j := jsonFinding{f.Title, f.Outcome, f.Reason, []jsonRecordValue{}, append([]string{}, f.Notes...)}
		for _, v := range f.Values {
			j.Values = append(j.Values, jsonRecordValue{*quantityJSON(v.Quantity), v.Bound, num(v.Reference), num(v.Band), num(v.Uncertainty)})
		}
		out.Findings = append(out.Findings, j)
	}
	for _, q := range r.Readings {
		out.Readings = append(out.Readings, jsonRecordRow{num(q.Time), num(q.Pressure), num(q.Volume), num(q.Predicted), num(q.Line), num(q.Band)})
	}
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	e.SetIndent("", "  ")
	err := e.Encode(out)
	return b.Bytes(), err
}
