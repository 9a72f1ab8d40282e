package check_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report/check"
)

var inf = math.Inf(1)

func TestUnitsOfQuantities(t *testing.T) {
	for unit, q := range map[string]check.Quantity{
		"Pa": check.Pa("p", "pressure", 2), "m": check.M("t", "wall", 2), "m2": check.M2("A", "area", 2), "m3": check.M3("V", "volume", 2),
		"N": check.N("F", "force", 2), "N/m": check.NPerM("N", "line load", 2), "N m": check.NM("M", "moment", 2), "kg": check.Kg("m", "mass", 2),
		"kg/m3": check.KgPerM3("ρ", "density", 2), "K": check.K("T", "temperature", 2), "s": check.S("t", "time", 2), "J": check.J("U", "energy", 2),
		"rad": check.Rad("α", "angle", 2), "1": check.Num("E", "efficiency", 2), "Pa m^0.5": check.PaRootM("K_c", "toughness", 2),
	} {
		if q.Unit != unit || q.Value != 2 || q.Symbol == "" || q.Name == "" {
			t.Errorf("%q: %+v", unit, q)
		}
	}
}

func TestHowIsReadBack(t *testing.T) {
	for _, h := range []check.How{check.Read, check.Computed, check.Memory, check.Practice} {
		if check.ParseHow(h.String()) != h {
			t.Errorf("%v is not read back", h)
		}
	}
	if check.ParseHow("hearsay") != check.Unstated {
		t.Error("an unknown word is taken for a provenance")
	}
}

func TestRangeErrorSaysWhatIsAllowed(t *testing.T) {
	for want, err := range map[string]error{
		"x is 0, must be from 1 to 2 (why)":           check.Within("f", "x", 0, 1, 2, "why"),
		"must be at least 1":                          check.Within("f", "x", 0, 1, inf, "why"),
		"must be at most 2":                           check.Within("f", "x", 3, -inf, 2, "why"),
		"x is not a number, must be at least 5 (why)": check.Within("f", "x", math.NaN(), 5, math.MaxFloat64, "why"),
		"must be above zero (why)":                    check.Within("f", "x", 0, math.SmallestNonzeroFloat64, math.MaxFloat64, "why"),
		"must be above zero, at most 2 (why)":         check.Within("f", "x", 0, math.SmallestNonzeroFloat64, 2, "why"),
		"must be finite (why)":                        check.Within("f", "x", inf, -math.MaxFloat64, math.MaxFloat64, "why"),
	} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
}
