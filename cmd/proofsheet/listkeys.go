package main

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
)

// manyNamed are the tables of which a file has several, each with a name: messages
// put it between the table and its key, "port.vent.tube".
var manyNamed = []string{"material", "joint", "port", "case"}

// keyRows lists the tables of the tank file, or with a name the keys of one of them, of
// whatever has that name in any table, or a single key. Both heads have the same keys,
// listed once as those of head.X.
func keyRows(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"key", "written as", "what it is"}
	keys := listedKeys()
	if name == "" {
		for _, k := range keys {
			if isTable(k) {
				rows = append(rows, []string{k.Path, tableForm(k), k.Doc})
			}
		}
		return heading, rows, nil
	}
	for _, asked := range []string{askedPath(name), unnamedPath(name)} {
		for _, k := range keys {
			if k.Path == asked || strings.HasPrefix(k.Path, asked+".") {
				rows = append(rows, keyRow(k, strings.TrimPrefix(k.Path, asked+".")))
			}
		}
		if len(rows) > 0 {
			return heading, rows, nil
		}
	}
	for _, k := range keys {
		if slices.Contains(strings.Split(k.Path, "."), name) {
			rows = append(rows, keyRow(k, k.Path))
		}
	}
	if len(rows) == 0 {
		return nil, nil, fmt.Errorf("no key %q", name)
	}
	return heading, rows, nil
}

// keyRow is one key under the name it is listed by.
func keyRow(k tank.Key, shown string) []string {
	doc := k.Doc
	if k.Required && !isTable(k) {
		doc += "; needed"
	}
	return []string{shown, writtenAs(k), doc}
}

// isTable reports whether a key holds keys in place of a value.
func isTable(k tank.Key) bool {
	return strings.HasSuffix(k.Form, "table") || strings.HasSuffix(k.Form, "tables")
}

// listedKeys returns the keys under plain paths, those of the heads once.
func listedKeys() (out []tank.Key) {
	for _, k := range tank.Keys() {
		switch {
		case k.Path == "head" || k.Path == "head.forward" || strings.HasPrefix(k.Path, "head.forward."):
			continue
		case k.Path == "head.aft":
			k.Doc = "the two ends: head.aft, at the smaller z, and head.forward"
		}
		k.Path = askedPath(k.Path)
		out = append(out, k)
	}
	return out
}

// askedPath writes a path as the list does: no brackets, no NAME, head.X for either head.
func askedPath(path string) string {
	path = strings.ReplaceAll(strings.Trim(path, "[]"), "[]", "")
	parts := strings.Split(path, ".")
	if len(parts) > 1 && parts[0] == "head" && (parts[1] == "aft" || parts[1] == "forward") {
		parts[1] = "X"
	}
	return strings.Join(slices.DeleteFunc(parts, func(p string) bool { return p == "NAME" }), ".")
}

// unnamedPath leaves the name out that a message puts behind a table.
func unnamedPath(path string) string {
	parts := strings.Split(askedPath(path), ".")
	if len(parts) > 1 && slices.Contains(manyNamed, parts[0]) {
		parts = slices.Delete(parts, 1, 2)
	}
	return strings.Join(parts, ".")
}

// tableForm says how a table begins.
func tableForm(k tank.Key) string {
	switch {
	case k.Form == "array of tables":
		return "[[" + k.Path + "]]"
	case slices.Contains(manyNamed, k.Path):
		return "[" + k.Path + ".NAME]"
	case !strings.Contains(k.Path, ".") || k.Path == "head.X":
		return "[" + k.Path + "]"
	}
	return k.Path[strings.LastIndex(k.Path, ".")+1:] + " = { … }"
}

// writtenAs shows a value: what may be chosen, else an example.
func writtenAs(k tank.Key) string {
	switch {
	case isTable(k):
		return tableForm(k)
	case k.Example == "" || strings.HasPrefix(k.Form, "one of ") && len(k.Form) < 80:
		return k.Form
	}
	return k.Example
}

// keyNames are the tables, for completion and near misses.
func keyNames() (names []string) {
	_, rows, _ := keyRows("") // an empty name is never refused
	for _, row := range rows {
		names = append(names, row[0])
	}
	return names
}
