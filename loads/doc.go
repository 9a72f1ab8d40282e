// Package loads finds where the liquid lies in a closed tank, the pressure it
// puts on every point of the wall, and the force in the wall along the axis.
//
// # Words and signs
//
//   - station z: along the axis, positive forward, 0 at the aft seam.
//   - pressure: across the wall, inside minus outside, unless named absolute.
//   - load factor: acceleration that the liquid feels, in g0, gravity
//     included: 1 standing on the pad, 0 in free coast. Positive axial factors
//     press the liquid aft.
//   - ullage: the gas above the liquid. level: where the free plane meets the axis.
//   - liquid head: pressure above that of the ullage.
//   - free body: everything forward (or aft) of a cut, held in balance by the
//     force in the wall and the pressure on the cut.
//   - stack: what stands on the tank and what it stands on, joined at the aft
//     and forward joints. Forces are positive in tension.
//
// # Pressure
//
// A liquid that does not move in the tank carries p = p_u + ρ g0 d, d being the
// distance below the free plane along the effective gravity, times its factor.
// With n_y toward +x the free plane is n_x z − n_y x = c: the liquid fills the
// aft side of it for positive n_x, the forward head for negative. The heads cut
// into the wedge, so c is found from the volume, which is kept; the point of
// greatest depth is where −n_x z + n_y r(z) is largest, not the apex.
//
// # Force in the wall
//
// The pressure on a cut and the liquid forward of it pull together
//
//	A = ∫ p dA − n_x g0 m_liq,fwd = p_u π r² + W
//
// W is 0 in a cylinder with the level below its forward tangent: only ullage
// pressure pulls there, not the local pressure. W > 0 with liquid up in the
// forward head; W < 0 in an aft head that tapers. Aft of the joint that carries
// the tank the reaction adds the whole liquid weight, and the same force is
// p π r² + n_x g0 (mass aft of the cut), which a test confirms from that side.
// Gas pressure is taken on the mid-wall radius, as thin-shell theory does: p r/2
// is then high by t/(2r) in tension. Where it relieves, give the inside radius.
//
// Quoted section forces hold all inertia on their free side and leave out
// pressure thrust and this tank's liquid; the tank's own masses between the
// section and the cut are added, and so is the liquid's lateral inertia.
//
// # Functions
//
//	function                      source                                   tests
//	LevelForVolume                exact volumes, Jones, Chemical           jones2003, level
//	                              Processing, Dec 2003, by way of a
//	                              general fluids library (read)
//	NewState, Pressure…, Mass…    fluid statics (computed); Cengel and     level, tilt, state,
//	                              Cimbala ex. 3-12 (memory)                history
//	State.FreeBody, WallForce     statics (computed)                       wall
//	State.InwardHeadForce         statics (computed)                       inward
//	Peaks                         derivative of a product (computed)       peaks
//	Wind                          statics; drag coefficient (practice)     wind
//	Slosh, State.Sloshing         potential theory, NASA SP-106 (memory)   slosh, wave
//	StepFactor                    single mode under a step (memory)        step
//	WaveSpeed, Line.Hammer        Joukowsky; a course, a textbook (read)   hammer
//
// # Not covered
//
// Sloshing in higher modes, beyond the linear range or in a head; transients in lines beyond
// a valve that closes; liquid that compresses; volume that hardware
// inside the tank displaces (leaving it out reads the level low); forces of
// baffles on the wall; the wall's own bending at a joint or support.
package loads
