// Package study makes many assessments of one tank to answer one question: how
// thick must it be, what does an input do, how likely does a check fail.
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
// # Scatter
//
// Inputs are drawn by a Latin hypercube; each sample is a tank. An assessment takes
// milliseconds, so that of very many samples most are decided otherwise:
//
//  1. Tanks are assessed that fill the range of the inputs evenly, with its corners, and so
//     are the first 1000 samples. The range ends at 3.3 deviations of a normal input; samples
//     beyond are assessed.
//  2. For each check a polynomial of second or, where there are tanks enough, third order in
//     the inputs is fitted to three quarters of the former by least squares: the logarithm of
//     capacity over factored demand, which is nearly straight and 0 where the check just holds.
//  3. Its error is the largest at any tank assessed, those it was not fitted to among
//     them. Three times that is its band.
//  4. A sample outside of the bands of all checks is decided by them; every other one is
//     assessed, with all its checks.
//
// A check that answers alike in all these tanks is taken to answer so. Not decided
// by a surface are checks that some of the tanks leave unmade or without demand, all
// checks where some tanks cannot be assessed, and those for which more than 1 sample
// of 50 would have to be assessed, as where the margin jumps. They are counted over the
// first samples alone, which are drawn as all are, neither over the design
// nor over what was assessed for being near to failing; the interval is that of the
// smaller count.
//
// Wilson's interval is that of drawing alone, of samples that know nothing of one another;
// those of a hypercube scatter less. What no tank met, a jump of a table or a case far
// out, no surface knows of: of n samples that tried them, none is worse than the worst, so
// that with 95 % confidence at most 1 − 0.05^(1/n) of all are ([Unseen]). [ScatterOptions]
// can have every sample assessed. Response surfaces: Box and Wilson 1951 (recalled); three
// errors for a band and 3.3 deviations are choices made here, held by tests against
// samples that are all assessed.
//
// # Not covered
//
// What metal does not cure is named and left: a port too near a rim or a
// neighbour, a measured wall, a joint that may not be used, a forbidden pair of
// contents and alloy. Inputs that depend on one another are not drawn so.
package study
