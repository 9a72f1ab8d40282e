package assess

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads/proof"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/shell/revolution"
)

// full returns the tank as the pump sees it, with the growth of its wall from
// the numerical shell.
func (r *run) full() (f proof.Full, w proof.Wall, err error) {
	if r.proof.plan == nil {
		return f, w, r.proof.err
	}
	if r.t.Proof.Fluid != "water" || r.proof.plan.In.Method != proof.Hydrostatic {
		return f, w, errors.New("readings are predicted for a proof with water only")
	}
	water, err := proof.WaterAt(r.t.Proof.Temperature, r.proof.plan.Setting)
	if err != nil {
		return f, w, err
	}
	f = proof.Full{Volume: r.in.Volume(), Compressibility: water.Compressibility, Expansion: water.Expansion}
	if w, f.WallExpansion, err = r.plainWall(); err != nil {
		return f, w, err
	}
	f.Growth, err = r.shellGrowth()
	return f, w, err
}

// plainWall returns the wall of the plain cylinder at the temperature of the test
// and its linear expansion [1/K].
func (r *run) plainWall() (proof.Wall, float64, error) {
	x := r.metals.at(r.cyl.material, "", r.cyl.nominal, r.t.Proof.Temperature)
	if x.parentErr != nil {
		return proof.Wall{}, math.NaN(), x.parentErr
	}
	return proof.Wall{Thickness: r.cyl.nominal, ElasticModulus: x.parent.ElasticModulus.Value, Poisson: x.parent.Poisson.Value}, x.parent.Expansion.Value, nil
}

// shellGrowth returns the volume that the whole tank grows by for each pascal,
// nominal walls, at the test's temperature [m3/Pa].
func (r *run) shellGrowth() (float64, error) {
	if r.aft.bolted() || r.fwd.bolted() {
		return math.NaN(), errors.New("growth of the tank: a bolted cover and its ring are not in the numerical shell")
	}
	w, err := r.shellAt(shellKey{nominal: true, T: r.t.Proof.Temperature})
	if err != nil {
		return math.NaN(), err
	}
	l := revolution.Uniform(1)
	for end, node := range map[string]int{"aft": 0, "forward": w.ends} {
		if a := w.area[end]; a > 0 {
			force := a
			if end == "aft" {
				force = -a
			}
			l.Forces = append(l.Forces, revolution.Force{Node: node, Axial: force})
		}
	}
	s, err := w.model.Solve(l)
	if err != nil {
		return math.NaN(), err
	}
	return s.VolumeGrowth, nil
}

// closedGrowth returns the same from closed forms, the walls' membranes with the
// junction of a cone of the cylinder's wall; an error where a part has none.
func (r *run) closedGrowth() (float64, error) {
	x := r.metals.at(r.cyl.material, "", r.cyl.nominal, r.t.Proof.Temperature)
	if x.parentErr != nil {
		return math.NaN(), x.parentErr
	}
	w := proof.Wall{Thickness: r.cyl.nominal, ElasticModulus: x.parent.ElasticModulus.Value, Poisson: x.parent.Poisson.Value}
	sum, err := w.CylinderGrowth(r.cyl.radius+r.cyl.nominal/2, r.t.Cylinder.Length)
	if err != nil {
		return math.NaN(), err
	}
	for _, h := range r.ends() {
		g, err := r.headGrowth(h)
		if err != nil {
			return math.NaN(), fmt.Errorf("growth of the %s: %w", strings.ToLower(h.title), err)
		}
		sum += g
	}
	return sum, nil
}

// growthNote says where the growth comes from and what closed forms make of it.
func (r *run) growthNote() string {
	closed, err := r.closedGrowth()
	if err != nil {
		return "numerical shell, nominal walls; no closed form beside it: " + strings.ReplaceAll(err.Error(), "\n", "; ")
	}
	shell, err := r.shellGrowth()
	if err != nil {
		return err.Error()
	}
	return fmt.Sprintf("numerical shell, nominal walls; closed forms of membranes give %.3f times that", closed/shell)
}

// headGrowth returns what a head and its straight flange grow in volume per
// pressure [m3/Pa].
func (r *run) headGrowth(h *headPart) (float64, error) {
	x := r.metals.at(h.material, "", h.nominal, r.t.Proof.Temperature)
	if x.parentErr != nil {
		return math.NaN(), x.parentErr
	}
	if h.in.Bulge == "inward" {
		return math.NaN(), errors.New("an inward head has no closed form")
	}
	w := proof.Wall{Thickness: h.nominal, ElasticModulus: x.parent.ElasticModulus.Value, Poisson: x.parent.Poisson.Value}
	mid := h.radius + h.nominal/2
	flange, err := w.CylinderGrowth(mid, h.in.StraightFlange)
	if err != nil {
		return math.NaN(), err
	}
	g := math.NaN()
	switch h.in.Shape {
	case "hemisphere":
		g, err = w.HemisphereGrowth(mid)
	case "ellipsoid":
		g, err = w.EllipsoidGrowth(mid, h.nominal0.Depth()+h.nominal/2)
	case "cone":
		geometry := h.nominal0.Geometry()
		g, err = w.ConeGrowth(proof.Cone{Radius: mid, TipRadius: geometry.TipDiameter / 2, HalfAngle: geometry.HalfAngle, CylinderThickness: r.cyl.nominal})
	default:
		err = errors.New("a " + h.in.Shape + " has no closed form")
	}
	return flange + g, err
}

