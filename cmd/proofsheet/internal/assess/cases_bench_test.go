package assess_test

import (
	"fmt"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
)

// BenchmarkCases assesses 1,000 cases of the demonstration tank.
func BenchmarkCases(b *testing.B) {
	in := read(b, "demo")
	var cases []tank.Case
	for i := range 1000 {
		c := in.Case[i%len(in.Case)]
		c.Name = fmt.Sprintf("case-%d", i)
		p := 25e5 - 100*float64(i)
		c.UllagePressure = &p
		cases = append(cases, c)
	}
	in.Case = cases
	b.ReportAllocs()
	for b.Loop() {
		if _, err := assess.Assess(in, assess.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
