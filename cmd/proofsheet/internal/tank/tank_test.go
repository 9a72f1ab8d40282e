package tank

import (
	"errors"
	"math"
	"os"
	"reflect"
	"strings"
	"testing"

	"proofsheet/report/check/checktest"
)

func readStarter(t *testing.T) *Tank {
	t.Helper()
	tank, err := Read("starter.toml", Starter(), nil)
	if err != nil {
		t.Fatal(err)
	}
	return tank
}

func TestStarterReads(t *testing.T) {
	tank := readStarter(t)
	for name, row := range map[string]struct{ got, want float64 }{
		"inside diameter": {*tank.Cylinder.InsideDiameter, 0.4},
		"meop":            {tank.Pressure.MEOP, 1e6},
		"half angle":      {*tank.Head.Aft.HalfAngle, math.Pi / 6},
		"temperature":     {tank.Contents.Coldest, 293.15},
		"axial force":     {*tank.Case[1].AxialForce, -20e3},
		"hold":            {tank.Proof.Hold, 600},
		"cylinder wall":   {tank.Cylinder.Wall(), 0.0037},
		"head wall":       {tank.Head.Forward.Wall(), 0.0047 * 0.9},
	} {
		if math.Abs(row.got-row.want) > 1e-15*math.Abs(row.want) {
			t.Errorf("%s: %g, want %g", name, row.got, row.want)
		}
	}
	if !tank.Port[0].Weld.GrooveFull || !tank.Case[0].OnGround() || tank.Case[1].OnGround() {
		t.Errorf("words and flags: %+v", tank.Port[0].Weld)
	}
}

// What was not written is printed as a default, and what was written is not.
func TestDefaultsAreRecorded(t *testing.T) {
	tank := readStarter(t)
	got := map[string]string{}
	for _, d := range tank.Defaults {
		if d.Value == "" || d.Why == "" {
			t.Errorf("%+v is incomplete", d)
		}
		got[d.Key] = d.Value
	}
	for key, want := range map[string]string{
		"pressure.accumulation": "0.10", "cylinder.corrosion": "0 mm", "head.aft.bulge": "outward",
		"case.burnout.station": "forward head seam", "case.pad.lateral_load_factor": "0",
	} {
		if got[key] != want {
			t.Errorf("default of %s: %q, want %q", key, got[key], want)
		}
	}
	if v, ok := got["support.at"]; ok {
		t.Errorf("support.at was written and is told as a default %s", v)
	}
}

func TestPortsAreUnrolled(t *testing.T) {
	tank, err := readStarter(t).With("port.fill.count", "3")
	if err != nil {
		t.Fatal(err)
	}
	if len(tank.Port) != 3 {
		t.Fatalf("%d ports, want 3", len(tank.Port))
	}
	for i, want := range []string{"fill-1", "fill-2", "fill-3"} {
		p := tank.Port[i]
		if p.Name != want || p.Group != "fill" {
			t.Errorf("port %d is %s of %s, want %s of fill", i, p.Name, p.Group, want)
		}
		clock := math.Pi/6 + 2*math.Pi*float64(i)/3
		if math.Abs(p.Clock-clock) > 1e-12 {
			t.Errorf("%s at %g rad, want %g", want, p.Clock, clock)
		}
	}
}

// One value replaced leaves the rest and the first tank as they were.
func TestWith(t *testing.T) {
	tank := readStarter(t)
	thick, err := tank.With("cylinder.thickness", "5 mm")
	if err != nil {
		t.Fatal(err)
	}
	if thick.Cylinder.Thickness != 0.005 || tank.Cylinder.Thickness != 0.004 {
		t.Errorf("thickness %g, first tank %g", thick.Cylinder.Thickness, tank.Cylinder.Thickness)
	}
	if !reflect.DeepEqual(thick.Port, tank.Port) {
		t.Error("ports changed with the thickness")
	}
	for key, value := range map[string]string{
		"cylinder.thickness": "-5 mm", "head.forward.depth": "30 mm", "port.fill.tube.wall": "40 mm",
		"case.burnout.ullage_pressure": "11 bar", "cylinder.wall": "5 mm", "cylinder": "5 mm", "head.aft.tip.diameter": "60 mm",
	} {
		if _, err := tank.With(key, value); err == nil {
			t.Errorf("%s = %s was taken", key, value)
		}
	}
	for key, want := range map[string]string{"cylinder.thickness": "m", "case.burnout.axial_load_factor": "1"} {
		if got, ok := tank.KeyUnit(key); !ok || got != want {
			t.Errorf("unit of %s: %q, want %q", key, got, want)
		}
	}
}

