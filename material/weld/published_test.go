package weld

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
)

// TestEveryPublishedJointRecord: each number on joints and widths of
// testdata/published/materials.tsv, which says where they come from, stands in
// the list with how it was obtained.
func TestEveryPublishedJointRecord(t *testing.T) {
	text, err := os.ReadFile("../../testdata/published/materials.tsv")
	if err != nil {
		t.Fatal(err)
	}
	_, rows, err := Listing("")
	if err != nil {
		t.Fatal(err)
	}
	listed := func(how string, cells ...string) bool {
		for _, r := range rows {
			line, fits := strings.Join(r, "|")+"|", strings.HasSuffix(strings.Join(r, "|"), "|"+how)
			for _, c := range cells {
				fits = fits && strings.Contains(line, c)
			}
			if fits {
				return true
			}
		}
		return false
	}
	seen := 0
	for _, line := range strings.Split(strings.TrimSpace(string(text)), "\n") {
		f := strings.Split(line, "\t")
		if f[0] != "joint" && f[0] != "width" && f[0] != "tolerance" {
			continue
		}
		seen++
		for _, pair := range strings.Fields(f[5]) {
			at, value, _ := strings.Cut(pair, "=")
			v, err := strconv.ParseFloat(value, 64)
			if err != nil {
				t.Fatal(line)
			}
			e, ok := fmt.Sprintf("|%.2f|", v), false
			switch {
			case f[1] == "normality":
				ok = v == normalityLimit
			case f[0] == "tolerance": // printed to four digits after the point, two of them computed elsewhere to the last
				n, err := strconv.Atoi(at)
				k, errK := ToleranceFactor(n, map[string]float64{"A": 0.99, "B": 0.90}[f[1]], 0.95)
				ok = err == nil && errK == nil && math.Abs(k-v) <= 0.6e-4 && listed(f[4], "k of the "+f[1]+" basis", fmt.Sprintf("n\u00a0=\u00a0%d:\u00a0%.4f", n, k))
			case f[0] == "width" && f[1] == "any":
				ok = listed(f[4], "25.4 mm")
			case f[0] == "width": // 20 mm was read, the row as a whole recalled
				thick := map[string]string{"6": "up to 6 mm", "12": "up to 12 mm", "25": "up to 25 mm", "over": "thicker"}[at]
				ok = listed("read", strings.ToLower(f[1]), value+" mm "+thick) || listed(f[4], strings.ToLower(f[1]), value+" mm "+thick)
			case v == -1: // no credit for examination
				ok = listed(f[4], "|"+f[1]+"|-|-|")
			case at == "met" || at == "not_met":
				ok = listed(f[4], "seamless", e)
			case at == "most":
				ok = listed(f[4], "pressure weld", e)
			case at == "z":
				ok = listed(f[4], f[1], e)
			default: // the joggle joint 2b has the numbers of 2a
				ok = listed(f[4], "|"+f[1][:1]+"|", e)
			}
			if !ok {
				t.Errorf("%s %s: %s (%s) is not shown", f[0], f[1], pair, f[4])
			}
		}
	}
	if seen != 19 {
		t.Errorf("%d records", seen)
	}
}
