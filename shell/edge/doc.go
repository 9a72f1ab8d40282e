// Package edge holds the closed forms of the stress where walls meet: cone, dome, cap or flat plate on a
// cylinder, steps and rings, misaligned welds; and the check of a joint, in which the numerical shell governs.
//
// # Words and signs
//
//   - joint: where two walls meet, at one mid-wall radius R. Corner: a joint without a knuckle.
//   - large end, small end: of a cone; at a large end its membrane force pulls the joint inwards, at a small
//     end outwards.
//   - N_x: axial force per circumference, in the head at the joint; for gas p R/2. With liquid it is the free
//     body's, never the local pressure times R/2.
//   - edge loads H radial and outward positive, M positive where the inside face is in tension.
//   - membrane: mean over the wall; bending: 6 M/t², positive with tension on the inside face.
//   - local membrane: membrane at a joint, the edge effect included. Range: the largest change of
//     membrane and bending stress between any two states, zero among them.
//
// A long cylinder under edge loads is a beam on an elastic foundation: w = c (H + b M), rotation −c b (H + 2 b M),
// c = 1/(2 b³ D), b⁴ = 3 (1 − ν²)/(R t)². A cone, a sphere and an ellipsoid near their rim are taken as the cylinder of
// the same second principal radius, of which cos α (cone) or sin φ0 (cap) of a radial load bends the wall.
//
// # Functions, sources, tests
//
//	Cone.Solve, LargeEndCoefficients, LeadingTerm  edge theory; numerical shell (computed)  cone_test.go
//	Dome.Solve, Cap.Solve, RingForce               Timoshenko (recalled); computed          dome_test.go
//	the same beside the numerical shell            shell/revolution (computed)              numerical_test.go
//	Step.Solve with ring, Flat.Solve               Timoshenko (recalled); computed          ring_test.go
//	HiLo, …HiLo, Peaking, OutOfRound               BS 7910 form (recalled); computed        misalign_test.go
//	DecayLength, Clear, Interact                   computed; common practice                ring_test.go
//	Junction.Check, CheckProof, Seam.Check         limits of the rule sets                  junction_test.go
//	RangeLimit, PrimaryAtProof                     ASME VIII-2 forms (recalled)             junction_test.go
//
// # Not covered
//
// Bending that begins away from the joint (knuckle, inside of a flat ellipsoid), cones over 60 degrees and joints that
// interact: the numerical shell only. Buckling of the compressed ring at a large end. Inward caps beyond the force of their ring. Nothing here is a claim of
// compliance with a code.
package edge
