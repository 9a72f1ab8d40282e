package tank

import (
	"fmt"
	"math"
)

// checkPorts checks each [[port]] and unrolls its count.
func (r *reader) checkPorts() {
	var all []Port
	for i := range r.t.Port {
		p := &r.t.Port[i]
		p.Position, p.Group = i, p.Name
		table := fmt.Sprintf("port[%d]", i)
		r.portPlace(table, p)
		r.portTube(table, p)
		r.portFit(table, p)
		r.portWeld(table, p)
		r.portPad(table, p)
		r.portInsert(table, p)
		r.portKind(table, p)
		if p.Load != nil && !r.has(join(table, "load.force")) && !r.has(join(table, "load.moment")) {
			r.fault(join(table, "load"), "is empty; write force or moment")
		}
		if p.Count == 0 {
			p.Count = 1
		}
		all = append(all, unroll(*p)...)
	}
	seen := map[string]int{}
	for _, p := range all {
		if first, ok := seen[p.Name]; ok && p.Name != "" {
			at := fmt.Sprintf("port[%d].name", p.Position)
			r.fault(at, "%q is the name of another port, at line %d; names are unique", p.Name,
				r.where(fmt.Sprintf("port[%d]", first), r.at.key).line)
			continue
		}
		seen[p.Name] = p.Position
	}
	r.t.Port = all
	r.checkOverlaps()
}

// unroll spaces a group of ports equally from its clock: fill-1, fill-2, …
func unroll(p Port) []Port {
	if p.Count == 1 {
		return []Port{p}
	}
	ps := make([]Port, p.Count)
	for i := range ps {
		ps[i] = p
		ps[i].Name = fmt.Sprintf("%s-%d", p.Group, i+1)
		ps[i].Clock += 2 * math.Pi * float64(i) / float64(p.Count)
	}
	return ps
}

func (r *reader) portPlace(table string, p *Port) {
	if p.On == "" {
		return
	}
	r.orNumber(join(table, "clock"), &p.Clock, 0, "0 deg", "nothing was written")
	if p.On == "cylinder" {
		r.portOnCylinder(table, p)
		return
	}
	r.orDefault(join(table, "axis"), &p.Axis, "parallel", "nothing was written")
	r.onlyWith(join(table, "station"), `on = "cylinder"`)
	r.onlyWith(join(table, "offset"), `on = "cylinder"`)
	if !r.has(join(table, "radius")) {
		if r.closesTip(p) {
			zero := 0.0
			p.Radius = &zero
			return
		}
		r.faultAt(r.where(table, r.at.key), join(table, "radius"), "is missing; a port on a head needs it: write radius = \"110 mm\"")
		return
	}
	if p.Radius == nil {
		return
	}
	if *p.Radius == 0 && p.Count > 1 {
		r.fault(join(table, "count"), "several ports cannot stand on the tank axis")
	}
	r.overRim(join(table, "radius"), p)
}

// overRim tells a port on a head that lies outside of the tank, or whose hole reaches over
// the rim of the head. Of a tube normal to the wall only the axis is looked at, since its
// hole is narrower towards the rim; where the plain part of a head ends is assessed.
func (r *reader) overRim(at string, p *Port) {
	h, _ := r.headOf(p.On)
	rim := r.t.SeamInsideDiameter(h) / 2
	if !(rim > 0) || h.Closure == "bolted" || r.closesTip(p) {
		return
	}
	half := math.Max(p.Tube.OutsideDiameter, 0) / 2
	if *p.Radius+half <= rim || p.Axis != "parallel" && *p.Radius < rim {
		return
	}
	write := ""
	if most := math.Floor((rim-half)*1e4+1e-6) / 10; most >= 0 { // to a tenth of a millimetre, down
		write = fmt.Sprintf("; write at most \"%g mm\"", most)
	}
	if *p.Radius >= rim {
		r.fault(at, "lies outside of the tank, whose inside radius is %.4g mm%s", rim*1e3, write)
		return
	}
	r.fault(at, "with half of its tube, %.4g mm, the hole reaches over the rim of the head, %.4g mm from the axis%s", half*1e3, rim*1e3, write)
}

// closesTip reports whether a cone's tip names the port.
func (r *reader) closesTip(p *Port) bool {
	h := r.t.Head.Aft
	if p.On == "forward" {
		h = r.t.Head.Forward
	}
	return h.Tip != nil && h.Tip.Close == "port" && h.Tip.Port == p.Name
}

func (r *reader) portOnCylinder(table string, p *Port) {
	r.orDefault(join(table, "axis"), &p.Axis, "normal", "a tube through the cylinder")
	if p.Axis == "parallel" {
		r.fault(join(table, "axis"), "a tube through the cylinder cannot be parallel to its axis; write \"normal\"")
	}
	r.onlyWith(join(table, "radius"), "a port on a head")
	if inside := r.t.Cylinder.NominalInsideDiameter() / 2; inside > 0 && p.Tube.OutsideDiameter > 0 {
		if most := inside - p.Tube.OutsideDiameter/2; math.Abs(p.Offset) >= most && p.Offset != 0 {
			r.fault(join(table, "offset"), "the tube would not pass through the wall all round; write less than %.4g mm", most*1e3)
		}
	}
	if !r.has(join(table, "station")) {
		r.faultAt(r.where(table, r.at.key), join(table, "station"), "is missing; a port on the cylinder needs it: write station = \"300 mm\"")
		return
	}
	if length := r.t.Cylinder.Length; p.Station != nil && length > 0 && *p.Station >= length {
		r.fault(join(table, "station"), "lies beyond the cylinder's length")
	}
}

