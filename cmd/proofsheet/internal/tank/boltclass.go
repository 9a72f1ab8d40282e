package tank

import (
	"fmt"
	"slices"
)

// A boltClass is a property class of bolts with the least strengths it stands for [MPa].
type boltClass struct {
	name                   string
	ultimate, yield, proof int
	standard               string
}

// boltClasses are those of steel, of which the first number is a hundredth of the ultimate
// strength in MPa and the second ten times the yield over it, and the common ones of
// stainless steel, of which the yield stands for the proof strength. The proof strength of
// a class lies under its yield; of 8.8 it is that of bolts up to M16, thicker ones have a
// little more. Recalled, and shown in messages only: no bolt is assessed by them.
var boltClasses = []boltClass{
	{"4.6", 400, 240, 225, "ISO 898-1"}, {"4.8", 400, 320, 310, "ISO 898-1"}, {"5.6", 500, 300, 280, "ISO 898-1"},
	{"5.8", 500, 400, 380, "ISO 898-1"}, {"6.8", 600, 480, 440, "ISO 898-1"}, {"8.8", 800, 640, 580, "ISO 898-1"},
	{"9.8", 900, 720, 650, "ISO 898-1"}, {"10.9", 1000, 900, 830, "ISO 898-1"}, {"12.9", 1200, 1080, 970, "ISO 898-1"},
	{"A2-50", 500, 210, 210, "ISO 3506-1"}, {"A2-70", 700, 450, 450, "ISO 3506-1"}, {"A2-80", 800, 600, 600, "ISO 3506-1"},
	{"A4-50", 500, 210, 210, "ISO 3506-1"}, {"A4-70", 700, 450, 450, "ISO 3506-1"}, {"A4-80", 800, 600, 600, "ISO 3506-1"},
}

// propertyClass says what to write for a bolt of a property class, "" where text is none.
func propertyClass(text string) string {
	i := slices.IndexFunc(boltClasses, func(c boltClass) bool { return c.name == text })
	if i < 0 {
		return ""
	}
	c := boltClasses[i]
	return fmt.Sprintf("%s is a property class of %s: as recalled %d MPa ultimate, %d MPa yield, %d MPa proof strength; write at most \"%[5]d MPa\", or the proof strength of the certificate",
		c.name, c.standard, c.ultimate, c.yield, c.proof)
}
