package loads_test

import (
	"math"
	"testing"

	"proofsheet/loads"
	"proofsheet/report/check/checktest"
)

// straight returns a column of a history: straight lines between its rows.
func straight(rows ...float64) func(row int, part float64) float64 {
	return func(row int, part float64) float64 {
		if part == 0 {
			return rows[row]
		}
		return rows[row] + part*(rows[row+1]-rows[row])
	}
}

// The head n(t) h(t) between rows, by hand (computed): (1 + 4 s)(2 − 2 s) has its
// vertex at s = 3/8, 3.125, above both rows; a rising factor alone peaks at a row.
func TestPeakOfProductBetweenRows(t *testing.T) {
	n, h := straight(0.5, 1, 5, 5), straight(3, 2, 0, 0)
	peaks, err := loads.Peaks(4, func(i int, s float64) ([]float64, error) {
		return []float64{n(i, s) * h(i, s), n(i, s), -h(i, s), 7}, nil
	})
	if err != nil {
		t.Fatal(err)
	}
	want := []loads.Peak{{Row: 1, Part: 0.375, Value: 3.125}, {Row: 2, Value: 5}, {Row: 2, Value: 0}, {Row: 0, Value: 7}}
	for i, w := range want {
		if p := peaks[i]; p.Row != w.Row || math.Abs(p.Part-w.Part) > 1e-12 || math.Abs(p.Value-w.Value) > 1e-12 {
			t.Errorf("quantity %d: %+v, want %+v", i, p, w)
		}
	}
}

// Against 2000 instants of every step (computed): sums of products never rise
// above the peak found, and come as near as the fine steps allow.
func TestPeaksAgainstFineSteps(t *testing.T) {
	var cols [4]func(int, float64) float64
	const rows = 40
	for c := range cols {
		v := make([]float64, rows)
		for i := range v {
			v[i] = math.Sin(float64(7*i*(c+1)+3*c)) + 0.4
		}
		cols[c] = straight(v...)
	}
	q := func(i int, s float64) ([]float64, error) {
		a, b, c, d := cols[0](i, s), cols[1](i, s), cols[2](i, s), cols[3](i, s)
		return []float64{a * b, -a * b, a + b*c + c*d, d - a*c}, nil
	}
	peaks, err := loads.Peaks(rows, q)
	if err != nil {
		t.Fatal(err)
	}
	most := []float64{math.Inf(-1), math.Inf(-1), math.Inf(-1), math.Inf(-1)}
	for i := range rows - 1 {
		for k := range 2001 {
			v, _ := q(i, float64(k)/2000)
			for j := range most {
				most[j] = math.Max(most[j], v[j])
			}
		}
	}
	for j, p := range peaks {
		if p.Value < most[j]-1e-12 {
			t.Errorf("quantity %d: peak %g, a fine step has %g", j, p.Value, most[j])
		}
		checktest.Close(t, "peak", p.Value, most[j], 1e-6)
	}
}

// In another unit of every column the same instants are found, and the products scale.
func TestPeaksUnits(t *testing.T) {
	find := func(n, h float64) loads.Peak {
		a, b := straight(n, 5*n, 2*n), straight(2*h, 0.1*h, 0)
		p, err := loads.Peaks(3, func(i int, s float64) ([]float64, error) { return []float64{a(i, s) * b(i, s)}, nil })
		if err != nil {
			t.Fatal(err)
		}
		return p[0]
	}
	one, other := find(1, 1), find(3, 7)
	if one.Row != other.Row || math.Abs(one.Part-other.Part) > 1e-12 || one.Part == 0 {
		t.Errorf("instants %+v and %+v", one, other)
	}
	checktest.Close(t, "product", other.Value, 21*one.Value, 1e-12)
}

// No rows, a quantity that is not a number and one that comes and goes are
// refused; one that does not arise, −Inf, never peaks elsewhere.
func TestPeaksRange(t *testing.T) {
	if _, err := loads.Peaks(0, nil); err == nil {
		t.Error("no rows are taken")
	}
	for name, f := range map[string]func(i int, s float64) ([]float64, error){
		"not a number": func(i int, s float64) ([]float64, error) { return []float64{math.Sqrt(0.4 - s)}, nil },
		"two, then one": func(i int, s float64) ([]float64, error) {
			return make([]float64, 2-i), nil
		},
	} {
		if _, err := loads.Peaks(2, f); err == nil {
			t.Errorf("%s is taken", name)
		}
	}
	p, err := loads.Peaks(3, func(i int, s float64) ([]float64, error) {
		if i == 1 && s == 0 {
			return []float64{4}, nil
		}
		return []float64{math.Inf(-1)}, nil
	})
	if err != nil || p[0].Row != 1 || p[0].Value != 4 {
		t.Errorf("%+v, %v", p, err)
	}
}
