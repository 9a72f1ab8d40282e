package main

import (
	"fmt"
	"math"
)

// alike is by how much two numbers may differ, of the larger one, and still be
// the same result of two versions or two processors [-]; well below the digits
// that are printed. trifle is what counts as nothing, in SI units.
const alike, trifle = 1e-6, 1e-12

// comparedWords are the words in the data that are compared besides the numbers. All others
// may be put better by another version.
var comparedWords = map[string]bool{
	"verdict": true, "people": true, "governing": true, "status": true, "outcome": true, "unit": true,
}

// entryNames are lists of which another version may have more: what each entry is called by.
var entryNames = map[string]func(entry map[string]any) string{
	"checks":   func(m map[string]any) string { return fmt.Sprintf("%v@%v by %v", m["id"], m["case"], m["rule"]) },
	"findings": func(m map[string]any) string { return fmt.Sprint(m["title"]) },
}

// numbers counts how far the data of another version agree with our own.
type numbers struct {
	all   int    // of our own, each looked up in the other's
	same  int    // of them
	more  int    // members that only the other has
	first string // difference, in words
}

// compare looks up each of our own values, is, in the other's data; key is the member's name.
func (n *numbers) compare(at, key string, was, is any) {
	switch b := is.(type) {
	case map[string]any:
		a, _ := was.(map[string]any)
		n.members(at, a, b)
		return
	case []any:
		a, _ := was.([]any)
		if name := entryNames[key]; name != nil {
			n.members(at, byName(a, name), byName(b, name))
			return
		}
		n.more += max(0, len(a)-len(b))
		for i := range b {
			var of any
			if i < len(a) {
				of = a[i]
			}
			n.compare(fmt.Sprintf("%s[%d]", at, i), "", of, b[i])
		}
		return
	}
	a, number := was.(float64)
	b, numberToo := is.(float64)
	if !number && !numberToo && !comparedWords[key] {
		return
	}
	n.all++
	switch {
	case number && numberToo && near(key, a, b) || !number && !numberToo && sameWord(was, is):
		n.same++
	case n.first == "":
		n.first = fmt.Sprintf("%s was %s and is %s", at[min(1, len(at)):], short(was), short(is))
	}
}

// members compares two objects member by member.
func (n *numbers) members(at string, was, is map[string]any) {
	for _, k := range sortedKeys(is) {
		n.compare(at+"."+k, k, was[k], is[k])
	}
	for k := range was {
		if _, ok := is[k]; !ok {
			n.more++
		}
	}
}

// sameWord reports whether both are text, and the same, or both nothing.
func sameWord(was, is any) bool {
	a, text := was.(string)
	b, textToo := is.(string)
	return text && textToo && a == b || was == nil && is == nil
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
