package sign

import (
	"bytes"
	"errors"
	"fmt"
	"regexp"
	"strconv"
)

// A document is a PDF file read as far as a signature needs it: where its
// objects are. It reads the classic cross-reference table only.
type document struct {
	data    []byte
	start   int         // offset of the last cross-reference section
	offsets map[int]int // object number -> offset of its last version
	size    int         // one more than the highest object number
	root    int         // object number of the catalog
	info    int         // object number of the information dictionary, or 0
	updated bool        // the file has had an incremental update
}

var (
	ending      = regexp.MustCompile(`startxref\n(\d{1,10})\n%%EOF\n$`)
	trailerSize = regexp.MustCompile(`/Size (\d{1,7})\b`)
	trailerRoot = regexp.MustCompile(`/Root (\d{1,7}) 0 R`)
	trailerInfo = regexp.MustCompile(`/Info (\d{1,7}) 0 R`)
	trailerPrev = regexp.MustCompile(`/Prev (\d{1,10})\b`)
	reference   = regexp.MustCompile(`(\d{1,7}) 0 R`)
	kids        = regexp.MustCompile(`/Kids \[([^\]]*)\]`)
	pagesRef    = regexp.MustCompile(`/Pages (\d{1,7}) 0 R`)
	subsection  = regexp.MustCompile(`^(\d{1,7}) (\d{1,7})\n`)
)

// mostPages is how many pages a file may have, each of which is looked up.
const mostPages = 5000

// tail is how far from its end the end of a file is looked for [byte].
const tail = 64

// read finds the objects of a PDF file. A byte after its end is an error.
func read(data []byte) (*document, error) {
	if !bytes.HasPrefix(data, []byte("%PDF-1.")) {
		return nil, ErrNoPDF
	}
	m := ending.FindSubmatch(data[max(0, len(data)-tail):])
	if m == nil {
		return nil, errors.New("the file does not end as a PDF file must: it is cut off, or something was added after its end")
	}
	d := &document{data: data, offsets: map[int]int{}}
	d.start, _ = strconv.Atoi(string(m[1]))
	for at, sections := d.start, 1; ; sections++ {
		if sections > mostSignatures+1 { // a bound on the work a file can ask for
			return nil, fmt.Errorf("the file has had more than %d updates", mostSignatures)
		}
		trailer, err := d.section(at)
		if err != nil {
			return nil, err
		}
		if sections == 1 {
			if err := d.readTrailer(trailer); err != nil {
				return nil, err
			}
		}
		m := trailerPrev.FindSubmatch(trailer)
		if m == nil {
			return d, nil
		}
		d.updated = true
		prev, _ := strconv.Atoi(string(m[1]))
		if prev >= at { // updates only ever look back, which also ends the loop
			return nil, errors.New("the cross-reference sections are out of order")
		}
		at = prev
	}
}

// readTrailer takes the catalog and the size from the last trailer.
func (d *document) readTrailer(trailer []byte) error {
	size, root := trailerSize.FindSubmatch(trailer), trailerRoot.FindSubmatch(trailer)
	if size == nil || root == nil {
		return errors.New("the trailer has no size or no root")
	}
	if bytes.Contains(trailer, []byte("/Encrypt")) {
		return errors.New("the file is encrypted")
	}
	d.size, _ = strconv.Atoi(string(size[1]))
	d.root, _ = strconv.Atoi(string(root[1]))
	if info := trailerInfo.FindSubmatch(trailer); info != nil {
		d.info, _ = strconv.Atoi(string(info[1]))
	}
	return nil
}

var errTable = errors.New("the cross-reference table cannot be read: another program wrote this file, or it was changed")

