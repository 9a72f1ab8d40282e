package tank

import (
	"bytes"
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
	"github.com/santhosh-tekuri/jsonschema/v6"
)

func compileSchema(t *testing.T) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(Schema()))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("tank.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("tank.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// asJSON turns TOML into what a JSON Schema judges.
func asJSON(t *testing.T, src []byte) any {
	t.Helper()
	var raw map[string]any
	if _, err := toml.Decode(string(src), &raw); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(raw)
	if err != nil {
		t.Fatal(err)
	}
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestSchemaTakesTheStarter(t *testing.T) {
	if err := compileSchema(t).Validate(asJSON(t, Starter())); err != nil {
		t.Error(err)
	}
}

// What one key alone gets wrong, the schema refuses too.
func TestSchemaRefuses(t *testing.T) {
	s := compileSchema(t)
	for _, name := range []string{
		"unknown-key", "bare-number", "key-case", "no-unit-in-text", "wrong-unit", "decimal-comma",
		"no-such-alloy", "missing-tables", "name-spelling", "absolute-for-gauge", "unknown-table",
	} {
		src, err := os.ReadFile(filepath.Join(badFolder, name+".toml"))
		if err != nil {
			t.Fatal(err)
		}
		if err := s.Validate(asJSON(t, src)); err == nil {
			t.Errorf("%s: the schema takes it", name)
		}
	}
}

func TestKeysListEveryKeyOfTheStarter(t *testing.T) {
	known := map[string]bool{}
	for _, k := range Keys() {
		known[k.Path[strings.LastIndexByte(k.Path, '.')+1:]] = true
		if k.Doc == "" || k.Form == "" {
			t.Errorf("%s: not described", k.Path)
		}
	}
	for _, line := range strings.Split(string(Starter()), "\n") {
		key, _, ok := strings.Cut(strings.TrimPrefix(line, "# "), " = ")
		if ok && !strings.Contains(key, " ") && !known[key] {
			t.Errorf("the starter shows %q, which is no key", key)
		}
	}
}
