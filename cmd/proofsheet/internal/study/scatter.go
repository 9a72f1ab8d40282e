package study

import (
	"context"
	"errors"
	"fmt"
	"math"
	"runtime/debug"

	"proofsheet/cmd/proofsheet/internal/tank"
)

// A Scatter is the whole answer of a scatter study.
type Scatter struct {
	Asked, Done int // samples
	Faulty      int // samples whose tank could not be read or assessed: they count as failures of the study, not of a check
	Fault       string
	Inputs      []tank.Scatter
	Checks      []Scattered // those that fail anywhere or scatter, the likeliest failure first

	Assessed  int     // samples that were assessed; the others were decided by surfaces
	Counted   int     // the first samples, over which the checks of [ViaPart] are counted
	Design    int     // tanks assessed beside the samples, to make surfaces and to try them
	Trials    int     // samples by which surfaces were tried, drawn like all
	Order     int     // of the surfaces, 0 where there are none
	Band      float64 // the widest, as a share of what is asked [-]
	BandCheck string  // whose it is
}

// ScatterOptions say how a scatter study is made.
type ScatterOptions struct {
	Shell bool // the numerical shell in every tank too
	Exact bool // every sample is assessed, however many
}

// Scatters samples the inputs of [scatter] by a Latin hypercube and counts how
// often each check is not satisfied. Few samples are all assessed; of many, most are
// decided by surfaces where these cannot be mistaken (package comment). All
// processors work, and the numbers do not depend on how many there are; memory
// does not grow with the samples. What is done when the context ends is kept.
//
// The answer is only as good as the inputs.
func Scatters(ctx context.Context, t *tank.Tank, samples int, o ScatterOptions, progress func(done, all int)) (*Scatter, error) {
	if len(t.Scatter) == 0 {
		return nil, errors.New("the file has no [scatter]; write lines such as \"cylinder.thickness\" = \"normal 0.05 mm\" under it")
	}
	if samples < 2 {
		return nil, fmt.Errorf("%d samples tell nothing; ask for some hundreds", samples)
	}
	s, err := newSampler(t, samples, o.Shell)
	if err != nil {
		return nil, err
	}
	// A tank is forgotten as soon as it is assessed: with little alive the collector would run at
	// every other one, and stop all processors for it.
	usual := debug.SetGCPercent(seldom)
	defer debug.SetGCPercent(usual)
	return s.study(ctx, samples, o.Exact, progress), nil
}

// seldom is by how many percent of what is alive memory may grow before it is
// collected.
const seldom = 800

// study makes the study of so many samples.
func (s *sampler) study(ctx context.Context, samples int, exact bool, progress func(done, all int)) *Scatter {
	if progress == nil {
		progress = func(int, int) {}
	}
	p := &plan{sampler: s, samples: samples, subset: samples, rest: ViaTank}
	if !exact && samples > p.leastSamples() {
		p.make(ctx, progress)
	}
	w := &walk{plan: p, all: map[string]*sums{}}
	w.out = Scatter{Asked: samples, Inputs: s.inputs, Counted: p.subset, Design: p.designed, Trials: p.trials, Order: p.basis.order}
	for _, f := range p.surfaces {
		if f.band > w.out.Band {
			w.out.Band, w.out.BandCheck = f.band, f.id
		}
	}
	w.run(ctx, progress)
	w.out.Checks = settled(w.all, s.inputs)
	return &w.out
}

// A walk goes over the samples.
type walk struct {
	*plan
	out Scatter
	all map[string]*sums // by check
}

// Samples that one processor takes at a time, and how many such chunks are held
// until they are entered, in their order.
const (
	chunkOfSurfaces = 32
	chunkOfTanks    = 8
	chunksHeld      = 128
)

// run decides every sample. Where surfaces decide nothing it ends with the
// samples that are to be assessed.
func (w *walk) run(ctx context.Context, progress func(done, all int)) {
	k := len(w.sampler.inputs)
	for _, f := range w.surfaces {
		w.all[f.id] = newSums(k, ViaSurface, f.about())
	}
	for _, a := range w.stills {
		w.all[a.id] = newSums(k, ViaStill, a.margin)
	}
	for i, d := range w.known {
		if d.done {
			w.enter(i, d)
		}
	}
	end, chunk := w.samples, chunkOfSurfaces
	if !w.decides() {
		end, chunk = w.subset, chunkOfTanks
	}
	for from := len(w.known); from < end && ctx.Err() == nil; from += chunk * chunksHeld {
		held := make([]*taken, min(chunksHeld, (end-from+chunk-1)/chunk))
		shareOut(ctx, len(held), func(done, _ int) {
			progress(min(from+done*chunk, end), end)
		}, func(i int) {
			first := from + i*chunk
			held[i] = w.take(first, min(first+chunk, end))
		})
		for _, h := range held {
			if h != nil {
				w.enterChunk(h)
			}
		}
	}
	if w.out.Done == end && !w.broken {
		w.out.Done = w.samples
	}
}

// taken is what a chunk of samples gives.
type taken struct {
	at       []int // samples that were assessed
	assessed []tried
	decided  *sums // those that were not, with a margin of 0
	surfaces []*sums
}

// take decides the samples of a chunk.
func (w *walk) take(from, to int) *taken {
	k := len(w.sampler.inputs)
	h := &taken{decided: newSums(k, "", 0)}
	for _, f := range w.surfaces {
		h.surfaces = append(h.surfaces, newSums(k, "", f.about()))
	}
	e := w.evaluator()
	scores := make([]float64, k)
	for i := from; i < to; i++ {
		w.sampler.scores(i, scores)
		if i < w.subset || !e.decides(scores) {
			h.at, h.assessed = append(h.at, i), append(h.assessed, w.sampler.try(append([]float64(nil), scores...)))
			continue
		}
		h.decided.add(decided(0), scores)
		for j, g := range e.values {
			h.surfaces[j].add(decided(g), scores)
		}
	}
	return h
}

// enterChunk adds a chunk to the sums.
func (w *walk) enterChunk(h *taken) {
	w.out.Done += h.decided.made
	for j, f := range w.surfaces {
		w.all[f.id].join(h.surfaces[j])
	}
	for _, a := range w.stills {
		w.all[a.id].repeat(a, h.decided)
	}
	for j, d := range h.assessed {
		w.enter(h.at[j], d)
	}
}

// enter adds sample i, which was assessed. Those among the checks that surfaces do not
// decide count it only where it was drawn for them: one assessed because it is near to
// failing is no fair draw.
func (w *walk) enter(i int, d tried) {
	w.out.Done++
	w.out.Assessed++
	if d.err != nil {
		w.out.Faulty++
		if w.out.Fault == "" {
			w.out.Fault = firstLine(d.err)
		}
		return
	}
	for _, a := range d.answers {
		s := w.all[a.id]
		if s == nil {
			s = newSums(len(d.scores), w.rest, math.NaN())
			w.all[a.id] = s
		}
		if s.way != ViaPart || i < w.subset {
			s.add(a, d.scores)
		}
	}
}
