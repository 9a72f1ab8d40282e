// Package port checks the openings of a tank: a tube, or a thick boss, welded
// into the cylinder or a head, often parallel to the tank axis and so oblique to
// the wall it pierces.
//
// # Words
//
//   - wall: the part the port stands in, by its mid-surface.
//   - bore chord d: the tube's inside diameter as the wall sees it in a plane.
//   - outside chord C: the same of the outside diameter, the cut-out.
//   - meridional plane: holds the tank axis and the tube axis; on the cylinder
//     it holds the cylinder's axis. Transverse plane: square to it.
//   - beside the radius: a tube on the cylinder whose axis is square to the cylinder's and
//     parallel to a radius; its long chord lies in the transverse plane.
//   - outboard: the side away from the tank axis (cylinder: forward);
//     inboard: the side toward it (cylinder: aft).
//   - obliquity φ: angle between tube axis and wall normal; β = 90° − φ.
//   - limit: how far along the wall, or off it, metal counts.
//   - strengths: one value per port, the welded one where the alloy softens.
//
// Pressures act on the concave side unless a load says otherwise. Lengths along
// the wall are measured from where the tube axis pierces the mid-surface.
//
// # Formulas, sources, tests
//
//	Chords, CutOut, Flat, TubeEnd   geometry, computed by two methods     oblique_test.go, cutout_test.go
//	  beside the cylinder's radius   PTB-4 recalled; computed             hillside_test.go
//	Area                            ASME VIII-1 UG-37, UG-40 read         oblique_test.go, published_test.go, limits_test.go
//	  the tube's own seam           UG-27, by hand                        tubeseam_test.go
//	  fillets within the limits     UG-40 read, by hand                   fillet_test.go
//	  each side alone, cones        UFC 4-159-01N read; computed          oblique_test.go
//	  pressure area                 EN 13445-3 clause 9 recalled          oblique_test.go, published_test.go
//	  lips, ellipses, inserts       geometry; UG-37 by hand               pad_test.go
//	PipingArea, PipeWall            ASME B31.3 304.3.3 read in examples   piping_test.go
//	  stress method                 ASME VIII-2 part 4.5 recalled         stressarea_test.go
//	LigamentEfficiency, DiagonalEfficiency  UG-53 read, diagonal recalled  ligament_test.go
//	OpenHoleStress                  Inglis, computed; round holes read    ligament_test.go
//	ExemptDistance                  ASME VIII-1 UG-36(c)(3) read          ligament_test.go
//	CheckInsert                     UG-27, UG-32 with E, by hand          pad_test.go
//	InsertBending                   BS 7910 Annex D recalled, by hand     insertseam_test.go
//	NormalRadius                    geometry, by hand                     normalradius_test.go
//	SphereFactor                    Jawad and Farr table 11.3 read        published_test.go
//	  holes into knuckles           geometry; UG-32 by hand               knuckle_test.go
//	StandardNeck, NeckWall, FilletOnlyNeck  UG-45 read, tables recalled   neck_test.go
//	CheckWeld, WeldPaths            ASME VIII-1 UW-16, UG-41 read in part weld_test.go
//	FilletFactor                    computed                              weld_test.go
//	CentreDistance, ShareLimit      computed; UG-42(a) read               spacing_test.go
//	CheckNeckAtProof, CheckWeldAtProof, CheckThrustAtProof  by hand       proof_test.go
//	CheckThrust, LocalStress, CylinderLocalStress  equilibrium; shallow shells, computed  thrust_test.go
//	Advise                          followed, and one step short          advice_test.go
//	CheckPlacement, SeamDistance    EN 13445-3 recalled; computed         placement_test.go
//
// # Not covered
//
// A tube neither radial, nor parallel to a radius, nor to the tank axis; loads from outside on a flat head, threads and covers. The tube of a head with pressure on its
// convex side is measured as if the wall were outward. The stress raised at an open
// hole and the ligaments of plain holes are shown, not checked: area replacement
// stands for them.
package port
