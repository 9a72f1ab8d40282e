package proof

import (
	"slices"
	"strings"

	"proofsheet/report/check"
)

// A Caution is one line of the checklist that goes with the sheet: yes, no, by
// whom.
type Caution struct {
	ID     string       // "oxygen", stable
	Text   string       // as printed
	Source check.Source // practice, unless the text rests on something read
}

// Danger names what makes a liquid dangerous beside its pressure.
type Danger string

const (
	Oxygen   Danger = "oxygen"          // liquid or gaseous
	Peroxide Danger = "peroxide"        // decomposes
	Nitrous  Danger = "nitrous oxide"   // decomposes, boils under pressure
	Cryogen  Danger = "cryogenic"       // boils below the temperature of the air
	Unknown  Danger = "contents unread" // any of them, until someone says
)

// dangerWords finds the dangers of a liquid by the words in its name.
var dangerWords = []struct {
	word    string
	dangers []Danger
}{
	// Oxidisers and explosives whose names hold the word of a tamer liquid.
	{"dioxide", []Danger{Unknown}}, {"fluoride", []Danger{Unknown}},
	{"nitromethane", []Danger{Unknown}}, {"nitroethane", []Danger{Unknown}},
	{"lox", []Danger{Oxygen, Cryogen}}, {"oxygen", []Danger{Oxygen, Cryogen}},
	{"tetroxide", []Danger{Unknown}},
	{"peroxide", []Danger{Peroxide}}, {"htp", []Danger{Peroxide}},
	{"nitrous", []Danger{Nitrous}}, {"n2o", []Danger{Nitrous}},
	{"nitrogen", []Danger{Cryogen}}, {"ln2", []Danger{Cryogen}}, {"lch4", []Danger{Cryogen}},
	{"methane", []Danger{Cryogen}}, {"lng", []Danger{Cryogen}},
	{"ethane", []Danger{Cryogen}}, {"argon", []Danger{Cryogen}}, {"helium", []Danger{Cryogen}},
	{"ethanol", nil}, {"methanol", nil}, {"isopropanol", nil}, {"propanol", nil},
	{"kerosene", nil}, {"rp-1", nil}, {"jet", nil}, {"gasoline", nil}, {"petrol", nil}, {"water", nil},
	{"propane", nil}, {"butane", nil},
	{"hydrogen", []Danger{Cryogen}},
}

// Dangers returns the dangers of the contents of that name; a name that is not
// recognised gives [Unknown], for which every caution about contents is printed.
// The first row whose word stands in the name counts.
func Dangers(contents string) []Danger {
	name := strings.ToLower(contents)
	for _, row := range dangerWords {
		if strings.Contains(name, row.word) {
			return row.dangers
		}
	}
	return []Danger{Unknown}
}

// A Situation is what decides which cautions are printed.
type Situation struct {
	Contents string   // name of the liquid
	Families []string // of every alloy: "aluminium", "austenitic", "ferritic", "titanium"
	Method   Method
}

// Cautions returns the checklist for one tank: what holds for every tank, then
// what its test, its contents and its alloys add, in that order.
func Cautions(s Situation) []Caution {
	dangers := Dangers(s.Contents)
	var list []Caution
	for _, row := range cautions {
		if row.applies(s, dangers) {
			list = append(list, row.Caution)
		}
	}
	return list
}

// A conditional caution is printed where its method, one of its dangers or one
// of its families is met; with none of the three named it is always printed.
type conditional struct {
	Caution
	method   Method
	dangers  []Danger
	families []string
}

func (c conditional) applies(s Situation, dangers []Danger) bool {
	always := c.method == "" && len(c.dangers) == 0 && len(c.families) == 0
	met := c.method != "" && c.method == s.Method
	for _, d := range c.dangers {
		met = met || slices.Contains(dangers, d) || slices.Contains(dangers, Unknown)
	}
	for _, f := range c.families {
		met = met || slices.Contains(s.Families, f)
	}
	return always || met
}
