// Package proof plans the proof test of a tank: the pressure each point must
// see, what the gauge must show for it, the steps and the hold, what can be
// read meanwhile, and what is stored in the tank while people wait.
//
// # Words
//
//   - MEOP: the highest ullage pressure in service. The liquid's head comes on
//     top of it, once.
//   - service pressure: the highest pressure at a point over the cases, MEOP
//     with every head.
//   - required pressure: service pressure times proof factor and temperature
//     correction; a true value.
//   - setting: what the gauge must show. The truth lies within the gauge's
//     uncertainty of it, and the pressure may overshoot.
//   - low, high: what a point surely and what it possibly sees. Reach is judged
//     by the low one, stress by the high one.
//   - growth: volume that the wall gives under pressure, per pressure.
//   - stiffness: volume that the pump puts in, per pressure; wall, liquid, air.
//   - drift: what the pressure of the closed, full tank does per kelvin.
//   - record: the log of a test, judged. Its words: departure, a reading off the
//     line of the earlier ones; decay, the fall of pressure in the hold; set,
//     what the wall did not give back.
//   - stop band: departure of a volume, from what the earlier readings lead to
//     expect, at which the test stops; one function for plan and record.
//   - examination pressure: the highest with people near, after a passed hold.
//
// Pressures are across the wall, liquid over the atmosphere; R is the mid
// surface. Growth and strain are positive outward.
//
// # Functions, sources and tests
//
//	NewPlan                     UG-99(b), every point; sums computed      plan_test
//	Rule.Factor, DefaultRule    UG-99(b), UG-100, event rules; European   plan_test
//	                            rule set recalled
//	Limit, CheckYield           46 CFR 54.10-10, PED annex I 7.4          yield_test
//	Membrane                    principal, von Mises, Tresca              yield_test
//	BendingLimit, CheckBending  ASME VIII-2 4.1.6, recalled               yield_test
//	NewRatio, CorrectionFactor  UG-99(b), 46 CFR 54.10-10                 plan_test
//	StepShares                  EN 13480-5:2002 9.3.2.2.2, UG-100         plan_test
//	Plan.Relief                 B31.3 345.5.2 (gas), practice (water)     plan_test
//	GaugeRange                  UG-102, recalled                          plan_test
//	Wall growths and strains    membrane, Lamé, plate, reciprocity        growth_test
//	WaterAt                     Kell 1975, recalled                       kell1975_test
//	Full.Injected, Stiffness    linear wall and liquid, isothermal air    reference_test
//	Full.Drift, LeakFall        volume balance                            kell1975_test, reference_test
//	Plan.Readings, StopBand,    practice                                  reference_test, crew_test
//	Plan.Limits, HoldReadings
//	Plan.Strains                Lamé, the outside                         reference_test
//	Full.Energy, Gas.Energy     PCC-2 appendix II, Crowl 2003             energy_test
//	TNT, StandOff               PCC-2 appendix II                         energy_test
//	NitrousOxideFlash           equation of state, computed               energy_test
//	Test.Judge                  49 CFR 180.205 (10 % of set), read;       record_test,
//	                            the rest practice; balance computed       recordreference_test
//	FitLine                     least squares, isothermal air             recordreference_test
//	Cautions                    practice; read where named                property_test
//
// # Not covered
//
// Line loads, bending, buckling and cold: a plain pressure proof tries none of
// them. Growth of torispheres, caps with corners, cones flatter than 60 degrees
// or of another wall than the cylinder: they need the numerical shell. The
// weight of a test gas. Saturated liquids other than nitrous oxide: their
// energy is not known here. A pass by the
// record of a test with gas, of which no volume tells anything. Wet welds, which no
// log shows; the warmth of pumping, which the clock of the decay waits for; air
// that dissolves. Fragments: no distance covers them.
package proof
