package assess_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report"
)

// The plan of the demonstration tank: each step adds what its volume is over that of the
// step before, the band is the one function of the record, and none is printed where no
// departure is told.
func TestStepsOfThePlan(t *testing.T) {
	p := sheet(t, read(t, "demo")).Proof
	before, told := 0.0, 0
	for _, s := range p.Steps {
		if d := s.InjectedVolume - before; math.Abs(d-s.Added) > 1e-12 {
			t.Errorf("%s: adds %g, %g more than before", s.Name, s.Added, d)
		}
		before = s.InjectedVolume
		if math.IsNaN(s.StopBand) {
			continue
		}
		told++
		if s.StopBand != proof.StopBand(s.InjectedVolume) || s.Pressure < 0.59*p.Pressure {
			t.Errorf("%s at %g Pa: band %g", s.Name, s.Pressure, s.StopBand)
		}
	}
	if told != 10 { // 0.6 to 1.0, twice
		t.Errorf("%d bands", told)
	}
	limits := strings.Join(p.Limits, "\n")
	for _, want := range []string{"At half the setting", "up to 0.7 of the setting what was added since the step before", "read again after 2 min", "less than 100×10⁻⁶ of hoop strain"} {
		if !strings.Contains(limits, want) {
			t.Errorf("%q is missing: %s", want, limits)
		}
	}
}

// Strains are those of the outside, by hand for the cylinder of the demonstration tank:
// p r_i² (2 − ν)/(E (r_o² − r_i²)), along the axis with 1 − 2ν. The mid-surface reads 2 %
// more around.
func TestStrainsOfThePlanAreOutside(t *testing.T) {
	s := sheet(t, read(t, "demo"))
	p := s.Proof
	last := p.Steps[len(p.Steps)-2]
	const ri, ro, E, ν = 0.2, 0.208, 200e9, 0.27 // 400 mm inside, 8 mm of 304L
	at := last.Pressure - p.Values[0].Value
	f := at * ri * ri / (E * (ro*ro - ri*ri))
	for _, row := range []struct {
		name      string
		got, want float64
	}{{"hoop", last.HoopStrain, f * (2 - ν)}, {"axial", last.AxialStrain, f * (1 - 2*ν)}, {"diameter", last.DiameterGrowth, 2 * ro * f * (2 - ν)}} {
		if math.Abs(row.got/row.want-1) > 0.003 {
			t.Errorf("%s: %g, by hand %g", row.name, row.got, row.want)
		}
	}
	if from := 2.5 * math.Sqrt(0.204*0.008); math.Abs(p.PlainFrom-from) > 1e-12 || math.Abs(p.PlainTo-(1.2-from)) > 1e-12 {
		t.Errorf("plain from %g to %g", p.PlainFrom, p.PlainTo)
	}
	if l := strings.Join(p.Limits, "\n"); !strings.Contains(l, "z from 101.0 mm to 1099 mm") {
		t.Error(l)
	}
}

// planOf returns the plan of a tank file changed by pairs of old and new text.
func planOf(t *testing.T, name string, changes ...string) *report.Proof {
	t.Helper()
	s := assessed(strings.NewReplacer(changes...).Replace(text(t, name)))
	if s == nil || s.Proof == nil {
		t.Fatalf("%s: no plan", name)
	}
	return s.Proof
}

// Where nothing is predicted no limit speaks of a prediction: a cylinder too short for a
// plain place, and a bolted cover, whose tank has strains all the same.
func TestNoLimitWithoutPrediction(t *testing.T) {
	short := planOf(t, "kerosene", `length = "800 mm"`, `length = "120 mm"`)
	words := strings.Join(append(short.Limits, short.Notes...), "\n")
	if !math.IsNaN(short.Steps[0].HoopStrain) || !math.IsNaN(short.PlainFrom) || strings.Contains(words, "10 % off the prediction") || !strings.Contains(words, "Strains are not predicted: no place of the cylinder") {
		t.Error(words)
	}
	bolted := planOf(t, "bolted")
	words = strings.Join(append(bolted.Limits, bolted.Notes...), "\n")
	if !(bolted.Steps[0].HoopStrain > 0) || !math.IsNaN(bolted.Steps[0].StopBand) || strings.Contains(words, "At half the setting") || !strings.Contains(words, "Volumes are not predicted") {
		t.Error(words)
	}
}

// The sequence follows the plan: without room for a relief device no valve is shut, and
// without an examination pressure nobody approaches.
func TestSequenceFollowsThePlan(t *testing.T) {
	for _, row := range []struct {
		name          string
		changes       []string
		with, without []string
	}{
		{"demo", nil, []string{"relief device, set as stated", "every valve to the pump shut", "nobody approaches the tank at any pressure"}, []string{"only now approach", "no valve shut", "Everybody back"}},
		{"demo", []string{`thickness = "8 mm"`, `thickness = "7.1 mm"`},
			[]string{"no relief device has room", "no valve shut, pump and bleed attended", "the tank, what is put in or let out measured,"}, []string{"set as stated", "every valve to the pump shut", "watch the closed tank"}},
		{lived, nil, []string{"lower to the examination pressure, and only now approach", "Everybody back. To the reference pressure"}, []string{"nobody approaches the tank"}},
	} {
		src := text(t, row.name)
		if row.changes != nil {
			src = strings.Replace(src, row.changes[0], row.changes[1], 1)
		}
		s := assessed(src)
		if s == nil || s.Proof == nil {
			t.Fatal("no plan")
		}
		words := strings.Join(append(s.Proof.Sequence, s.Proof.Limits...), "\n")
		for _, want := range row.with {
			if !strings.Contains(words, want) {
				t.Errorf("%q is missing: %s", want, words)
			}
		}
		for _, no := range row.without {
			if strings.Contains(words, no) {
				t.Errorf("%q does not belong: %s", no, words)
			}
		}
	}
}

// Water colder than practice keeps it is noted, and the caution points there.
func TestColdWaterIsNoted(t *testing.T) {
	for degrees, noted := range map[string]bool{"5 degC": true, "10 degC": true, "15 degC": false, "20 degC": false} {
		p := planOf(t, "oxygen", `temperature = "15 degC"`, `temperature = "`+degrees+`"`)
		words := strings.Join(p.Notes, "\n")
		if got := strings.Contains(words, "is colder than the 15 to 48 °C"); got != noted {
			t.Errorf("%s: noted %v: %s", degrees, got, words)
		}
		cautions := strings.Join(p.Cautions, "\n")
		if !strings.Contains(cautions, "15 to 48 degC, or as the plan notes") || !strings.Contains(cautions, "oil-free pump") {
			t.Error(cautions)
		}
	}
}

// The plan says what the open tank shows on the gauge, and how well the water's
// temperature must be known for a tank that loses nothing to pass: 0.5 % and 0.1 % of
// 1.906 MPa over 61.9 kPa/K are 0.0705 K.
func TestPlanOfTheInstruments(t *testing.T) {
	for name, row := range map[string]struct{ change, want string }{
		"level":  {"", "the gauges show zero within 19.05 kPa"},
		"5 m up": {"gauge_height = \"5 m\"\n", "the gauges show -48.99 kPa within"},
		"warmth": {"", "is known within 0.07 K (standard uncertainty)"},
	} {
		s := sheet(t, changed(t, recordTank, "[proof]\n", "[proof]\n"+row.change))
		if got := strings.Join(s.Proof.Limits, "\n"); !strings.Contains(got, row.want) {
			t.Errorf("%s: %s", name, got)
		}
	}
}
