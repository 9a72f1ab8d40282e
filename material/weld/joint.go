package weld

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/report/check"
)

// A Joint is one named weld joint.
type Joint struct {
	Kind             string  // one of Kinds
	Examination      string  // full, spot or none; "" is none
	Root             string  // how the root was purged and examined
	Efficiency       float64 // stated in place of the table [-]; NaN or 0: by the table
	EfficiencySource string  // where a stated one comes from
	Process          string  // tig, mig or ""
	Coupons          bool    // strength from coupons: the inspection factor in place of the efficiency

	angled bool // an angle joint, of which flat coupons show little
}

// A Place is where a joint is used.
type Place struct {
	Category        string  // A, B, C or D of UW-3
	Longitudinal    bool    // along the shell, or a seam inside a head
	Convex          bool    // head with the pressure on its convex side
	Thickness       float64 // of the wall joined, nominal [m]
	OutsideDiameter float64 // at the joint [m]
}

// EfficiencyAt returns the joint efficiency [-] of j at a place, by rule set:
// Table UW-12 for vessel and flight; for vessel-eu the coefficient z of full
// penetration butts, 1, 0.85 and 0.7 for full, spot and no examination. A kind
// that is not permitted there is an error that says why. A stated efficiency
// with source replaces the table and its limits. With coupons the factor of
// Inspection stands in its place where the kind is permitted.
//
// Source: ASME BPVC VIII-1 UW-3, Table UW-12 (read); EN 13445-3, joint coefficient (recalled).
func (j Joint) EfficiencyAt(rule string, at Place) (float64, check.Source, error) {
	if j.Efficiency != 0 && !math.IsNaN(j.Efficiency) {
		if j.Coupons {
			return math.NaN(), check.Source{}, errors.New("a stated efficiency beside coupons counts the weld twice: leave one of them out")
		}
		return j.stated()
	}
	k, err := j.effective()
	if err != nil {
		return math.NaN(), check.Source{}, err
	}
	exam, err := j.examination()
	if err != nil {
		return math.NaN(), check.Source{}, err
	}
	switch at.Category {
	case "A", "B", "C", "D":
	default:
		return math.NaN(), check.Source{}, fmt.Errorf("category %q must be A, B, C or D", at.Category)
	}
	switch rule {
	case "vessel", "flight":
		if err := permitted(k, at); err != nil {
			return math.NaN(), check.Source{}, fmt.Errorf("%q is not permitted here: %w", j.Kind, err)
		}
		if e, source, err := j.Inspection(); j.Coupons && !(j.angled && k.by(exam) < e) {
			return e, source, err
		}
		return k.by(exam), k.Source, nil
	case "vessel-eu":
		z, source, err := european(k, exam)
		if err == nil && j.Coupons {
			return j.Inspection()
		}
		return z, source, err
	}
	return math.NaN(), check.Source{}, fmt.Errorf("unknown rule %q: vessel, vessel-eu or flight", rule)
}

// mostButtAngle is the half-apex angle [rad] up to which the weld of a cone to a
// cylinder is a butt joint; above it is an angle joint.
const mostButtAngle = math.Pi / 6

// AtCone returns the joint as it counts between a cylinder and a cone that meet
// at a corner, half-apex angle α [rad]. Above 30 degrees it is an angle joint,
// which has no butt efficiency of its own: it takes that of its kind and
// examination, and is worth a double butt only if both faces are welded. A weld
// from one side counts as a single butt there, root seen or not. The stresses of
// the corner are another check's. Flat coupons show little of a corner: with them
// the lower of the inspection factor and the efficiency of the kind counts.
//
// Source: ASME BPVC VIII-1 UW-3 (read); the efficiency above 30 degrees practice.
func (j Joint) AtCone(α float64) Joint {
	j.angled = !(α <= mostButtAngle*(1+1e-9))
	if j.angled && j.Kind == RootSeen {
		j.Root = ""
	}
	return j
}

// stated returns the efficiency the user gave.
func (j Joint) stated() (float64, check.Source, error) {
	if j.EfficiencySource == "" {
		return math.NaN(), check.Source{}, errors.New("a stated joint efficiency needs its source")
	}
	if err := check.Within("weld.Joint", "joint efficiency", j.Efficiency, 0.01, 1, "joint efficiencies"); err != nil {
		return math.NaN(), check.Source{}, err
	}
	return j.Efficiency, check.Source{Doc: j.EfficiencySource, Where: "stated in the tank file", How: check.Read}, nil
}

// effective returns the kind that counts: a single butt whose root nobody
// described is an ordinary single butt.
func (j Joint) effective() (Kind, error) {
	k, ok := find(j.Kind)
	if !ok {
		names := ""
		for i, k := range kinds {
			if i > 0 {
				names += ", "
			}
			names += fmt.Sprintf("%q", k.Name)
		}
		return Kind{}, fmt.Errorf("unknown kind of joint %q; one of %s", j.Kind, names)
	}
	if k.Name == RootSeen && j.Root == "" {
		k, _ = find(SingleButt)
	}
	return k, nil
}

