package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"os"
	"regexp"

	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// programName is what the program calls itself on a sheet, as the assessment writes it.
const programName = "proofsheet"

// A kind is a sort of file that this program writes, and how one begins.
type kind struct {
	name string
	head *regexp.Regexp
}

// The kinds of files that may go when a command is given again. What else lies where one is
// to be written was named by mistake. A changed tank file takes the place of any tank file.
var (
	dataFile  = kind{"data", regexp.MustCompile(`^\{\s*"format":\s*\d+,\s*"program":\s*\{\s*"name":\s*"` + programName + `"`)}
	tableFile = kind{"table of a study", regexp.MustCompile(`^([^\n]*,mass \[kg\],least_margin,|check,decided_by,samples,not_satisfied,)`)}
	svgFile   = kind{"drawing", regexp.MustCompile(`^<svg xmlns="http://www\.w3\.org/2000/svg" width="[0-9.]+mm" [^\n]* font-family="sans-serif">\n`)}
	dxfFile   = kind{"drawing", regexp.MustCompile(`^ *999\r?\n(?s:.*)AC1009`)}
	tankFile  = kind{"tank file", regexp.MustCompile(`(?m)^[ \t]*\[?[ \t]*cylinder[ \t]*[].=]`)}
)

// headBytes is how much of a file is looked at to know its kind [byte].
const headBytes = 64 << 10

// addKind stages a file in a place that is free, or where one of its kind lies.
func (o *outputs) addKind(path string, data []byte, k kind, inputs ...string) error {
	if err := noInput(path, inputs); err != nil {
		return err
	}
	if occupied(path) {
		head, err := headOf(path)
		if err != nil {
			return fmt.Errorf("%s exists, cannot be read and is not written over: %w", path, cause(err))
		}
		if !k.head.Match(head) {
			return fmt.Errorf("%s exists, is no %s of this program and is not written over; choose another name", path, k.name)
		}
	}
	return o.add(path, data, inputs...)
}

// occupied reports whether something that could be lost lies at a path. What is no plain file
// and cannot be written says so later.
func occupied(path string) bool {
	info, err := os.Stat(path)
	return err == nil && info.Mode().IsRegular() && info.Size() > 0
}

// headOf returns how a file begins.
func headOf(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	head := make([]byte, headBytes)
	n, err := io.ReadFull(f, head)
	if errors.Is(err, io.ErrUnexpectedEOF) {
		err = nil // a shorter file
	}
	return head[:n], err
}

// mayGo refuses to let a document [PDF] take the place of what may not be lost: of a file
// that is no document of this program or one of another kind, and of one that somebody has
// signed. The seal of this program alone may go.
func mayGo(path string, document []byte) error {
	if !occupied(path) {
		return nil
	}
	old, err := readFile(path)
	if err != nil {
		return fmt.Errorf("%s exists, cannot be read and is not written over: %w", path, cause(err))
	}
	if !bytes.HasPrefix(old, []byte("%PDF-")) || !bytes.Contains(old, producer()) {
		return fmt.Errorf("%s exists, is no document of this program and is not written over; choose another name", path)
	}
	held, err := sign.Verify(old)
	if err != nil && !errors.Is(err, sign.ErrNotSigned) {
		return fmt.Errorf("%s exists, has been changed since this program wrote it and is not written over; choose another name", path)
	}
	for _, s := range held.Signatures {
		if s.Role != sign.RoleSeal {
			return fmt.Errorf("%s carries the signature of %s (%s) and is not written over; choose another name", path, quoted(s.Name), s.Role)
		}
	}
	next, err := sign.Verify(document)
	if err != nil && !errors.Is(err, sign.ErrNotSigned) {
		return fmt.Errorf("%s is not written: %w", path, err)
	}
	if is, to := documentKind(held.Attachments), documentKind(next.Attachments); is != to {
		return fmt.Errorf("%s exists, is a %s and is not written over by a %s; choose another name", path, is, to)
	}
	return nil
}

// documentKind tells the documents of this program apart by the last file in them, which
// holds their numbers; drawings hold none.
func documentKind(files []sign.Attachment) string {
	if len(files) == 0 {
		return "set of drawings"
	}
	switch files[len(files)-1].Name {
	case pdf.RecordName:
		return "record"
	case pdf.StudyName:
		return "study"
	}
	return "sheet"
}

// producer is how a document of any version of this program begins to name who made it.
func producer() []byte {
	out := []byte("/Producer (\xFE\xFF") // two bytes a letter, the higher first
	for _, letter := range []byte(programName + " ") {
		out = append(out, 0, letter)
	}
	return out
}
