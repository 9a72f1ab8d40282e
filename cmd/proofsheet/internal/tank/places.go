package tank

import (
	"strconv"
	"unicode/utf8"

	"github.com/pelletier/go-toml/v2/unstable"
)

// A place is a position in the tank file, from 1, columns in characters.
type place struct{ line, column int }

// places maps a key path, "port[1].tube.wall", to where the key and its value
// stand. Elements of arrays count from 0.
type places struct {
	value, key map[string]place
}

// index finds the place of every key and value. The TOML decoder tells neither,
// so the text is parsed once more by a parser that does; what it cannot read
// the decoder has already refused.
func index(src []byte) places {
	ix := &indexer{
		src: src, at: places{map[string]place{}, map[string]place{}},
		elements: map[string]int{},
	}
	ix.lines = append(ix.lines, 0)
	for i, b := range src {
		if b == '\n' {
			ix.lines = append(ix.lines, i+1)
		}
	}
	p := unstable.Parser{}
	p.Reset(src)
	prefix := ""
	for p.NextExpression() {
		switch e := p.Expression(); e.Kind {
		case unstable.Table:
			prefix = ix.header(e, false)
		case unstable.ArrayTable:
			prefix = ix.header(e, true)
		case unstable.KeyValue:
			ix.keyValue(e, prefix)
		}
	}
	return ix.at
}

type indexer struct {
	src      []byte
	lines    []int // offset of each line
	at       places
	elements map[string]int // arrays of tables: elements so far
}

// header enters a [table] or [[array.of.tables]] and returns its path.
func (ix *indexer) header(e *unstable.Node, array bool) string {
	path, first := "", true
	var where place
	for it := e.Key(); it.Next(); {
		k := it.Node()
		if first {
			where, first = ix.place(k.Raw), false
		}
		path = join(path, string(k.Data))
		ix.note(path, where, where)
		if it.IsLast() && array {
			ix.elements[path]++
		}
		if n := ix.elements[path]; n > 0 {
			path += "[" + strconv.Itoa(n-1) + "]"
			ix.note(path, where, where)
		}
	}
	return path
}

// keyValue enters a key with its value, and what is nested in the value.
func (ix *indexer) keyValue(e *unstable.Node, prefix string) {
	path := prefix
	var key place
	var end uint32
	for it := e.Key(); it.Next(); {
		k := it.Node()
		key, end = ix.place(k.Raw), k.Raw.Offset+k.Raw.Length
		path = join(path, string(k.Data))
		if !it.IsLast() {
			ix.note(path, key, key)
		}
	}
	ix.inside(e.Value(), path, key, ix.behindEquals(int(end)))
}

// behindEquals finds where a value begins, from the end of its key: arrays have no
// range of their own in the parser's tree.
func (ix *indexer) behindEquals(offset int) place {
	for offset < len(ix.src)-1 && (ix.src[offset] == ' ' || ix.src[offset] == '\t' || ix.src[offset] == '=') {
		offset++
	}
	return ix.place(unstable.Range{Offset: uint32(offset)})
}

// inside enters a value and what is nested in it; where is its place if it has
// none of its own.
func (ix *indexer) inside(v *unstable.Node, path string, key, where place) {
	if v.Raw.Length > 0 {
		where = ix.place(v.Raw)
	}
	ix.note(path, key, where)
	switch v.Kind {
	case unstable.InlineTable:
		for it := v.Children(); it.Next(); {
			ix.keyValue(it.Node(), path)
		}
	case unstable.Array:
		n := 0
		for it := v.Children(); it.Next(); n++ {
			ix.inside(it.Node(), path+"["+strconv.Itoa(n)+"]", where, where)
		}
	}
}

// note keeps the first place of a path: a table may be opened by its first key.
func (ix *indexer) note(path string, key, value place) {
	if _, seen := ix.at.key[path]; !seen {
		ix.at.key[path], ix.at.value[path] = key, value
	}
}

// place turns a range of bytes into line and column.
func (ix *indexer) place(r unstable.Range) place {
	offset := int(r.Offset)
	lo, hi := 0, len(ix.lines)
	for hi-lo > 1 {
		if mid := (lo + hi) / 2; ix.lines[mid] <= offset {
			lo = mid
		} else {
			hi = mid
		}
	}
	return place{lo + 1, utf8.RuneCount(ix.src[ix.lines[lo]:offset]) + 1}
}

// join appends a key to a path.
func join(path, key string) string {
	if path == "" {
		return key
	}
	return path + "." + key
}
