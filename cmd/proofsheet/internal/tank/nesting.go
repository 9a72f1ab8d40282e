package tank

import (
	"bytes"
	"fmt"
)

// mostNested is how deep tables and lists may lie within each other, and of how many parts a
// dotted key may be. A tank file needs four. The decoder has no bound, and a small file of
// nothing but brackets takes all memory.
const mostNested = 32

// nestingFault finds where a text of TOML nests too deep, before it is decoded. It reads no
// more of TOML than what hides a bracket: strings of four kinds, and comments.
func nestingFault(name string, src []byte) (Fault, bool) {
	depth, parts := 0, 0
	for i := 0; i < len(src); i++ {
		switch c := src[i]; c {
		case '"', '\'':
			i += skipText(src[i:]) - 1
			continue
		case '#':
			if n := bytes.IndexAny(src[i:], "\r\n"); n >= 0 {
				i += n - 1
				continue
			}
			return Fault{}, false
		case '[', '{':
			depth, parts = depth+1, 0
		case ']', '}':
			depth, parts = max(0, depth-1), 0
		case '.':
			parts++
		case '\n', '=', ',':
			parts = 0
		}
		if depth > mostNested || parts >= mostNested {
			line := bytes.Count(src[:i], []byte("\n"))
			column := i - bytes.LastIndexByte(src[:i], '\n')
			return Fault{File: name, Line: line + 1, Column: column,
				What: fmt.Sprintf("tables and lists lie more than %d deep here; a tank file needs no more than a few", mostNested)}, true
		}
	}
	return Fault{}, false
}

// skipText returns the length of the string that src begins with, TOML 1.0, "String". One
// that does not end ends with its line, one of several lines with the file.
func skipText(src []byte) int {
	quote := src[0]
	fence := bytes.Repeat([]byte{quote}, 3)
	if !bytes.HasPrefix(src, fence) {
		if n, err := textLength(src); err == nil {
			return n
		}
		if n := bytes.IndexByte(src, '\n'); n >= 0 {
			return n
		}
		return len(src)
	}
	for i := len(fence); i < len(src); i++ {
		switch {
		case src[i] == '\\' && quote == '"':
			i++
		case bytes.HasPrefix(src[i:], fence):
			i += len(fence)
			for more := 0; more < 2 && i < len(src) && src[i] == quote; more++ {
				i++ // up to two quotes may stand before the fence
			}
			return i
		}
	}
	return len(src)
}
