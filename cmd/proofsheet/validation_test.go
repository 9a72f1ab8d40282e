package main

import (
	"errors"
	"flag"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
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
	measured      = regexp.MustCompile(`^(rounding|\d+(\.\d+)?(e-\d+)?)$`)
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
	if strings.Contains(text, "checktest.Printed(") || strings.Contains(text, "checktest.Close(") || publishedFile.MatchString(file) {
		c.needed = append(c.needed, file)
	}
	for _, f := range testFunction.FindAllStringSubmatch(text, -1) {
		c.tests[file+": "+f[1]] = f[0]
	}
	return err
}

// A validation is one row of the table: a group of formulas against one source.
type validation struct {
	formula, source, place, how, test, tolerance string
	largest                                      string // measured difference, relative; "" where no test compares so
}

// validationFile is what the table of the contributor's guide is made from.
const validationFile = "testdata/published/validation.tsv"

func readValidations(t *testing.T) (out []validation) {
	t.Helper()
	text, err := os.ReadFile(filepath.Join(moduleRoot, validationFile))
	if err != nil {
		t.Fatal(err)
	}
	for i, line := range strings.Split(strings.TrimSuffix(string(text), "\n"), "\n") {
		c := strings.Split(line, "\t")
		if len(c) != 7 {
			t.Fatalf("%s:%d: %d columns, want 7", validationFile, i+1, len(c))
		}
		out = append(out, validation{c[0], c[1], c[2], c[3], c[4], c[5], c[6]})
	}
	return out[1:]
}

// row returns the row as the guide has it.
func (v validation) row() string {
	if v.largest == "" {
		v.largest = "not measured"
	}
	return "| " + strings.Join([]string{v.formula, v.source, v.place, v.how, v.test, v.tolerance, v.largest}, " | ") + " |"
}

// tests returns the tests of a row as file: name.
func (v validation) tests() (out []string) {
	for group := range strings.SplitSeq(v.test, "; ") {
		file, list, _ := strings.Cut(group, ": ")
		for name := range strings.SplitSeq(list, ", ") {
			out = append(out, file+": "+name)
		}
	}
	return out
}

