package tank

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"
)

// goodLog holds every column, each in a unit of its own.
const goodLog = "# sheet: 0123456789ab\n" +
	"time [min],pressure [psi] +/- 0.1,volume (gal) ± 0.5 in3,returned [ml],line [ml],temperature [degF] ± 0.09 degF,wall_temperature [degC],strain-hoop [microstrain] ± 5,strain-b [%],remark\n" +
	"0,0,0,0,0,50,10,0,0,filled\n" +
	"1.5,145.03774,0.1,0,1,,10,500,0.05,\n"

func TestReadLog(t *testing.T) {
	l, err := ReadLog("log.csv", []byte(goodLog), false)
	if err != nil {
		t.Fatal(err)
	}
	near := func(what string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 1e-6*math.Abs(want)) {
			t.Errorf("%s is %g, want %g", what, got, want)
		}
	}
	if l.Sheet != "0123456789ab" || len(l.Rows) != 2 || len(l.Gauges) != 2 || l.Gauges[0] != "hoop" || len(l.Unused) != 1 {
		t.Fatalf("%+v", l)
	}
	r := l.Rows[1]
	near("time", r.Time, 90)
	near("pressure", r.Pressure, 1e6)
	near("volume", r.Volume, 0.1*3.785411784e-3-1e-6)
	near("wall", r.Wall, 283.15)
	near("strain", r.Strains[0], 500e-6)
	near("strain in per cent", r.Strains[1], 500e-6)
	near("temperature", l.Rows[0].Temperature, 283.15)
	if !math.IsNaN(r.Temperature) {
		t.Errorf("a gap is %g", r.Temperature)
	}
	near("uncertainty of pressure", l.PressureChange, 689.4757)
	near("uncertainty of volume", l.VolumeChange, 0.5*16.387064e-6)
	near("uncertainty of temperature", l.TemperatureChange, 0.05)
	near("uncertainty of strain", l.StrainChange, 5e-6)
}

