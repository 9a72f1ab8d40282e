// Package tank turns a tank file (TOML) and the files it names (CSV) into a [Tank]:
// checked, in SI, with every default written down.
//
// # Words
//
//   - key: one name of the tank file, by its path: "head.aft.half_angle".
//   - field: the row of a key in keys*.go: form, unit, sense, example. Reader,
//     schema, near misses and examples all go by these rows.
//   - sense: what a number must be to mean anything, as above zero.
//   - fault: one thing that is wrong, with file, line and column.
//   - default: a value that nobody wrote; the sheet prints it.
//
// # How a file is read
//
//	read.go      decodes TOML, and tells where it stops being TOML
//	places.go    finds line and column of every key and value
//	reader.go    tables by their rows into structs; unknown and missing keys
//	scalar.go    single values: text, choices, numbers, text with a unit
//	check*.go    what one key asks of another; defaults
//	sheetfile.go comma-separated files; flight.go: history; coupons.go: coupon tests
//
// All faults are told in one run, by position. One fault is told once: a
// misspelt key is not missing too, and nothing is built on a value that was refused.
//
// # Formulas
//
//	function    source                              test
//	atmosphere  U.S. Standard Atmosphere, 1976      tank_test.go
//	leastWall   (t − tolerance)(1 − thinning) − c   tank_test.go
//
// # To add a key
//
// A row in keys*.go, a field of that name in its struct with the unit in
// brackets, and the checks it asks for. A test fails while either is missing.
//
// # Not covered
//
// More than one diameter or wall in the cylinder, common bulkheads, overwraps and
// shells that are not of revolution have no keys. Whether a value suits the
// material's row, the joint's place or the rule is for the assessment to say;
// [Tank.Fault] gives it the position.
package tank
