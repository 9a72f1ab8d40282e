package assess

import (
	"errors"

	"proofsheet/report/check"
)

// tipPort lists the checks of a tube that closes a cone's tip. It is a joint of cone and
// tube and no opening in the cone, so that it is held with the head: the tube's wall under
// its pressure and its end thrust at head.X/tip, with the efficiencies of its seam and of
// the weld round it, and both walls beside that weld at head.X/tip-junction. What those two
// leave out is not assessed: a weld that does not go through, and what the piping puts on
// the tube.
func (m *model) tipPort(p *portPart) []check.Result {
	id, title, head := "port."+p.in.Name+"/", "Port "+p.in.Name+": ", p.host.name
	out := []check.Result{m.placement(p),
		check.NotApplicableTo(id+"area", title+"area replacement", "it closes the cone's tip, a joint of cone and tube and no opening in the cone: "+head+"/tip-junction holds the walls there"),
		check.NotApplicableTo(id+"neck", title+"least tube wall", "it closes the cone's tip: "+head+"/tip holds the tube's wall"),
		check.NotApplicableTo(id+"weld", title+"attachment welds", "it closes the cone's tip, welded through: "+head+"/tip has the weld's efficiency, "+head+"/tip-junction the stress across it"),
		check.NotApplicableTo(id+"thrust", title+"end thrust and load from outside", "it closes the cone's tip: "+head+"/tip holds the tube's end thrust, and the file has no load from outside on it"),
	}
	for i, err := range map[int]error{3: p.tipWeldOpen(), 4: p.tipLoaded()} {
		if err != nil {
			out[i] = check.NotMade(out[i].ID, out[i].Title, err)
		}
	}
	if p.in.Insert != nil {
		out = append(out, check.NotMade(id+"insert", title+"weld round the inserted plate", errors.New("a plate inserted at a cone's tip is not covered")))
	}
	if p.in.Line != nil {
		out = append(out, check.NotMade(id+"hammer", hammerTitle(p.in.Name), errors.New("it closes the cone's tip: the surge is not worked into the joint there")))
	}
	return out
}

// tipWeldOpen returns why the weld of a tube at a tip is not assessed, or nil where it
// goes through.
func (p *portPart) tipWeldOpen() error {
	if p.in.Weld.GrooveFull {
		return nil
	}
	return errors.New("it closes the cone's tip and is not welded through: only the stress across a full weld is worked out there; write groove = \"full\" where it is")
}

// tipLoaded returns why the load on a tube at a tip is not assessed, or nil where
// there is none.
func (p *portPart) tipLoaded() error {
	if l := p.in.Load; l != nil && (l.Force != 0 || l.Moment != 0) {
		return errors.New("it closes the cone's tip: a force or moment of the piping is not worked into the joint there; support the line")
	}
	return nil
}
