package check

// A Quantity is a number with its symbol, name and SI unit.
type Quantity struct {
	Symbol string  // as in the formula: "σ_h"
	Name   string  // in words: "hoop stress"
	Value  float64 // in Unit [see Unit]
	Unit   string  // SI: "Pa", "m", "N m", …; "1" for a pure number
}

// Pa returns a pressure or stress v [Pa].
func Pa(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "Pa"} }

// M returns a length v [m].
func M(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "m"} }

// M2 returns an area v [m2].
func M2(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "m2"} }

// M3 returns a volume v [m3].
func M3(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "m3"} }

// N returns a force v [N].
func N(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "N"} }

// NPerM returns a line load v [N/m].
func NPerM(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "N/m"} }

// NM returns a moment v [N m].
func NM(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "N m"} }

// Kg returns a mass v [kg].
func Kg(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "kg"} }

// KgPerM3 returns a density v [kg/m3].
func KgPerM3(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "kg/m3"} }

// K returns an absolute temperature v [K].
func K(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "K"} }

// S returns a time v [s].
func S(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "s"} }

// J returns an energy v [J].
func J(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "J"} }

// Rad returns an angle v [rad].
func Rad(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "rad"} }

// PaRootM returns a stress intensity or toughness v [Pa m½].
func PaRootM(symbol, name string, v float64) Quantity {
	return Quantity{symbol, name, v, "Pa m^0.5"}
}

// Num returns a pure number v [-].
func Num(symbol, name string, v float64) Quantity { return Quantity{symbol, name, v, "1"} }

// How says how a value or formula came to be known.
type How int

const (
	Unstated How = iota // nobody said: fails a test
	Read                // seen in a copy of the text named
	Computed            // worked out independently and tested
	Memory              // recalled from the text named, not seen: to be confirmed
	Practice            // common practice, no source
)

// String returns the word that is printed.
func (h How) String() string {
	return [...]string{"unstated", "read", "computed", "memory", "practice"}[h]
}

// ParseHow returns the How of its printed word, and Unstated for any other.
func ParseHow(word string) How {
	for h := Read; h <= Practice; h++ {
		if h.String() == word {
			return h
		}
	}
	return Unstated
}

// A Source says where a formula or value stands and how it was obtained.
type Source struct {
	Doc   string // title and edition
	Where string // clause, equation, page
	How   How
}
