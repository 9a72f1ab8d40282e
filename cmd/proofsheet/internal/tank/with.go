package tank

import (
	"fmt"
	"strconv"
	"strings"
)

// With returns the tank with one value of its file replaced, read and checked
// again as if it had been written so: for sweeps and sizing. The key is as in
// faults, "cylinder.thickness" or "port.fill.tube.wall"; the value as in the file,
// without quotes. The error is [Faults] for a value that will not do, and plain for a
// key that is none.
func (t *Tank) With(key, value string) (*Tank, error) {
	f, ok := t.fieldOf(key)
	if !ok {
		return nil, fmt.Errorf("%s is no key of a tank file that holds one value", key)
	}
	v, err := decode(f, value)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", key, err)
	}
	raw := clone(t.raw).(map[string]any)
	if err := put(raw, t.internal(key), v); err != nil {
		return nil, fmt.Errorf("%s: %w", key, err)
	}
	return interpret(t.File, t.Text, t.places, raw, t.open)
}

// KeyUnit returns the SI unit of a key's number, "1" for a bare one; it is false
// for a key that holds no number.
func (t *Tank) KeyUnit(key string) (string, bool) {
	f, ok := t.fieldOf(key)
	switch {
	case !ok:
		return "", false
	case f.form == formQuantity:
		return f.unit.SI(), true
	}
	return "1", f.form == formNumber || f.form == formCount || f.form == formOverride
}

// decode gives a value the type it has in TOML.
func decode(f field, value string) (any, error) {
	switch f.form {
	case formNumber, formOverride:
		x, err := strconv.ParseFloat(value, 64)
		if err != nil {
			return nil, fmt.Errorf("%q is not a bare number", value)
		}
		return x, nil
	case formCount:
		n, err := strconv.ParseInt(value, 10, 64)
		if err != nil {
			return nil, fmt.Errorf("%q is not a whole number", value)
		}
		return n, nil
	case formFlag:
		b, err := strconv.ParseBool(value)
		if err != nil {
			return nil, fmt.Errorf("%q is neither true nor false", value)
		}
		return b, nil
	case formQuantities, formColumns, formScatter:
		return nil, fmt.Errorf("holds several values")
	}
	return value, nil
}

// clone copies decoded TOML down to its values, which are never changed.
func clone(v any) any {
	switch v := v.(type) {
	case map[string]any:
		m := make(map[string]any, len(v))
		for k, e := range v {
			m[k] = clone(e)
		}
		return m
	case []map[string]any:
		ms := make([]map[string]any, len(v))
		for i, e := range v {
			ms[i] = clone(e).(map[string]any)
		}
		return ms
	case []any:
		vs := make([]any, len(v))
		for i, e := range v {
			vs[i] = clone(e)
		}
		return vs
	}
	return v
}

// put sets a value; the table that holds it must be there.
func put(raw map[string]any, path string, v any) error {
	table, key := raw, path
	if i := strings.LastIndexByte(path, '.'); i >= 0 {
		at, ok := lookUp(raw, path[:i])
		m, isTable := at.(map[string]any)
		if !ok || !isTable {
			return fmt.Errorf("its table is not written in this file")
		}
		table, key = m, path[i+1:]
	}
	table[key] = v
	return nil
}
