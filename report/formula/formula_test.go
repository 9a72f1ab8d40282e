package formula_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/formula"
)

// numbers are those of the hand-worked values below.
var numbers = map[string]float64{"p": 2, "r": 3, "t": 4, "φ": math.Pi / 6, "N_x,p": 5, "N_x,l": -7, "S": 11, "E_l": 0.5,
	"D/2h": 2, "t_n′": 0.25, "R_p0.2": 13, "a": 1.5, "A_1": 8, "OD": 10}

func value(name string) (float64, bool) { v, ok := numbers[name]; return v, ok }

func names() (out []string) {
	for k := range numbers {
		out = append(out, k)
	}
	return out
}

// TestEvaluate holds one side of each formula to its value by hand.
func TestEvaluate(t *testing.T) {
	for _, row := range []struct {
		text string
		want float64 // by hand
	}{
		{"p r/t", 1.5},
		{"p r/(t cos φ)", 6 / (4 * math.Sqrt(3) / 2)},
		{"2 π r sin φ t", 12 * math.Pi}, // the sine takes φ alone
		{"p r/(S E_l − 0.6p)", 6.0 / 4.3},
		{"(p r + 2 max(N_x,l, 0))/(2 S E_l + 0.4 p)", 6 / 11.8},
		{"max(|N_x,p|, |N_x,l|, 6)", 7},
		{"√(p² − p r + r²)", math.Sqrt(7)},
		{"sqrt(t)", 2},
		{"[2 + (D/2h)²]/6", 1},
		{"N_x,p − t_n′ (1 − 3)", 5.5},
		{"−p^2 + r", -1},
		{"p^−1 r", 1.5},
		{"p π OD²/4", 50 * math.Pi},
		{"2p/a", 4 / 1.5},
		{"3/2 (p + r)/2", 3.75},
		{"(p/t)(r/t)²", 0.5 * 9 / 16},
		{"p · r × t", 24},
		{"exp(−√(r/3))", math.Exp(-1)},
		{"ln(p)", math.Ln2},
		{"R_p0.2 tan φ", 13 / math.Sqrt(3)},
		{"A_1 − p − r", 3},
		{"p/r/t", 1.0 / 6},
		{"sin φ²", 0.25},
		{"p/(2πr) + S/(πr²)", 1/(3*math.Pi) + 11/(9*math.Pi)},
	} {
		st := formula.Parse(row.text, names()...)
		if len(st) != 1 || len(st[0].Sides) != 1 {
			t.Errorf("%s: read as %+v", row.text, st)
			continue
		}
		got, err := formula.Eval(st[0].Sides[0], value)
		if err != nil || math.Abs(got-row.want) > 1e-12*math.Abs(row.want) {
			t.Errorf("%s = %g, %v, want %g", row.text, got, err, row.want)
		}
		again := formula.Parse(st[0].Sides[0].String(), names()...)
		if len(again) != 1 || len(again[0].Sides) != 1 {
			t.Errorf("%s: printed as %s, which does not read back", row.text, st[0].Sides[0])
			continue
		}
		if back, err := formula.Eval(again[0].Sides[0], value); err != nil || math.Abs(back-row.want) > 1e-12*math.Abs(row.want) {
			t.Errorf("%s: printed as %s = %g, %v", row.text, st[0].Sides[0], back, err)
		}
	}
}

// TestWords holds what is not a formula, or could be read in two ways, to stay text.
func TestWords(t *testing.T) {
	for _, text := range []string{
		"S of the zone without joint efficiency", "p r_2/2 t", "A_ps = r l (cylinder)", "worst ≤ S", "p +", "(p", "p)", "= p", "p = ", "√",
		"max(p)(", "a | b", "2 ?", "1/p (r + t)", strings.Repeat("(", 500) + "p" + strings.Repeat(")", 500),
	} {
		for _, s := range formula.Parse(text, "p", "r", "t") {
			if s.Sides != nil {
				t.Errorf("%q was read as a formula: %v", text, s.Sides)
			}
		}
	}
}

func TestStatements(t *testing.T) {
	got := formula.Parse("σ_p = p R_m/t; k_p σ_p ≤ E S, of the worst; partial: t_2 ≥ t_c")
	var parts []string
	for _, s := range got {
		text := s.Words
		for i, side := range s.Sides {
			if i > 0 {
				text += s.Relations[i-1]
			}
			text += "<" + side.String() + ">"
		}
		if s.Sides == nil {
			text = "words " + s.Text
		}
		parts = append(parts, text+s.Joint)
	}
	want := "<σ_p>=<p R_m/t>; | <k_p σ_p>≤<E S>, | words of the worst; | partial:<t_2>≥<t_c>"
	if all := strings.Join(parts, " | "); all != want {
		t.Errorf("read as\n%s, want\n%s", all, want)
	}
}

// TestNoValue has what must not give a number give an error and NaN.
func TestNoValue(t *testing.T) {
	for _, text := range []string{"p + x", "p ± r", "x_1 p"} {
		s := formula.Parse(text, "p", "r")
		v, err := formula.Eval(s[0].Sides[0], value)
		if err == nil || !math.IsNaN(v) {
			t.Errorf("%s = %g, %v", text, v, err)
		}
	}
	if v, err := formula.Eval(formula.Value{Text: "2 MPa"}, value); err == nil || !math.IsNaN(v) {
		t.Errorf("words with a unit have the value %g, %v", v, err)
	}
}

func TestSubstitute(t *testing.T) {
	s := formula.Parse("p r²/(2 t) − N_x,l", "p", "r", "t", "N_x,l")
	got := formula.Substitute(s[0].Sides[0], func(name string) (formula.Expr, bool) {
		text, ok := map[string]string{"p": "2 MPa", "r": "3 mm", "t": "4 mm", "N_x,l": "-7 N"}[name]
		return formula.Value{Text: text}, ok
	})
	if want := "2 MPa · (3 mm)²/(2 · 4 mm) − (-7 N)"; got.String() != want {
		t.Errorf("%s, want %s", got, want)
	}
	if n := formula.Symbols(s[0].Sides[0]); strings.Join(n, " ") != "p r t N_x,l" {
		t.Errorf("symbols %q", n)
	}
}

// FuzzParse: whatever is read as a formula prints as one of the same value.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"p r/(t cos φ) ≤ S", "max(|a|, √(a² − p))", "3/2 (p + r)/2; words", "−p^−2", "2p a·b"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, s := range formula.Parse(text, names()...) {
			for _, side := range s.Sides {
				v, err := formula.Eval(side, value)
				if err != nil || math.IsNaN(v) || math.IsInf(v, 0) {
					continue
				}
				again := formula.Parse(side.String(), names()...)
				if len(again) != 1 || len(again[0].Sides) != 1 {
					t.Fatalf("%q: %q does not read back", text, side)
				}
				back, err := formula.Eval(again[0].Sides[0], value)
				if err != nil || math.Abs(back-v) > 1e-9*math.Abs(v) {
					t.Fatalf("%q = %g prints as %q = %g, %v", text, v, side, back, err)
				}
			}
		}
	})
}
