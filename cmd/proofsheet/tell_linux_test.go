package main

import (
	"bytes"
	"fmt"
	"os"
	"slices"
	"strings"
	"syscall"
	"testing"
	"unicode/utf8"
	"unsafe"
)

// pseudoTerminal returns the two ends of a terminal so wide.
func pseudoTerminal(t *testing.T, columns uint16) (reads, shows *os.File) {
	t.Helper()
	reads, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skipf("no terminal to write to: %v", err)
	}
	t.Cleanup(func() { reads.Close() })
	var number, locked int32
	size := [4]uint16{24, columns}
	for request, value := range map[uintptr]unsafe.Pointer{syscall.TIOCGPTN: unsafe.Pointer(&number), syscall.TIOCSPTLCK: unsafe.Pointer(&locked), syscall.TIOCSWINSZ: unsafe.Pointer(&size)} {
		if _, _, fault := syscall.Syscall(syscall.SYS_IOCTL, reads.Fd(), request, uintptr(value)); fault != 0 {
			t.Skip(fault)
		}
	}
	shows, err = os.OpenFile(fmt.Sprintf("/dev/pts/%d", number), os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skipf("no terminal to write to: %v", err)
	}
	t.Cleanup(func() { shows.Close() })
	return reads, shows
}

// TestErrorsFoldOnATerminal shows a fault of the input on a terminal and to a pipe.
func TestErrorsFoldOnATerminal(t *testing.T) {
	src := strings.Replace(string(contents(t, "../../testdata/tanks/kerosene.toml")), `radius = "0 mm"`, `radius = "115 mm"`, 1)
	path := write(t, "tank.toml", []byte(src))
	reads, shows := pseudoTerminal(t, 80)
	var out, piped bytes.Buffer
	if status := run([]string{"proofsheet", "check", path}, strings.NewReader(""), &out, &piped); status != exitInput || strings.Count(piped.String(), "\n") != 1 {
		t.Fatalf("status %d: %s", status, piped.String())
	}
	if status := run([]string{"proofsheet", "check", path}, strings.NewReader(""), &out, shows); status != exitInput {
		t.Fatalf("status %d", status)
	}
	shown := make([]byte, 4096)
	n, err := reads.Read(shown)
	if err != nil {
		t.Fatal(err)
	}
	text := strings.ReplaceAll(string(shown[:n]), "\r\n", "\n")
	if strings.Join(strings.Fields(text), " ") != strings.Join(strings.Fields(piped.String()), " ") {
		t.Errorf("other words on the terminal:\n%s%s", text, piped.String())
	}
	for i, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if len(line) > 80 && strings.Contains(strings.TrimSpace(line), " ") || i > 0 && !strings.HasPrefix(line, "  ") {
			t.Errorf("line %d: %q", i+1, line)
		}
	}
	if strings.Count(text, "\n") < 2 {
		t.Errorf("not folded: %s", text)
	}
}

// TestResultsFoldOnATerminal shows what is longest of blanks, signatures and the identity on
// a terminal of 80 columns: no line is cut there, and no word is other than in a pipe.
func TestResultsFoldOnATerminal(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	for _, args := range [][]string{{"blank", "../../testdata/tanks/demo.toml"}, {"verify", pdf}, {"identity"}} {
		reads, shows := pseudoTerminal(t, 80)
		var all bytes.Buffer
		done := make(chan bool)
		go func() {
			_, _ = all.ReadFrom(reads) // ends with an error when the other end is shut
			close(done)
		}()
		run(append([]string{"proofsheet"}, args...), strings.NewReader(""), shows, &bytes.Buffer{})
		shows.Close()
		<-done
		_, piped, _ := call(t, "", args...)
		text := strings.ReplaceAll(all.String(), "\r\n", "\n")
		for line := range strings.Lines(text) {
			if n := utf8.RuneCountInString(strings.TrimSuffix(line, "\n")); n > 80 {
				t.Errorf("%s: %d columns: %s", args[0], n, line)
			}
		}
		letters := func(s string) string {
			words := strings.Split(strings.Join(strings.Fields(s), ""), "")
			slices.Sort(words)
			return strings.Join(words, "")
		}
		if args[0] == "identity" && letters(text) != letters(piped) || !strings.Contains(piped, "\n") || text == "" {
			t.Errorf("%s: on the terminal\n%sin a pipe\n%s", args[0], text, piped)
		}
	}
}
