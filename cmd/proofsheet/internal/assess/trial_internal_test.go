package assess

import (
	"math"
	"reflect"
	"testing"

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
