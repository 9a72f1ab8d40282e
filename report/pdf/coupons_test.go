package pdf_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/drawing"
	"proofsheet/report/pdf"
)

// couponed is the fixture with coupons on its first joint.
func couponed(limit float64, refused string) *report.Sheet {
	s := fixture()
	s.Joints[0].Coupons = &report.CouponSheet{
		File: "coupons.csv", Said: "Stated: process tig", Notes: []string{"a plate limit"},
		Rows: []report.CouponRow{
			{Name: "W1", Kind: "weld", Failure: "haz", Ultimate: 305e6, Yield: 184e6}, {Name: "W2", Kind: "weld", Ultimate: 311e6, Yield: math.NaN()},
			{Name: "W3", Kind: "weld", Ultimate: 298e6, Yield: 179e6}, {Name: "P1", Kind: "parent", Ultimate: 462e6, Yield: math.NaN()},
		},
		Limits: []report.CouponLimit{{Name: "ultimate", Basis: "A", N: 3, Mean: 304.7e6, Deviation: 6.5e6, Factor: 10.5527, Limit: limit, Normality: "not rejected", Outlier: "coupon W2", Refused: refused,
			Source: check.Source{Doc: "noncentral t", How: check.Computed}}},
		Ratios: []report.ValueRow{{Quantity: check.Num("", "design", 0.62), Source: check.Source{Doc: "ratio", How: check.Computed}}},
	}
	return s
}

// plotOf returns the plot of the coupons.
func plotOf(t *testing.T, s *report.Sheet) drawing.Figure {
	t.Helper()
	for _, f := range pdf.Figures(s) {
		if strings.HasPrefix(f.Name, "coupons-") {
			return f
		}
	}
	t.Fatal("no plot of the coupons")
	return drawing.Figure{}
}

// Every strength has one mark, told apart without colour; mean and limit have a
// line each with its number, also where the limit lies below zero and is not used.
func TestCouponsAreDrawn(t *testing.T) {
	for _, row := range []struct {
		limit   float64
		refused string
		words   string
	}{{236e6, "", "A limit 236.0 MPa"}, {-16.6e6, "not above zero", "A limit, not used -16.60 MPa"}, {math.NaN(), "normality is rejected", ""}} {
		s := couponed(row.limit, row.refused)
		f := plotOf(t, s)
		black, white := 0, 0
		for _, m := range f.Fills {
			switch m.Grey {
			case 0:
				black++
			case 1:
				white++
			}
		}
		if black != 4 || white != 2 {
			t.Errorf("limit %g: %d black marks of ultimate, want 4; %d white ones of yield, want 2", row.limit, black, white)
		}
		var text string
		for _, x := range f.Texts {
			text += x.Text + "\n"
		}
		if !strings.Contains(text, "mean of ultimate 304.7 MPa") || !strings.Contains(text, row.words) {
			t.Errorf("limit %g: %s", row.limit, text)
		}
		for _, l := range f.Lines {
			if !(l.From.Y <= f.Height && l.To.Y >= 0) {
				t.Errorf("limit %g: a line outside the figure", row.limit)
			}
		}
		write(t, s)
	}
}

// A set that shows nothing has no plot, and the sheet is still written.
func TestNoCouponsNoPlot(t *testing.T) {
	s := couponed(math.NaN(), "no coupons")
	s.Joints[0].Coupons.Rows = nil
	for _, f := range pdf.Figures(s) {
		if strings.HasPrefix(f.Name, "coupons-") {
			t.Error("a plot of nothing")
		}
	}
	write(t, s)
}
