package assess

import (
	"fmt"
	"math"
	"path/filepath"
	"slices"
	"strings"

	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/report"
	"proofsheet/report/check"
)

// sheet gathers the assessment. Nothing is computed after it.
func (r *run) sheet() *report.Sheet {
	t := r.t
	section, settled := r.beside()
	s := &report.Sheet{
		Program: report.Program{Name: "proofsheet", Version: r.o.Version},
		Block: report.TitleBlock{Title: t.Sheet.Title, Number: t.Sheet.Number, Revision: t.Sheet.Revision, Serial: t.Sheet.Serial,
			Project: t.Sheet.Project, Date: t.Sheet.Date, Prepared: t.Sheet.Prepared, Checked: t.Sheet.Checked, Approved: t.Sheet.Approved},
		Units: t.Sheet.Units, Paper: t.Sheet.Paper,
		VerdictRule: t.Basis.Rule, People: r.people(),
		Checks: r.checks, Conditions: r.conditions(), Quantities: r.quantities(), Permissible: r.parts,
		Basis: r.basisRows(), Materials: r.materialSheets(), Joints: r.jointSheets(), Cases: r.caseSheets(),
		PeopleBox: r.peopleBox(), Cautions: r.cautionList(), Notes: r.notes(), Recalled: r.recalled(),
		Assumptions: append(assumptions(), r.shellWords()), NotCovered: notCovered(),
		Section: section(), Charts: slices.Concat(r.meridianCharts(), r.lineChart(), r.flightCharts()),
		Proof: r.proofSheet(),
	}
	for _, d := range t.Defaults {
		s.Defaults = append(s.Defaults, report.Row{Name: d.Key, Value: d.Value, Note: d.Why})
	}
	s.Defaults = append(s.Defaults, r.columnDefaults()...)
	s.Defaults = append(s.Defaults, r.zoneProcesses(r.cases[0].temperature)...)
	var all [][]byte
	for i, f := range t.Files() {
		all = append(all, f.Data)
		name := filepath.Base(f.Name)
		s.Files = append(s.Files, report.Attachment{Name: name, Data: f.Data, SHA256: digest(f.Data)})
		if i > 0 {
			s.Tank.Files = append(s.Tank.Files, report.FileInfo{Name: name, SHA256: digest(f.Data)})
		}
	}
	s.Tank.File, s.Tank.SHA256, s.Tank.Combined = filepath.Base(t.File), digest(t.Text), digest(all...)
	s.Verdict, s.Governing = settled().Verdict, settled().Governing
	return s
}

// beside begins what takes long over many cases and needs nothing of the rest: the
// drawing and the verdict over all checks.
func (r *run) beside() (section func() *report.Section, settled func() *report.Sheet) {
	own := *r
	own.model = r.fork()
	return begin(own.section), begin(func() *report.Sheet {
		s := &report.Sheet{Checks: r.checks}
		s.Settle()
		return s
	})
}

// people returns who may be about while the tank is under pressure: with one
// case for which nobody may be near, nobody.
func (r *run) people() string {
	for _, c := range r.cases {
		if c.people == "clear" {
			return "clear"
		}
	}
	return "near"
}

// peopleBox says who may stand near this tank, and when.
func (r *run) peopleBox() []string {
	var box, clear, all []string
	for _, c := range r.cases {
		all = append(all, c.name)
		if c.people == "clear" {
			clear = append(clear, c.name)
		}
	}
	if r.near > 0 {
		box = append(box, fmt.Sprintf("By the %s rule the tank is satisfied up to %s of ullage pressure, standing on the pad at its fullest (%s).",
			r.nearRule(), bar(r.near), r.nearWhy))
		if clear != nil {
			box = append(box, "Nobody may be near in: "+strings.Join(clear, ", ")+".")
		}
	} else {
		box = append(box, "No ullage pressure is shown at which somebody may stand near: "+r.nearWhy+".",
			"So nobody may be near in any case: "+strings.Join(all, ", ")+". A case called near is only assessed by the rule for people near.")
	}
	box = append(box, "Nobody stands near before the tank has passed its proof test.")
	if ok, _ := r.proof.issued(); !ok {
		box = append(box, "No proof plan is issued: the tank is not tested as it is.")
	} else if p := r.proof.plan; p.Examination > 0 {
		box = append(box, "During the proof: nobody near while pressure rises, before the hold is passed, or above "+bar(p.Examination)+" at the gauge.")
	} else {
		box = append(box, "During the proof: nobody near at any pressure; read gauges and look from afar.")
	}
	return append(box, "Local law and the person in charge decide; this box only limits them further.")
}

