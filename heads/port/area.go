package port

import (
	"errors"

	"proofsheet/report/check"
)

// An AreaReport holds every intermediate area of one port in one case.
type AreaReport struct {
	Port     Port
	Chords   Chords
	Planes   []Plane
	Cautions []string
}

// A Plane is the area check in one plane.
type Plane struct {
	Name string
}

var errUnwritten = errors.New("the area check of this port is not made")

// Area checks the port.
func (p Port) Area(w Wall, load Load, s Strengths) (AreaReport, error) {
	return AreaReport{}, errUnwritten
}

// Chords returns the size of the hole.
func (p Port) Chords(w Wall) (Chords, error) { return Chords{}, errUnwritten }

// Check returns the check port.NAME/area.
func (r AreaReport) Check(name string) check.Result {
	return check.NotMade("port."+name+"/area", "Port "+name+": area replacement", errUnwritten)
}
