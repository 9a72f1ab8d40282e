package fluid

import (
	"math"
	"slices"
	"strings"
	"testing"
)

// What is not known of a fluid is an error that names it, and no number.
func TestNotKnown(t *testing.T) {
	find := func(name string) *Fluid {
		f, ok := Find(name)
		if !ok {
			t.Fatalf("no %s", name)
		}
		return f
	}
	nitrous, bare := find("N2O"), &Fluid{Name: "syrup"}
	for name, row := range map[string]struct {
		get  func() (Value, error)
		want string
	}{
		"compressed":             {func() (Value, error) { return bare.DensityUnder(293.15, 1e6) }, "no density of compressed syrup"},
		"freezing":               {bare.Freezing, "the freezing temperature of syrup"},
		"boiling":                {bare.Boiling, "the boiling temperature of syrup"},
		"critical":               {bare.Critical, "the critical temperature of syrup"},
		"vapour":                 {func() (Value, error) { return nitrous.VaporDensity(nitrous.critical.Value) }, "no liquid from its critical temperature up"},
		"vapour, no temperature": {func() (Value, error) { return nitrous.VaporDensity(math.NaN()) }, "no liquid"},
	} {
		if v, err := row.get(); err == nil || !strings.Contains(err.Error(), row.want) || !math.IsNaN(v.Value) {
			t.Errorf("%s: %g, %v", name, v.Value, err)
		}
	}
	if v, err := find("water").Freezing(); err != nil || math.Abs(v.Value-273.15) > 0.05 {
		t.Errorf("water freezes at %g K, %v", v.Value, err)
	}
	if rows := bare.cautions(); len(rows) != 1 || !strings.Contains(rows[0][1], "nothing published is carried") {
		t.Errorf("%q", rows)
	}
}

// The family stands for each of its alloys, annealed ones too.
func TestAusteniticFamily(t *testing.T) {
	family, alloy := metalKeys("austenitic"), metalKeys("304L")
	slices.Sort(family)
	slices.Sort(alloy)
	if !slices.Equal(family, alloy) {
		t.Errorf("%q, 304L %q", family, alloy)
	}
	if slices.Contains(metalKeys("301-1/4 hard"), "annealed austenitic") {
		t.Error("cold-worked 301 is taken as annealed")
	}
}
