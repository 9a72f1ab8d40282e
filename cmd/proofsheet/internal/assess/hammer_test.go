package assess_test

import (
	"math"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The rise stands besides the pressure at the port: by hand (computed), ρ c v of the
// liquid at 4 m/s and 1200 m/s, in the tube's own wall p R_n/(S_n E_t − 0.6 p). The
// same whether the valve is slow or fast; twice the velocity asks for more wall.
func TestHammerOnThePort(t *testing.T) {
	hammer := func(v, closing float64) check.Result {
		in := read(t, "demo")
		for i := range in.Port {
			in.Port[i].Line = &tank.Line{Length: 3, Velocity: v, ClosingTime: closing, WaveSpeed: 1200}
		}
		rs := byID(sheet(t, in), "burnout")
		if rs["port.vent/hammer"].Status() != check.Satisfied {
			t.Errorf("vent: %v", rs["port.vent/hammer"].Reason())
		}
		return rs["port.outlet-1/hammer"]
	}
	r := hammer(4, 0)
	checktest.Close(t, "rise", input(t, r, "Δp"), input(t, r, "ρ")*1200*4, 1e-12)
	p := input(t, r, "p_0") + input(t, r, "Δp")
	checktest.Close(t, "pressure", input(t, r, "p"), p, 1e-12)
	checktest.Close(t, "tube wall", input(t, r, "t_a"), p*input(t, r, "R_n")/(input(t, r, "S_n")*input(t, r, "E_t")-0.6*p), 1e-9)
	if slow := hammer(4, 2); slow.Demand != r.Demand || slow.Note == r.Note {
		t.Errorf("slow valve: %v, %q", slow.Demand, slow.Note)
	}
	if twice := hammer(20, 0); !(twice.Demand.Value > r.Demand.Value) {
		t.Errorf("five times the velocity asks for %g m, once %g m", twice.Demand.Value, r.Demand.Value)
	}
	if _, ok := byID(sheet(t, read(t, "demo")), "burnout")["port.vent/hammer"]; ok || math.IsNaN(p) {
		t.Error("a port without a line has a water hammer")
	}
}
