package assess

import (
	"fmt"
	"math"
	"slices"

	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/material/weld"
	"proofsheet/report"
	"proofsheet/report/check"
)

// quantities returns the named results that are always there.
func (r *run) quantities() (out []report.NamedQuantity) {
	add := func(key string, v float64, unit, note string) {
		out = append(out, report.NamedQuantity{Key: key, Value: v, Unit: unit, Note: note})
	}
	add("volume", r.in.Volume(), "m3", "")
	for _, c := range r.cases {
		add("ullage_volume@"+c.name, r.in.Volume()-most(c, (*loads.State).LiquidVolume), "m3", "")
		add("surface_z@"+c.name, surface(c), "m", "")
		add("liquid_mass@"+c.name, most(c, func(s *loads.State) float64 { return s.Liquid.Mass }), "kg", "")
		out = append(out, r.sloshQuantities(c)...)
	}
	mass, note := dryMass(r.masses), ""
	if r.massErr != nil {
		mass, note = math.NaN(), r.massErr.Error()
	}
	add("dry_mass", mass, "kg", note)
	add("tank.near_pressure", r.near, "Pa", r.nearWhy)
	out = append(out, r.stabilityQuantities()...)
	seams, _, longErr, girthErr := r.cylinderSeams(r.cases[0])
	add("cylinder.hoop_efficiency", unless(longErr, seams.Long), "1", seams.LongJoint)
	add("cylinder.longitudinal_efficiency", unless(girthErr, seams.Girth), "1", seams.GirthJoint)
	for _, h := range r.ends() {
		flange := math.Pi * h.radius * h.radius * h.in.StraightFlange
		add(h.name+".depth", h.nominal0.Depth(), "m", "")
		add(h.name+".volume", h.nominal0.Volume()+flange, "m3", "straight flange included")
	}
	for _, p := range r.ports {
		at := "port." + p.in.Name
		note := ""
		if p.chordsErr != nil {
			note = p.chordsErr.Error()
		}
		long := math.Max(p.chords.OutsideMeridional, p.chords.OutsideTransverse)
		short := math.Min(p.chords.OutsideMeridional, p.chords.OutsideTransverse)
		add(at+".long_chord", unless(p.chordsErr, long), "m", note)
		add(at+".short_chord", unless(p.chordsErr, short), "m", note)
		add(at+".obliquity", unless(p.chordsErr, p.chords.Obliquity), "rad", note)
	}
	out = append(append(out, r.couponQuantities()...), r.shellQuantities()...)
	out = append(out, r.serviceEnergy()...)
	return append(out, r.proofQuantities()...)
}

// unless returns v, or NaN with an error about it; in v's own unit.
func unless(err error, v float64) float64 {
	if err != nil {
		return math.NaN()
	}
	return v
}

// basisRows returns the rule sets in force with their factors and overrides.
func (r *run) basisRows() (out []report.BasisRow) {
	out = append(out, report.BasisRow{Name: "rule", Value: r.t.Basis.Rule,
		Source: check.Source{Doc: "tank file", Where: "basis.rule", How: check.Practice}})
	written := map[string]override{}
	for _, o := range overrides(r.t.Basis) {
		written[o.key] = o
	}
	used := map[string]float64{} // with the overrides, and what follows from them
	if f, err := r.factors(material.Rule(r.t.Basis.Rule)); err == nil {
		used = map[string]float64{"yield_factor": f.YieldFactor, "ultimate_factor": f.UltimateFactor, "load_yield_factor": f.LoadYieldFactor,
			"load_ultimate_factor": f.LoadUltimateFactor, "buckling_factor": f.BucklingFactor, "proof_factor": f.ProofFactor,
			"burst_factor": f.BurstFactor, "proof_limit": f.ProofLimit}
	}
	for _, rule := range rules(r.t.Basis.Rule, r.cases) {
		_, rows, err := material.RuleListing(string(rule))
		if err != nil {
			continue // the rule is refused by every check that needs it
		}
		for _, row := range rows { // rule, factor, value, source, how
			b := report.BasisRow{Name: row[0] + ": " + row[1], Value: row[2], Source: check.Source{Doc: row[3], How: check.ParseHow(row[4])}}
			if v, ok := used[row[1]]; ok && row[0] == r.t.Basis.Rule {
				b.Value = fmt.Sprintf("%.4g", v)
			}
			if o, ok := written[row[1]]; ok && row[0] == r.t.Basis.Rule {
				b.Override, b.Instead, b.Source = true, row[2], overrideSource(o)
			}
			out = append(out, b)
		}
	}
	if o, ok := written["austenitic_90"]; ok {
		out = append(out, report.BasisRow{Name: "austenitic_90", Value: "true", Override: true, Instead: "false", Source: overrideSource(o)})
	}
	return append(out, r.couponBasisRows()...)
}

// overrideSource is what the tank file says of an override.
func overrideSource(o override) check.Source {
	return check.Source{Doc: o.source, Where: "given in the tank file", How: check.Practice}
}

// A use is a part or tube made of a material, with the wall it was ordered in.
type use struct {
	part, material string
	welds          welds
	thickness      float64 // [m]
}

// uses lists where every material is used.
func (r *run) uses() (out []use) {
	out = append(out, use{"cylinder", r.cyl.material, r.weldsOf(r.cyl), r.cyl.nominal})
	for _, h := range r.ends() {
		out = append(out, use{h.name, h.material, r.weldsOf(&h.part), h.nominal})
	}
	for _, p := range r.ports {
		out = append(out, use{"port." + p.in.Name, p.in.Tube.Material, r.tubeWelds(p), p.in.Tube.Wall})
		if in := p.in.Cover; in != nil {
			out = append(out, use{"port." + p.in.Name + " cover", in.Material, "", in.Thickness})
		}
		if f, err := fittingOf(p); p.in.Thread != nil && err == nil {
			out = append(out, use{"port." + p.in.Name + " fitting", p.in.Thread.Material, "", f.Thread.Major})
		}
	}
	return out
}

