package assess

import "fmt"

// stationCautions warns of section forces quoted more than a tank length beyond
// either end of the tank: a unit may be wrong, and every moment grows with the arm.
// A long stack may quote so, so that no distance is refused.
func (r *run) stationCautions() (out []string) {
	lo, hi := r.in.Bounds()
	length := hi - lo
	for _, c := range r.cases {
		for _, q := range c.sections {
			beyond := max(lo-q.Station, q.Station-hi)
			if beyond <= length {
				continue
			}
			out = append(out, fmt.Sprintf("Case %s: its section forces are quoted at station %.4g m, %.3g tank lengths beyond the end of the tank, which runs from %.4g to %.4g m. Look at its unit; if it is meant, force, moment and shear are carried to the tank over that distance.",
				c.name, q.Station, beyond/length, lo, hi))
		}
	}
	return out
}
