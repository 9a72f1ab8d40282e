package assess

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/shell/life"
)

// holeEdge makes of a port's weld the question of the plain metal at the edge of its
// hole, at the same elastic range: a second answer where the wall's material has
// its strain-life. Neither answers for the other: the toe of an as-welded seam is not
// plain metal.
func (m *model) holeEdge(w lifeWeld, d life.Detail, cycles []lifeCycle) (life.Detail, bool) {
	if !w.port || d.Err != nil {
		return d, false
	}
	host := w.parts[0]
	mat, _ := m.t.FindMaterial(host.material)
	s := mat.StrainLife
	if s == nil {
		return d, false
	}
	curve := &life.StrainLife{Strength: s.Strength, StrengthExponent: s.StrengthExponent, Ductility: s.Ductility,
		DuctilityExponent: s.DuctilityExponent, Source: s.Source, ElasticModulus: math.Inf(1)}
	var errs []error
	for _, c := range cycles {
		for _, at := range c.at { // the softest: the strain is largest there
			e, _, err := m.elastic(host, at.temperature)
			errs, curve.ElasticModulus = append(errs, err), math.Min(curve.ElasticModulus, e)
		}
	}
	d.Where, d.Plain, d.Err = "edge of the hole of "+w.where, curve, firstOf(errs)
	return d, true
}

// withoutStrainLife says which materials around ports have no strain-life, so that only the
// welds there are judged.
func (m *model) withoutStrainLife() string {
	var names []string
	for _, w := range m.lifeWelds() {
		if !w.port {
			continue
		}
		mat, ok := m.t.FindMaterial(w.parts[0].material)
		if ok && mat.StrainLife == nil && !slices.Contains(names, mat.Name) {
			names = append(names, mat.Name)
		}
	}
	if names == nil {
		return ""
	}
	return "; beside ports the plain metal at the edge of the hole is not judged by strain-life: write strain_life of material " + strings.Join(names, ", ")
}

// givenNotes shows what the tank file says of a material's cracks and cycles, with its source.
func givenNotes(in tank.Material) (notes []string) {
	if k := in.Toughness; k != nil {
		most := ""
		if in.ToughnessMost != nil {
			most = fmt.Sprintf(", at most %.4g", *in.ToughnessMost/1e6)
		}
		notes = append(notes, fmt.Sprintf("toughness of wall and weld zone at least %.4g%s MPa √m, given: %s", *k/1e6, most, in.ToughnessSource))
	}
	if s := in.StrainLife; s != nil {
		notes = append(notes, fmt.Sprintf("strain-life of the plain metal, given: σ_f' %.4g MPa, b %.4g, ε_f' %.4g, c %.4g: %s",
			s.Strength/1e6, s.StrengthExponent, s.Ductility, s.DuctilityExponent, s.Source))
	}
	return notes
}
