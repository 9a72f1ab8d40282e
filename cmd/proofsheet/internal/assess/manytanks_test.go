package assess_test

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// TestManyTanks draws tanks without the numerical shell, which TestAnyTankIsHonest
// has: ten thousand under CI=true, a thousand else. Every verdict rests on finite
// numbers, whatever is open says why, and a twin of each tank that differs in one thing
// differs in its answers as it must.
func TestManyTanks(t *testing.T) {
	draws := "1000"
	if os.Getenv("CI") == "true" {
		draws = "10000"
	}
	fewer(t, draws)
	demo, drawn, refused := text(t, "demo"), 0, 0
	pairs := map[string]int{}
	rapid.Check(t, func(t *rapid.T) {
		src := drawnTank(t, demo)
		drawn++
		in, checks := bare(src)
		if checks == nil {
			refused++
			return
		}
		for _, r := range checks {
			switch r.Status() {
			case check.Satisfied, check.NotSatisfied:
				judgedOnNumbers(t, report.FullID(r), r)
			default:
				if r.Reason() == "" {
					t.Errorf("%s is %v without a reason", report.FullID(r), r.Status())
				}
			}
		}
		twin := rapid.SampledFrom(twins).Draw(t, "twin")
		pairs[twin.name]++
		twin.ask(t, src, in, checks)
	})
	if refused > drawn/2 {
		t.Errorf("%d of %d tanks were refused: the drawing is too wild to try anything", refused, drawn)
	}
	for _, twin := range twins {
		if pairs[twin.name] < drawn/20 {
			t.Errorf("%s: asked of %d tanks of %d", twin.name, pairs[twin.name], drawn)
		}
	}
}

// bare returns a text as a tank with its checks without the numerical shell, nil where
// the reader or the geometry refuses it.
func bare(src string) (*tank.Tank, map[string]check.Result) {
	in, err := tank.Read("drawn.toml", []byte(src), nil)
	if err != nil {
		return nil, nil
	}
	return in, results(in)
}

// results makes the checks of a tank without the numerical shell, by id@case.
func results(in *tank.Tank) map[string]check.Result {
	checks, err := assess.ChecksWithoutShell(in)
	if err != nil {
		return nil
	}
	out := map[string]check.Result{}
	for _, r := range checks {
		out[report.FullID(r)] = r
	}
	return out
}

// A twinOf makes another tank of one and asks how the answers differ.
type twinOf struct {
	name string
	ask  func(t *rapid.T, src string, in *tank.Tank, was map[string]check.Result)
}

var twins = []twinOf{
	{"thicker", thicker}, {"less examined", lessExamined}, {"other units", otherUnits}, {"turned", turned}, {"mirrored", mirrored},
}

// thicker adds to the wall of one part: its thickness and its membrane margins fall
// nowhere, but where they are so large that the part carries little but its own weight,
// which grows with it.
func thicker(t *rapid.T, _ string, in *tank.Tank, was map[string]check.Result) {
	twin := *in
	part := rapid.SampledFrom([]string{"cylinder", "head.aft", "head.forward"}).Draw(t, "part")
	switch part { // the inside stays where it is
	case "cylinder":
		if in.Cylinder.InsideDiameter == nil {
			return
		}
		twin.Cylinder.Thickness *= 1.2
		twin.Head.Aft.Align, twin.Head.Forward.Align = "inside", "inside"
	case "head.aft":
		twin.Head.Aft.Thickness *= 1.2
	default:
		twin.Head.Forward.Thickness *= 1.2
	}
	for id, r := range results(&twin) {
		held := strings.HasPrefix(id, part+"/thickness") || strings.HasPrefix(id, part+"/membrane") || strings.HasPrefix(id, part+"/hoop") || strings.HasPrefix(id, part+"/equivalent")
		if before := was[id]; held && before.Margin() < 20 && r.Margin() < before.Margin()-1e-9*(1+math.Abs(before.Margin())) {
			t.Errorf("%s of a wall 1.2 times as thick: margin %.9g, was %.9g", id, r.Margin(), before.Margin())
		}
	}
}

