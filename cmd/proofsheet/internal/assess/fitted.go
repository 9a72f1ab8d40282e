package assess

import (
	"errors"
	"fmt"
	"math"

	"proofsheet/heads/bolting"
	"proofsheet/loads"
	"proofsheet/loads/proof"
	"proofsheet/material"
	"proofsheet/report/check"
)

// fittingAt returns the fitting in the boss of a port with the drift of its preload
// at T [K].
func (m *model) fittingAt(p *portPart, T float64) (bolting.Fitting, error) {
	f, err := fittingOf(p)
	if err != nil {
		return f, err
	}
	if l := p.in.Load; l != nil {
		f.Outside = bolting.Outside(math.Abs(l.Force), math.Abs(l.Moment), math.Min(f.Thread.Major, f.SealDiameter))
	}
	screw := m.metals.at(p.in.Thread.Material, "", f.Thread.Major, T)
	f.Drift = bolting.Drift(screw.parent.ElasticModulus.Value, f.Thread.StressArea(), m.growth(p.in.Thread.Material, f.Thread.Major, T), m.growth(p.in.Tube.Material, p.in.Tube.Wall, T), T)
	return f, nil
}

// fittingOf returns the fitting in the boss of a port.
func fittingOf(p *portPart) (bolting.Fitting, error) {
	f := bolting.Fitting{ID: "port." + p.in.Name, Title: "Port " + p.in.Name}
	in := p.in.Thread
	if in == nil {
		return f, errors.New("the thread is not described")
	}
	var err error
	f.Thread, err = bolting.ParseThread(in.Size)
	f.Engagement, f.SealDiameter, f.Squeeze, f.Preload, f.Scatter = math.Min(in.Engagement, p.threadRoom()), in.SealDiameter, in.Squeeze, in.Preload, in.Scatter
	return f, err
}

// threadRoom returns the length along its axis in which a boss has metal all round a thread
// [m], corroded: from end to end of one that passes the wall, whose square ends make it longer
// where the wall slopes by φ, Outside + t/cos φ + Inside + OD tan φ; of one that ends at the
// inside face to where that begins, Outside + t/cos φ; set on the wall its height alone.
func (p *portPart) threadRoom() float64 {
	in, φ := p.in, p.chords.Obliquity
	t := p.host.least
	if q := p.port.Insert; q != nil {
		t = q.Thickness
	}
	through := in.Outside + t/math.Cos(φ)
	switch in.Fit {
	case "on":
		return in.Outside
	case "flush":
		return through
	}
	if p.in.Inside > 0 {
		through += math.Max(0, in.Inside-p.host.corrosion)
	}
	return through + in.Tube.OutsideDiameter*math.Tan(φ)
}

// engagedNote adds to the check of a thread that it is cut longer than the boss has room.
func (p *portPart) engagedNote(r check.Result) check.Result {
	if in := p.in.Thread; in != nil && p.chordsErr == nil && in.Engagement > p.threadRoom()*(1+1e-9) {
		r.Note += fmt.Sprintf("; of the engagement of %.4g mm no more than the %.4g mm of the boss counts, tolerance, thinning and corrosion off", in.Engagement*1e3, p.threadRoom()*1e3)
	}
	return r
}

// fittedPressures returns the highest and the lowest pressure across the wall at a
// port [Pa].
func (m *model) fittedPressures(p *portPart, s *loads.State) (highest, lowest float64, err error) {
	if p.chordsErr != nil {
		return math.NaN(), math.NaN(), p.chordsErr
	}
	z1, z2 := m.portReach(p)
	highest, _ = s.HighestPressure(z1, z2)
	return highest, s.LowestPressure(z1, z2), nil
}

// checkFitted makes the checks of what closes a port: the thread and the seal of a
// boss, or bolts, seal and plate of a cover. None for a plain tube.
func (m *model) checkFitted(p *portPart, s *loads.State, c *loadCase) []check.Result {
	high, low, err := m.fittedPressures(p, s)
	switch p.in.Kind {
	case "boss":
		f, fitErr := m.fittingAt(p, c.temperature)
		err = errors.Join(err, fitErr)
		boss, strengthErr := m.portStrengths(p, c)
		if p.in.Thread == nil {
			return []check.Result{check.NotMade(f.ID+"/thread", f.Title+": thread of the boss", err), check.NotMade(f.ID+"/seal", f.Title+": seal of the fitting", err)}
		}
		screw := m.allowAt(p.in.Thread.Material, "", f.Thread.Major, c.temperature, c.rule, nil)
		loaded, κ := f, m.loadFactor(c.rule)
		loaded.Outside *= κ
		return []check.Result{factorShown(κ, f.Outside, orNot(errors.Join(err, strengthErr, screw.parentErr), p.engagedNote(loaded.CheckThread(high, boss.Tube, screw.parent.S)))),
			orNot(err, f.CheckSeal(high, bolting.Separation))}
	case "cover":
		j, jointErr := m.coverJoint(p, c.temperature)
		sb, boltErr := m.boltAllowable(j, c.rule)
		err = errors.Join(err, jointErr, boltErr)
		plate, s, coverErr := m.coverOf(p, c)
		loaded, κ := j, m.loadFactor(c.rule)
		loaded.Outside *= κ
		return []check.Result{factorShown(κ, j.Outside, orNot(err, loaded.CheckBolts(high, sb))), orNot(err, j.CheckSeal(high, bolting.Separation)),
			factorShown(κ, j.Outside, orNot(errors.Join(err, coverErr), loaded.CheckCover("port."+p.in.Name+"/cover", coverPressure(high, low), plate, s, sb))),
			factorShown(κ, j.Outside, orNot(errors.Join(err, coverErr), loaded.CheckLigament("port."+p.in.Name+"/ligament", coverPressure(high, low), plate, s, sb)))}
	}
	return nil
}

