package fluid_test

import (
	"fmt"
	"testing"

	"proofsheet/material"
	"proofsheet/material/fluid"
	"proofsheet/report/check"
)

// Published cautions, sources in the data: ASTM MNL36 (titanium in oxygen),
// Bellinger et al. 1946 (peroxide), the methanol test of a Ti-6Al-4V tank.
func TestCompatibility(t *testing.T) {
	for _, row := range []struct{ fluid, metal, want string }{
		{"LOX", "Ti-6Al-4V", fluid.Refused}, {"LOX", "titanium", fluid.Refused}, {"LOX", "S355J2", fluid.Refused}, {"LOX", "4130", fluid.Refused},
		{"LOX", "ferritic", fluid.Refused}, {"LOX", "2205", fluid.Refused}, {"LOX", "304L", fluid.Satisfied}, {"LOX", "6061-T6", fluid.Satisfied},
		{"LOX", "2195-T8", fluid.Caution}, {"LOX", "2219-T87", fluid.Satisfied},
		{"HTP-90", "304L", fluid.Caution}, {"HTP-92", "316L", fluid.Caution}, {"HTP-90", "5083-O", fluid.Caution}, {"HTP-90", "6061-T6", fluid.Caution},
		{"HTP-90", "2219-T87", fluid.Refused}, {"HTP-90", "7020-T6", fluid.Refused}, {"HTP-90", "2195-T8", fluid.Refused}, {"HTP-90", "Ti-6Al-4V", fluid.Refused},
		{"HTP-90", "P265GH", fluid.Refused}, {"HTP-90", "aluminium", fluid.Refused}, {"HTP-90", "301-quarter-hard", fluid.Unknown},
		{"N2O", "S355J2", fluid.Caution}, {"N2O", "6061-T6", fluid.Caution}, {"LCH4", "5083-O", fluid.Satisfied}, {"LCH4", "P265GH", fluid.Refused},
		{"methanol", "Ti-6Al-4V", fluid.Refused}, {"methanol", "6061-T6", fluid.Caution}, {"ethanol-75", "6061-T6", fluid.Caution},
		{"water", "304", fluid.Caution}, {"water", "5052-H32", fluid.Caution},
		{"N2O", "304L", fluid.Caution}, {"propane", "P265GH", fluid.Satisfied}, {"LN2", "P265GH", fluid.Refused}, {"LN2", "2205", fluid.Refused}, {"LCH4", "2205", fluid.Refused},
		{"propane", "304", fluid.Satisfied}, {"propane", "Ti-6Al-4V", fluid.Unknown}, {"LOX", "wood", fluid.Unknown}, {"", "", fluid.Unknown},
	} {
		got, note, src := fluid.Compatibility(row.fluid, row.metal)
		known := got != fluid.Unknown
		if got != row.want || known && (note == "" || src.Doc == "" || src.How == check.Unstated) {
			t.Errorf("%s in %s: %s (%s), want %s", row.fluid, row.metal, got, src.Doc, row.want)
		}
	}
}

// TestEveryAlloyIsKnown: each alloy that the program carries has a verdict for
// liquid oxygen, so that none slips through by its name.
func TestEveryAlloyIsKnown(t *testing.T) {
	for _, name := range material.AlloyNames() {
		if got, _, _ := fluid.Compatibility("LOX", name); got == fluid.Unknown {
			t.Errorf("%s has no verdict with LOX", name)
		}
	}
}

func ExampleCompatibility() {
	verdict, note, _ := fluid.Compatibility("LOX", "Ti-6Al-4V")
	fmt.Println(verdict + ": " + note)
	// Output: refused: ignites under impact and on fresh surfaces; titanium alloys burn in oxygen down to about 7 kPa absolute
}
