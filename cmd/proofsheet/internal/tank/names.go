package tank

import (
	"proofsheet/heads"
	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/material/weld"
)

// The closed lists that other packages hold.

func alloyNames() []string { return material.AlloyNames() }

func fluidNames() []string { return fluid.Names() }

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
