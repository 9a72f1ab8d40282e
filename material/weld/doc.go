// Package weld answers which share of the wall's strength a joint carries and
// how wide the metal beside it is softened.
//
// # Words
//
//   - kind: how a joint is made; the type of Table UW-12.
//   - examination: radiography over the full length, by spots, or none.
//   - category: where a joint stands (UW-3): A longitudinal, inside a head, or
//     the girth of a hemisphere; B another girth; C flat head or flange; D a
//     tube in a wall.
//   - efficiency: share of the allowable stress that counts normal to a seam.
//   - weld zone: weld and heat-affected zone, to each side of the centre line.
//   - coupon: a strip cut across a weld made as the tank's welds are, pulled apart.
//   - basis: A, of all such welds 99 % are stronger than the limit with 95 %
//     confidence; B, 90 %.
//   - inspection factor: what the examination of the tank's weld counts beside
//     a strength from coupons.
//
// # Functions
//
//	Joint.EfficiencyAt   ASME VIII-1 Table UW-12; EN 13445-3 5.6   uw12_test.go
//	Joint.AtCone         ASME VIII-1 UW-3; practice                uw12_test.go
//	SeamlessEfficiency   ASME VIII-1 UW-12(d)                      uw12_test.go
//	ZoneWidth            EN 1999-1-1 6.1.6.3                       zone_width_test.go
//	ToleranceFactor      noncentral t; e-Handbook 7.2.6.3          tolerance_test.go
//	BasisLimit           MMPDS 1.4.1; Anderson-Darling; Grubbs     coupon_test.go
//	Joint.Inspection     practice                                  coupon_test.go
//	ReducedRatio         MIL-HDBK-5 9.5 (recalled)                 coupon_test.go
//
// # Not covered
//
// Strength of the weld zone (material); the joggle joint and jackets of the
// table, which a tank of this kind does not have; limits of EN testing groups
// on steel, thickness and pressure; welding procedure, defects, misalignment.
// Coupons of several plates, welders or days in one set: pooling them needs a
// test that they are alike. A limit is that of the plate, welder and day shown.
package weld
