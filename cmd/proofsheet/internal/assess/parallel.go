package assess

import (
	"errors"
	"runtime"
	"sync"

	"proofsheet/report/check"
)

// casesEach is the least number of cases that a further processor is worth: below
// it, resolving the tank once more costs as much as the cases.
const casesEach = 8

// checkCases makes the checks of every case, in the order of the cases. Many cases
// are shared out among the processors, each with a model of its own, so that
// nothing a model remembers is shared; what comes out does not depend on it.
func (r *run) checkCases() error {
	results := make([][]check.Result, len(r.cases))
	workers := max(1, min(runtime.GOMAXPROCS(0), len(r.cases)/casesEach))
	errs := make([]error, workers)
	var wait sync.WaitGroup
	for w := range workers {
		own := &run{model: r.model, o: r.o}
		if w > 0 {
			if own.model, errs[w] = newModel(r.t); errs[w] != nil {
				continue
			}
			own.masses, own.massErr = r.masses, r.massErr
			own.ranges, own.rings, own.twoSided, own.seamsSee, own.operating, own.withoutShell = r.ranges, r.rings, r.twoSided, r.seamsSee, r.operating, r.withoutShell // not changed any more
		}
		wait.Go(func() {
			for i := w; i < len(r.cases); i += workers {
				results[i] = own.checkCase(r.cases[i])
			}
		})
	}
	wait.Wait()
	for _, rs := range results {
		r.checks = append(r.checks, rs...)
	}
	return errors.Join(errs...)
}