// materialSheets returns every named material as it was used: one entry for
// each row of strength it was taken from.
func (r *run) materialSheets() (out []report.MaterialSheet) {
	at := map[string]int{}
	for _, u := range r.uses() {
		in, _ := r.t.FindMaterial(u.material)
		x := r.metals.at(u.material, u.welds, u.thickness, r.hottest())
		key := fmt.Sprint(u.material, x.parent.Row, x.zone.Yield.Value, x.zone.Ultimate.Value, x.parentErr, x.zoneErr)
		if i, ok := at[key]; ok {
			out[i].Used += ", " + u.part
			continue
		}
		at[key] = len(out)
		out = append(out, r.materialSheet(in, u))
	}
	return out
}

// temperatures returns every temperature of the metal at which a strength was
// taken, rising [K].
func (r *run) temperatures() (out []float64) {
	for _, c := range r.cases {
		out = append(out, c.temperature)
	}
	if r.proof.plan != nil {
		out = append(out, r.t.Proof.Temperature)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// hottest returns the highest temperature of the metal in any case [K].
func (r *run) hottest() float64 { return hottest(r.cases) }

// jointSheets returns every named joint with what it is worth where it is used.
func (r *run) jointSheets() (out []report.JointSheet) {
	od := 2 * (r.cyl.radius + r.cyl.nominal)
	for i := range r.t.Joint {
		j := &r.t.Joint[i]
		s := report.JointSheet{Name: j.Name, Kind: j.Kind, Examination: j.Examination, Process: j.Process, Coupons: r.couponSheet(j)}
		as := func(w weld.Joint, where string, at weld.Place, note string) {
			for _, rule := range rules(r.t.Basis.Rule, r.cases) {
				e, src, err := w.EfficiencyAt(string(rule), at)
				u := report.JointUse{Place: where, Rule: string(rule), Efficiency: unless(err, e), Source: src, Note: note}
				if err != nil {
					u.Note = err.Error()
				}
				s.Uses = append(s.Uses, u)
			}
		}
		add := func(where string, at weld.Place) { as(asWeld(j), where, at, "") }
		if r.long != nil && r.long.Name == j.Name {
			add("cylinder, long seam", weld.Place{Category: "A", Longitudinal: true, Thickness: r.cyl.nominal, OutsideDiameter: od})
		}
		if r.girth != nil && r.girth.Name == j.Name {
			add("cylinder, girth seam", weld.Place{Category: "B", Thickness: r.cyl.nominal, OutsideDiameter: od})
		}
		for _, h := range r.ends() {
			if h.seam != nil && h.seam.Name == j.Name {
				w, at := r.seamOf(h)
				as(w, h.name+", seam to the cylinder", at, angleJoint(r.t.Corner(h.in)))
			}
			if h.segment != nil && h.segment.Name == j.Name {
				add(h.name+", seam inside the head", weld.Place{Category: "A", Longitudinal: true, Thickness: h.nominal, OutsideDiameter: od})
			}
		}
		if s.Uses == nil {
			s.Notes = append(s.Notes, "not used by cylinder or heads")
		}
		out = append(out, s)
	}
	return out
}

// caseSheets returns every case as it was assessed.
func (r *run) caseSheets() (out []report.CaseSheet) {
	for _, c := range r.cases {
		if c.instants != nil {
			out = append(out, r.flightSheet(c))
			continue
		}
		s := report.CaseSheet{Name: c.name, Rule: string(c.rule), People: c.people}
		s.Values = []check.Quantity{
			check.Pa("p_u", "ullage pressure", c.ullage), check.Num("n_x", "axial load factor", c.axial),
			check.Num("n_y", "lateral load factor", c.lateral),
			check.Kg("m", "liquid mass, most", most(c, func(s *loads.State) float64 { return s.Liquid.Mass })),
			check.KgPerM3("ρ", "density, most", most(c, func(s *loads.State) float64 { return s.Liquid.Density })),
			check.Num("u", "ullage, share of the volume", c.states[0].UllageFraction()),
			check.K("T", "metal", c.temperature),
		}
		if z := surface(c); !math.IsNaN(z) {
			s.Values = append(s.Values, check.M("z_s", "free surface on the axis", z))
		}
		for _, q := range c.sections {
			s.Values = append(s.Values, check.M("z", "station of the section forces", q.Station), check.N("F", "axial force, tension positive", q.Force),
				check.NM("M", "bending moment", q.Moment))
			if !math.IsNaN(q.Shear) {
				s.Values = append(s.Values, check.N("V", "shear force", q.Shear))
			}
		}
		if c.slosh != nil {
			s.Values = append(s.Values, check.M("η", "height of the slosh on the wall", *c.slosh))
		}
		if c.least < c.ullage {
			s.Values = append(s.Values, check.Pa("p_u,min", "smallest ullage pressure with the same loads", c.least))
		}
		if c.name == "meop" {
			s.Title = "highest ullage pressure, standing, fullest liquid of any case"
		}
		if c.ground {
			s.Notes = append(s.Notes, "on the ground")
		}
		for _, f := range c.forms {
			if f.form != "" {
				s.Notes = append(s.Notes, "assessed with "+f.form+" too; the worse counts")
			}
		}
		if len(c.moments()[0].states) > 1 {
			s.Notes = append(s.Notes, "both ends of the liquid's density are assessed; the worse counts")
		}
		s.Notes = append(s.Notes, r.stabilityNote(c.name))
		out = append(out, s)
	}
	return out
}
