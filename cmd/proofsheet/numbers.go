package main

import (
	"fmt"
	"math"
	"strings"
)

// alike is by how much two numbers may differ, of the larger one, and still be
// the same result of two versions or two processors [-]; well below the digits
// that are printed. trifle is what counts as nothing, in SI units.
const alike, trifle = 1e-6, 1e-12

// wording are the members of the sheet's data that say things in words. They
// may be put better by another version.
var wording = map[string]bool{
	"program": true, "title": true, "formula": true, "note": true, "symbol": true, "name": true, "source": true,
	"cautions": true, "notes": true, "governing": true, "reason": true,
}

// entryNames are lists of which another version may have more: what each entry is called by.
var entryNames = map[string]func(entry map[string]any) string{
	"checks":   func(m map[string]any) string { return fmt.Sprintf("%v@%v by %v", m["id"], m["case"], m["rule"]) },
	"findings": func(m map[string]any) string { return fmt.Sprint(m["title"]) },
}

// numbers compares the data of two versions.
type numbers struct {
	count int // values compared
	more  int // values that only the new sheet has
}

// compare returns the first place where two values differ as numbers, statuses
// or names, or "". Everything in was must be in is; key is the member's name. Of the
// verdict of a record's tank the words after the colon may be others.
func (n *numbers) compare(at, key string, was, is any) string {
	if wording[key] {
		return ""
	}
	if key == "sheet" {
		was, is = verdictOf(was), verdictOf(is)
	}
	switch a := was.(type) {
	case map[string]any:
		if b, ok := is.(map[string]any); ok {
			return n.members(at, a, b)
		}
	case []any:
		if b, ok := is.([]any); ok && entryNames[key] != nil {
			return n.members(at, byName(a, entryNames[key]), byName(b, entryNames[key]))
		} else if ok && len(a) == len(b) {
			for i := range a {
				if d := n.compare(fmt.Sprintf("%s[%d]", at, i), "", a[i], b[i]); d != "" {
					return d
				}
			}
			return ""
		}
	case float64:
		if b, ok := is.(float64); ok && near(key, a, b) {
			n.count++
			return ""
		}
	default:
		if was == is {
			return ""
		}
	}
	return fmt.Sprintf("%s was %s and is %s", at[min(1, len(at)):], short(was), short(is))
}

// members compares two objects member by member.
func (n *numbers) members(at string, was, is map[string]any) string {
	for _, k := range sortedKeys(was) {
		if _, ok := is[k]; !ok && !wording[k] {
			return fmt.Sprintf("%s.%s is missing", at, k)[1:]
		}
		if d := n.compare(at+"."+k, k, was[k], is[k]); d != "" {
			return d
		}
	}
	for k := range is {
		if _, ok := was[k]; !ok {
			n.more++
		}
	}
	return ""
}

// near reports whether two numbers are the same result. A margin is a ratio
// less one, and has the accuracy of the ratio.
func near(key string, a, b float64) bool {
	size := max(math.Abs(a), math.Abs(b))
	if key == "margin" {
		size++
	}
	return math.Abs(a-b) <= max(alike*size, trifle)
}

// verdictOf returns what stands before the colon of a verdict in words.
func verdictOf(v any) any {
	if text, ok := v.(string); ok {
		v, _, _ = strings.Cut(text, ":")
	}
	return v
}

// byName names the entries of a list by what they are, because another version may
// have more of them. Of several with one name each keeps its place among them.
func byName(list []any, called func(map[string]any) string) map[string]any {
	out, seen := map[string]any{}, map[string]int{}
	for _, c := range list {
		name := "?"
		if m, ok := c.(map[string]any); ok {
			name = called(m)
		}
		seen[name]++
		out[fmt.Sprintf("%s, %d", name, seen[name])] = c
	}
	return out
}
