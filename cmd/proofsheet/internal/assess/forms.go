package assess

import (
	"fmt"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
)

// A form is one value that a quantity of a case may take beside the one it is known by.
type form struct {
	value float64
	said  string // for the sheet; "" is the case's own
}

// otherForms resolves what else one written case says may happen with the same loads, each
// as a case of its own of which the worst counts: before a step of the load factor and
// settled after it, beside the swing beyond; the axial load factor of transport, lifting
// and landing the other way; and a least ullage pressure below the one outside, under
// which the wall and what stands in it see suction.
func (m *model) otherForms(c *loadCase, in tank.Case, liquids []loads.Liquid) error {
	if in.DynamicFactor == nil && in.Kind == "" && !(c.least < 0) {
		return nil
	}
	axials, ullages := axialForms(c.axial, in), []form{{value: c.ullage}}
	if c.least < 0 && c.least < c.ullage {
		ullages = append(ullages, form{c.least, fmt.Sprintf("the least ullage pressure, %.4g bar", c.least/1e5)})
	}
	if len(axials)+len(ullages) == 2 {
		return nil
	}
	own := *c
	forms := []*loadCase{&own}
	for i, n := range axials {
		for k, p := range ullages {
			if i+k == 0 {
				continue
			}
			v := own
			v.states, v.axial, v.ullage, v.form = nil, n.value, p.value, strings.Trim(n.said+", "+p.said, ", ")
			for _, l := range liquids {
				if err := m.fill(&v, l.Density, l.Mass); err != nil {
					return err
				}
			}
			forms, c.states = append(forms, &v), append(c.states, v.states...)
		}
	}
	c.forms = forms
	return nil
}

// eitherWay are the ready-made cases whose axial load factor acts either way: a sling, a
// truck and the ground take the tank by either end. Common practice.
var eitherWay = map[string]bool{"transport": true, "lift": true, "landing": true}

// axialForms returns the axial load factors of a written case, the one it is known by
// first [-].
func axialForms(known float64, in tank.Case) []form {
	out := []form{{value: known}}
	if in.DynamicFactor != nil {
		before, after := given(in.AxialLoadFactorBefore), in.AxialLoadFactor
		out = append(out, form{before, fmt.Sprintf("before the step, load factor %.4g", before)},
			form{after, fmt.Sprintf("settled after the step, load factor %.4g", after)})
	}
	if eitherWay[in.Kind] {
		for _, f := range out[:len(out):len(out)] {
			if f.value != 0 {
				out = append(out, form{-f.value, fmt.Sprintf("load factor %.4g", -f.value)})
			}
		}
	}
	return out
}
