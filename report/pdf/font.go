package pdf

import (
	"math"
	"strings"
	"sync"
	"sync/atomic"
	"unicode"
	"unicode/utf8"

	"codeberg.org/go-fonts/dejavu/dejavusanscondensed"
	"codeberg.org/go-fonts/dejavu/dejavusanscondensedbold"
	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// family is the name under which both faces are embedded.
const family = "sheet"

// coreFamily is the font of a document of which only the pages are counted: one that
// the format knows, and that need not be read.
const coreFamily = "helvetica"

// replacement stands for a letter that cannot be printed.
const replacement = '\uFFFD'

// tie is a space at which no line breaks; it is printed as a plain space.
const tie = '\u00A0'

// faces are the embedded fonts by style: "" regular, "B" bold.
var faces = map[string][]byte{"": dejavusanscondensed.TTF, "B": dejavusanscondensedbold.TTF}

// letters are what is asked of one face, looked up once for all documents: of every
// letter its width in thousandths of the size of type, less than nothing for one that
// the face lacks; each is kept with one added, so that 0 is one not yet looked up.
type letters struct {
	font  *sfnt.Font
	known [1 << 16]atomic.Int32
}

// faceLetters returns the letters of both faces, regular and bold.
var faceLetters = sync.OnceValues(func() (*[2]letters, error) {
	var both [2]letters
	var err error
	for i, style := range []string{"", "B"} {
		if both[i].font, err = sfnt.Parse(faces[style]); err != nil {
			return nil, err
		}
	}
	return &both, nil
})

// lacking is the width of a letter that a face does not hold.
const lacking = -2

// width returns the width of a letter [1/1000 of the size of type], rounded as it is
// written into the file; less than nothing where the face lacks it.
func (l *letters) width(r rune) int {
	if r < 0 || r >= 1<<16 {
		return lacking
	}
	if w := l.known[r].Load(); w != 0 {
		return int(w) - 1
	}
	w := l.lookUp(r)
	l.known[r].Store(int32(w) + 1)
	return w
}

func (l *letters) lookUp(r rune) int {
	var buffer sfnt.Buffer
	i, err := l.font.GlyphIndex(&buffer, r)
	if err != nil || i == 0 {
		return lacking
	}
	units := l.font.UnitsPerEm()
	advance, err := l.font.GlyphAdvance(&buffer, i, fixed.I(int(units)), font.HintingNone)
	if err != nil {
		return lacking
	}
	return int(math.Round(1000 / float64(units) * float64(advance) / 64))
}

// plainLetter returns what is printed for a letter, and whether it can be.
func plainLetter(both *[2]letters, r rune) (rune, bool) {
	switch {
	case ' ' <= r && r <= '~':
		return r, true
	case unicode.IsSpace(r), unicode.IsControl(r):
		return ' ', true
	case both[0].width(r) < 0 || both[1].width(r) < 0:
		return replacement, false
	}
	return r, true
}

// printable returns text with every letter that cannot be printed replaced,
// and the letters that were.
func printable(text string) (string, []rune, error) {
	both, err := faceLetters()
	if err != nil {
		return "", nil, err
	}
	if ready(both, text) {
		return text, nil, nil
	}
	var missing []rune
	clean := strings.Map(func(r rune) rune {
		out, ok := plainLetter(both, r)
		if !ok {
			missing = append(missing, r)
		}
		return out
	}, strings.ToValidUTF8(text, string(replacement)))
	return clean, missing, nil
}

// ready reports whether text is printed as it stands.
func ready(both *[2]letters, text string) bool {
	for _, r := range text {
		if r == utf8.RuneError {
			return false // also of letters that are none
		}
		if out, ok := plainLetter(both, r); !ok || out != r {
			return false
		}
	}
	return true
}
