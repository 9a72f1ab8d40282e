package material

import (
	"math"
	"slices"
	"strings"
	"testing"

	"proofsheet/report/check"
)

// A modulus without a point at room temperature is had from the points on both sides, and kept colder than they reach.
func TestModulusBetweenPoints(t *testing.T) {
	wide := Alloy{Modulus: Curve{Points: []Point{{T: 193.15, Value: 80e9}, {T: 393.15, Value: 60e9}}}}
	v, err := wide.modulus(100)
	if err != nil || math.Abs(v.Value-70e9) > 1 || !strings.Contains(v.Note, "lower bound") {
		t.Errorf("%+v, %v", v, err)
	}
	hot := Alloy{Modulus: Curve{Points: []Point{{T: 350, Value: 60e9}, {T: 400, Value: 55e9}}}}
	for name, try := range map[string]func() (Value, error){
		"nothing at room temperature": func() (Value, error) { return hot.modulus(100) },
		"no temperature":              func() (Value, error) { return wide.modulus(math.NaN()) },
		"hotter than the points":      func() (Value, error) { return wide.modulus(394) },
	} {
		if v, err := try(); err == nil || !math.IsNaN(v.Value) {
			t.Errorf("%s: %g, %v", name, v.Value, err)
		}
	}
}

// Of two ways of knowing one that is not stated counts.
func TestWorse(t *testing.T) {
	for _, row := range [][3]check.How{
		{check.Unstated, check.Read, check.Unstated}, {check.Practice, check.Unstated, check.Unstated},
		{check.Read, check.Memory, check.Memory}, {check.Memory, check.Read, check.Memory},
	} {
		if got := worse(row[0], row[1]); got != row[2] {
			t.Errorf("%v and %v: %v", row[0], row[1], got)
		}
	}
}

// The 1 % proof strength of a thickness is that of the weaker row, and unknown beyond its own tables.
func TestProof1OfTwoRows(t *testing.T) {
	found, ok := FindAlloy("304L")
	if !ok {
		t.Fatal("no 304L")
	}
	i := slices.IndexFunc(found.Rows, func(r Strength) bool { return r.Proof1.Value > 0 })
	if i < 0 {
		t.Fatal("no row of 304L has Rp1.0")
	}
	strong, weak := found.Rows[i], found.Rows[i]
	weak.Proof1.Value = strong.Proof1.Value - 7e6
	a := *found
	a.Rows = []Strength{strong, weak}
	m, err := a.minima("", "", false, strong.LeastThickness+1e-3)
	if err != nil || m.Proof1.Value != weak.Proof1.Value {
		t.Errorf("%g, want %g, %v", m.Proof1.Value, weak.Proof1.Value, err)
	}
	a.Hot = slices.Clone(a.Hot)
	for i := range a.Hot {
		a.Hot[i].Proof1 = Curve{}
	}
	p, err := a.properties(m, 373.15, false)
	if err != nil || !math.IsNaN(p.Proof1.Value) || !strings.Contains(p.Proof1.Note, "Rp1.0") || !(p.Yield.Value > 0) {
		t.Errorf("%+v, %v", p.Proof1, err)
	}
}

// A temper that stands in no list is not taken for one that forming leaves alone.
func TestTemperInNoList(t *testing.T) {
	for _, words := range []string{"", "T73", "F"} {
		if got := (&Alloy{Temper: words}).temper(Strength{}); got != UnknownTemper {
			t.Errorf("%q: %d", words, got)
		}
	}
}
