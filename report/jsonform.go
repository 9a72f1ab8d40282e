package report

import (
	"encoding/json"
	"math"
)

// Format is the version of the JSON form.
const Format = 1

// num is a number that is null where it is not finite.
type num float64

func (n num) MarshalJSON() ([]byte, error) {
	if v := float64(n); math.IsNaN(v) || math.IsInf(v, 0) {
		return []byte("null"), nil
	}
	return json.Marshal(float64(n))
}

type jsonSheet struct {
	Format     int             `json:"format"`
	Program    jsonProgram     `json:"program"`
	Tank       jsonTank        `json:"tank"`
	Verdict    string          `json:"verdict"`
	People     string          `json:"people"`
	Governing  *string         `json:"governing"`
	Quantities json.RawMessage `json:"quantities"`
	Checks     []jsonCheck     `json:"checks"`
	Conditions []jsonCondition `json:"conditions"`
	Proof      *jsonProof      `json:"proof"`
	Cautions   []string        `json:"cautions"`
	Notes      []string        `json:"notes"`
}

type jsonProgram struct {
	Name    string `json:"name"`
	Version string `json:"version"`
}

type jsonTank struct {
	File     string     `json:"file"`
	SHA256   string     `json:"sha256"`
	Files    []jsonFile `json:"files"`
	Title    string     `json:"title"`
	Number   string     `json:"number"`
	Revision string     `json:"revision"`
}

type jsonFile struct {
	Name   string `json:"name"`
	SHA256 string `json:"sha256"`
}

type jsonQuantity struct {
	Symbol string `json:"symbol"`
	Name   string `json:"name"`
	Value  num    `json:"value"`
	Unit   string `json:"unit"`
}

type jsonCheck struct {
	ID       string         `json:"id"`
	Case     string         `json:"case"`
	Time     *num           `json:"time"`
	Rule     string         `json:"rule"`
	Title    string         `json:"title"`
	Formula  string         `json:"formula"`
	Inputs   []jsonQuantity `json:"inputs"`
	Demand   *jsonQuantity  `json:"demand"`
	Capacity *jsonQuantity  `json:"capacity"`
	Factor   *num           `json:"factor"`
	Margin   num            `json:"margin"`
	Status   string         `json:"status"`
	Source   jsonSource     `json:"source"`
	Note     string         `json:"note"`
}

type jsonSource struct {
	Document string `json:"document"`
	Place    string `json:"place"`
	How      string `json:"how"`
}

type jsonCondition struct {
	Case        string `json:"case"`
	Part        string `json:"part"`
	Z           num    `json:"z"`
	Pressure    num    `json:"pressure"`
	Temperature num    `json:"temperature"`
}

type jsonStep struct {
	Pressure       num `json:"pressure"`
	Hold           num `json:"hold"`
	InjectedVolume num `json:"injected_volume"`
	HoopStrain     num `json:"hoop_strain"`
	AxialStrain    num `json:"axial_strain"`
	DiameterGrowth num `json:"diameter_growth"`
	AddedVolume    num `json:"added_volume"`
	StopBand       num `json:"stop_band"`
}

type jsonProof struct {
	Pressure     num        `json:"pressure"`
	Steps        []jsonStep `json:"steps"`
	StoredEnergy num        `json:"stored_energy"`
	StandOff     *num       `json:"stand_off"`
	Barrier      bool       `json:"barrier"`
}
