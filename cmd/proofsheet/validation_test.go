package main

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

// A codebase is what the validation table may name: functions, methods and types
// as proof.Full.Drift, the body of every test as file: name, and by needed the
// test files that hold published rows.
type codebase struct {
	declared map[string]bool
	tests    map[string]string
	needed   []string
}

var (
	publishedFile = regexp.MustCompile(`(\d{4}|/published)_test\.go$`)
	testFunction  = regexp.MustCompile(`(?ms)^func (Test\w+)\(.*?^}`)
	tolerance     = regexp.MustCompile(`^(printed digits|verdict|\d+(\.\d+)?(e-\d+)?( [^ ]+)?)$`)
)

func readCodebase(t *testing.T) codebase {
	t.Helper()
	c := codebase{declared: map[string]bool{}, tests: map[string]string{}}
	for _, room := range []string{"shell", "heads", "loads", "material"} {
		err := filepath.WalkDir(filepath.Join(moduleRoot, room), func(path string, e fs.DirEntry, err error) error {
			if err != nil || filepath.Ext(path) != ".go" {
				return err
			}
			text, err := os.ReadFile(path)
			return errors.Join(err, c.add(filepath.ToSlash(strings.TrimPrefix(path, moduleRoot+string(filepath.Separator))), string(text)))
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return c
}

func (c *codebase) add(file, text string) error {
	tree, err := parser.ParseFile(token.NewFileSet(), file, text, 0)
	if !strings.HasSuffix(file, "_test.go") {
		ast.Inspect(tree, func(n ast.Node) bool {
			switch d := n.(type) {
			case *ast.TypeSpec:
				c.declared[tree.Name.Name+"."+d.Name.Name] = true
			case *ast.FuncDecl:
				of := tree.Name.Name + "."
				if d.Recv != nil {
					of += strings.TrimPrefix(types.ExprString(d.Recv.List[0].Type), "*") + "."
				}
				c.declared[of+d.Name.Name] = true
			}
			return true
		})
		return err
	}
	if strings.Contains(text, `/checktest"`) || publishedFile.MatchString(file) {
		c.needed = append(c.needed, file)
	}
	for _, f := range testFunction.FindAllStringSubmatch(text, -1) {
		c.tests[file+": "+f[1]] = f[0]
	}
	return err
}

// faults returns what is wrong with the rows of the table.
func (c *codebase) faults(rows []string) (faults []string) {
	bad := map[string]bool{}
	for _, row := range rows {
		cells := append(strings.Split(strings.Trim(row, "| "), " | "), "", "", "", "", "")
		for name := range strings.SplitSeq(cells[0], ", ") {
			bad["no function, method or type "+name] = !c.declared[strings.Trim(name, "`")]
		}
		bodies := ""
		for group := range strings.SplitSeq(cells[4], "; ") {
			file, list, _ := strings.Cut(group, ": ")
			for name := range strings.SplitSeq(list, ", ") {
				bad["no test "+file+": "+name] = c.tests[file+": "+name] == ""
				bodies += c.tests[file+": "+name]
			}
		}
		bad["no source or place: "+row] = cells[1] == "" || cells[2] == ""
		bad["how it was obtained: "+row] = !slices.Contains([]string{"read", "computed", "memory", "practice"}, cells[3])
		bad["largest difference: "+row] = !tolerance.MatchString(cells[5]) ||
			cells[5] == "printed digits" && !strings.Contains(bodies, "checktest.Printed(")
	}
	for _, file := range c.needed {
		bad[file+" is missing from the table"] = !strings.Contains(strings.Join(rows, "\n"), " "+file+": ")
	}
	for fault, is := range bad {
		if is {
			faults = append(faults, fault)
		}
	}
	return faults
}

// guide returns the lines of one section of the contributor's guide that match.
func guide(t *testing.T, heading, line string) []string {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot, "DEVELOPERS.md"))
	_, rest, found := strings.Cut(string(text), "\n## "+heading+"\n")
	if body, _, _ := strings.Cut(rest, "\n## "); err == nil && found {
		return regexp.MustCompile("(?m)^"+line).FindAllString(body, -1)
	}
	t.Fatalf("no section %q: %v", heading, err)
	return nil
}

func TestValidationTable(t *testing.T) {
	c, rows := readCodebase(t), guide(t, "5. Validation", "\\| `.*")
	if faults := c.faults(rows); len(rows) < 60 || len(c.needed) < 40 || len(faults) > 0 || len(c.faults(nil)) != len(c.needed) {
		t.Errorf("%d rows, %d files with published values:\n%s", len(rows), len(c.needed), strings.Join(faults, "\n"))
	}
	for i, wrong := range []string{"`shell.Nothing`", "", "", "guess", "shell/published_test.go: TestNothing", "small"} {
		cells := strings.Split(strings.Trim(rows[0], "| "), " | ")
		cells[i] = wrong
		if len(c.faults(append(rows[1:], "| "+strings.Join(cells, " | ")+" |"))) == 0 {
			t.Errorf("%q in column %d is no fault", wrong, i+1)
		}
	}
}

func TestLayoutBlock(t *testing.T) {
	block := guide(t, "2. Layout and import rule", `    \S+/ `)
	for _, p := range packages(t) {
		if name, ours := p.below(); ours && !slices.Contains(block, "    "+name+"/ ") {
			t.Errorf("the layout does not name %s", name)
		}
	}
	for _, line := range block {
		if _, err := os.Stat(filepath.Join(moduleRoot, strings.TrimSpace(line))); err != nil {
			t.Error(err)
		}
	}
}
