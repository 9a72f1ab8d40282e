package tank

import (
	"fmt"
	"strconv"
	"strings"
)

// check makes the checks that need more than one key, and fills in defaults.
func (r *reader) check() {
	r.checkSheet()
	r.checkBasis()
	r.checkPressure()
	r.checkContents()
	r.checkMaterials()
	r.checkJoints()
	r.checkCylinder()
	r.checkHead("head.aft", &r.t.Head.Aft)
	r.checkHead("head.forward", &r.t.Head.Forward)
	r.checkPorts()
	r.checkSupport()
	r.checkCases()
	r.checkJointUses()
	r.checkFlight()
	r.checkProof()
	r.checkStock()
	r.checkScatter()
	r.checkReferences(root, r.t.raw, "")
}

// has reports whether a key was written.
func (r *reader) has(path string) bool {
	_, ok := lookUp(r.t.raw, path)
	return ok
}

// lookUp walks decoded TOML by a path with indices.
func lookUp(at any, path string) (any, bool) {
	for _, part := range strings.Split(path, ".") {
		key, rest, _ := strings.Cut(part, "[")
		m, ok := at.(map[string]any)
		if !ok {
			return nil, false
		}
		if at, ok = m[key]; !ok {
			return nil, false
		}
		for rest != "" {
			var index string
			index, rest, _ = strings.Cut(rest, "]")
			rest = strings.TrimPrefix(rest, "[")
			n, err := strconv.Atoi(index)
			list, ok := tableList(at)
			if err != nil || !ok || n >= len(list) {
				return nil, false
			}
			at = list[n]
		}
	}
	return at, true
}

// defaulted records a value that the user did not write.
func (r *reader) defaulted(path, value, why string) {
	r.t.Defaults = append(r.t.Defaults, Default{Key: r.shown(path), Value: value, Why: why})
}

// orDefault fills in text that was not written.
func (r *reader) orDefault(path string, into *string, value, why string) {
	if !r.has(path) {
		*into = value
		r.defaulted(path, value, why)
	}
}

// orNumber fills in a number [SI] that was not written; text is how it is printed.
func (r *reader) orNumber(path string, into *float64, value float64, text, why string) {
	if !r.has(path) {
		*into = value
		r.defaulted(path, text, why)
	}
}

// oneOf asks for exactly one of several keys of a table. Two of them are told at
// the second, none at the table.
func (r *reader) oneOf(table, why string, keys ...string) (written string, ok bool) {
	for _, k := range keys {
		if !r.has(join(table, k)) {
			continue
		}
		if written != "" {
			r.contradict(join(table, k), written, why)
			return written, false
		}
		written = k
	}
	if written == "" {
		r.faultAt(r.where(table, r.at.key), table, "one of %s is missing; %s", strings.Join(keys, ", "), why)
	}
	return written, written != ""
}

// notBoth refuses two keys that say the same thing twice.
func (r *reader) notBoth(table, a, b, why string) bool {
	if r.has(join(table, a)) && r.has(join(table, b)) {
		r.contradict(join(table, b), a, why)
		return false
	}
	return true
}

func (r *reader) contradict(path, other, why string) {
	r.fault(path, "contradicts %s; leave one out (%s)", other, why)
}

// needs asks for a key that another one rests on.
func (r *reader) needs(table, key, other, write string) bool {
	if r.has(join(table, key)) && !r.has(join(table, other)) {
		r.fault(join(table, key), "needs %s; write %s = %s", other, other, write)
		return false
	}
	return true
}

// onlyWith refuses a key that means nothing here.
func (r *reader) onlyWith(path, where string) {
	if r.has(path) {
		r.fault(path, "means nothing here; it belongs to %s, leave it out", where)
	}
}

// checkReferences looks up every value that names a material or a joint.
func (r *reader) checkReferences(fields []field, m map[string]any, path string) {
	for _, f := range fields {
		v, at := m[f.key], join(path, f.key)
		switch f.form {
		case formTable:
			if sub, ok := v.(map[string]any); ok {
				r.checkReferences(f.fields, sub, at)
			}
		case formNamed:
			if subs, ok := v.(map[string]any); ok {
				for _, name := range sortedKeys(subs) {
					if sub, ok := subs[name].(map[string]any); ok {
						r.checkReferences(f.fields, sub, join(at, name))
					}
				}
			}
		case formTables:
			list, _ := tableList(v)
			for i, sub := range list {
				r.checkReferences(f.fields, sub, fmt.Sprintf("%s[%d]", at, i))
			}
		case formText:
			if s, ok := v.(string); ok && f.ref != "" {
				r.refer(f, s, at)
			}
		}
	}
}

// refer checks that a name points somewhere.
func (r *reader) refer(f field, name, path string) {
	if f.refNone && name == "none" || strings.TrimSpace(name) == "" {
		return
	}
	table, _ := r.t.raw[f.ref].(map[string]any)
	if _, ok := table[name]; ok {
		return
	}
	names := sortedKeys(table)
	switch near := nearWord(name, names); {
	case near != "":
		r.fault(path, "no [%s.%s] is written; did you mean %q?", f.ref, name, near)
	case name == "none":
		r.fault(path, "\"none\" is not allowed here; write the name of a [%s.NAME]", f.ref)
	case len(names) == 0:
		r.fault(path, "no [%s.%s] is written; write that table", f.ref, name)
	default:
		r.fault(path, "no [%s.%s] is written; write that table, or one of %s", f.ref, name, quotedList(names))
	}
}