// factorShown adds to a check the factor κ [-] with which a load from outside [N] stands in
// its F_x, where it is not 1.
func factorShown(κ, outside float64, r check.Result) check.Result {
	if κ != 1 && outside != 0 {
		r.Inputs = append(r.Inputs, check.Num("κ", "factor on the load from outside over that on pressure, in F_x", κ))
	}
	return r
}

// coverOf returns the least thickness of a port's cover, corroded [m], and its
// allowable stress [Pa].
func (m *model) coverOf(p *portPart, c *loadCase) (t, s float64, err error) {
	in := p.in.Cover
	if in == nil {
		return math.NaN(), math.NaN(), errors.New("the cover is not described")
	}
	a := m.allowAt(in.Material, "", in.Thickness, c.temperature, c.rule, nil)
	if c.rule == material.VesselEU {
		a.parentErr = errors.Join(a.parentErr, errBoltedEuropean)
	}
	return in.Thickness - in.UnderTolerance - p.host.corrosion, a.parent.S, a.parentErr
}

// proofFitted makes the same checks at the highest pressure of the test, metals and
// bolts held to the share k of yield and of proof strength.
func (m *model) proofFitted(t *proofTest, p *portPart, s *loads.State, c *loadCase, k float64, err error) []check.Result {
	high := math.NaN()
	if err == nil {
		high, _, err = m.fittedPressures(p, s)
	}
	T := m.t.Proof.Temperature
	switch p.in.Kind {
	case "boss":
		f, fitErr := m.fittingAt(p, T)
		err = errors.Join(err, fitErr)
		if p.in.Thread == nil {
			return []check.Result{check.NotMade(f.ID+"/thread", f.Title+": thread of the boss at proof", err)}
		}
		tube, screw := m.metals.at(p.in.Tube.Material, m.tubeWelds(p), p.in.Tube.Wall, T), m.metals.at(p.in.Thread.Material, "", f.Thread.Major, T)
		boss := math.Min(tube.parent.Yield.Value, tube.zone.Yield.Value)
		thread := p.engagedNote(f.CheckThread(high, k*boss, k*screw.parent.Yield.Value))
		thread.Inputs = append(thread.Inputs, check.Num("k", "share of yield at proof, S = k R_p0.2", k))
		return []check.Result{orNot(errors.Join(err, tube.parentErr, tube.zoneErr, screw.parentErr), thread),
			orNot(err, f.CheckSeal(high, 1))}
	case "cover":
		j, jointErr := m.coverJoint(p, T)
		err = errors.Join(err, jointErr)
		return []check.Result{orNot(err, j.CheckBoltsAtProof(high, k)), orNot(err, j.CheckSeal(high, 1)), m.proofCover(t, p, j, high, err), m.proofCoverLigament(t, p, j, high, err)}
	}
	return nil
}

// proofCover holds the bending of a port's cover at proof.
func (m *model) proofCover(t *proofTest, p *portPart, j bolting.Joint, high float64, err error) check.Result {
	id, title := "port."+p.in.Name+"/cover", "Port "+p.in.Name+": bolted cover at proof"
	if p.in.Cover == nil || err != nil {
		return check.NotMade(id, title, errors.Join(err, errors.New("bolts, seal and cover are needed")))
	}
	x := m.metals.at(p.in.Cover.Material, "", p.in.Cover.Thickness, m.t.Proof.Temperature)
	σ, err := j.ProofBending(high, p.in.Cover.Thickness-p.in.Cover.UnderTolerance-p.host.corrosion, j.Bolts.Strength/4)
	if err = errors.Join(err, x.parentErr); err != nil {
		return check.NotMade(id, title, err)
	}
	r := t.plan.CheckBending(proof.Stressed{Part: "cover of port " + p.in.Name, Pressure: high, Bending: σ, Yield: x.parent.Yield.Value, Efficiency: 1})
	r.ID, r.Title = id, title
	return r
}

// proofCoverLigament holds it between its bolt holes.
func (m *model) proofCoverLigament(t *proofTest, p *portPart, j bolting.Joint, high float64, err error) check.Result {
	wall, yield := math.NaN(), math.NaN()
	if in := p.in.Cover; in != nil {
		x := m.metals.at(in.Material, "", in.Thickness, m.t.Proof.Temperature)
		wall, yield, err = in.Thickness-in.UnderTolerance-p.host.corrosion, x.parent.Yield.Value, errors.Join(err, x.parentErr)
	}
	return m.proofLigament(t, j, "port."+p.in.Name, "cover of port "+p.in.Name, high, wall, yield, err)
}
