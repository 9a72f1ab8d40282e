// Package heads holds the head shapes of a tank: meridian, exact volumes, wall by
// the rule sets and membrane stress. A shape is one file and one row in [Shapes].
//
// # Words and signs
//
//   - apex, tip: where a head closes on the axis, or ends short of it.
//   - seam plane: the end of the head towards the cylinder, without straight flange; x = 0.
//   - crown, knuckle: spherical middle and toroidal rim of a dished head.
//   - inside face: the face towards the tank's contents, to which every given
//     dimension belongs: concave, or convex on an inward head.
//   - φ: wall normal to tank axis. r1, r2: radii of curvature along the meridian and
//     round the axis. Tension and pressure on the concave side are positive.
//   - V: axial force that the head carries through a horizontal cut.
//
// # Membrane theory
//
// The part cut off at φ hangs on N_φ 2 π r sin φ = V. A square element with sides
// on both principal curves balances the pressure by N_φ/r1 + N_θ/r2 = p. With
// r = r2 sin φ these are [Membrane]. For gas V = p π r², so N_φ = p r2/2 and
// N_θ = p r2 (1 − r2/(2 r1)):
//
//	sphere R:       p R/2, p R/2
//	cone:           p r/(2 cos α), p r/cos α
//	ellipsoid a, b: r2 = a²/sqrt(a² sin² φ + b² cos² φ), r1 = r2³ b²/a⁴
//	knuckle:        r1 = r, r2 = r + (R − r)/sin φ
//
// In a liquid V = p(level) π r² + weight of what hangs below the cut; the caller gives it.
// Where r1 jumps the theory breaks: rims and knuckles are judged by other checks.
//
// # Functions, sources, tests
//
//	volumes, depths        Jones 2003 (read); computed           volume_test.go
//	parallel faces, radii  computed; Moss                        geometry_test.go
//	Membrane               Timoshenko; Johnson; Moss; Bhandari   membrane_test.go
//	…Vessel                ASME VIII-1 UG-27, UG-32, UG-34, 1-4  rule_test.go, hand_internal_test.go
//	…European, Beta        EN 13445-3 (recalled)                 rule_test.go, european_internal_test.go,
//	                                                             european_hand_internal_test.go
//	CheckThickness         rule sets                             check_test.go
//	CheckMembrane          membrane theory                       check_test.go
//	CheckZone, Seams.KnuckleInZone  membrane theory; geometry  zone_test.go
//	ShieldDrucker          Shield and Drucker (recalled)         knuckle_test.go
//	Dish.ThinKnuckle       ASME VIII-1 1-4(f) (recalled)         knuckle_test.go
//	Corner, Delta, AddedArea  ASME VIII-1 1-5 (partly recalled)  corner_test.go
//	European…End           EN 13445-3 (small end recalled)       corner_test.go
//	SeamJoint, TipJoint    edge theory of shell/edge             joint_test.go
//	…Convex, CheckTipPlate ASME VIII-1 UG-33 (recalled), UG-34   joint_test.go
//	KnuckleLimits, CheckKnuckle  the lowest of those in range    knuckle_test.go, european_internal_test.go
//
// # Not covered
//
// The verdict on a junction, which is the check of shell/edge with the numerical shell; buckling; bolted closures; and the
// European flat head, whose coefficient C2 stands only in a chart. Nothing here is a claim of compliance
// with a code: local rules and a licensed engineer decide.
package heads