// A fault that only the calculation sees stands at its key.
func TestFaultOfACalculation(t *testing.T) {
	tank := readStarter(t)
	f := tank.Fault("case.burnout.liquid_mass", "does not fit")
	line := strings.Split(string(Starter()), "\n")[f.Line-1]
	if line != `liquid_mass = "2 kg"` || f.Column != 15 || f.Key != "case.burnout.liquid_mass" {
		t.Errorf("%v stands at %q", f, line)
	}
}

func TestFlightHistory(t *testing.T) {
	history := "# recorded\nT (min),ullage_absolute [bara],altitude [m],axial_acceleration [g0],fill,noise\n" +
		"0,10.9,0,1,0.5,x\n0.5,10,11000,2,0.25,y\n"
	src := string(Starter()) + "[flight]\nhistory = \"f.csv\"\nacceleration = \"vertical\"\n[flight.columns]\ntime = \"T (min)\"\n"
	open := func(path string) ([]byte, error) {
		if path != "f.csv" {
			return nil, os.ErrNotExist
		}
		return []byte(history), nil
	}
	tank, err := Read("tank.toml", []byte(src), open)
	if err != nil {
		t.Fatal(err)
	}
	if len(tank.Flight.States) != 2 || len(tank.Files()) != 2 || tank.Flight.People != "clear" {
		t.Fatalf("%d states, %d files, people %s", len(tank.Flight.States), len(tank.Files()), tank.Flight.People)
	}
	s := tank.Flight.States[1]
	if s.Time != 30 || s.AxialLoadFactor != 3 || *s.Fill != 0.25 || s.Line != 4 {
		t.Errorf("second state: %+v", s)
	}
	if across := 10.9e5 - 101325; math.Abs(tank.Flight.States[0].UllagePressure-across) > 1e-6 {
		t.Errorf("ullage at sea level %g Pa, want %g", tank.Flight.States[0].UllagePressure, across)
	}
	for _, wrong := range []string{
		"", "T (min)\n", "T (min),fill\n0,0.5\n", strings.Replace(history, "0.5,10", "0,10", 1),
		strings.Replace(history, "[bara]", "", 1), strings.Replace(history, "0.25", "", 1),
		strings.Replace(history, "0.25", "NaN", 1), strings.Replace(history, "altitude [m]", "noise", 1), "\xff\xfe",
	} {
		keep := history
		history = wrong
		if _, err := Read("tank.toml", []byte(src), open); err == nil {
			t.Errorf("read without fault: %q", wrong)
		}
		history = keep
	}
}

// Source: U.S. Standard Atmosphere, 1976, table I, pressure against geometric
// altitude, recalled; the values are also those of the ICAO atmosphere.
func TestStandardAtmosphere(t *testing.T) {
	for _, row := range []struct {
		where  string
		z      float64
		factor float64
		want   string
	}{
		{"0 m", 0, 1, "101325"},
		{"1000 m, hPa", 1000, 100, "898.76"},
		{"5000 m, hPa", 5000, 100, "540.48"},
		{"11000 m, hPa", 11000, 100, "227.00"},
		{"30000 m, hPa", 30000, 100, "11.970"},
	} {
		p, err := atmosphere(row.z)
		if err != nil {
			t.Errorf("%s: %v", row.where, err)
		}
		checktest.Printed(t, row.where, p/row.factor, row.want)
	}
	for _, z := range []float64{-5001, 86001, math.NaN(), math.Inf(1)} {
		if p, err := atmosphere(z); err == nil || p == p {
			t.Errorf("%g m: %g Pa without error", z, p)
		}
	}
	// Each layer ends where the next begins.
	for _, l := range layers[1:] {
		const earth = 6356766
		z := earth * l.base / (earth - l.base)
		below, _ := atmosphere(z - 1e-3)
		above, _ := atmosphere(z + 1e-3)
		if math.Abs(below/above-1) > 1e-5 {
			t.Errorf("jump at %g m: %g, %g Pa", z, below, above)
		}
	}
}

