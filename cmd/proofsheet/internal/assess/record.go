package assess

import (
	"errors"
	"fmt"
	"math"
	"path/filepath"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads/proof"
	"proofsheet/report"
	"proofsheet/report/check"
)

// Record assesses the tank and judges the log of its proof test by the plan. An
// error is a fault of the input that only the whole tank shows.
func Record(t *tank.Tank, l *tank.Log, o Options) (*report.Sheet, *report.Record, error) {
	type judged struct {
		sheet  *report.Sheet
		record *report.Record
	}
	out, err := onFineMeshes(t, o, func(r *run) judged {
		s := r.whole()
		return judged{s, r.record(s, l)}
	})
	return out.sheet, out.record, err
}

// record judges the log.
func (r *run) record(s *report.Sheet, l *tank.Log) *report.Record {
	var all [][]byte
	for _, f := range s.Files {
		all = append(all, f.Data)
	}
	out := &report.Record{Log: report.Attachment{Name: filepath.Base(l.File), Data: l.Text, SHA256: digest(l.Text)},
		Rows: len(l.Rows), Combined: digest(append(all, l.Text)...), Sheet: s.VerdictLine()}
	out.Findings = []report.Finding{r.identity(s, l)}
	if ok, why := r.proof.issued(); !ok {
		out.Findings = append(out.Findings, report.Finding{Title: "plan", Outcome: proof.Inconclusive.String(), Reason: "no proof plan is issued for this tank: " + why})
	}
	if r.proof.plan != nil {
		r.judge(s, l, out)
	}
	settle(out)
	r.recordCautions(s, l, out)
	return out
}

// identity asks whether the log was taken for this sheet.
func (r *run) identity(s *report.Sheet, l *tank.Log) report.Finding {
	f := report.Finding{Title: "identity", Outcome: proof.Passed.String(), Reason: "the log names this sheet, " + s.Digits()}
	switch {
	case l.Sheet == "":
		f.Outcome, f.Reason = proof.NotRead.String(), "the log does not name the sheet it was taken for; a line \"# sheet: "+s.Digits()+"\" would"
	case !strings.HasPrefix(s.Tank.Combined, l.Sheet):
		f.Outcome, f.Reason = proof.Inconclusive.String(), "the log names sheet "+l.Sheet+", this one is "+s.Digits()+": the tank file or what it names was changed, or it is another tank"
	}
	return f
}

// settle sets the verdict by the worst finding; only a record of which nothing
// fails or is open is satisfied.
func settle(out *report.Record) {
	out.Verdict = "satisfied"
	out.Reason = "the test reached its setting, the tank held it, tight and elastic, as predicted"
	for _, f := range out.Findings {
		switch {
		case f.Outcome == proof.Failed.String() && out.Verdict != "not satisfied":
			out.Verdict, out.Reason = "not satisfied", f.Title+": "+f.Reason
		case f.Outcome == proof.Inconclusive.String() && out.Verdict == "satisfied":
			out.Verdict, out.Reason = "inconclusive", f.Title+": "+f.Reason
		}
	}
	if out.Verdict == "satisfied" && out.Findings[0].Outcome == proof.NotRead.String() {
		out.Reason += "; that it was taken on this tank and by this plan the log does not say"
	}
}

// judge puts the questions of the record to the log.
func (r *run) judge(s *report.Sheet, l *tank.Log, out *report.Record) {
	test, note := r.proofTestOf()
	if note != "" {
		out.Notes = append(out.Notes, note)
	}
	plain := s.Proof != nil && !math.IsNaN(s.Proof.PlainFrom)
	log := proofLog(l, plain)
	if !plain && len(l.Gauges) > 0 {
		out.Notes = append(out.Notes, "No strain is predicted, as the plan says: of every gauge only straightness and stillness are asked.")
	}
	got, err := test.Judge(log)
	if err != nil {
		out.Findings = append(out.Findings, report.Finding{Title: "log", Outcome: proof.Inconclusive.String(), Reason: strings.ReplaceAll(err.Error(), "\n", "; ")})
		return
	}
	for _, f := range append(got.Findings, r.testTemperature(log, got.Hold)) {
		row := report.Finding{Title: f.Title, Outcome: f.Outcome.String(), Reason: f.Reason, Notes: f.Notes}
		for _, v := range f.Values {
			row.Values = append(row.Values, report.RecordValue{Quantity: v.Quantity, Reference: v.Predicted, Bound: v.Bound, Band: v.Band, Uncertainty: v.Uncertainty})
		}
		out.Findings = append(out.Findings, row)
	}
	for _, q := range got.Readings {
		out.Readings = append(out.Readings, report.RecordAt{Time: log.Rows[q.Row].Time, Pressure: q.Pressure, Volume: q.Volume,
			Predicted: q.Predicted, Line: q.Line, Band: q.Band})
	}
	out.Charts = recordCharts(test, log, got)
}

