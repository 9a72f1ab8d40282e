package assess

import (
	"maps"
	"runtime"
	"sync"
)

// fork returns a model that may be used beside m at the same time: what m remembers
// it remembers too, what either finds from now on it keeps to itself.
func (m *model) fork() *model {
	f := *m
	f.metals.found, f.metals.pulled = maps.Clone(m.metals.found), maps.Clone(m.metals.pulled)
	f.known = m.known.fork()
	f.layouts, f.stables, f.lones = maps.Clone(m.layouts), maps.Clone(m.stables), maps.Clone(m.lones)
	f.shells, f.solved, f.liquids = maps.Clone(m.shells), maps.Clone(m.solved), maps.Clone(m.liquids)
	f.outside, f.strengths, f.reaches = maps.Clone(m.outside), maps.Clone(m.strengths), maps.Clone(m.reaches)
	f.lines = maps.Clone(m.lines)
	return &f
}

// fork copies what is remembered.
func (r remembered) fork() remembered {
	return remembered{maps.Clone(r.allowances), maps.Clone(r.cylinder), maps.Clone(r.heads), maps.Clone(r.joints), maps.Clone(r.tips)}
}

// shared calls work for every i under n, on as many processors as are there, each
// with a fork of its own; the first one takes m itself. Without the numerical shell
// the tank is one of many that are shared out themselves: a fork would find again what
// m finds.
func (m *model) shared(n int, work func(m *model, i int)) {
	workers := []*model{m}
	for !m.withoutShell && len(workers) < min(runtime.GOMAXPROCS(0), n) { // before the first one goes on remembering
		workers = append(workers, m.fork())
	}
	var wait sync.WaitGroup
	for w, own := range workers {
		wait.Go(func() {
			for i := w; i < n; i += len(workers) {
				work(own, i)
			}
		})
	}
	wait.Wait()
}

// begin starts work beside what goes on; what it returns waits for the answer.
func begin[T any](work func() T) func() T {
	once := sync.OnceValue(work)
	go once()
	return once
}
