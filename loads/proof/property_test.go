package proof_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"proofsheet/loads/proof"
	"proofsheet/report/check"
	"proofsheet/report/check/checktest"
)

// Every number of the inputs, missing, must stop the plan.
func TestMissingNumberStopsThePlan(t *testing.T) {
	fill := func() proof.Inputs { return oxygenTank(t) }
	visit := func(v reflect.Value, prefix string, try func(name string)) {
		for i := range v.NumField() {
			field, name := v.Field(i), v.Type().Field(i).Name
			if field.Kind() != reflect.Float64 || name == "Near" { // a missing Near keeps people away
				continue
			}
			was := field.Float()
			for _, bad := range []float64{math.NaN(), math.Inf(1), -1e12} {
				field.SetFloat(bad)
				try(prefix + name)
			}
			field.SetFloat(was)
		}
	}
	in := fill()
	try := func(name string) {
		if p, err := proof.NewPlan(in); err == nil || p != nil {
			t.Errorf("%s: plan %v, %v", name, p != nil, err)
		}
	}
	visit(reflect.ValueOf(&in).Elem(), "", try)
	visit(reflect.ValueOf(&in.Points[1]).Elem(), "Points.", try)
	visit(reflect.ValueOf(&in.Rules[0]).Elem(), "Rules.", try)
	visit(reflect.ValueOf(&in.Points[0].Ratios[0]).Elem(), "Ratios.", try)
}

func TestPlanRefuses(t *testing.T) {
	for name, change := range map[string]func(*proof.Inputs){
		"no point":             func(in *proof.Inputs) { in.Points = nil },
		"no rule":              func(in *proof.Inputs) { in.Rules = nil },
		"no method":            func(in *proof.Inputs) { in.Method = "" },
		"water without weight": func(in *proof.Inputs) { in.WaterDensity = 0 },
		"gas with weight":      func(in *proof.Inputs) { in.Method = proof.Pneumatic },
		"service under MEOP":   func(in *proof.Inputs) { in.Points[0].Service = in.MEOP * 0.99 },
		"proof under service":  func(in *proof.Inputs) { in.Rules[0].PF = 0.99 },
		"limit over yield":     func(in *proof.Inputs) { in.Rules[0].K = 1.01 },
		"gauge far over the tank": func(in *proof.Inputs) {
			in.MEOP, in.GaugeHeight = 1e3, 100
			in.Points[0].Service = 1e3
			in.Points = in.Points[:1]
		},
	} {
		in := oxygenTank(t)
		change(&in)
		if _, err := proof.NewPlan(in); err == nil {
			t.Errorf("%s: a plan is issued", name)
		}
	}
	if got := (&proof.Plan{}).CheckReach().Status(); got != check.NotAssessed {
		t.Errorf("reach of an empty plan: %v", got)
	}
	if got := (&proof.Plan{}).CheckYield(proof.Stressed{Membrane: 1, Yield: 2, Efficiency: 1}).Status(); got != check.NotAssessed {
		t.Errorf("yield of an empty plan: %v", got)
	}
	for _, bad := range [][2]string{{"vessel", "dry"}, {"own", "hydrostatic"}} {
		if _, err := proof.DefaultRule(bad[0], proof.Method(bad[1]), true); err == nil {
			t.Errorf("%v: a rule is known", bad)
		}
	}
	if r, err := proof.DefaultRule("vessel-eu", proof.Hydrostatic, false); err != nil || r.Factor(1) != 2.2 {
		t.Errorf("joints not examined: %g, %v", r.Factor(1), err)
	}
	if r, err := proof.DefaultRule("vessel", proof.Pneumatic, true); err != nil || r.Factor(1) != 1.1 || r.K != 0.80 {
		t.Errorf("vessel in gas: %+v, %v", r, err)
	}
}

// A reach that fell short must not pass, whichever point it is.
func TestReachFallsShort(t *testing.T) {
	for i := range 2 {
		p := plan(t, oxygenTank(t))
		p.Points[i].Low = p.Points[i].Required * 0.999
		p.Points[i].OverTest = 0.999
		if got := p.CheckReach().Status(); got != check.NotSatisfied {
			t.Errorf("point %d short: %v", i, got)
		}
		p.Points[i].OverTest, p.Points[i].Low = math.NaN(), math.NaN()
		if got := p.CheckReach().Status(); got != check.NotAssessed {
			t.Errorf("point %d missing: %v", i, got)
		}
	}
}

