package assess_test

// A tank with a bolted head, a boss and a bolted cover. Numbers by hand from the
// tank's own dimensions; the joint at the other end against tanks with a welded head.

import (
	"math"
	"strings"
	"testing"

	"proofsheet/report"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// The bolts of the head by hand: 16 bolts M10, preload 10 kN ± 25 %; at 1.2 MPa on
// 206 mm H = 39.99 kN, and an O-ring of 6.472 kN. One bolt 12.5 + 2.500 kN; kept closed
// by 120 kN against 1.4 · 46.47 kN.
func TestBoltedHeadByHand(t *testing.T) {
	s := sheet(t, read(t, "bolted"))
	for id, want := range map[string]struct{ demand, capacity float64 }{
		"head.forward/bolts@meop": {12.5e3 + 2.4996e3, 34.794e3},
		"head.forward/seal@meop":  {1.4 * 46.466e3, 120e3},
	} {
		r := find(t, s, id)
		if r.Status() != check.Satisfied || math.Abs(r.Demand.Value/want.demand-1) > 1e-3 || math.Abs(r.Capacity.Value/want.capacity-1) > 1e-3 {
			t.Errorf("%s: %v, %g of %g N, want %g of %g", id, r.Status(), r.Demand.Value, r.Capacity.Value, want.demand, want.capacity)
		}
	}
	for _, id := range []string{"head.forward/flange", "port.hatch/flange"} {
		if r := find(t, s, id); r.Status() != check.NotAssessed {
			t.Errorf("%s: %v, want not assessed", id, r.Status())
		}
	}
	for _, id := range []string{"head.forward/thickness@run", "head.forward/bolts@proof", "head.forward/seal@proof", "port.hatch/bolts@proof", "port.hatch/seal@run",
		"port.hatch/cover@run", "port.hatch/cover@proof", "port.sensor/thread@run", "port.sensor/thread@proof", "port.sensor/seal@proof", "port.sensor/area@run"} {
		if r := find(t, s, id); r.Status() != check.Satisfied {
			t.Errorf("%s: %v, %s", id, r.Status(), r.Reason())
		}
	}
}

// A bolted head leaves the numerical shell of the rest: the joint at the other end is
// as in a tank with a dished head welded on in its place, and its own does not arise.
func TestOtherJointOfABoltedTank(t *testing.T) {
	const bolted = `shape = "flat"
thickness = "25 mm"
under_tolerance = "0.5 mm"
forming = "machined"
material = "plate"
closure = "bolted"
bolts = { count = 16, size = "M10", circle = "250 mm", strength = "600 MPa", preload = "10 kN" }
seal = { kind = "o-ring", diameter = "206 mm" }`
	const welded = `shape = "hemisphere"
thickness = "6 mm"
under_tolerance = "0.3 mm"
forming_thinning = 0.10
forming = "pressed"
material = "plate"
seam = "girth"`
	a, b := sheet(t, read(t, "bolted")), sheet(t, changed(t, "bolted", bolted, welded))
	for _, id := range []string{"head.aft/junction@meop", "head.aft/junction@proof"} {
		x, y := find(t, a, id), find(t, b, id)
		if x.Status() != check.Satisfied || math.Abs(x.Demand.Value/y.Demand.Value-1) > 5e-3 {
			t.Errorf("%s: %v, %g Pa, with a welded head %g Pa", id, x.Status(), x.Demand.Value, y.Demand.Value)
		}
		if own := find(t, a, strings.Replace(id, "aft", "forward", 1)); own.Status() != check.NotApplicable || own.Reason() == "" {
			t.Errorf("%s: %v", own.ID, own.Status())
		}
	}
	x, y := quantity(t, a, "head.aft.junction_displacement@meop"), quantity(t, b, "head.aft.junction_displacement@meop")
	if math.Abs(x/y-1) > 5e-3 {
		t.Errorf("displacement of the aft joint %g m, with a welded head %g m", x, y)
	}
	for _, key := range []string{"head.forward.junction_displacement@meop", "proof.volume_growth"} {
		if v := quantity(t, a, key); !math.IsNaN(v) {
			t.Errorf("%s: %g, want none", key, v)
		}
	}
}

// Turned end for end, with the bolted head aft, the welded joint is held too.
func TestBoltedAft(t *testing.T) {
	s := sheet(t, changed(t, "bolted", "[head.aft]", "[head.spare]", "[head.forward]", "[head.aft]", "[head.spare]", "[head.forward]", `on = "aft"`, `on = "forward"`))
	r, u := find(t, s, "head.forward/junction@meop"), find(t, sheet(t, read(t, "bolted")), "head.aft/junction@meop")
	// Up to 7 kPa of liquid head of 1.2 MPa lie between the two.
	if r.Status() != check.Satisfied || math.Abs(r.Demand.Value/u.Demand.Value-1) > 0.01 {
		t.Errorf("%v, %g Pa, as built %g Pa: %s", r.Status(), r.Demand.Value, u.Demand.Value, r.Reason())
	}
	if r := find(t, s, "head.aft/seal@meop"); r.Status() != check.Satisfied {
		t.Errorf("%v %s", r.Status(), r.Reason())
	}
}

// What cannot be made is not assessed, with its reason.
func TestBoltedRefusals(t *testing.T) {
	for name, row := range map[string]struct {
		old, new, id, why string
	}{
		"no preload":  {`, preload = "10 kN" }`, ` }`, "head.forward/seal@meop", "preload"},
		"no strength": {`circle = "250 mm", strength = "600 MPa"`, `circle = "250 mm"`, "head.forward/bolts@meop", "strength"},
		"european":    {`rule = "vessel"`, `rule = "vessel-eu"`, "head.forward/thickness@meop", "European"},
		"cover too":   {`rule = "vessel"`, `rule = "vessel-eu"`, "port.hatch/cover@meop", "European"},
		"hot":         {`axial_load_factor = 1.0`, "axial_load_factor = 1.0\ntemperature = \"160 degC\"", "head.forward/bolts@run", "temperature"},
		"short":       {`length = "600 mm"`, `length = "105 mm"`, "head.aft/junction@meop", "shorter"},
	} {
		pairs := []string{row.old, row.new}
		if name == "short" {
			pairs = append(pairs, `station = "300 mm"`, `station = "52 mm"`)
		}
		r := find(t, sheet(t, changed(t, "bolted", pairs...)), row.id)
		if r.Status() != check.NotAssessed || !strings.Contains(r.Reason(), row.why) {
			t.Errorf("%s: %s is %v, %q", name, row.id, r.Status(), r.Reason())
		}
	}
}

// A tube in the bolted head is asked for half the area of the cover's own thickness.
func TestPortInBoltedHead(t *testing.T) {
	s := sheet(t, changed(t, "bolted", `on = "aft"`, `on = "forward"`))
	var tr float64
	r := find(t, s, "port.sensor/area@meop")
	for _, q := range r.Inputs {
		if q.Symbol == "t_r" {
			tr = q.Value
		}
	}
	need := find(t, s, "head.forward/thickness@meop").Demand.Value
	if r.Status() == check.NotAssessed || math.Abs(tr/need-1) > 1e-2 {
		t.Errorf("%v %s: t_r %g m, the cover needs %g m", r.Status(), r.Reason(), tr, need)
	}
}

// More pressure lowers every margin of what is bolted.
func TestBoltedMonotone(t *testing.T) {
	margins := func(s *report.Sheet) map[string]float64 {
		out := map[string]float64{}
		for _, r := range s.Checks {
			for _, what := range []string{"/bolts", "/seal", "/cover", "/thread"} {
				if strings.HasSuffix(r.ID, what) {
					out[report.FullID(r)] = r.Margin()
				}
			}
		}
		return out
	}
	a := margins(sheet(t, read(t, "bolted")))
	b := margins(sheet(t, changed(t, "bolted", `meop = "12 bar"`, `meop = "15 bar"`, `ullage_pressure = "12 bar"`, `ullage_pressure = "15 bar"`)))
	if len(a) < 14 {
		t.Fatalf("%d checks", len(a))
	}
	for id, m := range a {
		if !(b[id] <= m) {
			t.Errorf("%s: margin %g at more pressure, %g before", id, b[id], m)
		}
	}
}

// Away from 20 °C the preload of bolts of unstated steel drifts in a 304L joint: 80 K,
// 16 · 215 GPa · 57.99 mm² against 10.5e-6/K, 304L at 15.5 to 17.5e-6/K.
func TestBoltedDrift(t *testing.T) {
	r := find(t, sheet(t, changed(t, "bolted", "axial_load_factor = 1.0", "axial_load_factor = 1.0\ntemperature = \"100 degC\"")), "head.forward/seal@run")
	α := 10.5e-6 + (r.Demand.Value-1.4*46.466e3)/(16*215e9*57.99e-6*80)
	if r.Status() == check.NotAssessed || !(α > 15.5e-6 && α < 17.5e-6) {
		t.Errorf("%v %s: demand %g N speaks of an expansion of %g 1/K", r.Status(), r.Reason(), r.Demand.Value, α)
	}
}

// What the piping puts on a boss or a cover is on its thread and its bolts too.
func TestLoadOnFittings(t *testing.T) {
	const load = "load = { force = \"500 N\", moment = \"10 N m\" }\n"
	a := sheet(t, read(t, "bolted"))
	b := sheet(t, changed(t, "bolted", `kind = "boss"`+"\n", `kind = "boss"`+"\n"+load, `kind = "cover"`+"\n", `kind = "cover"`+"\n"+load))
	for id, want := range map[string]float64{
		"port.sensor/thread@run": 500 + 4*10/0.020, "port.sensor/seal@run": 1.4 * (500 + 4*10/0.020),
		"port.hatch/seal@run": 1.4 * (500 + 4*10/0.066), "port.hatch/bolts@proof": (500 + 4*10/0.066) / 8,
	} {
		if got := find(t, b, id).Demand.Value - find(t, a, id).Demand.Value; math.Abs(got/want-1) > 1e-6 {
			t.Errorf("%s: %g N more, want %g", id, got, want)
		}
	}
}

// Of a thread no more counts than the boss has, by hand. Ending flush it is 7 mm outside and the least wall of (6 − 0.3) × 0.9
// = 5.13 mm: 12.13 of the 13 mm. Set on the wall, 12 mm of height. Through the dish beside its axis, at 40 mm and parallel to it, 1
// mm out and 2 mm in on the short sides: the mid-surface has A 103, h 53 mm, q = 40/103, tan φ = 53/103 q/√(1 − q²) = 0.216847,
// cos φ 0.977289; 1 + 5.13/0.977289 + 2 + 40 × 0.216847 = 16.923 of the 18 mm.
func TestThreadCountsWithinTheBoss(t *testing.T) {
	const sensor, fit = "engagement = \"14 mm\"", "fit = \"through\"\noutside = \"12 mm\"\ninside = \"4 mm\"\nweld = { outside_leg = \"6 mm\", inside_leg = \"3 mm\", groove = \"full\" }"
	for _, row := range []struct {
		name, long, fit, want string
		more                  []string
	}{
		{"flush", "13 mm", "fit = \"flush\"\noutside = \"7 mm\"\nweld = { outside_leg = \"6 mm\", groove = \"full\" }", "12.13", nil},
		{"set on", "12 mm", "fit = \"on\"\noutside = \"12 mm\"\nweld = { outside_leg = \"6 mm\", groove = \"full\" }", "12.00", nil},
		{"oblique", "18 mm", "fit = \"through\"\noutside = \"1 mm\"\ninside = \"2 mm\"\nweld = { outside_leg = \"6 mm\", groove = \"full\" }", "16.92", []string{"name = \"sensor\"\non = \"aft\"\nradius = \"0 mm\"", "name = \"sensor\"\non = \"aft\"\nradius = \"40 mm\""}},
		{"long enough", "14 mm", fit, "14.00", nil},
	} {
		s := sheet(t, changed(t, "bolted", append([]string{sensor, "engagement = \"" + row.long + "\"", fit, row.fit}, row.more...)...))
		for _, id := range []string{"port.sensor/thread@meop", "port.sensor/thread@proof"} {
			r := find(t, s, id)
			checktest.Printed(t, row.name+" [mm]", input(t, r, "L_e")*1e3, row.want)
			if said := strings.Contains(r.Note, "no more than the "); said != (row.want[:2] != row.long[:2] || row.name == "flush") {
				t.Errorf("%s: %s", row.name, r.Note)
			}
		}
	}
}
