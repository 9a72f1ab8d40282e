package port_test

// Cut-outs and templates of PC-01 to PC-09, computed by two methods each (see
// oblique_test.go), in mm.

import (
	"math"
	"testing"

	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

var angles = [...]float64{0, 45, 90, 135, 180}

func TestConeTemplates(t *testing.T) {
	for _, row := range []struct {
		id              string
		α, od, e        float64
		perimeter, area string
		u, v            [5]string
	}{
		{"PC-01", 30, 25.4, 60, "123.0433", "1013.415", [5]string{"25.4000", "18.8334", "1.9922", "-16.7848", "-25.4000"}, [5]string{"0", "8.9991", "12.7694", "9.0144", "0"}},
		{"PC-02", 45, 25.4, 60, "97.0330", "716.593", [5]string{"17.9605", "13.1113", "0.9383", "-12.1461", "-17.9605"}, [5]string{"0", "8.9928", "12.7462", "9.0030", "0"}},
		{"PC-03", 45, 50.8, 60, "194.0660", "2866.370", [5]string{"35.9210", "26.8409", "3.6206", "-22.8185", "-35.9210"}, [5]string{"0", "18.0376", "25.7445", "18.2082", "0"}},
		{"PC-04", 60, 38.1, 80, "129.1193", "1316.465", [5]string{"21.9970", "15.8327", "0.6435", "-15.1655", "-21.9970"}, [5]string{"0", "13.4819", "19.0936", "13.4929", "0"}},
		{"PC-05", 60, 50.8, 100, "172.1591", "2340.382", [5]string{"29.3294", "21.1309", "0.9131", "-20.1797", "-29.3294"}, [5]string{"0", "17.9776", "25.4658", "17.9954", "0"}},
	} {
		p, w := tube(row.od, 2, row.e), cone(row.α, 3)
		c, err := p.CutOut(w)
		if err != nil {
			t.Errorf("%s: %v", row.id, err)
			continue
		}
		checktest.Printed(t, row.id+" perimeter", c.Perimeter/mm, row.perimeter)
		// The table's area was summed over triangles, to 0.012 mm2; the closed form is exact.
		checktest.Close(t, row.id+" area, closed form", c.Area, math.Pi*math.Pow(row.od*mm/2, 2)/math.Sin(row.α*deg), 1e-9)
		checktest.Printed(t, row.id+" area", c.Area*1e6, row.area)
		for i, ψ := range angles {
			u, v, err := p.Flat(w, ψ*deg)
			if err != nil {
				t.Fatal(err)
			}
			checktest.Printed(t, row.id+" u", u/mm, row.u[i])
			if row.v[i] != "0" {
				checktest.Printed(t, row.id+" v", v/mm, row.v[i])
			}
		}
	}
}

// The widest developed ordinate lies outboard: PC-01 25.5388 at ψ 90.13°,
// PC-03 51.4917 at 90.58°.
func TestDevelopedWidth(t *testing.T) {
	for _, row := range []struct {
		id       string
		α, od, e float64
		ψ        float64
		width    string
	}{
		{"PC-01", 30, 25.4, 60, 90.13, "25.5388"}, {"PC-02", 45, 25.4, 60, 90.09, "25.4925"}, {"PC-03", 45, 50.8, 60, 90.58, "51.4917"},
		{"PC-04", 60, 38.1, 80, 90.06, "38.1872"}, {"PC-05", 60, 50.8, 100, 90.07, "50.9316"},
	} {
		_, v, err := tube(row.od, 2, row.e).Flat(cone(row.α, 3), row.ψ*deg)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.id+" width", 2*v/mm, row.width)
	}
}

func TestTubeEnds(t *testing.T) {
	dome := func(r float64) port.Wall { return port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: r * mm} }
	for _, row := range []struct {
		id    string
		w     port.Wall
		od, e float64
		ψ     [5]string // heights from the apex on a cone, below ψ = 0 on a dome
		domed bool
	}{
		{"PC-01", cone(30, 3), 25.4, 60, [5]string{"125.9201", "120.4855", "106.2256", "89.7272", "81.9260"}, false},
		{"PC-02", cone(45, 3), 25.4, 60, [5]string{"72.7000", "69.5624", "61.3294", "51.8040", "47.3000"}, false},
		{"PC-04", cone(60, 3), 38.1, 80, [5]string{"57.1865", "54.5227", "47.4795", "39.1903", "35.1895"}, false},
		{"PC-07", dome(150), 38.1, 60, [5]string{"0", "2.5996", "8.6712", "14.4834", "16.8223"}, true},
		{"PC-08", dome(200), 50.8, 100, [5]string{"0", "4.7039", "15.5287", "25.7091", "29.7624"}, true},
		{"PC-09", port.Wall{Surface: port.Ellipsoid, Thickness: 3 * mm, Radius: 150 * mm, Depth: 75 * mm}, 38.1, 60, [5]string{"0", "1.2998", "4.3356", "7.2417", "8.4112"}, true},
	} {
		p := tube(row.od, 2, row.e)
		full, err := p.TubeEnd(row.w, 0)
		if err != nil {
			t.Fatal(err)
		}
		for i, ψ := range angles {
			h, err := p.TubeEnd(row.w, ψ*deg)
			if err != nil {
				t.Fatal(err)
			}
			if row.domed {
				h = full - h
			} else {
				h += (row.e - row.od/2) * mm / math.Tan(row.w.HalfApex)
			}
			if row.ψ[i] != "0" {
				checktest.Printed(t, row.id+" end", h/mm, row.ψ[i])
			}
		}
	}
}

// Polyline perimeter and Monte Carlo area of the domes.
func TestDomeCutOuts(t *testing.T) {
	for _, row := range []struct {
		id        string
		w         port.Wall
		od, e     float64
		perimeter string
		area      float64
	}{
		{"PC-07", port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 150 * mm}, 38.1, 60, "125.3307", 1251.7},
		{"PC-08", port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 200 * mm}, 50.8, 100, "172.5131", 2359.8},
		{"PC-09", port.Wall{Surface: port.Ellipsoid, Thickness: 3 * mm, Radius: 150 * mm, Depth: 75 * mm}, 38.1, 60, "121.1400", 1169.1},
	} {
		c, err := tube(row.od, 2, row.e).CutOut(row.w)
		if err != nil {
			t.Fatal(err)
		}
		checktest.Printed(t, row.id+" perimeter", c.Perimeter/mm, row.perimeter)
		checktest.Close(t, row.id+" area (random sampling in the source)", c.Area*1e6, row.area, 1e-3)
	}
}
