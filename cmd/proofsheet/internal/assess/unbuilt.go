package assess

import (
	"errors"

	"proofsheet/report/check"
)

// unbuilt lists every check that the tank needs and this version does not make,
// each with its reason: it is not assessed, never silent.
func (m *model) unbuilt() (out []check.Result) {
	add := func(id, title, why string) {
		out = append(out, check.NotMade(id, title, errors.New(why+": this version does not make the check")))
	}
	for _, h := range m.ends() {
		unbuiltHead(h, add)
	}
	for _, p := range m.ports {
		if p.in.Kind == "cover" {
			add("port."+p.in.Name+"/flange", "Port "+p.in.Name+": flange ring", "rotation and stress of the ring that the cover is bolted to")
		}
	}
	return out
}

// unbuiltHead lists the checks of a head that are not made.
func unbuiltHead(h *headPart, add func(id, title, why string)) {
	at := h.name
	if h.bolted() {
		add(at+"/flange", h.title+": flange ring", "rotation and stress of the ring")
	}
}
