package bolting

// Threads. Worked example: a public example of an M10 screw in aluminium, read (basic
// dimensions, shear strength 0.6 of the ultimate). Stress and root areas: ISO 898-1,
// ASME B1.1 tables, recalled. Limits of size: ISO 965-2 6g/6H and ASME B1.1 2A/2B
// tables, recalled.

import (
	"math"
	"testing"

	"proofsheet/report/check/checktest"
)

func thread(t *testing.T, name string) Thread {
	t.Helper()
	th, err := ParseThread(name)
	if err != nil {
		t.Fatal(err)
	}
	return th
}

func TestWorkedExample(t *testing.T) {
	m := thread(t, "M10x1.5")
	checktest.Printed(t, "A_t [mm2]", m.StressArea()*1e6, "57.99")
	p, d := 1.5e-3, 10e-3
	d2, d1 := d-0.649519*p, d-1.082532*p
	s := StripAreas(p, d, d2, d2, d1)
	checktest.Printed(t, "A_S [mm2/mm]", s.Internal*1e3, "27.49")
	checktest.Printed(t, "L_e [mm]", m.StressArea()*830/(0.6*310*s.Internal)*1e3, "9.41")
}

func TestAreas(t *testing.T) {
	for _, row := range []struct{ name, stress, root string }{
		{"M6", "20.1", "17.9"}, {"M8", "36.6", "32.8"}, {"M10", "58.0", "52.3"}, {"M12", "84.3", "76.2"}, {"M16", "157", "144"}, {"M20", "245", "225"},
	} {
		th := thread(t, row.name)
		checktest.Printed(t, row.name+" stress area", th.StressArea()*1e6, row.stress)
		checktest.Printed(t, row.name+" root area", th.RootArea()*1e6, row.root)
	}
	for _, row := range []struct{ name, stress string }{{"1/4-28 UNF", "0.0364"}, {"3/8-24 UNF", "0.0878"}, {"1/2-13 UNC", "0.1419"}, {"3/4-10 UNC", "0.334"}} {
		checktest.Printed(t, row.name, thread(t, row.name).StressArea()/(inch*inch), row.stress)
	}
	checktest.Printed(t, "root of 3/4-10", thread(t, "3/4-10 UNC").RootArea()/(inch*inch), "0.302")
}

func TestLimitsOfSize(t *testing.T) {
	for _, row := range []struct {
		name                    string
		unit                    float64
		dMin, d2Min, d2Max, d1M string
	}{
		{"M6", mm, "5.794", "5.212", "5.500", "5.153"},
		{"M10", mm, "9.732", "8.862", "9.206", "8.676"},
		{"M20", mm, "19.623", "18.164", "18.600", "17.744"},
	} {
		l, err := thread(t, row.name).limits()
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.name+" least major", l.dMin/row.unit, row.dMin)
		checktest.Printed(t, row.name+" least pitch diameter", l.d2Min/row.unit, row.d2Min)
		checktest.Printed(t, row.name+" largest pitch diameter", l.d2Max/row.unit, row.d2Max)
		checktest.Printed(t, row.name+" largest minor", l.d1Max/row.unit, row.d1M)
	}
}

// The printed limits of the fine quarter-inch thread take its diameter for the length
// of engagement; here it is 9p where that is more, which costs no more than 0.2 mil
// and never gains.
func TestUnifiedLimits(t *testing.T) {
	l := thread(t, "1/4-28 UNF").unified()
	checktest.Printed(t, "least major", l.dMin/inch, "0.2425")
	checktest.Printed(t, "largest minor", l.d1Max/inch, "0.220")
	if low := 0.2225 - l.d2Min/inch; !(low >= 0 && low <= 2e-4) {
		t.Errorf("least pitch diameter %.5f in, printed 0.2225", l.d2Min/inch)
	}
	if high := l.d2Max/inch - 0.2311; !(high >= 0 && high <= 2e-4) {
		t.Errorf("largest pitch diameter %.5f in, printed 0.2311", l.d2Max/inch)
	}
}

// Every thread loses area to its tolerances, and the external threads strip first
// where both sides are of one metal.
func TestTolerancesCost(t *testing.T) {
	for _, name := range []string{"M5", "M10", "M20x1.5", "M48", "#10-32 UNF", "7/16-20 UNF", "1 1/16-12 UN", "1-8 UNC"} {
		th := thread(t, name)
		s, err := th.Strip()
		if err != nil {
			t.Fatal(err)
		}
		d2, d1 := th.Major-0.649519*th.Pitch, th.Major-1.082532*th.Pitch
		basic := StripAreas(th.Pitch, th.Major, d2, d2, d1)
		if !(s.Internal < basic.Internal && s.External < basic.External && s.External < s.Internal && s.External > 0.4*basic.External) {
			t.Errorf("%s: %+v, basic %+v", name, s, basic)
		}
	}
}

func TestWhatIsNoThread(t *testing.T) {
	for _, text := range []string{"", "1/2 NPT", "G1/2", "R 1/2", "M7.3", "M10x3", "M10x0.6", "M2", "M120x2", "1/4", "1/0-20 UNF", "1/4-0 UNF", "M10x0", "NaN"} {
		if th, err := ParseThread(text); err == nil {
			t.Errorf("%q: %+v", text, th)
		}
	}
	for text, want := range map[string]float64{"M8": 8e-3, "M20x1.5": 20e-3, "M20 x 1.5": 20e-3, "#10-32 UNF": 0.19 * inch, "1 1/16-12 UN": 1.0625 * inch, "0.25-28": inch / 4} {
		if th, err := ParseThread(text); err != nil || math.Abs(th.Major-want) > 1e-12 {
			t.Errorf("%q: %+v, %v", text, th, err)
		}
	}
}