// proofQuantities returns the named results of the proof test. What the liquid
// alone stores needs no wall.
func (r *run) proofQuantities() (out []report.NamedQuantity) {
	f, _, err := r.full()
	note := ""
	if err == nil {
		note = r.growthNote()
	}
	add := func(key, unit string, v float64, err error) {
		q := report.NamedQuantity{Key: "proof." + key, Unit: unit, Value: unless(err, v), Note: note}
		if err != nil {
			q.Note = strings.ReplaceAll(err.Error(), "\n", "; ")
		}
		out = append(out, q)
	}
	var injected proof.Injected
	var energy, liquid proof.Stored
	stiffness, drift := math.NaN(), math.NaN()
	liquidErr := errors.New("no plan, or not water")
	if plan := r.proof.plan; plan != nil {
		p := plan.Setting - plan.GaugeUncertainty
		high := plan.Top + 2*plan.GaugeUncertainty + plan.Overshoot // energy is never understated
		if err == nil {
			var e1, e2, e3, e4 error
			injected, e1 = f.Injected(p)
			stiffness, e2 = f.Stiffness(p)
			drift, e3 = f.Drift(p)
			energy, e4 = f.Energy(high)
			err = errors.Join(e1, e2, e3, e4)
		}
		f.Growth = 0
		liquid, liquidErr = f.Energy(high)
	}
	add("volume_growth", "m3", injected.Wall, err)
	add("injected_volume", "m3", injected.Total, err)
	add("stiffness", "m3/Pa", stiffness, err)
	add("drift", "Pa/K", drift, err)
	growth := note
	note = "of the test liquid alone"
	add("liquid_energy", "J", liquid.Liquid, liquidErr)
	note = growth
	add("wall_energy", "J", energy.Wall, err)
	return out
}

// proofSheet returns the plan for the sheet; nil where none may be issued.
func (r *run) proofSheet() *report.Proof {
	p := r.proof.plan
	if ok, _ := r.proof.issued(); !ok {
		return nil
	}
	in := r.t.Proof
	s := &report.Proof{Method: in.Method, Fluid: in.Fluid, Orientation: in.Orientation, Temperature: in.Temperature,
		Pressure: p.Setting, GaugeHeight: in.GaugeHeight, Examination: p.Examination, GaugeLeast: p.GaugeLeast, GaugeMost: p.GaugeMost,
		Hold: p.Hold, Barrier: true,
		Growth: math.NaN(), Injected: math.NaN(), Stiffness: math.NaN(), Drift: math.NaN(),
		StoredEnergy: math.NaN(), FluidEnergy: math.NaN(), WallEnergy: math.NaN(),
		Values: []check.Quantity{check.Pa("u_g", "uncertainty of the gauge", p.GaugeUncertainty), check.Pa("o", "allowed overshoot", p.Overshoot),
			check.Pa("p_top", "least pressure at the highest point", p.Top)},
		Notes: []string{"Hold: " + p.HoldReason + ".", "Examination: " + p.ExaminationFrom + ".",
			"The gauge is taken to be right within " + r.shown(check.Pa("", "", p.GaugeUncertainty), report.Down) + "; a gauge of 1 % of a full scale of twice the setting errs by twice as much: choose or state one that holds this."},
	}
	s.Notes = append(s.Notes, coldWater(in)...)
	for i, pt := range p.Points {
		s.Points = append(s.Points, report.ProofPoint{Name: pt.Name, Z: r.proof.points[i].z, Service: pt.Service, Factor: pt.Factor,
			Required: pt.Required, Low: pt.Low, High: pt.High})
	}
	if open := r.openAtProof(); open != nil {
		s.Notes = append(s.Notes, "Not assessed at the proof pressure: "+strings.Join(open, ", ")+". They may yield in the test: nobody near, strains read from afar.")
	}
	s.Notes = append(s.Notes, r.corrections()...)
	if relief, err := p.Relief(r.proof.use); err != nil {
		s.Relief = math.NaN()
		s.Notes = append(s.Notes, "Relief: "+err.Error()+".")
	} else {
		s.Relief = relief
	}
	s.Notes = append(s.Notes, r.screening(r.proof)...)
	r.proofReadings(s)
	r.proofEnergy(s)
	r.proofLimits(s)
	s.Sequence = r.sequence(s)
	for _, c := range proof.Cautions(proof.Situation{Contents: r.t.Contents.Fluid, Families: r.families(), Method: proof.Method(in.Method)}) {
		s.Cautions = append(s.Cautions, c.Text)
	}
	return s
}