// faults returns what is wrong with the rows of the table.
func (c *codebase) faults(rows []validation) (faults []string) {
	bad := map[string]bool{}
	named := ""
	for _, v := range rows {
		for name := range strings.SplitSeq(v.formula, ", ") {
			bad["no function, method or type "+name] = !c.declared[strings.Trim(name, "`")]
		}
		bodies := ""
		for _, test := range v.tests() {
			bad["no test "+test] = c.tests[test] == ""
			bodies += c.tests[test]
		}
		named += " " + v.test
		bad["no source or place: "+v.row()] = v.source == "" || v.place == ""
		bad["how it was obtained: "+v.row()] = !slices.Contains([]string{"read", "computed", "memory", "practice"}, v.how)
		bad["tolerance: "+v.row()] = !tolerance.MatchString(v.tolerance) ||
			v.tolerance == "printed digits" && !strings.Contains(bodies, "checktest.Printed(")
		bad["largest difference: "+v.row()] = v.largest != "" && !measured.MatchString(v.largest)
	}
	for _, file := range c.needed {
		bad[file+" is missing from the table"] = !strings.Contains(named, " "+file+": ")
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

var updateTable = flag.Bool("update", false, "make the table of validation again, with the differences that DIFFERENCES names")

// The table of the guide is made from its data file, and the tree holds what it says.
func TestValidationTable(t *testing.T) {
	c, rows := readCodebase(t), readValidations(t)
	if *updateTable {
		measure(t, rows)
		rewrite(t, rows)
	}
	if faults := c.faults(rows); len(rows) < 60 || len(c.needed) < 40 || len(faults) > 0 || len(c.faults(nil)) != len(c.needed) {
		t.Errorf("%d rows, %d files with published values:\n%s", len(rows), len(c.needed), strings.Join(faults, "\n"))
	}
	var want []string
	for _, v := range rows {
		want = append(want, v.row())
	}
	if got := guide(t, "5. Validation", "\\| `.*"); !slices.Equal(got, want) {
		t.Errorf("the table of the guide is not made from %s: run this test with -update", validationFile)
	}
	for i, wrong := range []validation{{formula: "`shell.Nothing`"}, {source: " "}, {how: "guess"}, {test: "shell/published_test.go: TestNothing"}, {tolerance: "small"}, {largest: "little"}} {
		v := rows[0]
		for _, cell := range []struct{ to, from *string }{{&v.formula, &wrong.formula}, {&v.source, &wrong.source}, {&v.how, &wrong.how},
			{&v.test, &wrong.test}, {&v.tolerance, &wrong.tolerance}, {&v.largest, &wrong.largest}} {
			if *cell.from != "" {
				*cell.to = strings.TrimSpace(*cell.from)
			}
		}
		if len(c.faults(append([]validation{v}, rows[1:]...))) == 0 {
			t.Errorf("wrong row %d is no fault", i+1)
		}
	}
}

// measure fills in the largest difference of the tests of each row, rounded up to two
// digits; below 1e-9 it is rounding, which differs between machines, and is said so.
func measure(t *testing.T, rows []validation) {
	t.Helper()
	text, err := os.ReadFile(os.Getenv("DIFFERENCES"))
	if err != nil {
		t.Fatalf("DIFFERENCES names no file that the tests have filled: %v", err)
	}
	root, err := filepath.Abs(moduleRoot)
	if err != nil {
		t.Fatal(err)
	}
	most := map[string]float64{}
	for line := range strings.Lines(string(text)) {
		c := strings.Split(strings.TrimSpace(line), "\t")
		d, err := strconv.ParseFloat(c[len(c)-1], 64)
		if len(c) != 3 || err != nil {
			t.Fatalf("DIFFERENCES: %q", line)
		}
		test := strings.TrimPrefix(c[0], filepath.ToSlash(root)+"/") + ": " + c[1]
		most[test] = max(most[test], d)
	}
	for i := range rows {
		largest, found := 0.0, false
		for _, test := range rows[i].tests() {
			d, ok := most[test]
			largest, found = max(largest, d), found || ok
		}
		switch {
		case !found:
			rows[i].largest = ""
		case largest < 1e-9:
			rows[i].largest = "rounding"
		default:
			rows[i].largest = twoDigitsUp(largest)
		}
	}
}

// twoDigitsUp writes a number with two digits, rounded up.
func twoDigitsUp(v float64) string {
	power := math.Floor(math.Log10(v)) - 1
	return strconv.FormatFloat(math.Ceil(v/math.Pow(10, power)-1e-9)*math.Pow(10, power), 'g', 2, 64)
}

// rewrite writes the data file and the table of the guide.
func rewrite(t *testing.T, rows []validation) {
	t.Helper()
	data := []string{"formula\tsource\tclause or place\thow\ttest\ttolerance\tlargest difference"}
	var table []string
	for _, v := range rows {
		data = append(data, strings.Join([]string{v.formula, v.source, v.place, v.how, v.test, v.tolerance, v.largest}, "\t"))
		table = append(table, v.row())
	}
	path := filepath.Join(moduleRoot, "DEVELOPERS.md")
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	old := guide(t, "5. Validation", "\\| `.*")
	before, rest, _ := strings.Cut(string(text), old[0])
	_, after, _ := strings.Cut(rest, old[len(old)-1]+"\n")
	err = os.WriteFile(path, []byte(before+strings.Join(table, "\n")+"\n"+after), 0o644)
	if err := errors.Join(err, os.WriteFile(filepath.Join(moduleRoot, validationFile), []byte(strings.Join(data, "\n")+"\n"), 0o644)); err != nil {
		t.Fatal(err)
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
