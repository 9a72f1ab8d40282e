package tank

import (
	"fmt"
	"maps"
	"slices"
	"sort"
	"strings"
)

// A Difference is one key of which two tank files do not say the same; "" for a
// key that is not written.
type Difference struct{ Key, A, B string }

// Differ returns what two tank files write differently, in the order of the
// first file's keys, then what only the second one has. Named tables are told apart by
// name, ports and cases too; values are compared as they are written, so that 1 m
// and 1000 mm differ.
func Differ(a, b *Tank) (out []Difference) {
	va, vb := flat(a.raw), flat(b.raw)
	keys := slices.AppendSeq(slices.Collect(maps.Keys(va)), maps.Keys(vb))
	place := func(t *Tank, key string) int {
		if p, ok := t.places.value[t.internal(key)]; ok {
			return p.line*1000 + p.column
		}
		return 1 << 30
	}
	sort.Slice(keys, func(i, j int) bool {
		if x, y := place(a, keys[i]), place(a, keys[j]); x != y {
			return x < y
		}
		if x, y := place(b, keys[i]), place(b, keys[j]); x != y {
			return x < y
		}
		return keys[i] < keys[j]
	})
	for _, key := range slices.Compact(keys) {
		if va[key] != vb[key] {
			out = append(out, Difference{key, va[key], vb[key]})
		}
	}
	return out
}

// Keys returns every key that is written in the file, as faults name it, sorted.
func (t *Tank) Keys() []string { return slices.Sorted(maps.Keys(flat(t.raw))) }

// flat lists every value of decoded TOML by its key as faults name it.
func flat(raw map[string]any) map[string]string {
	out := map[string]string{}
	var walk func(path string, v any)
	walk = func(path string, v any) {
		if list, ok := tableList(v); ok && len(list) > 0 {
			for i, m := range list {
				name, _ := m["name"].(string)
				if name == "" {
					name = fmt.Sprint(i + 1)
				}
				walk(join(path, name), m)
			}
			return
		}
		if m, ok := v.(map[string]any); ok {
			for _, k := range sortedKeys(m) {
				walk(join(path, k), m[k])
			}
			return
		}
		out[path] = strings.TrimSuffix(strings.TrimPrefix(fmt.Sprint(v), "["), "]")
	}
	walk("", raw)
	return out
}
