package assess

import (
	"testing"

	"proofsheet/shell/edge"
)

// What a weld runs over between a pressure of 50 that may fall to 30 and a load of −48 to +8, by hand: with the pressure
// away from −48 to 58, with it always there from −18 to 58, zero among them. Bending stands on one face each.
func TestSpanOfPressureAndLoad(t *testing.T) {
	p, most, least := edge.Stress{Meridional: 50, MeridionalBending: 10}, edge.Stress{Meridional: 8}, edge.Stress{Meridional: -48}
	c := &loadCase{ullage: 5, least: 3}
	for _, row := range []struct {
		present bool
		want    span
	}{
		{false, span{-48, 68, -48, 58}}, // 50 + 10 + 8; 0 − 48
		{true, span{-24, 68, -18, 58}},  // (50 − 10) 3/5 − 48; 50 × 3/5 − 48
	} {
		c.present = row.present
		if got := spanOf(p, most, least, c, meridional); got != row.want {
			t.Errorf("always there %t: %+v, want %+v", row.present, got, row.want)
		}
	}
	if got, want := spanOf(p, most, least, c, hoop), (span{}); got != want {
		t.Errorf("the other direction: %+v", got)
	}
	// At a ring the load may be away too: from 0 − 48 to 60 + 8.
	c.present = false
	j := edge.Junction{}
	j.Numerical.Places = []edge.Place{{Where: "other", Pressure: edge.Stress{Meridional: 99}}, {Where: "ring", Pressure: p, LoadMost: most, LoadLeast: least}}
	if got, want := ringSpan(j, "ring", c, meridional), (span{-48, 68, -48, 58}); got != want {
		t.Errorf("at a ring: %+v, want %+v", got, want)
	}
}

// Hi-lo of half the membrane stress swings with it from −48 to 58: 1.5 × (58 + 48) = 159, of which no part is counted twice.
func TestSpanBent(t *testing.T) {
	got := span{-48, 58, -48, 58}.bent(0.5)
	if got.most-got.least != 159 || got.largest() != 87 || got.membrane() != 58 {
		t.Errorf("%+v", got)
	}
}
