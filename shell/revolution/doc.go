// Package revolution solves thin shells of revolution of any meridian: the
// tank from tip to tip, with its knuckles, sharp joints, steps, rings and flat
// ends, by finite elements along the meridian.
//
// # Words and signs
//
//   - meridian: the line that makes the wall when turned about the tank's axis.
//     It runs from the aft tip outwards, forward, and inwards to the forward tip;
//     the outward normal n lies on its right.
//   - segment: part of it with one curve, one wall, one material. node: the ends
//     and the joints, numbered 0 (beginning), i (before segment i) to the last.
//   - station: a place where results are given. Both sides of a joint are one.
//   - r, z: radius and place along the axis, positive forward; s along the meridian.
//   - N_φ, N_θ: meridional and hoop force per length, tension positive. M_φ, M_θ:
//     moments per length, positive where they stretch the outside:
//     σ = N/t ± 6M/t², + at the outer face.
//   - β: rotation of the normal, n·u′.
//   - C = E t/(1 − ν²), D = E t³/(12 (1 − ν²)).
//
// Everything is on the mid-surface, the pressure too: a load of p on a cylinder
// of mid radius R gives p R/t, where the inside radius would give t/2R less.
//
// # The element
//
// Quintic Hermite functions of u_r and u_z along the exact curve, whose tangent,
// normal and curvature stand in the strains (frame.strains). Unknowns of a node
// are u_r, u_z, β, ε_φ and the derivatives of the last two; at a joint u_r, u_z
// and β are shared and the others each side's own, so that a kink, a step of the
// wall or a ring may break the strains there. A segment may begin off the end of
// the one before: a rigid arm joins them, and carries the pressure on the band
// between. The matrix is banded, eleven beside the diagonal, scaled, factored
// once by the Cholesky method; each load is refined once.
//
// # Functions
//
//	function                             source                                   tests
//	New, Model.Solve                     Sanders 1959, linear theory (memory)     exact, tables, joints
//	Model.MeshError, Model.Refined       halved elements                          exact
//	Model.SolveModerate                  Reissner 1950, Sanders 1963 (memory)     moderate
//	Model.Snapthrough                    the same, followed past the limit point  cap
//	Model.Bifurcation                    Sanders 1963, Koiter 1960 (memory)       classic, bifurcation
//	Model.BifurcationModerate            the same from the moderate state         cap, moderate
//	Model.LimitLoad                      Drucker, Prager and Greenberg 1952;
//	                                     Simo and Taylor 1986 (memory)            limit, plastic_internal
//	Hemisphere, Ellipsoid, Torisphere,
//	Cone, Toricone, Flat, Cylinder       geometry                                 tables, joints, bad
//	Stress.Equivalent                    von Mises, Tresca, principal             joints
//
// # Range
//
// Thin walls: second principal radius over wall from 10 up, which every Station
// gives as Slender; nearer the axis of a cone or beside a small hole it is less
// and the stress there is not a shell's. Linear states: elastic, displacements
// small beside the wall. Moderate rotations: elastic, rotations small beside one.
//
// # Buckling
//
// Load factors are those of the perfect elastic wall. A real one fails at a part
// of them, by a knock-down that the caller states, and a knuckle or a sharp joint
// usually yields first: they are a second opinion and never raise an allowable.
// A support without Waves holds only the state without waves: a skirt that keeps
// the seam round is to be said. One wave around the axis is looked at only where
// the supports leave the tank no motion as a whole.
//
// # Limit load
//
// What a wall that does not harden can carry with its shape unchanged: to hold
// against burst and proof where a sharp joint or a thin knuckle is beyond
// shakedown. It says nothing of the strain on the way, of the weld's ductility,
// or of buckling.
//
// # Cost
//
// Linear in the number of elements: 300 take some 2 ms for the model and 0.5 ms
// for each case. The default mesh of a tank has about a hundred and is within
// 0.01 per cent; on it Bifurcation takes 0.02 to 0.3 s, LimitLoad 0.1 to 0.2 s and
// BifurcationModerate 0.2 to 1.5 s, thin walls under inside pressure the most.
//
// # Not covered
//
// Loads that vary around the axis; hardening, creep, imperfections; branches (a skirt is a support at its node);
// shear deformation through the wall; temperature; openings off the axis.
package revolution
