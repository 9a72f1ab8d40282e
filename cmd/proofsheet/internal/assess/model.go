package assess

import (
	"fmt"
	"math"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads"
	"proofsheet/loads"
	"proofsheet/material"
	"proofsheet/material/weld"
	"proofsheet/shell/revolution"
)

// A part is the cylinder or a head, with the walls its strength rests on.
type part struct {
	name      string  // "cylinder", "head.aft", "head.forward"
	title     string  // "Cylinder", "Aft head"
	material  string  // name in the tank file
	nominal   float64 // wall for mass and volume [m]
	least     float64 // wall for strength, corrosion off [m]
	corrosion float64 // [m]
	radius    float64 // inside radius at its seam, nominal [m]
	refused   error   // why no strength check of the part can be made
}

// corroded returns the inside radius at the seam with the corrosion gone [m].
func (p part) corroded() float64 { return p.radius + p.corrosion }

// mid returns the mid-wall radius for strength at the seam [m].
func (p part) mid() float64 { return p.corroded() + p.least/2 }

// A headPart is a head as a part with its shapes.
type headPart struct {
	part
	end      string // "aft", "forward"
	in       tank.Head
	nominal0 heads.Head // inside surface, nominal: volume, drawing, chords
	strength heads.Head // inside surface with the corrosion gone
	seam     *tank.Joint
	segment  *tank.Joint // nil for one piece
}

// A model is the tank resolved: everything that does not change with the case.
type model struct {
	t       *tank.Tank
	in      *interior
	cyl     *part
	long    *tank.Joint // nil for a drawn or extruded tube
	girth   *tank.Joint // between courses, nil for one course
	aft     *headPart
	fwd     *headPart
	ports   []*portPart
	masses  []loads.PointMass // of the structure
	massErr error             // why the structure cannot be weighed
	metals  metals
	known   remembered
	layouts map[float64]*zoneLayout // of the weld zones by temperature [K]
	group4  bool                    // some joint is not examined: the European rule's group 4

	stables      map[stableKey]*stableCylinder
	shells       map[shellKey]shellFound
	lones        map[loneKey]*loneHead
	operating    []operatingState
	ranges       map[string]*jointRange // of each joint, over the operating states
	meshes       *meshes                // nil of a tank in sizing, which is assessed again as a whole: its mesh is not halved to see
	coarse       map[shellKey]error     // meshes that have been refused
	twoSided     bool                   // some case has a lateral load factor, or slosh
	drawn        bool                   // some case has less pressure inside than outside at an end
	withoutShell bool                   // no numerical shell is made
	rings        map[string]*ringRange  // of each ring, by the end it stands at, over the operating states
	ringsSee     ringsFound             // the cylinder's own rings, over the operating states
	seamsSee     *seamExtremes          // over the operating states; nil where no seam is out of line
	solved       map[*loads.State]*shellState
	liquids      map[liquidKey]*revolution.Solution // the shell under a liquid alone
	lines        map[*loads.State][]seamLoad        // what is carried at each station of the shell
	reaches      map[reachKey][]reachOf
	outside      map[outsideKey]outsideWall
	strengths    map[strengthKey]strengthFound
	cold, warm   float64 // liquid density at the coldest and the warmest [kg/m3]
	boiling      float64 // of a liquefied gas at 1 atm, +Inf for any other liquid [K]
}

// ends returns both heads, aft first.
func (m *model) ends() []*headPart { return []*headPart{m.aft, m.fwd} }

// newModel resolves the tank; an error names a key that contradicts another in
// a way only the geometry shows.
func newModel(t *tank.Tank) (*model, error) {
	m := &model{t: t, metals: newMetals(t), known: newRemembered(), layouts: map[float64]*zoneLayout{}}
	m.stables = map[stableKey]*stableCylinder{}
	m.shells, m.solved = map[shellKey]shellFound{}, map[*loads.State]*shellState{}
	m.liquids, m.reaches = map[liquidKey]*revolution.Solution{}, map[reachKey][]reachOf{}
	m.lines = map[*loads.State][]seamLoad{}
	if err := m.checkDraws(); err != nil {
		return nil, err
	}
	if err := m.densities(); err != nil {
		return nil, err
	}
	c := t.Cylinder
	m.cyl = &part{
		name: "cylinder", title: "Cylinder", material: c.Material, nominal: c.Thickness, corrosion: c.Corrosion,
		least: c.Wall(), radius: c.NominalInsideDiameter() / 2,
	}
	m.long, m.girth = m.joint(c.LongSeam), m.joint(c.GirthSeam)
	m.cyl.refused = m.plateAsTube()
	var err error
	if m.aft, err = m.newHead("aft", t.Head.Aft); err != nil {
		return nil, err
	}
	if m.fwd, err = m.newHead("forward", t.Head.Forward); err != nil {
		return nil, err
	}
	m.in = &interior{radius: m.cyl.radius, length: c.Length, aft: m.aft.asEnd(), fwd: m.fwd.asEnd()}
	for _, j := range t.Joint {
		m.group4 = m.group4 || j.Examination == "none"
	}
	m.newPorts()
	return m, nil
}

