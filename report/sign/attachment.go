package sign

import (
	"bytes"
	"compress/zlib"
	"errors"
	"fmt"
	"io"
	"regexp"
	"strconv"
	"strings"
)

// An Attachment is a file embedded in the sheet.
type Attachment struct {
	Name string
	Data []byte
}

// mostAttached is how large all attachments together may be [byte]; it keeps a
// small file from unpacking into a huge one. The log of a test, a reading a second for
// three days, and its record as data are less than that.
const mostAttached = 32 << 20

// mostFiles is how many files may be embedded, each of which is looked up.
const mostFiles = 32

var (
	embeddedNames = regexp.MustCompile(`/EmbeddedFiles << /Names \[([^\]]*)\]`)
	embeddedFile  = regexp.MustCompile(`/EF << /F (\d{1,7}) 0 R >>`)
	streamLength  = regexp.MustCompile(`/Length (\d{1,10})\b`)
)

// attachments returns the embedded files in the order of the name tree,
// ISO 32000-1, 7.11.4.
func (d *document) attachments() ([]Attachment, error) {
	catalog, _, err := d.dict(d.root)
	if err != nil {
		return nil, err
	}
	names := embeddedNames.FindSubmatch(catalog)
	if names == nil {
		return nil, nil
	}
	refs := reference.FindAllSubmatch(names[1], mostFiles+1)
	if len(refs) > mostFiles {
		return nil, fmt.Errorf("more than %d files are embedded", mostFiles)
	}
	var all []Attachment
	room := int64(mostAttached)
	for _, ref := range refs {
		n, _ := strconv.Atoi(string(ref[1]))
		a, err := d.attachment(n, room)
		if err != nil {
			return nil, fmt.Errorf("attachment: %w", err)
		}
		room -= int64(len(a.Data))
		all = append(all, a)
	}
	return all, nil
}

// attachment reads one file specification and its embedded file.
func (d *document) attachment(n int, room int64) (a Attachment, err error) {
	spec, _, err := d.dict(n)
	if err != nil {
		return a, err
	}
	if _, after, ok := bytes.Cut(spec, []byte("/UF (")); ok {
		whole := append([]byte("("), after...)
		if end := stringEnd(whole); end > 0 {
			a.Name = literalText(whole[1 : end-1])
		}
	}
	file := embeddedFile.FindSubmatch(spec)
	if a.Name == "" || file == nil {
		return a, fmt.Errorf("object %d names no file", n)
	}
	n, _ = strconv.Atoi(string(file[1]))
	a.Data, err = d.stream(n, room)
	return a, err
}

// stream returns the unpacked content of a compressed stream of at most room
// bytes.
func (d *document) stream(n int, room int64) ([]byte, error) {
	dict, end, err := d.dict(n)
	if err != nil {
		return nil, err
	}
	m := streamLength.FindSubmatch(dict)
	packed, ok := bytes.CutPrefix(bytes.TrimLeft(d.data[end:], "\n"), []byte("stream\n"))
	if m == nil || !ok || !bytes.Contains(dict, []byte("/Filter /FlateDecode")) {
		return nil, fmt.Errorf("object %d is not a compressed stream", n)
	}
	length, _ := strconv.Atoi(string(m[1]))
	if length > len(packed) {
		return nil, fmt.Errorf("object %d is cut off", n)
	}
	z, err := zlib.NewReader(bytes.NewReader(packed[:length]))
	if err != nil {
		return nil, err
	}
	data, err := io.ReadAll(io.LimitReader(z, room+1))
	if err == nil && int64(len(data)) > room {
		err = errors.New("the attachments are too large")
	}
	return data, err
}

// literalText decodes the inside of a literal string, UTF-16BE with its mark
// or else Latin, ISO 32000-1, 7.9.2.2.
func literalText(b []byte) string {
	raw := unescaped(b)
	if text, ok := bytes.CutPrefix(raw, []byte("\xFE\xFF")); ok {
		return utf16Text(fmt.Appendf(nil, "%x", text))
	}
	var s strings.Builder
	for _, c := range raw {
		s.WriteRune(rune(c))
	}
	return s.String()
}

// unescaped returns the bytes of the inside of a literal string, ISO 32000-1,
// 7.3.4.2, as far as the writer of a sheet escapes.
func unescaped(b []byte) (raw []byte) {
	for i := 0; i < len(b); i++ {
		if b[i] != '\\' || i+1 == len(b) {
			raw = append(raw, b[i])
			continue
		}
		i++
		switch b[i] {
		case 'n':
			raw = append(raw, '\n')
		case 'r':
			raw = append(raw, '\r')
		case 't':
			raw = append(raw, '\t')
		default:
			raw = append(raw, b[i])
		}
	}
	return raw
}
