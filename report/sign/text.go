package sign

import (
	"bytes"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf16"
)

var pageContents = regexp.MustCompile(`/Contents (\d{1,7}) 0 R`)

// mostText is how large the drawing of all pages together may be [byte].
const mostText = 64 << 20

// Text returns what is printed on each page before the first signature: the
// strings in the order in which they are drawn, joined without a space, because
// the writer of a sheet breaks lines and sets runs as it needs.
func (r *Report) Text() ([]string, error) {
	d, err := read(r.Base)
	if err != nil {
		return nil, err
	}
	pages, err := d.pages()
	if err != nil {
		return nil, err
	}
	var all []string
	room := int64(mostText)
	for i, n := range pages {
		page, _, err := d.dict(n)
		if err != nil {
			return nil, err
		}
		m := pageContents.FindSubmatch(page)
		if m == nil {
			return nil, fmt.Errorf("page %d has no content", i+1)
		}
		n, _ := strconv.Atoi(string(m[1]))
		drawn, err := d.stream(n, room)
		if err != nil {
			return nil, fmt.Errorf("page %d: %w", i+1, err)
		}
		room -= int64(len(drawn))
		all = append(all, shownText(drawn))
	}
	return all, nil
}

// shownText returns the strings that a content stream shows, ISO 32000-1,
// 9.4.3. The fonts of a sheet take UTF-16BE.
func shownText(content []byte) string {
	var b strings.Builder
	for {
		at := bytes.IndexByte(content, '(')
		if at < 0 {
			return b.String()
		}
		content = content[at:]
		end := stringEnd(content)
		if end == 0 {
			return b.String()
		}
		raw := unescaped(content[1 : end-1])
		var units []uint16
		for i := 0; i+1 < len(raw); i += 2 {
			units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
		}
		b.WriteString(string(utf16.Decode(units)))
		content = content[end:]
	}
}
