package pdf

import (
	"fmt"
	"math"

	"proofsheet/report"
	"proofsheet/report/check"
)

// proof sets the plan of the proof test, its chart and its log form.
func (p *paper) proof() {
	p.chapter("Proof test")
	if p.sheet.Proof == nil {
		p.paragraph("No plan of a proof test is issued; the checks and notes say why. Without a passed proof test nobody may be near the pressurised tank.")
		return
	}
	p.proofFacts()
	p.proofPoints()
	p.figure(proofFigure(p.sheet, p.inner(), 75))
	p.proofSteps()
	if len(p.sheet.Proof.Sequence) > 0 {
		p.heading("Sequence", 15)
		for i, item := range p.sheet.Proof.Sequence {
			p.lines(left, p.inner(), body, fmt.Sprintf("%d.  %s", i+1, item))
			p.y += 0.6
		}
	}
	if l := p.sheet.Proof.Limits; len(l) > 0 {
		p.heading("What stops, fails and passes the test", 12)
		p.list(l, body)
	}
	p.drifts()
	if c := p.sheet.Proof.Cautions; len(c) > 0 {
		p.heading("Cautions for the test", 12)
		p.list(c, body)
	}
	p.list(p.sheet.Proof.Notes, small)
	p.logForm()
}

// proofFacts lists what is set and what is stored.
func (p *paper) proofFacts() {
	f := p.sheet.Proof
	u := p.sheet.Units
	pa := func(v float64, dir report.Round) string { return report.Show(check.Pa("", "", v), u, dir) }
	j := func(v float64) string { return report.Show(check.J("", "", v), u, report.Up) }
	near := func(q check.Quantity) string { return report.Show(q, u, report.Nearest) }
	exam, relief, stand := "none: remote viewing only", "no room for a relief device: see the sequence", "not given: barrier and remote reading"
	if f.Examination > 0 {
		exam = pa(f.Examination, report.Down)
	}
	if !math.IsNaN(f.Relief) {
		relief = pa(f.Relief, report.Down)
	}
	if f.StandOff != nil {
		stand = report.Show(check.M("", "", *f.StandOff), u, report.Up)
	} else if !f.Barrier {
		stand = "not given"
	}
	rows := [][]cell{
		plain("method, fluid, attitude", f.Method+", "+f.Fluid+", "+f.Orientation, "temperature of fluid and metal", near(check.K("", "", f.Temperature))),
		plain("pressure to set at the gauge", pa(f.Pressure, report.Up), "gauge above the highest inside point", near(check.M("", "", f.GaugeHeight))),
		plain("the gauge never shows more than", pa(f.MostShown, report.Down), "raised above half, a minute", pa(60*f.Rate, report.Down)),
		plain("relief device set at", relief, "full scale of the gauge", pa(f.GaugeLeast, report.Up)+" to "+pa(f.GaugeMost, report.Down)),
		plain("hold at the set pressure", near(check.S("", "", f.Hold))+", read every "+report.Minutes(f.HoldRead), "nobody near above", exam),
		plain("stored energy at the set pressure", j(f.StoredEnergy), "of the fluid; of the wall", j(f.FluidEnergy)+"; "+j(f.WallEnergy)),
		plain("distance of people", stand, "barrier and remote reading", yes(f.Barrier)),
		plain("growth of the volume, wall only", near(check.M3("", "", f.Growth)), "fluid injected", near(check.M3("", "", f.Injected))),
		plain("stiffness dV/dp", near(check.Quantity{Value: f.Stiffness, Unit: "m3/Pa"}), "drift dp/dT, closed and full", near(check.Quantity{Value: f.Drift, Unit: "Pa/K"})),
	}
	for _, q := range f.Values {
		rows = append(rows, plain(q.Name, near(q), "", ""))
	}
	for _, row := range rows {
		row[1].bold, row[3].bold = true, true
	}
	p.table([]column{{"item", 1.7, false, false}, {"value", 1.8, false, false}, {"item", 1.8, false, false}, {"value", 1.7, false, false}}, rows, 0)
}

func yes(b bool) string {
	if b {
		return "required"
	}
	return "not required"
}

func (p *paper) proofPoints() {
	if len(p.sheet.Proof.Points) == 0 {
		return
	}
	p.heading("What the test shows at each point", 15)
	pa := p.sheet.Gauge
	var rows [][]cell
	for _, q := range p.sheet.Proof.Points {
		required, least := report.ShowPair(check.Pa("", "", q.Required), check.Pa("", "", q.Low), p.sheet.Units)
		rows = append(rows, plain(q.Name, report.Show(check.M("", "", micro(q.Z)), p.sheet.Units, report.Nearest), pa(q.Service, report.Up),
			report.Plain(roundTo(q.Factor, 5)), required, least, pa(q.High, report.Up)))
	}
	p.table([]column{{"point", 2, false, false}, {"station z", 0.9, true, false}, {"service", 1, true, false}, {"proof factor", 0.9, true, false},
		{"required", 1, true, false}, {"least in the hold", 1.1, true, false}, {"highest in the hold", 1.1, true, false}}, rows, 0)
}

