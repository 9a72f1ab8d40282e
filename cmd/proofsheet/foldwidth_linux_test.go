package main

import (
	"bytes"
	"os"
	"syscall"
	"testing"
	"unsafe"

	"github.com/urfave/cli/v2"
)

// TestFoldWidth asks a terminal of several widths, a file and a buffer how wide text goes.
func TestFoldWidth(t *testing.T) {
	width := func(app *cli.App) int { return foldWidth(cli.NewContext(app, nil, nil)) }
	if got := width(&cli.App{Writer: &bytes.Buffer{}}); got != 0 {
		t.Errorf("a buffer is %d wide", got)
	}
	file, err := os.Create(t.TempDir() + "/out")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	if got := width(&cli.App{Writer: file}); got != 0 {
		t.Errorf("a file is %d wide", got)
	}
	terminal, err := os.OpenFile("/dev/ptmx", os.O_RDWR|syscall.O_NOCTTY, 0)
	if err != nil {
		t.Skipf("no terminal to ask: %v", err)
	}
	defer terminal.Close()
	for columns, want := range map[uint16]int{0: usualWidth, 40: leastWidth, 80: 80, 132: 132} {
		size := [4]uint16{24, columns}
		if _, _, fault := syscall.Syscall(syscall.SYS_IOCTL, terminal.Fd(), syscall.TIOCSWINSZ, uintptr(unsafe.Pointer(&size))); fault != 0 {
			t.Fatal(fault)
		}
		if got := width(&cli.App{Writer: terminal}); got != want {
			t.Errorf("a terminal of %d columns: %d, want %d", columns, got, want)
		}
	}
}
