package weld

import (
	"fmt"
	"math"
)

// Listing returns the heading and the rows of the table of joints; with a name
// only that kind.
func Listing(name string) (heading []string, rows [][]string, err error) {
	heading = []string{"kind", "UW-12 type", "full", "spot", "none", "limits of use", "source", "how"}
	number := func(e float64) string {
		if math.IsNaN(e) {
			return "as none"
		}
		return fmt.Sprintf("%.2f", e)
	}
	for _, k := range Kinds() {
		if name == "" || name == k.Name {
			rows = append(rows, []string{k.Name, k.Letter, number(k.Full), number(k.Spot), number(k.None), k.Limits, k.Source.Doc + ", " + k.Source.Where, k.Source.How.String()})
		}
	}
	if len(rows) == 0 {
		_, err = Joint{Kind: name}.effective()
	}
	return heading, rows, err
}
