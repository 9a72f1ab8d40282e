package assess

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material"
	"proofsheet/report"
	"proofsheet/report/check"
)

// confirmation stands beside every value that was recalled and not seen.
const confirmation = "confirm against the certificate"

// A materialPage collects what is shown of one material.
type materialPage struct {
	report.MaterialSheet
	names []string // of the values, without the temperatures
}

// add shows a value; one that nobody stated is left out.
func (p *materialPage) add(symbol, name, unit string, v material.Value) {
	if math.IsNaN(v.Value) && v.Source.Doc == "" {
		return
	}
	if v.Source.How == check.Memory {
		where := confirmation
		if symbol == "S" { // the rule was recalled, not a strength
			where = "confirm against the standard"
		}
		v.Note = joinNotes(v.Note, where)
	}
	p.names = append(p.names, name)
	p.Values = append(p.Values, report.ValueRow{Quantity: check.Quantity{Symbol: symbol, Name: name, Value: v.Value, Unit: unit}, Source: v.Source, Note: v.Note})
}

// addAt shows a value at T [K], in the row of the same value at another one
// where there is such a row.
func (p *materialPage) addAt(symbol, name, unit string, T float64, v material.Value) {
	before := len(p.Values)
	p.add(symbol, name, unit, v)
	if len(p.Values) == before {
		return
	}
	last := &p.Values[before]
	last.Quantity.Name = fmt.Sprintf("%s at %.4g °C", name, T-273.15)
	for i := range before {
		if old := &p.Values[i]; p.names[i] == name && old.Quantity.Value == last.Quantity.Value && old.Source == last.Source && old.Note == last.Note {
			old.Quantity.Name += fmt.Sprintf(", %.4g °C", T-273.15)
			p.Values, p.names = p.Values[:before], p.names[:before]
			return
		}
	}
}

// joinNotes puts two notes together.
func joinNotes(a, b string) string {
	if a == "" || b == "" {
		return a + b
	}
	return a + "; " + b
}

// materialSheet returns all that the checks took of a material in one use.
func (r *run) materialSheet(in tank.Material, u use) report.MaterialSheet {
	x := r.metals.at(u.material, u.welds, u.thickness, r.hottest())
	p := &materialPage{MaterialSheet: report.MaterialSheet{Name: in.Name, Alloy: in.Alloy, Certificate: in.Certificate, Used: u.part, Row: x.parent.Row}}
	if in.Own() {
		p.Alloy = "own values"
	}
	if x.parentErr != nil {
		p.Notes = append(p.Notes, "not assessed: "+x.parentErr.Error())
		return p.MaterialSheet
	}
	r.addStrengths(p, u)
	p.add("A", "elongation", "1", x.parent.Elongation)
	for _, T := range r.temperatures() {
		if y := r.metals.at(u.material, u.welds, u.thickness, T); y.parentErr == nil {
			p.addAt("E", "modulus of elasticity", "Pa", T, y.parent.ElasticModulus)
		}
	}
	p.addAt("α", "mean expansion from 20 °C", "1/K", r.hottest(), x.parent.Expansion)
	p.add("ν", "Poisson's ratio", "1", x.parent.Poisson)
	p.add("ρ", "density", "kg/m3", x.parent.Density)
	for _, T := range r.temperatures() {
		r.addAllowables(p, in, u, T)
	}
	if x.zoneErr != nil {
		p.Notes = append(p.Notes, "weld zone not assessed: "+x.zoneErr.Error())
	}
	p.Notes = append(append(p.Notes, x.parent.Notes...), zoneNotes(x)...)
	p.Notes = append(append(p.Notes, toughnessNotes(in.Alloy)...), givenNotes(in)...)
	return p.MaterialSheet
}

// addStrengths shows the minima at every temperature, of the parent and of the
// zone of its weld.
func (r *run) addStrengths(p *materialPage, u use) {
	for _, T := range r.temperatures() {
		y := r.metals.at(u.material, u.welds, u.thickness, T)
		if y.parentErr != nil {
			p.Notes = append(p.Notes, fmt.Sprintf("not assessed at %.4g °C: %v", T-273.15, y.parentErr))
			continue
		}
		p.addAt("R_p0.2", "yield strength", "Pa", T, y.parent.Yield)
		p.addAt("R_p1.0", "1 % proof strength", "Pa", T, y.parent.Proof1)
		p.addAt("R_m", "tensile strength", "Pa", T, y.parent.Ultimate)
		if y.zoneErr == nil {
			p.addAt("R_p0.2,w", "yield strength in the weld zone", "Pa", T, y.zone.Yield)
			p.addAt("R_m,w", "tensile strength in the weld zone", "Pa", T, y.zone.Ultimate)
		}
	}
}

// addAllowables shows the allowable of every rule in force at T [K], with its
// terms and the one that governs.
func (r *run) addAllowables(p *materialPage, in tank.Material, u use, T float64) {
	for _, rule := range rules(r.t.Basis.Rule, r.cases) {
		a := r.allowAt(in.Name, u.welds, u.thickness, T, rule, nil)
		for _, row := range []struct {
			where string
			l     material.Limits
			err   error
		}{{"", a.parent, a.parentErr}, {" in the weld zone", a.zone, a.zoneErr}} {
			if row.err != nil {
				continue
			}
			var terms []string
			for _, t := range row.l.Terms {
				terms = append(terms, fmt.Sprintf("%s = %.1f MPa", t.Symbol, t.Value/1e6))
			}
			note := joinNotes("least of "+strings.Join(terms, ", ")+"; governs: "+row.l.Governs, joinNotes(row.l.Chosen, row.l.Note))
			p.addAt("S", fmt.Sprintf("allowable by %s%s", rule, row.where), "Pa", T, material.Value{Value: row.l.S, Source: row.l.Source, Note: note})
		}
	}
}

// toughnessNotes shows what is known of the toughness of an alloy; no check
// uses it.
func toughnessNotes(alloy string) (notes []string) {
	a, ok := material.FindAlloy(alloy)
	if !ok {
		return nil
	}
	for _, k := range a.Toughness {
		text := fmt.Sprintf("toughness %s %.3g MPa √m at %.4g K, shown only: %s (%s)", k.Quantity, k.Toughness.Value/1e6, k.Temperature, k.Toughness.Source.Doc, k.Toughness.Source.How)
		if k.Toughness.Source.How == check.Memory {
			text = joinNotes(text, confirmation)
		}
		notes = append(notes, joinNotes(text, k.Toughness.Note))
	}
	return notes
}