// coldWater says that the water of a test is colder than common practice keeps it. The
// brittleness of the metal is a check of its own.
func coldWater(in tank.Proof) []string {
	const least = 15 + 273.15 // [K], practice
	if in.Gas() || in.Temperature >= least {
		return nil
	}
	return []string{fmt.Sprintf("Water at %.4g °C is colder than the 15 to 48 °C that common practice keeps for water and metal. Brittleness is judged at this temperature; what is left: dew on the wall looks like a leak, and water near its densest hardly moves the pressure or turns its drift, so hold it to this temperature or warm it.", in.Temperature-273.15)}
}

// openAtProof names what no check of this version holds at the proof pressure.
func (r *run) openAtProof() (out []string) {
	for _, c := range r.unbuilt {
		if strings.HasSuffix(c.ID, "/tip") || strings.HasSuffix(c.ID, "/flange") {
			out = append(out, c.ID)
		}
	}
	for _, c := range r.proof.ports {
		if c.Status() == check.NotAssessed {
			out = append(out, c.ID)
		}
	}
	return out
}

// corrections says where the temperature correction of each material comes
// from: strength at the test over strength at the hottest case.
func (r *run) corrections() (out []string) {
	seen := map[string]bool{}
	for _, pt := range r.proof.plan.Points {
		for _, q := range pt.Ratios {
			s := fmt.Sprintf("Temperature correction of %s: %.5f, the larger of yield and tensile strength at the test over those at the hottest case", q.Material, q.Value)
			if q.Value < 1 { // as proof.CorrectionFactor
				s += "; a test warmer than service counts as 1, its stress is held to the strength at the test"
			}
			s += "."
			if !seen[s] {
				seen[s] = true
				out = append(out, s)
			}
		}
	}
	return out
}

// proofReadings fills the steps with what to expect at each: strains of the plain
// cylinder, and in water the volumes.
func (r *run) proofReadings(s *report.Proof) {
	plan := r.proof.plan
	for _, st := range plan.Steps {
		s.Steps = append(s.Steps, report.Unpredicted(st.Name, st.Cycle, st.Pressure, st.Hold))
	}
	s.HoldRead = proof.HoldReadings(plan.Hold)
	r.strainReadings(s)
	if plan.In.Method == proof.Pneumatic {
		s.Notes = append(s.Notes, "Volumes say nothing in gas: strains, read from afar, are the only warning of a yield.")
		return
	}
	f, _, err := r.full()
	var readings []proof.Reading
	if err == nil {
		readings, err = plan.Readings(f)
	}
	if err != nil {
		s.Notes = append(s.Notes, "Volumes are not predicted: "+strings.ReplaceAll(err.Error(), "\n", "; ")+". The record of such a test stays open: no stiffness is known to lay the measured one beside.")
		return
	}
	for i, q := range readings {
		row := &s.Steps[i]
		row.InjectedVolume, row.FluidVolume, row.Added, row.StopBand = q.Injected.Total, q.WithoutWall, q.Added, q.StopBand
	}
	s.Notes = append(s.Notes, "Growth of the wall: "+r.growthNote()+". Ports and supports are not in it.")
}

// strainReadings fills in what gauges on the outside of the plain cylinder show, and
// between which stations.
func (r *run) strainReadings(s *report.Proof) {
	s.PlainFrom, s.PlainTo = math.NaN(), math.NaN()
	w, _, err := r.plainWall()
	var strains []proof.Strains
	if err == nil {
		strains, err = r.proof.plan.Strains(w, r.cyl.radius)
	}
	clear := w.PlainFrom(r.cyl.radius + r.cyl.nominal/2)
	if length := r.t.Cylinder.Length; err == nil && !(clear < length-clear) {
		err = fmt.Errorf("no place of the cylinder is %s clear of both its seams", r.shown(check.M("", "", clear), report.Up))
	}
	if err != nil {
		s.Notes = append(s.Notes, "Strains are not predicted: "+strings.ReplaceAll(err.Error(), "\n", "; ")+".")
		return
	}
	s.PlainFrom, s.PlainTo = clear, r.t.Cylinder.Length-clear
	for i, ε := range strains {
		row := &s.Steps[i]
		row.HoopStrain, row.AxialStrain, row.DiameterGrowth = ε.Hoop, ε.Axial, ε.DiameterGrowth
	}
}
