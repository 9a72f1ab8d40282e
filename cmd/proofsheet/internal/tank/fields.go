package tank

import (
	"fmt"

	"proofsheet/report/unit"
)

// A form is how a key's value is written in TOML.
type form int

const (
	formText       form = iota // free text
	formFile                   // path of a file, relative to the tank file
	formDate                   // text, year-month-day
	formName                   // lower-case letters, digits, hyphens
	formChoice                 // one of Choices
	formFlag                   // true or false
	formNumber                 // bare number
	formCount                  // bare whole number
	formQuantity               // text with a unit
	formQuantities             // array of those
	formOverride               // bare number, or { value, source }
	formTable                  // one table
	formTables                 // array of tables
	formNamed                  // table of named tables
	formColumns                // table of our column name = heading
	formScatter                // table of key path = spread
)

// A sense is what a number must be to mean anything.
type sense int

const (
	anyNumber sense = iota
	positive
	notNegative
	share     // 0 to below 1
	fullShare // 0 to 1
	someShare // above 0 to 1
	atLeast1
	halfAngle // above 0 to below 90 deg
	poisson   // above 0 to below 0.5
	below0
)

// ok reports whether v [SI] has the sense; NaN never does.
func (s sense) ok(v float64) bool {
	switch s {
	case positive:
		return v > 0
	case notNegative:
		return v >= 0
	case share:
		return v >= 0 && v < 1
	case fullShare:
		return v >= 0 && v <= 1
	case someShare:
		return v > 0 && v <= 1
	case atLeast1:
		return v >= 1
	case halfAngle:
		return v > 0 && v < 1.5707
	case poisson:
		return v > 0 && v < 0.5
	case below0:
		return v < 0
	default:
		return v == v
	}
}

// String returns what a value without the sense is told.
func (s sense) String() string {
	return [...]string{
		"must be a number", "must be greater than zero", "must not be negative",
		"must be from 0 to below 1", "must be from 0 to 1", "must be above 0 and at most 1",
		"must be at least 1", "must be above 0 deg and below 90 deg", "must be above 0 and below 0.5",
		"must be below zero",
	}[s]
}

// asShare says how a share is written that was probably meant in per cent.
func (s sense) asShare(x float64) string {
	if (s == share || s == fullShare || s == someShare) && x > 1 && x <= 100 && s.ok(x/100) {
		return fmt.Sprintf("; write %.6g for %.6g %%", x/100, x)
	}
	return ""
}

// A field is one key: how it is written, what it means, what it may be. The
// reader, the schema and the starter file all go by these rows.
type field struct {
	key      string
	doc      string
	example  string // as it stands in TOML, quotes included
	form     form
	unit     unit.Kind
	sense    sense
	choices  []string                 // closed list
	listed   func() []string          // closed list that another package holds
	open     openList                 // what else is taken or meant beside the closed list
	word     string                   // a word allowed in place of the quantity
	trade    func(text string) string // what a word of the trade written in its place means, "" for none
	ref      string                   // "material", "joint": the value names one
	refNone  bool                     // the reference may be "none"
	required bool
	fields   []field
}

func text(key, example, doc string) field {
	return field{key: key, example: quote(example), doc: doc}
}

func file(key, example, doc string) field {
	return field{key: key, form: formFile, example: quote(example), doc: doc}
}

func boolean(key, doc string) field {
	return field{key: key, form: formFlag, example: "true", doc: doc}
}

func choice(key, doc string, choices ...string) field {
	return field{key: key, form: formChoice, choices: choices, example: quote(choices[0]), doc: doc}
}

func listed(key, example, doc string, list func() []string) field {
	return field{key: key, form: formChoice, listed: list, example: quote(example), doc: doc}
}

// An openList goes beyond a closed list.
type openList struct {
	takes   func(word string) bool     // whether a word that is not listed is good too
	pattern string                     // such words, as a regular expression for editors
	means   func(word string) string   // the listed word that an unlisted one means, or ""
	like    func(word string) []string // the listed words that an unlisted one may mean
}

// unlike answers words of the trade that are written in place of a quantity.
func (f field) unlike(trade func(text string) string) field { f.trade = trade; return f }

// beyond opens a closed list.
func (f field) beyond(o openList) field { f.open = o; return f }

func refers(key, to, example, doc string) field {
	return field{key: key, form: formText, ref: to, example: quote(example), doc: doc}
}

func quantity(key string, k unit.Kind, s sense, example, doc string) field {
	return field{key: key, form: formQuantity, unit: k, sense: s, example: quote(example), doc: doc}
}

func number(key string, s sense, example, doc string) field {
	return field{key: key, form: formNumber, sense: s, example: example, doc: doc}
}

func override(key string, s sense, example, doc string) field {
	return field{key: key, form: formOverride, sense: s, example: example, doc: doc, fields: []field{
		number("value", s, example, doc).must(),
		text("source", "programme requirement 4.2", "who says so, document and place").must(),
	}}
}

func table(key, doc string, fields ...field) field {
	return field{key: key, form: formTable, doc: doc, fields: fields}
}

func tables(key, doc string, fields ...field) field {
	return field{key: key, form: formTables, doc: doc, fields: fields}
}

func named(key, doc string, fields ...field) field {
	return field{key: key, form: formNamed, doc: doc, fields: fields}
}

// must marks a key that has no default.
func (f field) must() field { f.required = true; return f }

// or allows a word in place of the quantity.
func (f field) or(word string) field { f.word = word; return f }

// orNone allows "none" in place of a name.
func (f field) orNone() field { f.refNone = true; return f }

// allowed returns the closed list of a choice.
func (f field) allowed() []string {
	if f.listed != nil {
		return f.listed()
	}
	return f.choices
}

func quote(s string) string { return `"` + s + `"` }

// find returns the field of a key among fields.
func find(fields []field, key string) (field, bool) {
	for _, f := range fields {
		if f.key == key {
			return f, true
		}
	}
	return field{}, false
}

// keysOf returns the keys of fields, for near misses.
func keysOf(fields []field) []string {
	keys := make([]string, len(fields))
	for i, f := range fields {
		keys[i] = f.key
	}
	return keys
}
