package main

import (
	"fmt"
	"os"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
)

// crowd returns the demonstration tank with 30 ports in all and 20 cases: small tubes
// in rows on both bulkheads and along the cylinder, and cases of falling pressure and
// changing acceleration.
func crowd(t testing.TB) string {
	t.Helper()
	src, err := os.ReadFile("../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	var b strings.Builder
	b.Write(src)
	const tube = `tube = { outside_diameter = "12 mm", wall = "2 mm", under_tolerance = "0.2 mm", material = "plate", seam = "none" }
outside = "30 mm"
weld = { outside_leg = "4 mm", groove = "full" }
`
	for i := range 25 {
		fmt.Fprintf(&b, "\n[[port]]\nname = \"sensor-of-row-%c\"\n", 'a'+i)
		switch {
		case i < 10:
			fmt.Fprintf(&b, "on = \"aft\"\naxis = \"parallel\"\nradius = \"%d mm\"\nclock = \"%d deg\"\n%s", 80+60*(i%2), 36*i%360, tube)
		case i < 20:
			fmt.Fprintf(&b, "on = \"forward\"\naxis = \"normal\"\nradius = \"%d mm\"\nclock = \"%d deg\"\n%s", 80+60*(i%2), 36*i%360, tube)
		default:
			fmt.Fprintf(&b, "on = \"cylinder\"\nstation = \"%d mm\"\nclock = \"%d deg\"\n%s", 150+220*(i-20), 60*i%360, tube)
		}
	}
	for i := range 17 { // beside meop and the two of the demonstration
		fmt.Fprintf(&b, "\n[[case]]\nname = \"phase-%02d-of-the-flight\"\npeople = \"clear\"\nullage_pressure = \"%.1f bar\"\naxial_load_factor = %.2f\nlateral_load_factor = %.2f\nfill = %.3f\ntemperature = \"20 degC\"\n",
			i, 24.5-0.3*float64(i), 1+0.2*float64(i), 0.05*float64(i%4), 0.9-0.04*float64(i))
	}
	return b.String()
}

// crowdedSheet assesses the crowd.
func crowdedSheet(t testing.TB) *report.Sheet {
	t.Helper()
	in, err := tank.Read("crowd.toml", []byte(crowd(t)), os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	s, err := assess.Assess(in, assess.Options{})
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestCrowdedSheet holds a tank of 30 ports and 20 cases to a megabyte.
func TestCrowdedSheet(t *testing.T) {
	s := crowdedSheet(t)
	if n := len(s.Section.Ports); n != 30 {
		t.Errorf("%d ports", n)
	}
	if n := len(s.Cases); n != 20 {
		t.Errorf("%d cases", n)
	}
	file, err := pdf.Write(s)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d checks, %d bytes", len(s.Checks), len(file))
	if len(file) > 1<<20 {
		t.Errorf("the sheet takes %d bytes, more than a megabyte", len(file))
	}
	if name := os.Getenv("CROWD_PDF"); name != "" {
		if err := os.WriteFile(name, file, 0o600); err != nil {
			t.Fatal(err)
		}
	}
}

// BenchmarkSheetLarge reads, assesses and draws the crowd, unsigned.
func BenchmarkSheetLarge(b *testing.B) {
	spendMemory()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pdf.Write(crowdedSheet(b)); err != nil {
			b.Fatal(err)
		}
	}
}

// BenchmarkDrawingLarge draws the crowd, unsigned.
func BenchmarkDrawingLarge(b *testing.B) {
	spendMemory()
	s := crowdedSheet(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := pdf.Write(s); err != nil {
			b.Fatal(err)
		}
	}
}
