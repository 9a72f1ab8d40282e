package tank

import (
	"fmt"
	"math"
	"reflect"
	"strconv"
	"strings"
	"time"
	"unicode"

	"proofsheet/report/unit"
)

// scalar reads a value that is no table.
func (r *reader) scalar(f field, v any, path string, into reflect.Value) {
	switch f.form {
	case formFlag:
		if b, ok := v.(bool); ok {
			settle(into).SetBool(b)
			return
		}
		r.fault(path, "%s is neither true nor false; write true or false without quotes", show(v))
	case formNumber, formCount:
		if x, ok := r.number(f, v, path); ok {
			setNumber(into, x)
		}
	case formQuantity:
		r.quantity(f, v, path, into)
	case formQuantities:
		r.quantities(f, v, path, into)
	default:
		if s, ok := r.text(f, v, path); ok {
			settle(into).SetString(s)
		}
	}
}

// show writes a decoded value as the file holds it.
func show(v any) string {
	switch v := v.(type) {
	case string:
		return strconv.Quote(v)
	case float64:
		return strconv.FormatFloat(v, 'g', -1, 64)
	case time.Time:
		return v.Format("2006-01-02")
	case map[string]any, []map[string]any:
		return "a table"
	case []any:
		return "an array"
	}
	return fmt.Sprint(v)
}

// text reads words, and checks them against the form.
func (r *reader) text(f field, v any, path string) (string, bool) {
	s, ok := v.(string)
	switch {
	case !ok:
		r.fault(path, "%s is not text; write it in quotes, as %s = %s", show(v), f.key, f.example)
		return "", false
	case strings.TrimSpace(s) == "":
		r.fault(path, "is empty; write %s = %s, or leave the key out", f.key, f.example)
		return "", false
	case strings.ContainsFunc(s, unprintable):
		r.fault(path, "%q holds a character that cannot be printed; write it in letters", s)
		return "", false
	}
	switch f.form {
	case formChoice:
		return s, r.choice(f, s, path)
	case formName:
		if what := nameFault(s); what != "" {
			r.fault(path, "%s", what)
			return "", false
		}
	case formDate:
		if _, err := time.Parse(time.DateOnly, s); err != nil {
			r.fault(path, "%q is no date; write year-month-day, as %s", s, f.example)
			return "", false
		}
	}
	return s, true
}

// unprintable reports characters that have no place on a sheet: controls. A letter
// that its font lacks is replaced there, and the sheet says so.
func unprintable(c rune) bool {
	return unicode.IsControl(c) || c == unicode.ReplacementChar
}

// choice checks a word against a closed list.
func (r *reader) choice(f field, s, path string) bool {
	allowed := f.allowed()
	for _, a := range allowed {
		if a == s {
			return true
		}
	}
	if f.open.takes != nil && f.open.takes(s) {
		return true
	}
	if f.open.means != nil && f.open.means(s) != "" {
		r.fault(path, "%q is not known; write %q", s, f.open.means(s))
		return false
	}
	for _, a := range allowed {
		if strings.EqualFold(a, s) {
			r.fault(path, "%q is not known; write %q", s, a)
			return false
		}
	}
	var like []string
	if f.open.like != nil {
		like = f.open.like(s)
	}
	switch near := unit.Near(s, allowed); {
	case len(like) > 0:
		r.fault(path, "%q is not known; did you mean %s?", s, strings.Join(quoted(like), " or "))
	case near != "":
		r.fault(path, "%q is not known; did you mean %q?", s, near)
	default:
		r.fault(path, "%q is not known; write one of %s", s, quotedList(allowed))
	}
	return false
}

func quotedList(words []string) string { return strings.Join(quoted(words), ", ") }

func quoted(words []string) []string {
	qs := make([]string, len(words))
	for i, w := range words {
		qs[i] = strconv.Quote(w)
	}
	return qs
}

