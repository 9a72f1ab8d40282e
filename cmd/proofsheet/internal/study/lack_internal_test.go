package study

import (
	"errors"
	"os"
	"strings"
	"testing"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report/check"
)

// What is not made is told of the part or group it belongs to, a ring of ports by its
// group, once for each check, with the reason of the first.
func TestLacking(t *testing.T) {
	two := &tank.Tank{Port: []tank.Port{{Name: "fill-1", Group: "fill"}, {Name: "fill-2", Group: "fill"}}}
	none := func(id, why string) check.Result { return check.NotMade(id, id, errors.New(why)) }
	got := lacking([]check.Result{none("head.aft/junction", "no mesh\nat all"), none("head.aft/junction", "no mesh"), none("port.fill-2/area", "no data"),
		none("port.fill-2/neck", "none"), none("tank/life", "no cycles")}, func(id string) string { return ownerOf(two, id) })
	for name, want := range map[string]string{
		"head.aft":  "cannot be sized: head.aft/junction is not assessed: no mesh",
		"port.fill": "cannot be sized: port.fill-2/area and 1 more are not assessed: no data",
	} {
		if got[name] == nil || got[name].String() != want {
			t.Errorf("%s: %v, want %q", name, got[name], want)
		}
	}
	if len(got) != 3 {
		t.Errorf("%d owners, want 3", len(got))
	}
}

// TestWithdraw takes back a wall with which the assessment of the whole tank leaves a
// check of its part unmade, and leaves the other change alone.
func TestWithdraw(t *testing.T) {
	src, err := os.ReadFile("../../../../testdata/tanks/demo.toml")
	if err != nil {
		t.Fatal(err)
	}
	in, err := tank.Read("demo.toml", src, os.ReadFile)
	if err != nil {
		t.Fatal(err)
	}
	z := &sizing{first: in, now: in, lacks: map[string]*lack{}, rows: map[string]*Row{}, order: []string{"cylinder", "head.aft"}}
	for _, name := range z.order {
		z.rows[name] = &Row{Part: name, Status: check.NotSatisfied}
		z.change(z.rows[name], name+".thickness", 15e-3)
	}
	e, err := z.written()
	if err != nil {
		t.Fatal(err)
	}
	e.checks = []check.Result{check.NotMade("head.aft/junction", "", errors.New("the mesh is too coarse"))}
	if err := z.withdraw(); err != nil {
		t.Fatal(err)
	}
	if r := z.rows["head.aft"]; len(r.Changes) > 0 || !strings.Contains(r.Why, "too coarse") {
		t.Errorf("head.aft: %+v", r)
	}
	if r := z.rows["cylinder"]; len(r.Changes) != 1 || r.Why != "" || z.now.Cylinder.Thickness != 15e-3 || z.now.Head.Aft.Thickness != in.Head.Aft.Thickness {
		t.Errorf("cylinder: %+v", r)
	}
}
