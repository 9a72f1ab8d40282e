package assess_test

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// coupons returns a coupon file of strengths in MPa, a yield of 0 not measured, 5 mm
// thick and with yield measured over 50 mm.
func coupons(rows ...[2]float64) string { return couponsOf("5", "50", rows...) }

// couponsOf returns one of a thickness and a gauge length in mm, "" not stated.
func couponsOf(thickness, gauge string, rows ...[2]float64) string {
	var b strings.Builder
	head, tail := "coupon,ultimate [MPa],yield [MPa],failure", "weld"
	for _, c := range [][2]string{{",thickness [mm]", thickness}, {",gauge_length [mm]", gauge}} {
		if c[1] != "" {
			head, tail = head+c[0], tail+","+c[1]
		}
	}
	b.WriteString(head + "\n")
	for i, r := range rows {
		yield := ""
		if r[1] > 0 {
			yield = fmt.Sprint(r[1])
		}
		fmt.Fprintf(&b, "C%d,%g,%s,%s\n", i+1, r[0], yield, tail)
	}
	return b.String()
}

// alone are the coupons of the example file without yield.
var alone = [][2]float64{{305, 0}, {311, 0}, {298, 0}, {322, 0}, {309, 0}, {301, 0}, {315, 0}, {307, 0}}

// couponTank returns the example tank of coupons with this file in place of its
// own, "" for its own, and lines of its text replaced.
func couponTank(t fataler, file string, pairs ...string) *tank.Tank {
	const folder = "../../../../testdata/tanks/"
	src, err := os.ReadFile(folder + "coupons.toml")
	if err != nil {
		t.Fatalf("%v", err)
	}
	text := string(src)
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("no %q", pairs[i])
		}
		text = strings.ReplaceAll(text, pairs[i], pairs[i+1])
	}
	out, err := tank.Read("coupons.toml", []byte(text), func(name string) ([]byte, error) {
		if file != "" {
			return []byte(file), nil
		}
		return os.ReadFile(filepath.Join(folder, name))
	})
	if err != nil {
		t.Fatalf("%v", err)
	}
	return out
}

type fataler interface{ Fatalf(string, ...any) }

const withCoupons = "coupons = \"coupons.csv\""

// What the seams of the example tank may carry, by hand from the A limits
// 275.097 and 165.08 MPa (mean − 4.35386 s) and 441/352 MPa of the parent: vessel
// 0.85 min(275.097/3.5, 165.08/1.5), flight 0.85 × 165.08 against the factored
// sum, at proof 0.85 × 0.90 × 165.08 on the seam and 0.90 × 165.08 in its zone.
func TestCouponsByHand(t *testing.T) {
	s := sheet(t, couponTank(t, ""))
	for id, want := range map[string]string{
		"cylinder/hoop@meop": "66.81", "cylinder/longitudinal@meop": "66.81", "cylinder/equivalent@meop": "78.60", "head.aft/membrane@meop": "78.60",
		"cylinder/hoop@boost": "140.3", "cylinder/equivalent@boost": "165.1", "proof/yield@proof": "126.3", "tank/weld-zones@proof": "148.6",
	} {
		checktest.Printed(t, id, find(t, s, id).Capacity.Value/1e6, want)
	}
	for key, want := range map[string]string{
		"joint.seam.coupon_ultimate_mean": "308.50", "joint.seam.coupon_ultimate_deviation": "7.672", "joint.seam.coupon_ultimate_limit": "275.10", "joint.seam.coupon_yield_mean": "185.50",
	} {
		checktest.Printed(t, key, quantity(t, s, key)/1e6, want)
	}
	checktest.Close(t, "efficiency", quantity(t, s, "cylinder.hoop_efficiency"), 0.85, 1e-12)
}

// The inspection factor stands in place of the efficiency, by examination alone.
func TestInspectionFactorOfTheSheet(t *testing.T) {
	for exam, e := range map[string]float64{"full": 1, "spot": 0.85, "none": 0.70} {
		for _, kind := range []string{"double butt", "single butt with backing"} {
			s := sheet(t, couponTank(t, "", `examination = "spot" `, `examination = "`+exam+`" `, `kind = "double butt"`, `kind = "`+kind+`"`))
			checktest.Close(t, exam+", "+kind, find(t, s, "cylinder/hoop@meop").Capacity.Value, e*275.097e6/3.5, 1e-4)
		}
	}
}

