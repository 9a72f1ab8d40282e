package assess

import "testing"

// Two states of a case that press hardest at one station, as a cold and a warm liquid
// do, are one point of the proof; other stations keep theirs.
func TestProofPointsOnce(t *testing.T) {
	m, cases := flown(t)
	flight := cases["flight"]
	once := m.proofPoints([]*loadCase{flight})
	flight.states = append(flight.states, flight.states...)
	if twice := m.proofPoints([]*loadCase{flight}); len(twice) != len(once) || len(once) < 8 {
		t.Errorf("%d points of the states, %d of the states twice", len(once), len(twice))
	}
}