// What is wrong with a log is told with line and column, all at once.
func TestBadLog(t *testing.T) {
	for name, row := range map[string]struct{ text, want string }{
		"empty":          {"", "log.csv:1:1: is empty"},
		"no rows":        {"time [s],pressure [bar],volume [l]\n", "log.csv:1:1: holds no rows"},
		"no unit":        {"time,pressure [bar],volume [l]\n0,1,0\n", `log.csv:1:1: heading "time" has no unit`},
		"absolute":       {"time [s],pressure [bara],volume [l]\n0,1,0\n", `"1 bara" is an absolute pressure`},
		"wrong unit":     {"time [s],pressure [l],volume [l]\n0,1,0\n", `heading "pressure [l]"`},
		"no pressure":    {"time [s],volume [l]\n0,1\n", "log.csv:1:1: has no column pressure; write pressure [Pa]"},
		"misspelt":       {"time [s],presure [bar],volume [l]\n0,1,0\n", "did you mean pressure?"},
		"text":           {"time [s],pressure [bar],volume [l]\n0,1,0\n1,high,0\n", `log.csv:3:3: pressure: "high" is not a number`},
		"not a number":   {"time [s],pressure [bar],volume [l]\n0,nan,0\n", `log.csv:2:3: pressure: "nan" is not a number`},
		"gap":            {"time [s],pressure [bar],volume [l]\n0,,0\n", "log.csv:2:3: pressure: the field is empty"},
		"time again":     {"time [s],pressure [bar],volume [l]\n0,1,0\n0,1,0\n", "log.csv:3:1: time: 0 s does not come after the 0 s"},
		"time back":      {"time [min],pressure [bar],volume [l]\n0,1,0\n2,1,0\n1,1,0\n", "log.csv:4:1: time: 60 s does not come after the 120 s"},
		"comma":          {"time [s],pressure [bar],volume [l]\n0,1,5,0\n", "log.csv:2:1: has 4 fields where the headings are 3; write each field, with a decimal point"},
		"a PDF":          {"%PDF-1.7\n%\xff\xfe\n", "log.csv:1:1: this is a PDF, not a table"},
		"semicolons":     {"time [s];pressure [bar];volume [ml] ± 0,1 ml\n0;1,5;0\n", "log.csv:1:1: the fields are parted by semicolons"},
		"one semicolon":  {"time [s],pressure [bar],volume [l]\n0;1;5\n", "log.csv:2:1: the fields are parted by semicolons"},
		"twice":          {"time [s],time [s],pressure [bar],volume [l]\n0,0,1,0\n", "has the column time twice"},
		"cold":           {"time [s],pressure [bar],volume [l],temperature [degC]\n0,1,0,-300\n", "below absolute zero"},
		"no gauge":       {"time [s],pressure [bar],volume [l],strain [um/m]\n0,1,0,0\n", `names no gauge; write "strain-NAME [um/m]"`},
		"strain bare":    {"time [s],pressure [bar],volume [l],strain-a\n0,1,0,0\n", `heading "strain-a" has no unit`},
		"no uncertainty": {"time [s],pressure [bar] ± x,volume [l]\n0,1,0\n", `heading "pressure [bar]": uncertainty`},
		"none of it":     {"time [s],pressure [bar] ± 0,volume [l]\n0,1,0\n", "must be above zero"},
		"not text":       {"time [s],\xff", "is not UTF-8"},
		"a tank":         {"# a tank\n[cylinder]\nlength = \"1 m\"\n", "log.csv:1:1: this is a tank file, not a table"},
		"tabs":           {"time [s]\tpressure [bar]\tvolume [l]\n0\t1\t0\n", "log.csv:1:1: the fields are parted by tabs"},
		"a title":        {"Test of tank 2\ntime [s],pressure [bar],volume [l]\n0,1,0\n", `log.csv:1:1: "Test of tank 2" is no line of headings; put a # before it`},
		"time of day":    {"time [s],pressure [bar],volume [l]\n10:00:00,1,0\n", `log.csv:2:1: time: "10:00:00" is a time of day; write s from the start`},
		"headings below": {"# a remark\n\ntime,pressure [bar],volume [l]\n0,1,0\n", `log.csv:3:1: heading "time" has no unit`},
		"digits lacking": {"# sheet: 0123456789a\ntime [s],pressure [bar],volume [l]\n0,1,0\n", "log.csv:1:1: this line names no sheet; write"},
		"other digits":   {"#sheet 0123456789ag\ntime [s],pressure [bar],volume [l]\n0,1,0\n", "log.csv:1:1: this line names no sheet; write"},
		"two sheets":     {"# sheet: 0123456789ab\ntime [s],pressure [bar],volume [l]\n0,1,0\n# sheet: 0123456789ac\n", "log.csv:4:1: this line names another sheet"},
		"a gauge unsaid": {"time [s],pressure [bar],volume [l],gauge b [bar]\n0,1,0,1\n", `heading "gauge b [bar]" is a pressure and would not be judged; write "pressure-NAME [bar]"`},
		"a gauge of two": {"time [s],pressure [bar],volume [l],pressure2 [bar]\n0,1,0,1\n", `heading "pressure2 [bar]" names no further gauge; write "pressure-NAME [Pa]"`},
		"under a vacuum": {"time [s],pressure [bar],volume [l]\n0,-1.02,0\n", `log.csv:2:3: pressure: "-1.02 bar" is less than a vacuum; write what the gauge shows over the atmosphere`},
	} {
		t.Run(name, func(t *testing.T) {
			l, err := ReadLog("log.csv", []byte(row.text), false)
			if err == nil || l != nil {
				t.Fatalf("read: %+v", l)
			}
			if !strings.Contains(err.Error(), row.want) {
				t.Errorf("%q lacks %q", err, row.want)
			}
		})
	}
}

// The line that names the sheet, as people and spreadsheets write it, and what does
// not mean to.
func TestSheetLine(t *testing.T) {
	for line, want := range map[string]string{
		"# sheet: 0123456789ab": "0123456789ab", "#sheet 0123456789AB": "0123456789ab", "# Sheet:0123456789ab,,,": "0123456789ab", " # sheet: 0123456789ab": "0123456789ab",
		"\"# sheet: 0123456789ab\"": "0123456789ab", "# sheet: 0123456789ab…": "0123456789ab", "# sheet: 0123456789ab (demo tank)": "0123456789ab",
		"\ufeff# sheet: 0123456789ab\r": "0123456789ab", "# sheet: 0123456789ab\n# sheet: 0123456789AB": "0123456789ab", "# sheets of paper": "", "# of the sheet": "",
	} {
		l, err := ReadLog("log.csv", []byte(line+"\ntime [s],pressure [bar],volume [l]\n0,1,0\n"), false)
		if err != nil || l.Sheet != want || len(l.Rows) != 1 {
			t.Errorf("%q: %+v, %v", line, l, err)
		}
	}
}

