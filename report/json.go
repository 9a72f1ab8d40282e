package report

import (
	"bytes"
	"encoding/json"
	"fmt"

	"proofsheet/report/check"
)

// attachedInputs is how many inputs of checks are embedded; they take about a
// megabyte.
const attachedInputs = 50000

// Attached returns the sheet in the JSON form in which it is embedded: whole, but of
// a sheet with very many inputs those of checks that were made are left out, and so
// are indents. The pages print the inputs of each check's least margin.
func (s *Sheet) Attached() ([]byte, error) {
	inputs := 0
	for _, r := range s.Checks {
		inputs += len(r.Inputs)
	}
	if inputs <= attachedInputs {
		return s.JSON()
	}
	form, err := s.form()
	if err != nil {
		return nil, err
	}
	for i, r := range s.Checks {
		if r.Status() != check.NotAssessed {
			form.Checks[i].Inputs = []jsonQuantity{}
		}
	}
	return write(form, "")
}

// JSON returns the sheet in its JSON form, indented, with a closing newline.
func (s *Sheet) JSON() ([]byte, error) {
	form, err := s.form()
	if err != nil {
		return nil, err
	}
	return write(form, "  ")
}

func write(form *jsonSheet, indent string) ([]byte, error) {
	var out bytes.Buffer
	e := json.NewEncoder(&out)
	e.SetEscapeHTML(false)
	e.SetIndent("", indent)
	if err := e.Encode(form); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// MarshalJSON returns the sheet in its JSON form.
func (s *Sheet) MarshalJSON() ([]byte, error) {
	form, err := s.form()
	if err != nil {
		return nil, err
	}
	return json.Marshal(form)
}

func (s *Sheet) form() (*jsonSheet, error) {
	if err := s.Consistent(); err != nil {
		return nil, err
	}
	quantities, err := quantitiesJSON(s.Quantities)
	if err != nil {
		return nil, err
	}
	f := &jsonSheet{
		Format: Format, Program: jsonProgram(s.Program),
		Tank:    jsonTank{s.Tank.File, s.Tank.SHA256, []jsonFile{}, s.Block.Title, s.Block.Number, s.Block.Revision},
		Verdict: s.Verdict.String(), People: s.People, Quantities: quantities,
		Checks: []jsonCheck{}, Conditions: []jsonCondition{}, Proof: proofJSON(s.Proof),
		Cautions: append([]string{}, s.Cautions...), Notes: append([]string{}, s.Notes...),
	}
	if s.Governing != "" {
		f.Governing = &s.Governing
	}
	for _, file := range s.Tank.Files {
		f.Tank.Files = append(f.Tank.Files, jsonFile(file))
	}
	for _, r := range s.Checks {
		f.Checks = append(f.Checks, checkJSON(r))
	}
	for _, c := range s.Conditions {
		f.Conditions = append(f.Conditions,
			jsonCondition{c.Case, c.Part, num(c.Z), num(c.Pressure), num(c.Temperature)})
	}
	return f, nil
}

// quantitiesJSON writes the named quantities as one object in their order: a
// map would lose it. A name that comes twice is an error.
func quantitiesJSON(qs []NamedQuantity) (json.RawMessage, error) {
	var out bytes.Buffer
	seen := map[string]bool{}
	out.WriteByte('{')
	for i, q := range qs {
		if seen[q.Key] {
			return nil, fmt.Errorf("quantity %q is given twice", q.Key)
		}
		seen[q.Key] = true
		key, err := json.Marshal(q.Key)
		if err != nil {
			return nil, err
		}
		body, err := json.Marshal(struct {
			Value num    `json:"value"`
			Unit  string `json:"unit"`
			Note  string `json:"note,omitempty"`
		}{num(q.Value), q.Unit, q.Note})
		if err != nil {
			return nil, err
		}
		if i > 0 {
			out.WriteByte(',')
		}
		out.Write(key)
		out.WriteByte(':')
		out.Write(body)
	}
	out.WriteByte('}')
	return out.Bytes(), nil
}

// checkJSON returns a check; one that does not arise has no numbers, and one
// that could not be made says why in its note.
func checkJSON(r check.Result) jsonCheck {
	c := jsonCheck{
		ID: r.ID, Case: r.Case, Rule: r.Rule, Title: r.Title, Formula: r.Formula, Inputs: []jsonQuantity{},
		Margin: num(r.Margin()), Status: r.Status().String(), Note: Remark(r),
		Source: jsonSource{r.Source.Doc, r.Source.Where, r.Source.How.String()},
	}
	if r.Time != nil {
		t := num(*r.Time)
		c.Time = &t
	}
	for _, q := range r.Inputs {
		c.Inputs = append(c.Inputs, *quantityJSON(q))
	}
	if r.Status() == check.NotApplicable {
		return c
	}
	c.Demand, c.Capacity = quantityJSON(r.Demand), quantityJSON(r.Capacity)
	if r.Factor > 0 {
		f := num(r.Factor)
		c.Factor = &f
	}
	return c
}

// quantityJSON returns nil for a quantity that nobody filled in.
func quantityJSON(q check.Quantity) *jsonQuantity {
	if q == (check.Quantity{}) {
		return nil
	}
	return &jsonQuantity{q.Symbol, q.Name, num(q.Value), q.Unit}
}

func proofJSON(p *Proof) *jsonProof {
	if p == nil {
		return nil
	}
	out := &jsonProof{Pressure: num(p.Pressure), Steps: []jsonStep{}, StoredEnergy: num(p.StoredEnergy), Barrier: p.Barrier}
	for _, s := range p.Steps {
		out.Steps = append(out.Steps, jsonStep{num(s.Pressure), num(s.Hold), num(s.InjectedVolume), num(s.HoopStrain),
			num(s.AxialStrain), num(s.DiameterGrowth), num(s.Added), num(s.StopBand)})
	}
	if p.StandOff != nil {
		d := num(*p.StandOff)
		out.StandOff = &d
	}
	return out
}