// proofSteps lists the readings to expect at each step; in gas no volume is read.
func (p *paper) proofSteps() {
	p.heading("Steps and expected readings", 20)
	u := p.sheet.Units
	show := p.sheet.Reading
	gas := p.sheet.Proof.Method == "pneumatic"
	columns := []column{{"no.", 0.35, true, false}, {"step", 1.2, false, false}, {"cycle", 0.5, true, false}, {"pressure", 0.9, true, false}, {"hold", 0.6, true, false}}
	if !gas {
		columns = append(columns, column{"volume in, bled", 0.85, true, false}, column{"fluid alone", 0.85, true, false}, column{"adds, ± stop band", 1.35, true, false})
	}
	columns = append(columns, column{"hoop strain", 0.9, true, false}, column{"axial strain", 0.8, true, false}, column{"diameter growth", 0.9, true, false})
	var rows [][]cell
	for i, s := range p.sheet.Proof.Steps {
		row := []string{fmt.Sprint(i + 1), s.Name, fmt.Sprint(s.Cycle), p.sheet.Gauge(s.Pressure, s.GaugeRound()), report.Show(check.S("", "", s.Hold), u, report.Nearest)}
		if !gas {
			row = append(row, show(check.M3("", "", s.InjectedVolume)), show(check.M3("", "", s.FluidVolume)), s.Adds(u))
		}
		rows = append(rows, plain(append(row, show(check.Num("", "", s.HoopStrain)), show(check.Num("", "", s.AxialStrain)), show(check.M("", "", s.DiameterGrowth)))...))
	}
	p.table(columns, rows, 0)
}

// drifts is a table of one row: the drift of the closed tank by temperature.
func (p *paper) drifts() {
	d := p.sheet.Proof.Drifts
	if len(d) == 0 {
		return
	}
	p.heading("Closed and full, the pressure moves by this for each degree of water and wall", 15)
	columns := []column{{"at", 0.6, false, false}}
	rows := [][]cell{plain("dp/dT")}
	for _, q := range d {
		columns = append(columns, column{report.Show(check.K("", "", q.Temperature), p.sheet.Units, report.Nearest), 1, true, false})
		rows[0] = append(rows[0], plain(p.sheet.Reading(check.Quantity{Value: q.Drift, Unit: "Pa/K"}))...)
	}
	p.table(columns, rows, 0)
}

// logForm is filled in by hand at the test.
func (p *paper) logForm() {
	p.newPage()
	p.chapter("Proof test log form")
	f := p.sheet.Proof
	exam, relief := "nobody near at any pressure", "Relief device set at:  ____________"
	if math.IsNaN(f.Relief) {
		relief = "No relief device: attended by  ____________"
	}
	if f.Examination > 0 {
		exam = "nobody near above " + p.sheet.Gauge(f.Examination, report.Down)
	}
	for _, text := range []string{
		"Set:  " + p.sheet.Gauge(f.Pressure, report.Up) + "      never over:  " + p.sheet.Gauge(f.MostShown, report.Down) + "      above half at most " + p.sheet.Gauge(60*f.Rate, report.Down) +
			" a minute      hold:  " + report.Show(check.S("", "", f.Hold), p.sheet.Units, report.Nearest) + "      " + exam,
		"Tank serial:  " + orBlank(p.sheet.Block.Serial) + "      Date:  ______________      Place:  ____________________________      In charge:  ______________________",
		"Gauge 1, number and calibration:  __________________________      Gauge 2:  __________________________      " + relief,
	} {
		p.y += 2
		p.lines(left, p.inner(), small, glued(text))
	}
	p.y += 2
	p.logRows()
	p.lines(left, p.inner(), body, "After the test: permanent set at the reference pressure __________   leaks seen __________   outcome (pass, fail, inconclusive) __________")
	p.y += 3
	p.lines(left, p.inner(), body, "Signed by the person in charge ____________________________________   witness ____________________________________")
}

// logRows is the table of the log form: what the plan adds at a step stands under its
// name, the unit of each reading is written into the heading.
func (p *paper) logRows() {
	const high = 7.5 // of a row that is filled in [mm]
	f := p.sheet.Proof
	gas := f.Method == "pneumatic"
	totals := "Volumes are totals since the vent was closed, not since the step before. "
	if gas {
		totals = ""
	}
	p.lines(left, p.inner(), small, "Write the unit of each reading into its heading, ____. "+totals+"A reading that was not taken stays empty, never 0.")
	p.y += 1
	columns := []column{{"no.", 0.45, true, false}, {"step", 1.45, false, false}, {"set", 1.05, true, false}, {"time ____", 0.75, false, false}, {"gauge 1 ____", 0.8, false, false}, {"gauge 2 ____", 0.8, false, false},
		{"fluid temp. ____", 0.75, false, false}, {"metal temp. ____", 0.75, false, false}}
	if !gas {
		columns = append(columns, column{"volume in ____", 0.85, false, false}, column{"returned ____", 0.85, false, false}, column{"line takes ____", 0.75, false, false})
	}
	columns = append(columns, column{"strains, diameter ____", 1.15, false, false}, column{"by", 0.5, false, false})
	var rows [][]cell
	for _, r := range f.LogRows() {
		set, name := "", r.Name
		if !math.IsNaN(r.Pressure) {
			set = p.sheet.Gauge(r.Pressure, r.GaugeRound())
		}
		if !math.IsNaN(r.Added) {
			name += ", adds " + r.Adds(p.sheet.Units)
		}
		row := make([]cell, len(columns))
		copy(row, plain(r.Number, name, set))
		rows = append(rows, row)
	}
	p.table(columns, rows, high)
}

func orBlank(text string) string {
	if text == "" {
		return "______________"
	}
	return text
}
