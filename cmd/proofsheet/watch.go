package main

import (
	"context"
	"crypto/sha256"
	"errors"
	"fmt"
	"os"
	"os/signal"
	"strings"
	"text/tabwriter"
	"time"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

// watchEvery is how often the files are looked at [ns].
const watchEvery = 500 * time.Millisecond

// A stamp is what tells that a file has changed: a look at its time and size, and
// where these have moved, at what it holds.
type stamp struct {
	time   time.Time
	size   int64
	digest [sha256.Size]byte // all zero where the file cannot be read
}

// lookAt returns the stamp of a file. The content is read only where time or size
// is not that of the stamp before.
func lookAt(path string, before stamp) stamp {
	info, err := os.Stat(path)
	if err != nil {
		return stamp{}
	}
	now := stamp{time: info.ModTime(), size: info.Size(), digest: before.digest}
	if now == before {
		return now
	}
	now.digest = [sha256.Size]byte{}
	if data, err := readFile(path); err == nil {
		now.digest = sha256.Sum256(data)
	}
	return now
}

// A watcher assesses a tank again whenever one of its files is saved.
type watcher struct {
	c      *cli.Context
	name   string
	seen   map[string]stamp // every file of the last reading
	before *job             // the last that could be read
	status error            // of the last reading
}

// runWatch assesses, and again at every save, until it is interrupted. It ends
// with the status of the last assessment.
func runWatch(c *cli.Context) error {
	name, err := oneFile(c)
	if err != nil {
		return err
	}
	for _, flag := range []string{"pdf", "json", "figures", "case"} {
		if c.IsSet(flag) {
			return fmt.Errorf("--watch prints verdict and changes only: without --%s", flag)
		}
	}
	if name == dash {
		return errors.New("--watch needs a file, standard input is never saved again")
	}
	if _, err := os.Stat(name); err != nil {
		return plain(err)
	}
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	defer stop()
	ticker := time.NewTicker(watchEvery)
	defer ticker.Stop()
	w := &watcher{c: c, name: name}
	return w.run(ctx, ticker.C)
}

// run assesses now, and at every tick at which a file has changed.
func (w *watcher) run(ctx context.Context, ticks <-chan time.Time) error {
	if err := w.assess(); err != nil {
		return err
	}
	for {
		select {
		case <-ctx.Done():
			return w.status
		case at := <-ticks:
			if err := w.look(at); err != nil {
				return err
			}
		}
	}
}

// look assesses again where a file has changed.
func (w *watcher) look(at time.Time) error {
	if !w.changed() {
		return nil
	}
	if err := toStdout(w.c, fmt.Sprintf("\n%s  %s\n", at.Format("15:04:05"), w.name)); err != nil {
		return err
	}
	return w.assess()
}

// changed reports whether a file holds something else than what was read.
func (w *watcher) changed() (yes bool) {
	for path, before := range w.seen {
		now := lookAt(path, before)
		yes = yes || now.digest != before.digest
		w.seen[path] = now
	}
	return yes
}

// read reads a file and keeps its stamp. Time and size are looked at first, so that
// a save in between is seen at the next tick.
func (w *watcher) read(path string) ([]byte, error) {
	w.seen[path] = stamp{}
	info, err := os.Stat(path)
	if err != nil {
		return nil, plain(err)
	}
	data, err := readFile(path)
	if err == nil {
		w.seen[path] = stamp{info.ModTime(), info.Size(), sha256.Sum256(data)}
	}
	return data, err
}

// assess reads the files and prints what comes out, a fault of the input too. It
// fails only where nothing can be printed.
func (w *watcher) assess() error {
	w.seen = map[string]stamp{}
	t, inputs, err := readTankBy(w.c, w.name, w.read)
	var s *report.Sheet
	if err == nil {
		if s, err = assessTank(t); err != nil {
			err = inFile(t, err)
		}
	}
	if err != nil {
		w.status = err
		return tell(w.c.App.ErrWriter, fmt.Sprintf("%v\n", err))
	}
	now := &job{tank: t, sheet: s, inputs: inputs}
	w.status = now.verdict()
	var b strings.Builder
	if w.before != nil {
		b.WriteString(movedText(w.before, now))
	}
	w.before = now
	if err := report.Text(&b, s, true, "", foldWidth(w.c)); err != nil {
		return err
	}
	return toStdout(w.c, b.String())
}

// movedText prints what was written differently, and every check whose margin or
// status has moved, the worst first.
func movedText(before, now *job) string {
	var b strings.Builder
	w := tabwriter.NewWriter(&b, 0, 0, 2, ' ', 0)
	for _, d := range tank.Differ(before.tank, now.tank) {
		fmt.Fprintf(w, "%s\t%s\t-> %s\n", d.Key, orDash(d.A), orDash(d.B))
	}
	w.Flush()
	fmt.Fprintf(&b, "margins that moved, from, to:\n")
	compareMoved(&b, [2]*report.Sheet{before.sheet, now.sheet})
	return b.String()
}

// mostMoved is how many moved checks are printed.
const mostMoved = 15

func compareMoved(b *strings.Builder, sheets [2]*report.Sheet) {
	was := map[string]check.Result{}
	for _, r := range sheets[0].Checks {
		was[report.FullID(r)] = r
	}
	var rows []string
	for _, r := range report.WorstFirst(sheets[1].Checks) {
		id := report.FullID(r)
		old, had := was[id]
		delete(was, id)
		status := statusOf(old, had)
		if now := statusOf(r, true); now != status {
			status += " -> " + now
		} else if marginOf(old, had) == marginOf(r, true) {
			continue
		}
		rows = append(rows, fmt.Sprintf("%s\t%s\t%s\t%s\n", id, marginOf(old, had), marginOf(r, true), status))
	}
	w := tabwriter.NewWriter(b, 0, 0, 2, ' ', 0)
	for _, row := range rows[:min(len(rows), mostMoved)] {
		fmt.Fprint(w, row)
	}
	w.Flush()
	if more := len(rows) - mostMoved; more > 0 {
		fmt.Fprintf(b, "and %d more\n", more)
	}
	if len(was) > 0 {
		fmt.Fprintf(b, "%d checks are gone\n", len(was))
	}
	if len(rows) == 0 && len(was) == 0 {
		b.WriteString("none\n")
	}
}
