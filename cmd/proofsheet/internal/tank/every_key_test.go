package tank

import (
	"bytes"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
)

const everyKey = "testdata/every-key.toml"

func openEveryKey(path string) ([]byte, error) {
	if path == "coupons.csv" {
		return []byte("coupon,ultimate [MPa],yield [MPa],failure\nA1,520,260,weld\nA2,510,,parent\nA3,515,255,weld\n"), nil
	}
	return nil, os.ErrNotExist
}

func readEveryKey(t *testing.T) (*Tank, []byte) {
	t.Helper()
	src, err := os.ReadFile(everyKey)
	if err != nil {
		t.Fatal(err)
	}
	tank, err := Read(everyKey, src, openEveryKey)
	if err != nil {
		t.Fatal(err)
	}
	return tank, src
}

func TestEveryKeyReads(t *testing.T) {
	tank, _ := readEveryKey(t)
	const psi, inch = 6894.757293168362, 0.0254
	stack, drain := tank.Case[0], tank.Case[1]
	for name, row := range map[string]struct{ got, want float64 }{
		"absolute less outside":    {*stack.UllagePressure, 300*psi - *stack.OutsideAbsolute},
		"compression turned":       {*stack.Loads[0].AxialForce, -8 * 4448.2216152605},
		"suction":                  {*drain.UllagePressure, -2 * psi},
		"hold, twice the work":     {tank.Proof.Hold, 2400},
		"wall":                     {tank.Cylinder.Wall(), 0.23 * inch},
		"aft seam, middle aligned": {tank.SeamInsideDiameter(tank.Head.Aft), (15.5 + 0.25 - 0.375) * inch},
		"lowest girth station":     {tank.Cylinder.GirthStations[0], 15 * inch},
		"coldest":                  {tank.Contents.Coldest, (40 + 459.67) * 5 / 9},
		"second tap":               {tank.Port[2].Clock, 3 * math.Pi / 2},
		"override":                 {*tank.Basis.UltimateFactor, 2},
		"scatter":                  {tank.Scatter[1].Spread, 2},
	} {
		if math.Abs(row.got-row.want) > 1e-12*math.Abs(row.want) {
			t.Errorf("%s: %g, want %g", name, row.got, row.want)
		}
	}
	if s := tank.Basis.Sources; s["ultimate_factor"] != "letter 7" || s["burst_factor"] != "programme requirement 4.2" {
		t.Errorf("sources of overrides: %v", s)
	}
	if s := tank.Scatter[len(tank.Scatter)-1]; s.Joint() != "long" || s.Spread != 1 || tank.Scatter[0].Joint() != "" {
		t.Errorf("coupons that scatter: %+v", s)
	}
	j, _ := tank.FindJoint("long")
	if len(j.CouponRows) != 3 || j.CouponRows[1].Yield != nil || j.CouponRows[2].Failure != "weld" {
		t.Errorf("coupons: %+v", j.CouponRows)
	}
	if m, ok := tank.FindMaterial("own"); !ok || !m.Own() || *m.Allowable <= 0 {
		t.Errorf("own material: %+v", m)
	}
	if p := tank.Port[0]; *p.Radius != 0 || p.Fit != "on" {
		t.Errorf("port at the tip: %+v", p)
	}
}

func TestSchemaTakesEveryKey(t *testing.T) {
	_, src := readEveryKey(t)
	if err := compileSchema(t).Validate(asJSON(t, src)); err != nil {
		t.Error(err)
	}
}

// Line ends of another system move no fault.
func TestLineEnds(t *testing.T) {
	_, src := readEveryKey(t)
	crlf := bytes.ReplaceAll(src, []byte("\n"), []byte("\r\n"))
	if _, err := Read("crlf.toml", crlf, openEveryKey); err != nil {
		t.Error(err)
	}
	wrong := bytes.Replace(crlf, []byte(`length = "4 ft"`), []byte(`length = "4 kg"`), 1)
	_, err := Read("crlf.toml", wrong, openEveryKey)
	line := 1 + slices.Index(strings.Split(string(src), "\n"), `length = "4 ft"`)
	if faults, ok := err.(Faults); !ok || len(faults) != 1 || faults[0].Line != line || faults[0].Column != 10 {
		t.Errorf("%v, want one fault at line %d column 10", err, line)
	}
}

// Without any one of its lines the file may read or not, but never panics, and
// what is wrong stands at a line that is there.
func TestEveryLineLeftOut(t *testing.T) {
	_, src := readEveryKey(t)
	lines := strings.Split(string(src), "\n")
	for i := range lines {
		short := strings.Join(slices.Delete(slices.Clone(lines), i, i+1), "\n")
		_, err := Read("short.toml", []byte(short), openEveryKey)
		faults, _ := err.(Faults)
		for _, f := range faults {
			if f.Line < 1 || f.Line >= len(lines) || f.Column < 1 || f.What == "" {
				t.Errorf("without %q: %v", lines[i], f)
			}
		}
	}
}
