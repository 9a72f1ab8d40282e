package assess

import (
	"fmt"

	"proofsheet/material/weld"
	"proofsheet/report"
	"proofsheet/report/check"
)

// practiceRatio is the source of the plain ratios.
var practiceRatio = check.Source{Doc: "ratio of the numbers above", How: check.Computed}

// couponRatios returns the efficiencies of a set, for display.
func (r *run) couponRatios(c *couponSet) (out []report.ValueRow) {
	add := func(name string, v float64, src check.Source, note string) {
		out = append(out, report.ValueRow{Quantity: check.Num("", name, v), Source: src, Note: note})
	}
	if len(c.parent) > 0 {
		var strength []float64
		for _, row := range c.parent {
			strength = append(strength, row.Ultimate)
		}
		mean := 0.0
		for _, v := range strength {
			mean += v / float64(len(strength))
		}
		add("1 descriptive: mean weld over mean parent, ultimate", weld.DescriptiveRatio(c.ultimate, weld.Sample{Mean: mean}), practiceRatio, "report only: it rises where the parent was weak")
		w, p := c.pairs()
		if reduced, err := weld.ReducedRatio(w, p); err == nil {
			add(fmt.Sprintf("2 reduced ratio of %d pairs, ultimate", len(w)), reduced, check.Source{Doc: "in the style of MIL-HDBK-5 9.5, paired data", How: check.Memory}, "times the parent's minimum; report only, it is no A or B basis")
		}
	}
	if c.err() != nil {
		return out
	}
	shown := map[string]bool{}
	for _, u := range r.partMaterials(c) {
		x := r.metals.at(u.material, welds(c.joint.Name), u.thickness, roomTemperature)
		key := fmt.Sprint(u.material, x.parent.RoomYield, x.parent.RoomUltimate, x.zone.RoomYield, x.zone.RoomUltimate)
		if x.parentErr != nil || x.zoneErr != nil || shown[key] {
			continue
		}
		shown[key] = true
		where := fmt.Sprintf(", %s of %.4g mm", u.material, u.thickness*1e3)
		add("3 design: limit over parent minimum, ultimate"+where, weld.LimitRatio(c.ultimate.Limit, x.parent.RoomUltimate), practiceRatio, "display; the seam is held to the limit itself")
		if c.measured {
			add("3 design: limit over parent minimum, yield"+where, weld.LimitRatio(c.yield.Limit, x.parent.RoomYield), practiceRatio, "display; the seam is held to the limit itself")
		}
		out = append(out, r.seamRatios(c, u)...)
	}
	return out
}

// seamRatios returns what the seam is allowed over what its parent is allowed.
func (r *run) seamRatios(c *couponSet, u use) (out []report.ValueRow) {
	e, src, err := asWeld(&c.joint).Inspection()
	if err != nil {
		return nil
	}
	for _, rule := range rules(r.t.Basis.Rule, r.cases) {
		a := r.allowAt(u.material, welds(c.joint.Name), u.thickness, r.hottest(), rule, nil)
		if a.zoneErr != nil {
			continue
		}
		out = append(out, report.ValueRow{Quantity: check.Num("", fmt.Sprintf("seam over parent allowable by %s, %s of %.4g mm", rule, u.material, u.thickness*1e3), e*a.seam.S/a.parent.S),
			Source: src, Note: fmt.Sprintf("%.2f for the examination × min(%.1f, %.1f) MPa over %.1f MPa", e, a.parent.S/1e6, a.zone.S/1e6, a.parent.S/1e6)})
	}
	return out
}

// pairs returns the ultimate of weld and parent coupons of one name [Pa].
func (c *couponSet) pairs() (w, p []float64) {
	for _, a := range c.weld {
		for _, b := range c.parent {
			if a.Name != "" && a.Name == b.Name {
				w, p = append(w, a.Ultimate), append(p, b.Ultimate)
			}
		}
	}
	return w, p
}
