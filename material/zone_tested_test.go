package material_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"proofsheet/material"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// pulled returns limits of coupons in MPa, pulled at 20 °C; yield 0: not measured.
func pulled(yield, ultimate float64) material.Tested {
	t := material.Tested{Yield: yield * mpa, Ultimate: ultimate * mpa, Temperature: 293.15,
		Source: check.Source{Doc: "coupons.csv", Where: "A basis", How: check.Computed}}
	if yield == 0 {
		t.Yield = math.NaN()
	}
	return t
}

// The zone from coupons, by hand from the minima of the tables: sheet of 6061-T6
// 240/290, its TIG zone 92/140; 2219-T87 352/441; Ti-6Al-4V AMS 4911 sheet
// 869/924; 4130 quenched and tempered with the normalised 517/655 as the ceiling.
func TestTestedZone(t *testing.T) {
	for _, row := range []struct {
		where, alloy, spec, product string
		limits                      material.Tested
		yield, ultimate             float64 // MPa
	}{
		{"ultimate alone: the yield of the tables stays", "6061-T6", "EN 485", "", pulled(0, 275.10), 92, 275.10},
		{"both measured", "6061-T6", "EN 485", "", pulled(150, 200), 150, 200},
		{"weaker than the tables", "6061-T6", "EN 485", "", pulled(80, 120), 80, 120},
		{"each capped at the parent", "6061-T6", "EN 485", "", pulled(260, 320), 240, 290},
		{"yield never above ultimate", "6061-T6", "EN 485", "", pulled(180, 170), 170, 170},
		{"published yield above the ultimate of the coupons", "6061-T6", "EN 485", "", pulled(0, 80), 80, 80},
		{"no published zone", "2219-T87", "", "", pulled(140, 210), 140, 210},
		{"titanium, yield not measured: the parent", "Ti-6Al-4V", "4911", "sheet", pulled(0, 900), 869, 900},
		{"titanium, both", "Ti-6Al-4V", "4911", "sheet", pulled(800, 950), 800, 924},
		{"hardened steel under its ceiling", "4130", "", "HT-125", pulled(600, 700), 517, 655},
		{"hardened steel, yield not measured", "4130", "", "HT-125", pulled(0, 640), 517, 640},
		{"austenitic", "304L", "A240", "", pulled(0, 450), 170, 450},
	} {
		q := query(row.alloy, row.spec, row.product, 3)
		z, err := q.TestedZone(row.limits)
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		checktest.Close(t, row.where+", yield", z.Yield.Value/mpa, row.yield, 1e-12)
		checktest.Close(t, row.where+", ultimate", z.Ultimate.Value/mpa, row.ultimate, 1e-12)
		checktest.Close(t, row.where+", room yield", z.RoomYield/mpa, row.yield, 1e-12)
		checktest.Close(t, row.where+", room ultimate", z.RoomUltimate/mpa, row.ultimate, 1e-12)
	}
}

// A yield measured over a long gauge may lower the published yield and never raises
// it, the ultimate stays that of the coupons; by hand from the minima above. Hot, the
// lower of both at that temperature counts.
func TestTestedZoneOfALongGauge(t *testing.T) {
	long := func(yield, ultimate float64) material.Tested {
		p := pulled(yield, ultimate)
		p.LongGauge = true
		return p
	}
	for _, row := range []struct {
		where, alloy, spec, product string
		limits                      material.Tested
		yield, ultimate             float64 // MPa
	}{
		{"higher than the tables", "6061-T6", "EN 485", "", long(180, 250), 92, 250},
		{"lower than the tables", "6061-T6", "EN 485", "", long(80, 250), 80, 250},
		{"higher, and above its ultimate", "6061-T6", "EN 485", "", long(85, 90), 85, 90},
		{"austenitic", "304L", "A240", "", long(150, 450), 150, 450},
		{"hardened steel", "4130", "", "HT-125", long(600, 700), 517, 655},
	} {
		z, err := query(row.alloy, row.spec, row.product, 3).TestedZone(row.limits)
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
			continue
		}
		checktest.Close(t, row.where+", yield", z.Yield.Value/mpa, row.yield, 1e-12)
		checktest.Close(t, row.where+", room yield", z.RoomYield/mpa, row.yield, 1e-12)
		checktest.Close(t, row.where+", ultimate", z.Ultimate.Value/mpa, row.ultimate, 1e-12)
	}
	if z, err := query("2219-T87", "", "", 3).TestedZone(long(180, 275)); err == nil || !strings.Contains(err.Error(), "gauge_length") {
		t.Errorf("2219 has no published yield to stay at: %+v, %v", z, err)
	}
}

