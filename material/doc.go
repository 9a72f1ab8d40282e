// Package material holds the alloys a tank is made of, their strength by
// product, thickness and temperature, the strength across a weld, and the
// allowable stress by rule set.
//
// # Words
//
//   - alloy: one alloy in one temper; "6061-T6" and "6061-T4" are two.
//   - row: minima of one product of an alloy, to a specification, in a range of
//     thickness. Typical values are shown and never used.
//   - yield: 0.2 % proof strength, Rp0.2 or Fty; Proof1: 1 % proof strength.
//   - parent: the wall away from welds. Weld zone: weld and heat-affected zone,
//     a material of its own.
//   - rule set: where the allowable stress and its factors come from.
//   - corner: one combination of factored pressure and line load.
//
// Tension is positive; demands are magnitudes. SI throughout, kelvin.
//
// # Rules of strength
//
//   - A thickness outside every row is refused; the rows are listed.
//   - Cold strength is opt-in; without it the room-temperature minimum holds.
//   - Loss of strength above 20 °C is always taken, the lowest of all curves;
//     without a curve the room value holds to 50 °C with a note, and hotter is
//     refused.
//   - Body-centred cubic metal below its least temperature is brittle.
//   - The mill certificate outranks the table. Recalled values are marked.
//
// # Functions
//
//	Query.Parent            minima of the specifications named in the data   minima_test.go, temperature_test.go
//	Query.WeldZone          EN 1999-1-1 Table 3.2, Aluminum Design Manual    zone_test.go
//	Query.TestedZone        coupons in place of the tables (practice)        zone_tested_test.go
//	Own.Parent, WeldZone    values stated by the user                        zone_test.go
//	Properties.Limits       ASME II-D App. 1; EN 13445-3 Table 6-1; flight   allowable_test.go
//	Limits.Normal           corners of flight, sums of the vessel rules      judge_test.go
//	Limits.Equivalent       principal stress, von Mises, Tresca              judge_test.go
//	Curve.At                linear between the points, never beyond          interpolation_test.go
//	Listing, WeldRows       every record as published                        published_test.go
//	DefaultFactors          the same, UG-99, 46 CFR 54.10, EN 13445-5        allowable_test.go
//
// # Not covered
//
// Statistics of coupons (material/weld), castings, bolting, fatigue and fracture (toughness
// is shown only), creep, composite overwrap. No code compliance is claimed.
package material
