// Package shell checks the plain cylinder of the tank: membrane stress, the
// wall that a rule asks for, and which seam governs.
//
// # Words and signs
//
//   - R, R_m, R_o: inside, mid-wall and outside radius; R with the corrosion gone.
//   - t: least wall, tolerance, thinning and corrosion deducted. The European
//     method calls it e.
//   - p: pressure across the wall, inside minus outside, highest over the part,
//     liquid head included.
//   - N_x: axial force in the wall per length of circumference at mid-wall; the
//     part from gas and liquid comes from the free body (package loads), never
//     from the local pressure.
//   - long seam, girth seam: welds along and around; hoop stress pulls on the
//     long seam (E_l), axial stress on the girth seams (E_g).
//   - S, f: allowable membrane stress. Tension is positive.
//
// # Functions
//
//	function                             source                              tests
//	Cylinder.HoopStress, Sphere.Stress   equilibrium; Case, Chilver and Ross singer, companion, published
//	Cylinder.LameStress, BoreHoopStress,
//	Sphere.LameStress                    Lamé                                bhandari, published, formula
//	Cylinder.YieldPressures, Collapse…   Lamé in the yield conditions; Hill  formula, hand
//	RequiredThickness…, Allowable…       ASME VIII-1 UG-27, App. 1-1 to 1-3  published, formula
//	…EU                                  EN 13445-3, 7.4 (memory)            formula
//	Cylinder.GirthGoverns                comparison of the two               singer, companion, formula
//	VonMises, Tresca, Elastic, Growth    plane stress                        companion, published
//	RestrainedStress, TemperatureStep,
//	GradientStress                       compatibility; elastic foundation   thermal
//	Cylinder.Check…                      the above against material.Limits   check
//
// A required wall uses the clause with its own radius: the terms 0.6 p and
// 0.4 p belong to the inside radius, App. 1-1 to the outside, the European form
// to the mean. The stress checks use mid-wall; they read a few thousandths lower
// in a thin wall, so that both are made.
//
// # Not covered
//
// Stress near a head, ring or support; openings (heads/port); misalignment at a
// seam; compression and outside pressure (shell/buckling); creep; more than one wall thickness
// along the cylinder.
package shell
