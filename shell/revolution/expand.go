package revolution

// An expansion is what fill makes, for any number of waves n: the strains of a
// ripple hold n to the second power at most, so that the elastic matrix is a
// polynomial of the fourth degree in it and that of the prestress one of the
// second. Elements whose unknowns themselves know n, at the axis and at rigid
// arms, are left to fill's way.
type expansion struct {
	w         *waves
	k         [5]*band
	g         [3]*band // nil without vary
	pre, vary []prestress
	alone     []int
}

// expand prepares the prestress pre, and vary unless nil, from five and three
// numbers of waves, −2 to 2, whose sums and differences are exact.
func (w *waves) expand(pre, vary []prestress) *expansion {
	x := &expansion{w: w, pre: pre, vary: vary}
	var k, g [5]*band
	for i := range k {
		k[i] = newBand(w.n, waveWidth)
		if vary != nil && i > 0 && i < 4 {
			g[i] = newBand(w.n, waveWidth)
		}
	}
	for i := range w.m.elements {
		if w.knows(i) {
			x.alone = append(x.alone, i)
			continue
		}
		s := w.m.waveShapeOf(i, 2)
		for n := range k {
			w.element(i, float64(n-2), s, k[n], g[n], pre, vary)
		}
	}
	for i := range k[0].a {
		a, b, c, d, e := k[0].a[i], k[1].a[i], k[2].a[i], k[3].a[i], k[4].a[i]
		k[0].a[i], k[1].a[i], k[2].a[i] = c, (a-8*b+8*d-e)/12, (-a+16*b-30*c+16*d-e)/24
		k[3].a[i], k[4].a[i] = (-a+2*b-2*d+e)/12, (a-4*b+6*c-4*d+e)/24
	}
	x.k = k
	if vary == nil {
		return x
	}
	for i := range g[1].a {
		b, c, d := g[1].a[i], g[2].a[i], g[3].a[i]
		g[1].a[i], g[2].a[i], g[3].a[i] = c, (d-b)/2, (b+d)/2-c
	}
	x.g = [3]*band{g[1], g[2], g[3]}
	return x
}

// knows reports whether the unknowns of element i depend on the waves.
func (w *waves) knows(i int) bool {
	e := &w.m.elements[i]
	c := w.m.s.Segments[e.segment].Curve
	return e.arm != (arm{}) || c.at(e.τ0).r == 0 || c.at(e.τ1).r == 0
}

// fill sets k, and g unless nil, as waves.fill does.
func (x *expansion) fill(k, g *band, n int) {
	f := float64(n)
	for i := range k.a {
		k.a[i] = x.k[0].a[i] + f*(x.k[1].a[i]+f*(x.k[2].a[i]+f*(x.k[3].a[i]+f*x.k[4].a[i])))
	}
	if g != nil {
		for i := range g.a {
			g.a[i] = x.g[0].a[i] + f*(x.g[1].a[i]+f*x.g[2].a[i])
		}
	}
	for _, i := range x.alone {
		x.w.element(i, f, x.w.m.waveShapeOf(i, n), k, g, x.pre, x.vary)
	}
	x.w.edges(k, f, x.pre, true)
	if g != nil {
		x.w.edges(g, f, x.vary, false)
	}
}
