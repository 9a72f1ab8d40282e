package assess

import (
	"sort"
	"strings"
)

// An Explanation says what a check asks for, for one who has just read its line.
// Formulas and sources of one case stand on the sheet; here is what holds always.
type Explanation struct {
	ID      string   // with X for the end, N for a port's name, NAME for a joint's
	Asks    string   // the question, in one sentence
	Formula string   // as a reader would write it on paper
	Source  string   // document and how it came to hand
	Limits  string   // where the check ends, and what it does not see
	Change  []string // what to change when it fails, the usual first
}

// Explanations returns every check that this program knows, by id.
func Explanations() []Explanation {
	out := append([]Explanation(nil), cylinderExplanations...)
	out = append(out, headExplanations...)
	out = append(out, portExplanations...)
	out = append(out, tankExplanations...)
	sort.Slice(out, func(i, j int) bool { return out[i].ID < out[j].ID })
	return out
}

// Explain returns what is said about a check id as it is printed, with or
// without its case, or as it is listed.
func Explain(id string) (Explanation, bool) {
	id, _, _ = strings.Cut(id, "@")
	for _, e := range Explanations() {
		if e.ID == id || matches(e.ID, id) {
			return e, true
		}
	}
	return Explanation{}, false
}

// matches reports whether a printed id is one of a listed kind.
func matches(kind, id string) bool {
	part, what, _ := strings.Cut(kind, "/")
	p, w, ok := strings.Cut(id, "/")
	switch {
	case !ok:
		return false
	case part == "head.X" && (p == "head.aft" || p == "head.forward"), part == "port.N" && strings.HasPrefix(p, "port."):
		return w == what
	case part == p && strings.HasSuffix(what, "-NAME"):
		return strings.HasPrefix(w, strings.TrimSuffix(what, "NAME"))
	}
	return part == p && what == w
}
