package tank

import (
	"fmt"
	"reflect"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"proofsheet/report/unit"
)

// A reader turns the decoded file into a Tank and collects what is wrong.
type reader struct {
	t      *Tank
	at     places
	faults Faults
	open   func(path string) ([]byte, error)
	words  map[string]bool // paths where a word stands in place of a quantity
}

// fault notes what is wrong with the value at a path.
func (r *reader) fault(path, format string, args ...any) {
	r.faultAt(r.where(path, r.at.value), path, format, args...)
}

func (r *reader) faultAt(at place, path, format string, args ...any) {
	r.faults = append(r.faults, Fault{
		File: r.t.File, Line: at.line, Column: at.column,
		Key: r.shown(path), What: fmt.Sprintf(format, args...),
	})
}

// where finds the place of a path, or of the nearest table that holds it.
func (r *reader) where(path string, in map[string]place) place {
	for p := path; p != ""; p = parent(p) {
		if at, ok := in[p]; ok {
			return at
		}
	}
	return place{1, 1}
}

// parent drops the last key or index of a path.
func parent(path string) string {
	return path[:max(strings.LastIndexAny(path, ".["), 0)]
}

// element is the index of an array in a path.
var element = regexp.MustCompile(`\[(\d+)\]`)

// shown names array elements as the user does: "port.fill.tube", and by number
// from 1 where an element has no name.
func (r *reader) shown(path string) string {
	var b strings.Builder
	end := 0
	for _, m := range element.FindAllStringSubmatchIndex(path, -1) {
		b.WriteString(path[end:m[0]])
		end = m[1]
		n, err := strconv.Atoi(path[m[2]:m[3]])
		if err != nil {
			continue
		}
		if name := r.elementName(path[:m[0]], n); name != "" {
			b.WriteString("." + name)
		} else {
			fmt.Fprintf(&b, "(%d)", n+1)
		}
	}
	return b.String() + path[end:]
}

// elementName returns the name of a port or case, if it has a valid one.
func (r *reader) elementName(array string, n int) string {
	list, _ := tableList(r.t.raw[array])
	if n >= len(list) {
		return ""
	}
	if name, ok := list[n]["name"].(string); ok && isName(name) {
		return name
	}
	return ""
}

// table reads the keys of one table into a struct.
func (r *reader) table(fields []field, m map[string]any, path string, into reflect.Value) {
	offered := r.unknown(fields, m, path)
	for _, f := range fields {
		v, written := m[f.key]
		switch at := join(path, f.key); {
		case written:
			r.value(f, v, at, member(into, f.key))
		case f.required && !offered[f.key]:
			r.missing(f, at)
		}
	}
}

// unknown refuses keys that no field has, and returns those it offered instead:
// a misspelt key is not told twice, as unknown and as missing.
func (r *reader) unknown(fields []field, m map[string]any, path string) map[string]bool {
	offered := map[string]bool{}
	for _, key := range sortedKeys(m) {
		if _, ok := find(fields, key); ok {
			continue
		}
		at := join(path, key)
		where := r.where(at, r.at.key)
		near := nearKey(key, fields)
		switch {
		case strings.EqualFold(near, key):
			r.faultAt(where, at, "unknown key; keys are lower-case, write %s", near)
		case near != "":
			r.faultAt(where, at, "unknown key; did you mean %s?", near)
		default:
			r.faultAt(where, at, "unknown key; write one of %s", strings.Join(keysOf(fields), ", "))
		}
		offered[near] = true
	}
	return offered
}

// nearKey returns the key that was probably meant: the same but for case, or a
// near miss.
func nearKey(key string, fields []field) string {
	keys := keysOf(fields)
	for _, k := range keys {
		if strings.EqualFold(strings.ReplaceAll(key, "-", "_"), k) {
			return k
		}
	}
	return unit.Near(key, keys)
}

