package main

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
)

const (
	moduleRoot = "../.." // from this package's folder
	modulePath = "proofsheet"
)

// A room may import the packages of the module matched by allow, beside the
// standard library, and the third-party modules its job needs. A pattern that
// ends in "/..." covers the package and all below it.
type room struct {
	packages   string
	allow      []string
	thirdParty []string
}

const numerics = "gonum.org/v1/gonum"

// rooms is the import rule; the first row whose pattern fits a package counts,
// and a package without a row fails the test.
var rooms = []room{
	{"report/check/...", nil, nil},
	{"report/unit", nil, nil},
	{"material/...", []string{"report/check"}, []string{numerics}},
	{"shell/...", []string{"shell/...", "material/...", "report/check"}, []string{numerics}},
	{"heads", []string{"shell/...", "material/...", "report/check"}, []string{numerics}},
	{"heads/blank", []string{"heads", "heads/port", "report/check"}, nil},
	{"heads/...", []string{"heads", "shell/...", "material/...", "report/check"}, []string{numerics}},
	{"loads", []string{"report/check"}, []string{numerics}},
	{"loads/...", []string{"loads", "report/check"}, []string{numerics}},
	{"report", []string{"report/check", "report/unit", "report/formula"}, nil},
	{"report/formula", nil, nil},
	{"report/drawing", nil, nil},
	{"report/pdf", []string{"report", "report/drawing", "report/formula", "report/unit", "report/check"},
		[]string{"github.com/jung-kurt/gofpdf", "codeberg.org/go-fonts/dejavu", "golang.org/x/image"}},
	{"report/sign", nil, []string{"github.com/smallstep/pkcs7", "software.sslmate.com/src/go-pkcs12", "golang.org/x/crypto"}},
	{"cmd/proofsheet/internal/tank", []string{"report/unit", "material/...", "heads", "heads/bolting"},
		[]string{"github.com/BurntSushi/toml", "github.com/pelletier/go-toml/v2"}},
	{"cmd/proofsheet/internal/assess", []string{"cmd/proofsheet/internal/tank", "material/...", "loads/...", "shell/...", "heads/...",
		"report", "report/check", "report/drawing", "report/unit"}, nil},
	{"cmd/proofsheet/internal/study", []string{"cmd/proofsheet/internal/assess", "cmd/proofsheet/internal/tank", "report", "report/check"}, []string{numerics}},
	{"cmd/proofsheet", []string{"..."}, []string{"..."}},
}

// calculation names the packages that hold formulas. None reaches, over any
// number of imports, a reader of input files, a PDF or the printed sheet.
var (
	calculation = []string{"material/...", "shell/...", "heads/...", "loads/...", "report/check/...", "report/unit"}
	forbidden   = regexp.MustCompile(`toml|pdf|^proofsheet/report($|/drawing|/sign)|^proofsheet/cmd/`)
)

// fits reports whether the package path, below the module's, is one of those
// that the pattern covers.
func fits(pattern, path string) bool {
	stem, tree := strings.CutSuffix(pattern, "...")
	if !tree {
		return pattern == path
	}
	return strings.HasPrefix(path+"/", stem)
}

func fitsAny(patterns []string, path string) bool {
	return slices.ContainsFunc(patterns, func(p string) bool { return fits(p, path) })
}

// A listed package is what go list says of it.
type listed struct {
	ImportPath, Dir        string
	Imports, Deps, GoFiles []string
	Standard               bool
}

// below returns the path of the package below the module's, and whether it is
// one of the module.
func (p listed) below() (string, bool) { return strings.CutPrefix(p.ImportPath, modulePath+"/") }

// packages lists every package of the module and all that they need.
func packages(t *testing.T) []listed {
	t.Helper()
	var stderr bytes.Buffer
	list := exec.Command("go", "list", "-deps", "-json=ImportPath,Dir,Imports,Deps,GoFiles,Standard", "./...")
	list.Dir, list.Stderr = moduleRoot, &stderr
	out, err := list.Output()
	if err != nil {
		t.Fatalf("go list: %v\n%s", err, stderr.String())
	}
	var all []listed
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			return all
		} else if err != nil {
			t.Fatal(err)
		}
		all = append(all, p)
	}
}

func TestImportRule(t *testing.T) {
	all := packages(t)
	standard := map[string]bool{"C": true, "unsafe": true}
	for _, p := range all {
		standard[p.ImportPath] = standard[p.ImportPath] || p.Standard
	}
	seen := 0
	for _, p := range all {
		name, ours := p.below()
		if !ours {
			continue
		}
		seen++
		for _, fault := range importFaults(name, p.Imports, p.Deps, standard) {
			t.Error(fault)
		}
	}
	if seen < 10 {
		t.Errorf("only %d packages of the module were seen", seen)
	}
}

