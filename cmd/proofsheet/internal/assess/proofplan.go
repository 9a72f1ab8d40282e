package assess

import (
	"fmt"
	"math"

	"proofsheet/loads/proof"
	"proofsheet/report"
	"proofsheet/report/check"
)

// driftFrom to driftTo are the temperatures of the water for which the drift is
// shown [°C].
const driftFrom, driftTo, driftStep = 5, 30, 5

// proofLimits fills in what stops, fails and passes the test, with its numbers,
// and the drift of the closed tank by temperature.
func (r *run) proofLimits(s *report.Proof) {
	plan := r.proof.plan
	s.MostShown, s.Rate = plan.Setting+plan.Overshoot, plan.Rate
	s.Limits = append(s.Limits,
		fmt.Sprintf("The gauge never shows more than %s. If it did, the tank is not passed until it is checked again at that pressure.", r.shown(check.Pa("", "", s.MostShown), report.Down)),
		zeroShown(r, plan),
		fmt.Sprintf("Above half the setting not faster than %s a minute. At every step wait until pressure and strain are still, 2 min at least.", r.shown(check.Pa("", "", 60*plan.Rate), report.Down)))
	strains := r.strainLimits(s)
	hold := fmt.Sprintf("Hold at %s or over for %.0f min without a break. Where it sinks below, top up and begin the hold again.", r.shown(check.Pa("", "", plan.Setting), report.Up), math.Ceil(plan.Hold/60))
	f, _, err := r.full()
	l, e := plan.Limits(f)
	switch {
	case plan.In.Method == proof.Pneumatic:
		s.Limits = append(s.Limits, strains, hold, "A fall in the hold is judged by absolute pressure over absolute temperature of the gas; a warming test rises by a third of a per cent each kelvin: read the gas to 0.05 K or better. The record of a test with gas can fail it, not pass it: no volume tells a yield.")
	case err != nil || e != nil: // the readings say why
		s.Limits = append(s.Limits, strains, hold)
	default:
		volume, fall, set := r.waterLimits(f, l, math.IsNaN(s.Relief))
		s.Limits = append(append(s.Limits, volume...), strains, hold+r.warming(l), fall, set)
		s.Drifts = drifts(plan, f)
	}
}

// strainLimits says what stops the test by strain; the prediction counts where there is
// one.
func (r *run) strainLimits(s *report.Proof) string {
	if math.IsNaN(s.PlainFrom) {
		return "Strains stop the test that leave their straight line by more than 5 % or creep by more than 50×10⁻⁶ in the hold. 1 K not compensated reads as 12 to 24×10⁻⁶."
	}
	at := func(z float64, dir report.Round) string { return r.shown(check.M("", "", z), dir) }
	return fmt.Sprintf("Strains stop the test that leave their straight line by more than 5 %%, lie more than 10 %% off the prediction, or creep by more than 50×10⁻⁶ in the hold. "+
		"Predicted is the outside of the plain cylinder: z from %s to %s, %s and more from the seams of the heads, and as far from ports and rings; nearer to them and at knuckles only straightness and creep count. "+
		"Strain along the axis is small and hangs on Poisson's ratio: to its 10 %% comes the uncertainty of the gauge. 1 K not compensated reads as 12 to 24×10⁻⁶.",
		at(s.PlainFrom, report.Up), at(s.PlainTo, report.Down), at(s.PlainFrom, report.Up))
}

// zeroShown says what the gauge shows with the tank open.
func zeroShown(r *run, plan *proof.Plan) string {
	due := "zero"
	if p := plan.OpenShown(); p != 0 {
		due = report.Reading(check.Pa("", "", p), r.t.Sheet.Units)
	}
	return fmt.Sprintf("With the tank full and open the gauges show %s within %s, before the test and after it; else they are off, or count from a vacuum: no pressure on them.", due, r.shown(check.Pa("", "", plan.GaugeUncertainty), report.Down))
}