// missing says that a key without default was left out.
func (r *reader) missing(f field, path string) {
	at := r.where(path, r.at.key)
	switch shown := r.shown(path); f.form {
	case formTable:
		if f.fields[0].form == formTable { // [head] holds nothing but tables
			for _, sub := range f.fields {
				r.missing(sub, join(path, sub.key))
			}
			return
		}
		r.faultAt(at, path, "is missing; write a [%s] table: %s", shown, f.doc)
	case formNamed:
		r.faultAt(at, path, "is missing; write at least one [%s.NAME] table: %s", shown, f.doc)
	default:
		r.faultAt(at, path, "is missing; write %s = %s (%s)", f.key, f.example, f.doc)
	}
}

// value reads one value by its form.
func (r *reader) value(f field, v any, path string, into reflect.Value) {
	switch f.form {
	case formTable:
		if m, ok := r.asTable(f, v, path); ok {
			r.table(f.fields, m, path, settle(into))
		}
	case formTables:
		r.tables(f, v, path, into)
	case formNamed:
		r.named(f, v, path, into)
	case formOverride:
		r.override(f, v, path, into)
	case formColumns:
		r.columns(f, v, path, into)
	case formScatter:
		r.scatterRows(v, path)
	default:
		r.scalar(f, v, path, into)
	}
}

func (r *reader) asTable(f field, v any, path string) (map[string]any, bool) {
	m, ok := v.(map[string]any)
	if !ok {
		r.fault(path, "must be a table; write %s = { %s } or a [%s] table", f.key, example(f.fields), r.shown(path))
	}
	return m, ok
}

// example shows the first keys of a table.
func example(fields []field) string {
	var parts []string
	for _, f := range fields {
		if f.example != "" && len(parts) < 2 {
			parts = append(parts, f.key+" = "+f.example)
		}
	}
	return strings.Join(parts, ", ")
}

// tables reads an array of tables into a slice of structs.
func (r *reader) tables(f field, v any, path string, into reflect.Value) {
	list, ok := tableList(v)
	if !ok {
		r.fault(path, "must be an array of tables; write [[%s]] or %s = [{ %s }]", r.shown(path), f.key, example(f.fields))
		return
	}
	for i, m := range list {
		element := reflect.New(into.Type().Elem()).Elem()
		r.table(f.fields, m, fmt.Sprintf("%s[%d]", path, i), element)
		into.Set(reflect.Append(into, element))
	}
}

// tableList accepts both ways TOML writes an array of tables.
func tableList(v any) ([]map[string]any, bool) {
	switch list := v.(type) {
	case []map[string]any:
		return list, true
	case []any:
		ms := make([]map[string]any, len(list))
		for i, e := range list {
			m, ok := e.(map[string]any)
			if !ok {
				return nil, false
			}
			ms[i] = m
		}
		return ms, true
	}
	return nil, false
}

// named reads named tables in the order of the file.
func (r *reader) named(f field, v any, path string, into reflect.Value) {
	m, ok := v.(map[string]any)
	if !ok || len(m) == 0 {
		r.fault(path, "must hold named tables; write [%s.NAME]", f.key)
		return
	}
	names := sortedKeys(m)
	slices.SortStableFunc(names, func(a, b string) int {
		pa, pb := r.where(join(path, a), r.at.key), r.where(join(path, b), r.at.key)
		if pa.line != pb.line {
			return pa.line - pb.line
		}
		return pa.column - pb.column
	})
	for _, name := range names {
		at := join(path, name)
		sub, ok := m[name].(map[string]any)
		if !ok {
			if near := nearKey(name, f.fields); near != "" {
				r.fault(at, "stands outside of a named table; write it under [%s.NAME]", f.key)
			} else {
				r.fault(at, "must be a table; write [%s.%s]", f.key, name)
			}
			continue
		}
		if what := nameFault(name); what != "" {
			r.faultAt(r.where(at, r.at.key), at, "%s", what)
		}
		element := reflect.New(into.Type().Elem()).Elem()
		element.FieldByName("Name").SetString(name)
		r.table(f.fields, sub, at, element)
		into.Set(reflect.Append(into, element))
	}
}