// section reads one cross-reference section, newest first, and returns the
// trailer after it.
func (d *document) section(at int) ([]byte, error) {
	if at >= len(d.data) {
		return nil, errTable
	}
	rest, ok := bytes.CutPrefix(d.data[at:], []byte("xref\n"))
	if !ok {
		return nil, errTable
	}
	for {
		m := subsection.FindSubmatch(rest[:min(len(rest), tail)])
		if m == nil {
			break
		}
		first, _ := strconv.Atoi(string(m[1]))
		count, _ := strconv.Atoi(string(m[2]))
		var err error
		if rest, err = d.entries(rest[len(m[0]):], first, count); err != nil {
			return nil, err
		}
	}
	dict, ok := bytes.CutPrefix(rest, []byte("trailer\n"))
	if !ok {
		return nil, errTable
	}
	end, err := dictEnd(dict)
	if err != nil {
		return nil, err
	}
	return dict[:end], nil
}

// entries reads the offsets of count objects and returns what follows. An
// offset that a newer section gave stays.
func (d *document) entries(rest []byte, first, count int) ([]byte, error) {
	const entry = 20 // bytes, ISO 32000-1, 7.5.4
	if count*entry > len(rest) {
		return nil, errTable
	}
	for i := range count {
		line := rest[i*entry : (i+1)*entry]
		offset, err := strconv.Atoi(string(line[:10]))
		if err != nil || offset < 0 {
			return nil, errTable
		}
		if _, known := d.offsets[first+i]; !known && line[17] == 'n' {
			d.offsets[first+i] = offset
		}
	}
	return rest[count*entry:], nil
}

// dict returns the dictionary of an object and the offset behind it.
func (d *document) dict(n int) (text []byte, end int, err error) {
	at, ok := d.offsets[n]
	if !ok || at >= len(d.data) {
		return nil, 0, fmt.Errorf("object %d is missing", n)
	}
	head := fmt.Appendf(nil, "%d 0 obj\n", n)
	if !bytes.HasPrefix(d.data[at:], head) {
		return nil, 0, fmt.Errorf("object %d is not where the cross-reference table says", n)
	}
	at += len(head)
	length, err := dictEnd(d.data[at:])
	if err != nil {
		return nil, 0, fmt.Errorf("object %d: %w", n, err)
	}
	return d.data[at : at+length], at + length, nil
}

// dictEnd returns the length of the dictionary at the start of b. Brackets
// within strings do not count.
func dictEnd(b []byte) (int, error) {
	depth := 0
	for i := 0; i < len(b); i++ {
		switch {
		case b[i] == '(':
			n := stringEnd(b[i:])
			if n == 0 {
				return 0, errors.New("a string does not end")
			}
			i += n - 1
		case bytes.HasPrefix(b[i:], []byte("<<")):
			depth++
			i++
		case bytes.HasPrefix(b[i:], []byte(">>")):
			depth--
			i++
			if depth == 0 {
				return i + 1, nil
			}
		case depth == 0:
			return 0, errors.New("a dictionary is missing")
		}
	}
	return 0, errors.New("a dictionary does not end")
}

// stringEnd returns the length of the literal string at the start of b, or 0.
func stringEnd(b []byte) int {
	depth := 0
	for i := 0; i < len(b); i++ {
		switch b[i] {
		case '\\':
			i++
		case '(':
			depth++
		case ')':
			if depth--; depth == 0 {
				return i + 1
			}
		}
	}
	return 0
}

// pages returns the object numbers of the pages; the page tree is flat.
func (d *document) pages() ([]int, error) {
	catalog, _, err := d.dict(d.root)
	if err != nil {
		return nil, err
	}
	m := pagesRef.FindSubmatch(catalog)
	if m == nil {
		return nil, errors.New("the catalog names no pages")
	}
	n, _ := strconv.Atoi(string(m[1]))
	tree, _, err := d.dict(n)
	if err != nil {
		return nil, err
	}
	m = kids.FindSubmatch(tree)
	if m == nil {
		return nil, errors.New("the page tree has no pages")
	}
	var pages []int
	for _, r := range reference.FindAllSubmatch(m[1], -1) {
		n, _ := strconv.Atoi(string(r[1]))
		pages = append(pages, n)
	}
	if len(pages) == 0 || len(pages) > mostPages {
		return nil, fmt.Errorf("the page tree has %d pages, must be from 1 to %d", len(pages), mostPages)
	}
	return pages, nil
}