// Nothing read from text that looks like a tank file panics, and what reads
// without fault holds no NaN.
func FuzzRead(f *testing.F) {
	f.Add(string(Starter()))
	f.Add("[[port]]\nname = \"a\"\n[port.tube]\nwall = \"1/8 in\"\n[[port]]\n")
	f.Add("port = [1, {name = \"a\"}]\nhead.aft = 3\ncase = [[]]\nmaterial.a.b.c = 1\nscatter = \"\"")
	f.Add("[head]\naft = {tip = {}}\n[flight]\nhistory = \"x\"\ncolumns = 3\n[basis]\nproof_factor = {}")
	f.Fuzz(func(t *testing.T, src string) {
		open := func(string) ([]byte, error) { return []byte(src), nil }
		tank, err := Read("tank.toml", []byte(src), open)
		var faults Faults
		switch {
		case err == nil:
			noNaN(t, reflect.ValueOf(*tank))
		case !errors.As(err, &faults) || len(faults) == 0 || tank != nil:
			t.Errorf("%v", err)
		}
	})
}

// No text that stands for a flight history panics; a history that reads holds no
// NaN and its times rise.
func FuzzHistory(f *testing.F) {
	f.Add("time [s],ullage_pressure [bar],axial_load_factor,lateral_load_factor,fill\n0,10,1,0,0.9\n10,11,5,0.2,0.5\n", false)
	f.Add("# recorded\ntime (min),ullage_absolute [bara],altitude [m],axial_acceleration [g0],liquid_mass [lb]\n0,6,0,2,3\n1e-3,6,1e5,2,\n", true)
	f.Add("time [ms],ullage_pressure [psig],axial_load_factor,level [in],axial_force [lbf],bending_moment [lbf ft],temperature [degF]\n-1,1e308,-1,1,1,1,-500", false)
	f.Fuzz(func(t *testing.T, history string, vertical bool) {
		src := string(Starter()) + "[flight]\nhistory = \"f.csv\"\n"
		if vertical {
			src += "acceleration = \"vertical\"\n"
		}
		tank, err := Read("tank.toml", []byte(src), func(string) ([]byte, error) { return []byte(history), nil })
		var faults Faults
		switch {
		case err != nil && (!errors.As(err, &faults) || len(faults) == 0 || tank != nil):
			t.Errorf("%v", err)
		case err != nil:
			return
		}
		noNaN(t, reflect.ValueOf(*tank.Flight))
		for i, row := range tank.Flight.States {
			if i > 0 && !(row.Time > tank.Flight.States[i-1].Time) {
				t.Errorf("row %d is at %g s after %g s", i, row.Time, tank.Flight.States[i-1].Time)
			}
		}
	})
}

func noNaN(t *testing.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.Float64:
		if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("the tank holds %g", x)
		}
	case reflect.Pointer:
		if !v.IsNil() {
			noNaN(t, v.Elem())
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				noNaN(t, v.Field(i))
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			noNaN(t, v.Index(i))
		}
	}
}

// The headings that the help offers are those a history is read by, unit included.
func TestHistoryHeadings(t *testing.T) {
	s := &sheet{r: &reader{t: &Tank{}}, headings: HistoryHeadings(), at: map[string]int{}, units: map[string]string{}, kinds: map[string]column{}, offered: map[string]bool{}}
	s.match(flightColumns, nil)
	if len(s.at) != len(flightColumns) || len(s.r.faults) > 0 || len(s.r.t.Defaults) > 0 {
		t.Errorf("read %d of %d headings; %v %v", len(s.at), len(flightColumns), s.r.faults, s.r.t.Defaults)
	}
}
