package proof

// A Step is one stage of the pressure's way up and down.
type Step struct {
	Cycle    int     // 1 or 2; 0 before and after the cycles
	Name     string  // "step", "proof hold", "examination", …
	Share    float64 // of the setting [-]
	Pressure float64 // to be shown by the gauge [Pa]
	Hold     float64 // at least [s]
	People   bool    // whether somebody may be near
}
