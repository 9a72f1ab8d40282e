package tank

import (
	"fmt"
	"math"
	"slices"
	"strings"
)

// mostOval is the largest less the smallest diameter over the diameter up to which
// an oval has a formula [-].
const mostOval = 0.05

func (r *reader) checkCylinder() {
	const table = "cylinder"
	c := &r.t.Cylinder
	if !r.has(table) {
		return
	}
	r.oneOf(table, "write one; the other follows from the wall", "inside_diameter", "outside_diameter")
	r.oneOf(table, "write the tolerance, or the wall as measured", "under_tolerance", "least_thickness")
	r.orNumber("cylinder.corrosion", &c.Corrosion, 0, "0 mm", "nothing was written")
	if c.OutOfRound != nil && *c.OutOfRound > mostOval*c.NominalInsideDiameter() && c.NominalInsideDiameter() > 0 {
		r.fault("cylinder.out_of_round", "is over a twentieth of the diameter; it is the largest less the smallest diameter, and such an oval has no formula")
	}
	r.beyondTanks()
	c.LongSeamAnywhere = r.seamClock("cylinder.long_seam_clock", c.LongSeam, "the long seam may be anywhere round the cylinder, through any port on it")
	if c.Thickness > 0 && c.OutsideDiameter != nil && *c.OutsideDiameter <= 2*c.Thickness {
		r.fault("cylinder.thickness", "leaves no room inside outside_diameter")
	}
	if c.InsideDiameter != nil && c.Thickness > *c.InsideDiameter/2 {
		r.fault("cylinder.thickness", "is more than the inside radius; one of the two is wrong")
	}
	r.checkWall(table, c.Thickness, c.LeastThickness, c.Wall())
	r.checkSeamless(c)
	r.checkGirthSeams(c)
	if c.Rings != nil {
		r.checkRings(c, c.Rings)
	}
}

// widest and longest are beyond any tank that this program is for [m]: the largest that
// have flown are 10 m wide and 50 m long.
const widest, longest = 30.0, 100.0

// beyondTanks tells a length that no tank has, which is one in the wrong unit.
func (r *reader) beyondTanks() {
	c := r.t.Cylinder
	for _, row := range []struct {
		key  string
		is   *float64
		most float64
	}{
		{"cylinder.inside_diameter", c.InsideDiameter, widest}, {"cylinder.outside_diameter", c.OutsideDiameter, widest}, {"cylinder.length", &c.Length, longest},
	} {
		if row.is == nil || !(*row.is > row.most) {
			continue
		}
		meant := ""
		if number, ok := strings.CutSuffix(strings.TrimSpace(r.written(row.key)), " m"); ok {
			meant = fmt.Sprintf("; did you mean %q?", number+" mm")
		}
		r.fault(row.key, "%q is more than any tank has, %g m%s", r.written(row.key), row.most, meant)
	}
}

// checkRings finds the stations of the rings and what was left out of them.
func (r *reader) checkRings(c *Cylinder, q *Rings) {
	const table = "cylinder.rings"
	r.oneOf(table, "write the stations, or the number of rings", "stations", "count")
	r.orDefault("cylinder.rings.side", &q.Side, "outside", "nothing was written")
	r.orDefault("cylinder.rings.material", &q.Material, c.Material, "as the wall")
	if q.UnderTolerance == nil && !r.has("cylinder.rings.under_tolerance") {
		if q.UnderTolerance = c.UnderTolerance; q.UnderTolerance != nil {
			r.defaulted("cylinder.rings.under_tolerance", r.written("cylinder.under_tolerance"), "as the wall")
		} else if r.has("cylinder.least_thickness") {
			r.fault(table, "needs under_tolerance; the wall is measured, the rings are not: write under_tolerance = \"0.3 mm\"")
		}
	}
	if t := q.UnderTolerance; t != nil && q.Width > 0 && q.Height > 0 && math.Min(q.Width, q.Height) <= *t {
		r.fault("cylinder.rings.under_tolerance", "leaves nothing of the bar")
	}
	if !(c.Length > 0) {
		return
	}
	if len(q.Stations) == 0 {
		for i := range q.Count {
			q.Stations = append(q.Stations, c.Length*float64(i+1)/float64(q.Count+1))
		}
		return
	}
	slices.Sort(q.Stations)
	if slices.Max(q.Stations) >= c.Length {
		r.fault("cylinder.rings.stations", "must lie inside of the cylinder's length")
	}
	for i := 1; i < len(q.Stations); i++ {
		if q.Stations[i]-q.Stations[i-1] <= q.Width {
			r.fault("cylinder.rings.stations", "two rings stand in one place")
			return
		}
	}
}

