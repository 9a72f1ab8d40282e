package formula

import (
	"sort"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// A token is a piece of a formula.
type token struct {
	kind kind
	text string
	gap  bool // a blank stands before it
}

type kind int

const (
	end    kind = iota
	number      // 0.6
	symbol      // N_x,p
	name        // of a function
	sign        // + − ± / ^ · and brackets
	raised      // a whole number in raised digits, as plain ones
	word        // not of a formula
)

var functions = []string{"max", "min", "sin", "cos", "tan", "exp", "ln", "sqrt"}

// lex parts a text into tokens. Known are the symbols that may look like something
// else.
func lex(text string, known []string) []token {
	odd := oddSymbols(known)
	var out []token
	for i := 0; i < len(text); {
		r, size := utf8.DecodeRuneInString(text[i:])
		if r == ' ' || r == '\u00A0' {
			i += size
			continue
		}
		t := next(text[i:], odd, known)
		t.gap = i > 0 && text[i-1] == ' '
		length := len(t.text)
		switch t.kind {
		case raised:
			t.text = plainDigits(t.text)
		case sign:
			if t.text == "-" {
				t.text = "−"
			}
		}
		out = append(out, t)
		i += length
	}
	return out
}

// oddSymbols returns the known symbols that hold a blank or a stroke, the longest
// first.
func oddSymbols(known []string) (odd []string) {
	for _, k := range known {
		if strings.ContainsAny(k, "/ ") {
			odd = append(odd, k)
		}
	}
	sort.SliceStable(odd, func(i, j int) bool { return len(odd[i]) > len(odd[j]) })
	return odd
}

// next returns the token at the start of a text, as it is written.
func next(text string, odd, known []string) token {
	for _, k := range odd {
		if strings.HasPrefix(text, k) && !continues(text[len(k):]) {
			return token{kind: symbol, text: k}
		}
	}
	r, size := utf8.DecodeRuneInString(text)
	switch {
	case r >= '0' && r <= '9':
		return token{kind: number, text: text[:numberLength(text)]}
	case strings.ContainsRune(raisedDigits, r):
		n := 0
		for n < len(text) {
			d, s := utf8.DecodeRuneInString(text[n:])
			if !strings.ContainsRune(raisedDigits, d) {
				break
			}
			n += s
		}
		return token{kind: raised, text: text[:n]}
	case r == '√':
		return token{kind: name, text: "√"}
	case unicode.IsLetter(r):
		return letters(text, known)
	case strings.ContainsRune("+−-±·×/^()[]|,=≤≥<>", r):
		return token{kind: sign, text: text[:size]}
	}
	return token{kind: word, text: text[:size]}
}

// continues reports whether a text goes on with the symbol before it.
func continues(text string) bool {
	r, _ := utf8.DecodeRuneInString(text)
	return text != "" && (unicode.IsLetter(r) || unicode.IsDigit(r) || r == '_' || r == '′')
}

func numberLength(text string) int {
	n := 0
	for n < len(text) && (text[n] >= '0' && text[n] <= '9' || text[n] == '.' && n+1 < len(text) && text[n+1] >= '0' && text[n+1] <= '9') {
		n++
	}
	return n
}

// letters returns the symbol, function or word at the start of a text.
func letters(text string, known []string) token {
	const circle = "π"
	if after, ok := strings.CutPrefix(text, circle); ok && !strings.HasPrefix(after, "_") {
		return token{kind: symbol, text: circle} // πR is a product
	}
	n := 0
	for n < len(text) {
		r, size := utf8.DecodeRuneInString(text[n:])
		after, _ := utf8.DecodeRuneInString(text[n+size:])
		switch {
		case unicode.IsLetter(r), unicode.IsDigit(r), r == '′' || r == '_':
		case strings.ContainsRune(raisedDigits, r):
			return named(text[:n], known)
		case r == '.' && n > 0 && unicode.IsDigit(rune(text[n-1])) && unicode.IsDigit(after): // R_p0.2
		case r == ',' && strings.Contains(text[:n], "_") && unicode.IsLetter(after): // N_x,p
		case r == '{' && n > 0 && text[n-1] == '_' && strings.Contains(text[n:], "}"):
			size = strings.IndexByte(text[n:], '}') + 1
		default:
			return named(text[:n], known)
		}
		n += size
	}
	return named(text, known)
}

// named tells symbols from functions and words.
func named(text string, known []string) token {
	for _, k := range known {
		if k == text {
			return token{kind: symbol, text: text}
		}
	}
	for _, f := range functions {
		if f == text {
			return token{kind: name, text: text}
		}
	}
	if isWord(text) {
		return token{kind: word, text: text}
	}
	return token{kind: symbol, text: text}
}

// isWord reports whether letters are rather a word than a symbol: two small
// letters or more, or five letters of any size before an index.
func isWord(text string) bool {
	base, _, indexed := strings.Cut(text, "_")
	n, small := 0, true
	for _, r := range base {
		n++
		small = small && r >= 'a' && r <= 'z'
	}
	return n >= 5 || !indexed && small && n >= 2
}

func plainDigits(text string) string {
	var b strings.Builder
	for _, r := range text {
		for i, d := range []rune(raisedDigits) {
			if r == d {
				b.WriteString(strconv.Itoa(i))
			}
		}
	}
	return b.String()
}
