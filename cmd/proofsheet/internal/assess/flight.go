package assess

import (
	"errors"
	"fmt"
	"math"
	"runtime"
	"slices"
	"sync"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
)

// flightBands is into how many bands of the metal's temperature a history is cut
// for strength: each instant is judged at the hottest of its band, and its change of
// temperature to the liquid is its own.
const flightBands = 6

// A flight is the history of the tank file, resolved.
type flight struct {
	m     *model
	in    *tank.Flight
	rows  []tank.State
	bands []band
	ws    driverWeights
	known [][]float64 // loads of every row and of the middle of every step, in turn
}

// A band is a range of the metal's temperature [K].
type band struct{ coldest, hottest float64 }

// newFlight resolves the history and finds the instants at which something
// governs; nil where there is none.
func (m *model) newFlight() (*loadCase, error) {
	f := &flight{m: m, in: m.t.Flight}
	if f.in == nil || len(f.in.States) == 0 {
		return nil, nil
	}
	f.rows = f.in.Refined()
	if err := f.fits(); err != nil {
		return nil, err
	}
	c, err := f.at(0, 0)
	if err != nil {
		return nil, f.fault(0, err)
	}
	f.ws = m.driverWeights(c.rule)
	for i := range f.rows {
		T, coldest := m.metalTemperature(f.rows[i].Temperature)
		c.temperature, c.coldest = math.Max(c.temperature, T), math.Min(c.coldest, coldest)
		c.volume = math.Max(c.volume, f.volume(f.rows[i]))
	}
	f.ws.cylinder = m.stable(c.rule, c.temperature)
	f.cut()
	f.ws.bands = m.bandMetals(f.bands)
	if c.instants, err = f.governing(); err != nil {
		return nil, err
	}
	c.states = nil
	for _, at := range c.instants {
		c.states = append(c.states, at.states...)
	}
	return c, nil
}

// fault is an error at a row of the history.
func (f *flight) fault(row int, err error) error {
	return tank.Faults{{File: f.in.History, Line: f.rows[row].Line, Column: 1, What: err.Error()}}
}

// fits refuses rows with more liquid than the tank holds.
func (f *flight) fits() error {
	lo, hi := f.m.in.Bounds()
	var faults tank.Faults
	add := func(s tank.State, format string, args ...any) {
		faults = append(faults, tank.Fault{File: f.in.History, Line: s.Line, Column: 1, What: fmt.Sprintf(format, args...)})
	}
	for _, s := range f.rows {
		if m := given(s.LiquidMass); m > f.m.warm*f.m.in.Volume() {
			add(s, "liquid_mass: %.4g kg take %.4g l at their warmest, the tank holds %.4g l", m, m/f.m.warm*1e3, f.m.in.Volume()*1e3)
		}
		if h := given(s.Level); h > hi-lo {
			add(s, "level: %.4g m lies above the tank, which is %.4g m inside", h, hi-lo)
		}
	}
	if faults == nil {
		return nil
	}
	return faults
}

// at resolves the instant a part s of the step after a row.
func (f *flight) at(row int, s float64) (*loadCase, error) {
	q := f.between(row, s)
	c, err := f.m.newCase(tank.Case{Name: "flight", People: f.in.People, Rule: f.in.Rule,
		UllagePressure: &q.UllagePressure, AxialLoadFactor: q.AxialLoadFactor, LateralLoadFactor: q.LateralLoadFactor,
		LiquidMass: q.LiquidMass, Fill: q.Fill, Level: q.Level, Temperature: q.Temperature, SloshAmplitude: f.in.SloshAmplitude,
		AxialForce: q.AxialForce, BendingMoment: q.BendingMoment})
	if err != nil {
		return nil, err
	}
	c.time = &q.Time
	return c, nil
}

// between returns the state a part s of the step after a row.
func (f *flight) between(row int, s float64) tank.State {
	if s == 0 {
		return f.rows[row]
	}
	return f.rows[row].Between(f.rows[row+1], s)
}

// volume returns the most that the liquid of a row takes [m3].
func (f *flight) volume(s tank.State) float64 {
	if s.LiquidMass != nil {
		return *s.LiquidMass / f.m.warm
	}
	return f.m.liquidVolume(tank.Case{Fill: s.Fill, Level: s.Level, AxialLoadFactor: s.AxialLoadFactor})
}

// cut makes the bands of temperature.
func (f *flight) cut() {
	least, most := math.Inf(1), math.Inf(-1)
	for _, s := range f.rows {
		T, _ := f.m.metalTemperature(s.Temperature)
		least, most = math.Min(least, T), math.Max(most, T)
	}
	n := flightBands
	if most-least <= 1 {
		n = 1
	}
	for i := range n {
		b := band{coldest: least + (most-least)*float64(i)/float64(n), hottest: least + (most-least)*float64(i+1)/float64(n)}
		if i == n-1 {
			b.hottest = most
		}
		f.bands = append(f.bands, b)
	}
}