// checkSeamless lets only a drawn or extruded tube have no long seam.
func (r *reader) checkSeamless(c *Cylinder) {
	if c.LongSeam != "none" {
		return
	}
	m, _ := r.t.FindMaterial(c.Material)
	for _, flat := range []string{"plate", "sheet", "strip"} {
		if strings.Contains(strings.ToLower(m.Product), flat) {
			r.fault("cylinder.long_seam", "\"none\" is only for drawn or extruded tube, and the material is %s; write the joint", m.Product)
			return
		}
	}
	r.defaulted("cylinder.long_seam", "none", "as written: a drawn or extruded tube, to be confirmed by its certificate")
}

func (r *reader) checkGirthSeams(c *Cylinder) {
	const table = "cylinder"
	if r.has("cylinder.girth_seam") && !r.has("cylinder.girth_stations") {
		r.defaulted("cylinder.girth_stations", "unknown", "the girth seam may be anywhere in the cylinder")
	}
	r.needs(table, "girth_stations", "girth_seam", `"girth"`)
	if r.has("cylinder.girth_stations") && c.Length > 0 {
		if len(c.GirthStations) > 0 && slices.Max(c.GirthStations) >= c.Length {
			r.fault("cylinder.girth_stations", "must lie inside of the cylinder's length")
		}
		slices.Sort(c.GirthStations)
		if len(slices.Compact(slices.Clone(c.GirthStations))) < len(c.GirthStations) {
			r.fault("cylinder.girth_stations", "names a station twice")
		}
	}
}

// checkWall refuses a wall of which nothing is left, and a measured one above
// nominal, which is usually a misplaced decimal point.
func (r *reader) checkWall(table string, nominal float64, least *float64, wall float64) {
	if nominal <= 0 {
		return
	}
	if least != nil && *least > nominal {
		r.fault(join(table, "least_thickness"), "is above thickness; correct one of the two")
		return
	}
	if wall <= 0 {
		r.fault(join(table, "thickness"), "nothing of the wall is left: %.4g mm less tolerance, thinning and corrosion leave %.4g mm", nominal*1e3, wall*1e3)
	}
}

// formed are the shapes whose wall is thinned by forming.
var formed = []string{"hemisphere", "ellipsoid", "torisphere", "toricone"}

func (r *reader) checkHead(table string, h *Head) {
	if !r.has(table) {
		return
	}
	r.headDefaults(table, h)
	r.headWall(table, h)
	r.headJoints(table, h)
	r.headStiffening(table, h)
	r.headClosure(table, h)
	if h.Tip != nil {
		r.headTip(table, h)
	}
	r.headShape(table, h)
}

func (r *reader) headDefaults(table string, h *Head) {
	align, why := "inside", "the cylinder's inside diameter is given"
	if r.t.Cylinder.OutsideDiameter != nil {
		align, why = "outside", "the cylinder's outside diameter is given"
	}
	r.orDefault(join(table, "align"), &h.Align, align, why)
	r.orDefault(join(table, "bulge"), &h.Bulge, "outward", "nothing was written")
	r.orNumber(join(table, "corrosion"), &h.Corrosion, 0, "0 mm", "nothing was written")
	if slices.Contains([]string{"hemisphere", "ellipsoid", "torisphere", "toricone"}, h.Shape) {
		r.orNumber(join(table, "straight_flange"), &h.StraightFlange, 0, "0 mm", "nothing was written")
	}
}

func (r *reader) headWall(table string, h *Head) {
	r.oneOf(table, "write the tolerance, or the wall as measured", "under_tolerance", "least_thickness")
	r.notBoth(table, "least_thickness", "forming_thinning", "the measured wall already holds the thinning")
	if slices.Contains(formed, h.Shape) && !r.has(join(table, "forming_thinning")) && !r.has(join(table, "least_thickness")) {
		r.faultAt(r.where(table, r.at.key), join(table, "forming_thinning"),
			"is missing; a formed %s needs it: write forming_thinning = 0.10, or least_thickness as measured", h.Shape)
	}
	r.checkWall(table, h.Thickness, h.LeastThickness, h.Wall())
	if h.Forming == "rolled" && slices.Contains(formed, h.Shape) && h.Shape != "toricone" { // of a toricone the cone is
		r.fault(join(table, "forming"), "no roll makes the double curvature of a %s; write \"pressed\", \"spun\" or \"machined\"", h.Shape)
	}
}

func (r *reader) headJoints(table string, h *Head) {
	if h.Shape == "cone" || h.Shape == "toricone" {
		if !r.has(join(table, "segment_seam")) {
			r.faultAt(r.where(table, r.at.key), join(table, "segment_seam"),
				"is missing; a %s needs it: write segment_seam = \"long\", or \"none\" for one piece", h.Shape)
		}
	} else {
		r.orDefault(join(table, "segment_seam"), &h.SegmentSeam, "none", "one piece")
	}
	if r.has(join(table, "segment_seam")) && h.SegmentSeam != "none" {
		h.SegmentSeamAnywhere = r.seamClock(join(table, "segment_seam_clock"), h.SegmentSeam, "the segment seam may be anywhere round the head, through any port on it")
	} else {
		r.onlyWith(join(table, "segment_seam_clock"), "a head with a segment_seam")
	}
}

