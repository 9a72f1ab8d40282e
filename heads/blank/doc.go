// Package blank lays the parts of a tank flat: the plates to cut, the holes in them
// at true outline, and the templates to wrap round tubes.
//
// # Words
//
//   - blank: a flat part as it is cut, its outside face up.
//   - sheet, sector, disc: the plate of a course, of a cone, of a formed or flat head.
//   - pad: the doubler round a tube, laid flat about its own mid-surface.
//   - template: paper wrapped round a tube, to mark or cut its end.
//   - outline: the edge of a hole cut square to the plate, wide enough at every depth of
//     the wall; longer than the cut through the mid-surface.
//   - gap: root gap of a seam. kerf: width of the cut. clearance: room round a tube.
//   - zero mark: the line of clock 0°.
//
// All is from nominal walls and lies on the mid-surface, which keeps its length in
// rolling. Forward is up and clock rises to the right as seen from outside; on the
// concave outside of a head that bulges inward it rises to the left.
//
// # Functions, sources, tests
//
//	Outline, FaceLine  unrolling, computed; rolled up again                outline_test.go
//	Sheet, Sector      plane geometry; area and arcs of the rolled part    sheet_test.go, sector_test.go
//	Tube.End           the faces' own meridians; PC rows by two methods    tube_test.go
//	Diameters          common practice; closed forms of area and meridian  disc_test.go
//	Doubler            as Outline                                          pad_test.go
//	Cover              plane geometry                                      cover_test.go
//
// # Not covered
//
// Spring-back, shrinkage of welds, trimming, the preparation of edges, and the shift of
// the neutral line in bends under five walls of radius, which is only warned of. Domes,
// knuckles and the pads on them cannot be laid flat and are refused. Tip plates and
// rings are not drawn: the tank file does not say how they sit; of a bolted cover the edge is
// scribed only, since the file has none. A tube normal to a
// dome has no template here.
package blank
