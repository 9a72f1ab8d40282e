package assess_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads/proof"
	"proofsheet/report"
)

// A physics is what the sample logs are made by: the water in the tank less
// what leaked fills what wall, water and air give under pressure, less what
// warmth makes of it,
//
//	v − leaked = (C_sh + κ V) p + V_a0 p/(p + p0) + yielded − (β − 3 α) V (T − T0)
//
// with κ of water at T and β at 1 atm halfway to it, the wall straight but for what it yields
// over its highest pressure, and strains in proportion to pressure and yield.
// Pumping finds v for a pressure, a shut valve p for v. Readings scatter by the
// numbers below and are rounded as instruments round. Left out: the warmth of
// pumping, hose and gauge line, and air going into solution.
type physics struct {
	start   float64 // T0 [K]
	warming float64 // [K/s]
	air     float64 // V_a0 [m3]
	leak    float64 // at the setting, from 0.97 of it on [m3/s]
	yield   float64 // over 0.75 of the setting, growing with the square [m3]
	stopAt  float64 // share of the setting at which the test is broken off; 0: never [-]
	cycles  int
	hold    float64 // beyond the plan's [s]
	over    float64 // of the setting, where the pump stops [-]
	stated  bool    // whether the headings state uncertainties
}

// Scatter of the sample readings, one standard deviation.
const (
	noisePressure, noiseTemperature, noiseStrain = 150.0, 0.003, 1.5e-6 // [Pa], [K], [-]
	meterGain                                    = 1.001                // [-]
)

// samples are the five logs.
var samples = map[string]physics{
	"good": {start: 288.15, warming: 3e-5, cycles: 2, hold: 60, over: 0.004, stated: true},
	"leak": {start: 288.15, warming: 2e-5, cycles: 1, hold: 60, over: 0.006, stated: true, leak: 0.4e-6 / 60},
	// Where the reading departs at 0.9 of the setting the plan stops the test.
	"yield": {start: 288.15, warming: 2e-5, cycles: 1, yield: 300e-6, stopAt: 0.9, over: 0.004, stated: true},
	"air":   {start: 288.15, warming: 2e-5, cycles: 1, hold: 60, over: 0.004, stated: true, air: 600e-6},
	// Under 8.6 °C a full aluminium tank loses pressure as it warms; the
	// thermometer is an ordinary one and states nothing.
	"warming": {start: 277.15, warming: 0.38 / 600, cycles: 1, hold: 60, over: 0.009},
}

// A bench is one test under way.
type bench struct {
	physics
	t            *testing.T
	plan         *report.Proof
	volume, α    float64 // [m3], [1/K]
	growth, hoop float64 // of the wall [m3/Pa], of the plain cylinder [1/Pa]
	time, p      float64 // [s], [Pa]
	most, leaked float64 // highest pressure [Pa], water lost [m3]
	shown        float64 // volume on the meter [m3]
	v            float64 // put in [m3]
	open         bool
	noise        *rand.Rand
	out          strings.Builder
}

// sampleLog runs the plan of a tank on a physics and returns the log.
func sampleLog(t *testing.T, s *report.Sheet, α float64, name string, w physics) string {
	t.Helper()
	b := &bench{physics: w, t: t, plan: s.Proof, α: α, noise: rand.New(rand.NewPCG(1, uint64(len(name))))}
	for _, q := range s.Quantities {
		switch q.Key {
		case "volume":
			b.volume = q.Value
		case "proof.volume_growth":
			b.growth = q.Value / (s.Proof.Pressure - s.Proof.Values[0].Value)
		}
	}
	last := s.Proof.Steps[len(s.Proof.Steps)-2]
	b.hoop = last.HoopStrain / (last.Pressure - last.Pressure/s.Proof.Pressure*s.Proof.Values[0].Value)
	fmt.Fprintf(&b.out, "# Made by the model of recordlog_test.go, not read on a tank.\n# sheet: %s\n", s.Digits())
	u := [3]string{}
	if w.stated {
		u = [3]string{" ± 0.004 bar", " ± 0.1 ml", " ± 0.01 K"}
	}
	fmt.Fprintf(&b.out, "time [s],pressure [bar]%s,volume [ml]%s,temperature [degC]%s,strain-hoop-1 [um/m],strain-axial-1 [um/m],strain-outlet [um/m]\n", u[0], u[1], u[2])
	b.read()
	b.run()
	return b.out.String()
}

func (b *bench) run() {
	for _, step := range b.plan.Steps {
		if step.Cycle > b.cycles {
			return
		}
		target, hold := step.Pressure, step.Hold
		if step.Pressure >= b.plan.Pressure*0.999 {
			target = step.Pressure * (1 + b.over)
		}
		if step.Name == "proof hold" {
			hold += b.physics.hold
		}
		b.pump(target)
		b.shut(hold)
		if b.stopAt > 0 && step.Pressure >= b.stopAt*b.plan.Pressure*0.999 {
			b.pump(0.05 * b.plan.Pressure)
			b.shut(120)
			return
		}
	}
}