// Pressures and lengths seven times: ρ and g0 stay, so the whole plan is seven
// times; strains, shares and ratios stay.
func TestPlanChangeOfUnits(t *testing.T) {
	a := plan(t, oxygenTank(t))
	in := oxygenTank(t)
	in.MEOP *= 7
	for i := range in.Points {
		in.Points[i].Service *= 7
		in.Points[i].WaterDepth *= 7
	}
	b := plan(t, in)
	checktest.Close(t, "setting", b.Setting, 7*a.Setting, 1e-14)
	checktest.Close(t, "relief", value(t)(b.Relief(0.97)), 7*value(t)(a.Relief(0.97)), 1e-14)
	for i := range a.Points {
		checktest.Close(t, "high", b.Points[i].High, 7*a.Points[i].High, 1e-14)
		checktest.Close(t, "over-test", b.Points[i].OverTest, a.Points[i].OverTest, 1e-14)
	}
}

// Force three times, length seven times: E and p by 3/49, volumes by 343.
func TestGrowthChangeOfUnits(t *testing.T) {
	const p, l = 3.0 / 49, 7.0
	v := value(t)
	a := proof.Wall{Thickness: 0.003, ElasticModulus: 70e9, Poisson: 0.33}
	b := proof.Wall{Thickness: 0.003 * l, ElasticModulus: 70e9 * p, Poisson: 0.33}
	growths := func(w proof.Wall, l float64) []float64 {
		return []float64{
			v(w.CylinderGrowth(0.15*l, 0.9*l)), v(w.HemisphereGrowth(0.15 * l)), v(w.EllipsoidGrowth(0.15*l, 0.1*l)),
			v(w.ConeGrowth(proof.Cone{Radius: 0.15 * l, TipRadius: 0.03 * l, HalfAngle: 0.7, CylinderThickness: w.Thickness})),
			v(w.PlateGrowth(0.15*l, true)), v(w.PlateGrowth(0.15*l, false)),
		}
	}
	was, is := growths(a, 1), growths(b, l)
	for i := range was { // volume over pressure
		checktest.Close(t, "growth", is[i], was[i]*l*l*l/p, 1e-12)
	}
	checktest.Close(t, "thick", v(b.ThickCylinderGrowth(0.15*l)), v(a.ThickCylinderGrowth(0.15))/p, 1e-12)
	checktest.Close(t, "sphere", v(b.SphereGrowth(0.15*l)), v(a.SphereGrowth(0.15))/p, 1e-12)
	s, _ := a.CylinderStrains(4.5e6, 0.15)
	r, _ := b.CylinderStrains(4.5e6*p, 0.15*l)
	checktest.Close(t, "strain", r.Hoop, s.Hoop, 1e-12)
	checktest.Close(t, "diameter", r.DiameterGrowth, l*s.DiameterGrowth, 1e-12)
	g := gasEnergy(t, proof.Gas{Volume: 2, Pressure: 1e6, Outside: 1e5, Ratio: 1.4})
	h := gasEnergy(t, proof.Gas{Volume: 2 * l * l * l, Pressure: 1e6 * p, Outside: 1e5 * p, Ratio: 1.4})
	for name, pair := range map[string][2]float64{"isentropic": {g.Isentropic, h.Isentropic}, "brode": {g.Brode, h.Brode},
		"isothermal": {g.Isothermal, h.Isothermal}, "availability": {g.Availability, h.Availability}} {
		checktest.Close(t, name, pair[1], 21*pair[0], 1e-12) // force × length
	}
}