// importFaults returns what the imports and all dependencies of the package
// name break of the rule.
func importFaults(name string, imports, deps []string, standard map[string]bool) (faults []string) {
	at := slices.IndexFunc(rooms, func(r room) bool { return fits(r.packages, name) })
	if at < 0 {
		return []string{fmt.Sprintf("%s has no row in the import rule", name)}
	}
	for _, path := range imports {
		own, ours := strings.CutPrefix(path, modulePath+"/")
		switch {
		case standard[path]:
		case own == "report/check/checktest":
			faults = append(faults, fmt.Sprintf("%s imports %s outside its tests", name, path))
		case ours && !fitsAny(rooms[at].allow, own):
			faults = append(faults, fmt.Sprintf("%s may not import %s", name, path))
		case !ours && !slices.ContainsFunc(rooms[at].thirdParty, func(m string) bool { return fits(m+"/...", path) || m == "..." }):
			faults = append(faults, fmt.Sprintf("%s has no use for %s", name, path))
		}
	}
	for _, path := range deps {
		if fitsAny(calculation, name) && !standard[path] && forbidden.MatchString(path) {
			faults = append(faults, fmt.Sprintf("%s calculates and reaches %s", name, path))
		}
	}
	return faults
}

// The rule must bite: each of these breaks it once.
func TestImportRuleBites(t *testing.T) {
	standard := map[string]bool{"math": true}
	for _, row := range []struct {
		name          string
		imports, deps []string
		faults        int
	}{
		{"shell", []string{"math", "proofsheet/material", "proofsheet/report/check"}, []string{"proofsheet/report/check"}, 0},
		{"shell", []string{"proofsheet/heads"}, nil, 1},
		{"shell", []string{"proofsheet/loads"}, nil, 1},
		{"shell/buckling", []string{"proofsheet/heads", "proofsheet/report/check"}, nil, 1},
		{"material/weld", []string{"proofsheet/report/unit"}, nil, 1},
		{"loads/proof", []string{"proofsheet/report/check/checktest"}, nil, 1},
		{"heads/port", []string{"proofsheet/heads", "gonum.org/v1/gonum/mat"}, []string{"github.com/BurntSushi/toml"}, 1},
		{"heads", nil, []string{"proofsheet/report"}, 1},
		{"heads", nil, []string{"github.com/jung-kurt/gofpdf"}, 1},
		{"report/drawing", []string{"golang.org/x/image/font"}, nil, 1},
		{"report/unit", []string{"proofsheet/report/check"}, nil, 1},
		{"utils", nil, nil, 1},
		{"cmd/proofsheet", []string{"github.com/urfave/cli/v2", "proofsheet/report/pdf"}, []string{"proofsheet/report"}, 0},
	} {
		if got := importFaults(row.name, row.imports, row.deps, standard); len(got) != row.faults {
			t.Errorf("%s with %v, %v: %d faults, want %d: %v", row.name, row.imports, row.deps, len(got), row.faults, got)
		}
	}
}

func TestUnitsInComments(t *testing.T) {
	files := 0
	for _, p := range packages(t) {
		name, ours := p.below()
		if !ours || !fitsAny(calculation, name) || name == "report/check/checktest" {
			continue
		}
		for _, file := range p.GoFiles {
			files++
			tree, err := parser.ParseFile(token.NewFileSet(), filepath.Join(p.Dir, file), nil, parser.ParseComments)
			if err != nil {
				t.Fatal(err)
			}
			for _, fault := range unitFaults(tree) {
				t.Errorf("%s/%s", name, fault)
			}
		}
	}
	if files < 20 {
		t.Errorf("only %d files were read", files)
	}
}

func TestTopLevelEntries(t *testing.T) {
	folders := []string{".git", ".ci", "cmd", "heads", "loads", "material", "report", "shell", "testdata", "dist"}
	files := []string{".git", ".gitignore", ".gitattributes", "LICENSE", "README.md", "DEVELOPERS.md", "go.mod", "go.sum"}
	// A build or a run of the program leaves these behind.
	left := regexp.MustCompile(`^proofsheet(\.exe)?$|\.(test|prof|out|pdf|json|svg|dxf|toml)$`)
	entries, err := os.ReadDir(moduleRoot)
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range entries {
		switch {
		case e.IsDir() && !slices.Contains(folders, e.Name()):
			t.Errorf("folder %s has no place at the top", e.Name())
		case !e.IsDir() && !slices.Contains(files, e.Name()) && !left.MatchString(e.Name()):
			t.Errorf("file %s has no place at the top", e.Name())
		}
	}
}

func TestNothingIsLeftForLater(t *testing.T) {
	later := regexp.MustCompile(`\b(TO` + `DO|FIX` + `ME|XX` + `X)\b`)
	read := 0
	err := filepath.WalkDir(moduleRoot, func(path string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case e.IsDir() && e.Name() == ".git":
			return fs.SkipDir
		case e.IsDir() || filepath.Ext(path) != ".go":
			return nil
		}
		read++
		text, err := os.ReadFile(path)
		for i, line := range strings.Split(string(text), "\n") {
			if word := later.FindString(line); word != "" {
				t.Errorf("%s:%d: %s", path, i+1, word)
			}
		}
		return err
	})
	if err != nil || read < 30 {
		t.Errorf("read %d files: %v", read, err)
	}
}

const oneUnit = `\(*(Pa|kPa|MPa|m|mm|N|J|kg|K|s|rad|deg|1|°C)[0-9²³½⅓^]*\)*`

