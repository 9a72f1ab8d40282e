package tank

import (
	"errors"
	"fmt"
	"reflect"
	"regexp"
	"strings"

	"github.com/BurntSushi/toml"
)

// Read reads a tank file. The name is printed in faults; open reads a file
// named by it, with a path relative to the tank file. The error is [Faults]:
// everything that is wrong, in one run. A file that is no TOML has one fault.
func Read(name string, src []byte, open func(path string) ([]byte, error)) (*Tank, error) {
	if f, deep := nestingFault(name, src); deep {
		return nil, Faults{f}
	}
	raw := map[string]any{}
	if _, err := toml.Decode(string(src), &raw); err != nil {
		return nil, Faults{syntaxFault(name, src, err)}
	}
	return interpret(name, src, index(src), raw, open)
}

// interpret makes a tank of decoded TOML, with the places of what the text says.
func interpret(name string, src []byte, at places, raw map[string]any, open func(string) ([]byte, error)) (*Tank, error) {
	r := &reader{
		t:     &Tank{File: name, Text: src, raw: raw, open: open},
		at:    at,
		open:  open,
		words: map[string]bool{},
	}
	r.t.places = r.at
	r.table(root, raw, "", reflect.ValueOf(r.t).Elem())
	r.check()
	if len(r.faults) > 0 {
		return nil, r.faults.sorted(name)
	}
	return r.t, nil
}

// Fault returns a fault at the value of a key path as the user writes it,
// "case.burnout.fill" or "head.aft.depth", for what only the calculation sees.
func (t *Tank) Fault(key, format string, args ...any) Fault {
	r := &reader{t: t, at: t.places}
	r.fault(t.internal(key), format, args...)
	f := r.faults[0]
	f.Key = key
	return f
}

// Has reports whether a key or a table is written in the file.
func (t *Tank) Has(key string) bool {
	_, ok := lookUp(t.raw, t.internal(key))
	return ok
}

// internal turns "port.fill.radius" into "port[0].radius".
func (t *Tank) internal(key string) string {
	parts := strings.Split(key, ".")
	if len(parts) < 2 || parts[0] != "port" && parts[0] != "case" {
		return key
	}
	list, _ := tableList(t.raw[parts[0]])
	for i, m := range list {
		name, _ := m["name"].(string)
		if name == parts[1] {
			return join(fmt.Sprintf("%s[%d]", parts[0], i), strings.Join(parts[2:], "."))
		}
	}
	return parts[0]
}

// bareQuantity finds a value such as 4 mm that stands without quotes.
var bareQuantity = regexp.MustCompile(`^[^=]*=\s*([-+]?[0-9][0-9./]*(?:\s[0-9]+/[0-9]+)?\s*[A-Za-z][A-Za-z0-9/ ]*?)\s*(?:#.*)?$`)

// decimalComma finds a number such as 2,5 behind its key, with a unit or without.
var decimalComma = regexp.MustCompile(`^[^"'#]*=\s*([-+]?[0-9]+),([0-9]+)(?:\s*([A-Za-z][A-Za-z0-9/ ]*?))?\s*(?:#.*|[,}].*)?$`)

// definedTwice is how the decoder tells a repeated key.
var definedTwice = regexp.MustCompile(`^Key '(.*)' has already been defined`)

// repeatedTables are those of which a file may have several, and how each begins.
var repeatedTables = map[string]string{"case": "[[case]]", "port": "[[port]]"}

// foundInstead is how the decoder tells a word where a value must stand.
var foundInstead = regexp.MustCompile(`^expected value but found "?([A-Za-z][^"]*)"? instead`)

// curly finds a quote of a word processor before any straight one.
var curly = regexp.MustCompile(`^[^"'#]*[“”„‟‘’‚]`)

// tableHeadings finds the first line of a table: fields parted by commas or semicolons,
// which no line of TOML begins with.
var tableHeadings = regexp.MustCompile(`^(?:[ \t]*(?:#[^\n]*)?\r?\n)*[ \t]*[^\s\[#=,;"'][^\n=,;"']*[,;]`)

// otherFile tells what kind of file was given in place of a tank file, if it shows.
func otherFile(name string, src []byte) string {
	switch {
	case strings.HasPrefix(string(src), "%PDF-"):
		return "this is a PDF, not a tank file; a sheet is for proofsheet verify or sign"
	case strings.HasSuffix(strings.ToLower(name), ".csv") || tableHeadings.Match(src):
		return "a table is no tank file; the tank comes first: proofsheet record TANK.toml LOG.csv"
	case strings.HasPrefix(strings.TrimSpace(string(src)), "{"):
		return "this is JSON, not a tank file; write TOML, as proofsheet new does"
	}
	return ""
}

// pointFor shows a number that has a comma with a point; three digits behind it may be
// thousands, and nothing is shown.
func pointFor(whole, rest, unit string) string {
	switch {
	case len(rest) == 3:
		return " and no thousands marks"
	case unit == "":
		return ", as " + whole + "." + rest
	}
	return fmt.Sprintf(", as %q", whole+"."+rest+" "+unit)
}

// syntaxFault tells where the text stops being TOML.
func syntaxFault(name string, src []byte, err error) Fault {
	f := Fault{File: name, Line: 1, Column: 1, What: err.Error()}
	if other := otherFile(name, src); other != "" {
		f.What = other
		return f
	}
	var parse toml.ParseError
	if !errors.As(err, &parse) {
		return f
	}
	f.Line, f.Column = max(parse.Position.Line, 1), max(parse.Position.Col, 1)
	f.What = parse.Message
	if i := strings.Index(f.What, "\n"); i >= 0 {
		f.What = f.What[:i]
	}
	if m := definedTwice.FindStringSubmatch(f.What); m != nil {
		f.Key, f.What, f.Column = m[1], "is written twice; leave one out", 1
		if many, ok := repeatedTables[m[1]]; ok {
			f.What = "is written twice; write " + many + " before each"
		}
		return f
	}
	switch m := foundInstead.FindStringSubmatch(f.What); {
	case m != nil:
		f.What = m[1] + " is no value; text stands in quotes, a switch is true or false"
	case strings.HasPrefix(f.What, "strings cannot contain newlines"):
		f.What = `a text is not closed on its line; write the second "`
	case strings.HasPrefix(f.What, "expected a top-level item to end"):
		f.What = "the value ends before this; leave the rest of the line out, or write # before it"
	}
	lines := strings.Split(string(src), "\n")
	if f.Line <= len(lines) {
		if m := decimalComma.FindStringSubmatch(strings.TrimRight(lines[f.Line-1], "\r")); m != nil {
			f.What = "a number has a comma; write a decimal point" + pointFor(m[1], m[2], m[3])
		}
		if curly.MatchString(lines[f.Line-1]) {
			f.What = `a text stands in curly quotes; write straight ones, "`
		}
		if m := bareQuantity.FindStringSubmatch(strings.TrimRight(lines[f.Line-1], "\r")); m != nil {
			f.What = fmt.Sprintf("a value with a unit stands in quotes; write %q", m[1])
		}
	}
	return f
}
