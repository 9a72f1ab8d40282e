package blank_test

import (
	"math"
	"strings"
	"testing"

	"proofsheet/heads/blank"
	"proofsheet/heads/port"
	"proofsheet/report/check/checktest"
)

func doubler(w port.Wall, p port.Port) blank.Doubler {
	return blank.Doubler{Name: "pad-p", Port: p, Wall: w, Thickness: 6 * mm, Diameter: 110 * mm}
}

func TestPadOnACone(t *testing.T) {
	d := doubler(wall(45, 8), tube(42.4, 110))
	b := d.Blank(blank.Options{})
	// 2a/sin α + te cot α, by hand; the land is least at the ends of the hole.
	checktest.Printed(t, "length", value(t, b, "hole of p: length along the generator")/mm, "65.963")
	checktest.Printed(t, "land", value(t, b, "least width between hole and edge")/mm, "22.018")
	checktest.Close(t, "area", value(t, b, "F")+value(t, b, "hole of p: area"), math.Pi*0.055*0.055, 1e-9)
	d.Diameter, d.Lip = 0, 20*mm
	lip := d.Blank(blank.Options{})
	// A band of 20 mm round the outline of area πa²/sin α and perimeter p: p·20 + π 20² more (Steiner).
	c, err := d.Port.CutOut(wall(45, 8))
	if err != nil {
		t.Fatal(err)
	}
	checktest.Close(t, "lip", value(t, lip, "F")+value(t, lip, "hole of p: area"), c.Area+c.Perimeter*20*mm+math.Pi*4e-4, 5e-5) // 360 straight steps
}

// On the cylinder the pad is bent to its own mid-surface, R + (t + te)/2 = 211 mm, and
// its inside face, at 208, sees the tube widest: 2·211·asin(20/208).
func TestPadOnACylinder(t *testing.T) {
	w := port.Wall{Surface: port.Cylinder, Thickness: 8 * mm, Radius: 204 * mm, Length: 1.2}
	b := doubler(w, radial(90, 300)).Blank(blank.Options{})
	checktest.Printed(t, "width", value(t, b, "hole of drain: largest width across it")/mm, "40.640")
	checktest.Printed(t, "length", value(t, b, "hole of drain: length along the generator")/mm, "40")
}

// A tube normal to a cone meets the pad further out by the normal's slope; its
// hole is 2a long, for the generator is straight, and little wider.
func TestPadOfANormalTube(t *testing.T) {
	p := tube(42.4, 110)
	p.Parallel = false
	b := doubler(wall(45, 8), p).Blank(blank.Options{Kerf: 1 * mm})
	checktest.Printed(t, "length", value(t, b, "hole of p: length along the generator")/mm, "42.400")
	if wide := value(t, b, "hole of p: largest width across it") / mm; wide < 42.4 || wide > 43.4 {
		t.Errorf("width %g mm", wide)
	}
}

func TestPadRefuses(t *testing.T) {
	small := doubler(wall(45, 8), tube(42.4, 110))
	small.Diameter = 60 * mm
	both := doubler(wall(45, 8), tube(42.4, 110))
	both.Lip = 20 * mm
	nan := doubler(wall(45, 8), tube(42.4, 110))
	nan.Thickness = math.NaN()
	dome := doubler(port.Wall{Surface: port.Sphere, Thickness: 3 * mm, Radius: 0.2}, tube(42.4, 60))
	for want, d := range map[string]blank.Doubler{"smaller than the hole": small, "a diameter or a lip": both, "has a thickness": nan, "cannot be laid flat": dome} {
		if b := d.Blank(blank.Options{}); b.Err == nil || !strings.Contains(b.Err.Error(), want) || len(b.Cut) > 0 {
			t.Errorf("%s: %v", want, b.Err)
		}
	}
}
