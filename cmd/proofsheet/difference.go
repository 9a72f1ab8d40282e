package main

import (
	"fmt"
	"maps"
	"slices"
)

// difference returns the first place where two JSON values differ, or "". The
// program's own name and version do not count.
func difference(at string, was, is any) string {
	switch a := was.(type) {
	case map[string]any:
		b, ok := is.(map[string]any)
		if !ok {
			break
		}
		for _, k := range sortedKeys(a, b) {
			if at == "" && k == "program" {
				continue
			}
			if d := difference(at+"."+k, a[k], b[k]); d != "" {
				return d
			}
		}
		return ""
	case []any:
		b, ok := is.([]any)
		if !ok || len(a) != len(b) {
			break
		}
		for i := range a {
			if d := difference(fmt.Sprintf("%s[%d]", at, i), a[i], b[i]); d != "" {
				return d
			}
		}
		return ""
	default:
		if was == is {
			return ""
		}
	}
	return fmt.Sprintf("%s was %s and is %s", at[min(1, len(at)):], short(was), short(is))
}

// short prints a JSON value in few letters.
func short(v any) string {
	text := []rune(clean(fmt.Sprintf("%v", v)))
	if len(text) > 60 {
		return string(text[:60]) + "…"
	}
	return string(text)
}

// sortedKeys returns the keys of all maps, each once.
func sortedKeys(of ...map[string]any) (keys []string) {
	for _, m := range of {
		keys = slices.AppendSeq(keys, maps.Keys(m))
	}
	slices.Sort(keys)
	return slices.Compact(keys)
}
