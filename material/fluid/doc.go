// Package fluid holds the propellants and test fluids: density over
// temperature, saturation, what water does under pressure, and which metals are
// reported to suffer.
//
// # Words
//
//   - saturated: liquid and vapour together, one pressure at one temperature.
//   - grade: the limits of density within which a fuel may be delivered.
//   - share: percent by mass, never by volume.
//
// Every number keeps its source and how it was obtained. Curves are linear
// between their points and refused beyond them; so is everything at or above
// the critical temperature.
//
// # Functions
//
//	Density, VaporPressure, VaporDensity   equations of state named in the data; OIML R 22   densities_test.go
//	DensityRange                           limits of grades named in the data                densities_test.go
//	Compressibility, Expansion             IAPWS-95                                          water_test.go
//	Compatibility                          papers and guides named in the data               compatibility_test.go
//
// # Not covered
//
// Mixtures other than by the listed shares, ethanol below 70 %, supercritical
// contents, decomposition rates, materials other than tank walls.
package fluid
