package pdf

import "fmt"

// Where the frames of the signatures stand on the last page, the same on every
// paper [mm].
const (
	signatureTop, signaturePitch    = 50.0, 38.0
	signatureLeft, signatureWide    = 75.0, 120.0
	signatureHigh, pointsMillimetre = 30.0, 72 / 25.4
)

// Roles are those who sign, in their order.
var Roles = []string{"prepared", "checked", "approved"}

// A Place is where the signature of a role is to appear: on the last page of
// the document, in the page's own coordinates from its lower left corner.
type Place struct {
	Role                   string
	Left, Low, Right, High float64 // [pt], 1/72 inch
}

// Places returns the place of each role on a paper, "a4" (also when empty) or
// "letter". The page is always the last one of the unsigned document.
func Places(size string) ([]Place, error) {
	high := 297.0
	switch size {
	case "", "a4":
	case "letter":
		high = 279.4
	default:
		return nil, fmt.Errorf("no paper %q; there are a4 and letter", size)
	}
	var out []Place
	for _, role := range Roles {
		x, y, w, h := frame(role)
		out = append(out, Place{role, x * pointsMillimetre, (high - y - h) * pointsMillimetre,
			(x + w) * pointsMillimetre, (high - y) * pointsMillimetre})
	}
	return out, nil
}

// frame returns the frame of a role from the upper left corner of the page [mm].
func frame(role string) (x, y, w, h float64) {
	for i, r := range Roles {
		if r == role {
			return signatureLeft, signatureTop + float64(i)*signaturePitch, signatureWide, signatureHigh
		}
	}
	return 0, 0, 0, 0
}