// Alloys without a published zone are assessed with coupons and only then; 2219
// only where they measured yield as well.
func TestCouponsNeeded(t *testing.T) {
	for _, q := range []material.Query{query("2219-T87", "", "", 3), query("Ti-6Al-4V", "4911", "sheet", 3), query("4130", "", "HT-125", 3)} {
		if z, err := q.WeldZone(); err == nil {
			t.Errorf("%s without coupons: %+v", q.Alloy, z)
		}
		if _, err := q.TestedZone(pulled(150, 250)); err != nil {
			t.Errorf("%s with coupons: %v", q.Alloy, err)
		}
	}
	if z, err := query("2219-T87", "", "", 3).TestedZone(pulled(0, 250)); err == nil || !strings.Contains(err.Error(), "measure yield") {
		t.Errorf("2219 without yield: %+v, %v", z, err)
	}
}

// What a rule makes of 6061-T6 with coupons of 275.10 MPa, by hand: vessel
// min(275.1/3.5, 92/1.5), flight min(92/1.6667, 275.1/2), vessel-eu
// min(92/1.5, 275.1/2.4); with a yield of 200: 78.6, 120, 114.6.
func TestAllowableOfCoupons(t *testing.T) {
	for _, row := range []struct {
		rule   material.Rule
		limits material.Tested
		want   string
	}{
		{material.Vessel, pulled(0, 275.10), "61.3"}, {material.Flight, pulled(0, 275.10), "55.2"}, {material.VesselEU, pulled(0, 275.10), "61.3"},
		{material.Vessel, pulled(200, 275.10), "78.6"}, {material.Flight, pulled(200, 275.10), "120.0"}, {material.VesselEU, pulled(200, 275.10), "114.6"},
	} {
		z, err := query("6061-T6", "EN 485", "", 3).TestedZone(row.limits)
		if err != nil {
			t.Fatal(err)
		}
		f, err := material.DefaultFactors(row.rule)
		if err != nil {
			t.Fatal(err)
		}
		l, err := z.Limits(row.rule, f, material.LimitOptions{})
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, string(row.rule), l.S/mpa, row.want)
	}
}

// A limit falls with heat as the parent does from the temperature of the
// coupons on, and gains nothing in the cold, also with the cold option.
func TestTestedZoneWithTemperature(t *testing.T) {
	at := func(T float64, limits material.Tested) material.Properties {
		q := query("6061-T6", "EN 485", "", 3)
		q.Temperature, q.ColdStrength = T, true
		z, err := q.TestedZone(limits)
		if err != nil {
			t.Fatal(err)
		}
		return z
	}
	// Ratio of the ultimate at 366 K, MMPDS-01: 0.910.
	checktest.Close(t, "366 K", at(366.5, pulled(0, 200)).Ultimate.Value/mpa, 200*0.910, 2e-3)
	checktest.Close(t, "77 K", at(77, pulled(0, 200)).Ultimate.Value/mpa, 200, 1e-12)
	hot := pulled(0, 180)
	hot.Temperature = 366.5
	checktest.Close(t, "at the temperature of the test", at(366.5, hot).Ultimate.Value/mpa, 180, 1e-12)
	checktest.Close(t, "cooler than the test", at(293.15, hot).Ultimate.Value/mpa, 180, 1e-12)
	warm := pulled(0, 180)
	warm.Temperature = 340
	q := query("6061-T6", "EN 485", "", 3)
	q.Temperature = 340
	then, err := q.Parent()
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "hotter than the test", at(366.5, warm).Ultimate.Value/mpa, 180*0.910/(then.Ultimate.Value/(290*mpa)), 3e-3)
}

