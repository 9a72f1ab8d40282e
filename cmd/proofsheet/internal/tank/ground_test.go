package tank

import (
	"strings"
	"testing"
)

// withKind returns the starter with one ready-made case and further keys in it.
func withKind(t *testing.T, kind, keys string) (*Tank, Case) {
	t.Helper()
	src := string(Starter()) + "\n[[case]]\nname = \"ready\"\nkind = \"" + kind + "\"\n" + keys
	got, err := Read("t.toml", []byte(src), nil)
	if err != nil {
		t.Fatalf("%s: %v", kind, err)
	}
	return got, got.Case[len(got.Case)-1]
}

// Every ready-made case is complete in one line, near people, and each value
// that it brings is listed as common practice.
func TestGroundCases(t *testing.T) {
	for _, row := range []struct {
		kind                   string
		ullage, axial, lateral float64
		full                   bool
		defaults               int // values marked common practice
	}{
		{"pad", 0, 1, 0, true, 5},
		{"transport", 0, 2, 3, false, 4},
		{"lift", 0, 2, 2, false, 4},
		{"drain", -101325, 1, 0, false, 4},
		{"landing", 0, 30, 0, false, 4},
	} {
		got, c := withKind(t, row.kind, "")
		if *c.UllagePressure != row.ullage || c.AxialLoadFactor != row.axial || c.LateralLoadFactor != row.lateral ||
			c.Fill == nil || (*c.Fill > 0) != row.full || c.Fullest != row.full || c.People != "near" {
			t.Errorf("%s: %+v", row.kind, c)
		}
		n := 0
		for _, d := range got.Defaults {
			if strings.HasPrefix(d.Key, "case.ready.") && strings.Contains(d.Why, "common practice") {
				n++
			}
		}
		if n != row.defaults {
			t.Errorf("%s: %d values marked common practice, want %d", row.kind, n, row.defaults)
		}
	}
}

// What is written replaces the usual number, one by one.
func TestGroundCaseOverridden(t *testing.T) {
	got, c := withKind(t, "transport", "ullage_pressure = \"0.5 bar\"\nlateral_load_factor = 1.5\nliquid_mass = \"1 kg\"\n")
	if *c.UllagePressure != 0.5e5 || c.AxialLoadFactor != 2 || c.LateralLoadFactor != 1.5 || c.LiquidMass == nil || c.Fill != nil {
		t.Errorf("%+v", c)
	}
	for _, d := range got.Defaults {
		if d.Key == "case.ready.lateral_load_factor" || d.Key == "case.ready.ullage_pressure" {
			t.Errorf("%s is written and listed as left out", d.Key)
		}
	}
}
