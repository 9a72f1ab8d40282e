package assess_test

import (
	"strings"
	"testing"
)

// The demonstration tank runs from −0.17 to 1.37 m by its cones of 45 degrees, so that
// a tank length beyond lie −1.71 and 2.91 m.
func TestStationsFarAway(t *testing.T) {
	for station, warned := range map[string]bool{"600 mm": false, "2.90 m": false, "-1.70 m": false, "2.92 m": true, "-1.72 m": true, "600 m": true, "-60 m": true} {
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
