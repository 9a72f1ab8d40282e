package material

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Tested is the strength across a weld as its coupons show it.
type Tested struct {
	Yield, Ultimate float64 // lower limits [Pa]; yield NaN: not measured
	Temperature     float64 // at which the coupons were pulled [K]
	LongGauge       bool    // yield was measured over more than the soft strip of the weld
	Source          check.Source
}

// coolestTest is the lowest temperature of the coupons [K]: those pulled in the
// cold say nothing of the warm wall of the proof test.
const coolestTest = 283.15

// TestedZone returns the properties across a weld of which coupons were pulled.
// They replace the published ultimate, and yield if it was measured; else the
// published yield stays, and without one there is no zone:
//
//   - yield measured over a long gauge is that of weld and parent together, and a
//     soft strip along a seam is not helped by its neighbours: it may only lower
//     the published yield;
//   - each is capped at the minimum of the parent, for quenched and tempered
//     steel at that of the normalised row; yield also at ultimate;
//   - titanium without measured yield keeps that of the parent;
//   - above the temperature T_t of the coupons their limits fall as the parent
//     does from T_t on; below it they gain nothing.
//
// Range: coupons pulled at 10 °C and above. Source: order of work for seams as
// in WeldZone; the replacement is common practice.
func (q Query) TestedZone(t Tested) (Properties, error) {
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
	at := q
	at.Temperature = max(t.Temperature, roomTemperature)
	pulled, err := at.Parent()
	if err != nil {
		return Properties{}, fmt.Errorf("at the temperature of the coupons: %w", err)
	}
	ceiling := m.Strength
	published, _, _, zoneErr := a.zoneMinima(m, q.Thickness, q.Process)
	switch {
	case m.Hardened:
		if len(a.Zones) == 0 { // not reached: the one hardened alloy of the tables has its normalised row
			return Properties{}, fmt.Errorf("%s is quenched and tempered: no ceiling for its weld is known", a.Name)
		}
		z := a.Zones[0]
		ceiling.Yield.Value, ceiling.Ultimate.Value = min(m.Yield.Value, z.Yield.Value), min(m.Ultimate.Value, z.Ultimate.Value)
		published, zoneErr = z.Yield, nil
	case a.Family == Titanium:
		published, zoneErr = m.Yield, nil
	}
	if zoneErr != nil {
		published = missing
	}
	return parent.tested(t, pulled, ceiling, published)
}

// TestedZone returns the zone of an own material at T [K] from coupons, as for
// an alloy of the tables: stated welded values are the published ones, and
// without either the parent where the weld of such a steel is taken as it.
func (o Own) TestedZone(T float64, t Tested) (Properties, error) {
	parent, err := o.Parent(T)
	if err != nil {
		return Properties{}, err
	}
	pulled, err := o.Parent(max(t.Temperature, roomTemperature))
	if err != nil {
		return Properties{}, fmt.Errorf("at the temperature of the coupons: %w", err)
	}
	published := missing
	if z, err := o.WeldZone(roomTemperature); err == nil {
		published = z.Yield
	}
	ceiling := Strength{Yield: parent.Yield, Ultimate: parent.Ultimate}
	ceiling.Yield.Value, ceiling.Ultimate.Value = parent.RoomYield, parent.RoomUltimate
	return parent.tested(t, pulled, ceiling, published)
}

