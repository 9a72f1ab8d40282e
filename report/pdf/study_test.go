package pdf_test

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/pdf"
)

// sweep is a study of n tanks.
func sweep(n int) *pdf.Study {
	s := &pdf.Study{Kind: "Study of a tank: sweep. No calculation sheet", Faults: []string{"BROKEN OFF: 2 of 302 tanks were not run."},
		Asked: []string{"Every wall was tried."}, Cautions: []string{"Only as good as its inputs."}, Ways: []string{"Every sample was assessed."}, Rows: []byte("a,b\n1,2\n"),
		Inputs: pdf.Grid{Columns: []pdf.GridColumn{{Title: "input", Width: 1}, {Title: "values", Width: 2}}, Rows: [][]string{{"cylinder.thickness", "1 mm to 9 mm"}}}}
	line := report.Series{Name: "least margin"}
	table := pdf.Grid{Columns: []pdf.GridColumn{{Title: "wall", Width: 1, Right: true}, {Title: "least margin headed", Width: 1, Right: true}}, Bold: []int{1}, Under: []string{"Under it."}}
	governs := pdf.Governs{Across: "cylinder.thickness", Y: []string{""}}
	for i := range n {
		wall := 0.001 + 1e-5*float64(i)
		line.X, line.Y = append(line.X, wall), append(line.Y, 100*wall-0.2)
		table.Rows = append(table.Rows, []string{fmt.Sprintf("row%d", i), fmt.Sprintf("%.3f", 100*wall-0.2)})
		governs.X = append(governs.X, fmt.Sprintf("%d mm", i))
		governs.Cells = append(governs.Cells, []pdf.Governing{{Check: "cylinder/hoop@meop", State: check.Satisfied}})
	}
	s.Tables = []pdf.Grid{table}
	s.Drawn = []pdf.Drawing{pdf.Lines{Name: "study", Title: "Least margin drawn", X: report.Axis{Name: "wall", Unit: "m"}, Y: report.Axis{Name: "margin", Unit: "1"}, Series: []report.Series{line}},
		governs, pdf.Spreads{Title: "Spreads drawn", Rows: []pdf.SpreadRow{{"cylinder/hoop@meop", 0.1, 0.02, "3 of 500"}, {"cylinder/far", 55, 1, "0 of 500"}}},
		pdf.Follows{Title: "Followed", Rows: []pdf.FollowRow{{"cylinder.thickness", 0.91}, {"pressure.meop", -0.4}}}}
	return s
}

// words returns what stands on the pages of a file, page by page.
func words(t *testing.T, data []byte) []string {
	t.Helper()
	path := filepath.Join(t.TempDir(), "study.pdf")
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	pages := strings.Split(strings.TrimSuffix(run(t, "pdftotext", "-layout", path, "-"), "\f"), "\f")
	for i := range pages {
		pages[i] = strings.Join(strings.Fields(pages[i]), " ")
	}
	return pages
}

var rowNumber = regexp.MustCompile(`\brow[0-9]+`)

// TestWriteStudy: the same bytes twice, what must stand on it stands there, and a table of
// 300 rows loses none of them and has its head on every page.
func TestWriteStudy(t *testing.T) {
	s := fixture()
	s.Settle()
	data, err := pdf.WriteStudy(s, sweep(300))
	if err != nil {
		t.Fatal(err)
	}
	again, _ := pdf.WriteStudy(s, sweep(300))
	if !bytes.Equal(data, again) {
		t.Error("the same study gave different bytes")
	}
	pages := words(t, data)
	all := strings.Join(pages, " ")
	for _, want := range []string{"No calculation sheet", "Invented tank for tests", "tank as written: " + s.VerdictLine(), "approves nothing and is not for signing", "BROKEN OFF: 2 of 302",
		"Only as good as its inputs.", "Every wall was tried.", "1 mm to 9 mm", "Least margin drawn", "Check with the least margin of those made (31 of 300 tanks; all are in the table)",
		"A cylinder/hoop@meop", "3 of 500", "mean 55", "Followed", "+0.91", "-0.40", "Under it.", "Every sample was assessed.", "embedded as study.csv", "serial SN 3", s.Tank.SHA256} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q in\n%s", want, all)
		}
	}
	rows := 0
	for i, page := range pages {
		on := len(rowNumber.FindAllString(page, -1))
		if rows += on; on > 0 && strings.Count(page, "least margin headed") != 1 {
			t.Errorf("page %d has %d rows and no head", i+1, on)
		}
		if !strings.Contains(page, fmt.Sprintf("page %d of %d", i+1, len(pages))) || i > 0 && !strings.Contains(page, "study, approves nothing") {
			t.Errorf("page %d does not say which it is: %s", i+1, page)
		}
	}
	if rows != 300 {
		t.Errorf("%d of 300 rows", rows)
	}
}

// TestWriteStudyWithoutChart says that there is none, and takes a title whose letters
// cannot be printed.
func TestWriteStudyWithoutChart(t *testing.T) {
	s := fixture()
	s.Settle()
	s.Block.Title = "Tank \U0001F680"
	st := sweep(1)
	nan := report.Series{Name: "none", X: []float64{1}, Y: []float64{math.NaN()}}
	st.Drawn = []pdf.Drawing{pdf.Lines{Name: "study", Series: []report.Series{nan}}, pdf.Governs{X: []string{"1"}, Y: []string{""}, Cells: [][]pdf.Governing{{{Fault: true}}}},
		pdf.Spreads{}, pdf.Spreads{Rows: []pdf.SpreadRow{{Mean: math.NaN()}}}, pdf.Follows{}}
	data, err := pdf.WriteStudy(s, st)
	if err != nil {
		t.Fatal(err)
	}
	all := strings.Join(words(t, data), " ")
	for _, want := range []string{"No chart: nothing of this study has a number that could be drawn.", "no such letter: U+1F680"} {
		if !strings.Contains(all, want) {
			t.Errorf("no %q in\n%s", want, all)
		}
	}
	for _, d := range st.Drawn {
		if _, err := pdf.DrawingSVG(d, "si"); err == nil {
			t.Errorf("%T draws nothing", d)
		}
	}
}

// TestLoneValueIsDrawn: a sweep of one value is a mark.
func TestLoneValueIsDrawn(t *testing.T) {
	chart := func(y float64) string {
		svg, err := pdf.DrawingSVG(pdf.Lines{Name: "study", Series: []report.Series{{Name: "a", X: []float64{1, 2, 3}, Y: []float64{0, math.NaN(), y}}}}, "si")
		if err != nil {
			t.Fatal(err)
		}
		return string(svg)
	}
	const mark = `fill="#ffffff"`
	if none, one := strings.Count(chart(math.NaN()), mark), strings.Count(chart(1), mark); one != none+1 {
		t.Errorf("%d marks, then %d", none, one)
	}
}

func TestEvenly(t *testing.T) {
	for _, row := range []struct {
		n, most int
		want    string
	}{{0, 3, "[]"}, {2, 3, "[0 1]"}, {3, 3, "[0 1 2]"}, {5, 3, "[0 2 4]"}, {401, 3, "[0 200 400]"}} {
		if got := fmt.Sprint(pdf.Evenly(row.n, row.most)); got != row.want {
			t.Errorf("%d of %d: %s, want %s", row.most, row.n, got, row.want)
		}
	}
}
