package tank

import (
	"bytes"
	"math"
	"os"
	"strings"
	"testing"
)

// readCouponFile reads the tank of wrong coupons with this coupon file instead.
func readCouponFile(tb testing.TB, text string) (*Tank, error) {
	tb.Helper()
	src, err := os.ReadFile(badFolder + "/coupons.toml")
	if err != nil {
		tb.Fatal(err)
	}
	return Read("tank.toml", src, func(string) ([]byte, error) { return []byte(text), nil })
}

// Loads over their section: 19.5 kN on 12.5 mm x 3 mm is 520 MPa, 9.75 kN 260.
func TestCouponsOfLoads(t *testing.T) {
	for name, text := range map[string]string{
		"metric": "coupon,load [kN],yield_load [kN],width [mm],thickness [mm],failure,temperature [degC],kind\nA1,19.5,9.75,12.5,3,haz,20,weld\nA2,19.6,,12.5,3,weld,20,\nA3,19.7,9.8,12.5,3,weld,20,weld\nP1,22,,12.5,3,parent,20,parent\n",
		"US":     "coupon,load (lbf),yield_load (lbf),width (in),thickness (in),failure,temperature (degF),kind\nA1,4383.77441,2191.8872,0.49212598,0.11811024,haz,68,weld\nA2,4406,,0.4921,0.1181,weld,68,\nA3,4428,2200,0.4921,0.1181,weld,68,weld\nP1,4945,,0.4921,0.1181,parent,68,parent\n",
	} {
		tank, err := readCouponFile(t, text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		j, _ := tank.FindJoint("long")
		if len(j.CouponRows) != 4 {
			t.Fatalf("%s: %+v", name, j.CouponRows)
		}
		c := j.CouponRows[0]
		for what, d := range map[string]float64{"ultimate": c.Ultimate/520e6 - 1, "yield": *c.Yield/260e6 - 1, "temperature": *c.Temperature/293.15 - 1, "thickness": *c.Thickness/0.003 - 1} {
			if !(math.Abs(d) < 1e-6) {
				t.Errorf("%s, %s: off by %g", name, what, d)
			}
		}
		if c.Parent || c.Failure != "haz" || c.Line != 2 || j.CouponRows[1].Yield != nil || !j.CouponRows[3].Parent {
			t.Errorf("%s: %+v", name, j.CouponRows)
		}
	}
}

// Whatever a coupon file holds, reading ends in coupons that can be used or in
// faults that stand in a line of a file.
func FuzzCoupons(f *testing.F) {
	for _, text := range []string{
		"coupon,ultimate [MPa],yield [MPa],failure\nA1,520,260,weld\nA2,510,,parent\nA3,515,255,weld\n",
		"coupon,load [kN],width [mm],thickness [mm],kind,process\nA1,19,12,3,weld,tig\nA2,20,12,3,parent,\n",
		"ultimate [MPa],ultimate [ksi]\n1,2\n", "kind\nweld\n", "",
	} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		tank, err := readCouponFile(t, text)
		faults, _ := err.(Faults)
		for _, x := range faults {
			if x.Line < 1 || x.Line > 1+bytes.Count([]byte(text), []byte("\n"))+100 || x.Column < 1 || strings.TrimSpace(x.What) == "" {
				t.Errorf("%+v", x)
			}
		}
		if err != nil {
			return
		}
		j, _ := tank.FindJoint("long")
		count := 0
		for _, c := range j.CouponRows {
			if !(c.Ultimate > 0) || math.IsInf(c.Ultimate, 0) || c.Yield != nil && !(*c.Yield > 0 && *c.Yield <= c.Ultimate) {
				t.Errorf("%+v", c)
			}
			if !c.Parent {
				count++
			}
		}
		if count < 3 {
			t.Errorf("%d weld coupons passed", count)
		}
	})
}
