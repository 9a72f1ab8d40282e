package material

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// minima are the room-temperature minima that a query selects.
type minima struct {
	Strength        // the leading row, each number the lowest of the rows that hold
	words    string // for the sheet
	notes    []string
}

// holds reports whether the row is for thickness t [m]; a millionth part is
// granted to rounding.
func (r Strength) holds(t float64) bool {
	return t >= r.LeastThickness*(1-1e-6) && t <= r.MostThickness*(1+1e-6) && t > 0
}

// words describes the row.
func (r Strength) words() string {
	return fmt.Sprintf("%s, %s, %.4g to %.4g mm, tested %s, %s", r.Product, r.Spec, r.LeastThickness/mm, r.MostThickness/mm, r.Direction, basisWords(r.Basis))
}

// basisWords says what a basis is.
func basisWords(basis string) string {
	switch basis {
	case "spec_min":
		return "specification minimum"
	case "A", "S":
		return basis + " basis"
	}
	return basis
}

// named reports whether the row answers to the words of the user.
func (r Strength) named(spec, product string) bool {
	has := func(s, part string) bool { return strings.Contains(strings.ToLower(s), strings.ToLower(part)) }
	return has(r.Spec, spec) && has(r.Product, product)
}

// candidates returns the rows that hold for t [m]: minima only, and where one
// row of a specification ends as the next begins, the thinner one. Where product is
// not written, a part of plate has no row of a tube if there is one of plate; a tube has the
// rows of its own product beside those that are written, as the weakest counts.
func (a *Alloy) candidates(spec, product string, tube bool, t float64) []Strength {
	rows := a.holding(spec, product, t)
	if product != "" {
		return rows
	}
	if tube {
		for _, r := range a.holding("", "", t) {
			if r.hollow() && !r.named(spec, "") {
				rows = append(rows, r)
			}
		}
		return rows
	}
	flat := func(r Strength) bool {
		return r.Basis != "typical" && r.Shown == "" && r.named(spec, "") && !r.hollow()
	}
	if slices.ContainsFunc(a.Rows, flat) { // of any thickness: thicker plate than its rows is no extrusion
		return slices.DeleteFunc(rows, Strength.hollow)
	}
	return rows
}

// holding returns the rows of minima that hold for t [m] and answer to the words.
func (a *Alloy) holding(spec, product string, t float64) []Strength {
	var out []Strength
	for _, r := range a.Rows {
		if r.Basis == "typical" || r.Shown != "" || !r.holds(t) || !r.named(spec, product) {
			continue
		}
		thinner := false
		for _, o := range a.Rows {
			thinner = thinner || o.Shown == "" && o.Spec == r.Spec && o.MostThickness == r.LeastThickness && o.holds(t) && o.named(spec, product)
		}
		if !thinner {
			out = append(out, r)
		}
	}
	return out
}

// seamless reports whether the row is of a product that has no long seam: a tube or
// an extrusion, or a bar that one is bored from.
func (r Strength) seamless() bool {
	return r.hollow() || strings.Contains(r.Product, "bar") || strings.Contains(r.Product, "forging")
}

// hollow reports whether the row is of tube or extrusion.
func (r Strength) hollow() bool { return strings.Contains(r.Product, "tub") || extruded(r.Product) }

// Seamless returns an error where every row that the query selects is of plate,
// sheet or strip, which make no shell without a long seam.
func (q Query) Seamless() error {
	a, ok := FindAlloy(q.Alloy)
	if !ok {
		return fmt.Errorf("unknown alloy %q", q.Alloy)
	}
	rows := a.holding(q.Spec, q.Product, q.Thickness)
	for _, r := range rows {
		if r.seamless() {
			return nil
		}
	}
	if len(rows) == 0 {
		return a.noRow(q.Spec, q.Product, q.Thickness)
	}
	return fmt.Errorf("%s of %s is %s, which has no shell without a long seam: write spec or product of a tube where the tables have one, own values from the tube's certificate, or the long seam", a.Name, rows[0].Spec, rows[0].Product)
}

// minima selects the row for thickness t [m]. Where several hold, the row with
// the lowest yield leads and every other number is the lowest of all of them.
// A row that lacks yield or ultimate is never filled in from another.
func (a *Alloy) minima(spec, product string, tube bool, t float64) (minima, error) {
	if len(a.Rows) > 0 && !(t > 0) {
		return minima{}, fmt.Errorf("thickness %.4g mm must be greater than zero", t/mm)
	}
	rows := a.candidates(spec, product, tube, t)
	if len(rows) == 0 {
		return minima{}, a.noRow(spec, product, t)
	}
	lead := rows[0]
	for _, r := range rows {
		if math.IsNaN(r.Yield.Value) || math.IsNaN(r.Ultimate.Value) {
			return minima{}, fmt.Errorf("%s: the row %q holds for %.4g mm but lacks yield or ultimate; name product or spec of another row", a.Name, r.words(), t/mm)
		}
		if r.Yield.Value < lead.Yield.Value || r.Yield.Value == lead.Yield.Value && r.Ultimate.Value < lead.Ultimate.Value {
			lead = r
		}
	}
	m := minima{Strength: lead, words: lead.words()}
	for _, r := range rows {
		if r.Ultimate.Value < m.Ultimate.Value {
			m.Ultimate = r.Ultimate
			m.notes = append(m.notes, "ultimate from the weaker row "+r.words())
		}
		if r.Proof1.Value < m.Proof1.Value {
			m.Proof1 = r.Proof1
		}
		if r.Elongation.Value < m.Elongation.Value {
			m.Elongation = r.Elongation
		}
	}
	if len(rows) > 1 {
		m.notes = append(m.notes, fmt.Sprintf("weakest of %d rows that hold for this thickness", len(rows)))
	}
	return m, nil
}

// noRow says which rows there are, and whether it is the words or the
// thickness that fit none.
func (a *Alloy) noRow(spec, product string, t float64) error {
	var named, all []string
	for _, r := range a.Rows {
		if r.Basis == "typical" || r.Shown != "" {
			continue
		}
		words := fmt.Sprintf("%s, %s: %.4g to %.4g mm", r.Spec, r.Product, r.LeastThickness/mm, r.MostThickness/mm)
		all = append(all, words)
		if r.named(spec, product) {
			named = append(named, words)
		}
	}
	switch {
	case len(all) == 0:
		return fmt.Errorf("%s: only typical values are published, which are never used; give own values from the certificate", a.Name)
	case len(named) == 0:
		return fmt.Errorf("%s: no row of minima is called spec %q, product %q; write one of: %s", a.Name, spec, product, strings.Join(all, "; "))
	}
	return fmt.Errorf("%s: %.4g mm is outside every row of minima (%s)", a.Name, t/mm, strings.Join(named, "; "))
}
