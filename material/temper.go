package material

import (
	"fmt"
	"slices"
	"strings"
)

// A Temper tells what a wall owes its strength to, and so what forming and heat
// take from it and whether a heat treatment gives it back.
type Temper int

// The tempers. The zero value is one that nothing is known of, which nothing
// restores.
const (
	UnknownTemper Temper = iota
	Annealed             // annealed or normalised: the minima are those of the soft metal
	HeatTreated          // solution treated and aged, quenched and tempered: the whole treatment restores it
	ColdWorked           // strain-hardened, or cold-worked before ageing: no treatment restores it
)

// softTempers are the words of the tables for metal that forming does not weaken.
var softTempers = []string{"O", "O/H111", "solution annealed", "annealed", "+N", "normalised or Q&T"}

// temper returns what the row m of the alloy owes its strength to. T3, T8
// and their like are cold-worked after the quench; T4, T6 and T62 are not. What is in
// no list is known to nobody. Source: the temper designations of EN 515 and ANSI H35.1
// (recalled); cold work of 301 and 304 by ASTM A666.
func (a *Alloy) temper(m Strength) Temper {
	switch t := a.Temper; {
	case m.Hardened:
		return HeatTreated
	case slices.Contains(softTempers, t):
		return Annealed
	case strings.HasPrefix(t, "H"), strings.HasSuffix(t, "hard"), strings.HasPrefix(t, "T3"), strings.HasPrefix(t, "T8"):
		return ColdWorked
	case strings.HasPrefix(t, "T4"), strings.HasPrefix(t, "T6"):
		return HeatTreated
	}
	return UnknownTemper
}

// Temper returns what the row that the query selects owes its strength to.
func (q Query) Temper() (Temper, error) {
	a, ok := FindAlloy(q.Alloy)
	if !ok {
		return UnknownTemper, fmt.Errorf("unknown alloy %q", q.Alloy)
	}
	m, err := a.minima(q.Spec, q.Product, q.Tube, q.Thickness)
	if err != nil {
		return UnknownTemper, err
	}
	return a.temper(m.Strength), nil
}

// Temper returns what an own metal owes its yield to, as far as the family and
// that yield tell: above what an annealed austenitic or a normalised ferritic
// steel reaches it is cold work or a quench; aluminium and titanium may be in
// any temper that a treatment restores, and their values have to be those of
// the metal as treated.
func (o Own) Temper() Temper {
	switch {
	case o.Family == Austenitic && o.Yield > annealedAusteniticYield:
		return ColdWorked
	case o.Family == Austenitic && o.Yield > 0, o.Family == Ferritic && o.Yield > 0 && o.Yield <= normalisedYield:
		return Annealed
	case o.Family == Ferritic && o.Yield > normalisedYield, o.Family == Aluminium, o.Family == Titanium:
		return HeatTreated
	}
	return UnknownTemper
}

// SofterAlloy names the alloy of the tables that holds for the metal of a
// cold-worked one after heat has taken its cold work; empty: none is there.
func SofterAlloy(alloy string) string {
	base, temper, _ := strings.Cut(alloy, "-")
	want := base + "-O"
	switch {
	case strings.HasSuffix(temper, "hard"):
		want = base
	case strings.HasPrefix(temper, "T"):
		want = base + "-T62"
	}
	if a, ok := FindAlloy(want); ok && a.Name != alloy {
		return a.Name
	}
	return ""
}
