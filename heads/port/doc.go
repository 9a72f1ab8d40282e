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
//   - outboard: the side away from the tank axis (cylinder: forward);
//     inboard: the side toward it (cylinder: aft).
//   - obliquity φ: angle between tube axis and wall normal; β = 90° − φ.
//   - limit: how far along the wall, or off it, metal counts.
//   - strengths: one value per port, the welded one where the alloy softens.
//
// Pressures act on the concave side unless a load says otherwise. Lengths along
// the wall are measured from where the tube axis pierces the mid-surface.
package port
