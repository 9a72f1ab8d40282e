package sign

import (
	"fmt"
	"strings"
)

// A line of an appearance: its text, the font that is one of the two, and the
// size [pt].
type line struct {
	text, font string
	size       float64
}

// How wide a letter of the two fonts is taken to be in its size [-]: more than
// the mean, so that what is measured by it fits.
var breadth = map[string]float64{"/F1": 0.56, "/F2": 0.66}

// appearance returns the object that a visible widget shows: who, as what,
// when, why, and by which certificate, on white over what the page says there.
func appearance(f field) string {
	var x [4]float64
	for i, s := range f.rect {
		fmt.Sscan(s, &x[i])
	}
	width, height := x[2]-x[0], x[3]-x[1]
	const inset, air = 6, 1.3 // from the left edge [pt]; line distance over size [-]
	var b strings.Builder
	fmt.Fprintf(&b, "q 1 g 0 0 %.2f %.2f re f 0 G 0.5 w 0.25 0.25 %.2f %.2f re S 0 g BT %d %.2f Td",
		width, height, width-0.5, height-0.5, inset, height-2)
	for _, l := range f.lines(width - 2*inset) {
		fmt.Fprintf(&b, " %s %.1f Tf 0 %.2f Td %s Tj", l.font, l.size, -air*l.size, latinString(l.text))
	}
	b.WriteString(" ET Q")
	const font = "<< /Type /Font /Subtype /Type1 /BaseFont /%s /Encoding /WinAnsiEncoding >>"
	return fmt.Sprintf("<< /Type /XObject /Subtype /Form /BBox [0 0 %.2f %.2f] /Length %d\n"+
		"/Resources << /Font << /F1 %s /F2 %s >> >> >>\nstream\n%s\nendstream",
		width, height, b.Len(), fmt.Sprintf(font, "Helvetica"), fmt.Sprintf(font, "Helvetica-Bold"), b.String())
}

// lines returns what is drawn over a width [pt]. What does not fit is cut off;
// the whole of it stands in the signature dictionary.
func (f field) lines(width float64) []line {
	const name, text, print = 12, 8.5, 7.5 // sizes [pt]
	lines := []line{
		{fit(f.name, "/F2", name, width, 1)[0], "/F2", name},
		{"signed as " + f.role + " on " + f.when.UTC().Format("2006-01-02 15:04:05 UTC") + " by the signer's clock", "/F1", text},
	}
	if f.reason != "" {
		for _, row := range fit(f.reason, "/F1", text, width, 2) {
			lines = append(lines, line{row, "/F1", text})
		}
	}
	half := min(48, len(f.fingerprint)) // letters of a fingerprint up to its middle, colon included
	return append(lines, line{"digital signature; SHA-256 fingerprint of its certificate:", "/F1", print},
		line{f.fingerprint[:half], "/F1", print}, line{f.fingerprint[half:], "/F1", print})
}

// fit breaks a text into at most so many rows of a width [pt], between words
// where there are any, and ends it with an ellipsis where it is longer.
func fit(text, font string, size, width float64, rows int) (out []string) {
	most := max(2, int(width/(breadth[font]*size)))
	for rest := []rune(text); ; {
		if len(rest) <= most {
			return append(out, string(rest))
		}
		if len(out) == rows-1 {
			return append(out, string(rest[:most-1])+"…")
		}
		cut := most
		for cut > 1 && rest[cut] != ' ' {
			cut--
		}
		if cut == 1 {
			cut = most
		}
		out = append(out, string(rest[:cut]))
		rest = []rune(strings.TrimLeft(string(rest[cut:]), " "))
	}
}

// upperLatin are the letters 0x80 to 0x9F of WinAnsiEncoding, ISO 32000-1,
// annex D.2; a space where it has none.
var upperLatin = []rune("€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ")

// plainLatin are the letters U+0100 to U+017F without their marks.
const plainLatin = "AaAaAaCcCcCcCcDdDdEeEeEeEeEeGgGgGgGgHhHhIiIiIiIiIiIiJjKkkLlLlLlLlLlNnNnNnnNnOoOoOoOoRrRrRrSsSsSsSsTtTtTtUuUuUuUuUuUuWwYyYZzZzZzs"

// latin returns the code of a letter in WinAnsiEncoding, or, not ok, what is
// drawn in its place: the letter without its mark, or "?".
func latin(r rune) (code byte, ok bool) {
	switch {
	case r >= 0x20 && r <= 0x7E, r >= 0xA0 && r <= 0xFF:
		return byte(r), true
	}
	for i, u := range upperLatin {
		if u == r {
			return byte(0x80 + i), true
		}
	}
	if at := int(r) - 0x100; at >= 0 && at < len(plainLatin) {
		return plainLatin[at], false
	}
	return '?', false
}

// latinString is a string in WinAnsiEncoding. A letter that it lacks is drawn
// as the nearest it has; the signature dictionary keeps it.
func latinString(s string) string {
	var b strings.Builder
	for _, r := range s {
		code, _ := latin(r)
		fmt.Fprintf(&b, "%02X", code)
	}
	return "<" + b.String() + ">"
}

// Drawable reports whether a visible signature can show every letter of a
// text. Others are drawn without their marks or as "?".
func Drawable(s string) bool {
	for _, r := range s {
		if _, ok := latin(r); !ok {
			return false
		}
	}
	return true
}
