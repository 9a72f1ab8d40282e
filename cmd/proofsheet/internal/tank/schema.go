package tank

import (
	"encoding/json"
	"regexp"
	"strings"

	"proofsheet/report/unit"
)

// A Key is one key of the tank file, for help and documents.
type Key struct {
	Path     string // "head.aft.half_angle", "material.NAME.alloy", "port[].tube.wall"
	Form     string // "length", "bare number", "one of …"
	Example  string // as it stands in TOML
	Doc      string
	Required bool // has no default, where its table is written
}

// Keys returns every key of the tank file in the order of its tables.
func Keys() []Key { return walkKeys(nil, root, "") }

func walkKeys(keys []Key, fields []field, path string) []Key {
	for _, f := range fields {
		at := join(path, f.key)
		keys = append(keys, Key{Path: at, Form: f.describe(), Example: f.example, Doc: f.doc, Required: f.required})
		switch f.form {
		case formTable:
			keys = walkKeys(keys, f.fields, at)
		case formNamed:
			keys = walkKeys(keys, f.fields, at+".NAME")
		case formTables:
			keys = walkKeys(keys, f.fields, at+"[]")
		}
	}
	return keys
}

// describe says how a value is written.
func (f field) describe() string {
	switch f.form {
	case formFile:
		return "file"
	case formDate:
		return "date"
	case formName:
		return "name"
	case formChoice:
		return "one of " + quotedList(f.allowed())
	case formFlag:
		return "true or false"
	case formNumber, formOverride:
		return "bare number"
	case formCount:
		return "whole number"
	case formQuantity:
		if f.word != "" {
			return f.unit.String() + " or " + quote(f.word)
		}
		return f.unit.String()
	case formQuantities:
		return "array of " + f.unit.String()
	case formTable, formNamed, formColumns, formScatter:
		return "table"
	case formTables:
		return "array of tables"
	}
	if f.ref != "" {
		return "name of a " + f.ref
	}
	return "text"
}

const namePattern = `^[a-z][a-z0-9-]*$`

type object = map[string]any

// Schema returns the JSON Schema of the tank file, draft 2020-12, for editors.
// What one key asks of another is not in it: [Read] tells that.
func Schema() []byte {
	s := schemaTable(root)
	s["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	s["title"] = "proofsheet tank file"
	text, err := json.MarshalIndent(s, "", "  ")
	if err != nil {
		panic("tank: schema: " + err.Error()) // maps of text and numbers always marshal
	}
	return append(text, '\n')
}

func schemaTable(fields []field) object {
	properties, required := object{}, []string{}
	for _, f := range fields {
		properties[f.key] = schemaField(f)
		if f.required {
			required = append(required, f.key)
		}
	}
	s := object{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

func schemaField(f field) object {
	s := schemaValue(f)
	s["description"] = f.doc
	if f.example != "" && f.form != formColumns && f.form != formScatter {
		var v any
		if json.Unmarshal([]byte(f.example), &v) == nil {
			s["examples"] = []any{v}
		}
	}
	return s
}

func schemaValue(f field) object {
	switch f.form {
	case formChoice:
		if f.open.pattern != "" {
			return object{"type": "string", "anyOf": []any{object{"enum": f.allowed()}, object{"pattern": f.open.pattern}}}
		}
		return object{"type": "string", "enum": f.allowed()}
	case formFlag:
		return object{"type": "boolean"}
	case formNumber:
		return f.sense.schema("number")
	case formCount:
		return f.sense.schema("integer")
	case formOverride:
		return object{"anyOf": []any{f.sense.schema("number"), schemaTable(f.fields)}}
	case formQuantity:
		return object{"type": "string", "pattern": quantityPattern(f.unit, f.word)}
	case formQuantities:
		return object{"type": "array", "minItems": 1, "items": object{"type": "string", "pattern": quantityPattern(f.unit, "")}}
	case formTable:
		return schemaTable(f.fields)
	case formTables:
		return object{"type": "array", "items": schemaTable(f.fields)}
	case formNamed:
		return object{
			"type": "object", "minProperties": 1, "propertyNames": object{"pattern": namePattern},
			"additionalProperties": schemaTable(f.fields),
		}
	case formColumns:
		return object{
			"type": "object", "propertyNames": object{"enum": columnNames(flightColumns)},
			"additionalProperties": object{"type": "string"},
		}
	case formScatter:
		return object{"type": "object", "additionalProperties": object{"type": "string", "pattern": `^((normal|uniform) .|coupons$)`}}
	case formName:
		return object{"type": "string", "pattern": namePattern}
	case formDate:
		return object{"type": "string", "pattern": `^\d{4}-\d{2}-\d{2}$`}
	}
	return object{"type": "string", "minLength": 1}
}

// schema returns the bounds of a number.
func (s sense) schema(kind string) object {
	o := object{"type": kind}
	switch s {
	case positive:
		o["exclusiveMinimum"] = 0
	case notNegative:
		o["minimum"] = 0
	case share:
		o["minimum"], o["exclusiveMaximum"] = 0, 1
	case fullShare:
		o["minimum"], o["maximum"] = 0, 1
	case someShare:
		o["exclusiveMinimum"], o["maximum"] = 0, 1
	case atLeast1:
		o["minimum"] = 1
	case below0:
		o["exclusiveMaximum"] = 0
	case poisson:
		o["exclusiveMinimum"], o["exclusiveMaximum"] = 0, 0.5
	}
	return o
}

// quantityPattern matches a number and a unit of the kind, or the word.
func quantityPattern(k unit.Kind, word string) string {
	var us []string
	for _, u := range k.Units() {
		us = append(us, strings.ReplaceAll(regexp.QuoteMeta(u), " ", " +"))
	}
	p := `[+-]?(\d+[ \t]+\d+/\d+|\d+/\d+|(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?)\s*(` + strings.Join(us, "|") + `)`
	if word != "" {
		p = `(` + p + `|` + word + `)`
	}
	return `^\s*` + p + `\s*$`
}
