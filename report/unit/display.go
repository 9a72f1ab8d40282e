package unit

import (
	"math"
	"math/big"
)

// displayUnit returns the unit in which a quantity of an SI unit is shown. An SI
// unit without a row is shown as it is.
func displayUnit(v float64, si, system string) displayed {
	if si == "1" || si == "" || si == "-" {
		return displayed{"", big.NewRat(1, 1), nil, false}
	}
	kind, name := Kind(-1), ""
	if system == "us" {
		kind, name = usUnit(si)
	} else {
		kind, name = siUnit(math.Abs(v), si)
	}
	if name == "" {
		return compound(si, system)
	}
	u, _ := kind.find(name)
	return displayed{name, u.factor, u.offset, kind == Angle && name == "deg"}
}

func siUnit(size float64, si string) (Kind, string) {
	large := func(limit float64, big, small string) string {
		if size >= limit {
			return big
		}
		return small
	}
	switch si {
	case "m":
		return Length, large(10, "m", "mm")
	case "m2":
		return Area, large(1, "m2", "mm2")
	case "m3":
		return Volume, large(10, "m3", "l")
	case "kg":
		return Mass, "kg"
	case "kg/m3":
		return Density, "kg/m3"
	case "N":
		return Force, large(1000, "kN", "N")
	case "N m":
		return Moment, large(1000, "kN m", "N m")
	case "Pa":
		return Pressure, large(1e10, "GPa", large(1e4, "MPa", "Pa"))
	case "K":
		return Temperature, "degC"
	case "1/K":
		return Expansion, "1/K"
	case "s":
		return Time, large(600, "min", "s")
	case "rad":
		return Angle, "deg"
	case "m/s2":
		return Acceleration, "m/s2"
	}
	return 0, ""
}

func usUnit(si string) (Kind, string) {
	switch si {
	case "m":
		return Length, "in"
	case "m2":
		return Area, "in2"
	case "m3":
		return Volume, "in3"
	case "kg":
		return Mass, "lb"
	case "kg/m3":
		return Density, "lb/ft3"
	case "N":
		return Force, "lbf"
	case "N m":
		return Moment, "lbf in"
	case "Pa":
		return Pressure, "psi"
	case "K":
		return Temperature, "degF"
	case "1/K":
		return Expansion, "1/degF"
	case "s":
		return Time, "s"
	case "rad":
		return Angle, "deg"
	case "m/s2":
		return Acceleration, "ft/s2"
	}
	return 0, ""
}

// compound returns the display of units that no tank file holds: line load and
// energy; any other SI unit stays.
func compound(si, system string) displayed {
	us := system == "us"
	switch {
	case si == "N/m" && us:
		return displayed{"lbf/in", product("", pound, gravity, perInch).factor, nil, false}
	case si == "N/m":
		return displayed{"N/mm", rat("1000"), nil, false}
	case si == "J" && us:
		return displayed{"ft lbf", product("", pound, gravity, "0.3048").factor, nil, false}
	case si == "J":
		return displayed{"kJ", rat("1000"), nil, false}
	}
	return displayed{si, big.NewRat(1, 1), nil, false}
}
