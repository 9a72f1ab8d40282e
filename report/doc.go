// Package report is the sheet as data, and its two plain views: text and JSON.
// It prints what the calculation packages found and computes no engineering
// number itself.
//
// # Words
//
//   - sheet: one assessment of one tank; all that is printed.
//   - verdict: not satisfied if any check is; else not assessed if any is; else satisfied.
//   - governing check: the one with the least margin among those made.
//   - demand, capacity, factor, margin: as in report/check.
//   - recalled: a value or formula quoted from memory, to be confirmed.
//
// # Rounding
//
// A demand is rounded up when it is shown, a capacity and a margin down, an
// input to the nearest, so that a sheet never looks better than its numbers; a
// margin under zero never shows as zero. JSON carries every digit.
//
// # Views
//
//   - [Text]: summary for a terminal; opens and closes with the verdict.
//   - [Sheet.MarshalJSON]: the format other programs read.
//   - report/pdf: the drawn sheet.
//
// Every view refuses a sheet whose stated verdict differs from that of its
// checks; see [Sheet.Settle].
//
// # Not covered
//
// Reading a sheet back, and translation: the words of the sheet are English.
package report