// bar prints a pressure rounded down, for sentences.
func bar(p float64) string { return fmt.Sprintf("%.2f bar", math.Floor(p/1e3)/100) }

// cautionList returns what stands on page 1.
func (r *run) cautionList() []string {
	out := slices.Concat(r.cautions, r.tubeCautions(), r.temperCautions(), r.coldCautions(), r.couponCautions())
	for _, p := range r.ports {
		if r.closesTip(p) { // no opening: it has no cut-out to warn of
			continue
		}
		out = append(out, p.chords.Cautions...)
		if p.chordsErr != nil {
			out = append(out, errOf(p, p.chordsErr).Error())
		}
	}
	for _, h := range r.ends() {
		if sharp(h) && !h.bolted() {
			out = append(out, h.title+": a sharp corner at its joint. It bends far beyond what the thickness rule sees; weld it with full penetration, look at both faces after the proof.")
		}
	}
	for _, h := range r.ends() {
		if h.in.Bulge == "inward" && !h.bolted() && h.in.Shape != "flat" && h.in.Shape != "cone" {
			how := "Fitted into the cylinder and lapped, the step between the walls bends both and the weld carries the head in shear: neither is in this sheet. Write the kind of lap in its joint, and its fillets are held."
			if h.lapped() {
				how = "Lapped to the cylinder, the step between the walls bends both: that is not in this sheet. Its fillets are held in shear, as full ones: legs as long as the thinner wall."
			}
			out = append(out, h.title+": it bulges inward and is counted as meeting the cylinder in line, as a machined ring with both walls on it does. "+how)
		}
	}
	if r.t.Contents.LeastUllage == 0 {
		out = append(out, "No least ullage is kept: a closed tank without gas is pressed up by every degree that it warms, and only its relief device holds it.")
	}
	out = append(append(out, r.stationCautions()...), r.notExamined()...)
	contents := r.t.Contents.Fluid
	for _, c := range proof.Cautions(proof.Situation{Contents: contents, Families: r.families(), Method: proof.Method(r.t.Proof.Method)}) {
		out = append(out, c.Text)
	}
	return out
}

// notExamined warns of joints without examination under the European rule.
func (r *run) notExamined() []string {
	if !slices.Contains(rules(r.t.Basis.Rule, r.cases), material.VesselEU) {
		return nil
	}
	var names []string
	for _, j := range r.t.Joint {
		if j.Examination == "none" {
			names = append(names, j.Name)
		}
	}
	if names == nil {
		return nil
	}
	return []string{"Not examined: joint " + strings.Join(names, ", ") + ". By the European rule the tank is then of testing group 4, for few steels and small sizes, which this sheet does not check; the allowable is taken times 0.9, the proof at 2.2 times the pressure, and aluminium is refused."}
}

// families returns the families of every alloy of the tank, each once.
func (r *run) families() (out []string) {
	for _, m := range r.t.Material {
		family := m.Family
		if a, ok := material.FindAlloy(m.Alloy); ok {
			family = a.Family
		}
		known := false
		for _, f := range out {
			known = known || f == family
		}
		if !known {
			out = append(out, family)
		}
	}
	return out
}

