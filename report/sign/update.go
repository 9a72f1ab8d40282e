package sign

import (
	"bytes"
	"encoding/hex"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf16"
)

// A field is everything of an update that its writer chooses; the update
// follows from it and from the file before it.
type field struct {
	role, name, reason string
	fingerprint        string    // of the certificate, as it is drawn
	when               time.Time // whole seconds
	page               int       // index of the page that carries the widget; -1 is the last
	rect               [4]string // corners of the widget [pt], two decimals; all zero when invisible
	hole               int       // room for the container [byte]
}

// invisible is the rectangle of a widget that is not drawn.
var invisible = [4]string{"0", "0", "0", "0"}

// lastPage is the index that means the last page, whichever it is.
const lastPage = -1

// dateForm is a date in UTC, ISO 32000-1, 7.9.4.
const dateForm = "D:20060102150405+00'00'"

// A revision is a file with one more signature field, its hole still empty.
type revision struct {
	data       []byte
	open, shut int // offsets of "<" and behind ">" of the hole
	pages      int // how many the file has
}

// covered returns the bytes the signature covers.
func (r *revision) covered() []byte {
	return slices.Concat(r.data[:r.open], r.data[r.shut:])
}

// fill writes the container into the hole, the rest of which stays zero.
func (r *revision) fill(der []byte) error {
	if 2*len(der) > r.shut-r.open-2 {
		return fmt.Errorf("the signature of %d bytes does not fit into its place", len(der))
	}
	hex.Encode(r.data[r.open+1:], der)
	return nil
}

// update appends one signature field to a file.
func update(base []byte, f field) (*revision, error) {
	d, err := read(base)
	if err != nil {
		return nil, err
	}
	pages, err := d.pages()
	if err != nil {
		return nil, err
	}
	if f.page == lastPage {
		f.page = len(pages) - 1
	}
	if f.page < 0 || f.page >= len(pages) {
		return nil, fmt.Errorf("the sheet has no page %d", f.page+1)
	}
	catalog, _, err := d.dict(d.root)
	if err != nil {
		return nil, err
	}
	page, _, err := d.dict(pages[f.page])
	if err != nil {
		return nil, err
	}
	signature, widget, look := d.size, d.size+1, d.size+2
	w := &writer{buf: bytes.NewBuffer(bytes.Clone(base)), at: map[int]int{}}
	open, shut, fix := w.signature(signature, f)
	shown := ""
	if f.rect != invisible {
		shown = fmt.Sprintf(" /AP << /N %d 0 R >>", look)
		w.object(look, appearance(f))
	}
	w.object(widget, fmt.Sprintf("<< /Type /Annot /Subtype /Widget /FT /Sig /T (%s) /V %d 0 R /F 132 /Rect [%s] /P %d 0 R%s >>",
		f.role, signature, strings.Join(f.rect[:], " "), pages[f.page], shown))
	w.object(pages[f.page], insertInto(string(page), "/Annots [", "]", widget))
	w.object(d.root, withField(string(catalog), widget))
	w.finish(d)
	out := w.buf.Bytes()
	copy(out[fix:], fmt.Sprintf("%10d %10d %10d", open, shut, len(out)-shut))
	return &revision{data: out, open: open, shut: shut, pages: len(pages)}, nil
}

// A writer appends objects to a file and keeps their offsets.
type writer struct {
	buf *bytes.Buffer
	at  map[int]int
}

func (w *writer) object(n int, body string) {
	w.at[n] = w.buf.Len()
	fmt.Fprintf(w.buf, "%d 0 obj\n%s\nendobj\n", n, body)
}

// signature writes the signature dictionary and returns where its hole begins
// and ends and where the three numbers of its byte range are to be put.
func (w *writer) signature(n int, f field) (open, shut, fix int) {
	w.at[n] = w.buf.Len()
	fmt.Fprintf(w.buf, "%d 0 obj\n<< /Type /Sig /Filter /Adobe.PPKLite /SubFilter /adbe.pkcs7.detached\n/ByteRange [0 ", n)
	fix = w.buf.Len()
	fmt.Fprintf(w.buf, "%32s]\n/Contents ", "")
	open = w.buf.Len()
	w.buf.WriteString("<" + strings.Repeat("0", 2*f.hole) + ">")
	shut = w.buf.Len()
	fmt.Fprintf(w.buf, "\n/Name %s\n/Reason %s\n/ContactInfo (certificate SHA-256 %s)\n/M (%s) >>\nendobj\n",
		textString(f.name), textString(f.reason), f.fingerprint, f.when.UTC().Format(dateForm))
	return open, shut, fix
}

// finish writes the cross-reference section and the trailer.
func (w *writer) finish(d *document) {
	start := w.buf.Len()
	var numbers []int
	for n := range w.at {
		numbers = append(numbers, n)
	}
	slices.Sort(numbers)
	w.buf.WriteString("xref\n")
	for _, n := range numbers {
		fmt.Fprintf(w.buf, "%d 1\n%010d 00000 n \n", n, w.at[n])
	}
	info := ""
	if d.info > 0 {
		info = fmt.Sprintf("\n/Info %d 0 R", d.info)
	}
	fmt.Fprintf(w.buf, "trailer\n<<\n/Size %d\n/Root %d 0 R%s\n/Prev %d\n>>\nstartxref\n%d\n%%%%EOF\n",
		max(d.size, numbers[len(numbers)-1]+1), d.root, info, d.start, start)
}

// insertInto puts a reference first into the array that a key opens, or adds
// the array to the dictionary.
func insertInto(dict, key, end string, n int) string {
	ref := fmt.Sprintf("%d 0 R", n)
	if before, after, ok := strings.Cut(dict, key); ok {
		return before + key + ref + " " + after
	}
	return strings.TrimSuffix(dict, ">>") + "\n" + key + ref + end + ">>"
}

// withField adds a signature field to the catalog's form.
func withField(catalog string, n int) string {
	return insertInto(catalog, "/AcroForm << /SigFlags 3 /Fields [", "] >>\n", n)
}

// textString is a text string, ISO 32000-1, 7.9.2.2: UTF-16BE with its mark,
// in hexadecimal so that no byte needs an escape.
func textString(s string) string {
	var b strings.Builder
	b.WriteString("<FEFF")
	for _, u := range utf16.Encode([]rune(s)) {
		fmt.Fprintf(&b, "%04X", u)
	}
	return b.String() + ">"
}

// errNoUpdate says that the last update of a file is not a signature.
var errNoUpdate = errors.New("something other than a signature was added to the file")