// temperature of water and wall [K].
func (b *bench) temperature() float64 { return b.start + b.warming*b.time }

// room returns the water that the tank holds at a pressure over that of none [m3].
func (b *bench) room(p float64) float64 {
	now, err := proof.WaterAt(b.temperature(), 0)
	if err != nil {
		b.t.Fatal(err)
	}
	mean, err := proof.WaterAt((b.temperature()+b.start)/2, 0)
	if err != nil {
		b.t.Fatal(err)
	}
	most := math.Max(b.most, p)
	yielded := b.yield * math.Pow(math.Max(0, most/b.plan.Pressure-0.75), 2)
	return (b.growth+now.Compressibility*b.volume)*p + b.air*p/(p+proof.Atmosphere) + yielded -
		(mean.Expansion-3*b.α)*b.volume*(b.temperature()-b.start)
}

// pump goes to a pressure at the plan's rate, reading every half minute.
func (b *bench) pump(target float64) {
	rate := 0.1 * b.plan.Pressure / 60
	for b.p != target {
		next := math.Min(target, b.p+30*rate)
		if target < b.p {
			next = math.Max(target, b.p-60*rate)
		}
		b.advance(30)
		b.p = next
		b.most = math.Max(b.most, b.p)
		b.v = b.room(b.p) + b.leaked
		b.shown = b.v * meterGain
		b.read()
	}
}

// shut closes the valve for a time and reads every half minute.
func (b *bench) shut(hold float64) {
	for range int(hold / 30) {
		b.advance(30)
		low, high := 0.0, 2*b.plan.Pressure
		for range 60 { // room rises with pressure
			if b.p = (low + high) / 2; b.room(b.p) < b.v-b.leaked {
				low = b.p
			} else {
				high = b.p
			}
		}
		b.most = math.Max(b.most, b.p)
		b.read()
	}
}

func (b *bench) advance(dt float64) {
	b.open = b.open || b.leak > 0 && b.p > 0.97*b.plan.Pressure
	if b.open {
		b.leaked += b.leak * b.p / b.plan.Pressure * dt
	}
	b.time += dt
}

func (b *bench) read() {
	yielded := b.yield * math.Pow(math.Max(0, b.most/b.plan.Pressure-0.75), 2)
	ε := b.hoop*b.p + yielded/(2*b.volume)
	n := b.noise.NormFloat64
	fmt.Fprintf(&b.out, "%.0f,%.3f,%.2f,%.2f,%.0f,%.0f,%.0f\n", b.time, (b.p+n()*noisePressure)/1e5, b.shown*1e6, b.temperature()+n()*noiseTemperature-273.15,
		(ε+n()*noiseStrain)*1e6, (0.2*ε+n()*noiseStrain)*1e6, (1.4*ε+n()*noiseStrain)*1e6)
}

// american rewrites a log in psi, US gallons, °F and per cent of strain.
func american(t *testing.T, log string) string {
	t.Helper()
	const psi, gallon = 6894.757293168, 3.785411784e-3
	var out strings.Builder
	for line := range strings.Lines(log) {
		line = strings.TrimSuffix(line, "\n")
		switch {
		case strings.HasPrefix(line, "#"):
		case strings.HasPrefix(line, "time"):
			line = strings.NewReplacer("± 0.004 bar", "+/- 0.058 psi", "± 0.1 ml", "+/- 2.64e-5 gal", "± 0.01 K", "+/- 0.018 degF",
				"[s]", "[min]", "[bar]", "[psi]", "[ml]", "[gal]", "[degC]", "[degF]", "[um/m]", "[%]").Replace(line)
		default:
			var s, p, v, c, a, x, o float64
			if _, err := fmt.Sscanf(line, "%g,%g,%g,%g,%g,%g,%g", &s, &p, &v, &c, &a, &x, &o); err != nil {
				t.Fatal(err)
			}
			line = fmt.Sprintf("%.4f,%.3f,%.6f,%.3f,%.5f,%.5f,%.5f", s/60, p*1e5/psi, v*1e-6/gallon, c*1.8+32, a*1e-4, x*1e-4, o*1e-4)
		}
		out.WriteString(line + "\n")
	}
	return out.String()
}

// readLog reads the log of a text.
func readLog(t *testing.T, name, text string) *tank.Log {
	t.Helper()
	l, err := tank.ReadLog(name, []byte(text), false)
	if err != nil {
		t.Fatal(err)
	}
	return l
}