// proofTestOf returns what the log is judged against, and why nothing is
// predicted where that is so.
func (r *run) proofTestOf() (proof.Test, string) {
	if r.t.Proof.Gas() {
		nan := math.NaN()
		f := proof.Full{Volume: r.in.Volume(), Growth: nan, Compressibility: nan, Expansion: nan, WallExpansion: nan}
		w, _, err := r.plainWall()
		note := ""
		if err != nil {
			note = "Strains are not predicted: " + err.Error() + "."
		}
		return r.testOf(f, w), note
	}
	f, w, err := r.full()
	note := ""
	if err != nil {
		f.Growth = math.NaN()
		if f.Volume == 0 {
			f.Volume, f.Compressibility, f.Expansion = math.NaN(), math.NaN(), math.NaN()
		}
		note = "Readings are not predicted: " + strings.ReplaceAll(err.Error(), "\n", "; ") + "."
	}
	return r.testOf(f, w), note
}

// testOf is the test of a full tank by the plan.
func (r *run) testOf(f proof.Full, w proof.Wall) proof.Test {
	return proof.Test{Plan: r.proof.plan, Full: f, Wall: w, Radius: r.cyl.radius + r.cyl.nominal/2, Use: r.proof.use}
}

// proofLog is the log as the judge wants it. A gauge whose name begins with
// hoop or axial sits on the plain cylinder, where the tank has a plain place.
func proofLog(l *tank.Log, plain bool) proof.Log {
	out := proof.Log{PressureChange: l.PressureChange, VolumeChange: l.VolumeChange,
		TemperatureChange: l.TemperatureChange, StrainChange: l.StrainChange,
		PressureStep: l.PressureStep, VolumeStep: l.VolumeStep, TemperatureStep: l.TemperatureStep, StrainStep: l.StrainStep}
	for _, name := range l.Gauges {
		g := proof.Gauge{Name: name}
		switch {
		case !plain:
		case strings.HasPrefix(strings.ToLower(name), "hoop"):
			g.Place = proof.PlainHoop
		case strings.HasPrefix(strings.ToLower(name), "axial"):
			g.Place = proof.PlainAxial
		}
		out.Gauges = append(out.Gauges, g)
	}
	for _, row := range l.Rows {
		out.Rows = append(out.Rows, proof.LogRow{Time: row.Time, Pressure: row.Pressure, Others: row.Others, Volume: row.Volume,
			Temperature: row.Temperature, Wall: row.Wall, Strains: row.Strains})
	}
	return out
}

// uncertaintyNotes says which uncertainties the log states and which are taken.
func uncertaintyNotes(l *tank.Log, gas bool) (notes []string) {
	var given, standard []string
	for _, u := range []struct {
		name      string
		v, scale  float64 // [SI], [SI]
		unit, own string
	}{
		{"pressure", l.PressureChange, 1e3, "kPa", "0.1 % of the setting"}, {"volume", l.VolumeChange, 1e-6, "ml", "1 ml or 0.3 %"},
		{"temperature", l.TemperatureChange, 1, "K", "0.2 K"}, {"strain", l.StrainChange, 1e-6, "×10⁻⁶", "20×10⁻⁶"},
	} {
		switch {
		case gas && u.name == "volume":
		case u.v > 0:
			given = append(given, strings.Replace(fmt.Sprintf("%s %.3g %s", u.name, u.v/u.scale, u.unit), " ×", "×", 1))
		default:
			standard = append(standard, u.name+" "+u.own)
		}
	}
	if standard != nil {
		notes = append(notes, "Standard uncertainty of a change, taken by default (practice): "+strings.Join(standard, ", ")+". Behind a heading the log may state its own, \"temperature [degC] ± 0.02 K\".")
	}
	if given != nil {
		notes = append(notes, "Standard uncertainty of a change, as the log states it: "+strings.Join(given, ", ")+". It never widens a band of the plan; whoever signs answers for it.")
	}
	return append(notes, "No change of a reading counts for surer, k = 2, than the step in which its column is written.")
}

// offPlan is how far the water or gas may be from the plan's temperature before the
// plan is made again for it [K]; practice.
const offPlan = 5

