// Package study makes many assessments of one tank to answer one question: how
// thick must it be.
//
// # Words
//
//   - stock: the walls that can be bought, from [stock] in the tank file or
//     [DefaultStock].
//   - part: cylinder, head.aft, head.forward, or a group of ports as written in
//     the file; what is changed is a part's wall, a port's pad, tube or fillets.
//   - hold: no check of the part is not satisfied, and none that was made before
//     the change is left unmade by it. A check that this tank cannot have made
//     stays not assessed: sizing does not turn it into a pass.
//
// # What is searched
//
// Walls first: each part alone, in every case and at proof, up the stock until it
// holds. Then the ports of a wall: for each wall of the stock from there up, each
// group takes the lightest pad, tube and fillets that hold; the wall with the
// least mass altogether stays. Last a whole assessment of the tank as changed,
// which has the last word. With equal mass the fewest changes win.
//
// # Not covered
//
// What metal does not cure is named and left: a port too near a rim or a
// neighbour, a measured wall, a joint that may not be used, a forbidden pair of
// contents and alloy.
package study
