package assess_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
)

// idRooms are the folders whose code gives checks their ids.
var idRooms = []string{".", "../../../../shell", "../../../../shell/*", "../../../../heads", "../../../../heads/*", "../../../../loads", "../../../../loads/*"}

// TestNoIdleExplanations holds that every explanation is of an id that some code
// writes, and that every id which code writes is explained.
func TestNoIdleExplanations(t *testing.T) {
	written, explained := writtenIDs(t), map[string]bool{}
	for _, e := range assess.Explanations() {
		id := strings.TrimPrefix(strings.TrimPrefix(e.ID, "head.X"), "port.N")
		explained[id] = true
		if !written[id] {
			t.Errorf("%s is explained, and no code gives a check that id", e.ID)
		}
	}
	delete(written, "/weld-zone") // of one weld in a head; the sheet shows the worst of them as tank/weld-zones
	for id := range written {
		if !explained[id] {
			t.Errorf("%s is given to a check and not explained", id)
		}
	}
}

// writtenIDs collects "/what", as it is put behind the name of a head or port,
// and "part/what" of the parts that have one name, from the code of the rooms.
func writtenIDs(t *testing.T) map[string]bool {
	id := regexp.MustCompile(`^(cylinder|tank|proof)?/[a-z]+(-[a-z]+)*$`)
	out := map[string]bool{}
	for _, room := range idRooms {
		files, err := filepath.Glob(room + "/*.go")
		if err != nil {
			t.Fatal(err)
		}
		for _, file := range files {
			if strings.HasSuffix(file, "_test.go") || strings.HasPrefix(filepath.Base(file), "explain") {
				continue
			}
			tree, err := parser.ParseFile(token.NewFileSet(), file, nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			ast.Inspect(tree, func(n ast.Node) bool {
				if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					if s, err := strconv.Unquote(lit.Value); err == nil && id.MatchString(s) {
						out[s] = true
					}
				}
				return true
			})
		}
	}
	return out
}
