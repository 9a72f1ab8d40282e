package check

import "math"

// A Status is the verdict of one check. Its zero value is NotAssessed.
type Status int

const (
	// NotAssessed is a check that was not made, or could not be.
	NotAssessed Status = iota
	// Satisfied is a check whose capacity covers the factored demand.
	Satisfied
	// NotSatisfied is a check whose capacity does not cover it.
	NotSatisfied
	// NotApplicable is a check that does not arise; its reason is in Note.
	NotApplicable
)

// String returns the status as it is printed.
func (s Status) String() string {
	switch s {
	case Satisfied:
		return "satisfied"
	case NotSatisfied:
		return "not satisfied"
	case NotApplicable:
		return "not applicable"
	default:
		return "not assessed"
	}
}

// A Result is one check of one failure mode in one load case, complete enough
// to print and to redo by hand.
type Result struct {
	Case      string     // load case; set by the assessment
	Time      *float64   // instant of a flight history [s], or nil
	Rule      string     // rule set the check was made by
	ID, Title string     // "head.aft/membrane", "Aft head: hoop stress"
	Formula   string     // as printed: "σ_h = p r / (t cos α)"
	Inputs    []Quantity // every number the formula used, in its order
	Demand    Quantity   // what the load asks
	Capacity  Quantity   // what the part can give, before Factor
	Factor    float64    // required factor of safety [-]
	Source    Source     // document, place and how it was obtained
	Note      string     // what the reader must know beside the numbers
	Err       error      // why the check could not be made, or nil

	notApplicable bool
}

// NotApplicableTo returns a check that does not arise, with the reason, which
// must not be empty: an empty one leaves the check not assessed.
func NotApplicableTo(id, title, reason string) Result {
	return Result{ID: id, Title: title, Note: reason, notApplicable: reason != ""}
}

// NotMade returns a check that could not be made, with the reason.
func NotMade(id, title string, err error) Result {
	return Result{ID: id, Title: title, Err: err}
}

// Margin returns the margin of safety [-], capacity/(factor·demand) − 1. It is
// NaN where the check is not assessed or not applicable, and +Inf where the
// demand is zero.
func (r Result) Margin() float64 {
	_, m := r.judged()
	return m
}

// judged returns the status with the margin.
func (r *Result) judged() (Status, float64) {
	s := r.Status()
	if s != Satisfied && s != NotSatisfied {
		return s, math.NaN()
	}
	return s, r.Capacity.Value/(r.Factor*r.Demand.Value) - 1
}

// Status gives the verdict. It is Satisfied only when every number is finite,
// the factor is at least one and the capacity covers the factored demand.
func (r Result) Status() Status {
	if r.notApplicable {
		return NotApplicable
	}
	need, have := r.Factor*r.Demand.Value, r.Capacity.Value
	sane := r.Err == nil && r.Factor >= 1 && need >= 0 && have > 0 &&
		!math.IsInf(need, 0) && !math.IsInf(have, 0) && r.inputsFinite()
	switch {
	case !sane: // also catches NaN: every comparison with NaN is false
		return NotAssessed
	case need <= have:
		return Satisfied
	default:
		return NotSatisfied
	}
}

// inputsFinite reports whether no input is NaN or infinite: a verdict must not
// rest on a number that cannot be printed.
func (r Result) inputsFinite() bool {
	for i := range r.Inputs { // by place: it is asked often, and inputs are large
		if v := r.Inputs[i].Value; v-v != 0 { // of no other number
			return false
		}
	}
	return true
}

// Reason returns why the check is not assessed or not applicable, in words
// that can be printed, and "" for one that was made.
func (r Result) Reason() string {
	switch r.Status() {
	case NotApplicable:
		return r.Note
	case NotAssessed:
		if r.Err != nil {
			return r.Err.Error()
		}
		return "a number the check needs is missing, not finite or out of its sense"
	default:
		return ""
	}
}

// Governing returns the index of the made check with the least margin, or −1
// when none was made. Of equal margins the first counts.
func Governing(rs []Result) int {
	_, at := Judge(rs)
	return at
}

// Judge returns [Verdict] and [Governing] of all checks.
func Judge(rs []Result) (verdict Status, governing int) {
	least, at := math.Inf(1), -1
	failed, open, made := false, false, false
	for i := range rs {
		s, m := rs[i].judged()
		if at < 0 && m == m || m < least {
			least, at = m, i
		}
		failed, open, made = failed || s == NotSatisfied, open || s == NotAssessed, made || s == Satisfied
	}
	switch {
	case failed:
		return NotSatisfied, at
	case open || !made:
		return NotAssessed, at
	}
	return Satisfied, at
}

// Verdict returns the verdict over all checks: not satisfied if any is not,
// else not assessed if any is not or if none was made, else satisfied.
func Verdict(rs []Result) Status {
	verdict, _ := Judge(rs)
	return verdict
}
