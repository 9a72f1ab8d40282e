package tank

import (
	"fmt"
	"reflect"
	"slices"
	"strings"
	"unicode"
)

// isName reports whether a name is lower-case letters, digits and hyphens, a
// letter first.
func isName(s string) bool {
	for i, c := range s {
		letter := c >= 'a' && c <= 'z'
		if !letter && (i == 0 || !(c >= '0' && c <= '9' || c == '-')) {
			return false
		}
	}
	return s != ""
}

// nameFault says what is wrong with a name, or "".
func nameFault(s string) string {
	switch {
	case s == "none":
		return `"none" means no joint and cannot be a name; write another`
	case !isName(s):
		return fmt.Sprintf("%q cannot be a name; write lower-case letters, digits and hyphens, a letter first", s)
	}
	return ""
}

// member returns the struct field of a key: its key tag, or the key in camel
// case. A key without a field is a slip in this package that a test catches.
func member(s reflect.Value, key string) reflect.Value {
	t, name := s.Type(), camel(key)
	for i := range t.NumField() {
		f := t.Field(i)
		tag, tagged := f.Tag.Lookup("key")
		if tagged && tag == key || !tagged && f.Name == name {
			return s.Field(i)
		}
	}
	return reflect.Value{}
}

// camel turns "inside_diameter" into "InsideDiameter".
func camel(key string) string {
	var b strings.Builder
	for _, part := range strings.Split(key, "_") {
		rs := []rune(part)
		if len(rs) > 0 {
			b.WriteString(string(unicode.ToUpper(rs[0])) + string(rs[1:]))
		}
	}
	return b.String()
}

// settle makes a nil pointer point to a zero value and follows it.
func settle(v reflect.Value) reflect.Value {
	if v.Kind() == reflect.Pointer {
		if v.IsNil() {
			v.Set(reflect.New(v.Type().Elem()))
		}
		return v.Elem()
	}
	return v
}

func sortedKeys[V any](m map[string]V) []string {
	keys := make([]string, 0, len(m))
	for k := range m {
		keys = append(keys, k)
	}
	slices.Sort(keys)
	return keys
}
