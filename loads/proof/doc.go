// Package proof plans the proof test of a tank: the pressure each point must
// see, what the gauge must show for it, the steps and the hold, what can be
// read meanwhile, and what is stored in the tank while people wait.
package proof
