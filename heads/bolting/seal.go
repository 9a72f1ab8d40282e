package bolting

import (
	"errors"
	"math"

	"proofsheet/report/check"
)

// A Seal keeps a cover tight.
type Seal struct {
	Gasket   bool    // a flat gasket; else an O-ring in the face
	Diameter float64 // O-ring: outer diameter of its groove, which is wetted; gasket: mean of its contact face [m]
	Squeeze  float64 // O-ring: force that flattens the whole ring [N]
	Width    float64 // N, gasket: of its contact face [m]
	Factor   float64 // m, gasket: stress kept over the pressure [-]
	Seating  float64 // y, gasket: stress that seats it [Pa]
}

// DefaultSqueeze is the force that flattens an O-ring, by its circumference [N/m]:
// practice, on the side of hard rings.
const DefaultSqueeze = 10e3

// valid returns an error for a seal whose numbers are missing.
func (s Seal) valid() error {
	if !(s.Diameter > 0) {
		return errors.New("the diameter of the seal is missing")
	}
	if s.Gasket && !(s.Width > 0 && s.Factor >= 0 && s.Seating >= 0 && s.Width < s.Diameter) {
		return errors.New("a gasket needs its width, m and y, with their source")
	}
	if !(s.Squeeze >= 0) {
		return errors.New("the squeeze of the O-ring must be from zero up")
	}
	return nil
}

// Line returns the diameter G of the seal's reaction and the effective width b of a
// gasket [m]:
//
//	O-ring  G = outer diameter of the groove, b = 0
//	gasket  b0 = N/2; b0 ≤ 6 mm: b = b0, G the mean diameter; else b = 2.52 √b0 [mm],
//	        G = outside diameter of the contact face − 2b
//
// Source: ASME VIII-1 appendix 2, read; G of a wide gasket recalled.
func (s Seal) Line() (g, b float64) {
	if !s.Gasket {
		return s.Diameter, 0
	}
	b0 := s.Width / 2
	if b0 <= 6*mm {
		return s.Diameter, b0
	}
	b = 2.52 * math.Sqrt(b0/mm) * mm
	return s.Diameter + s.Width - 2*b, b
}

// Thrust returns the force of the pressure p [Pa] on the area within G [N]; none
// where it presses the cover on.
func (s Seal) Thrust(p float64) float64 {
	g, _ := s.Line()
	return math.Pi / 4 * g * g * math.Max(p, 0)
}

// Operating returns what all bolts carry under the pressure p [Pa], in [N]:
//
//	W_m1 = π/4 G² p + 2 b π G m p     gasket
//	W_m1 = π/4 G² p + F_q             O-ring, F_q its squeeze
//
// Source: ASME VIII-1 appendix 2, read; O-ring recalled.
func (s Seal) Operating(p float64) float64 {
	g, b := s.Line()
	w := s.Thrust(p) + 2*b*math.Pi*g*s.Factor*math.Max(p, 0)
	if !s.Gasket {
		w += s.Squeeze
	}
	return w
}

// Seat returns what all bolts carry to seat the seal without pressure [N]:
// W_m2 = π b G y of a gasket, the squeeze of an O-ring.
//
// Source: ASME VIII-1 appendix 2, read.
func (s Seal) Seat() float64 {
	if !s.Gasket {
		return s.Squeeze
	}
	g, b := s.Line()
	return math.Pi * b * g * s.Seating
}

// inputs lists the numbers of a seal.
func (s Seal) inputs() []check.Quantity {
	g, b := s.Line()
	if !s.Gasket {
		return []check.Quantity{check.M("G", "seal diameter, outer edge of the O-ring's groove", g), check.N("F_q", "squeeze of the O-ring", s.Squeeze)}
	}
	return []check.Quantity{check.M("G", "diameter of the gasket's reaction", g), check.M("N", "width of the gasket's contact face", s.Width), check.M("b", "effective width of the gasket", b),
		check.Num("m", "gasket factor", s.Factor), check.Pa("y", "seating stress of the gasket", s.Seating)}
}
