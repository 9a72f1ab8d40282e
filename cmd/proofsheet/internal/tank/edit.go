package tank

import (
	"bytes"
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

	"github.com/BurntSushi/toml"
)

// A Change is a value to be written into a tank file: the key as in faults,
// "head.aft.thickness" or "port.fill.pad", and the value as TOML.
type Change struct{ Key, Value string }

// Edit returns the file's text with values replaced, or added where their key
// was not written; everything else, comments too, stays as it is. A key that is
// added goes to the end of its table. The new text is decoded and compared with
// what was asked for: an error where it does not say that.
func (t *Tank) Edit(changes []Change) ([]byte, error) {
	text := t.Text
	for _, c := range changes {
		before := text
		var err error
		if text, err = t.edit(text, c); err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", c.Key, err)
		}
		if err := says(before, text, t.internal(c.Key), c.Value); err != nil {
			return nil, fmt.Errorf("%s cannot be written: %w", c.Key, err)
		}
	}
	return text, nil
}

// edit makes one change.
func (t *Tank) edit(text []byte, c Change) ([]byte, error) {
	at, path := index(text), t.internal(c.Key)
	if where, written := at.value[path]; written {
		from := offset(text, where)
		length, err := valueLength(text[from:])
		if err != nil {
			return nil, err
		}
		return slices.Concat(text[:from], []byte(c.Value), text[from+length:]), nil
	}
	i := strings.LastIndexByte(path, '.')
	if i < 0 {
		return nil, errors.New("it belongs to no table")
	}
	table, key := path[:i], path[i+1:]
	if where, ok := at.value[table]; ok && text[offset(text, where)] == '{' {
		from := offset(text, where)
		length, err := valueLength(text[from:])
		if err != nil {
			return nil, err
		}
		body := bytes.TrimRight(text[from:from+length-1], " \t")
		comma := ", "
		if bytes.HasSuffix(body, []byte("{")) {
			comma = " "
		}
		return slices.Concat(text[:from], body, []byte(comma+key+" = "+c.Value+" }"), text[from+length:]), nil
	}
	last, ok := lastLine(at, table)
	if !ok {
		return nil, fmt.Errorf("[%s] is not in the file", table)
	}
	end := offset(text, place{last + 1, 1})
	line := key + " = " + c.Value + "\n"
	if end > 0 && text[end-1] != '\n' {
		line = "\n" + line
	}
	return slices.Concat(text[:end], []byte(line), text[end:]), nil
}

// lastLine returns the last line that a table's own keys begin on, 0 when the
// table has a line of its own and no keys.
func lastLine(at places, table string) (line int, ok bool) {
	where, ok := at.key[table]
	if !ok {
		return 0, false
	}
	line = where.line
	for path, p := range at.value {
		if strings.HasPrefix(path, table+".") {
			line = max(line, p.line)
		}
	}
	return line, true
}

// offset returns the byte at which a place stands, the length of the text for a
// line beyond its end.
func offset(text []byte, p place) int {
	from := 0
	for range p.line - 1 {
		i := bytes.IndexByte(text[from:], '\n')
		if i < 0 {
			return len(text)
		}
		from += i + 1
	}
	line := text[from:]
	for range p.column - 1 {
		_, size := utf8.DecodeRune(line)
		from, line = from+size, line[size:]
	}
	return from
}

// valueLength returns how many bytes a value takes: a text in quotes, a bare
// number or word, an inline table or an array on one line.
func valueLength(text []byte) (int, error) {
	depth := 0
	for i := 0; i < len(text); i++ {
		switch b := text[i]; b {
		case '"', '\'':
			n, err := textLength(text[i:])
			if err != nil {
				return 0, err
			}
			if i += n - 1; depth == 0 {
				return i + 1, nil
			}
		case '{', '[':
			depth++
		case '}', ']':
			if depth == 0 {
				return i, nil
			}
			if depth--; depth == 0 {
				return i + 1, nil
			}
		case '\n', '\r', '#':
			if depth == 0 {
				return len(bytes.TrimRight(text[:i], " \t")), nil
			}
			if b == '#' {
				return 0, errors.New("a comment stands inside its value")
			}
		case ',':
			if depth == 0 {
				return len(bytes.TrimRight(text[:i], " \t")), nil
			}
		}
	}
	if depth > 0 {
		return 0, errors.New("its value does not end")
	}
	return len(bytes.TrimRight(text, " \t")), nil
}

// textLength returns how many bytes a text in quotes takes on its line.
func textLength(text []byte) (int, error) {
	quote := text[0]
	if len(text) > 2 && text[1] == quote && text[2] == quote {
		return 0, errors.New("its value is a text of several lines")
	}
	for i := 1; i < len(text) && text[i] != '\n'; i++ {
		switch {
		case text[i] == '\\' && quote == '"':
			i++
		case text[i] == quote:
			return i + 1, nil
		}
	}
	return 0, errors.New("its value does not end on its line")
}

// says asks whether the new text holds the value at the path, and is else the
// old one.
func says(before, after []byte, path, value string) error {
	was, is, want := map[string]any{}, map[string]any{}, map[string]any{}
	if _, err := toml.Decode(string(after), &is); err != nil {
		return errors.New("the file would no longer be TOML")
	}
	if _, err := toml.Decode(string(before), &was); err != nil {
		return errors.New("the file is no TOML")
	}
	if _, err := toml.Decode("v = "+value, &want); err != nil {
		return fmt.Errorf("%s is no value", value)
	}
	if err := put(was, path, want["v"]); err != nil {
		return err
	}
	if fmt.Sprint(was) != fmt.Sprint(is) {
		return errors.New("another value would change with it")
	}
	return nil
}

// Again reads a changed text of the same file, with the files it names.
func (t *Tank) Again(text []byte) (*Tank, error) { return Read(t.File, text, t.open) }

// Written returns a value as the file says it, "" where its key is not written.
func (t *Tank) Written(key string) string {
	v, ok := lookUp(t.raw, t.internal(key))
	if !ok {
		return ""
	}
	if s, ok := v.(string); ok {
		return s
	}
	where, ok := t.places.value[t.internal(key)]
	if !ok {
		return fmt.Sprint(v)
	}
	from := offset(t.Text, where)
	length, err := valueLength(t.Text[from:])
	if err != nil {
		return fmt.Sprint(v)
	}
	return string(t.Text[from : from+length])
}
