package assess

import (
	"errors"
	"os"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// What rests on a mesh that turns out too coarse, late as it may be, is not assessed.
func TestCoarseMeshIsNotUsed(t *testing.T) {
	const file = "../../../../testdata/tanks/demo.toml"
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	in, err := tank.Read(file, text, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	times := 0
	sheet, err := onFineMeshes(in, Options{}, func(r *run) []check.Result {
		r.finish()
		if times++; times == 1 {
			for k := range r.shells { // with the temperature of the test
				r.meshes.look(k, func() error { return errors.New("too coarse") })
			}
		}
		return r.checks
	})
	if err != nil || times != 2 {
		t.Fatalf("assessed %d times: %v", times, err)
	}
	joints := 0
	for _, r := range sheet {
		if strings.HasSuffix(r.ID, "/junction") {
			joints++
			if r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), "too coarse") {
				t.Errorf("%s@%s is %v: %s", r.ID, r.Case, r.Status(), r.Reason())
			}
		}
	}
	if joints == 0 {
		t.Error("no joint")
	}
}