// testTemperature asks whether the setting serves at the temperature of the hold: where
// that is far from the plan's, the tank is planned again for it, and the setting
// must be no higher than what was held, and such a plan be issued.
func (r *run) testTemperature(l proof.Log, hold proof.Span) proof.Finding {
	f := proof.Finding{Title: "temperature of the test", Outcome: proof.NotRead, Reason: "no temperature was read in the hold"}
	plan := r.t.Proof.Temperature
	lo, hi, held := math.Inf(1), math.Inf(-1), math.Inf(1)
	for i := hold.From; i <= hold.To; i++ {
		held = math.Min(held, l.Rows[i].Pressure)
		if T := l.Rows[i].Temperature; !math.IsNaN(T) {
			lo, hi = math.Min(lo, T), math.Max(hi, T)
		}
	}
	if lo > hi {
		return f
	}
	f.Outcome, f.Reason = proof.Passed, fmt.Sprintf("within %d K of the plan's", offPlan)
	for _, T := range []float64{lo, hi} {
		f.Values = append(f.Values, proof.Measured{Quantity: check.K("T", map[bool]string{true: "lowest in the hold", false: "highest in the hold"}[len(f.Values) == 0], T),
			Predicted: plan, Bound: "planned", Band: math.NaN(), Uncertainty: math.NaN()})
	}
	extremes := []float64{lo}
	if hi-lo > 1 { // K
		extremes = append(extremes, hi)
	}
	for _, T := range extremes {
		if math.Abs(T-plan) <= offPlan {
			continue
		}
		setting, err := r.settingAt(T)
		f.Values = append(f.Values, proof.Measured{Quantity: check.Pa("p_held", "lowest pressure of the hold, on the setting at that temperature", held),
			Predicted: setting, Bound: "at least", Band: math.NaN(), Uncertainty: math.NaN()})
		switch {
		case err != nil:
			f.Outcome, f.Reason = proof.Inconclusive, fmt.Sprintf("at %.1f °C no plan would be issued: %v", T-273.15, err)
			return f
		case !(held >= setting*(1-1e-9)):
			f.Outcome, f.Reason = proof.Inconclusive, fmt.Sprintf("at %.1f °C, %.1f K off the plan, the setting is higher than what was held: write that temperature into the tank file and test again by the new plan", T-273.15, math.Abs(T-plan))
			return f
		default:
			f.Reason = fmt.Sprintf("more than %d K off the plan's; planned again for it, the setting is no higher than what was held", offPlan)
		}
	}
	return f
}

// settingAt plans the test again for fluid and metal at T [K] and returns what the
// gauge must show [Pa]; the error says why there would be no plan.
func (r *run) settingAt(T float64) (float64, error) {
	t := *r.t
	t.Proof.Temperature = T
	again, err := newRun(&t, r.o)
	if err != nil {
		return math.NaN(), err
	}
	again.finish()
	if ok, why := again.proof.issued(); !ok {
		return math.NaN(), errors.New(why)
	}
	return again.proof.plan.Setting, nil
}

// unseen says what fails a test with gas or with water that no log shows, and what
// shows a yield.
func unseen(gas bool) []string {
	if gas {
		return []string{"A bubble at a weld, a hiss or a visible change of shape in the test is a failure whatever these numbers say; this record cannot see it.",
			"In gas only strain gauges show a yield, each where it sits."}
	}
	return []string{"A wet weld, a drip or a visible change of shape in the test is a failure whatever these numbers say; this record cannot see it.",
		"Volume shows a general yield. A local one at a port, a knuckle or a junction shows only on a strain gauge there."}
}

// recordCautions adds what the reader must know beside the numbers.
func (r *run) recordCautions(s *report.Sheet, l *tank.Log, out *report.Record) {
	if out.Verdict != "satisfied" {
		out.Cautions = append(out.Cautions, "The proof test is not passed: nobody comes near this tank while it is pressurised.")
	}
	out.Cautions = append(append(out.Cautions, unseen(r.t.Proof.Gas())...), "The test tries pressure only: no line loads, no buckling, no cold.")
	if l.Sheet == "" {
		out.Cautions = append(out.Cautions, "The log names no sheet: that it is of this tank and this plan rests on whoever signs.")
	}
	if s.Verdict != check.Satisfied {
		out.Cautions = append(out.Cautions, "The tank's own sheet is "+s.Verdict.String()+"; a passed proof test does not change that.")
	}
	out.Cautions = append(out.Cautions, "This record claims no compliance with any code. Local law and a licensed person decide about the tank; they and the calibration of the instruments come first.")
	for _, what := range l.Unused {
		out.Notes = append(out.Notes, "Not used: "+what+".")
	}
	out.Notes = append(out.Notes, uncertaintyNotes(l, r.t.Proof.Gas())...)
	for _, p := range r.proof.rules {
		if p.LimitSource.How == check.Memory || p.Source.How == check.Memory {
			out.Notes = append(out.Notes, "The plan rests on values of rule "+p.Rule+" quoted from memory; the sheet lists them.")
		}
	}
}
