package life

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/material"
	"proofsheet/report/check"
)

// ScatterFactor is the factor on life between the mean of the curves and what is allowed [-]; on cycles, once.
// Source: space and event practice (recalled).
const ScatterFactor = 4.0

// A Class is the fatigue class of a weld detail.
type Class struct {
	Detail string  // in words: "butt weld from both sides"
	FAT    float64 // stress range borne two million times [Pa]
	Source check.Source
}

// The curve of a class.
const (
	atClass   = 2e6                 // cycles at the class itself [-]
	knee      = 5e6                 // end of the slope of 3 [-]
	kneeShare = 0.737               // stress range at the knee over the class [-]
	longKnee  = 1e7                 // knee of the second form [-]
	longShare = 0.58480354764257321 // (2/10)^⅓, stress range there over the class [-]
)

// Cycles returns the cycles to failure [-] at a stress range [Pa] > 0, without the scatter factor:
//
//	N = 2·10⁶ (FAT/Δσ)³                 up to 5·10⁶
//	N = 5·10⁶ (0.737 FAT/Δσ)⁵           beyond, and not above
//	N = 10⁷ (0.585 FAT/Δσ)²²            of the second form, above 10⁷
//
// the fewer cycles of the two forms; below 5·10⁶ they are one. A range above twice the yield of the zone is not this
// function's: see [Detail]. Class from 5 to 200 MPa. No credit for mean stress.
//
// Source: EN 13445-3 clause 18 (recalled); IIW-1823-07 p. 43, knee at 10⁷ and slope 22 (read).
func (c Class) Cycles(Δσ float64) (float64, error) {
	const fn = "life.Class.Cycles"
	if err := errors.Join(
		check.Within(fn, "fatigue class (Pa)", c.FAT, 5e6, 200e6, "classes of welds"),
		check.Within(fn, "stress range (Pa)", Δσ, math.SmallestNonzeroFloat64, math.MaxFloat64, "a stress range"),
	); err != nil {
		return math.NaN(), err
	}
	x := c.FAT / Δσ
	n := atClass * x * x * x
	if n <= knee {
		return n, nil
	}
	first := math.Max(knee, knee*math.Pow(kneeShare*x, 5))
	second := n
	if n > longKnee {
		second = longKnee * math.Pow(longShare*x, 22)
	}
	return math.Min(first, second), nil
}

// steel classes of details [MPa], the lower end where a range is known, and what of it aluminium has [-].
var details = []struct {
	kind      string  // of joint
	words     string  // for the sheet
	steel     float64 // [MPa]
	aluminium float64 // share of the steel class [-]
}{
	{"double butt", "butt weld from both sides, as welded, examined throughout", 80, 0.40},
	{"double butt, in part", "butt weld from both sides, as welded, not examined throughout", 63, 0.33},
	{"single butt, root seen", "butt weld from one side, full penetration shown", 63, 0.33},
	{"single butt with backing", "butt weld from one side on backing, root not examined", 36, 0.33},
	{"single butt", "butt weld from one side, root not examined", 36, 0.33},
}

// fatSource says where the classes come from.
var fatSource = check.Source{Doc: "IIW fatigue classes, EN 13445-3", Where: "clause 18", How: check.Memory}

// ClassOf returns the class of a seam of that kind in an alloy of that family; a kind whose joint is bent by its lap,
// and a family without classes, is an error. A kind that says how its root was seen needs that: root. full: examined over the whole length.
//
//	double butt, full          80 MPa, aluminium 32
//	double butt, not so        63             20.8
//	single butt, root seen     63             20.8
//	single butt, also backed   36             11.9
//
// Steel: lower end of the range known. Aluminium: 0.40 of the steel class for two-sided butts, 0.33 where none is
// listed. Source: IIW (recalled); BS 8118 as in Dwight, Aluminium Design and Construction, 12.5, has 24 with and 17 without backing
// for one-sided butts in aluminium (read), above these.
func ClassOf(kind, family string, root, full bool) (Class, error) {
	if kind == "double butt" && !full {
		kind = "double butt, in part"
	}
	if kind == "single butt, root seen" && !root {
		kind = "single butt"
	}
	for _, d := range details {
		if d.kind == kind {
			return class(d.words, d.steel, d.aluminium, family)
		}
	}
	return Class{FAT: math.NaN()}, fmt.Errorf("no fatigue class is known here for a joint of kind %q: its lap bends it", kind)
}

// PortClass returns the class of the weld of a tube to the wall, in that family; full: groove through the whole wall.
//
//	full penetration  56 MPa, aluminium 18.5
//	fillet            32              10.6
//
// Source: IIW, nozzles 56 to 63, fillets 32 to 63, the lower end (recalled); aluminium 0.33, as for what is not listed.
func PortClass(family string, full bool) (Class, error) {
	if full {
		return class("tube welded through the whole wall", 56, 0.33, family)
	}
	return class("tube welded by fillets or part of the wall", 32, 0.33, family)
}

// RingClass returns the class of the fillet welds of a ring round a shell, for the stress of the wall along the shell at
// their toe, in that family:
//
//	56 MPa, aluminium 18.5
//
// Source: IIW, transverse attachments by fillets 71 to 80 where they carry nothing; 56, the lower end of those that
// carry, since a ring holds the wall in (recalled); aluminium 0.33, as for what is not listed.
func RingClass(family string) (Class, error) {
	return class("ring on the wall, fillets", 56, 0.33, family)
}

// class makes the class of a family from that of steel [MPa].
func class(words string, steel, aluminium float64, family string) (Class, error) {
	switch family {
	case material.Austenitic, material.Ferritic, material.Duplex:
		return Class{Detail: words, FAT: steel * 1e6, Source: fatSource}, nil
	case material.Aluminium:
		return Class{Detail: words + ", aluminium", FAT: steel * aluminium * 1e6, Source: fatSource}, nil
	}
	return Class{FAT: math.NaN()}, fmt.Errorf("no fatigue class of welds is known here for %s", family)
}
