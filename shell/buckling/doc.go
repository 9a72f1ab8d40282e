// Package buckling answers when a thin shell of the tank gives way sideways:
// cylinder, cone and dished head in compression, bending, shear, and pressure
// from outside.
//
// # Words and signs
//
//   - R, t: mid-wall radius and wall for strength (tolerance, thinning and
//     corrosion deducted). L: length between lines of support.
//   - Compression and pressure from outside are positive here; a pressure
//     across the wall, inside minus outside, keeps its sign and is named so.
//   - Z = L²√(1−ν²)/(R t): Batdorf's parameter. ω = L/√(R t).
//   - knock-down γ, α: share of the perfect shell's stress that tests reach.
//   - classical stress σ_cl = E t/(R √(3(1−ν²))).
//   - gain: rise of the knock-down by inside pressure; 0 unless the user
//     gives a table from his copy of the source.
//   - line load N: force per length of circumference at mid-wall.
//   - buckling factor FS: multiplies the limit line loads once, and stands in
//     place of the load factors; a relieving load is taken at its smallest
//     and carries no factor.
//   - critical: before any factor. allowable: after the factor of its method.
//   - σ_y: welded value where a weld lies in the wall. E: lowest of the case.
//
// # Functions
//
//	function                              source                              tests
//	KnockdownCompression, …Bending        SP-8007 Rev 2 eqs 6-16              sp8007_2020
//	Tube.CompressionStress, BendingStress SP-8007 eqs 1-16                    sp8007_2020, tanks
//	Tube.LengthFactor                     general shell eigenvalues           tanks, published
//	NewMetal, Metal.PlasticCompression, … SP-8007 eqs 11, 12, 31, 32, 40      plasticity
//	Gain.At                               table of the user                   formula, check
//	Tube.European…                        EN 1993-1-6 Annex D                 rotter1990, published
//	Tube.LateralPressure, HydrostaticPressure,
//	MediumPressure, LongPressure,
//	PressureSP8007                        SP-8007 eqs 17-32                   sp8007_2020, tanks
//	Tube.PressureEN13445                  EN 13445-3 cl. 8 (memory)           tanks
//	Tube.PressureUG28                     ASME VIII-1 UG-28, closed (memory)  published, tanks
//	Tube.PressureDivision2                ASME VIII-2 4.4.5 (memory)          published, tanks
//	Rings, Cylinder.Ring…, Bay, Section   Bryant; UG-29; EN 13445-3 (memory)  rings
//	Tube.TorsionStress                    SP-8007 eqs 33-40                   sp8007_2020
//	Column.Euler, Column.Johnson          Euler; Bruhn (memory)               formula
//	Cone.…                                SP-8019; UG-33(f) (memory)          published, formula
//	Dome.…                                SP-8032; UG-33; EN 13445-3 (memory) published, tanks, formula
//	Cylinder.Resistance, Check…           the above, the lowest governs       check, tanks, property
//	ConeCompression.Check                 SP-8019, linear sum                 check_cone
//
// # What governs
//
// Compression: the larger of the linear sum R_c + R_b + R_s + R_p by SP-8007
// and the ratio of EN 1993-1-6, class C. Pressure from outside: the lowest
// allowable of all methods in range; SP-8007, SP-8019 and SP-8032 are divided
// by the buckling factor, the vessel forms carry their own. EN 1993-1-6 under
// pressure from outside is shown beside them and decides nothing. Rings count where
// wall between them, rings with wall between the heads and the ring itself all
// stand more than the plain cylinder at its full length; else that decides.
//
// # Not covered
//
// Stringers and sandwich: no method for them is at hand. Rings other than flat
// bars; credit for rings in compression and bending: there is none. Shells with an edge not held round, holes wider than a tenth of the
// diameter, dents, walls of more than one thickness. A dished head pressed
// along its meridian; shear and torsion of a cone; the interaction of shear and
// compression by EN 1993-1-6; second-order moments of a column. Buckling of a
// knuckle under inside pressure is in package heads.
package buckling
