package checktest

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
)

// differences names the file to which every comparison appends how far it was off;
// empty: none is kept. The table of the contributor's guide is made from it.
var differences = os.Getenv("DIFFERENCES")

// keep appends the relative difference of one comparison, behind the test file and
// the test it was made in.
func keep(t testing.TB, got, want float64) {
	t.Helper()
	if differences == "" || want == 0 || t.Failed() {
		return
	}
	_, file, _, ok := runtime.Caller(2) // who called Printed or Close
	if !ok || !strings.HasSuffix(file, "_test.go") {
		return
	}
	f, err := os.OpenFile(differences, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	name, _, _ := strings.Cut(t.Name(), "/")
	if _, err := fmt.Fprintf(f, "%s\t%s\t%.3g\n", filepath.ToSlash(file), name, math.Abs(got/want-1)); err != nil {
		t.Fatal(err)
	}
}
