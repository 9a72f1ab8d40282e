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
	low, high := e.Least > -math.MaxFloat64, e.Most < math.MaxFloat64 // is there a limit
	least := fmt.Sprintf("at least %.4g", e.Least)
	if e.Least == math.SmallestNonzeroFloat64 {
		least = "above zero"
	}
	var want string
	switch {
	case low && high && least == "above zero":
		want = fmt.Sprintf("above zero, at most %.4g", e.Most)
	case low && high:
		want = fmt.Sprintf("from %.4g to %.4g", e.Least, e.Most)
	case low:
		want = least
	case high:
		want = fmt.Sprintf("at most %.4g", e.Most)
	default:
		want = "finite"
	}
	got := fmt.Sprintf("%.4g", e.Got)
	if math.IsNaN(e.Got) {
		got = "not a number"
	}
	return fmt.Sprintf("%s is %s, must be %s (%s)", e.Param, got, want, e.Why)
}

// Within returns nil when least ≤ got ≤ most [in the unit of param], and a
// RangeError otherwise; NaN is outside every range.
func Within(fn, param string, got, least, most float64, why string) error {
	if got >= least && got <= most {
		return nil
	}
	return &RangeError{Func: fn, Param: param, Got: got, Least: least, Most: most, Why: why}
}
