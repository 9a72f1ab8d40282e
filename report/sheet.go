package report

import (
	"math"

	"proofsheet/report/check"
)

// A Sheet is one assessment of one tank as data: everything that is printed,
// and nothing that still has to be computed. Text, JSON and PDF are three
// views of it.
type Sheet struct {
	Program Program    // who computed
	Tank    TankInfo   // the input, by name and digest
	Block   TitleBlock // what the title block says
	Units   string     // display only: "si" (also when empty) or "us"
	Paper   string     // "a4" (also when empty) or "letter"

	Verdict     check.Status // over all checks; set by [Sheet.Settle]
	VerdictRule string       // rule set named with the verdict: "vessel", "vessel-eu", "flight"
	People      string       // "near" or "clear": who may be about while it is pressurised
	Governing   string       // id@case of the least margin; set by [Sheet.Settle]; "" when no check was made

	Checks      []check.Result        // every check of every case, in the order of parts; also those that do not arise
	Conditions  []Condition           // pressure and temperature by station
	Quantities  []NamedQuantity       // named results, in the order printed; one JSON object
	Permissible []PermissiblePressure // highest ullage pressure of each part
	Proof       *Proof                // nil where no plan may be issued: then a note says why

	Basis     []BasisRow      // rule set, factors and every override
	Materials []MaterialSheet // each named material of the tank
	Joints    []JointSheet    // each named weld joint
	Cases     []CaseSheet     // each load case
	Defaults  []Row           // every input that was left out, with the value taken and why

	PeopleBox   []string // the box "People near this tank", one sentence a line
	Cautions    []string // on page 1 and in JSON
	Notes       []string // what the reader must know beside the checks
	Recalled    []string // every value or formula used from memory, beside those of the checks
	Assumptions []string // what the methods take for granted
	NotCovered  []string // what was not looked at

	Section *Section     // the tank as it is drawn, or nil
	Charts  []Chart      // further charts: stress along the meridian, flight history
	Files   []Attachment // the tank file first, then every file it names
	Head    string       // in the head of the pages in place of the verdict, of a record of a proof test; "" of a sheet
}

// A Program names the build that computed the sheet.
type Program struct{ Name, Version string }

// A TankInfo names the input files and their digests, in hexadecimal.
type TankInfo struct {
	File     string // name of the tank file, without folder
	SHA256   string // of the tank file
	Combined string // over all input files; its first 12 digits stand on every page
	Files    []FileInfo
}

// A FileInfo names a file which the tank file names, with its digest.
type FileInfo struct{ Name, SHA256 string }

// A TitleBlock holds the words of the title block; any may be empty.
type TitleBlock struct {
	Title, Number, Revision, Serial, Project string
	Date                                     string // issue date as given; empty is printed "undated"
	Prepared, Checked, Approved              string // names under the signature lines; a name is not a signature
}

// A NamedQuantity is one entry of the sheet's quantities. An entry that could
// not be determined has a NaN value and says why in Note.
type NamedQuantity struct {
	Key   string  // "volume", "surface_z@burnout", "port.fill.long_chord"
	Value float64 // in Unit [see Unit]
	Unit  string  // SI
	Note  string  // where it is the extreme of several states: which; or why it is missing
}

// A Condition is the state at one station of a part in one case.
type Condition struct {
	Case        string
	Part        string  // "cylinder", "head.aft", …
	Z           float64 // station [m]
	Pressure    float64 // across the wall, liquid head included [Pa]
	Temperature float64 // of the metal [K]
}

// A PermissiblePressure is the highest ullage pressure at which every check of
// a part holds, in the case and by the rule named.
type PermissiblePressure struct {
	Part     string
	Pressure float64 // [Pa]; NaN where it is not assessed
	Check    string  // id@case that sets it
	Rule     string
	Note     string
}

// Shown returns the pressure as it is printed; none where the check fails at any, as
// one of sizes does that no pressure changes.
func (p PermissiblePressure) Shown(system string) string {
	switch {
	case math.IsNaN(p.Pressure):
		return "not assessed"
	case p.Pressure == 0:
		return "none"
	}
	return Show(check.Pa("", "", p.Pressure), system, Down)
}

// A Row is a name, a value as it is printed, and a remark.
type Row struct{ Name, Value, Note string }

// A BasisRow is one factor or choice of the basis.
type BasisRow struct {
	Name     string       // "proof_factor"
	Value    string       // as printed
	Override bool         // given in the tank file in place of the rule's own
	Instead  string       // what the rule's own would have been, for an override
	Source   check.Source // of an override: as the tank file gives it in Doc
}

// A ValueRow is one number with its provenance.
type ValueRow struct {
	Quantity check.Quantity // a NaN value is printed as not available
	Source   check.Source
	Note     string
}

// A MaterialSheet is one named material of the tank as it was used.
type MaterialSheet struct {
	Name        string // of the tank file: "plate"
	Alloy       string // "304L", or "own values"
	Row         string // product, specification, thickness, basis of the value
	Certificate string // as given; empty is printed "none given"
	Used        string // parts made of it
	Values      []ValueRow
	Notes       []string
}

// A JointSheet is one named weld joint and what it is worth where it is used.
type JointSheet struct {
	Name, Kind, Examination, Process string
	Uses                             []JointUse
	Notes                            []string
	Coupons                          *CouponSheet // nil where none were pulled
}

// A JointUse is the efficiency of a joint at one place.
type JointUse struct {
	Place      string  // "cylinder long seam"
	Rule       string  // rule set that gives the efficiency
	Efficiency float64 // [-]; NaN where the joint is not permitted there
	Source     check.Source
	Note       string
}

// A CaseSheet is one load case: what was given and what follows from it.
type CaseSheet struct {
	Name, Title  string
	Rule, People string // "vessel"…; "near" or "clear"
	Values       []check.Quantity
	Notes        []string
}

// A Chart is data against a station or time.
type Chart struct {
	Name   string // of its file, without extension: "meridian-meop"
	Title  string
	X, Y   Axis
	Series []Series
	Limits []Limit // level lines
}

// An Axis names what is plotted, in SI; display units are chosen when drawn.
type Axis struct{ Name, Unit string }

// A Series is one line of a chart. A NaN breaks the line.
type Series struct {
	Name string
	X, Y []float64 // in the units of the chart's axes [see Chart]
}

// A Limit is a level line across a chart.
type Limit struct {
	Name string
	Y    float64 // in the unit of the chart's Y axis [see Chart]
}

// An Attachment is a file embedded in the PDF.
type Attachment struct {
	Name   string
	Data   []byte
	SHA256 string // of Data, in hexadecimal
}