func TestTestedZoneRefused(t *testing.T) {
	cold, nan := pulled(100, 200), pulled(100, 200)
	cold.Temperature, nan.Temperature = 77, math.NaN()
	edge := pulled(100, 200)
	edge.Temperature = 283.15
	below := edge
	below.Temperature = 283.14
	for name, row := range map[string]struct {
		limits material.Tested
		ok     bool
	}{
		"cold": {cold, false}, "no temperature": {nan, false}, "edge": {edge, true}, "below the edge": {below, false},
		"negative ultimate": {pulled(100, -5), false}, "no ultimate": {pulled(100, math.NaN()), false}, "infinite": {pulled(100, math.Inf(1)), false},
		"negative yield": {pulled(-5, 200), false},
	} {
		z, err := query("6061-T6", "EN 485", "", 3).TestedZone(row.limits)
		if (err == nil) != row.ok || err != nil && z.Yield.Value > 0 {
			t.Errorf("%s: %+v, %v", name, z, err)
		}
	}
}

func TestTestedZoneOfOwn(t *testing.T) {
	own := material.Own{Family: "titanium", Source: "certificate", Yield: 800 * mpa, Ultimate: 900 * mpa, ElasticModulus: 110e9, Poisson: 0.3, Density: 4430,
		Expansion: 9e-6, Elongation: 0.1, Allowable: math.NaN(), WeldedYield: math.NaN(), WeldedUltimate: math.NaN()}
	if _, err := own.TestedZone(293.15, pulled(0, 850)); err == nil {
		t.Error("no yield, and passed")
	}
	z, err := own.TestedZone(293.15, pulled(780, 950))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "yield", z.Yield.Value/mpa, 780, 1e-12)
	checktest.Close(t, "ultimate, capped", z.Ultimate.Value/mpa, 900, 1e-12)
}

// Where two welds meet the lower of each counts, and what one of them does not
// know is not known.
func TestWeakerZone(t *testing.T) {
	q := query("6061-T6", "EN 485", "", 3)
	table, err := q.WeldZone()
	tested, errTested := q.TestedZone(pulled(80, 200))
	if err != nil || errTested != nil {
		t.Fatal(err, errTested)
	}
	for _, z := range []material.Properties{table.Weaker(tested), tested.Weaker(table)} {
		checktest.Close(t, "yield of the coupons", z.Yield.Value/mpa, 80, 1e-12)
		checktest.Close(t, "ultimate of the tables", z.Ultimate.Value/mpa, 140, 1e-12)
		if !z.Softened || !math.IsNaN(z.Proof1.Value) || z.RoomYield != 80*mpa || z.RoomUltimate != 140*mpa {
			t.Errorf("%+v", z)
		}
	}
}

func ExampleQuery_TestedZone() {
	q := material.Query{Alloy: "6061-T6", Spec: "EN 485", Thickness: 0.003, Temperature: 293.15, Process: "tig"}
	table, _ := q.WeldZone()
	tested, err := q.TestedZone(material.Tested{Yield: 150e6, Ultimate: 190e6, Temperature: 293.15})
	fmt.Printf("tables %.0f/%.0f MPa, coupons %.0f/%.0f MPa %v\n", table.Yield.Value/1e6, table.Ultimate.Value/1e6, tested.Yield.Value/1e6, tested.Ultimate.Value/1e6, err)
	// Output: tables 92/140 MPa, coupons 150/190 MPa <nil>
}
