package heads

// flatTakes are the keys of the tank file that mean something to the shape.
var flatTakes = []string{}

var flatShape = Shape{Name: "flat", Takes: flatTakes, New: newFlat}

// newFlat makes a flat plate across the cylinder. It holds no volume.
func newFlat(g Geometry) (Head, error) {
	if err := g.accept("flat head", flatTakes); err != nil {
		return nil, err
	}
	return &meridian{"flat", g, []piece{disc{g.InsideDiameter / 2}}}, nil
}
