// Package assess turns a tank into a sheet: which checks apply in which case,
// which rule each is made by, and which governs. It computes no stress itself;
// the calculation packages do.
//
// # Words
//
//   - part: the cylinder or one head, with its walls for strength and for mass.
//   - wall: nominal for mass and volume; least = (nominal − under-tolerance) ×
//     (1 − thinning) − corrosion for strength.
//   - case: one written load case, or meop, which always exists.
//   - state: one case with its liquid at one end of its density range.
//   - near, clear: somebody may stand by, nobody may; each has its rule.
//
// # Order of work
//
// [Assess]: model (what the tank is), cases (what it sees), checks part by part
// in every state, the worst of the states kept, proof, sheet.
//
// # Not covered
//
// Every check that is not made is listed by unbuilt.go with its reason.
package assess
