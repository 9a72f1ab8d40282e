package pdf

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// A run is a piece of a line: plain, lowered or raised.
type run struct {
	text  string
	shift float64 // of the base line over the type size, down positive [-]
}

// Sizes of lowered and raised letters over the type size [-].
const (
	scaled  = 0.72
	lowered = 0.16
	raised  = -0.32
)

// runs returns a line whole, or split at its indices where they are asked for:
// in formulas and symbols, never in the user's words.
func (p *paper) runs(text string) []run {
	if !p.indices {
		return []run{{text: text}}
	}
	return runs(text)
}

// runs splits text at its indices: what follows "_" is lowered and what
// follows "^" raised, up to the end of the word (a comma between letters belongs
// to it), or within braces. An underscore
// that follows no letter, or that nothing follows, is printed as it is.
func runs(text string) []run {
	var out []run
	plain := 0
	for i := 0; i < len(text); i++ {
		c := text[i]
		if c != '_' && c != '^' || i == 0 || text[i-1] == ' ' {
			continue
		}
		index, length := index(text[i+1:])
		if index == "" {
			continue
		}
		shift := lowered
		if c == '^' {
			shift = raised
		}
		out = append(out, run{text[plain:i], 0}, run{index, shift})
		i += length
		plain = i + 1
	}
	return append(out, run{text[plain:], 0})
}

// index returns the index at the start of text and the bytes it takes up.
func index(text string) (string, int) {
	if strings.HasPrefix(text, "{") {
		if end := strings.IndexByte(text, '}'); end > 1 {
			return text[1:end], end + 1
		}
		return "", 0
	}
	n := 0
	for n < len(text) {
		r, size := utf8.DecodeRuneInString(text[n:])
		next, _ := utf8.DecodeRuneInString(text[n+size:])
		point := r == '.' && n > 0 && unicode.IsDigit(next)
		comma := r == ',' && n > 0 && unicode.IsLetter(next) // x_a,b: a list in text has a blank
		minus := (r == '-' || r == '−') && n == 0 && unicode.IsDigit(next)
		if !unicode.IsLetter(r) && !unicode.IsDigit(r) && !point && !comma && !minus {
			break
		}
		n += size
	}
	return text[:n], n
}

// A span is how wide text is [1/1000 of the size of type]: its plain letters, and
// the raised and lowered ones as if they were plain.
type span struct{ plain, shifted int }

func (e span) add(o span) span { return span{e.plain + o.plain, e.shifted + o.shifted} }

// measure returns the width of a line in the font that is set [mm]. Widths grow
// with the size, so a raised or lowered run needs no change of font, which would
// be written into the page.
func (p *paper) measure(text string) float64 { return p.wide(p.span(text)) }

// wide returns the width of a span in the size that is set [mm].
func (p *paper) wide(e span) float64 {
	_, unit := p.doc.GetFontSize()
	return (float64(e.plain) + scaled*float64(e.shifted)) * unit / 1000
}

// span returns how wide text is in the style that is set.
func (p *paper) span(text string) (e span) {
	if !p.indices {
		return span{plain: p.letters(text)}
	}
	for _, r := range runs(text) {
		if r.shift != 0 {
			e.shifted += p.letters(r.text)
		} else {
			e.plain += p.letters(r.text)
		}
	}
	return e
}

// letters returns the width of letters in the style that is set [1/1000 of the size
// of type].
func (p *paper) letters(text string) (w int) {
	both, err := faceLetters()
	if err != nil {
		p.fail(err)
		return 0
	}
	face := &both[0]
	if p.style == "B" {
		face = &both[1]
	}
	if !utf8.ValidString(text) {
		text = p.clean(text)
	}
	for _, r := range text {
		out, ok := plainLetter(both, r)
		if !ok {
			p.missing = append(p.missing, r)
		}
		w += max(face.width(out), 0)
	}
	return w
}

// put sets one line from x on the base line y [mm]; a dry writing only looks at its
// letters.
func (p *paper) put(x, y float64, text string) {
	if p.dry {
		p.clean(text)
		return
	}
	size, unit := p.doc.GetFontSize()
	set := size
	for _, r := range p.runs(text) {
		if r.text == "" {
			continue
		}
		want := size
		if r.shift != 0 {
			want *= scaled
		}
		if want != set {
			p.doc.SetFontSize(want)
			set = want
		}
		clean := p.clean(r.text)
		p.set(x, y+r.shift*unit, clean)
		x += float64(p.letters(clean)) * unit / size * want / 1000
	}
	if set != size {
		p.doc.SetFontSize(size)
	}
}

// putRight sets one line that ends at x on the base line y [mm].
func (p *paper) putRight(x, y float64, text string) { p.put(x-p.measure(text), y, text) }

// fit shortens text to a width [mm] in the font that is set, with an ellipsis.
func (p *paper) fit(text string, width float64) string {
	if p.measure(text) <= width {
		return text
	}
	letters := []rune(text)
	for len(letters) > 0 && p.measure(string(letters)+"…") > width {
		letters = letters[:len(letters)-1]
	}
	return string(letters) + "…"
}

// wrap breaks text into lines of a width [mm] in the font that is set: at its
// line ends, at spaces, and inside a word only where it is wider than a line.
func (p *paper) wrap(text string, width float64) []string {
	var lines []string
	for _, part := range strings.Split(text, "\n") {
		lines = append(lines, p.wrapLine(part, width)...)
	}
	return lines
}

func (p *paper) wrapLine(text string, width float64) []string {
	var lines []string
	line, had := "", span{}
	blank := p.span(" ")
	words := strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == '\t' })
	// An index in braces may hold blanks: then a line is not the sum of its words.
	whole := p.indices && strings.Contains(text, "{")
	for _, word := range words {
		longer, has := word, p.span(word)
		if line != "" {
			longer, has = line+" "+word, had.add(blank).add(has)
		}
		if whole {
			has = p.span(longer)
		}
		if p.wide(has) <= width {
			line, had = longer, has
			continue
		}
		if line != "" {
			lines = append(lines, line)
		}
		for p.measure(word) > width {
			n := p.most(word, width)
			lines = append(lines, word[:n])
			word = word[n:]
		}
		line, had = word, p.span(word)
	}
	return append(lines, line)
}

// most returns how many bytes of a word fit into a width [mm], at least one
// letter; a path breaks after a slash, dot or comma where there is one.
func (p *paper) most(word string, width float64) int {
	n, good := 0, 0
	for i, r := range word {
		end := i + utf8.RuneLen(r)
		if r == utf8.RuneError {
			_, size := utf8.DecodeRuneInString(word[i:])
			end = i + size
		}
		if n > 0 && p.measure(word[:end]) > width {
			break
		}
		n = end
		if strings.ContainsRune("/,;.@", r) {
			good = end
		}
	}
	if good > n/2 {
		return good
	}
	return n
}
