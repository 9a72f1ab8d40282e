package assess

import (
	"fmt"
	"math"
	"reflect"
	"slices"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/heads/port"
)

// A load that is more than another in any of its numbers, or whose number is not known, is
// not passed over for it: whatever a load comes to hold.
func TestBelowLooksAtAllOfALoad(t *testing.T) {
	even := port.Load{Pressure: 1, Hoop: 1, Meridional: 1, Membrane: 1, Face: 1, Required: 1}
	if !below([]port.Load{even}, []port.Load{even}) {
		t.Error("a load is not at most itself")
	}
	for i := range reflect.TypeFor[port.Load]().NumField() {
		name := reflect.TypeFor[port.Load]().Field(i).Name
		for _, v := range []float64{1.001, math.NaN()} {
			more := even
			switch f := reflect.ValueOf(&more).Elem().Field(i); f.Kind() {
			case reflect.Float64:
				f.SetFloat(v)
			case reflect.Bool:
				f.SetBool(true)
			default:
				t.Fatalf("%s: nothing here compares it", name)
			}
			if below([]port.Load{more}, []port.Load{even}) {
				t.Errorf("%s %v is taken for at most 1", name, v)
			}
		}
	}
}

// Six ports of one ring among six of another see the same; with one more beside the
// ring, or another clock, they do not.
func TestTwins(t *testing.T) {
	ring := func(group string, radius float64, count int, from float64) (out []tank.Port) {
		for i := range count {
			r := radius
			out = append(out, tank.Port{Name: fmt.Sprint(group, i), Group: group, On: "aft", Radius: &r, Clock: math.Mod(from+2*math.Pi*float64(i)/float64(count), 2*math.Pi)})
		}
		return out
	}
	ports := append(ring("a", 0.1, 6, 0), ring("b", 0.15, 6, math.Pi/6)...)
	if got := twins(ports); !slices.Equal(got, []int{0, 0, 0, 0, 0, 0, 6, 6, 6, 6, 6, 6}) {
		t.Errorf("two rings: %v", got)
	}
	one := append(slices.Clone(ports), ring("c", 0.05, 1, 0.2)...)
	if got := twins(one); !slices.Equal(got, []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}) {
		t.Errorf("one more beside them: %v", got)
	}
	ports[3].Clock += 0.01
	if got := twins(ports); slices.Equal(got, []int{0, 0, 0, 0, 0, 0, 6, 6, 6, 6, 6, 6}) {
		t.Errorf("one out of its place: %v", got)
	}
	one[12].On = "forward" // on another wall it is nobody's neighbour
	if got := twins(one); got[5] != 0 || got[11] != 6 {
		t.Errorf("on another wall: %v", got)
	}
}
