package tank

import (
	"path/filepath"
	"regexp"
	"strings"

	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/material/weld"
)

// The closed lists that other packages hold.

func alloyNames() []string { return material.AlloyNames() }

func fluidNames() []string { return fluid.Names() }

// sharePattern is how a share by mass between two built-in fluids is written.
const sharePattern = `^(ethanol|HTP)-[0-9]+(\.[0-9]+)?$`

// knownFluid reports whether a word names a share between two built-in fluids.
func knownFluid(word string) bool {
	_, ok := fluid.Find(word)
	return ok && shares.MatchString(word)
}

var shares = regexp.MustCompile(sharePattern)

// alloyOf returns the alloy that a designation means.
func alloyOf(designation string) string {
	if a, ok := material.FindAlloy(designation); ok {
		return a.Name
	}
	return ""
}

func jointKinds() []string {
	var names []string
	for _, k := range weld.Kinds() {
		names = append(names, k.Name)
	}
	return names
}

func shapeNames() []string {
	var names []string
	for _, s := range heads.Shapes {
		names = append(names, s.Name)
	}
	return names
}

// gases are the fluids of a pneumatic test.
var gases = []string{"air", "nitrogen", "helium"}

func testFluids() []string { return append(append([]string{}, gases...), fluid.Names()...) }

// IsTankName reports whether a file is named as tank files are.
func IsTankName(name string) bool { return strings.EqualFold(filepath.Ext(name), ".toml") }

// tableNamed tells a tank file that is named where a table is asked for.
func (r *reader) tableNamed(key, name string) bool {
	if IsTankName(name) {
		r.fault(key, "%q is a tank file; write the name of a table of comma-separated values, as \"FILE.csv\"", name)
		return false
	}
	return true
}
