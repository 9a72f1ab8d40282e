package assess

import (
	"fmt"
	"slices"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/material"
)

// doublyCurved are the shapes that no rolling makes: their wall, or the knuckle of
// a toricone, is pressed, spun or machined.
var doublyCurved = []string{"hemisphere", "ellipsoid", "torisphere", "toricone"}

// strained reports whether making the head strains its metal so far that a temper
// may be lost. A head of double curvature that does not say how it is made counts
// as strained, as does the knuckle of a toricone whose cone is rolled.
func strained(in tank.Head) bool {
	switch in.Forming {
	case "pressed", "spun":
		return true
	case "machined":
		return false
	}
	return slices.Contains(doublyCurved, in.Shape)
}

// temperOf returns what the metal of a head owes its strength to, and its name for
// a sentence. A row that is not found is refused by every check that needs it.
func temperOf(mat tank.Material, thickness float64) (material.Temper, string, error) {
	if mat.Own() {
		return ownOf(mat).Temper(), mat.Name + " has own values, which may rest on a temper,", nil
	}
	t, err := material.Query{Alloy: mat.Alloy, Spec: mat.Spec, Product: mat.Product, Thickness: thickness}.Temper()
	return t, mat.Name + " is " + mat.Alloy, err
}

// temperLost refuses a temper that the head does not have any more: one that
// forming takes away and no certificate gives back, and one that is owed to cold
// work, which any heat treatment takes away.
func (m *model) temperLost(h *headPart) error {
	mat, _ := m.t.FindMaterial(h.material)
	temper, name, err := temperOf(mat, h.nominal)
	if err != nil || temper == material.Annealed || !strained(h.in) && h.in.HeatTreated == "" {
		return nil
	}
	how := "when " + h.in.Forming
	if h.in.Forming == "" {
		how = "when formed (forming is not written; \"machined\" would keep it)"
	}
	switch {
	case temper != material.HeatTreated && h.in.HeatTreated != "":
		return fmt.Errorf("%s, strong by cold work, which no heat treatment restores and this one takes away (%s); %s", name, h.in.HeatTreated, softerWords(mat))
	case temper != material.HeatTreated:
		return fmt.Errorf("%s, strong by cold work, and does not keep that temper %s; %s", name, how, softerWords(mat))
	case h.in.HeatTreated == "":
		return fmt.Errorf("%s and does not keep that temper %s: write heat_treated from the certificate", name, how)
	case softens(h.in.HeatTreated):
		return fmt.Errorf("%s, and what heat_treated names softens it (%s): write the treatment that restores the temper, as solution treated and aged, or the alloy as it now is", name, h.in.HeatTreated)
	}
	return nil
}

// softens reports whether the words of a certificate name annealing or stress
// relief and nothing that hardens again. It reads English; other words are taken
// as they are and printed.
func softens(words string) bool {
	has := func(parts ...string) bool {
		return slices.ContainsFunc(parts, func(p string) bool { return strings.Contains(strings.ToLower(words), p) })
	}
	return has("anneal", "stress reli", "stress-reli") && !has("aged", "ageing", "aging", "temper", "quench", "t4", "t6")
}

// softerWords says what to write for a head that has lost its cold work.
func softerWords(mat tank.Material) string {
	if soft := material.SofterAlloy(mat.Alloy); soft != "" {
		return fmt.Sprintf("write a material of alloy = %q for the head", soft)
	}
	return "write a material for the head with own values of the annealed metal"
}

// temperCautions prints what the certificate says of the heat treatment of each
// head: its strength rests on it.
func (m *model) temperCautions() (out []string) {
	for _, h := range m.ends() {
		if h.in.HeatTreated == "" || h.refused != nil {
			continue
		}
		mat, _ := m.t.FindMaterial(h.material)
		said := fmt.Sprintf("%s: heat-treated after forming: %s.", h.title, h.in.HeatTreated)
		switch temper, _, err := temperOf(mat, h.nominal); {
		case err != nil || temper == material.Annealed:
		case mat.Own():
			said += " The own values of " + mat.Name + " must be those of the metal after it: hold them against the certificate."
		default:
			said += " The strength of " + mat.Alloy + " rests on it: hold temper, strength and hardness against the certificate."
		}
		out = append(out, said)
	}
	return out
}
