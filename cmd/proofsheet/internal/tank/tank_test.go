package tank

import "testing"

func TestStarterReads(t *testing.T) {
	tank, err := Read("starter.toml", Starter(), nil)
	if err != nil {
		t.Fatal(err)
	}
	if got := *tank.Cylinder.InsideDiameter; got != 0.4 {
		t.Errorf("inside diameter %g m, want 0.4", got)
	}
	for _, d := range tank.Defaults {
		t.Log(d)
	}
}
