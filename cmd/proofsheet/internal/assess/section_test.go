package assess_test

import (
	"math"
	"strings"
	"testing"
)

// TestWorstPlace holds the ring of the drawing to a made check with the least margin
// of those with a place, on the metal, and the shaded liquid to that check's case.
func TestWorstPlace(t *testing.T) {
	for _, name := range []string{"demo", "flight", "kerosene"} {
		s := sheet(t, read(t, name))
		c := s.Section
		if c.Worst == nil {
			t.Errorf("%s: no place", name)
			continue
		}
		near := math.Inf(1)
		for _, o := range c.Outlines {
			for i := range len(o.Outside) - 1 {
				a, b := o.Outside[i], o.Outside[i+1]
				for k := range 101 {
					u := float64(k) / 100
					near = math.Min(near, math.Hypot(a.Z+u*(b.Z-a.Z)-c.Worst.At.Z, a.R+u*(b.R-a.R)-c.Worst.At.R))
				}
			}
		}
		if near > 0.02 {
			t.Errorf("%s: %q is %g m off the metal", name, c.Worst.Text, near)
		}
		_, id, _ := strings.Cut(c.Worst.Text, ": ")
		_, of, _ := strings.Cut(strings.Fields(id)[0], "@")
		for i, l := range c.Levels {
			if l.Case == of && i > 0 {
				t.Errorf("%s: the liquid is shaded to the level of %s, not of %s", name, c.Levels[0].Case, of)
			}
		}
		for _, p := range c.Ports {
			if p.Part == "" {
				t.Errorf("%s: port %s stands on no part", name, p.Name)
			}
		}
	}
}

// TestBoltedHeadIsDrawnToItsBolts has the plate of a bolted head go on past its bolt
// holes, and says that the edge is a guess.
func TestBoltedHeadIsDrawnToItsBolts(t *testing.T) {
	for _, end := range []string{"forward", "aft"} {
		in := read(t, "bolted")
		if end == "aft" {
			in.Head.Aft, in.Head.Forward = in.Head.Forward, in.Head.Aft
			in.Port = nil
		}
		c := sheet(t, in).Section
		if len(c.Covers) != 1 || c.Covers[0].Part != "head."+end || c.Covers[0].Count != 16 || c.Covers[0].Circle != 0.25 || c.Covers[0].Seal != 0.206 {
			t.Fatalf("%s: covers %+v", end, c.Covers)
		}
		widest, apex := 0.0, math.Inf(1)
		for _, o := range c.Outlines {
			for _, q := range o.Outside {
				if o.Part == "head."+end {
					widest, apex = math.Max(widest, q.R), math.Min(apex, q.R)
				}
			}
		}
		if b := c.Covers[0]; widest < (b.Circle+b.Hole)/2 || widest != b.Diameter/2 || apex != 0 {
			t.Errorf("%s: the plate is drawn to %g m", end, widest)
		}
		said := false
		for _, l := range c.Labels {
			said = said || strings.Contains(l.Text, "not in the file")
		}
		if !said {
			t.Errorf("%s: nothing says that the edge is a guess", end)
		}
	}
}