// tubeTolerance is the share of its wall by which ordinary tube may be thinner
// [-]: 12.5 %, common practice of pipe and tube standards.
const tubeTolerance = 0.125

func (r *reader) portTube(table string, p *Port) {
	at, tube := join(table, "tube"), &p.Tube
	if !r.has(at) || tube.Wall <= 0 {
		return
	}
	if tube.OutsideDiameter > 0 && tube.OutsideDiameter <= 2*tube.Wall {
		r.fault(join(at, "wall"), "leaves no bore inside outside_diameter")
	}
	r.orNumber(join(at, "under_tolerance"), &tube.UnderTolerance, tubeTolerance*tube.Wall, "12.5 % of the wall", "common practice for tube")
	if !r.has(join(at, "seam")) {
		r.defaulted(join(at, "seam"), "unknown", "efficiency 0.85")
	}
	lost := r.corrosionOf(p.On)
	if p.Inside > 0 {
		lost *= 2
	}
	if tube.Wall-tube.UnderTolerance-lost <= 0 {
		r.fault(join(at, "wall"), "nothing of the tube is left after tolerance and corrosion")
	}
}

func (r *reader) corrosionOf(on string) float64 {
	switch on {
	case "cylinder":
		return r.t.Cylinder.Corrosion
	case "forward":
		return r.t.Head.Forward.Corrosion
	}
	return r.t.Head.Aft.Corrosion
}

func (r *reader) portFit(table string, p *Port) {
	fit, why := "flush", "the tube does not project inside"
	if p.Inside > 0 {
		fit, why = "through", "the tube projects inside"
	}
	r.orDefault(join(table, "fit"), &p.Fit, fit, why)
	r.orNumber(join(table, "outside"), &p.Outside, 0, "0 mm", "nothing was written; no metal of the tube outside counts")
	r.orNumber(join(table, "inside"), &p.Inside, 0, "0 mm", "nothing was written")
	if p.Inside > 0 && p.Fit != "through" && p.Fit != "" {
		r.contradict(join(table, "inside"), "fit", "a tube projects inside only with fit = \"through\"")
	}
}

func (r *reader) portWeld(table string, p *Port) {
	at := join(table, "weld")
	if !r.has(at) {
		return
	}
	r.notBoth(at, "outside_leg", "outside_throat", "a fillet is given by its leg or its throat")
	r.notBoth(at, "inside_leg", "inside_throat", "a fillet is given by its leg or its throat")
	if r.words[join(at, "groove")] {
		p.Weld.GrooveFull = true
	}
	if p.Weld.Groove > 0 && p.On != "" {
		wall, left := r.t.Cylinder.Thickness, r.t.Cylinder.Wall()
		if h, ok := r.headOf(p.On); ok {
			wall, left = h.Thickness, h.Wall()
		}
		switch {
		case wall > 0 && p.Weld.Groove > wall:
			r.fault(join(at, "groove"), "is deeper than the wall; write \"full\" for a groove through it")
		case left > 0 && p.Weld.Groove > left*(1+1e-9):
			r.fault(join(at, "groove"), "is deeper than the %.4g mm of wall left after tolerance, thinning and corrosion; write no more than that, or \"full\" for a groove through the wall", left*1e3)
		}
	}
	if !r.has(join(at, "outside_leg")) && !r.has(join(at, "outside_throat")) && !r.has(join(at, "groove")) &&
		!r.has(join(at, "inside_leg")) && !r.has(join(at, "inside_throat")) && !misspelt(r, at, subFields(portKeys, "weld")) {
		r.fault(at, "is empty; write outside_leg, inside_leg or groove")
	}
}

func (r *reader) headOf(on string) (Head, bool) {
	switch on {
	case "aft":
		return r.t.Head.Aft, true
	case "forward":
		return r.t.Head.Forward, true
	}
	return Head{}, false
}

func (r *reader) portPad(table string, p *Port) {
	if p.Pad == nil {
		return
	}
	at, pad := join(table, "pad"), p.Pad
	r.oneOf(at, "a pad is round, or has the same lip all round", "outside_diameter", "lip")
	r.onlyWithout(at, "length", "lip", "a pad has the same lip all round, or a length and a width")
	r.padSize(at, p)
	material := r.t.Cylinder.Material
	if h, ok := r.headOf(p.On); ok {
		material = h.Material
	}
	r.orDefault(join(at, "material"), &pad.Material, material, "as the wall")
	if !r.wallTolerance(at, p.On, &pad.UnderTolerance) {
		return
	}
	if pad.Thickness > 0 && pad.Thickness <= pad.UnderTolerance {
		r.fault(join(at, "thickness"), "nothing of the pad is left after tolerance")
	}
}

// subFields returns the keys of a table among fields.
func subFields(fields []field, key string) []field {
	f, _ := find(fields, key)
	return f.fields
}
