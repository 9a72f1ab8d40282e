package assess_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// refined returns the example flight with n rows between every two of its own, on
// the straight lines between them.
func refined(t testing.TB, n int) *tank.Tank {
	t.Helper()
	in := read(t, "flight")
	var rows []tank.State
	mix := func(a, b *float64, s float64) *float64 {
		if a == nil {
			return nil
		}
		v := *a + s*(*b-*a)
		return &v
	}
	for i, a := range in.Flight.States {
		rows = append(rows, a)
		if i+1 == len(in.Flight.States) {
			break
		}
		b := in.Flight.States[i+1]
		for k := 1; k <= n; k++ {
			s, c := float64(k)/float64(n+1), a
			c.Time, c.UllagePressure = *mix(&a.Time, &b.Time, s), *mix(&a.UllagePressure, &b.UllagePressure, s)
			c.AxialLoadFactor = *mix(&a.AxialLoadFactor, &b.AxialLoadFactor, s)
			c.LateralLoadFactor = *mix(&a.LateralLoadFactor, &b.LateralLoadFactor, s)
			c.LiquidMass, c.AxialForce = mix(a.LiquidMass, b.LiquidMass, s), mix(a.AxialForce, b.AxialForce, s)
			c.BendingMoment = mix(a.BendingMoment, b.BendingMoment, s)
			rows = append(rows, c)
		}
	}
	in.Flight.States = rows
	return in
}

// byID returns the checks of a case by their id.
func byID(s *report.Sheet, name string) map[string]check.Result {
	out := map[string]check.Result{}
	for _, r := range s.Checks {
		if r.Case == name {
			out[r.ID] = r
		}
	}
	return out
}

// Every row as a case of its own, in place of the history, gives no check a lesser
// margin than the history does; and the history's own margin is that of the rows,
// unless the extreme lies between two of them.
func TestHistoryAgainstEveryRow(t *testing.T) {
	in := refined(t, 6)
	in.Contents.Coldest = 278.15 // two densities, and a cold liquid in a warmer wall
	flown := byID(sheet(t, in), "flight")
	rows := in.Flight.States
	in.Flight = nil
	in.Case = nil
	for i := range rows {
		s := rows[i]
		in.Case = append(in.Case, tank.Case{Name: "row-" + string(rune('a'+i/26)) + string(rune('a'+i%26)), People: "clear",
			UllagePressure: &s.UllagePressure, AxialLoadFactor: s.AxialLoadFactor, LateralLoadFactor: s.LateralLoadFactor,
			LiquidMass: s.LiquidMass, AxialForce: s.AxialForce, BendingMoment: s.BendingMoment, Temperature: s.Temperature})
	}
	least := map[string]float64{}
	for _, r := range sheet(t, in).Checks {
		if m := r.Margin(); strings.HasPrefix(r.Case, "row-") && !math.IsNaN(m) {
			if v, ok := least[r.ID]; !ok || m < v {
				least[r.ID] = m
			}
		}
	}
	for id, row := range least {
		got, ok := flown[id]
		if !ok {
			t.Errorf("%s is not made for the flight", id)
			continue
		}
		if got.Margin() > row+1e-9*(1+math.Abs(row)) {
			t.Errorf("%s: margin %.6f in the flight at %.4g s, %.6f in the worst row", id, got.Margin(), *got.Time, row)
		}
		if got.Margin() < row-0.02*(1+math.Abs(row)) {
			t.Errorf("%s: margin %.6f in the flight, %.6f in the worst row: 2 %% apart", id, got.Margin(), row)
		}
	}
	if len(least) < 15 {
		t.Errorf("%d checks compared", len(least))
	}
}

// Checks of one history govern at several times, each its own.
func TestEachCheckHasItsTime(t *testing.T) {
	times := map[float64]bool{}
	for id, r := range byID(sheet(t, read(t, "flight")), "flight") {
		switch {
		case strings.HasPrefix(id, "tank/"):
		case r.Time == nil:
			t.Errorf("%s has no time", id)
		default:
			times[*r.Time] = true
		}
	}
	if len(times) < 3 {
		t.Errorf("governing times %v, want at least 3", times)
	}
}

// A row with more than the tank holds is refused at its line.
func TestHistoryThatDoesNotFit(t *testing.T) {
	in := read(t, "flight")
	heavy := 500.0
	in.Flight.States[3].LiquidMass = &heavy
	_, err := assess.Assess(in, assess.Options{})
	var faults tank.Faults
	if !errors.As(err, &faults) || len(faults) != 1 || faults[0].File != "flight.csv" || faults[0].Line != 6 {
		t.Errorf("got %v, want one fault at flight.csv:6", err)
	}
}

// A warmer row is judged by the strength it has there, not by that of the coldest.
func TestHistoryTemperature(t *testing.T) {
	in := read(t, "flight")
	cold := byID(sheet(t, in), "flight")
	for i := range in.Flight.States {
		T := 293.15 + 10*float64(i)
		in.Flight.States[i].Temperature = &T
	}
	warm := byID(sheet(t, in), "flight")
	if a, b := cold["cylinder/hoop"].Margin(), warm["cylinder/hoop"].Margin(); !(b < a) {
		t.Errorf("hoop margin %.4f cold, %.4f with a wall that warms up", a, b)
	}
	if at := *warm["cylinder/hoop"].Time; !(at > *cold["cylinder/hoop"].Time) {
		t.Errorf("the warm wall governs at %g s, want later than the cold one", at)
	}
}

// BenchmarkHistory assesses a flight of 10,000 rows with lateral load.
func BenchmarkHistory(b *testing.B) {
	in := refined(b, 665)
	if n := len(in.Flight.States); n < 9990 {
		b.Fatalf("%d rows", n)
	}
	for b.Loop() {
		if _, err := assess.Assess(in, assess.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}

// Two rows that climb 30 km tell as much as the same flight in steps of 100 m: the pressure
// outside falls with the altitude and not in a straight line. By hand: 12.0 bara less 121.1 hPa
// halfway is 11.879 bar, the history must hold that and more.
func TestHistoryOfAClimb(t *testing.T) {
	in := read(t, "flight")
	mass := 49.0
	at := func(time, altitude, absolute, outside float64) tank.State {
		return tank.State{Time: time, Altitude: &altitude, UllageAbsolute: &absolute, OutsideAbsolute: &outside, UllagePressure: absolute - outside,
			AxialLoadFactor: 1.5, LiquidMass: &mass}
	}
	first, last := at(0, 0, 12.5e5, 101325), at(60, 30000, 11.5e5, 1197)
	p := func(rows []tank.State) float64 {
		in.Flight.States = rows
		return input(t, byID(sheet(t, in), "flight")["head.forward/thickness"], "p")
	}
	two := p([]tank.State{first, last})
	var fine []tank.State
	for i := 0; i <= 300; i++ {
		fine = append(fine, first.Between(last, float64(i)/300))
	}
	if many := p(fine); two < 1187890 || two < many*(1-1e-5) {
		t.Errorf("%.0f Pa from two rows, %.0f Pa from 301", two, many)
	}
}