// tested puts the limits of t into p, the parent at temperature; pulled is the
// parent at the temperature of the coupons, published the zone's yield of the
// tables.
func (p Properties) tested(t Tested, pulled Properties, ceiling Strength, published Value) (Properties, error) {
	switch {
	case !(t.Temperature >= coolestTest) || math.IsInf(t.Temperature, 0):
		return Properties{}, errors.New("coupons pulled below 10 degC say nothing of a warm wall: pull them at room temperature")
	case !(t.Ultimate > 0) || math.IsInf(t.Ultimate, 0):
		return Properties{}, errors.New("the coupons give no ultimate strength")
	case math.IsNaN(t.Yield) && math.IsNaN(published.Value):
		return Properties{}, errors.New("the coupons were pulled without yield and no published yield of the weld zone serves: measure yield on every coupon")
	case t.LongGauge && math.IsNaN(published.Value):
		return Properties{}, errors.New("the yield of the coupons is not that of the weld alone, and no published yield of the weld zone serves: measure yield over at most 50 mm and write the column gauge_length [mm]")
	case !math.IsNaN(t.Yield) && (!(t.Yield > 0) || math.IsInf(t.Yield, 0)):
		return Properties{}, errors.New("the coupons give no yield strength")
	}
	z := p
	z.Notes = append(append([]string{}, p.Notes...), "weld zone from coupons: "+t.Source.Doc+", "+t.Source.Where)
	z.Ultimate, z.RoomUltimate = fromCoupons(t.Ultimate, ceiling.Ultimate.Value, p.Ultimate, pulled.Ultimate, t.Source)
	if !math.IsNaN(t.Yield) {
		z.Yield, z.RoomYield = fromCoupons(t.Yield, ceiling.Yield.Value, p.Yield, pulled.Yield, t.Source)
	}
	room := min(published.Value, ceiling.Yield.Value)
	kept := scaled(published, room, p.Yield, p.RoomYield)
	switch {
	case math.IsNaN(t.Yield):
		z.Yield, z.RoomYield = kept, room
		z.Notes = append(z.Notes, "yield was not measured on the coupons: that of the tables stays")
	case t.LongGauge && kept.Value < z.Yield.Value:
		z.Yield, z.RoomYield = kept, room
		z.Notes = append(z.Notes, "yield of the coupons is not used, as its gauge is long: that of the tables stays")
	case t.LongGauge:
		z.Notes = append(z.Notes, "yield of the coupons lowers that of the tables; its gauge is long")
	}
	z.Yield.Value, z.RoomYield = min(z.Yield.Value, z.Ultimate.Value), min(z.RoomYield, z.RoomUltimate)
	z.Softened = z.RoomYield < p.RoomYield || z.RoomUltimate < p.RoomUltimate
	if z.Softened {
		z.Proof1, z.Elongation = missing, missing
	}
	z.Row = p.Row + ", weld zone from coupons"
	return z, nil
}

// fromCoupons returns a limit [Pa] at temperature, and as the room value, capped
// at the ceiling [Pa] and at the parent.
func fromCoupons(limit, ceiling float64, parent, pulled Value, source check.Source) (Value, float64) {
	room := min(limit, ceiling)
	v := Value{Value: min(room*min(parent.Value/pulled.Value, 1), parent.Value), Source: source}
	if limit > ceiling {
		v.Note = fmt.Sprintf("capped at the minimum of the parent or its ceiling; the coupons show %.4g MPa", limit/mpa)
	}
	if parent.Value < pulled.Value {
		v.Note = join(v.Note, "with temperature as the parent")
		v.Source.How = worse(v.Source.How, parent.Source.How)
	}
	return v, room
}

// Weaker returns the zone of two welds that meet: of each strength the lower.
func (p Properties) Weaker(o Properties) Properties {
	z := p
	lower := func(a, b Value) Value {
		if b.Value < a.Value {
			return b
		}
		return a
	}
	z.Yield, z.Ultimate = lower(p.Yield, o.Yield), lower(p.Ultimate, o.Ultimate)
	z.RoomYield, z.RoomUltimate = min(p.RoomYield, o.RoomYield), min(p.RoomUltimate, o.RoomUltimate)
	z.Softened = p.Softened || o.Softened
	if z.Brittle == nil {
		z.Brittle = o.Brittle
	}
	if math.IsNaN(o.Proof1.Value) || o.Proof1.Value < z.Proof1.Value {
		z.Proof1 = o.Proof1
	}
	if math.IsNaN(o.Elongation.Value) || o.Elongation.Value < z.Elongation.Value {
		z.Elongation = o.Elongation
	}
	return z
}
