package life_test

import (
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
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
	}{{"6061-T6", "aluminium", 3}, {"5083-O", "aluminium", 1}, {"304L", "austenitic", 1}, {"", "titanium", 0}} {
		if got := life.RecordsOf(row.alloy, row.family); len(got) != row.want {
			t.Errorf("%s: %d records, want %d", row.alloy, len(got), row.want)
		}
	}
}