// plateAsTube refuses a cylinder without a long seam whose material the file names as
// plate: nothing rolled is closed without a weld.
func (m *model) plateAsTube() error {
	if mat, err := m.plateMinima(); err != nil && (mat.Spec != "" || mat.Product != "") {
		return fmt.Errorf("long_seam is \"none\" and %w", err)
	}
	return nil
}

// plateMinima returns the material of a cylinder without a long seam, and an error
// where the tables know it as plate alone.
func (m *model) plateMinima() (tank.Material, error) {
	mat, ok := m.t.FindMaterial(m.cyl.material)
	if m.long != nil || !ok || mat.Own() {
		return mat, nil
	}
	return mat, material.Query{Alloy: mat.Alloy, Spec: mat.Spec, Product: mat.Product, Thickness: m.cyl.nominal}.Seamless()
}

// tubeCautions says where the minima of plate stand in for those of the tube that the
// cylinder is by its missing seam.
func (m *model) tubeCautions() (out []string) {
	if mat, err := m.plateMinima(); err != nil && m.cyl.refused == nil {
		out = append(out, fmt.Sprintf("Cylinder: a drawn or extruded tube, as long_seam is \"none\"; of %s only minima of plate are known here and stand in for the tube's: hold them against its certificate. A rolled plate has a long seam: name its joint.", mat.Alloy))
	}
	return out
}

// joint returns the named joint, or nil where there is none.
func (m *model) joint(name string) *tank.Joint {
	if j, ok := m.t.FindJoint(name); ok {
		return &j
	}
	return nil
}

// newHead resolves a head. Its inside radius follows from the walls and how
// they are aligned at the seam.
func (m *model) newHead(end string, in tank.Head) (*headPart, error) {
	h := &headPart{end: end, in: in, seam: m.joint(in.Seam), segment: m.joint(in.SegmentSeam)}
	h.part = part{
		name: "head." + end, title: map[string]string{"aft": "Aft head", "forward": "Forward head"}[end],
		material: in.Material, nominal: in.Thickness, corrosion: in.Corrosion,
		least: in.Wall(), radius: m.t.SeamInsideDiameter(in) / 2,
	}
	shape, ok := heads.FindShape(in.Shape)
	if !ok {
		return nil, fmt.Errorf("head.%s.shape: %q is not known", end, in.Shape)
	}
	var err error
	if h.nominal0, err = shape.New(h.geometry()); err != nil {
		return nil, fmt.Errorf("head.%s: %w", end, err)
	}
	if h.strength, err = heads.Corroded(h.nominal0, in.Corrosion); err != nil {
		return nil, fmt.Errorf("head.%s, corroded: %w", end, err)
	}
	h.refused = m.temperLost(h)
	return h, nil
}

// geometry returns the head's inside face as the head shapes want it.
func (h *headPart) geometry() heads.Geometry {
	in := h.in
	g := heads.Geometry{
		InsideDiameter: 2 * h.radius, Thickness: in.Thickness, StraightFlange: in.StraightFlange,
		Inward: in.Bulge == "inward",
		Depth:  given(in.Depth), HalfAngle: given(in.HalfAngle), Aspect: given(in.Aspect),
		CrownRadius: given(in.CrownRadius), KnuckleRadius: given(in.KnuckleRadius),
	}
	if in.Tip != nil {
		g.TipDiameter = in.Tip.Diameter
	}
	return g
}

// asEnd returns the head as the interior wants it.
func (h *headPart) asEnd() end {
	return end{head: h.nominal0, radius: h.radius, flange: h.in.StraightFlange, inward: h.in.Bulge == "inward"}
}

// given returns the number, or 0 where it was left out, in its own unit.
func given(v *float64) float64 {
	if v == nil {
		return 0
	}
	return *v
}

// asWeld returns the joint as the weld tables want it.
func asWeld(j *tank.Joint) weld.Joint {
	e := math.NaN()
	if j.Efficiency != nil {
		e = *j.Efficiency
	}
	return weld.Joint{Kind: j.Kind, Examination: j.Examination, Root: j.Root, Process: j.Process, Coupons: j.Coupons != "",
		Efficiency: e, EfficiencySource: j.Source}
}