// shown prints a quantity in the sheet's units.
func (r *run) shown(q check.Quantity, dir report.Round) string {
	return report.Show(q, r.t.Sheet.Units, dir)
}

// warming says how soon the closed tank leaves the room above the setting.
func (r *run) warming(l proof.Limits) string {
	o, D := r.proof.plan.Overshoot, math.Abs(l.Drift)
	if !(D > 0 && o/D < 1) {
		return ""
	}
	return fmt.Sprintf(" A change of %.2g K in the closed tank is as much as the whole overshoot: let water out by hand before the gauge reaches %s.", o/D, r.shown(check.Pa("", "", l.MostShown), report.Down))
}

// waterLimits says what is read of volumes, of the fall in the hold and of permanent set in a tank full of
// water, which stays open to its pump in the hold or is closed.
func (r *run) waterLimits(f proof.Full, l proof.Limits, open bool) (volume []string, fall, set string) {
	near := func(q check.Quantity) string { return report.Reading(q, r.t.Sheet.Units) }
	ml := func(v float64) string { return r.shown(check.M3("", "", v), report.Down) }
	volume = []string{
		fmt.Sprintf("At half the setting, before going on: where less than %s went in, or more than %s, no 10 %% of stiffness (predicted %s) and no air up to 0.5 %% of the volume (%s at the atmosphere) explain it: bleed, or find out, and begin again.",
			ml(l.HalfLeast), ml(l.HalfMost), near(check.Quantity{Value: l.Stiffness, Unit: "m3/Pa"}), ml(l.Air)),
		"At each step above half: up to 0.7 of the setting what was added since the step before is held to what the step adds, from 0.8 on the reading to the straight line through the earlier ones from half on; the band (±) is printed, or 2 % of all that went in, where that is more. " +
			"Over it: go no higher, hold, read again after 2 min; still over, or rising at a steady pressure: stop, back to the reference pressure, the test is failed. " +
			"Below it: a blocked line, a shut valve or an instrument; stop and find out. A local yield hardly moves the volume: only strain gauges there show it.",
		fmt.Sprintf("Trapped air takes its part: where more than predicted had gone in at half the setting, up to %s of that excess goes in again at each of the next two steps and is no departure.", percent(l.AirAgain)),
	}
	pumped := ""
	if w, err := proof.WaterAt(r.t.Proof.Temperature, 0); err == nil {
		if k, err := f.AdiabaticWarming(r.proof.plan.Setting, r.t.Proof.Temperature, w.Density, waterHeat); err == nil {
			pumped = fmt.Sprintf(" (pumping warms the water by about %.2g K)", k)
		}
	}
	watched := "the closed tank"
	if open {
		watched = "the tank, what is put in or let out measured,"
	}
	fall = fmt.Sprintf("Fall in the hold: watch %s for half the hold's time at least, from when the pressure is steady or 10 min after the setting was reached%s. What temperature does not explain, its uncertainty added, is at most %s over the whole hold, which is %s of water. "+
		"1 ml lost lets the pressure fall by %s, 0.1 K of water moves it by %s: %s Without its temperature, or over 1 K of change, no fall can be judged.",
		watched, pumped, r.shown(check.Pa("", "", l.Fall), report.Down), ml(l.Lost), near(check.Pa("", "", 1e-6*l.LeakFall)), near(check.Pa("", "", math.Abs(0.1*l.Drift))), thermometer(l))
	set = fmt.Sprintf("Permanent growth of the wall between the two reference readings, temperature taken off: up to 2 %% of its growth (%s) passes, over 10 %% (%s) is rejected, between them the second cycle may add no more than 1 %%, or twice its uncertainty where that is more, and leave less than 100×10⁻⁶ of hoop strain. A wet weld is a failure whatever the numbers.",
		ml(l.SetPass), ml(l.SetReject))
	return volume, fall, set
}