// examination returns full, spot or none.
func (j Joint) examination() (string, error) {
	switch j.Examination {
	case "full", "spot", "none":
		return j.Examination, nil
	case "":
		return "none", nil
	}
	return "", fmt.Errorf("examination %q must be full, spot or none", j.Examination)
}

// by returns the efficiency [-] for an examination; a kind without credit for
// radiography keeps the one without.
func (k Kind) by(examination string) float64 {
	e := map[string]float64{"full": k.Full, "spot": k.Spot, "none": k.None}[examination]
	if math.IsNaN(e) {
		return k.None
	}
	return e
}

// permitted returns why kind k may not be used at a place, by Table UW-12. A
// size that is not known is outside every limit.
func permitted(k Kind, at Place) error {
	thin := func(most float64) bool { return at.Thickness > 0 && at.Thickness <= most*millimetres*(1+1e-9) }
	small := at.OutsideDiameter > 0 && at.OutsideDiameter <= 600*millimetres*(1+1e-9)
	round := at.Category == "B" || at.Category == "C"
	here := fmt.Sprintf("; here the wall is %.4g mm and the outside diameter %.4g mm", at.Thickness/millimetres, at.OutsideDiameter/millimetres)
	switch k.Name {
	case SingleButt:
		switch {
		case at.Longitudinal:
			return errors.New("a one-sided butt without backing may close a girth, never a long seam: weld both sides, keep a backing, or write kind = \"" + RootSeen + "\" with root = how it was seen")
		case at.Category == "D":
			return errors.New("a one-sided butt without backing does not join a tube to a wall")
		case !thin(16) || !small:
			return errors.New("a one-sided butt without backing is for walls up to 16 mm and outside diameters up to 600 mm" + here)
		}
	case DoubleLap:
		switch {
		case at.Longitudinal && at.Category == "A" && thin(10), !at.Longitudinal && round && thin(16):
		default:
			return errors.New("a double lap is for long seams up to 10 mm and girth seams up to 16 mm, not for a hemisphere or a tube" + here)
		}
	case PluggedLap:
		if at.Longitudinal || at.Category != "B" || !thin(13) || !small {
			return errors.New("a single lap with plugs joins a head up to 600 mm in diameter, not a hemisphere, to a shell up to 13 mm" + here)
		}
	case SingleLap:
		convex := at.Convex && thin(16)
		if at.Longitudinal || at.Category != "A" && at.Category != "B" || !(convex || small && thin(6)) {
			return errors.New("a single lap joins a head convex to pressure to a shell up to 16 mm, or a head up to 600 mm in diameter and 6 mm thick" + here)
		}
	}
	return nil
}

// european returns the coefficient z [-] of EN 13445-3 5.6 by examination:
// testing groups 1 and 2, 3, 4. Laps and one-sided butts without backing are
// refused.
func european(k Kind, examination string) (float64, check.Source, error) {
	switch k.Name {
	case DoubleButt, RootSeen, BackedButt:
		z := map[string]float64{"full": 1, "spot": 0.85, "none": 0.7}[examination]
		where := "coefficient z, European method, recalled; limits of the testing group on steel, size and pressure are not checked" + map[string]string{
			"spot": "; group 3 asks for 10 to 25 % of the length, more than the spots of UW-52",
			"none": "; group 4, for few steels and for no aluminium: allowable times 0.9, proof about 2.2 times the pressure"}[examination]
		return z, check.Source{Doc: "EN 13445-3", Where: where, How: check.Memory}, nil
	}
	return math.NaN(), check.Source{}, fmt.Errorf("%q is not permitted: vessel-eu asks for a butt weld of full penetration, from both sides, on a backing, or with its root seen", k.Name)
}

// SeamlessEfficiency returns the efficiency [-] of a seamless head, or of hoop
// stress in a seamless shell, from the joints that join it: 1.0 if all are
// double butt or backed single butt with full or spot examination, else 0.85.
//
// Source: ASME BPVC VIII-1 UW-12(d), UW-11(a)(5)(b).
func SeamlessEfficiency(joining ...Joint) (float64, check.Source) {
	source := check.Source{Doc: "ASME BPVC VIII-1", Where: "UW-12(d), UW-11(a)(5)(b)", How: check.Read}
	for _, j := range joining {
		k, err := j.effective()
		examined := j.Examination == "full" || j.Examination == "spot"
		if err != nil || !examined || k.Letter != "1" && k.Letter != "2" {
			return 0.85, source
		}
	}
	if len(joining) == 0 {
		return 0.85, source
	}
	return 1, source
}
