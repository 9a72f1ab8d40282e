package assess_test

import (
	"fmt"
	"math"
	"path/filepath"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/formula"
)

// otherwise are the pieces of printed formulas that the printed inputs do not give, by
// check and piece, each with the reason; every other piece must come to what is printed.
var otherwise = map[string]string{
	"area":     "several sites and ways are judged, each with numbers of its own under one symbol; those that are set as a table are redone there",
	"life":     "one symbol for every stress that is counted; usages are summed over every case",
	"membrane": "the stresses at the worst station of each seam and of the wall, under one symbol",
	"spacing":  "the distances to every neighbour are compared",
	"junction": "the stresses on both sides of the joint come from the numerical shell and from the closed form, under one symbol",
	"thermal":  "the worse of both faces and signs",

	"column: FS (C + n g0 m) ≤ P_E = π² E I/(K L)²":           "I is printed after it",
	"column: FS C ≤ P = 2πR t σ_c [1 − σ_c (K L/ρ)²/(4π² E)]": "ρ is printed after it",
	"compression":                "by branches; the worse governs, and none where the wall is pulled",
	"equivalent: σ_φl = N_x,l/t": "the larger stress of two fibres",
	"external: P_m = E t ε/R":    "read off a curve",
	"external: P_y = σ_e t/R":    "read off a curve",
	"external: UG-29":            "a clause",
	"external: UG-33":            "a clause",
}

// TestPrintedFormulasHold redoes every piece of every printed formula from the symbols
// that are printed with it, those of the pieces before it included. report.Hand leaves
// out a step that does not come to the printed answer, so that a formula of which one
// symbol means another length than its input says lost its step and nobody saw it:
// here it is a fault.
func TestPrintedFormulasHold(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(tanks, "*.toml"))
	if err != nil {
		t.Fatal(err)
	}
	used := map[string]bool{}
	for _, f := range files {
		name := strings.TrimSuffix(filepath.Base(f), ".toml")
		for _, r := range sheet(t, read(t, name)).Checks {
			for _, f := range unheld(r) {
				kind, _, _ := strings.Cut(f.piece, ": ")
				switch {
				case otherwise[kind] != "":
					used[kind] = true
				case otherwise[f.piece] != "":
					used[f.piece] = true
				default:
					t.Errorf("%s %s: %s: %s", name, report.FullID(r), f.piece, f.why)
				}
			}
		}
	}
	for piece := range otherwise {
		if !used[piece] {
			t.Errorf("%q is redone everywhere: take it off the list", piece)
		}
	}
}

// TestSymbolsMeanOneThing holds that no check has a pressure and a length, or any two
// quantities of different units, under one symbol.
func TestSymbolsMeanOneThing(t *testing.T) {
	for _, name := range []string{"demo", "bolted", "coupons", "flight", "kerosene", "life", "oxygen", "port-at-rim", "rings"} {
		for _, r := range sheet(t, read(t, name)).Checks {
			units := map[string]string{}
			for _, q := range append([]check.Quantity{r.Demand, r.Capacity}, r.Inputs...) {
				if u, ok := units[q.Symbol]; ok && u != q.Unit && q.Symbol != "" {
					t.Errorf("%s %s: %s is in %s and in %s", name, report.FullID(r), q.Symbol, u, q.Unit)
				}
				units[q.Symbol] = q.Unit
			}
		}
	}
}

// TestKnuckleFormulasHold has the knuckle's formulas in every branch.
func TestKnuckleFormulasHold(t *testing.T) {
	kerosene := text(t, "kerosene")
	for _, row := range []struct{ where, wall, want string }{
		{"thick", "6 mm", "p_c"}, {"European buckling", "1.5 mm", "p_b"}, {"thin", "0.75 mm", "p_ck"},
	} {
		src := strings.ReplaceAll(kerosene, `thickness = "6 mm"`, `thickness = "`+row.wall+`"`)
		found := 0
		for id, r := range results(parse(t, "kerosene.toml", src)) {
			if !strings.Contains(id, "/knuckle") {
				continue
			}
			for _, f := range unheld(r) {
				t.Errorf("%s %s: %s: %s", row.where, id, f.piece, f.why)
			}
			if strings.Contains(r.Formula, row.want+" = ") {
				found++
			}
		}
		if found == 0 {
			t.Errorf("%s: no knuckle is judged by %s", row.where, row.want)
		}
	}
}

// A fault is a piece of a formula that does not hold.
type fault struct{ piece, why string }

// unheld returns the pieces of the formula of a check that its printed symbols do not
// give: of sides that are equal each comes to the same, a symbol of the inputs to its
// number, and of comparisons one sets the demand against the capacity.
func unheld(r check.Result) (out []fault) {
	if s := r.Status(); s != check.Satisfied && s != check.NotSatisfied {
		return nil
	}
	kind := r.ID[strings.LastIndex(r.ID, "/")+1:]
	add := func(piece, why string) { out = append(out, fault{kind + ": " + piece, why}) }
	known := map[string]float64{r.Demand.Symbol: r.Demand.Value, r.Capacity.Symbol: r.Capacity.Value}
	for _, q := range r.Inputs {
		if v, ok := known[q.Symbol]; ok && !agree(v, q.Value) {
			add(q.Symbol+" twice", fmt.Sprintf("%g and %g", v, q.Value))
		}
		known[q.Symbol] = q.Value
	}
	compared, met := false, false
	for _, st := range report.Statements(r) {
		for from := 0; from < len(st.Sides); {
			to := from + 1
			for to < len(st.Sides) && st.Relations[to-1] == "=" {
				to++
			}
			v, why := sidesHold(st.Sides[from:to], known)
			if why != "" {
				add(st.Text, why)
			} else if len(st.Relations) > to-from-1 {
				compared = true
				for _, of := range []float64{r.Demand.Value, r.Capacity.Value, r.Demand.Value * r.Factor, r.Capacity.Value / r.Factor} {
					met = met || agree(v, of)
				}
			}
			from = to
		}
	}
	if compared && !met {
		add(r.Formula, fmt.Sprintf("no side is the demand %g or the capacity %g", r.Demand.Value, r.Capacity.Value))
	}
	return out
}

// sidesHold returns what sides that are equal come to, and why they do not; it makes
// a symbol known that has no number yet.
func sidesHold(sides []formula.Expr, known map[string]float64) (v float64, why string) {
	of := func(name string) (float64, bool) { v, ok := known[name]; return v, ok }
	v = math.NaN()
	var names []string
	for _, side := range sides {
		got, err := formula.Eval(side, of)
		s, named := side.(formula.Sym)
		switch {
		case err != nil && named:
			names = append(names, s.Name)
		case err != nil:
			return v, err.Error()
		case !math.IsNaN(v) && !agree(v, got):
			return v, fmt.Sprintf("%s gives %g, another side %g", side, got, v)
		default:
			v = got
		}
	}
	if math.IsNaN(v) {
		return v, "no number of " + strings.Join(names, ", ")
	}
	for _, s := range names {
		known[s] = v
	}
	return v, ""
}

// agree allows for the rounding of sums.
func agree(a, b float64) bool {
	return math.Abs(a-b) <= 1e-6*max(math.Abs(a), math.Abs(b)) || max(math.Abs(a), math.Abs(b)) < 1e-6
}
