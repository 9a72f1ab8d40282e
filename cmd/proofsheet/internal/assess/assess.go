package assess

import (
	"crypto/sha256"
	"encoding/hex"
	"strings"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/loads"
	"proofsheet/report"
	"proofsheet/report/check"
)

// Options are what the sheet says about the program itself.
type Options struct {
	Version      string
	withoutShell bool
	refused      map[shellKey]error // meshes found too coarse
}

// A run is one assessment in the making.
type run struct {
	*model
	o        Options
	cases    []*loadCase
	checks   []check.Result
	byCase   map[string][]int // of checks, made when it is first asked for
	unbuilt  []check.Result
	parts    []report.PermissiblePressure
	near     float64 // highest ullage pressure with people near [Pa]
	nearWhy  string
	proof    *proofTest
	cautions []string // from compatibility and geometry

	shellWords func() string                 // how far the numerical shell can be trusted
	buckles    func() []report.NamedQuantity // bifurcation of its heads
}

// Assess makes every check of the tank in every case and returns the sheet. An
// error is a fault of the input that only the whole tank shows.
func Assess(t *tank.Tank, o Options) (*report.Sheet, error) {
	return onFineMeshes(t, o, func(r *run) *report.Sheet {
		return r.whole()
	})
}

// whole finishes the assessment and returns the sheet.
func (r *run) whole() *report.Sheet {
	r.shellWords = begin((&run{model: r.fork(), cases: r.cases}).shellNote)
	r.buckles = begin((&run{model: r.fork(), cases: r.cases}).bifurcationQuantities)
	r.parts = r.permissible(r.cases)
	r.near, r.nearWhy = nearPressure(r.parts, append(r.checks, r.unbuilt...))
	r.near, r.nearWhy = cappedAt(r.t.Pressure.MEOP, r.near, r.nearWhy)
	r.finish()
	return r.sheet()
}

// Checks makes every check as [Assess] does, without the sheet round them and
// without the search for the pressure with people near, which no check rests on.
func Checks(t *tank.Tank) ([]check.Result, error) {
	return checks(t, Options{})
}

// ChecksWithoutShell makes them without the numerical shell: what rests on it is
// not assessed. For studies of many tanks.
func ChecksWithoutShell(t *tank.Tank) ([]check.Result, error) {
	return checks(t, Options{withoutShell: true})
}

func checks(t *tank.Tank, o Options) ([]check.Result, error) {
	return onFineMeshes(t, o, func(r *run) []check.Result {
		r.finish()
		return r.checks
	})
}

// newRun resolves a tank and makes the checks of its cases and of the whole.
func newRun(t *tank.Tank, o Options) (*run, error) {
	m, err := newModel(t)
	if err != nil {
		return nil, err
	}
	m.withoutShell, m.meshes, m.coarse = o.withoutShell, &meshes{looks: map[shellKey]func() error{}}, o.refused
	m.masses, m.massErr = m.structure()
	r := &run{model: m, o: o, unbuilt: m.unbuilt()}
	if r.cases, err = m.cases(); err != nil {
		return nil, err
	}
	m.coldWalls(r.cases)
	if err := m.proofChosen(r.cases); err != nil {
		return nil, err
	}
	r.operate(r.cases)
	r.lookAtRanges()
	r.checkCases()
	r.checkTank()
	return r, nil
}

// finish adds the checks at proof and those that are not made.
func (r *run) finish() {
	r.proof = r.newProof(r.cases, r.near)
	r.checks = append(r.checks, r.proof.yield, r.proof.reach)
	r.checks = append(append(r.checks, r.proof.others...), r.proof.ports...)
	r.checks = append(r.checks, r.unbuilt...)
	for i, c := range r.checks {
		if c.Source.How == check.Unstated { // of a check that was not made
			r.checks[i].Source = check.Source{Doc: "none", Where: "no formula was used", How: check.Practice}
		}
	}
}

// checkCase returns the checks of one case: of its states, and of the instants
// of a history, the worst counts and keeps its time.
func (r *run) checkCase(c *loadCase) []check.Result {
	var worst []check.Result
	for _, at := range c.moments() {
		for _, s := range at.states {
			all := r.checkState(s, at)
			for i := range all {
				if all[i].Time = at.time; worst != nil {
					all[i] = worse(worst[i], inForm(all[i], at.form))
				}
			}
			worst = all
		}
	}
	worst = append(worst, r.checkCapacity(c), r.checkBrittle(c))
	for i := range worst {
		worst[i].Case, worst[i].Rule = c.name, string(c.rule)
	}
	return worst
}

// inForm says in which other form of its case a check was made.
func inForm(r check.Result, form string) check.Result {
	if form != "" && r.Status() != check.NotApplicable {
		r.Note = strings.TrimPrefix(strings.TrimSuffix(r.Note, ".")+"; worst with "+form, "; ")
	}
	return r
}

// checkState makes the checks of every part in one state.
func (r *run) checkState(s *loads.State, c *loadCase) []check.Result {
	out := make([]check.Result, 0, 32+8*len(r.ports)) // more than a tank has, mostly
	out = append(out, r.checkWholeCylinder(s, c)...)
	for _, h := range r.ends() {
		out = append(out, r.checkHead(h, s, c)...)
	}
	out = append(out, r.checkPorts(s, c)...)
	out = append(out, r.checkThermal(s, c))
	if c.slosh != nil {
		out = append(out, checkSlosh(s, c))
	}
	return append(out, r.checkWeldZones(s, c))
}

// checkTank makes the checks of the tank as a whole.
func (r *run) checkTank() {
	compatible, cautions := r.checkCompatibility()
	r.cautions = append(r.cautions, cautions...)
	r.checks = append(r.checks, r.checkRelief(), r.checkVapour(), compatible, r.checkLife(r.cases), r.checkLeak(r.cases))
	r.checks = append(r.checks, r.checkFlaw(r.cases)...)
	r.checks = append(r.checks, r.checkWeldMetals()...)
}

// worse returns the worse of two answers to one check: not satisfied before not
// assessed before the lesser margin.
func worse(a, b check.Result) check.Result {
	rank := func(r check.Result) int {
		switch r.Status() {
		case check.NotSatisfied:
			return 3
		case check.NotAssessed:
			return 2
		case check.Satisfied:
			return 1
		}
		return 0
	}
	switch ra, rb := rank(a), rank(b); {
	case ra > rb:
		return a
	case rb > ra || b.Margin() < a.Margin():
		return b
	}
	return a
}

// digest returns the SHA-256 of data in hexadecimal.
func digest(data ...[]byte) string {
	h := sha256.New()
	for _, d := range data {
		h.Write(d)
	}
	return hex.EncodeToString(h.Sum(nil))
}
