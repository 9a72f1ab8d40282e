// Package drawing holds figures as data, in millimetres on paper, and writes
// them as SVG. The PDF draws the same figures, so that both show one picture.
//
// # Words
//
//   - figure: a sheet of paper of its own with lines, arcs, polylines, fills and texts.
//   - x runs to the right and y down from the upper left corner, both in millimetres.
//   - grey: 0 is black, 1 is white; there is no colour.
//
// Fills are drawn first, then polylines, lines, arcs and texts, each in its
// order. Numbers are written with two decimals: the same figure gives the same
// bytes.
//
// # Not covered
//
// Colour, pictures made of pixels, and text wrapped over several lines.
package drawing
