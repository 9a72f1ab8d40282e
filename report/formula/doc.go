// Package formula reads the formulas of checks as they are printed,
// "σ_h = p r/(t cos α) ≤ E S", so that they can be set with fractions, roots and
// indices, and worked out with numbers in place of their symbols.
//
// # The notation
//
//   - statement: sides joined by =, ≤, ≥, < or >; a formula is a list of them, parted
//     by semicolons, or by commas with a blank after them.
//   - symbol: letters with an index after "_", in braces or up to the end of the word;
//     a comma between letters belongs to it: N_x,p. A symbol that the caller names may
//     hold blanks and strokes: "D/2h".
//   - product: factors side by side, or joined by "·" or "×"; a function takes the one
//     factor after it: sin φ t is t times the sine of φ.
//   - power: "^" or a raised digit, over a number, a symbol or what stands in brackets.
//   - words: any text that is not a formula. A statement may begin with words that end
//     in a colon.
//
// What could be read in two ways is not read: a/b c is a quotient only in brackets,
// and a statement with an unknown word of two small letters or more is words. Such a
// statement keeps its text and is printed as it stands.
//
// # Functions
//
//	Parse              a text in statements
//	Expr.String        an expression in one line, which reads back as the same
//	Eval               its value, symbols being given; an unknown one is an error
//	Substitute         the same expression with numbers in place of symbols
//
// Sources: the notation is this program's own; tests hold it against hand-worked
// values (formula_test.go).
//
// Not covered: sums over an index, integrals, cases, units: whoever substitutes writes
// the unit beside the number and evaluates in SI.
package formula
