package tank

import (
	_ "embed"
	"fmt"
	"regexp"
	"strings"
)

//go:embed starter.toml
var starter string

// A Start is what a starter file begins with; an empty field is as in the
// commented starter.
type Start struct {
	Head        string // shape of both heads
	Fluid       string // contents
	Temperature string // of the contents, "90 K"
	MEOP        int    // [bar]
	Alloy       string
}

// Starter returns a commented tank file that reads without fault.
func Starter() []byte { return StarterFor(Start{}) }

// StarterFor returns the commented tank file for a choice.
func StarterFor(s Start) []byte {
	text := starter
	if s.Alloy != "" {
		text = strings.Replace(text, `alloy = "304L"                   # `, fmt.Sprintf("%-32s # ", `alloy = "`+s.Alloy+`"`), 1)
	}
	if s.Fluid != "" {
		text = strings.Replace(text, `fluid = "isopropanol"            # `, fmt.Sprintf("%-32s # ", `fluid = "`+s.Fluid+`"`), 1)
		text = strings.Replace(text, `title = "Fuel tank"`, `title = "Tank for `+s.Fluid+`"`, 1)
	}
	if s.Temperature != "" {
		text = strings.Replace(text, `temperature = "20 degC"          # `, fmt.Sprintf("%-32s # ", `temperature = "`+s.Temperature+`"`), 1)
	}
	if s.MEOP != 0 {
		text = strings.Replace(text, `meop = "10 bar"  `, fmt.Sprintf(`meop = "%d bar"  `, s.MEOP), 1)
		text = strings.Replace(text, `relief = "9 bar"  `, fmt.Sprintf(`relief = "%.4g bar"  `, 0.9*float64(s.MEOP)), 1)
		text = strings.Replace(text, `ullage_pressure = "10 bar"`, fmt.Sprintf(`ullage_pressure = "%d bar"`, s.MEOP), 1)
		text = strings.Replace(text, `ullage_pressure = "9 bar"`, fmt.Sprintf(`ullage_pressure = "%d bar"`, s.MEOP), 1)
	}
	if s.Head != "" {
		for _, end := range []string{"aft", "forward"} {
			block := "[head." + end + "]                       # hemisphere | ellipsoid | torisphere | cone | toricone | flat\n" + headStarts[s.Head]
			text = headBlock(end).ReplaceAllLiteralString(text, block)
		}
	}
	return []byte(text)
}

// headBlock finds the table of a head with the empty line that ends it.
func headBlock(end string) *regexp.Regexp {
	return regexp.MustCompile(`(?s)\[head\.` + end + `\].*?\n(?:\n)`)
}

// rolled and pressed are what the starting heads have in common.
const (
	rolled = `thickness = "6 mm"
under_tolerance = "0.3 mm"
forming = "rolled"
material = "plate"
seam = "girth"                   # head to cylinder
segment_seam = "long"            # welds inside the head
segment_seam_clock = "180 deg"
`
	pressed = `thickness = "6 mm"
under_tolerance = "0.3 mm"
forming_thinning = 0.15          # or least_thickness, as measured
forming = "pressed"              # rolled | pressed | spun | machined
straight_flange = "20 mm"
material = "plate"
seam = "girth"                   # head to cylinder
segment_seam = "none"            # one piece
`
)

// headStarts is the table of each shape, sized for the starter's cylinder.
var headStarts = map[string]string{
	"hemisphere": "shape = \"hemisphere\"\n" + pressed + "\n",
	"ellipsoid":  "shape = \"ellipsoid\"\naspect = 2.0                     # inside diameter over twice the depth\n" + pressed + "\n",
	"torisphere": "shape = \"torisphere\"\ncrown_radius = \"400 mm\"          # inside\nknuckle_radius = \"40 mm\"\n" + pressed + "\n",
	"cone":       "shape = \"cone\"\nhalf_angle = \"30 deg\"            # wall to tank axis\n" + rolled + "# tip = { diameter = \"60 mm\", close = \"plate\", thickness = \"6 mm\" }\n\n",
	"toricone": "shape = \"toricone\"\nhalf_angle = \"30 deg\"            # wall to tank axis\nknuckle_radius = \"40 mm\"\n" + strings.Replace(strings.Replace(pressed,
		"segment_seam = \"none\"            # one piece\n", "segment_seam = \"long\"            # welds inside the head\nsegment_seam_clock = \"180 deg\"\n", 1), "straight_flange = \"20 mm\"\n", "", 1) + "\n",
	"flat": `shape = "flat"
thickness = "30 mm"
under_tolerance = "0.5 mm"
corner_factor = 0.33             # C of the corner's weld detail
source = "ASME VIII-1 UG-34, full-weld corner; confirm for your detail"
forming = "machined"
material = "plate"
seam = "girth"                   # head to cylinder
segment_seam = "none"            # one piece

`,
}