// An alloy without a published strength across its weld is assessed with coupons
// and only then, and with a port only where its weld names the joint too.
func TestAlloysThatNeedCoupons(t *testing.T) {
	titanium := []string{`alloy = "2219-T87"`, `alloy = "Ti-6Al-4V"`, `fluid = "LOX"`, `fluid = "water"`, `temperature = "90 K"`, `temperature = "20 degC"`}
	for name, row := range map[string]struct {
		file  string
		pairs []string
		made  bool
	}{
		"2219":                    {"", nil, true},
		"2219 without coupons":    {"", []string{withCoupons, "#"}, false},
		"2219 without yield":      {coupons(alone...), nil, false},
		"2219, port by itself":    {"", []string{`, joint = "seam"`, ""}, true},
		"titanium":                {"", titanium, true},
		"titanium without":        {"", append([]string{withCoupons, "#"}, titanium...), false},
		"6061 without yield":      {coupons(alone...), []string{"2219-T87", "6061-T6"}, true},
		"few and scattered":       {coupons([2]float64{270, 150}, [2]float64{300, 160}, [2]float64{330, 170}), nil, false},
		"one yield too few":       {coupons([2]float64{300, 150}, [2]float64{305, 160}, [2]float64{310, 0}), nil, false},
		"wall of twice":           {"", []string{`thickness = "5 mm"`, `thickness = "10 mm"`}, true},
		"wall of more than twice": {"", []string{`thickness = "5 mm"`, `thickness = "10.5 mm"`}, false},
	} {
		s := sheet(t, couponTank(t, row.file, row.pairs...))
		for _, id := range []string{"cylinder/hoop@meop", "cylinder/longitudinal@meop", "cylinder/equivalent@meop", "cylinder/thickness@boost"} {
			r := find(t, s, id)
			if made := r.Status() != check.NotAssessed; made != row.made {
				t.Errorf("%s, %s: %v, %s", name, id, r.Status(), r.Reason())
			}
		}
		if !row.made && s.Verdict == check.Satisfied {
			t.Errorf("%s: satisfied", name)
		}
	}
	s := sheet(t, couponTank(t, "", `, joint = "seam"`, ""))
	for _, id := range []string{"port.outlet/area@meop", "head.aft/membrane@meop", "tank/weld-zones@meop"} {
		if r := find(t, s, id); r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "in a port's weld write joint") {
			t.Errorf("port of a weld nobody describes, %s: %v, %s", id, r.Status(), r.Reason())
		}
	}
}

// Yield that nobody measured stays that of the tables: 6061-T6 by TIG 92 MPa.
func TestYieldOfTheTablesStays(t *testing.T) {
	s := sheet(t, couponTank(t, coupons(alone...), "2219-T87", "6061-T6"))
	checktest.Close(t, "seam at proof", find(t, s, "proof/yield@proof").Capacity.Value, 0.85*0.9*92e6, 1e-9)
	checktest.Close(t, "seam, vessel", find(t, s, "cylinder/hoop@meop").Capacity.Value, 0.85*92e6/1.5, 1e-9)
}

