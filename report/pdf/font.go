package pdf

import (
	"strings"
	"sync"
	"unicode"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font/sfnt"
)

// family is the name under which both faces are embedded.
const family = "sheet"

// replacement stands for a letter that cannot be printed.
const replacement = '\uFFFD'

// tie is a space at which no line breaks; it is printed as a plain space.
const tie = '\u00A0'

// faces are the embedded fonts by style: "" regular, "B" bold.
var faces = map[string][]byte{"": dejavusanscondensed.TTF, "B": dejavusanscondensedbold.TTF}

// glyphs answers whether both faces hold a letter. Parsing reads the fonts
// only, so one answer serves every document.
var glyphs = sync.OnceValues(func() (*[1 << 16]bool, error) {
	var held [1 << 16]bool
	var buffer sfnt.Buffer
	for _, style := range []string{"", "B"} {
		f, err := sfnt.Parse(faces[style])
		if err != nil {
			return nil, err
		}
		for r := rune(' '); r <= 0xFFFF; r++ {
			i, err := f.GlyphIndex(&buffer, r)
			if err != nil {
				return nil, err
			}
			has := i != 0
			if style == "B" {
				has = has && held[r]
			}
			held[r] = has
		}
	}
	return &held, nil
})

// printable returns text with every letter that cannot be printed replaced,
// and the letters that were.
func printable(text string) (string, []rune, error) {
	held, err := glyphs()
	if err != nil {
		return "", nil, err
	}
	var missing []rune
	clean := strings.Map(func(r rune) rune {
		switch {
		case unicode.IsSpace(r), unicode.IsControl(r):
			return ' '
		case r >= 1<<16 || !held[r]:
			missing = append(missing, r)
			return replacement
		}
		return r
	}, strings.ToValidUTF8(text, string(replacement)))
	return clean, missing, nil
}