// unitInBrackets finds [Pa], [N/m of circumference], [J/(kg K)], [-], or where
// the unit stands; link finds a reference to another comment of the package.
var (
	unitInBrackets = regexp.MustCompile(`\[(-|(see|in|SI)\b[^\]]*|` + oneUnit + `([ /]` + oneUnit + `)*( (of|at|per|or) [^\]]*)?)\]`)
	link           = regexp.MustCompile(`\[\*?[A-Z]\w+(\.[A-Z]\w+)?\]`)
)

// hasFloat reports whether a float64 stands in the expression of a type.
func hasFloat(expr ast.Expr) (found bool) {
	ast.Inspect(expr, func(n ast.Node) bool {
		id, ok := n.(*ast.Ident)
		found = found || ok && id.Name == "float64"
		return true
	})
	return found
}

// exportedReceiver reports whether f is a function or a method of an exported
// type.
func exportedReceiver(f *ast.FuncDecl) bool {
	if f.Recv == nil {
		return true
	}
	of := f.Recv.List[0].Type
	if star, ok := of.(*ast.StarExpr); ok {
		of = star.X
	}
	id, ok := of.(*ast.Ident)
	return !ok || id.IsExported()
}

// functionFault says how the comment of a function falls short: it needs one
// unit where parameters are float64 and another where results are, or one and
// a link to the comment that gives the rest.
func functionFault(f *ast.FuncDecl) []string {
	if !exportedReceiver(f) {
		return nil // its comment stands at the interface
	}
	doc, need := f.Doc.Text(), 0
	for _, list := range []*ast.FieldList{f.Type.Params, f.Type.Results} {
		if list != nil && slices.ContainsFunc(list.List, func(f *ast.Field) bool { return hasFloat(f.Type) }) {
			need++
		}
	}
	got := len(unitInBrackets.FindAllString(doc, -1))
	if got >= need || got == 1 && link.MatchString(unitInBrackets.ReplaceAllString(doc, "")) {
		return nil
	}
	return []string{fmt.Sprintf("%s: %d units in its comment, at least %d needed", f.Name.Name, got, need)}
}

// fieldFaults returns the exported fields and methods of a type that lack one.
func fieldFaults(typeName string, list *ast.FieldList) (faults []string) {
	for _, f := range list.List {
		for _, id := range f.Names {
			if id.IsExported() && hasFloat(f.Type) && !unitInBrackets.MatchString(f.Doc.Text()+f.Comment.Text()) {
				faults = append(faults, fmt.Sprintf("%s.%s has no unit in its comment", typeName, id.Name))
			}
		}
	}
	return faults
}

// unitFaults returns every exported field, function and method of the file
// that holds a float64 without a unit in brackets in its comment.
func unitFaults(tree *ast.File) (faults []string) {
	for _, decl := range tree.Decls {
		if f, ok := decl.(*ast.FuncDecl); ok && f.Name.IsExported() {
			faults = append(faults, functionFault(f)...)
		}
	}
	ast.Inspect(tree, func(n ast.Node) bool {
		spec, ok := n.(*ast.TypeSpec)
		if !ok || !spec.Name.IsExported() {
			return true
		}
		switch body := spec.Type.(type) {
		case *ast.StructType:
			faults = append(faults, fieldFaults(spec.Name.Name, body.Fields)...)
		case *ast.InterfaceType:
			faults = append(faults, fieldFaults(spec.Name.Name, body.Methods)...)
		}
		return true
	})
	return faults
}

// The units test must bite.
func TestUnitsInCommentsBites(t *testing.T) {
	for source, want := range map[string]int{
		"// F returns a stress [Pa] at r [m].\nfunc F(r float64) float64 { return r }": 0,
		"// F returns a stress [Pa] at r.\nfunc F(r float64) float64 { return r }":     1,
		"// F returns a stress, see [Full.Energy].\nfunc F() float64 { return 0 }":     1,
		"func F(list []float64) {}":                                                 1,
		"func f(r float64) {}":                                                      0,
		"type T struct{ A, B float64 }":                                             1 + 1,
		"type T struct{ A float64 // a [J/(kg K)]\n}":                               0,
		"type T struct{ A *float64 // a ratio [-]\n b float64 }":                    0,
		"type t struct{ A float64 }":                                                0,
		"type I interface{ A() float64 // a [N/m]\n B() float64 }":                  1,
		"type T struct{ A func(x float64) float64 // a [m]\n}":                      0,
		"// F is [Full.Energy] from r [m].\nfunc F(r float64) float64 { return r }": 0,
		"// A is a.\nfunc (t T) A() float64 { return 0 }":                           1,
		"// A is a.\nfunc (t *t) A() float64 { return 0 }":                          0,
		"type T struct{ A float64 // a [Wall]\n}":                                   1,
		"type T struct{ A float64 // in Unit [see Unit]\n B int }":                  0,
	} {
		tree, err := parser.ParseFile(token.NewFileSet(), "x.go", "package x\n"+source, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		if got := unitFaults(tree); len(got) != want {
			t.Errorf("%s: %v, want %d", source, got, want)
		}
	}
}
