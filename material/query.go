package material

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// A Query asks for the properties of one material of the tank.
type Query struct {
	Alloy, Spec, Product string
	Tube                 bool    // the part is a tube without a seam
	Thickness            float64 // of the stock, nominal [m]
	Temperature          float64 // of the metal [K]
	ColdStrength         bool    // opts in to strength above the room value when cold
	Process              string  // tig, mig, or "" for not stated
}

// Properties are what the checks use of one material at one temperature.
type Properties struct {
	Yield, Proof1, Ultimate Value   // Rp0.2, Rp1.0, Rm at temperature [Pa]
	RoomYield, RoomUltimate float64 // minima at room temperature [Pa]
	Elongation              Value   // A [-]
	ElasticModulus          Value   // E at temperature [Pa]
	Poisson                 Value   // ν [-]
	Density                 Value   // ρ [kg/m3]
	Expansion               Value   // mean α from 293 K [1/K]
	Allowable               float64 // cap of an own material [Pa]; NaN: none
	Row                     string  // product, spec, thickness, basis in words
	Notes                   []string
	Brittle                 error // not nil: brittle at this temperature
	Family                  string
	Group                   string
	Softened                bool // weld zone weaker than the parent
}

// Parent returns the properties of the wall away from welds: the minima of the
// row that holds for the thickness, at temperature. Spec and product match any
// part of the row's words; left out, the weakest row that holds is taken.
// Outside every row the error lists the rows.
func (q Query) Parent() (Properties, error) {
	a, ok := FindAlloy(q.Alloy)
	if !ok {
		return Properties{}, fmt.Errorf("unknown alloy %q; one of %s", q.Alloy, strings.Join(AlloyNames(), ", "))
	}
	m, err := a.minima(q.Spec, q.Product, q.Tube, q.Thickness)
	if err != nil {
		return Properties{}, err
	}
	return a.properties(m, q.Temperature, q.ColdStrength)
}

// properties brings the minima m to temperature T [K].
func (a *Alloy) properties(m minima, T float64, cold bool) (Properties, error) {
	brittle, err := a.temperatureFits(T)
	if err != nil {
		return Properties{}, err
	}
	p := Properties{
		RoomYield: m.Yield.Value, RoomUltimate: m.Ultimate.Value, Elongation: m.Elongation,
		Poisson: a.Poisson, Density: a.Density, Expansion: a.expansion(T), Allowable: math.NaN(),
		Row: m.words, Brittle: brittle, Family: a.Family, Group: a.Group,
	}
	p.Notes = append(append(p.Notes, m.notes...), a.Cautions...)
	if p.Yield, err = strengthAt(m.Yield, a.YieldRatio, a.tables(func(h HotTable) Curve { return h.Yield }), T, cold); err != nil {
		return Properties{}, fmt.Errorf("%s, yield: %w", a.Name, err)
	}
	if p.Ultimate, err = strengthAt(m.Ultimate, a.UltimateRatio, a.tables(func(h HotTable) Curve { return h.Ultimate }), T, cold); err != nil {
		return Properties{}, fmt.Errorf("%s, ultimate: %w", a.Name, err)
	}
	// Rp1.0 has no ratio of its own: with no table it stays unknown when hot.
	p.Proof1, err = strengthAt(m.Proof1, Curve{}, a.tables(func(h HotTable) Curve { return h.Proof1 }), T, false)
	if err != nil {
		p.Proof1.Note = "no curve of Rp1.0 over temperature reaches so far"
	}
	if p.ElasticModulus, err = a.modulus(T); err != nil {
		return Properties{}, fmt.Errorf("%s, elastic modulus: %w", a.Name, err)
	}
	p.confirm()
	return p, nil
}

// confirm adds, for strengths that were recalled and not seen, the note that
// they have to be confirmed.
func (p *Properties) confirm() {
	const note = "a strength is recalled, not seen: confirm it against the certificate or the standard"
	recalled := p.Yield.Source.How == check.Memory || p.Ultimate.Source.How == check.Memory
	if recalled && !slices.Contains(p.Notes, note) {
		p.Notes = append(p.Notes, note)
	}
}