func (r *reader) headStiffening(table string, h *Head) {
	r.notBoth(table, "seam_thickness", "ring", "a junction has the one or the other")
	r.needs(table, "seam_thickness", "seam_width", `"60 mm"`)
	r.needs(table, "seam_width", "seam_thickness", `"16 mm"`)
	if h.SeamThickness != nil && h.Thickness > 0 && *h.SeamThickness < h.Thickness {
		r.fault(join(table, "seam_thickness"), "is below thickness; it is the thicker wall at the junction")
	}
	if l := r.t.Cylinder.Length; h.SeamWidth != nil && l > 0 && *h.SeamWidth > l/2 {
		r.fault(join(table, "seam_width"), "is over half the length of the cylinder; a wall as thick as that is the cylinder's own thickness")
	}
}

// headClosure checks what only a flat head has, and that a head is held.
func (r *reader) headClosure(table string, h *Head) {
	r.notBoth(table, "seam", "closure", "a head is welded or bolted")
	if !r.has(join(table, "seam")) && !r.has(join(table, "closure")) && !misspelt(r, table, headKeys) {
		r.faultAt(r.where(table, r.at.key), join(table, "seam"), "is missing; write seam = \"girth\", the joint between head and cylinder")
	}
	if h.Shape != "" && h.Shape != "flat" {
		for _, k := range []string{"corner_factor", "closure", "bolts", "seal", "source"} {
			r.onlyWith(join(table, k), `shape "flat"`)
		}
		return
	}
	if h.Shape == "flat" && h.Closure == "" && !r.has(join(table, "corner_factor")) {
		r.faultAt(r.where(table, r.at.key), join(table, "corner_factor"), "is missing; a welded flat head needs it, with source")
	}
	r.needs(table, "corner_factor", "source", `"where the factor comes from"`)
	r.needs(table, "closure", "bolts", `{ count = 12, size = "1/4-28 UNF", circle = "140 mm" }`)
	r.needs(table, "closure", "seal", `{ kind = "o-ring", diameter = "127 mm" }`)
	if h.Closure == "" && h.Shape == "flat" {
		r.onlyWith(join(table, "bolts"), `closure = "bolted"`)
		r.onlyWith(join(table, "seal"), `closure = "bolted"`)
	}
	if h.Closure == "bolted" {
		for _, k := range []string{"corner_factor", "seam_thickness", "seam_width", "ring"} {
			r.onlyWith(join(table, k), "a head that is welded")
		}
		r.closure(table, h.Bolts, h.Seal, r.t.Cylinder.NominalInsideDiameter(), "the cylinder's inside diameter")
	}
}

func (r *reader) headTip(table string, h *Head) {
	at, tip := join(table, "tip"), h.Tip
	switch tip.Close {
	case "plate":
		if !r.has(join(at, "thickness")) {
			r.fault(at, "close = \"plate\" needs thickness; write thickness = \"6 mm\"")
		}
		r.onlyWith(join(at, "port"), `close = "port"`)
		r.orDefault(join(at, "material"), &tip.Material, h.Material, "as the head")
		if tip.UnderTolerance == nil && !r.has(join(at, "under_tolerance")) && h.UnderTolerance != nil {
			tip.UnderTolerance = h.UnderTolerance
			r.defaulted(join(at, "under_tolerance"), r.written(join(table, "under_tolerance")), "as the head")
		}
		if tip.UnderTolerance == nil && !r.has(join(at, "under_tolerance")) && h.LeastThickness != nil {
			r.fault(at, "needs under_tolerance; the head's wall is measured, the plate's is not: write under_tolerance = \"0.3 mm\"")
		}
	case "port":
		if !r.has(join(at, "port")) {
			r.fault(at, "close = \"port\" needs port; write port = \"NAME\" of a [[port]]")
		} else if tip.Port != "" {
			r.tipPort(at, strings.TrimPrefix(table, "head."), tip.Port)
		}
	case "neck":
		r.onlyWith(join(at, "port"), `close = "port"`)
	}
	if tip.Close != "" && tip.Close != "plate" {
		for _, k := range []string{"thickness", "under_tolerance", "material"} {
			r.onlyWith(join(at, k), `close = "plate"`)
		}
	}
}

// tipPort checks that the port which closes a tip exists on that head.
func (r *reader) tipPort(at, end, name string) {
	var names []string
	for _, p := range r.t.Port {
		if p.Name == name {
			if p.On != "" && p.On != end {
				r.fault(join(at, "port"), "port %q is on %q, not on this head", name, p.On)
			}
			return
		}
		names = append(names, p.Name)
	}
	if near := nearWord(name, names); near != "" {
		r.fault(join(at, "port"), "no port %q is written; did you mean %q?", name, near)
		return
	}
	r.fault(join(at, "port"), "no port %q is written; write its [[port]]", name)
}

// written returns a value as the file holds it.
func (r *reader) written(path string) string {
	v, _ := lookUp(r.t.raw, path)
	s, _ := v.(string)
	return s
}
