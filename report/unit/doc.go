// Package unit turns text with a unit into SI: "3 mm" is 0.003 m; and, for messages
// about a tank file, a number back into the unit a text was written in. What the
// sheet prints is rounded and given its unit by package report.
//
// # Words
//
//   - kind: what a value measures; it decides which units may stand there.
//   - pressure: across the wall, inside less outside; also stress and modulus.
//   - absolute pressure: above vacuum. The two kinds share the units without mark
//     (bar, psi); barg and psig belong to the first only, bara and psia to the
//     second only.
//
// Factors are exact rationals, the conversion is exact and rounded once, so "3 mm"
// is the float64 nearest to 0.003. Angles and shop fractions ("1 1/2 in") likewise,
// but for π.
//
// # Functions
//
//	function  source                                   test
//	Parse     definitions of the units, see kind.go    units_test.go
//	Like      the same                                 like_test.go
//	Near      restricted Damerau-Levenshtein distance  near_test.go
//
// # Not covered
//
// Compound text ("5 ft 3 in"), thousands marks, decimal commas, and units that no
// key of a tank file needs. They are refused, never guessed.
package unit
