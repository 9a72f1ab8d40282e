package main

import (
	"os"
	"testing"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/pdf"
)

// BenchmarkSheet reads, assesses and draws the demonstration tank, unsigned.
func BenchmarkSheet(b *testing.B) {
	spendMemory()
	src, err := os.ReadFile("../../testdata/tanks/demo.toml")
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		t, err := tank.Read("demo.toml", src, os.ReadFile)
		if err != nil {
			b.Fatal(err)
		}
		s, err := assess.Assess(t, assess.Options{})
		if err != nil {
			b.Fatal(err)
		}
		if _, err := pdf.Write(s); err != nil {
			b.Fatal(err)
		}
	}
}
