// Package pdf draws the sheet: the document that is printed, checked by hand,
// signed and kept.
//
// # Words
//
//   - paper: the document while it is written, with the place of the next line.
//   - block: lines that stay on one page.
//   - site: where in the section a quantity of a check of areas holds, by the first
//     words of its name: "meridional outboard".
//   - figure: a drawing of report/drawing placed on a page.
//   - place: the rectangle of a signature on the last page.
//
// # The same input gives the same bytes
//
// The dates in the file are the issue date of the sheet, or 2000-01-01 for an
// undated one, never the clock; fonts are copied for every document, because
// the subsetter writes into what it is given; pages are counted by writing the
// document twice, because a placeholder for their number would be set with the
// wrong width and with digits that the font subset lacks.
// The first writing is dry: it measures but sets nothing, and reads no font. Widths are
// looked up once a letter for all documents; a check is laid out once; the sheet as
// data is written, and pages are compressed, on a second processor where there is one.
//
// # Letters
//
// Everything printed is set in one family of fonts, embedded. A letter that it
// lacks, or that the file format cannot take, is printed as U+FFFD, never left
// out.
//
// # Not covered
//
// Signing (report/sign), and archival profiles of the file format.
package pdf