// number reads a bare number and checks its sense.
func (r *reader) number(f field, v any, path string) (float64, bool) {
	var x float64
	switch v := v.(type) {
	case int64:
		x = float64(v)
	case float64:
		x = v
	case string:
		r.fault(path, "%q is text; write a bare number, as %s = %s", v, f.key, f.example)
		return 0, false
	default:
		r.fault(path, "%s is not a number; write %s = %s", show(v), f.key, f.example)
		return 0, false
	}
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		r.fault(path, "%s is not a finite number; write %s = %s", show(v), f.key, f.example)
		return 0, false
	case !f.sense.ok(x):
		r.fault(path, "%s %s%s", show(v), f.sense, f.sense.asShare(x))
		return 0, false
	case f.form == formCount && (x != math.Trunc(x) || x > 1000):
		r.fault(path, "%s is not a count; write a whole number up to 1000", show(v))
		return 0, false
	}
	return x, true
}

// setNumber stores a number in a float64, an int, or a pointer to one.
func setNumber(into reflect.Value, x float64) {
	if into = settle(into); into.Kind() == reflect.Int {
		into.SetInt(int64(x))
		return
	}
	into.SetFloat(x)
}

// quantity reads text with a unit, or the word allowed in its place.
func (r *reader) quantity(f field, v any, path string, into reflect.Value) {
	if s, ok := v.(string); ok && f.word != "" && strings.EqualFold(strings.TrimSpace(s), f.word) {
		if s != f.word {
			r.fault(path, "%q is not known; write %q", s, f.word)
			return
		}
		r.words[path] = true
		return
	}
	if x, ok := r.dimensioned(f, v, path); ok {
		setNumber(into, x)
	}
}

// dimensioned reads text with a unit and checks its sense.
func (r *reader) dimensioned(f field, v any, path string) (float64, bool) {
	switch n := v.(type) {
	case int64, float64:
		if means := f.means(show(n)); means != "" {
			r.fault(path, "%s", means)
			return 0, false
		}
		r.fault(path, "%s", unit.NoUnit(f.unit, show(n)))
		return 0, false
	case string:
		x, err := unit.Parse(f.unit, n)
		if means := f.means(n); err != nil && means != "" {
			r.fault(path, "%s", means)
			return 0, false
		}
		if err != nil {
			r.fault(path, "%s%s", strings.TrimSuffix(err.Error(), "?"), r.orWord(f, err))
			return 0, false
		}
		if !f.sense.ok(x) {
			r.fault(path, "%q %s", n, f.sense)
			return 0, false
		}
		return x, true
	}
	r.fault(path, "%s is not a %s; write text with a unit, as %s = %s", show(v), f.unit, f.key, f.example)
	return 0, false
}

// means answers a word of the trade in place of a quantity, "" for what is none.
func (f field) means(text string) string {
	if f.trade == nil {
		return ""
	}
	return f.trade(strings.TrimSpace(text))
}

// orWord ends a message about a value in whose place a word may stand.
func (r *reader) orWord(f field, err error) string {
	end := ""
	if strings.HasSuffix(err.Error(), "?") {
		end = "?"
	}
	if f.word == "" {
		return end
	}
	return fmt.Sprintf(", or %q%s", f.word, end)
}

// quantities reads an array of texts with units.
func (r *reader) quantities(f field, v any, path string, into reflect.Value) {
	list, ok := v.([]any)
	if !ok || len(list) == 0 {
		r.fault(path, "must be an array with at least one value; write %s = %s", f.key, f.example)
		return
	}
	for i, e := range list {
		if x, ok := r.dimensioned(f, e, fmt.Sprintf("%s[%d]", path, i)); ok {
			into.Set(reflect.Append(into, reflect.ValueOf(x)))
		}
	}
}

// override reads a bare number, or a table of value and source.
func (r *reader) override(f field, v any, path string, into reflect.Value) {
	m, ok := v.(map[string]any)
	if !ok {
		if x, ok := r.number(f, v, path); ok {
			setNumber(into, x)
		}
		return
	}
	var o struct {
		Value  float64
		Source string
	}
	r.table(f.fields, m, path, reflect.ValueOf(&o).Elem())
	if o.Value != 0 {
		setNumber(into, o.Value)
		r.t.Basis.setSource(f.key, o.Source)
	}
}

// setSource notes where an override comes from.
func (b *Basis) setSource(key, source string) {
	if b.Sources == nil {
		b.Sources = map[string]string{}
	}
	b.Sources[key] = source
}