// Yield over a long gauge does not raise that of the tables, 92 MPa of
// 6061-T6 by TIG, so that the seam has 0.85 × 92/1.5 by vessel; over 2 in it does, up to
// the A limit of these coupons, 182.0 − 4.35386 s with s of their eight yields:
// mean 182.0, s² = Σ(y − 182)²/7 = (0 + 1 + 4 + 4 + 1 + 0 + 1 + 1)/7 = 12/7, s 1.30931,
// limit 176.30, where the ultimate's 275.10/3.5 governs. 2219 has no yield to stay at.
func TestGaugeOfCoupons(t *testing.T) {
	rows := [][2]float64{{305, 182}, {311, 183}, {298, 180}, {322, 184}, {309, 181}, {301, 182}, {315, 183}, {307, 181}}
	for _, row := range []struct {
		where, gauge string
		want         float64 // MPa
	}{
		{"50 mm", "50", 0.85 * 275.097 / 3.5}, {"2 in", "50.8", 0.85 * 275.097 / 3.5},
		{"10 in", "250", 0.85 * 92 / 1.5}, {"60 mm", "60", 0.85 * 92 / 1.5},
		{"not stated", "", 0.85 * 275.097 / 3.5},
	} {
		file := couponsOf("5", row.gauge, rows...)
		s := sheet(t, couponTank(t, file, "2219-T87", "6061-T6"))
		checktest.Close(t, row.where, find(t, s, "cylinder/hoop@meop").Capacity.Value/1e6, row.want, 1e-5)
		said := strings.Join(s.Cautions, " ")
		if long := row.want < 60; strings.Contains(said, "never raises it") != long {
			t.Errorf("%s: cautions %s", row.where, said)
		}
		if none := row.gauge == ""; strings.Contains(said, "over what gauge it was measured is not stated") != none {
			t.Errorf("%s: cautions %s", row.where, said)
		}
		r := find(t, sheet(t, couponTank(t, file)), "cylinder/hoop@meop")
		if long := row.want < 60; (r.Status() == check.NotAssessed) != long {
			t.Errorf("2219, %s: %v, %s", row.where, r.Status(), r.Reason())
		}
	}
}

// Coupons that do not say how thick they are count as cut from this wall, and page 1
// says so.
func TestCouponsWithoutThickness(t *testing.T) {
	s := sheet(t, couponTank(t, couponsOf("", "50", alone...), "2219-T87", "6061-T6"))
	if r := find(t, s, "cylinder/hoop@meop"); r.Status() != check.Satisfied || !strings.Contains(strings.Join(s.Cautions, " "), "how thick the coupons are is not stated") {
		t.Errorf("%v, %q", r.Status(), s.Cautions)
	}
}

// A rejected normality leaves every weld not assessed, with the reason, and the
// sheet says so on page 1; what was computed is still shown.
func TestRejectedNormality(t *testing.T) {
	file := coupons([2]float64{300, 180}, [2]float64{300.1, 180}, [2]float64{300.2, 181}, [2]float64{300.1, 182}, [2]float64{300, 181}, [2]float64{300.2, 180}, [2]float64{300.1, 182}, [2]float64{260, 179})
	s := sheet(t, couponTank(t, file))
	r := find(t, s, "cylinder/hoop@meop")
	if r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "normality is rejected") {
		t.Errorf("%v: %s", r.Status(), r.Reason())
	}
	l := s.Joints[0].Coupons.Limits[0]
	if l.Refused == "" || !strings.Contains(l.Normality, "REJECTED") || !strings.Contains(l.Outlier, "coupon C8") || !strings.Contains(l.Outlier, "OUTLIER") || l.N != 8 {
		t.Errorf("%+v", l)
	}
	if all := strings.Join(s.Cautions, " "); !strings.Contains(all, "give no limit that may be used") {
		t.Errorf("cautions: %s", all)
	}
	if !math.IsNaN(l.Limit) {
		t.Errorf("a limit %g after a rejected normality", l.Limit)
	}
}

// A limit below zero is shown as it is and used by nothing.
func TestNegativeLimitIsShown(t *testing.T) {
	s := sheet(t, couponTank(t, coupons([2]float64{270, 150}, [2]float64{300, 160}, [2]float64{330, 170})))
	l := s.Joints[0].Coupons.Limits[0]
	checktest.Printed(t, "300 − 10.5527 · 30", l.Limit/1e6, "-16.6")
	if l.Refused == "" {
		t.Error("used")
	}
	if all := strings.Join(s.Cautions, " "); !strings.Contains(all, "ultimate: only 3 coupons") {
		t.Errorf("cautions: %s", all)
	}
	var b strings.Builder
	if err := report.Text(&b, s, false, "", 0); err != nil {
		t.Fatal(err)
	}
	if !strings.Contains(b.String(), "A limit -16.59 MPa, NOT USED") {
		t.Error(b.String())
	}
}

