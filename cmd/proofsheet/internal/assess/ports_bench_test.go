package assess_test

import (
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
)

// BenchmarkTwelvePorts assesses the demonstration tank with twelve tubes on its aft
// head.
func BenchmarkTwelvePorts(b *testing.B) {
	in := changed(b, "demo", "count = 2\n", "count = 12\n")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := assess.Assess(in, assess.Options{}); err != nil {
			b.Fatal(err)
		}
	}
}
