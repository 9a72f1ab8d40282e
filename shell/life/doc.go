// Package life asks how long a welded tank lasts: fatigue of its welds, growth of a flaw that
// the examination missed, whether a crack leaks before it bursts the tank, and what flaw a proof test finds.
//
// # Words
//
//   - range: largest less smallest stress of a cycle; from empty, the stress itself.
//   - event: what comes so and so often; events are ordered as harms most, the largest stress of any before the least of any.
//   - class: stress range that a weld detail bears two million times (FAT); steel and aluminium have their own.
//   - scatter factor: 4 on life, once. Never on stress.
//   - usage: sum of cycles over cycles to failure (Miner), before the scatter factor.
//   - flaw, surface crack: half ellipse on one face, depth a, length 2c; a/c its shape. Through crack: half length c.
//   - toughness K_c: stress intensity at which a crack runs. Lower bound in service, upper bound at the proof.
//   - leak before burst: a crack grows through the wall and the tank leaks, before the crack runs.
//   - zone: the metal beside a weld, in which flaws are assumed; its yield and its toughness count.
//
// Stress is tension positive, membrane and bending at the place together, taken as membrane; K in Pa m^0.5.
//
// # Functions, sources and tests
//
//	Class.Cycles, ClassOf, PortClass,   EN 13445-3 clause 18, IIW (recalled)      weldclass_test
//	RingClass
//	Usage, CheckLife                    Miner, factor 4 (recalled)                weldclass_test, check_test
//	WorstOrder                          rainflow of sorted extremes (computed)    order_test
//	StrainLife.Cycles                   Coffin, Manson, Basquin; course (read)    strainlife_test
//	StrainLife.Range, CyclesAt          Neuber, cyclic curve (recalled)           strainlife_test
//	HoleStress, PortIndex               Kirsch (read); NB-3338.2 (recalled)       portstress_test
//	SurfaceCrack.Shape, Intensity       Newman and Raju 1981 (recalled)           newmanraju1981_test
//	ThroughCrack.Intensity, Folias,     Folias, two open texts (read)             folias_test
//	Bulged
//	CheckLeakBeforeBurst                criterion B (recalled)                    check_test
//	Ligament                            net section of a part-through flaw (rec.) growth_test
//	Forman, Paris, UpTo, Grow           Schwarmann 1986 (read); integration       growth_test
//	Screened, ProofFactor               surface crack turned round                screen_test
//	ToughnessRatio                      NASA-STD-5019A 6.2.5 (read)               screen_test
//
// # Not covered
//
// a/c above 1 and below 0.2, a/t above 0.8: refused. Stress above the yield of the zone, or above 0.8 of it where a
// flaw is screened. Corrosion fatigue, stress corrosion, growth under steady load, mean stress (no credit is taken),
// that an early overload slows a crack. Titanium, castings and joints with a lap: no class is known here. Creep.
package life
