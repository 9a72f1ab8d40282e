// Package check is the ground floor: what a check of the tank is, what it says
// and when it may say "satisfied". Every calculation package returns its
// answers as [Result]; the sheet prints them and computes nothing.
//
// # Words
//
//   - quantity: a number with symbol, name and SI unit.
//   - demand: what the load asks of the part, a magnitude.
//   - capacity: what the part can give, before the factor.
//   - factor: required factor of safety, at least one.
//   - margin of safety: capacity/(factor · demand) − 1.
//   - source: document and place, and how the value was obtained.
//
// A [Result] that nobody filled in is not assessed, never satisfied; so is one
// with an error, a NaN, an infinity, a factor under one, a negative demand or
// no capacity. Margin and status are methods, so that they cannot disagree with
// the numbers printed beside them.
//
// # Not covered
//
// Units other than SI (report/unit) and printing (report).
package check
