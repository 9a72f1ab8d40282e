package main

import (
	"crypto/rand"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/report/unit"
)

// dash names standard input or output in place of a file.
const dash = "-"

// mostInput is how large an input file may be [byte].
const mostInput = 64 << 20

// readInput reads a file whole, or standard input for "-".
func readInput(c *cli.Context, name string) ([]byte, error) {
	if name == dash {
		return readAll("standard input", c.App.Reader)
	}
	return readFile(name)
}

// readFile reads a file whole, within reason.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, fmt.Errorf("%w%s", plain(err), hint(name, name, err))
	}
	defer f.Close()
	return readAll(name, f)
}

func readAll(name string, r io.Reader) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostInput+1))
	if err != nil {
		return nil, fmt.Errorf("%s cannot be read: %w", name, cause(err))
	}
	if len(data) > mostInput {
		return nil, fmt.Errorf("%s is larger than %d MiB", name, mostInput>>20)
	}
	return data, nil
}

// hint ends the message about a file that is not there: which folder was looked in, or
// that it is not there either, and which file is named nearly so. A file that another
// names is shown as written there.
func hint(name, written string, err error) string {
	if !errors.Is(err, fs.ErrNotExist) {
		return ""
	}
	folder := filepath.Dir(name)
	entries, err := os.ReadDir(folder)
	if err != nil {
		return fmt.Sprintf("; there is no folder %s", folder)
	}
	var names, longer []string
	for _, e := range entries {
		switch ext := filepath.Ext(e.Name()); {
		case e.IsDir():
		case ext == filepath.Ext(name):
			names = append(names, e.Name())
		case filepath.Ext(name) == "" && strings.TrimSuffix(e.Name(), ext) == filepath.Base(name):
			longer = append(longer, filepath.Join(filepath.Dir(written), e.Name()))
		}
	}
	if len(longer) > 0 {
		return fmt.Sprintf("; did you mean %s?", strings.Join(longer, " or "))
	}
	if near := unit.Near(filepath.Base(name), names); near != "" {
		return fmt.Sprintf("; did you mean %s?", filepath.Join(filepath.Dir(written), near))
	}
	if here, err := filepath.Abs(folder); err == nil {
		return fmt.Sprintf(" in %s", here)
	}
	return ""
}

// plain drops the name of the system call from a file error.
func plain(err error) error {
	var p *fs.PathError
	if errors.As(err, &p) {
		return fmt.Errorf("%s: %w", p.Path, p.Err)
	}
	return err
}

// innermost returns what an error was made from.
func innermost(err error) error {
	for inner := errors.Unwrap(err); inner != nil; inner = errors.Unwrap(err) {
		err = inner
	}
	return err
}

// cause drops call and name of a file error, for a message that names the file
// itself; the one in the error may be that of a file not yet in place.
func cause(err error) error {
	var p *fs.PathError
	var l *os.LinkError
	switch {
	case errors.As(err, &p):
		return p.Err
	case errors.As(err, &l):
		return l.Err
	}
	return err
}

// outputs are the files of one run. They are staged beside their places first
// and put in place together, so that each appears whole or not at all.
type outputs struct{ staged []output }

type output struct{ path, temporary string }

// add stages one file. The input must not be written over.
func (o *outputs) add(path string, data []byte, inputs ...string) error {
	if err := noInput(path, inputs); err != nil {
		return err
	}
	for _, other := range o.staged {
		if filepath.Clean(other.path) == filepath.Clean(path) {
			return fmt.Errorf("%s is named for two outputs", path)
		}
	}
	temporary, err := stage(path, data)
	if err != nil {
		return unwritten(path, err)
	}
	o.staged = append(o.staged, output{path, temporary})
	return nil
}

// unwritten says why a file could not be staged.
func unwritten(path string, err error) error {
	folder := filepath.Dir(path)
	if _, none := os.Stat(folder); errors.Is(none, fs.ErrNotExist) {
		return fmt.Errorf("%s cannot be written: there is no folder %s; make it first", path, folder)
	}
	return fmt.Errorf("%s cannot be written: %w", path, cause(err))
}

// noInput refuses a path that is one of the inputs.
func noInput(path string, inputs []string) error {
	for _, in := range inputs {
		if same(path, in) {
			return fmt.Errorf("%s is an input and is not written over", path)
		}
	}
	return nil
}

// commit puts every staged file in place.
func (o *outputs) commit() error {
	for len(o.staged) > 0 {
		next := o.staged[0]
		if err := os.Rename(next.temporary, next.path); err != nil {
			return fmt.Errorf("%s cannot be written: %w", next.path, cause(err))
		}
		o.staged = o.staged[1:]
	}
	return nil
}

// finish puts every staged file in place, names them, and prints the text.
func (o *outputs) finish(c *cli.Context, text string) error {
	names := o.names()
	if err := o.commit(); err != nil {
		return err
	}
	for _, name := range names {
		fmt.Fprintf(c.App.ErrWriter, "wrote %s\n", name)
	}
	return toStdout(c, text)
}

// names returns the files that are staged.
func (o *outputs) names() (out []string) {
	for _, s := range o.staged {
		out = append(out, s.path)
	}
	return out
}

// discard removes what is staged and was not put in place.
func (o *outputs) discard() {
	for _, s := range o.staged {
		os.Remove(s.temporary)
	}
	o.staged = nil
}

// A newFile is a file that is being written.
type newFile interface {
	io.WriteCloser
	Sync() error
}

// createFile makes a file that must not exist. Tests set one on a full disk.
var createFile = func(name string, mode fs.FileMode) (newFile, error) {
	return os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

// stage writes data to a new file beside path and returns its name.
func stage(path string, data []byte) (string, error) {
	mode := fs.FileMode(0o666)
	if info, err := os.Stat(path); err == nil {
		if !info.Mode().IsRegular() {
			return "", errors.New("it exists and is not a plain file")
		}
		mode = info.Mode().Perm()
	}
	name := filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+rand.Text())
	f, err := createFile(name, mode)
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		os.Remove(name)
		return "", err
	}
	return name, nil
}

// same reports whether two names are one existing file.
func same(a, b string) bool {
	x, errX := os.Stat(a)
	y, errY := os.Stat(b)
	return errX == nil && errY == nil && os.SameFile(x, y)
}

// toStdout writes a result to standard output.
func toStdout(c *cli.Context, text string) error {
	if _, err := io.WriteString(c.App.Writer, text); err != nil {
		return fmt.Errorf("standard output: %w", cause(err))
	}
	return nil
}
