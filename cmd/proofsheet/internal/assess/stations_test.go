package assess_test

import (
	"strings"
	"testing"
)

// The demonstration tank is 1.2 m between its seams and about 1.8 m long: a station
// of 0.6 m is in it, 3 m within a tank length of it, 600 m and −60 m are not.
func TestStationsFarAway(t *testing.T) {
	for station, warned := range map[string]bool{"600 mm": false, "3 m": false, "-1.5 m": false, "6 m": true, "600 m": true, "-60 m": true} {
		s := sloshing(t, `station = "600 mm"`, `station = "`+station+`"`)
		if got := strings.Contains(strings.Join(s.Cautions, "\n"), "Case burnout: its section forces are quoted at station"); got != warned {
			t.Errorf("%s: caution %v, want %v", station, got, warned)
		}
	}
	s := sloshing(t, "station = \"600 mm\"\n", "", "axial_compression = \"15 kN\"\nbending_moment = \"1 kN m\"\nshear_force = \"1 kN\"\n",
		"loads = [{ station = \"600 mm\", axial_compression = \"15 kN\" }, { station = \"1200 m\", bending_moment = \"1 kN m\" }]\n")
	if !strings.Contains(strings.Join(s.Cautions, "\n"), "station 1200 m") {
		t.Error("a station in loads is not looked at")
	}
}
