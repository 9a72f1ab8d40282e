package assess

import (
	"slices"

	"proofsheet/report/check"
)

// checkCases makes the checks of every case, in the order of the cases, shared out
// among the processors; what comes out does not depend on it.
func (r *run) checkCases() {
	results := make([][]check.Result, len(r.cases))
	r.shared(len(r.cases), func(m *model, i int) {
		results[i] = (&run{model: m, o: r.o}).checkCase(r.cases[i])
	})
	r.checks = slices.Concat(append([][]check.Result{r.checks}, results...)...)
}