// notes returns what the reader must know beside the checks.
func (r *run) notes() []string {
	near := fmt.Sprintf("Highest ullage pressure with people near: %s (%s).", bar(r.near), r.nearWhy)
	if !(r.near > 0) {
		near = "No ullage pressure is shown at which people may be near: " + r.nearWhy + "."
	}
	out := []string{near,
		"Checks named in the sheet as not assessed were not made; the tank is not satisfied on them.",
	}
	out = append(out, r.storedNote())
	if ok, why := r.proof.issued(); !ok {
		out = append(out, "No proof plan is issued: "+why+".")
	}
	out = append(append(out, r.groundNotes()...), r.collapseNotes()...)
	out = append(append(out, r.alignmentNotes()...), r.interactionNotes()...)
	out = append(append(out, r.sloshNotes()...), r.ringsNote()...)
	for _, c := range r.cases {
		for _, s := range c.sections {
			if c.lateral > 0 && math.IsNaN(s.Shear) {
				out = append(out, "Case "+c.name+": a lateral load factor without shear_force takes shear from the tank alone; the rest of the stack's is missing.")
			}
		}
	}
	return out
}

// recalled lists what comes from memory beside the sources of the checks and of
// the materials, which say so themselves: joint efficiencies and proof factors.
func (r *run) recalled() (out []string) {
	seen := map[string]bool{}
	add := func(what string, src check.Source) {
		if s := fmt.Sprintf("%s: %s, %s", what, src.Doc, src.Where); src.How == check.Memory && !seen[s] {
			seen[s] = true
			out = append(out, s)
		}
	}
	for _, j := range r.jointSheets() {
		for _, u := range j.Uses {
			add("efficiency of joint "+j.Name+" by "+u.Rule, u.Source)
		}
	}
	for _, p := range r.proof.rules {
		add("proof factor of "+p.Rule, p.Source)
		add("limit at proof of "+p.Rule, p.LimitSource)
	}
	return out
}

// assumptions lists what the methods take for granted.
func assumptions() []string {
	return []string{
		"Shells of revolution, thin walls, linear elastic; membrane stress clear of edges.",
		"Walls for strength are nominal less under-tolerance, less forming thinning, less corrosion; radii grow by the corrosion; volumes, masses and cut-outs use nominal dimensions.",
		"The liquid is at rest and incompressible, its free plane square to what it feels; slosh comes on top where a case writes slosh_amplitude, as its linear first mode; transients come on top.",
		"Pressure is inside minus outside. The axial load factor is what the liquid feels, gravity included.",
		"The axial force in the wall comes from the free body of everything forward of the cut, never from the local pressure.",
		"An inward head takes from the tank what its face on the liquid's side encloses.",
		"Welds, materials and dimensions are as the tank file and its certificates say.",
	}
}

// notCovered lists what nobody looked at.
func notCovered() []string {
	return []string{
		"Everything listed as not assessed.",
		"Sloshing beyond the linear first mode, and beyond its frequency in a case without slosh_amplitude; water hammer of a port without a line, vibration, thermal gradients beside a change at the liquid's level, fire, corrosion in service, handling damage.",
		"Supports, lugs, brackets, skirts, lines and valves.",
		"Compliance with any code: none is claimed.",
	}
}

// conditions returns pressure and temperature at both ends of each part and at
// the free surface, in every state.
func (r *run) conditions() (out []report.Condition) {
	lo, hi := r.in.Bounds()
	L := r.t.Cylinder.Length
	for _, c := range r.cases {
		add := func(part string, z float64) {
			p := math.Inf(-1)
			for _, s := range c.states {
				p = math.Max(p, s.PressureWorst(z))
			}
			out = append(out, report.Condition{Case: c.name, Part: part, Z: z, Pressure: p, Temperature: c.temperature})
		}
		for _, e := range []struct {
			part string
			a, b float64
		}{{"head.aft", lo, 0}, {"cylinder", 0, L}, {"head.forward", L, hi}} {
			add(e.part, e.a)
			shown := map[float64]bool{} // forms of a case may have one surface
			for _, s := range c.states {
				if z := s.SurfaceZ(); z > e.a && z < e.b && !shown[z] {
					shown[z] = true
					add(e.part, z)
				}
			}
			add(e.part, e.b)
		}
	}
	return out
}

// surface returns where the free plane meets the axis in the first state [m].
func surface(c *loadCase) float64 { return c.states[0].SurfaceZ() }

// most returns the largest of a value over the states of a case.
func most(c *loadCase, f func(s *loads.State) float64) float64 {
	m := math.Inf(-1)
	for _, s := range c.states {
		m = math.Max(m, f(s))
	}
	return m
}
