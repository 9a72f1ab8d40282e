package material

import (
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// mostZoneThickness is the thickness up to which published zone values of
// softening aluminium hold [m] (EN 1999-1-1 Table 3.2, footnote; recalled).
const mostZoneThickness = 15 * mm

// WeldZone returns the properties across a fusion weld: a material of its own,
// never above the parent.
//
//   - annealed austenitic and normalised steel: the parent;
//   - cold-worked austenitic: the annealed row;
//   - aluminium of temper O: the weakest O row of the thickness;
//   - other aluminium: for yield and ultimate each the lower of the EN 1999-1-1
//     value times its process factor and the welded minimum; process not
//     stated: TIG;
//   - all else, and outside the rows: an error, as coupons or stated welded
//     values are needed.
//
// The zone loses strength with heat as its parent does and gains none when
// cold. Source: EN 1999-1-1 Table 3.2 and Aluminum Design Manual, see the rows.
func (q Query) WeldZone() (Properties, error) {
	q.ColdStrength = false
	parent, err := q.Parent()
	if err != nil {
		return Properties{}, err
	}
	a, _ := FindAlloy(q.Alloy)
	m, err := a.minima(q.Spec, q.Product, q.Tube, q.Thickness)
	if err != nil { // not reached: the parent has the same minima
		return Properties{}, err
	}
	yield, ultimate, notes, err := a.zoneMinima(m, q.Thickness, q.Process)
	if err != nil {
		return Properties{}, fmt.Errorf("weld zone of %s: %w", a.Name, err)
	}
	p := parent
	p.RoomYield, p.RoomUltimate = min(yield.Value, m.Yield.Value), min(ultimate.Value, m.Ultimate.Value)
	p.Softened = p.RoomYield < m.Yield.Value || p.RoomUltimate < m.Ultimate.Value
	p.Notes = append(append([]string{}, parent.Notes...), notes...)
	if !p.Softened {
		return p, nil
	}
	p.Yield = scaled(yield, p.RoomYield, parent.Yield, m.Yield.Value)
	p.Ultimate = scaled(ultimate, p.RoomUltimate, parent.Ultimate, m.Ultimate.Value)
	p.Proof1, p.Elongation = missing, missing
	p.Row = m.words + ", weld zone"
	p.confirm()
	return p, nil
}

// scaled brings a zone value to temperature with the ratio of its parent.
func scaled(zone Value, room float64, parent Value, parentRoom float64) Value {
	zone.Value = room * parent.Value / parentRoom
	zone.Source.How = worse(zone.Source.How, parent.Source.How)
	if parent.Value != parentRoom {
		zone.Note = join(zone.Note, "with temperature as the parent")
	}
	return zone
}

// zoneMinima returns the room-temperature minima [Pa] of the zone at thickness
// t [m].
func (a *Alloy) zoneMinima(m minima, t float64, process string) (yield, ultimate Value, notes []string, err error) {
	switch {
	case a.Group == annealedAustenitic, a.Group == carbonSteel, a.Group == lowAlloySteel && !m.Hardened:
		return m.Yield, m.Ultimate, []string{"weld zone taken equal to the parent (practice)"}, nil
	case a.Group == coldWorkedAustenitic:
		z := a.Zones[0]
		return z.Yield, z.Ultimate, []string{"cold work is lost at the weld"}, nil
	case a.Family == Aluminium && strings.HasPrefix(a.Temper, "O"):
		weakest, err := a.minima("", "", false, t)
		return weakest.Yield, weakest.Ultimate, []string{"temper O: the weld zone is the weakest O row of this thickness"}, err
	case a.Group == heatTreatableAluminium, a.Group == workHardeningAluminium:
		return a.softened(m, t, process)
	}
	return missing, missing, nil, fmt.Errorf("no published strength across a weld of %s serves; coupons, or welded_yield and welded_ultimate with source, are needed", a.Group)
}

// softened returns the lower of the two published zone values of aluminium.
func (a *Alloy) softened(m minima, t float64, process string) (yield, ultimate Value, notes []string, err error) {
	if !(t <= mostZoneThickness*(1+1e-9)) {
		return missing, missing, nil, fmt.Errorf("published values end at a wall of %.4g mm and this one is %.4g mm; coupons, or welded_yield and welded_ultimate with source, are needed", mostZoneThickness/mm, t/mm)
	}
	factor, note, err := a.processFactor(t, process)
	if err != nil {
		return missing, missing, nil, err
	}
	yield, ultimate = missing, missing
	haz, fits := false, false
	for _, z := range a.Zones {
		f := factor
		switch z.Kind {
		case hazZone:
			haz = true
			if extruded(z.Product) != extruded(m.Product) || !(t <= z.MostThickness*(1+1e-9)) {
				continue
			}
			fits = true
		case minimumZone:
			f = 1
			if z.LeastThickness > 0 && t <= z.LeastThickness*(1+1e-9) {
				continue
			}
		default:
			continue
		}
		yield, ultimate = lowerOf(yield, z.Yield, f), lowerOf(ultimate, z.Ultimate, f)
	}
	if haz && !fits || math.IsNaN(yield.Value) || math.IsNaN(ultimate.Value) {
		return missing, missing, nil, fmt.Errorf("no published weld-zone row for %s of %.4g mm; coupons, or welded_yield and welded_ultimate with source, are needed", m.Product, t/mm)
	}
	return yield, ultimate, append(a.ageing(), note), nil
}

// lowerOf returns the lower of v and f [-] times c; a missing v is replaced.
func lowerOf(v, c Value, f float64) Value {
	c.Value *= f
	if f != 1 {
		c.Note = join(c.Note, fmt.Sprintf("times %.3g for the process", f))
		c.Source.How = worse(c.Source.How, check.Memory) // the footnote with the factors
	}
	if math.IsNaN(v.Value) || c.Value < v.Value {
		return c
	}
	return v
}

// extruded reports whether a product is extruded or drawn, not rolled.
func extruded(product string) bool {
	return strings.Contains(product, "extru") || strings.Contains(product, "drawn")
}

// ageing says when the zone has the published strength (EN 1999-1-1 Table 3.2,
// footnote; recalled).
func (a *Alloy) ageing() []string {
	switch a.Name[0] {
	case '6':
		return []string{"zone values hold 3 days after welding, above 10 degC"}
	case '7':
		return []string{"zone values hold 30 days after welding, above 10 degC"}
	}
	return nil
}

// processFactor returns the factor [-] on the EN 1999-1-1 zone values at
// thickness t [m], which are for MIG: TIG on heat-treatable alloys 0.8 up to
// 6 mm and 0.64 above, on work-hardening alloys 1 and 0.9 (Table 3.2, footnote;
// recalled).
func (a *Alloy) processFactor(t float64, process string) (float64, string, error) {
	thin := t <= 6*mm*(1+1e-9)
	note := "process as stated: " + process
	switch process {
	case "mig":
		return 1, note, nil
	case "":
		note = "process not stated: TIG taken, which is weaker"
	case "tig":
	default:
		return math.NaN(), "", fmt.Errorf("process %q must be tig or mig; another needs coupons", process)
	}
	switch {
	case a.Group == heatTreatableAluminium && thin:
		return 0.8, note, nil
	case a.Group == heatTreatableAluminium:
		return 0.64, note, nil
	case thin:
		return 1, note, nil
	default:
		return 0.9, note, nil
	}
}