// thermometer says how well a change of the water's temperature must be known.
func thermometer(l proof.Limits) string {
	if !(l.Warmth < l.Assumed) {
		return "read the water's temperature with every reading."
	}
	return fmt.Sprintf("a tank that loses nothing is shown to only where a change of the water's temperature is known within %s K (standard uncertainty), and the log's heading says so, \"temperature [degC] ± … K\": the record takes %.2g K where it does not.",
		report.Number(l.Warmth, 1, report.Down), l.Assumed)
}

// percent prints a share, rounded down to two digits.
func percent(share float64) string { return report.Number(100*share, 2, report.Down) + " %" }

// drifts lists the drift of the closed tank from 5 to 30 °C.
func drifts(plan *proof.Plan, f proof.Full) (out []report.ProofDrift) {
	for c := driftFrom; c <= driftTo; c += driftStep {
		T := float64(c) + 273.15
		if d, err := plan.AtTemperature(f, T); err == nil {
			out = append(out, report.ProofDrift{Temperature: T, Drift: d})
		}
	}
	return out
}

// waterHeat is the specific heat of water [J/(kg K)]; handbook value, recalled.
const waterHeat = 4182

// sequence returns the procedure in order: common practice, steps as the plan.
func (r *run) sequence(s *report.Proof) []string {
	gas := r.proof.plan.In.Method == proof.Pneumatic
	of := func(water, other string) string {
		if gas {
			return other
		}
		return water
	}
	relief, hold := "relief device, set as stated, on the tank's side of every valve that is shut for the hold;", "every valve to the "+of("pump", "supply")+" shut;"
	if math.IsNaN(s.Relief) {
		relief = "no relief device has room under the limit: " + of("a hand pump and an attended bleed", "a supply throttled by hand and an attended vent") + ", no valve between them and the tank;"
		hold = "no valve shut, " + of("pump and bleed", "supply and vent") + " attended;"
	}
	exam := "Hold passed: look at every weld by camera; nobody approaches the tank at any pressure."
	back := "To the reference pressure, not zero: read permanent set."
	if s.Examination > 0 {
		exam = "Hold passed: lower to the examination pressure, and only now approach to look at every weld."
		back = "Everybody back. " + back
	}
	list := []string{
		"Certificates, weld examination, thickness map and this sheet at hand; one person in charge.",
		of("Tank clean, dry, unpainted; water, pump and lines as the cautions ask for these contents and this metal; supports carry it full of water.",
			"Gas only where water cannot be used: risk assessed, every weld examined over its full length, outdoors. Tank clean, dry, unpainted, cold check made."),
		"Two calibrated gauges in the stated range, read from afar; " + relief + " flight relief removed or gagged." + of("", " Barrier and distance in place before the first gas."),
	}
	if !gas {
		list = append(list, "With the tank's own valve shut, pump the line to the steps and write down what pump, hose and gauge line take: it comes off every volume.")
	}
	return append(list,
		of("Fill from the lowest point with the high-point vent open; tilt and bleed until no bubble comes; read the zero of the gauges, close the vent; wait until metal and water agree within 1 to 2 K.",
			"Read the zero of the gauges. Wait until metal and gas agree within 1 to 2 K."),
		"Everybody behind the barrier and at the distance: from here nobody near while pressure rises, at any pressure.",
		of("Leak look, then reference reading; raise by the steps; at each read pressure, volume, water temperature, strains and diameter, and compare before going on.",
			"Leak look, then reference reading; raise by the steps; at each read pressure, gas temperature, strains and diameter, and compare before going on."),
		"Hold at the set pressure, "+hold+" read at least every "+report.Minutes(s.HoldRead)+". Never raised beyond it.",
		exam,
		back+" Second cycle by the same steps, then the reference reading again.",
		of("Bleed to zero, open the top vent, read the zero of the gauges, then drain with the vent open; dry; clean.",
			"Bleed to zero from afar; nobody approaches before the gauge and a second one read zero."),
		"Leak test as a test of its own, not above MEOP, pressurised from afar.")
}
