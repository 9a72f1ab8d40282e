package tank

import (
	"reflect"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// Every key has a field of the right type in its struct, and every field that is
// not made by the reader has a key.
func TestKeysAndFieldsAgree(t *testing.T) {
	agree(t, root, reflect.TypeFor[Tank](), "")
}

// made are fields that no key fills.
var made = map[string]bool{
	"File": true, "Text": true, "Attached": true, "Defaults": true, "places": true, "raw": true, "open": true,
	".port.Group": true, ".port.Position": true, ".port.weld.GrooveFull": true,
	".material.Name": true, ".joint.Name": true,
}

func agree(t *testing.T, fields []field, s reflect.Type, path string) {
	seen := map[string]bool{}
	for _, f := range fields {
		at := path + "." + f.key
		zero := reflect.New(s).Elem()
		v := member(zero, f.key)
		if !v.IsValid() {
			if f.form != formScatter {
				t.Errorf("%s has no field in %s", at, s)
			}
			continue
		}
		for i := range s.NumField() {
			if zero.Field(i).Addr() == v.Addr() {
				seen[s.Field(i).Name] = true
			}
		}
		inner := v.Type()
		for inner.Kind() == reflect.Pointer || inner.Kind() == reflect.Slice && f.form != formQuantities {
			inner = inner.Elem()
		}
		want := map[form]reflect.Kind{
			formFlag: reflect.Bool, formNumber: reflect.Float64, formCount: reflect.Int, formQuantity: reflect.Float64,
			formQuantities: reflect.Slice, formOverride: reflect.Float64, formTable: reflect.Struct,
			formTables: reflect.Struct, formNamed: reflect.Struct, formScatter: reflect.Struct, formColumns: reflect.Map,
		}[f.form]
		if want == reflect.Invalid {
			want = reflect.String
		}
		if inner.Kind() != want {
			t.Errorf("%s is a %s in %s, want %s", at, inner.Kind(), s, want)
			continue
		}
		if want == reflect.Struct && f.form != formScatter {
			agree(t, f.fields, inner, at)
		}
	}
	for i := range s.NumField() {
		f := s.Field(i)
		if tag := f.Tag.Get("key"); tag == "-" || seen[f.Name] || f.Name == "Scatter" {
			continue
		}
		if !made[f.Name] && !made[path+"."+f.Name] {
			t.Errorf("%s%s.%s is filled by no key", s, path, f.Name)
		}
	}
}

// Every key says what it is, and its example reads as its own form.
func TestExamplesRead(t *testing.T) {
	var walk func(fields []field, path string)
	walk = func(fields []field, path string) {
		for _, f := range fields {
			at := join(path, f.key)
			if f.doc == "" {
				t.Errorf("%s has no doc", at)
			}
			switch f.form {
			case formTable, formTables, formNamed:
				walk(f.fields, at)
				continue
			case formScatter, formColumns:
				continue
			}
			var raw map[string]any
			if _, err := toml.Decode(f.key+" = "+f.example, &raw); err != nil {
				t.Errorf("%s: example %s: %v", at, f.example, err)
				continue
			}
			r := &reader{t: &Tank{File: "example"}, words: map[string]bool{}}
			into := reflect.New(exampleType(f)).Elem()
			r.value(f, raw[f.key], at, into)
			if len(r.faults) > 0 {
				t.Errorf("%s: example %s: %v", at, f.example, r.faults)
			}
		}
	}
	walk(root, "")
}

func exampleType(f field) reflect.Type {
	switch f.form {
	case formFlag:
		return reflect.TypeFor[bool]()
	case formNumber, formQuantity, formOverride:
		return reflect.TypeFor[float64]()
	case formCount:
		return reflect.TypeFor[int]()
	case formQuantities:
		return reflect.TypeFor[[]float64]()
	}
	return reflect.TypeFor[string]()
}

// The index of positions knows every key that the decoder knows.
func TestIndexKnowsEveryKey(t *testing.T) {
	src := string(Starter()) + `
[[case]]
name = "dotted"
fill = 0.5
loads = [
  { station = "1 mm", axial_force = "1 N" }, # first
  { station = "2 mm", bending_moment = "1 N m" },
]
[flight]
columns.time = "t (s)"
"history" = 'f.csv'
`
	var raw map[string]any
	if _, err := toml.Decode(src, &raw); err != nil {
		t.Fatal(err)
	}
	at := index([]byte(src))
	count := 0
	var walk func(v any, path string)
	walk = func(v any, path string) {
		if path != "" {
			count++
			where, ok := at.value[path]
			if !ok {
				t.Errorf("no place of %s", path)
			}
			if s, isText := v.(string); isText {
				line := strings.Split(src, "\n")[where.line-1]
				if got := string([]rune(line)[where.column:]); !strings.HasPrefix(got, s) {
					t.Errorf("%s: at %d:%d stands %q, want %q", path, where.line, where.column, got, s)
				}
			}
		}
		switch v := v.(type) {
		case map[string]any:
			for k, e := range v {
				walk(e, join(path, k))
			}
		default:
			list, _ := tableList(v)
			for i, e := range list {
				walk(e, path+"["+string(rune('0'+i))+"]")
			}
		}
	}
	walk(raw, "")
	if count < 100 {
		t.Errorf("walked only %d keys", count)
	}
}