// lessExamined leaves the welds unexamined: no margin rises.
func lessExamined(t *rapid.T, src string, _ *tank.Tank, was map[string]check.Result) {
	_, now := bare(strings.NewReplacer(`examination = "full"`, `examination = "none"`, `examination = "spot"`, `examination = "none"`).Replace(src))
	for id, r := range now {
		if before := was[id]; before.Status() != check.NotAssessed && r.Margin() > before.Margin()+1e-9*(1+math.Abs(before.Margin())) {
			t.Errorf("%s without examination: margin %.9g, was %.9g", id, r.Margin(), before.Margin())
		}
	}
}

// millimetres are the lengths of a text.
var millimetres = regexp.MustCompile(`"([0-9.]+) mm"`)

// otherUnits writes every length in metres: nothing changes.
func otherUnits(t *rapid.T, src string, _ *tank.Tank, was map[string]check.Result) {
	_, now := bare(millimetres.ReplaceAllStringFunc(src, func(m string) string {
		v, _ := strconv.ParseFloat(millimetres.FindStringSubmatch(m)[1], 64)
		return fmt.Sprintf("\"%.17g m\"", v/1e3)
	}))
	same(t, "in metres", was, now, func(id string) string { return id })
}

// clocks are the angles round the axis of a text.
var clocks = regexp.MustCompile(`clock = "([0-9]+) deg"`)

// turned turns ports and seams together: nothing changes.
func turned(t *rapid.T, src string, _ *tank.Tank, was map[string]check.Result) {
	by := rapid.Float64Range(0, 360).Draw(t, "turned by")
	_, now := bare(clocks.ReplaceAllStringFunc(src, func(m string) string {
		v, _ := strconv.ParseFloat(clocks.FindStringSubmatch(m)[1], 64)
		return fmt.Sprintf("clock = \"%.9f deg\"", math.Mod(v+by, 360))
	}))
	same(t, "turned", was, now, func(id string) string { return id })
}

// mirrored puts fore aft and turns every acceleration round: the answers of each
// written case go with the parts.
func mirrored(t *rapid.T, _ string, in *tank.Tank, was map[string]check.Result) {
	twin, L := *in, in.Cylinder.Length
	other := map[string]string{"aft": "forward", "forward": "aft", "both": "both", "cylinder": "cylinder"}
	twin.Head.Aft, twin.Head.Forward = in.Head.Forward, in.Head.Aft
	twin.Support.At = other[in.Support.At]
	twin.Cylinder.GirthStations = nil
	for _, z := range in.Cylinder.GirthStations {
		twin.Cylinder.GirthStations = append(twin.Cylinder.GirthStations, L-z)
	}
	twin.Port = append([]tank.Port(nil), in.Port...)
	for i := range twin.Port {
		p := &twin.Port[i]
		if p.On = other[p.On]; p.Station != nil {
			z := L - *p.Station
			p.Station = &z
		}
	}
	twin.Case = append([]tank.Case(nil), in.Case...)
	for i := range twin.Case {
		c := &twin.Case[i]
		z := L
		if c.Station != nil {
			z = *c.Station
		}
		z = L - z
		c.Station, c.AxialLoadFactor = &z, -c.AxialLoadFactor
	}
	written := map[string]check.Result{}
	for id, r := range was {
		if r.Case == "pad" || r.Case == "burnout" {
			written[id] = r
		}
	}
	same(t, "mirrored", written, results(&twin), func(id string) string {
		switch {
		case strings.HasPrefix(id, "head.aft/"):
			return "head.forward/" + strings.TrimPrefix(id, "head.aft/")
		case strings.HasPrefix(id, "head.forward/"):
			return "head.aft/" + strings.TrimPrefix(id, "head.forward/")
		}
		return id
	})
}

// same asks that a twin has the same answers, each under its name there.
func same(t *rapid.T, how string, was, now map[string]check.Result, name func(id string) string) {
	t.Helper()
	if now == nil {
		t.Fatalf("%s it is refused", how)
	}
	for id, r := range was {
		other, ok := now[name(id)]
		if !ok || other.Status() != r.Status() || math.Abs(other.Margin()-r.Margin()) > 1e-7*(1+math.Abs(r.Margin())) {
			t.Errorf("%s, %s: %v margin %.9g, was %v %.9g; %s", how, id, other.Status(), other.Margin(), r.Status(), r.Margin(), other.Reason())
		}
	}
}
