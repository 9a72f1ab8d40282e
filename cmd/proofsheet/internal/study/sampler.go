package study

import (
	"context"
	"sync"

	"proofsheet/cmd/proofsheet/internal/assess"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// A sampler draws deviates and assesses the tanks that have them.
type sampler struct {
	inputs []tank.Scatter
	cube   cube
	try    func(scores []float64) tried
}

// newSampler returns that of a tank for so many samples.
func newSampler(t *tank.Tank, samples int, withShell bool) (*sampler, error) {
	a := &assessor{t: t, withShell: withShell, names: map[string]string{}}
	for _, in := range t.Scatter {
		x, err := 0.0, error(nil) // of coupons the deviate itself is drawn
		if joint := in.Joint(); joint != "" {
			_, err = assess.CouponScatter(t, joint)
		} else {
			x, err = t.Number(in.Key)
		}
		if err != nil {
			return nil, err
		}
		a.nominal = append(a.nominal, x)
	}
	return &sampler{inputs: t.Scatter, cube: hypercube(Seed, len(t.Scatter), samples), try: a.try}, nil
}

// scores writes the deviates of sample i into out.
func (s *sampler) scores(i int, out []float64) {
	for k, in := range s.inputs {
		out[k] = score(in.Shape, s.cube.at(k, i))
	}
}

// tryAll assesses many tanks on all processors; what was not reached before the
// context ended is not done.
func (s *sampler) tryAll(ctx context.Context, points [][]float64, progress func(done, all int)) []tried {
	out := make([]tried, len(points))
	shareOut(ctx, len(points), progress, func(i int) { out[i] = s.try(points[i]) })
	return out
}

// A tried is a tank that was assessed.
type tried struct {
	done    bool
	scores  []float64 // deviate of each input [-]
	answers []answer
	err     error // the tank could not be read or assessed
}

// An answer is one check of one tank.
type answer struct {
	id     string
	status check.Status
	margin float64 // [-]
}

// An assessor makes tanks of deviates.
type assessor struct {
	t         *tank.Tank
	nominal   []float64 // of each input, in the SI unit of its key
	withShell bool

	mu    sync.Mutex
	names map[string]string // ids met, each kept once
}

// try assesses the tank that has these deviates.
func (a *assessor) try(scores []float64) tried {
	out := tried{done: true, scores: scores}
	values := map[string]float64{}
	for k, in := range a.t.Scatter {
		values[in.Key] = a.nominal[k] + in.Spread*scores[k]
	}
	changed, err := a.t.WithNumbers(values)
	if err != nil {
		out.err = err
		return out
	}
	checks := assess.Checks
	if !a.withShell {
		checks = assess.ChecksWithoutShell
	}
	results, err := checks(changed)
	if err != nil {
		out.err = err
		return out
	}
	out.answers = make([]answer, len(results))
	a.mu.Lock()
	defer a.mu.Unlock()
	for i, r := range results {
		id := report.FullID(r)
		if a.names[id] == "" {
			a.names[id] = id
		}
		out.answers[i] = answer{a.names[id], r.Status(), r.Margin()}
	}
	return out
}
