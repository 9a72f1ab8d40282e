package tank

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"

	"proofsheet/report/unit"
)

// Number returns a written number of the file in its SI unit; an error for a key
// that is not written, or is no number.
func (t *Tank) Number(key string) (float64, error) {
	f, ok := t.fieldOf(key)
	if !ok {
		return 0, t.noKey(key)
	}
	text := t.Written(key)
	if text == "" {
		return 0, fmt.Errorf("%s is not written in this file", key)
	}
	return f.number(key, text)
}

// noKey answers a key that is none, with the nearest one or with its whole path.
func (t *Tank) noKey(key string) error {
	if near := t.nearKey(key); near != "" {
		return fmt.Errorf("%s is no key of this file; did you mean %s?", key, near)
	}
	for _, k := range Keys() {
		if strings.HasSuffix(k.Path, "."+key) && t.Written(k.Path) != "" {
			return fmt.Errorf("%s is no key of this file; write its whole path, as %s", key, k.Path)
		}
	}
	return fmt.Errorf("%s is no key of a tank file that holds one value", key)
}

// ParseNumber reads a value of a key as a command line has it, "2mm" or "1/8 in",
// in the key's SI unit.
func (t *Tank) ParseNumber(key, text string) (float64, error) {
	f, ok := t.fieldOf(key)
	if !ok {
		return 0, t.noKey(key)
	}
	return f.number(key, text)
}

// joined finds a unit that stands right behind its number.
var joined = regexp.MustCompile(`^([-+]?[0-9]*\.?[0-9]+(?:[eE][-+]?[0-9]+)?)([A-Za-z].*)$`)

func (f field) number(key, text string) (float64, error) {
	switch f.form {
	case formQuantity:
		v, err := unit.Parse(f.unit, joined.ReplaceAllString(text, "$1 $2"))
		if err != nil {
			return 0, fmt.Errorf("%s: %w", key, err)
		}
		return v, nil
	case formNumber, formCount, formOverride:
		v, err := strconv.ParseFloat(text, 64)
		if err != nil {
			return 0, fmt.Errorf("%s: %q is not a bare number", key, text)
		}
		return v, nil
	}
	return 0, fmt.Errorf("%s is no number", key)
}

// WithNumbers returns the tank with several numbers of its file replaced, each
// in the SI unit of its key, read and checked again as if they had been written so;
// files that it names are as they were first read. The number of joint.NAME.coupons is
// the deviate of [Joint].CouponDraw.
func (t *Tank) WithNumbers(values map[string]float64) (*Tank, error) {
	raw := clone(t.raw).(map[string]any)
	drawn := map[string]float64{}
	for key, v := range values {
		if joint, ok := couponKey(key); ok && t.Written(key) != "" {
			drawn[joint] = v
			continue
		}
		f, ok := t.fieldOf(key)
		if !ok {
			return nil, fmt.Errorf("%s is no key of a tank file that holds one value", key)
		}
		text := strconv.FormatFloat(v, 'g', 15, 64)
		if f.form == formQuantity {
			text += " " + f.unit.SI()
		}
		if f.form == formCount {
			text = strconv.FormatFloat(v, 'f', 0, 64)
		}
		decoded, err := decode(f, text)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", key, err)
		}
		if err := put(raw, t.internal(key), decoded); err != nil {
			return nil, fmt.Errorf("%s: %w", key, err)
		}
	}
	changed, err := interpret(t.File, t.Text, t.places, raw, t.reopen)
	if err != nil {
		return nil, err
	}
	changed.open = t.open
	for i := range changed.Joint {
		if z, ok := drawn[changed.Joint[i].Name]; ok {
			changed.Joint[i].CouponDraw = &z
		}
	}
	return changed, nil
}

// reopen returns a file as it was read with the tank.
func (t *Tank) reopen(name string) ([]byte, error) {
	for _, a := range t.Attached {
		if a.Name == name {
			return a.Data, nil
		}
	}
	if t.open == nil {
		return nil, fmt.Errorf("%s cannot be opened from here", name)
	}
	return t.open(name)
}
