package bolting

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"proofsheet/report/check"
)

// A Thread is a parallel screw thread, external and internal.
type Thread struct {
	Name    string
	Major   float64 // d, basic major diameter [m]
	Pitch   float64 // p [m]
	Unified bool    // unified, classes 2A and 2B; else metric, 6g and 6H
}

const (
	inch = 0.0254 // [m]
	mm   = 1e-3   // [m]
)

// coarse is the pitch [mm] of metric threads by diameter [mm].
//
// Source: ISO 261, recalled.
var coarse = map[string]float64{"3": 0.5, "4": 0.7, "5": 0.8, "6": 1, "8": 1.25, "10": 1.5, "12": 1.75, "14": 2, "16": 2, "18": 2.5,
	"20": 2.5, "22": 2.5, "24": 3, "27": 3, "30": 3.5, "33": 3.5, "36": 4, "39": 4, "42": 4.5, "45": 4.5, "48": 5}

var (
	metricThread  = regexp.MustCompile(`^M(\d+(?:\.\d+)?)(?: ?[x×] ?(\d+(?:\.\d+)?))?$`)
	unifiedThread = regexp.MustCompile(`^(?:#(\d+)|(?:(\d+)[ -])?(\d+)/(\d+)|(\d*\.\d+|\d+))-(\d+)(?: ?UN[A-Z]*)?$`)
)

// ParseThread reads a thread as it is written on a drawing: "M10", "M20x1.5",
// "1/4-28 UNF", "#10-32 UNF", "1 1/16-12 UN". Taper and pipe threads, and diameters
// outside 3 to 90 mm, are refused.
func ParseThread(text string) (Thread, error) {
	s := strings.TrimSpace(text)
	if m := metricThread.FindStringSubmatch(s); m != nil {
		d, _ := strconv.ParseFloat(m[1], 64)
		p, ok := coarse[m[1]]
		if m[2] != "" {
			p, _ = strconv.ParseFloat(m[2], 64)
			ok = true
		}
		if !ok {
			return Thread{}, fmt.Errorf("no coarse pitch of M%s is known here; write the pitch, as \"M%sx1.5\"", m[1], m[1])
		}
		return made(Thread{Name: s, Major: d * mm, Pitch: p * mm})
	}
	if m := unifiedThread.FindStringSubmatch(s); m != nil {
		n := func(i int) float64 { v, _ := strconv.ParseFloat(m[i], 64); return v }
		d := n(5)
		switch {
		case m[1] != "":
			d = 0.060 + 0.013*n(1)
		case m[4] != "":
			d = n(2) + n(3)/n(4)
		}
		return made(Thread{Name: s, Major: d * inch, Pitch: inch / n(6), Unified: true})
	}
	return Thread{}, fmt.Errorf("%q is no thread that is known here; write a parallel one, as \"M10\", \"M20x1.5\" or \"1/4-28 UNF\" (taper and pipe threads are not covered)", text)
}

// made refuses a thread outside of what the limits of size cover.
func made(t Thread) (Thread, error) {
	if !(t.Major >= 3*mm && t.Major <= 90*mm) {
		return Thread{}, fmt.Errorf("thread %s: a diameter of %.4g mm, must be from 3 to 90 mm", t.Name, t.Major/mm)
	}
	if !(t.Pitch >= 0.02*t.Major && t.Pitch <= 0.25*t.Major) {
		return Thread{}, fmt.Errorf("thread %s: a pitch of %.4g mm does not go with its diameter", t.Name, t.Pitch/mm)
	}
	_, err := t.limits()
	return t, err
}

// StressArea returns the area [m2] on which the proof strength of a bolt is stated:
//
//	A_t = π/4 (d − 0.9382 p)²   metric      A_t = π/4 (d − 0.9743 p)²   unified
//
// Source: ISO 898-1 and ASME B1.1, recalled; the metric form read in a worked example.
func (t Thread) StressArea() float64 { return t.area(0.9382, 0.9743) }

// RootArea returns the area [m2] of the bolt's root, on which the rules for bolted
// covers take the allowable stress: d − 1.2269 p metric, d − 1.2990 p unified.
//
// Source: ISO 68-1, ASME B1.1, recalled.
func (t Thread) RootArea() float64 { return t.area(1.2269, 1.2990) }

func (t Thread) area(metric, unified float64) float64 {
	k := metric
	if t.Unified {
		k = unified
	}
	d := t.Major - k*t.Pitch
	return math.Pi / 4 * d * d
}

// Strip holds the areas that are sheared when a thread strips, per length of
// engagement.
type Strip struct {
	Internal float64 // of the threads in the boss, at the fitting's major diameter [m2/m]
	External float64 // of the threads on the fitting, at the boss's minor diameter [m2/m]
}

// StripAreas returns the shear areas for limits of size, n = 1/p:
//
//	internal  π n d_min [1/(2n) + 0.57735 (d_min − D2_max)]
//	external  π n D1_max [1/(2n) + 0.57735 (d2_min − D1_max)]
//
// d_min least major and d2_min least pitch diameter of the external thread, D2_max
// largest pitch and D1_max largest minor diameter of the internal one [m].
//
// Source: FED-STD-H28, form read, constants recalled.
func StripAreas(p, dMin, d2Min, d2Max, d1Max float64) Strip {
	return Strip{
		Internal: math.Pi / p * dMin * (p/2 + 0.57735*(dMin-d2Max)),
		External: math.Pi / p * d1Max * (p/2 + 0.57735*(d2Min-d1Max)),
	}
}

