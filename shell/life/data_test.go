package life_test

import (
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
	"proofsheet/shell/life"
)

// Every record says where it comes from, and its alloy is one of the tables'.
func TestRecordsOfGrowth(t *testing.T) {
	for _, r := range life.Records() {
		if r.Source.How == check.Unstated || r.Source.Doc == "" {
			t.Errorf("%s: no source", r.Alloy)
		}
		if _, ok := material.FindAlloy(r.Fits); r.Fits != "" && !ok {
			t.Errorf("%s fits %q, which is no alloy", r.Alloy, r.Fits)
		}
		if v := value(t)(r.Law.Rate(10*MPa, 0)); !(v > 1e-10 && v < 1e-5) {
			t.Errorf("%s grows %g m a cycle at 10 MPa m^0.5", r.Alloy, v)
		}
	}
	for _, row := range []struct {
		alloy, family string
		want          int
	}{{"6061-T6", "aluminium", 3}, {"5083-O", "aluminium", 1}, {"304L", "austenitic", 2}, {"", "titanium", 0}} {
		if got := life.RecordsOf(row.alloy, row.family); len(got) != row.want {
			t.Errorf("%s: %d records, want %d", row.alloy, len(got), row.want)
		}
	}
}

// The mean line of austenitic steel from empty says nothing of a seam that holds the stress of welding: there the upper bound of
// steel counts, 1.64755e-11 ΔK³, 1.65 times as fast at 10 MPa √m, up to where the mean line crosses it: (1.64755/0.56)⁴ = 74.9 MPa √m.
func TestAusteniticAsWelded(t *testing.T) {
	var mean, bound life.Record
	for _, r := range life.RecordsOf("304L", "austenitic") {
		if r.Welded {
			bound = r
		} else {
			mean = r
		}
	}
	checktest.Printed(t, "bound over mean at 10", value(t)(bound.Law.Rate(10*MPa, 0.5))/value(t)(mean.Law.Rate(10*MPa, 0)), "1.65")
	checktest.Printed(t, "meeting", bound.Law.(life.UpTo).Most/MPa, "74.9")
	v, err := bound.Law.Rate(75*MPa, 0.5)
	refused(t, "beyond", v, err)
	f := life.Flaw{Depth: 0.5e-3, Shape: 0.4, Thickness: 3e-3, Radius: 0.150}
	usage := func(laws ...life.Record) check.Result {
		return life.CheckFlaw("tank/flaw-growth", "Flaw", reference(60), reference(60), f, laws, 100, 2)
	}
	if r := usage(mean); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "as-welded") {
		t.Errorf("by the mean line: %v, %s", r.Status(), r.Reason())
	}
	both := usage(mean, bound)
	checktest.Close(t, "usage", both.Demand.Value, usage(bound).Demand.Value, 1e-12)
	if !strings.Contains(both.Note, "upper bound of the family at any R") || strings.Contains(both.Note, "R = 0.5") {
		t.Errorf("note: %s", both.Note)
	}
	if r := usage(life.RecordsOf("6061-T6", "aluminium")...); !strings.Contains(r.Note, "at R = 0.5") {
		t.Errorf("note: %s", r.Note)
	}
}
