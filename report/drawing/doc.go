// Package drawing holds figures as data, in millimetres on paper, and writes
// them as SVG. The PDF draws the same figures, so that both show one picture.
// Flat parts at full size are written as SVG and DXF too.
//
// # Words
//
//   - figure: a sheet of paper of its own with lines, arcs, polylines, fills and texts.
//   - x runs to the right and y down from the upper left corner, both in millimetres.
//   - part: outlines to cut and to scribe, in millimetres of metal, y up; its layers
//     are CUT, MARK and TEXT.
//   - bulge: tan of a quarter of the sweep of an arc between two corners.
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
