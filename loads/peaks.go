package loads

import (
	"errors"
	"fmt"
	"math"
)

// A Peak is the greatest value that a quantity reaches in a history, and where:
// at a part of the step that follows a row.
type Peak struct {
	Row   int     // the row at or before the peak
	Part  float64 // share of the step gone, 0 at the row itself [-]
	Value float64 // in the quantity's own unit [see quantities]
}

// Peaks returns the greatest value of each of several quantities over a history
// of rows that are joined by straight lines. quantities gives them all, always
// as many and in one order, at a part s, 0 to 1 [-], of the step after a row; the
// slice may be used again. −Inf is a quantity that does not arise there.
//
// Every row counts, and in every step the vertex between. A quantity that is a
// sum of products of two straight lines, as n(t) h(t) is, is a parabola over a
// step, which the ends and the middle give exactly:
//
//	(a + b s)(c + d s) is greatest at s = −(a d + b c)/(2 b d), where 0 < s < 1 and b d < 0
//	from q(0), q(½), q(1): s = (3 q(0) − 4 q(½) + q(1)) / (4 (q(0) + q(1) − 2 q(½)))
//
// What bends more than a parabola within one step, as the level in a head does, is
// sampled at its ends, its middle and the vertex of the parabola through them.
// Of equal values the earliest counts. NaN is an error.
//
// Source: derivative of a product of straight lines (computed).
func Peaks(rows int, quantities func(row int, part float64) ([]float64, error)) ([]Peak, error) {
	if rows < 1 {
		return nil, errors.New("the history has no rows")
	}
	t := &track{quantities: quantities}
	var ends, mids [][]float64
	for i := range rows {
		q, err := t.take(i, 0)
		if err != nil {
			return nil, err
		}
		ends = append(ends, append([]float64(nil), q...))
		if i+1 == rows {
			break
		}
		if q, err = t.take(i, 0.5); err != nil {
			return nil, err
		}
		mids = append(mids, append([]float64(nil), q...))
	}
	for i, mid := range mids {
		for k := range t.peaks {
			s, value := vertex(ends[i][k], mid[k], ends[i+1][k])
			if !(value > t.peaks[k].Value) {
				continue
			}
			if _, err := t.take(i, s); err != nil {
				return nil, err
			}
		}
	}
	return t.peaks, nil
}

// A track keeps the greatest values so far.
type track struct {
	quantities func(row int, part float64) ([]float64, error)
	peaks      []Peak
}

// take looks at one instant.
func (t *track) take(row int, part float64) ([]float64, error) {
	q, err := t.quantities(row, part)
	if err != nil {
		return nil, err
	}
	if t.peaks == nil {
		for range q {
			t.peaks = append(t.peaks, Peak{Value: math.Inf(-1)})
		}
	}
	if len(q) != len(t.peaks) {
		return nil, fmt.Errorf("row %d gives %d quantities where the first gave %d", row, len(q), len(t.peaks))
	}
	for k, v := range q {
		if math.IsNaN(v) {
			return nil, fmt.Errorf("quantity %d is not a number at row %d", k, row)
		}
		if v > t.peaks[k].Value {
			t.peaks[k] = Peak{Row: row, Part: part, Value: v}
		}
	}
	return q, nil
}

// vertex returns where the parabola through a, m and b at 0, ½ and 1 is greatest
// between them, and its value in their unit; −Inf where it has no hill there.
func vertex(a, m, b float64) (s, value float64) {
	bend := a + b - 2*m // half the second derivative over 2
	if !(bend < 0) || math.IsInf(bend, 0) {
		return 0, math.Inf(-1)
	}
	s = (3*a - 4*m + b) / (4 * bend)
	if !(s > 0 && s < 1) {
		return 0, math.Inf(-1)
	}
	return s, a + s*(4*m-3*a-b) + s*s*2*bend
}
