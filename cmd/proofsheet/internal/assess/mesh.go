package assess

import (
	"fmt"
	"maps"
	"sync"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/shell/revolution"
)

// meshLimit is the mesh error above which no answer of the numerical shell is
// used [-].
const meshLimit = 0.01

// fineEnough refuses a mesh on which the stresses u of a load would change by more
// than limit [-] of the largest on elements half as long.
func fineEnough(m *revolution.Model, u *revolution.Solution, l revolution.Load, limit float64) error {
	e, err := m.MeshError(u, l)
	if err == nil && !(e.Stress <= limit) {
		err = fmt.Errorf("the mesh of the numerical shell is too coarse: %.2g of the largest stress", e.Stress)
	}
	return err
}

// Meshes are looked at beside the assessment that goes on with them, and asked
// for at its end. A model shares them with its forks.
type meshes struct {
	mu    sync.Mutex
	looks map[shellKey]func() error
}

// look begins to look at a mesh.
func (ms *meshes) look(k shellKey, at func() error) {
	ms.mu.Lock()
	defer ms.mu.Unlock()
	ms.looks[k] = begin(at)
}

// coarse waits for what has been begun and returns the meshes that are refused.
func (ms *meshes) coarse() map[shellKey]error {
	ms.mu.Lock()
	defer ms.mu.Unlock()
	bad := map[shellKey]error{}
	for k, look := range ms.looks {
		if err := look(); err != nil {
			bad[k] = err
		}
	}
	return bad
}

// onFineMeshes makes an assessment; where a mesh was too coarse for it, it makes it
// again without that: what rests on it is then not assessed.
func onFineMeshes[T any](t *tank.Tank, o Options, finish func(r *run) T) (T, error) {
	for refused := map[shellKey]error{}; ; {
		o.refused = refused
		r, err := newRun(t, o)
		if err != nil {
			var none T
			return none, err
		}
		out := finish(r)
		bad := r.meshes.coarse()
		if len(bad) == 0 {
			return out, nil
		}
		maps.Copy(refused, bad)
	}
}