// The coupons of a tube's own seam set the strength of the tube: half of its
// parent's strength makes it twice as thick, E = 1 in both.
func TestCouponsOfATubeSeam(t *testing.T) {
	const tube = "material = \"plate\", seam = \"none\" }\nfit"
	own := "\n[joint.pipe]\nkind = \"double butt\"\nexamination = \"full\"\ncoupons = \"pipe.csv\"\n\n[cylinder]"
	weak := coupons([2]float64{130, 120}, [2]float64{131, 121}, [2]float64{132, 122}, [2]float64{130.5, 120.5}, [2]float64{131.5, 121.5})
	src := string(read(t, "oxygen").Text)
	for _, pair := range [][2]string{{tube, strings.Replace(tube, "none", "pipe", 1)}, {"\n[cylinder]", own}} {
		if !strings.Contains(src, pair[0]) {
			t.Fatalf("no %q", pair[0])
		}
		src = strings.Replace(src, pair[0], pair[1], 1)
	}
	in, err := tank.Read("oxygen.toml", []byte(src), func(string) ([]byte, error) { return []byte(weak), nil })
	if err != nil {
		t.Fatal(err)
	}
	s := sheet(t, in)
	limit := quantity(t, s, "joint.pipe.coupon_ultimate_limit")
	if limit > 130e6 || !(limit > 120e6) {
		t.Fatalf("limit %g", limit)
	}
	// The stress along the tube is held to S of its welds: limit/3.5 by vessel.
	checktest.Close(t, "tube", find(t, s, "port.outlet/thrust@meop").Capacity.Value, limit/3.5, 1e-9)
}

// Basis B is an override: it raises the limit and is printed with its source.
func TestBasisB(t *testing.T) {
	const rule = "rule = \"flight\""
	s := sheet(t, couponTank(t, "", rule, rule+"\ncoupon_basis = \"B\"\nsource = \"letter 7\""))
	checktest.Printed(t, "limit", quantity(t, s, "joint.seam.coupon_ultimate_limit")/1e6, "288.69")
	shown := false
	for _, b := range s.Basis {
		shown = shown || b.Name == "coupon_basis" && b.Override && b.Value == "B" && b.Source.Doc == "letter 7"
	}
	if !shown {
		t.Errorf("%+v", s.Basis)
	}
}

// The numbers for display: descriptive 308.5/463.33, the design ratio
// 275.097/441, and the seam's share 0.85 (275.097/3.5)/(441/3.5) by vessel.
func TestEfficienciesForDisplay(t *testing.T) {
	s := sheet(t, couponTank(t, ""))
	got := map[string]float64{}
	for _, v := range s.Joints[0].Coupons.Ratios {
		got[v.Quantity.Name] = v.Quantity.Value
	}
	for name, want := range map[string]float64{
		"1 descriptive: mean weld over mean parent, ultimate":          308.5 / (1390.0 / 3),
		"3 design: limit over parent minimum, ultimate, plate of 5 mm": 275.097 / 441,
		"3 design: limit over parent minimum, yield, plate of 5 mm":    165.079 / 352,
		"seam over parent allowable by vessel, plate of 5 mm":          0.85 * 275.097 / 441,
	} {
		checktest.Close(t, name, got[name], want, 1e-5)
	}
}

// Whatever coupons show, a seam is never allowed more than the inspection factor
// times the parent, and stronger coupons never lower what it is allowed.
func TestCouponsNeverExceedTheParent(t *testing.T) {
	rapid.Check(t, func(rt *rapid.T) {
		n := rapid.IntRange(3, 12).Draw(rt, "n")
		var weak, strong [][2]float64
		factor := rapid.Float64Range(1, 3).Draw(rt, "factor")
		for range n {
			u := rapid.Float64Range(150, 500).Draw(rt, "ultimate")
			y := u * rapid.Float64Range(0.3, 0.9).Draw(rt, "share")
			weak, strong = append(weak, [2]float64{u, y}), append(strong, [2]float64{factor * u, factor * y})
		}
		capacity := func(rows [][2]float64) (float64, bool) {
			s := sheet(t, couponTank(rt, coupons(rows...)))
			r := find(t, s, "cylinder/hoop@meop")
			return r.Capacity.Value, r.Status() != check.NotAssessed
		}
		a, made := capacity(weak)
		b, madeStrong := capacity(strong)
		if made != madeStrong {
			rt.Fatalf("made %v, and times %g %v", made, factor, madeStrong)
		}
		if most := 0.85 * 441e6 / 3.5 * (1 + 1e-9); made && (!(a > 0) || a > most || b > most || b < a*(1-1e-9)) {
			rt.Fatalf("%g, times %g %g", a, factor, b)
		}
	})
}
