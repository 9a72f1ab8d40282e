package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material/fluid"
	"proofsheet/report"
)

// joules prints an energy, rounded up.
func joules(e float64) string {
	switch {
	case e >= 1e6:
		return fmt.Sprintf("%.2f MJ", math.Ceil(e/1e4)/100)
	case e >= 1e3:
		return fmt.Sprintf("%.2f kJ", math.Ceil(e/10)/100)
	}
	return fmt.Sprintf("%.0f J", math.Ceil(e))
}

// gasWords says what gas stores by every model.
func gasWords(e proof.GasEnergy) string {
	return fmt.Sprintf("gas %s expanding without heat, which sets the distance; bounds %s at constant volume and %s with heat from outside",
		joules(e.Isentropic), joules(e.Brode), joules(e.Isothermal))
}

// mostAir is the share of the volume that may be trapped before the tank is bled
// again [-]: practice.
const mostAir = 0.005

// trappedAir says what the air adds that may be left in a tank full of water.
func (r *run) trappedAir() string {
	plan := r.proof.plan
	f := proof.Full{Volume: r.in.Volume(), Compressibility: 4.6e-10, Air: mostAir * r.in.Volume()}
	e, err := f.Energy(plan.Top + 2*plan.GaugeUncertainty + plan.Overshoot)
	if err != nil {
		return "Trapped air: its energy is not known, " + err.Error() + "."
	}
	return fmt.Sprintf("Trapped air, up to the %.1f %% of the volume at which the tank is bled again, adds up to %s. Barrier and remote reading: a distance by energy is never given for a liquid.",
		100*mostAir, joules(e.Air))
}

// serviceEnergy returns what the tank stores in service: of every state, and of
// the tank run empty at MEOP, the most; and the distance that goes with it.
func (r *run) serviceEnergy() (out []report.NamedQuantity) {
	most, err := proof.Gas{Volume: r.in.Volume(), Pressure: r.t.Pressure.MEOP, Outside: atmosphere, Ratio: 1.4}.Energy()
	at, flash := "run empty at MEOP", 0.0
	errs := []error{err}
	for _, c := range r.cases {
		for _, i := range c.moments() {
			for _, s := range i.states {
				e, boil, err := r.energyOf(s)
				errs = append(errs, err)
				if e.Isentropic+boil > most.Isentropic+flash {
					most, flash, at = e, boil, "case "+c.name
				}
			}
		}
	}
	err = firstOf(errs)
	add := func(key, unit string, v float64, note string) {
		if err != nil {
			v, note = math.NaN(), err.Error()
		}
		out = append(out, report.NamedQuantity{Key: "service." + key, Unit: unit, Value: v, Note: note})
	}
	add("gas_energy", "J", most.Isentropic, at+": "+gasWords(most))
	add("flash_energy", "J", flash, "of a liquid that boils when the tank opens; decomposition comes on top")
	d, tooMuch := proof.StandOff(most.Isentropic + flash)
	note := "blast alone, fragments fly farther; local law decides"
	if tooMuch != nil {
		d, note = math.NaN(), tooMuch.Error()
	}
	add("stand_off", "m", d, note)
	return out
}

// storedNote says in words what the tank stores in service.
func (r *run) storedNote() string {
	q := r.serviceEnergy()
	gas, flash, away := q[0], q[1], q[2]
	if math.IsNaN(gas.Value) {
		return "Stored in service, and a distance for it: not assessed, " + gas.Note + "."
	}
	out := "Stored in service at most, " + gas.Note
	if flash.Value > 0 {
		out += "; " + joules(flash.Value) + " " + flash.Note
	}
	if math.IsNaN(away.Value) {
		return out + ". Distance: not assessed, " + away.Note + "."
	}
	return out + fmt.Sprintf(". Distance for it: %.0f m at least, by the later form of the blast rule with its factor of 2 (recalled); %s.", math.Ceil(away.Value), away.Note)
}

// energyOf returns what one state stores: its gas, and the boiling of a liquid
// that is warmer than its boiling point outside [J].
func (r *run) energyOf(s *loads.State) (gas proof.GasEnergy, boiling float64, err error) {
	ullage := math.Max(r.in.Volume()-s.LiquidVolume(), 0)
	of := func(p float64) (proof.GasEnergy, error) {
		return proof.Gas{Volume: ullage, Pressure: math.Max(p, 0), Outside: atmosphere, Ratio: 1.4}.Energy()
	}
	if gas, err = of(s.UllagePressure); err != nil {
		return gas, math.NaN(), err
	}
	f, ok := fluid.Find(r.t.Contents.Fluid)
	if !ok {
		return gas, math.NaN(), errors.New("whether a liquid given by its density alone boils when the tank opens is not known")
	}
	v, err := f.VaporPressure(r.t.Contents.Warmest)
	switch {
	case err != nil && f.Kind == "liquid":
		return gas, 0, nil
	case err != nil:
		return gas, math.NaN(), err
	case v.Value <= boilsAbove*atmosphere || s.LiquidVolume() == 0:
		return gas, 0, nil
	case f.Name != "N2O":
		return gas, math.NaN(), fmt.Errorf("%s at its warmest boils when the tank opens: its flash energy is not known, and gas alone says too little", f.Title)
	}
	e, err := proof.NitrousOxideFlash(r.t.Contents.Warmest, s.LiquidVolume(), ullage)
	if err != nil {
		return gas, math.NaN(), err
	}
	gas, err = of(s.UllagePressure + atmosphere - v.Value) // what is not its own vapour
	return gas, e, err
}

// boilsAbove is the vapour pressure over that outside from which a liquid flashes [-]:
// a tenth is left to a liquid kept open to the air.
const boilsAbove = 1.1
