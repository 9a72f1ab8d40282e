package material_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"proofsheet/material"
)

// The quick answers of a search are those of the comparisons that are printed:
// demand over capacity, whatever the stresses, by every rule.
func TestUseIsTheComparison(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := material.Limits{Rule: material.Vessel, S: 115e6, Yield: 170e6, Ultimate: 485e6, YieldOnPressure: 1.667, UltimateOnPressure: 2, YieldOnLoad: 1.25, UltimateOnLoad: 1.5}
		if rapid.Bool().Draw(t, "flight") {
			l.Rule = material.Flight
		}
		σ := rapid.Float64Range(-300e6, 300e6)
		s := material.Stress{HoopPressure: σ.Draw(t, "hoop"), MeridionalPressure: σ.Draw(t, "meridional"),
			MeridionalLoadMost: σ.Draw(t, "most"), MeridionalLoadLeast: σ.Draw(t, "least"), PressureLeast: rapid.Float64Range(0, 1).Draw(t, "k"), Present: rapid.Bool().Draw(t, "present")}
		e := rapid.Float64Range(0.4, 1).Draw(t, "E")
		for name, pair := range map[string]struct {
			use float64
			j   material.Judged
		}{
			"equivalent": {l.EquivalentUse(s), l.Equivalent(s)},
			"normal":     {l.NormalUse(s.HoopPressure, s.MeridionalLoadMost, s.MeridionalLoadLeast, e), l.Normal(s.HoopPressure, s.MeridionalLoadMost, s.MeridionalLoadLeast, e)},
		} {
			if pair.j.Err != nil {
				t.Fatal(pair.j.Err)
			}
			if want := pair.j.Demand.Value / pair.j.Capacity.Value; math.Abs(pair.use-want) > 1e-12*(1+want) {
				t.Errorf("%s: %g, printed %g", name, pair.use, want)
			}
		}
	})
	nan := math.NaN()
	l := material.Limits{Rule: material.Vessel, S: 115e6, Yield: 170e6}
	var none material.Limits
	for _, v := range []float64{l.EquivalentUse(material.Stress{HoopPressure: nan}), l.NormalUse(nan, 0, 0, 1), l.NormalUse(1e6, 0, 0, 0), l.NormalUse(1e6, 0, 0, 1.1), none.EquivalentUse(material.Stress{HoopPressure: 1e6})} {
		if !math.IsNaN(v) {
			t.Errorf("%g of what is not known", v)
		}
	}
}
