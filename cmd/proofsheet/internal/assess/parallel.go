package assess

import (
	"proofsheet/report/check"
)

// checkCases makes the checks of every case, in the order of the cases, shared out
// among the processors; what comes out does not depend on it.
func (r *run) checkCases() {
	results := make([][]check.Result, len(r.cases))
	r.shared(len(r.cases), func(m *model, i int) {
		results[i] = (&run{model: m, o: r.o}).checkCase(r.cases[i])
	})
	from := make([]int, len(results))
	n := len(r.checks)
	for i, rs := range results {
		from[i] = n
		n += len(rs)
	}
	all := make([]check.Result, n)
	copy(all, r.checks)
	r.shared(len(results), func(_ *model, i int) { copy(all[from[i]:], results[i]) })
	r.checks = all
}