// Strip returns the shear areas of a thread at the limits of its classes.
func (t Thread) Strip() (Strip, error) {
	l, err := t.limits()
	if err != nil {
		return Strip{math.NaN(), math.NaN()}, err
	}
	s := StripAreas(t.Pitch, l.dMin, l.d2Min, l.d2Max, l.d1Max)
	if !(s.Internal > 0 && s.External > 0) {
		return s, fmt.Errorf("thread %s: its flanks do not overlap at the limits of size", t.Name)
	}
	return s, nil
}

// limitsOfSize are what the tolerance classes leave of a thread [m].
type limitsOfSize struct{ dMin, d2Min, d2Max, d1Max float64 }

func (t Thread) limits() (limitsOfSize, error) {
	if t.Unified {
		return t.unified(), nil
	}
	return t.metric()
}

// metricLimits is, by pitch [mm], the allowance of g and the tolerances of the
// external major and the internal minor diameter in grade 6 [µm].
//
// Source: ISO 965-1, recalled; three sizes held to printed limits.
var metricLimits = map[float64][3]float64{0.5: {20, 106, 140}, 0.7: {22, 140, 180}, 0.75: {22, 140, 190}, 0.8: {24, 150, 200}, 1: {26, 180, 236},
	1.25: {28, 212, 265}, 1.5: {32, 236, 300}, 1.75: {34, 265, 335}, 2: {38, 280, 375}, 2.5: {42, 335, 450}, 3: {48, 375, 500}, 3.5: {53, 425, 560},
	4: {60, 475, 600}, 4.5: {63, 500, 670}, 5: {71, 530, 710}, 5.5: {75, 560, 750}, 6: {80, 600, 800}}

// metric returns the limits of 6g and 6H: pitch diameter tolerance in grade 6
// 90 p^0.4 d^0.1 µm, external, and 1.32 times that, internal, p and d [mm], d the
// geometric mean of its range of diameters, to preferred numbers.
//
// Source: ISO 965-1, recalled.
func (t Thread) metric() (limitsOfSize, error) {
	p, d := t.Pitch/mm, t.Major/mm
	row, ok := metricLimits[math.Round(p*1000)/1000]
	if !ok {
		return limitsOfSize{}, fmt.Errorf("thread %s: the limits of size of a pitch of %.4g mm are not known here", t.Name, p)
	}
	mean := math.NaN()
	for lo := 2.8; lo < 180; lo *= 2 {
		if d > lo*(1-1e-9) && d <= 2*lo*(1+1e-9) {
			mean = lo * math.Sqrt2
		}
	}
	td2 := preferred(90 * math.Pow(p, 0.4) * math.Pow(mean, 0.1))
	tD2 := preferred(1.32 * td2)
	const µm = 1e-6
	es, d2, d1 := row[0]*µm, t.Major-0.649519*t.Pitch, t.Major-1.082532*t.Pitch
	l := limitsOfSize{dMin: t.Major - es - row[1]*µm, d2Min: d2 - es - td2*µm, d2Max: d2 + tD2*µm, d1Max: d1 + row[2]*µm}
	return l, check.Within("bolting.Thread", "tolerance of the pitch diameter over the pitch", tD2*µm/t.Pitch, 0, 0.5, "limits of size")
}

// r40 are the preferred numbers of a decade.
var r40 = [...]float64{100, 106, 112, 118, 125, 132, 140, 150, 160, 170, 180, 190, 200, 212, 224, 236, 250, 265, 280, 300, 315, 335, 355, 375,
	400, 425, 450, 475, 500, 530, 560, 600, 630, 670, 710, 750, 800, 850, 900, 950}

// preferred returns the preferred number next to v, both pure numbers [-].
func preferred(v float64) float64 {
	if !(v > 0) {
		return math.NaN()
	}
	i := int(math.Round(40 * math.Log10(v)))
	return r40[((i%40)+40)%40] * math.Pow(10, math.Floor(float64(i)/40)-2)
}

// unified returns the limits of 2A and 2B, in [in]: pitch diameter tolerance of 2A
// 0.0015 d^(1/3) + 0.0015 √L + 0.015 p^(2/3), L the larger of d and 9p; allowance
// 0.3 of it; major diameter 0.060 p^(2/3); of 2B pitch diameter 1.3 times that of 2A,
// minor diameter 0.25p − 0.4p² from 1/4 in, below it 0.05 p^(2/3) + 0.03 p/d − 0.002
// from that up to 0.394p.
//
// Source: ASME B1.1, recalled; one size held to printed limits. L is d there for coarse
// and fine threads; 9p where that is more is on the safe side.
func (t Thread) unified() limitsOfSize {
	d, p := t.Major/inch, t.Pitch/inch
	p23 := math.Pow(p, 2.0/3)
	td2 := 0.0015*math.Cbrt(d) + 0.0015*math.Sqrt(math.Max(d, 9*p)) + 0.015*p23
	minor := 0.25*p - 0.4*p*p
	if d < 0.25 {
		minor = math.Min(math.Max(minor, 0.05*p23+0.03*p/d-0.002), 0.394*p)
	}
	d2, d1 := d-0.649519*p, d-1.082532*p
	return limitsOfSize{dMin: (d - 0.3*td2 - 0.060*p23) * inch, d2Min: (d2 - 1.3*td2) * inch, d2Max: (d2 + 1.3*td2) * inch, d1Max: (d1 + minor) * inch}
}
