package material

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"proofsheet/report/check"
)

// This file carries every published row of strength across a fusion weld of
// aluminium, as printed. Rows of alloys that are not carried, class rules and
// typical values are shown and never used; what is used stands in the Zones of
// the alloys.

// A WeldRow is one published row of strength across a fusion weld beside that
// of its parent. A number that the source does not print is NaN.
type WeldRow struct {
	Kind, Metal, Product                          string  // product, or filler metal
	MostThickness                                 float64 // [m]
	ParentYield, ParentUltimate, ParentElongation float64 // [Pa], [Pa], [-]
	Yield, Ultimate, Elongation                   float64 // welded [Pa], [Pa], [-]
	YieldRatio, UltimateRatio                     float64 // as printed [-]
	Source                                        check.Source
	Note                                          string
}

// WeldRows returns every published row, by table.
func WeldRows() []WeldRow {
	none := math.NaN()
	row := func(kind, metal, product string, s check.Source, note string, v ...float64) WeldRow {
		return WeldRow{kind, metal, product, v[0] * mm, v[1] * mpa, v[2] * mpa, v[3] * percent, v[4] * mpa, v[5] * mpa, v[6] * percent, v[7], v[8], s, note}
	}
	var (
		haz32b = check.Source{Doc: en1999Table32b, How: check.Read}
		haz32a = check.Source{Doc: en1999Table32a, How: check.Memory}
		rules  = check.Source{Doc: classRules, How: check.Read}
		guide  = check.Source{Doc: alcotec, How: check.Read}
	)
	return []WeldRow{
		// most thickness mm; parent yield, ultimate MPa, elongation %; welded the same; ratios
		row(hazZone, "5083-O", "extruded O/H111/H112", haz32b, "", 200, 110, 270, none, 110, 270, none, 1, 1),
		row(hazZone, "5083-H12", "drawn tube H12/22/32", haz32b, "", 10, 200, 280, none, 135, 270, none, 0.68, 0.96),
		row(hazZone, "5083-H14", "drawn tube H14/24/34", haz32b, "", 5, 235, 300, none, 135, 270, none, 0.57, 0.9),
		row(hazZone, "6061-T4", "extruded or drawn T4", haz32b, "", 25, 110, 180, none, 95, 150, none, 0.86, 0.83),
		row(hazZone, "6061-T6", "extruded or drawn T6", haz32b, "", 20, 240, 260, none, 115, 175, none, 0.48, 0.67),
		row(hazZone, "6082-T6", "sheet and plate T6/T651", haz32a, "", 6, 260, 310, none, 125, 185, none, 0.48, 0.6),
		row(hazZone, "6082-T6", "plate T6/T651", haz32a, "", 12.5, 255, 300, none, 125, 185, none, 0.49, 0.62),
		row(hazZone, "6061-T6", "sheet and plate T6/T651", check.Source{Doc: "EN 1999-1-1 Table 3.2a; recalled, not seen (HAZ values equal to the read extruded ones)", How: check.Memory}, "", 12.5, 240, 290, none, 115, 175, none, 0.48, 0.6),
		row(hazZone, "5083-O", "sheet and plate O/H111", haz32a, "", 50, 125, 275, none, 125, 275, none, 1, 1),
		row(hazZone, "5083-H116", "sheet and plate H116/H321", haz32a, "", 40, 215, 305, none, 155, 275, none, 0.72, 0.9),
		row(hazZone, "7020-T6", "sheet and plate T6/T651", haz32a, "after 30 days of natural ageing (6xxx: 3 days); times 0.8 for TIG", 12.5, 280, 350, none, 205, 280, none, 0.73, 0.8),
		row(minimumZone, "6061-T6", "any", check.Source{Doc: "24 ksi: ASME IX / AWS B2.1 and D1.2 as quoted in two forum threads; 24/20 ksi: note to MMPDS-01 figure data; 0.75: Kissell & Ferry, Aluminum Structures, p. 64", How: check.Read}, "24 ksi; 20 ksi on a 10 in gauge x 0.75 = 15 ksi on 2 in (103.4 MPa, metric table 105); 80 MPa yield with 4043 filler over 9.5 mm recalled", none, none, none, none, 105, 165, none, none, none),
		row(minimumZone, "5083-H116", "any", check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate recalled", How: check.Memory}, "24 ksi (165) is the 10 in gauge value: x 0.75 = 18 ksi; ultimate 39 to 40 ksi, Lloyd's Register 275", none, none, none, none, 125, 270, none, none, none),
		row(minimumZone, "5086-H116", "any", check.Source{Doc: "yield: Kissell & Ferry, Aluminum Structures, p. 64 (10 in gauge values x 0.75), Lloyd's Register Rules for Materials Table 13.8.1 and O temper (Aluminum Design Manual Table 3.3-1M); ultimate Lloyd's Register 240", How: check.Read}, "19 ksi (130) is the 10 in gauge value: x 0.75 = 14.25 ksi (98.3), O temper and Lloyd's Register 95", none, none, none, none, 95, 240, none, none, none),
		row(minimumZone, "5052-H32", "any", check.Source{Doc: "Kissell & Ferry, Aluminum Structures, p. 64; O temper 65/170 (Aluminum Design Manual Table 3.3-1M)", How: check.Read}, "13 ksi (90) is the 10 in gauge value: x 0.75 = 9.75 ksi (67.2), O temper 65", none, none, none, none, 65, 170, none, none, none),
		row(classZone, "5083-H116/H321", "any", rules, "", none, none, none, none, 125, 275, none, none, none),
		row(classZone, "5083-O", "any", rules, "", none, none, none, none, 125, 275, none, none, none),
		row(classZone, "5086-H116/H321", "any", rules, "", none, none, none, none, 95, 240, none, none, none),
		row(classZone, "5754-O/H111", "any", rules, "", none, none, none, none, 80, 190, none, none, none),
		row(classZone, "6061-T5/T6", "rolled", rules, "ultimate 3 % under the 165 of the table above, yield 20 MPa over its 105", none, none, none, none, 125, 160, none, none, none),
		row(classZone, "6082-T5/T6", "rolled", rules, "", none, none, none, none, 125, 190, none, none, none),
		row(classZone, "6005A-T5/T6", "any", rules, "", none, none, none, none, 100, 160, none, none, none),
		row(typicalZone, "5052-H32", "ER5356", guide, "", none, 193, 228, 12, 97, 193, 19, 0.5, 0.85),
		row(typicalZone, "5083-H116", "ER5183", guide, "", none, 228, 317, 16, 152, 296, 16, 0.67, 0.93),
		row(typicalZone, "5086-H34", "ER5356", guide, "", none, 255, 324, 10, 131, 269, 17, 0.51, 0.83),
		row(typicalZone, "5454-H32", "ER5554", guide, "", none, 207, 269, 15, 110, 241, 17, 0.53, 0.9),
		row(typicalZone, "2014-T6", "ER4043", guide, "", none, 414, 483, 13, 193, 234, 4, 0.47, 0.49),
		row(typicalZone, "2219-T81", "ER2319", guide, "", none, 345, 455, 10, 179, 241, 3, 0.52, 0.53),
		row(typicalZone, "6061-T4", "ER4043", guide, "", none, 145, 241, 22, 124, 186, 8, 0.86, 0.77),
		row(typicalZone, "6061-T6", "ER4043", guide, "", none, 276, 310, 12, 124, 186, 8, 0.45, 0.6),
		row(typicalZone, "6061-T6", "ER5356", guide, "", none, 276, 310, 12, 131, 207, 11, 0.47, 0.67),
	}
}

// of reports whether the row is for the alloy of that name: one row may stand
// for two tempers, "5083-H116/H321".
func (r WeldRow) of(name string) bool {
	alloy, temper, _ := strings.Cut(name, "-")
	mine, tempers, _ := strings.Cut(r.Metal, "-")
	return name == r.Metal || alloy == mine && slices.Contains(strings.Split(tempers, "/"), temper)
}

// weldRowsOf lists the published rows of one metal as they are printed.
func weldRowsOf(name string) (rows [][]string) {
	for _, r := range WeldRows() {
		if !r.of(name) {
			continue
		}
		at := "As printed: " + r.Kind + ", " + r.Metal + ", " + r.Product
		if r.MostThickness > 0 {
			at += fmt.Sprintf(", up to %.4g mm", r.MostThickness/mm)
		}
		rows = append(rows, []string{at})
		trio := func(yield, ultimate, elongation float64) string { // [Pa], [Pa], [-]
			text := fmt.Sprintf("yield %.6g MPa, ultimate %.6g MPa", yield/mpa, ultimate/mpa)
			if !math.IsNaN(elongation) {
				text += fmt.Sprintf(", elongation %.6g %%", elongation/percent)
			}
			return text
		}
		add := func(what, text string) {
			rows = append(rows, []string{what, text, r.Source.How.String(), r.Source.Doc, r.Note})
		}
		if !math.IsNaN(r.ParentYield) {
			add("parent", trio(r.ParentYield, r.ParentUltimate, r.ParentElongation))
		}
		add("welded", trio(r.Yield, r.Ultimate, r.Elongation))
		if !math.IsNaN(r.YieldRatio) {
			add("welded over parent", fmt.Sprintf("yield %.6g, ultimate %.6g", r.YieldRatio, r.UltimateRatio))
		}
	}
	return rows
}
