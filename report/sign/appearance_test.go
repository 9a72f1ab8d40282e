package sign

import (
	"crypto/elliptic"
	"strings"
	"testing"
	"time"
)

func TestFit(t *testing.T) {
	for _, row := range []struct {
		text string
		rows int
		want string
	}{
		{"one", 1, "one"}, {"", 1, ""},
		{"one two three four", 2, "one two|three four"},
		{"one two three four", 1, "one two t…"},
		{"onetwothreefour", 2, "onetwothre|efour"},
		{"onetwothreefour onetwothreefour", 2, "onetwothre|efour one…"},
		{"üüüüüüüüüüü", 1, "üüüüüüüüü…"},
	} {
		got := strings.Join(fit(row.text, "/F1", 1, 10*breadth["/F1"]+1e-9, row.rows), "|")
		if got != row.want {
			t.Errorf("%q in %d rows: %q, want %q", row.text, row.rows, got, row.want)
		}
	}
}

// TestLatinLetters holds the encoding of names against ISO 32000-1, annex D.2.
func TestLatinLetters(t *testing.T) {
	for text, want := range map[string]string{
		"A": "<41>", "é": "<E9>", "Ž": "<8E>", "Š": "<8A>", "œ": "<9C>", "€": "<80>", "’": "<92>", "–": "<96>", "…": "<85>", "Ÿ": "<9F>", "ž": "<9E>",
		"λ": "<3F>", "🙂": "<3F>", "\n": "<3F>", "\x7f": "<3F>", "\u0085": "<3F>",
	} {
		if got := latinString(text); got != want {
			t.Errorf("%q: %s, want %s", text, got, want)
		}
		if can := Drawable(text); can != (want != "<3F>") {
			t.Errorf("%q: drawable %v", text, can)
		}
	}
}

// TestPlainLetters holds the table of letters without their marks against names
// of many languages.
func TestPlainLetters(t *testing.T) {
	for text, want := range map[string]string{
		"Żółta Gęś-Ćwiklińska": "Zólta Ges-Cwiklinska", "Dvořák Ěščřžů": "Dvorák Ešcržu", "Őrült Űr": "Orült Ur", "Şahin Ğıİ": "Sahin GiI",
		"Āēīū Ģķļņ": "Aeiu Gkln", "Đorđe": "Dorde", "ĦħŦŧ ŵŷ ſ": "HhTt wy s",
	} {
		if got := latinString(text); got != latinString(want) || Drawable(text) {
			t.Errorf("%q is drawn as %s, want %q", text, got, want)
		}
	}
	if len(plainLatin) != 0x180-0x100 {
		t.Errorf("%d letters", len(plainLatin))
	}
}

// TestAppearanceCovers has the frame painted white before anything is drawn on
// it, because the page says there that nobody has signed.
func TestAppearanceCovers(t *testing.T) {
	s := signer(t, "A. Name", ecKey(t, elliptic.P256()))
	f, err := Options{
		Role: RoleChecked, Reason: strings.Repeat("why ", 40), When: time.Now(), Box: &Box{X: 10, Y: 20, Width: 340, Height: 85},
	}.field(s)
	if err != nil {
		t.Fatal(err)
	}
	f.when = time.Date(2026, 11, 25, 9, 8, 7, 0, time.FixedZone("", 3600))
	look := appearance(f)
	if !strings.Contains(look, "stream\nq 1 g 0 0 340.00 85.00 re f ") {
		t.Errorf("the frame is not painted over:\n%s", look)
	}
	for _, want := range []string{"A. Name", "signed as checked on 2026-11-25 08:08:07 UTC by the signer's clock", f.fingerprint[:48], f.fingerprint[48:]} {
		if !strings.Contains(look, latinString(want)) {
			t.Errorf("%q is not drawn", want)
		}
	}
	if n := strings.Count(look, latinString("why")[1:7]); n < 20 {
		t.Errorf("the reason is drawn with %d of its words", n)
	}
	at := 85.0 - 2
	for _, l := range f.lines(328) {
		if at -= 1.3 * l.size; at < 0.2*l.size {
			t.Errorf("%q is drawn below the frame", l.text)
		}
		if w := float64(len([]rune(l.text))) * breadth[l.font] * l.size; w > 328 {
			t.Errorf("%q is %g pt wide", l.text, w)
		}
	}
}
