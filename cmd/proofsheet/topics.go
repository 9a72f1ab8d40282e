package main

import (
	"fmt"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/unit"
)

// A topic is a page of help that belongs to no single command. A line of text
// that begins with a blank stands as it is; all else is wrapped.
type topic struct{ name, about, text string }

// manTopic is the topic that prints everything as one man page.
const manTopic = "man"

// topics are the pages, by name.
var topics = []topic{
	{"exit", "exit status, streams, environment", `
0: every check is satisfied or does not arise. 1: one is not satisfied or not assessed (record: the test failed or is inconclusive; verify: something does not hold, or another version made the sheet; size: nothing in the stock does, or a part cannot be sized; study: it was broken off, or a sample was no tank). 2: the input or the call is wrong, or a file cannot be read or written.

Results go to standard output, all else to standard error. "-" as a file is standard input or output. An output file appears whole or not at all; no input is written over; a file takes the place of nothing but one of its kind by this program, a PDF only of one that no person has signed.

  PROOFSHEET_IDENTITY   folder of the local signing identity
  PROOFSHEET_PASSWORD   password of a PKCS#12 file

NO_COLOR asks for nothing here: no colour is ever printed, and progress is shown on a terminal only.`},
	{"history", "the flight history, a file that [flight] names", ""},
	{"log", "the log of a proof test, for record", `
A table of comma-separated values, the unit of each column in its heading:

  # sheet: 0123456789ab
  time [s],pressure [bar],volume [ml] ± 0.1 ml,temperature [degC] ± 0.02 K

time, pressure (at the gauge) and volume (water put in) are needed. returned (water let out) and line (what pump, hose and gauge line take) come off the volume. temperature is that of the water, wall_temperature may stand beside it; without the water's temperature no log passes. With gas no volume is needed; such a record can fail a test, not pass it. Behind ± stands the standard uncertainty of a change of the reading; no change counts for surer than the step in which its column is written. An empty cell was not read.

Begin with a row of the open tank: the zero of the gauge. pressure-NAME is a further gauge. Every way up over half the setting is judged; a row behind a # is counted, not judged.

strain-NAME [um/m] is a strain gauge. Those named hoop… and axial… sit on the plain cylinder, 2.5 √(radius × wall) clear of its junctions; of any other a straight and still strain is asked. The line "# sheet:" names the sheet by the digits on its pages.`},
	{"margins", "how to read a margin", `
Margin = capacity / (factor × demand) − 1. Zero is just enough; +0.25 means a quarter more capacity than is asked; below zero the check is not satisfied.

Demands are printed rounded up, capacities and margins rounded down, so that no printed number is better than the one computed. A check that cannot be made has no margin: it is "not assessed", and so is the tank. "Not applicable" says why a check does not arise, and leaves the verdict alone.

The governing check is that of the least margin among those made. Where two methods answer one question both are printed, and the worse counts. A margin holds for the file as it is written, tolerances included: proofsheet study shows how it moves.`},
	{"tank", "the tank file", `
One TOML file. Needed are pressure.meop, contents (fluid, or density with source), one [material.NAME], one [joint.NAME], [cylinder], [head.aft] and [head.forward], each with tolerance, material and seams. All else has a default, and the sheet prints it. Unknown keys are errors.

  [sheet] [basis] [pressure] [contents]   title, rule and factors, MEOP, liquid
  [material.NAME] [joint.NAME]            metals and welds, as many as needed
  [cylinder] [head.aft] [head.forward]    the shell; [support] says who holds it
  [[port]] [[case]]                       openings; load cases
  [flight] [proof] [stock] [scatter]      history, test, sizing, study

z runs forward from the aft seam. The axial load factor is what the liquid feels, 1 on the pad. Paths are relative to the file. proofsheet new writes a commented starter, proofsheet list keys prints every key, and proofsheet schema describes them to an editor.`},
	{"units", "units of values", ""},
}

// unitsText says how values are written; the units are those the reader takes.
func unitsText() string {
	var b strings.Builder
	b.WriteString("A value with a dimension is text with a unit, \"3 mm\", \"1/8 in\"; a bare number is an error. Ratios, counts and load factors are bare numbers. Pressure acts across the wall.\n")
	for _, k := range unit.Kinds() {
		lines := wrap(strings.ReplaceAll(strings.Join(k.Units(), ", "), "\u00a0", " "), helpWidth-21)
		fmt.Fprintf(&b, "  %-17s  %s\n", k, strings.Join(lines, "\n"+strings.Repeat(" ", 21)))
	}
	b.WriteString("Inside all is SI; units = \"us\" in [sheet] changes what is shown, not what is computed.")
	return b.String()
}

// historyText says what a flight history holds; the columns are those the reader takes.
func historyText() string {
	columns := strings.Join(wrap(strings.Join(tank.HistoryHeadings(), ", "), helpWidth-2), "\n  ")
	return `A table of comma-separated values, named by history = "flight.csv" in [flight]: one row for each instant, times rising, each a load case of its own. The unit of a column stands behind its name in brackets, any that proofsheet help units lists; decimal points, no semicolons; a line that begins with # is not read. Columns:

  ` + columns + `

Needed are time, one of ullage_pressure and ullage_absolute, one of axial_load_factor and axial_acceleration, and one of liquid_mass, fill and level. ullage_absolute needs outside_absolute or altitude beside it, axial_acceleration needs acceleration = "sensed" or "vertical" in [flight]. An empty cell is refused: a gap is not a zero. A file with headings of its own is read by [flight.columns]: time = "t (s)". Other columns are not used, and the sheet says so.`
}

func topicNames() (names []string) {
	for _, t := range topics {
		names = append(names, t.name)
	}
	return append(names, manTopic)
}

// body returns the text of a topic.
func (t topic) body() string {
	switch t.name {
	case "units":
		return unitsText()
	case "history":
		return historyText()
	}
	return strings.TrimPrefix(t.text, "\n")
}

// page is the topic as a page of help.
func (t topic) page() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%s: %s\n", t.name, t.about)
	for _, line := range strings.Split(t.body(), "\n") {
		if strings.HasPrefix(line, " ") || line == "" {
			fmt.Fprintf(&b, "%s\n", line)
			continue
		}
		fmt.Fprintf(&b, "%s\n", strings.Join(wrap(line, helpWidth), "\n"))
	}
	return b.String()
}
