package proof_test

import (
	"math"
	"strconv"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check/checktest"
)

func number(t testing.TB, printed string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(printed, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func water(t testing.TB, celsius, pressure float64) proof.Water {
	t.Helper()
	w, err := proof.WaterAt(celsius+273.15, pressure)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// Kell, J. Chem. Eng. Data 20 (1975): β, κ, rigid-wall dp/dT and dκ/dT at
// 1 atm, worked independently of this package from the recalled equations.
func TestKell1975(t *testing.T) {
	for _, row := range []struct {
		celsius     float64
		β, κ, rigid string // 1/K, 1e-10/Pa, MPa/K
		dκ          string // 1e-12 1/(Pa K)
	}{
		{celsius: 5, β: "1.60e-5", κ: "4.917", rigid: "0.033", dκ: "-3.05"},
		{celsius: 10, β: "8.80e-5", κ: "4.781", rigid: "0.184", dκ: "-2.42"},
		{celsius: 15, β: "1.509e-4", κ: "4.673", rigid: "0.323", dκ: "-1.90"},
		{celsius: 20, β: "2.068e-4", κ: "4.589", rigid: "0.451", dκ: "-1.48"},
		{celsius: 25, β: "2.572e-4", κ: "4.525", rigid: "0.568", dκ: "-1.11"},
		{celsius: 30, β: "3.032e-4", κ: "4.477", rigid: "0.677", dκ: "-0.80"},
	} {
		w := water(t, row.celsius, 0)
		checktest.Printed(t, "β", w.Expansion, row.β)
		checktest.Printed(t, "κ", w.Compressibility*1e10, row.κ)
		rigid := proof.Full{Volume: 1, Compressibility: w.Compressibility, Expansion: w.Expansion}
		checktest.Printed(t, "rigid wall", value(t)(rigid.Drift(0))/1e6, row.rigid)
		under := water(t, row.celsius, 1e6)
		checktest.Printed(t, "dκ/dT", (w.Expansion-under.Expansion)/1e6*1e12, row.dκ)
	}
	// University of Wisconsin pressure vessel manual, 20 °C, read: 3.17e-6 per
	// psi; the two differ by 0.2 %.
	checktest.Close(t, "compressibility", water(t, 20, 0).Compressibility, 3.17e-6/6894.757, 2.5e-3)
	checktest.Printed(t, "density at 20 °C", water(t, 20, 0).Density, "998.2")
	checktest.Printed(t, "density at 4 °C", water(t, 4, 0).Density, "1000.0")
}

// β is the slope of the density: a check of the derivative by differences.
func TestExpansionIsTheSlopeOfDensity(t *testing.T) {
	for _, celsius := range []float64{1, 4, 20, 60, 99} {
		up, down := water(t, celsius+1e-3, 0), water(t, celsius-1e-3, 0)
		slope := -(up.Density - down.Density) / 2e-3 / water(t, celsius, 0).Density
		if got := water(t, celsius, 0).Expansion; math.Abs(got-slope) > 1e-9 {
			t.Errorf("%g °C: β %g, slope of density %g", celsius, got, slope)
		}
	}
}

// β − 3 α_v turns its sign at the temperatures printed, at 1 atm.
func TestNullTemperature(t *testing.T) {
	for _, row := range []struct{ α, null float64 }{{12e-6, 6.3}, {16.5e-6, 7.2}, {23e-6, 8.6}} {
		below, above := water(t, row.null-0.06, 0).Expansion-3*row.α, water(t, row.null+0.06, 0).Expansion-3*row.α
		if !(below < 0 && above > 0) {
			t.Errorf("α %g: %g below and %g above %g °C", row.α, below, above, row.null)
		}
	}
}

func TestWaterOutsideItsRange(t *testing.T) {
	for _, row := range [][2]float64{{273.14, 0}, {373.16, 0}, {293, -1}, {293, 20.001e6}, {math.NaN(), 0}, {293, math.NaN()}} {
		if w, err := proof.WaterAt(row[0], row[1]); err == nil || !math.IsNaN(w.Expansion+w.Density+w.Compressibility) {
			t.Errorf("%v: %+v, %v", row, w, err)
		}
	}
	for _, row := range [][2]float64{{273.15, 0}, {373.15, 20e6}} {
		if _, err := proof.WaterAt(row[0], row[1]); err != nil {
			t.Errorf("%v: %v", row, err)
		}
	}
}

// Long closed cylinder full of water, kPa/K, β at 1 atm, growth of the cylinder
// alone; worked independently of this package.
func TestDriftTable(t *testing.T) {
	celsius := []float64{5, 10, 15, 20, 25, 30}
	for _, row := range []struct {
		name       string
		e, ν, α, n float64 // E [Pa], ν, α_v [1/K], R/t
		want       []string
	}{
		{"carbon steel 100", 205e9, .30, 12e-6, 100, []string{"-14.1", "37.0", "82.4", "123.2", "160.4", "194.4"}},
		{"304/316 100", 193e9, .30, 16.5e-6, 100, []string{"-22.7", "26.3", "69.8", "109.0", "144.5", "177.2"}},
		{"aluminium 50", 69e9, .33, 23e-6, 50, []string{"-29.0", "10.5", "45.5", "76.9", "105.4", "131.5"}},
		{"aluminium 100", 69e9, .33, 23e-6, 100, []string{"-16.8", "6.0", "26.1", "44.1", "60.3", "75.2"}},
		{"aluminium 200", 69e9, .33, 23e-6, 200, []string{"-9.1", "3.3", "14.1", "23.8", "32.5", "40.5"}},
	} {
		w := proof.Wall{Thickness: 1 / row.n, ElasticModulus: row.e, Poisson: row.ν}
		growth := value(t)(w.CylinderGrowth(1, 1))
		for i, c := range celsius {
			h2o := water(t, c, 0)
			f := proof.Full{Volume: math.Pi, Growth: growth, Compressibility: h2o.Compressibility, Expansion: h2o.Expansion, WallExpansion: row.α}
			checktest.Printed(t, row.name, value(t)(f.Drift(0))/1e3, row.want[i])
		}
	}
}

// Trapped water in steel pipe, an engineering forum's answer, read: its inputs,
// 210e-6 and 36e-6 per K, 4e-4 per MPa, E 2e5 MPa, D/t 100, 10 and a rigid wall;
// its D/(t E) gives 0.193, 0.387 and 0.435 MPa/K, the closed vessel's
// (D/4tE)(5 − 4ν), 0.95 of that, 0.199, 0.389 and 0.435.
func TestTrappedWaterInSteel(t *testing.T) {
	v := value(t)
	w := proof.Wall{Thickness: 0.02, ElasticModulus: 2e11, Poisson: 0.3}
	f := proof.Full{Volume: math.Pi, Growth: v(w.CylinderGrowth(1, 1)), Compressibility: 4e-10, Expansion: 210e-6, WallExpansion: 12e-6}
	checktest.Printed(t, "D/t 100", v(f.Drift(0))/1e6, "0.199")
	// D/t 10 is too thick for the membrane formula, which the published number is nevertheless of.
	f.Growth = math.Pi * 10 / (4 * 2e11) * (5 - 4*0.3)
	checktest.Printed(t, "D/t 10", v(f.Drift(0))/1e6, "0.389")
	if _, err := (proof.Wall{Thickness: 0.2, ElasticModulus: 2e11, Poisson: 0.3}).CylinderGrowth(1, 1); err == nil {
		t.Error("a membrane of R/t 5")
	}
	for _, row := range []struct {
		slender float64 // D/t
		want    string
	}{{100, "0.193"}, {10, "0.387"}, {0, "0.435"}} {
		f.Growth = math.Pi * row.slender / 2e11 // the forum's wall
		checktest.Printed(t, "the forum's", v(f.Drift(0))/1e6, row.want)
	}
	f.Growth = 0
	checktest.Printed(t, "rigid", v(f.Drift(0))/1e6, "0.435")
}

// Two teaching examples on bulk modulus, read: 2.07e6 kN/m² squeezed by 1 % asks 2.07e4 kN/m²;
// 2.2 GPa by 0.8 % asks 17.6 MPa.
func TestBulkModulus(t *testing.T) {
	for _, row := range []struct {
		K, squeezed float64 // [Pa], [-]
		want        string  // MPa
	}{{2.07e9, 0.01, "20.7"}, {2.2e9, 0.008, "17.6"}} {
		full := proof.Full{Volume: 3, Compressibility: 1 / row.K}
		checktest.Printed(t, "pressure, MPa", value(t)(full.LeakFall(0))*row.squeezed*3/1e6, row.want)
	}
}
