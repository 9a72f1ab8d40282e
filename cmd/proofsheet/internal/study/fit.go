package study

import (
	"math"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// padStep and padMost bound the pads that are tried: outside diameters rise by
// 5 mm to three times the tube's. Metal farther out than about one opening
// beside the hole does not count in area replacement.
const (
	padStep = 5e-3 // [m]
	padMost = 3.0  // over the tube's outside diameter [-]
)

// legSteps are how far both fillets may grow [m].
var legSteps = []float64{0, 1e-3, 2e-3, 3e-3, 4e-3, 5e-3, 6e-3}

// fit returns the lightest fitting with which a group holds, and the trial with
// it.
func (z *sizing) fit(tr *assess.Trial, group string) (fitting, *assess.Trial, bool) {
	base, err := tr.PortMass(group)
	if err != nil || z.beyondMetal(tr, group) {
		return fitting{}, tr, false
	}
	best := fitting{mass: math.Inf(1)}
	var bestTrial *assess.Trial
	for _, f := range z.candidates(group) {
		if !(z.lightest(tr, group, f)-base < best.mass) {
			continue
		}
		if got, next, ok := z.least(tr, group, f, base); ok && got.mass < best.mass {
			best, bestTrial = got, next
		}
	}
	if bestTrial == nil {
		return fitting{}, tr, false
	}
	return best, bestTrial, true
}

// beyondMetal reports whether a group fails where no metal helps: it stands in
// the wrong place.
func (z *sizing) beyondMetal(tr *assess.Trial, group string) bool {
	placed := true
	tr.Port(group, func(r check.Result) bool { // where the ports stand comes first
		at := strings.HasSuffix(r.ID, "/placement")
		placed = placed && !(at && z.fails(r))
		return at && placed
	})
	return !placed
}

// candidates returns tubes and pads to try, fewest changes first: fillets alone,
// a thicker tube, a pad, both.
func (z *sizing) candidates(group string) []fitting {
	p := portOf(z.now, group)
	out := []fitting{{}}
	for _, wall := range z.stock {
		if p.Kind != "boss" && wall > p.Tube.Wall && // a thread fixes the bore of a boss
			2*wall < p.Tube.OutsideDiameter {
			out = append(out, fitting{tube: wall, changes: 1})
		}
	}
	tubes := slices.Clone(out)
	for _, pad := range z.stock {
		if p.Insert != nil || p.Pad != nil && pad < p.Pad.Thickness || pad > 1.5*wallOf(z.now, hostOf(z.now, group)) {
			continue // no pad on an inserted plate; thicker pads than 1.5 walls are poor practice
		}
		for _, f := range tubes {
			f.pad = pad
			f.changes++
			out = append(out, f)
		}
	}
	slices.SortStableFunc(out, func(a, b fitting) int { return a.changes - b.changes })
	return out
}

// pads returns the first pad diameter to try on a candidate [m] and how many more
// steps there are; none is negative.
func (z *sizing) pads(group string, f fitting) (first float64, steps int) {
	p := portOf(z.now, group)
	least := math.Max(p.Tube.OutsideDiameter+4*f.pad, z.now.HoleLength(p)+2*fillet(p, f))
	first = padStep * math.Ceil(least/padStep-1e-9)
	if p.Pad != nil && p.Pad.OutsideDiameter != nil {
		first = math.Max(first, *p.Pad.OutsideDiameter)
	}
	return first, int(math.Floor((padMost*p.Tube.OutsideDiameter-first)/padStep + 1e-9))
}

// lightest returns the mass of a group's tubes and pads with the smallest form of
// a candidate [kg].
func (z *sizing) lightest(tr *assess.Trial, group string, f fitting) float64 {
	if f.pad > 0 {
		f.across, _ = z.pads(group, f)
	}
	mass, err := z.with(tr, group, f).PortMass(group)
	if err != nil {
		return math.Inf(1)
	}
	return mass
}

// least returns the least pad diameter and fillets with which a candidate
// holds.
func (z *sizing) least(tr *assess.Trial, group string, f fitting, base float64) (fitting, *assess.Trial, bool) {
	if f.pad == 0 {
		return z.withLegs(tr, group, f, base)
	}
	first, n := z.pads(group, f)
	if n < 0 {
		return f, nil, false
	}
	at := func(i int) (fitting, *assess.Trial, bool) {
		g := f
		g.across = first + float64(i)*padStep
		return z.withLegs(tr, group, g, base)
	}
	best, bestTrial, ok := at(n)
	if !ok {
		return f, nil, false
	}
	for lo, hi := -1, n; hi-lo > 1; { // does not hold, holds
		mid := (lo + hi) / 2
		if g, next, ok := at(mid); ok {
			hi, best, bestTrial = mid, g, next
		} else {
			lo = mid
		}
	}
	return best, bestTrial, true
}

// withLegs tries a fitting, its fillets growing while only welds fail.
func (z *sizing) withLegs(tr *assess.Trial, group string, f fitting, base float64) (fitting, *assess.Trial, bool) {
	for _, legs := range legSteps {
		g := f
		if g.legs = legs; legs > 0 {
			g.changes++
		}
		got, next, failed := z.tried(tr, group, g, base)
		if failed == "" {
			return got, next, next != nil
		}
		if failed != "weld" {
			return got, nil, false
		}
	}
	return f, nil, false
}

// tried makes a group's checks with a fitting: its mass, the trial, and the
// first check that fails, "" when all hold.
func (z *sizing) tried(tr *assess.Trial, group string, f fitting, base float64) (fitting, *assess.Trial, string) {
	if p := portOf(z.now, group); f.pad > 0 && f.across < z.now.HoleLength(p)+2*fillet(p, f) {
		return f, nil, "pad" // no room on it for the tube's own fillet
	}
	next := z.with(tr, group, f)
	mass, err := next.PortMass(group)
	if err != nil {
		return f, nil, "mass"
	}
	f.mass = mass - base
	failed := ""
	next.Port(group, func(r check.Result) bool {
		if z.standing(r) == whole {
			return true
		}
		failed = r.ID[strings.LastIndexByte(r.ID, '/')+1:]
		return failed == "weld" // another may still fail too
	})
	return f, next, failed
}

// fillet returns the leg of the tube's outside fillet with a fitting [m].
func fillet(p tank.Port, f fitting) float64 {
	leg := math.Max(p.Weld.OutsideLeg, p.Weld.OutsideThroat*math.Sqrt2)
	if leg > 0 {
		leg += f.legs
	}
	return leg
}

// with returns the trial with a fitting at a group.
func (z *sizing) with(tr *assess.Trial, group string, f fitting) *assess.Trial {
	written, tolerance := z.now.Written("port."+group+".tube.under_tolerance") != "", z.tolerance(group)
	return tr.WithPort(group, func(p *tank.Port) { f.apply(p, written, tolerance) })
}

// tolerance returns the under-tolerance that a pad of a group takes from its
// wall [m].
func (z *sizing) tolerance(group string) float64 {
	var v *float64
	switch hostOf(z.now, group) {
	case "cylinder":
		v = z.now.Cylinder.UnderTolerance
	case "head.aft":
		v = z.now.Head.Aft.UnderTolerance
	default:
		v = z.now.Head.Forward.UnderTolerance
	}
	if v == nil {
		return math.NaN()
	}
	return *v
}