func FuzzPlan(f *testing.F) {
	f.Add(3e6, 8e4, 1.2, 998.0, 0.0, 1.5, 1.0)
	f.Add(1e5, 0.0, 3.0, 1000.0, -2.0, 1.3, 1.7)
	f.Fuzz(func(t *testing.T, meop, head, depth, density, gauge, pf, ratio float64) {
		p, err := proof.NewPlan(proof.Inputs{
			Method: proof.Hydrostatic, MEOP: meop, WaterDensity: density, GaugeHeight: gauge, Near: meop / 2,
			Rules: []proof.Rule{{Rule: "own", PF: pf, K: 0.9}},
			Points: []proof.Point{
				{Name: "top", Service: meop, Ratios: []proof.Ratio{{Material: "m", Value: ratio}}},
				{Name: "low", Service: meop + head, WaterDepth: depth, Ratios: plate},
			},
		})
		if err != nil {
			return
		}
		for _, s := range p.Points {
			if !(s.Low >= s.Required && s.High > s.Low && s.Required >= s.Service) {
				t.Errorf("%s: service %g, required %g, low %g, high %g", s.Name, s.Service, s.Required, s.Low, s.High)
			}
		}
		if got := p.CheckReach().Status(); got != check.Satisfied {
			t.Errorf("reach: %v", got)
		}
		if p.Examination > meop || p.Examination > p.Setting {
			t.Errorf("examination at %g, setting %g, MEOP %g", p.Examination, p.Setting, meop)
		}
	})
}

func TestCautions(t *testing.T) {
	ids := func(s proof.Situation) string {
		var list []string
		for _, c := range proof.Cautions(s) {
			if c.Source.How == check.Unstated || c.Text == "" {
				t.Errorf("%s: no source or text", c.ID)
			}
			list = append(list, c.ID)
		}
		return " " + strings.Join(list, " ") + " "
	}
	for _, row := range []struct {
		s             proof.Situation
		with, without string
	}{
		{proof.Situation{Contents: "isopropanol", Method: proof.Hydrostatic, Families: []string{"austenitic"}},
			"law people relief hydro austenitic", "clean-test oxygen peroxide nitrous-oxide trapped-cryogen pneumatic aluminium titanium ferritic"},
		{proof.Situation{Contents: "LOX", Method: proof.Pneumatic, Families: []string{"aluminium", "titanium"}},
			"oxygen clean-test trapped-cryogen pneumatic aluminium titanium", "hydro peroxide austenitic"},
		{proof.Situation{Contents: "nitrous-oxide"}, "nitrous-oxide clean-test", "trapped-cryogen oxygen"},
		{proof.Situation{Contents: "hydrogen-peroxide-90"}, "peroxide clean-test", "trapped-cryogen"},
		{proof.Situation{Contents: "LN2"}, "trapped-cryogen", "clean-test oxygen nitrous-oxide"},
		{proof.Situation{Contents: "LCH4"}, "trapped-cryogen", "oxygen peroxide"},
		{proof.Situation{Contents: "JetA"}, "law", "trapped-cryogen oxygen peroxide"},
		{proof.Situation{Contents: "ethanol-75"}, "law", "trapped-cryogen oxygen peroxide"},
		{proof.Situation{Contents: "HTP-85"}, "peroxide", "trapped-cryogen oxygen"},
		{proof.Situation{Contents: "N2O"}, "nitrous-oxide", "trapped-cryogen oxygen"},
		{proof.Situation{Contents: "liquid nitrogen"}, "trapped-cryogen", "oxygen nitrous-oxide"},
		{proof.Situation{Contents: "nitromethane"}, "oxygen peroxide nitrous-oxide trapped-cryogen", "hydro"},
		{proof.Situation{Contents: "nitrogen dioxide"}, "oxygen peroxide nitrous-oxide trapped-cryogen", "hydro"},
		{proof.Situation{Contents: "nitrogen trifluoride"}, "oxygen peroxide nitrous-oxide trapped-cryogen", "hydro"},
		{proof.Situation{Contents: "our own mix", Families: []string{"ferritic"}}, "oxygen peroxide nitrous-oxide trapped-cryogen ferritic", "hydro"},
	} {
		got := ids(row.s)
		for _, id := range strings.Fields(row.with) {
			if !strings.Contains(got, " "+id+" ") {
				t.Errorf("%+v: no caution %s in%s", row.s, id, got)
			}
		}
		for _, id := range strings.Fields(row.without) {
			if strings.Contains(got, " "+id+" ") {
				t.Errorf("%+v: caution %s does not belong", row.s, id)
			}
		}
	}
}
