package check

import (
	"fmt"
	"math"
)

// A RangeError says that a formula was asked outside the range in which it
// holds. The check that meets it is not assessed.
type RangeError struct {
	Func        string  // "heads.Cone.HoopStress"
	Param       string  // what left the range, as a reader knows it
	Got         float64 // its value [in the unit of Param]
	Least, Most float64 // the range; infinite where open [in the unit of Param]
	Why         string  // what the range stands for
}

// Error says what was found, what is allowed and why.
func (e *RangeError) Error() string {
	var want string
	switch {
	case math.IsInf(e.Most, 1):
		want = fmt.Sprintf("at least %.4g", e.Least)
	case math.IsInf(e.Least, -1):
		want = fmt.Sprintf("at most %.4g", e.Most)
	default:
		want = fmt.Sprintf("from %.4g to %.4g", e.Least, e.Most)
	}
	return fmt.Sprintf("%s is %.4g, must be %s (%s)", e.Param, e.Got, want, e.Why)
}

// Within returns nil when least ≤ got ≤ most [in the unit of param], and a
// RangeError otherwise; NaN is outside every range.
func Within(fn, param string, got, least, most float64, why string) error {
	if got >= least && got <= most {
		return nil
	}
	return &RangeError{Func: fn, Param: param, Got: got, Least: least, Most: most, Why: why}
}
