// Package bolting checks what closes a tank and can be opened again: a flat cover
// held by bolts over an O-ring or a gasket, a bolted flat head, and a fitting
// screwed into a boss.
//
// # Words
//
//   - thread: parallel, metric 6g/6H or unified 2A/2B; taper threads are refused.
//   - stress area A_t, root area A_r: of one bolt.
//   - seal diameter G: the circle on which the seal's reaction lies; the pressure
//     acts within it.
//   - thrust: pressure times the area within G.
//   - operating load W_m1, seating load W_m2: of all bolts together.
//   - preload: of one bolt when tightened; scatter: by how much of itself it may
//     turn out less or more.
//   - fitting: what is screwed into a boss, sealed on its own diameter.
//
// # Formulas, sources, tests
//
//	ParseThread, Thread.StressArea, RootArea  ISO 898-1, ASME B1.1, recalled        thread_test.go
//	Thread limits of size                     ISO 965-1, ASME B1.1, recalled        thread_test.go
//	StripAreas                                FED-STD-H28 form read, worked example thread_test.go
//	Seal.Line, Operating, Seating             ASME VIII-1 App. 2 read in part       joint_test.go
//	Drift                                     equilibrium, bounded                  joint_test.go
//	Outside                                   equilibrium of a ring                 joint_test.go
//	Allowable                                 ASME II-D, EN 13445-3, recalled       joint_test.go
//	Joint.CheckBolts, CheckSeal               the same; equilibrium                 joint_test.go
//	Joint.CoverThickness, CheckCover          ASME VIII-1 UG-34 read                cover_test.go
//	Bolts.Ligament, CheckLigament, RimBending ASME VIII-1 UG-53, UG-34 read         ligament_test.go
//	Fitting.CheckThread, CheckSeal            shear of the thread; equilibrium      fitting_test.go
//
// # Not covered
//
// The flange ring that a cover is bolted to, prying beyond the gasket's lever arm,
// stack loads through a bolted head, bending of bolts, fatigue, crushing of a gasket, taper and pipe threads, tapped holes.
package bolting