// governing returns the instants at which some load of some part is greatest
// within its band of temperature, first and last row among them, in the order of
// time.
func (f *flight) governing() ([]*loadCase, error) {
	last := len(f.rows) - 1
	chosen := map[instant]int{{0, 0}: 0, {last, 0}: 0}
	for b := range f.bands { // a row on the border belongs to the hotter band
		if T, _ := f.m.metalTemperature(f.rows[0].Temperature); T >= f.bands[b].coldest {
			chosen[instant{0, 0}] = b
		}
		if T, _ := f.m.metalTemperature(f.rows[len(f.rows)-1].Temperature); T >= f.bands[b].coldest {
			chosen[instant{len(f.rows) - 1, 0}] = b
		}
	}
	if err := f.gather(); err != nil {
		return nil, err
	}
	if err := f.split(); err != nil {
		return nil, err
	}
	chosen = map[instant]int{{0, 0}: chosen[instant{0, 0}], {len(f.rows) - 1, 0}: chosen[instant{last, 0}]}
	for b := range f.bands {
		peaks, err := f.peaks(f.bands[b])
		if err != nil {
			return nil, err
		}
		for _, p := range peaks {
			if at := (instant{p.Row, p.Part}); !math.IsInf(p.Value, -1) && chosen[at] <= b {
				chosen[at] = b
			}
		}
	}
	var out []*loadCase
	for at, b := range chosen {
		c, err := f.at(at.row, at.part)
		if err != nil {
			return nil, f.fault(at.row, err)
		}
		c.temperature = f.bands[b].hottest
		out = append(out, c)
	}
	slices.SortFunc(out, func(a, b *loadCase) int { return compareNumbers(*a.time, *b.time) })
	return out, nil
}

// An instant is a part of the step after a row.
type instant struct {
	row  int
	part float64 // share of the step [-]
}

func compareNumbers(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// gather finds the loads of every row and of the middle of every step, on all
// processors: each instant stands alone.
func (f *flight) gather() error {
	n := 2*len(f.rows) - 1
	f.known = make([][]float64, n)
	workers := runtime.GOMAXPROCS(0)
	errs := make([]error, workers)
	var wait sync.WaitGroup
	for w := range workers {
		wait.Go(func() {
			for i := w; i < n && errs[w] == nil; i += workers {
				f.known[i], errs[w] = f.loadsAt(i/2, float64(i%2)/2)
			}
		})
	}
	wait.Wait()
	return errors.Join(errs...)
}

// splitSteps is how often the step is halved in which something begins or ends to act.
const splitSteps = 20

// split puts rows where a load begins or ends to act within half a step, as the level
// does that comes into the cylinder: no parabola through its ends leads there. One row
// stands on either side, a millionth of the step apart.
func (f *flight) split() error {
	rows, known := f.rows[:1:1], f.known[:1:1]
	for i := 1; i < len(f.rows); i++ {
		ends := [3][]float64{f.known[2*i-2], f.known[2*i-1], f.known[2*i]}
		var cuts []float64
		for half := range 2 {
			if acting(ends[half], ends[half+1]) {
				continue
			}
			lo, hi := float64(half)/2, float64(half+1)/2
			for range splitSteps {
				mid := (lo + hi) / 2
				q, err := f.loadsAt(i-1, mid)
				if err != nil {
					return err
				}
				if acting(ends[half], q) {
					lo = mid
				} else {
					hi = mid
				}
			}
			cuts = append(cuts, lo, hi)
		}
		if cuts == nil {
			known = append(known, ends[1])
		}
		for _, s := range cuts {
			if s > 0 && s < 1 {
				rows, known = append(rows, f.between(i-1, s)), append(known, nil, nil)
			}
		}
		if cuts != nil {
			known = append(known, nil)
		}
		rows, known = append(rows, f.rows[i]), append(known, ends[2])
	}
	f.rows, f.known = rows, known
	for i := range f.known {
		if f.known[i] == nil {
			var err error
			if f.known[i], err = f.loadsAt(i/2, float64(i%2)/2); err != nil {
				return err
			}
		}
	}
	return nil
}

// acting reports whether the same loads act at two instants.
func acting(a, b []float64) bool {
	for i := range a {
		if math.IsInf(a[i], -1) != math.IsInf(b[i], -1) {
			return false
		}
	}
	return true
}

// loadsAt returns the loads of an instant.
func (f *flight) loadsAt(row int, part float64) ([]float64, error) {
	c, err := f.at(row, part)
	if err != nil {
		return nil, f.fault(row, err)
	}
	q, err := f.m.drivers(c, f.ws)
	if err != nil {
		return nil, f.fault(row, err)
	}
	return q, nil
}

// peaks returns where each load is greatest within a band of temperature.
func (f *flight) peaks(b band) ([]loads.Peak, error) {
	none := make([]float64, len(f.known[0]))
	for i := range none {
		none[i] = math.Inf(-1)
	}
	return loads.Peaks(len(f.rows), func(row int, part float64) ([]float64, error) {
		if T := f.temperature(row, part); T < b.coldest || T > b.hottest {
			return none, nil
		}
		if part == 0 || part == 0.5 {
			return f.known[2*row+int(2*part)], nil
		}
		return f.loadsAt(row, part)
	})
}

// temperature of the metal at an instant [K].
func (f *flight) temperature(row int, part float64) float64 {
	T := f.rows[row].Temperature
	if T != nil && part > 0 {
		v := *T + part*(*f.rows[row+1].Temperature-*T)
		T = &v
	}
	strength, _ := f.m.metalTemperature(T)
	return strength
}
