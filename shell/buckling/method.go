package buckling

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"proofsheet/report/check"
)

// A Method is the answer of one method to a pressure from outside.
type Method struct {
	Name      string
	Critical  float64 // before the factor [Pa]; NaN where the factor is inside the form
	Factor    float64 // the method's own, or the buckling factor [-]
	Allowable float64 // [Pa]
	Source    check.Source
	Formula   string           // as printed, when it governs
	Steps     []check.Quantity // its intermediate numbers
	Beside    bool             // shown, decides nothing
	Required  bool             // without it nothing is assessed
	Detail    string           // knock-down and shape assumed
	Length    float64          // L of its formula, of a bay between rings [m]; 0: of the whole cylinder
	Err       error            // why it is out of its range, or nil
}

// divided returns the method that divides the critical pressure by FS.
func divided(name string, critical, factor float64, err error, src check.Source, detail string) Method {
	return Method{
		Name: name, Critical: critical, Factor: factor, Allowable: critical / factor, Source: src, Detail: detail, Err: err,
		Steps: []check.Quantity{check.Pa("p_cr", "critical pressure, plasticity in it", critical)},
	}
}

// Lowest returns the method with the lowest allowable among those that decide
// and are in range. It is an error when none is, when a required one is not,
// or when an answer is no positive number.
func Lowest(methods []Method) (Method, error) {
	least, found := Method{Allowable: math.Inf(1)}, false
	var out []error
	for _, m := range methods {
		switch {
		case m.Beside:
		case m.Err != nil:
			out = append(out, fmt.Errorf("%s: %w", m.Name, m.Err))
			if m.Required {
				return Method{Allowable: math.NaN()}, errors.Join(out...)
			}
		case !(m.Allowable > 0) || math.IsInf(m.Allowable, 0):
			return Method{Allowable: math.NaN()}, fmt.Errorf("%s gives no positive pressure", m.Name)
		case m.Allowable < least.Allowable:
			least, found = m, true
		}
	}
	if !found {
		return Method{Allowable: math.NaN()}, errors.Join(append(out, errors.New("no method is in its range"))...)
	}
	return least, nil
}

// list names every method with its value, its factor and what it assumes.
func list(methods []Method) string {
	var parts []string
	for _, m := range methods {
		part := m.Name
		switch {
		case m.Err != nil:
			part += " out of range: " + m.Err.Error()
		case math.IsNaN(m.Critical):
			part += fmt.Sprintf(" %s kPa, factor %.4g inside", down(m.Allowable/1000), m.Factor)
		default:
			part += fmt.Sprintf(" %s kPa = %s/%.4g", down(m.Allowable/1000), down(m.Critical/1000), m.Factor)
		}
		if m.Detail != "" && m.Err == nil {
			part += " (" + m.Detail + ")"
		}
		if m.Beside {
			part += ", beside"
		}
		parts = append(parts, part)
	}
	return strings.Join(parts, "; ")
}

// down prints a positive number with four digits, rounded down.
func down(v float64) string {
	if !(v > 0) || math.IsInf(v, 0) {
		return fmt.Sprintf("%.4g", v)
	}
	step := math.Pow(10, math.Floor(math.Log10(v))-3)
	return fmt.Sprintf("%.4g", math.Floor(v/step*(1+1e-12))*step)
}

// A CheckPressure is what the check of one part under pressure from outside
// needs beside its methods.
type CheckPressure struct {
	ID, Title string
	Pressure  float64 // p_ext, outside minus inside, largest over the part [Pa]
	Factor    float64 // buckling factor [-]
	Inputs    []check.Quantity
	Shape     string // imperfection assumed, printed with the verdict
}

// Check sets the pressure from outside against the lowest allowable of the
// methods, and lists them all. Where no pressure comes from outside the check
// does not apply.
func (c CheckPressure) Check(methods []Method) check.Result {
	if c.Pressure <= 0 {
		return check.NotApplicableTo(c.ID, c.Title, "the pressure is never higher outside than inside")
	}
	least, err := Lowest(methods)
	if bad := number("buckling", "pressure from outside [Pa]", c.Pressure); bad != nil {
		err = bad
	}
	r := check.Result{
		ID: c.ID, Title: c.Title, Formula: "p_ext ≤ p_a, the lowest of the methods in range",
		Inputs:   append([]check.Quantity{check.Num("FS", "buckling factor, not on the vessel forms", c.Factor)}, c.Inputs...),
		Demand:   check.Pa("p_ext", "pressure from outside", c.Pressure),
		Capacity: check.Pa("p_a", "lowest allowable, "+least.Name, least.Allowable),
		Factor:   1, Source: least.Source, Err: err,
	}
	if least.Formula != "" {
		r.Formula = "p_ext ≤ p_a, the lowest of the methods in range; " + least.Name + ": " + least.Formula
		r.Inputs = append(r.Inputs, least.Steps...)
	}
	for i, m := range methods {
		if m.Err == nil && !m.Beside {
			r.Inputs = append(r.Inputs, check.Pa(fmt.Sprintf("p_a,%d", i+1), "allowable by "+m.Name, m.Allowable))
		}
	}
	r.Note = "Methods: " + list(methods) + "."
	if err == nil {
		r.Note = least.Name + " governs. " + r.Note
	}
	r.Note += " Shape assumed: " + c.Shape + "."
	return r
}