// Further gauges are read; rows behind a mark are counted; a gas needs no volume.
func TestLogColumns(t *testing.T) {
	l, err := ReadLog("log.csv", []byte("time [s],pressure [bar] ±0.004bar,pressure-2 [kPa] ± 1e-1 kPa,volume [cm3]\n0,1,101,5\n#1,2,3,4\n# 2,9,9,9\n# a remark, and another\n3,1,,5\n"), true)
	if err != nil {
		t.Fatal(err)
	}
	if len(l.Others) != 1 || l.Others[0] != "2" || l.Rows[0].Others[0] != 101e3 || !math.IsNaN(l.Rows[1].Others[0]) || math.Abs(l.PressureChange-400) > 1e-9 {
		t.Errorf("%+v", l)
	}
	for _, want := range []string{"2 rows behind a #, the first in line 3: what it shows is not judged", "the column volume: in gas it tells nothing"} {
		if !slices.Contains(l.Unused, want) {
			t.Errorf("%q lacks %q", l.Unused, want)
		}
	}
	if _, err := ReadLog("log.csv", []byte("time [s],pressure [bar]\n0,1\n"), true); err != nil {
		t.Errorf("of a gas: %v", err)
	}
}

// The step of a column is the largest of 1, 2 and 5 times a power of ten that all of
// four readings or more are multiples of; of fewer the digits written.
func TestSteps(t *testing.T) {
	for _, row := range []struct {
		cells string
		want  float64 // [K]
	}{
		{"15.0 15.1 15.2 15.3", 0.1}, {"15.2 15.4 15.6 16.0", 0.2}, {"15 15.5 16 16.5", 0.5}, {"10 20 30 40", 10}, {"15.00 15.00", 0.01}, {"15.00 15.05 15.10", 0.01},
		{"15.00 15.05 15.10 15.20", 0.05}, {"15.001 15.1 15.2 15.3", 0.001}, {"-5 0 5 10 15", 5}, {"1.5e1 16 17 18", 0}, {"15 16 17 18 19.0000000000001", 0}, {"0 0.0", 0.1},
	} {
		text := "time [s],pressure [bar],temperature [degC]\n"
		for i, cell := range strings.Fields(row.cells) {
			text += fmt.Sprintf("%d,%d.5,%s\n", i, i, cell)
		}
		l, err := ReadLog("log.csv", []byte(text), true)
		if err != nil || math.Abs(l.TemperatureStep-row.want) > 1e-9 {
			t.Errorf("%s: %v, %v", row.cells, l, err)
		}
	}
	l, err := ReadLog("log.csv", []byte("time [min],pressure [psi],temperature [degF]\n0,10,50\n1,20,51\n2,30,52\n3,40,53\n"), true)
	if err != nil || math.Abs(l.TemperatureStep-5.0/9) > 1e-9 || math.Abs(l.PressureStep-68947.57) > 0.01 {
		t.Errorf("%+v, %v", l, err)
	}
}

// Two faults are told in one run.
func TestBadLogTellsAll(t *testing.T) {
	_, err := ReadLog("log.csv", []byte("time [s],pressure [bar],volume [l]\n0,x,y\n"), false)
	if err == nil || strings.Count(err.Error(), "\n") != 1 {
		t.Errorf("%v", err)
	}
}

// FuzzReadLog: no panic; what is read has finite times that rise, and finite
// pressures.
func FuzzReadLog(f *testing.F) {
	f.Add([]byte(goodLog))
	f.Add([]byte("time [s],pressure [bar],volume [l]\n0,1,0\n1,2,\n"))
	f.Add([]byte("time [h] ± 1,pressure (kPa),volume [m3] +- 1 l,strain-x [m/m]\n1e300,1,0,\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		l, err := ReadLog("log.csv", text, false)
		if err != nil {
			if l != nil {
				t.Error("a log with faults")
			}
			return
		}
		last := math.Inf(-1)
		for _, r := range l.Rows {
			if !(r.Time > last) || math.IsInf(r.Time, 0) || math.IsNaN(r.Pressure) || math.IsInf(r.Pressure, 0) || math.IsInf(r.Volume, 0) || len(r.Strains) != len(l.Gauges) {
				t.Errorf("row %+v", r)
			}
			last = r.Time
		}
		for _, u := range []float64{l.PressureChange, l.VolumeChange, l.TemperatureChange, l.StrainChange} {
			if !(u >= 0) || math.IsInf(u, 0) {
				t.Errorf("uncertainty %g", u)
			}
		}
	})
}
