package tank

import (
	"io/fs"
	"reflect"
	"strings"
	"testing"

	"github.com/BurntSushi/toml"
)

// noFiles opens nothing.
func noFiles(string) ([]byte, error) { return nil, fs.ErrNotExist }

// TestNesting has files of brackets, which would take all memory, refused where they go too
// deep, and brackets that are text let through.
func TestNesting(t *testing.T) {
	many := strings.Repeat
	for _, row := range []struct{ text, want string }{
		{"x=" + many("[", 1_000_000), "bad.toml:1:35: tables and lists lie more than 32 deep"},
		{"a = 1\nx = " + many("{a=", 20_000), "bad.toml:2:101: tables and lists lie more than 32 deep"},
		{"[" + many("a.", 20_000) + "a]", "bad.toml:1:65: "},
		{many("a.", 20_000) + "a = 1", "bad.toml:1:64: "},
		{"x = {b = \"\"\"a\"\"\"\", c = \"" + many("[", 50), ""},            // still within the last string
		{"x = {b = \"\"\"a\"\"\"\"\", c = " + many("[", 50), "1:56: "},      // two quotes and the end
		{"x = {b = '''a\n'''', c = " + many("[", 50), "2:42: "},             // one quote and the end
		{"x = \"\\\\\"\ny = " + many("[", 50), "2:37: "},                    // a backslash, and the end
		{"x = \"\\\"" + many("[", 50) + "\"", ""},                           // an escaped quote, and brackets
		{"x = 'a\\'\ny = " + many("[", 50), "2:37: "},                       // no escape between these
		{"x = \"\"\"" + many("[\n", 50) + "\"\"\"", ""},                     // lines of text
		{"# " + many("[", 50) + "\ny = " + many("[", 50), "2:37: "},         // a comment
		{"# a\ry = " + many("[", 50), "1:41: "},                             // which some end so
		{"y = " + many("[", 32) + many("]", 32), ""},                        // as deep as may be
		{"y = [" + many("[1.5], ", 200) + "]", ""},                          // side by side
		{"x = \"" + many("[", 50) + "\ny = " + many("[", 50), "2:37: "},     // a string that does not end
		{many("]", 50) + "\ny = " + many("[", 50), "2:37: "},                // more ends than beginnings
		{"note = \"" + many("a.", 50) + "\" # " + many(".", 50) + "\n", ""}, // dots of text
	} {
		f, deep := nestingFault("bad.toml", []byte(row.text))
		if deep != (row.want != "") || deep && !strings.Contains(f.Error(), row.want) {
			t.Errorf("%.60q: %v, want %q", row.text, f, row.want)
		}
	}
	_, err := Read("bad.toml", []byte("x="+many("[", 20_000_000)), noFiles)
	if err == nil || err.Error() != "bad.toml:1:35: tables and lists lie more than 32 deep here; a tank file needs no more than a few" {
		t.Errorf("read: %.200v", err)
	}
}

// FuzzNesting has no text decode into what lies deeper than may be, unless it was told before.
func FuzzNesting(f *testing.F) {
	for _, seed := range []string{"a = 1", "x = {b = \"\"\"a\"\"\"\", c = [[[]]]}", "[[a.b]]\nc = ['''[''', \"]\\\"\"] # [", string(Starter())} {
		f.Add(strings.ReplaceAll(seed, "[[[]]]", strings.Repeat("[", 40)+strings.Repeat("]", 40)))
	}
	f.Fuzz(func(t *testing.T, text string) {
		if _, deep := nestingFault("fuzz.toml", []byte(text)); deep || len(text) > 1<<12 {
			return
		}
		var raw map[string]any
		if _, err := toml.Decode(text, &raw); err == nil && listDepth(reflect.ValueOf(raw)) > mostNested+1 {
			t.Errorf("%q is deeper than %d", text, mostNested)
		}
	})
}

// listDepth is how many lists lie in one another.
func listDepth(v reflect.Value) int {
	for v.Kind() == reflect.Interface {
		v = v.Elem()
	}
	deepest := 0
	switch v.Kind() {
	case reflect.Map:
		for _, k := range v.MapKeys() {
			deepest = max(deepest, listDepth(v.MapIndex(k)))
		}
	case reflect.Slice:
		for i := range v.Len() {
			deepest = max(deepest, 1+listDepth(v.Index(i)))
		}
	}
	return deepest
}
