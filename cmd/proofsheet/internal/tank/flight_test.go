package tank

import (
	"math"
	"testing"
)

// climb is 12.5 bara at sea level falling to 11.5 at 30 km: across the wall 11.487 bar at
// both, and halfway, where the standard atmosphere has 121.1 hPa (table, recalled), 12.0 bara
// less that, 11.879 bar.
func climb() Flight {
	at := func(time, altitude, absolute, outside float64) State {
		return State{Time: time, Altitude: &altitude, UllageAbsolute: &absolute, OutsideAbsolute: &outside, UllagePressure: absolute - outside}
	}
	return Flight{States: []State{at(0, 0, 12.5e5, 101325), at(60, 30000, 11.5e5, 1197)}}
}

func TestPressureBetweenAltitudes(t *testing.T) {
	f := climb()
	half := f.States[0].Between(f.States[1], 0.5)
	if math.Abs(half.UllagePressure-1187890) > 20 || math.Abs(*half.OutsideAbsolute-12111) > 20 {
		t.Errorf("halfway %.0f Pa across the wall, %.0f Pa outside; want 1187890 and 12111", half.UllagePressure, *half.OutsideAbsolute)
	}
	p, at := highestBetween(f.States[0], f.States[1], 11.6e5)
	for s := 0.0; s <= 1; s += 1.0 / 256 {
		if q := f.States[0].Between(f.States[1], s).UllagePressure; q > p {
			t.Errorf("%g Pa at %g, more than the %g Pa found at %g s", q, s, p, at)
		}
	}
	if p < half.UllagePressure || !(at > 0 && at < 60) {
		t.Errorf("highest %g Pa at %g s", p, at)
	}
	if p, _ := highestBetween(f.States[0], f.States[1], 12.6e5); !math.IsInf(p, -1) {
		t.Errorf("looked for %g Pa where none can be", p)
	}
	if n := len(f.Refined()); n != 61 {
		t.Errorf("%d states over 30 km, want one every 500 m: 61", n)
	}
	f.States[1].UllageAbsolute = nil // of a gauge: straight
	if n := len(f.Refined()); n != 2 {
		t.Errorf("%d states of a gauge", n)
	}
}
