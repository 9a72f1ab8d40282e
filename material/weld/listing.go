package weld

import (
	"fmt"
	"math"
	"strings"
)

// Listing returns the heading and the rows of the table of joints; with a name
// only that kind. Without one also what else the program knows of welds: parts
// without them, the European coefficient, widths. A row of one cell heads those
// that follow.
func Listing(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"kind", "type", "full", "spot", "none", "limits of use", "source", "how"}
	number := func(e float64) string {
		if math.IsNaN(e) {
			return "-" // no credit: the efficiency without examination counts
		}
		return fmt.Sprintf("%.2f", e)
	}
	for _, k := range Kinds() {
		if name == "" || name == k.Name {
			rows = append(rows, []string{k.Name, k.Letter, number(k.Full), number(k.Spot), number(k.None), k.Limits, k.Source.Doc + ", " + k.Source.Where, k.Source.How.String()})
		}
	}
	if k, ok := find(name); ok {
		rows = append(rows, europeanRows(k)...)
	}
	if name == "" {
		rows = append(rows, []string{"Type is that of Table UW-12; - is no credit for radiography, the column none counts."})
		rows = append(rows, furtherRows()...)
	}
	if len(rows) == 0 {
		_, err = Joint{Kind: name}.effective()
	}
	return heading, rows, err
}

// furtherRows lists what is not a kind of joint.
func furtherRows() [][]string {
	seamless, source := SeamlessEfficiency(Joint{Kind: DoubleButt, Examination: "spot"})
	other, _ := SeamlessEfficiency()
	row := func(what, full, spot, none, words, source, how string) []string {
		return []string{what, "", full, spot, none, words, source, how}
	}
	e := func(v float64) string { return fmt.Sprintf("%.2f", v) }
	rows := [][]string{
		{"No weld in the part (efficiency by the joint beside it)"},
		row("seamless head or shell", e(seamless), e(seamless), e(other), "double butt or backed butt beside it; beside any other kind "+e(other), source.Doc+", "+source.Where, source.How.String()),
		row("friction or other pressure weld", "0.80", "0.80", "0.80", "at most; no kind of its own: write efficiency with source, or coupons", "ASME BPVC VIII-1, UW-12(f), one copy", "read"),
		{"Coefficient z in vessel-eu, butts of full penetration only"},
	}
	for _, z := range []struct{ group, exam, words string }{
		{"testing group 1", "full", "100 % of the governing butts"}, {"testing group 2", "full", "100 %, falling to 25 % after satisfactory experience"},
		{"testing group 3", "spot", "25 or 10 %, which is more than spots"}, {"testing group 4", "none", "seen only: 0.9 of the allowable, restricted steels, no aluminium"},
	} {
		v, source, _ := european(Kind{Name: DoubleButt}, z.exam)
		cells := map[string]string{z.exam: e(v)}
		rows = append(rows, row(z.group, cells["full"], cells["spot"], cells["none"], z.words, source.Doc+", clause 5.6", source.How.String()))
	}
	rows = append(rows, []string{"Softened width of aluminium to each side of a weld"})
	for _, process := range []string{"mig", "tig"} {
		for _, t := range []struct{ most, words string }{{"6", "up to 6 mm thick"}, {"12", "up to 12 mm"}, {"25", "up to 25 mm"}, {"40", "thicker"}} {
			var mm float64
			fmt.Sscan(t.most, &mm)
			width, source, _ := aluminiumWidth(process, mm*millimetres)
			rows = append(rows, row(process, "", "", "", fmt.Sprintf("%.4g mm %s", width/millimetres, t.words), source.Doc+", "+source.Where, source.How.String()))
		}
	}
	rows = append(rows, row("any, shown only", "", "", "", "25.4 mm of any thickness", "Aluminum Design Manual: 1 in each side", "read"))
	rows = append(rows, []string{"Coupons: limit = mean - k s, 95 % confidence; normality rejected at 5 % when the modified A2 of Anderson and Darling is over " + fmt.Sprint(normalityLimit)})
	for _, basis := range []string{BasisA, BasisB} {
		p, _, _ := share(basis)
		var factors []string
		for _, n := range shownCoupons {
			if k, err := ToleranceFactor(n, p, confidence); err == nil {
				factors = append(factors, fmt.Sprintf("n\u00a0=\u00a0%d:\u00a0%.4f", n, k))
			}
		}
		rows = append(rows, row("k of the "+basis+" basis", "", "", "", strings.Join(factors, ", "), "one-sided normal tolerance factor, noncentral t", "computed"))
	}
	return rows
}

// shownCoupons are the numbers of coupons for which k is listed.
var shownCoupons = []int{2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 20, 25, 30, 40, 50, 75, 100, 200}

// europeanRows says what vessel-eu makes of a kind of joint.
func europeanRows(k Kind) [][]string {
	z, source, err := european(k, "full")
	if err != nil {
		return [][]string{{"vessel-eu: " + err.Error()}}
	}
	spot, _, _ := european(k, "spot")
	none, _, _ := european(k, "none")
	e := func(v float64) string { return fmt.Sprintf("%.2f", v) }
	return [][]string{{"In vessel-eu"}, {k.Name, "", e(z), e(spot), e(none), "coefficient z; without examination 0.9 of the allowable", source.Doc + ", " + source.Where, source.How.String()}}
}
