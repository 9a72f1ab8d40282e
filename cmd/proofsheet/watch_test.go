package main

import (
	"bytes"
	"context"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
)

// A watched is a watch under a clock that the test turns by hand.
type watched struct {
	*watcher
	t        *testing.T
	path     string
	out, err bytes.Buffer
	clock    time.Time
}

// newWatched returns a watch of a file that has not looked yet.
func newWatched(t *testing.T, path string) *watched {
	w := &watched{t: t, path: path, clock: time.Date(2026, 1, 31, 12, 0, 0, 0, time.UTC)}
	w.watcher = &watcher{c: cli.NewContext(newApp(strings.NewReader(""), &w.out, &w.err), nil, nil), name: path}
	return w
}

// first assesses for the first time and returns what that printed.
func (w *watched) first() string {
	w.t.Helper()
	if err := w.assess(); err != nil {
		w.t.Fatal(err)
	}
	return w.taken()
}

// tick lets the watch look once and returns what that printed.
func (w *watched) tick() string {
	w.t.Helper()
	w.clock = w.clock.Add(time.Second)
	if err := w.look(w.clock); err != nil {
		w.t.Fatal(err)
	}
	return w.taken()
}

// taken returns what was printed since the last call.
func (w *watched) taken() string {
	text := w.out.String() + w.err.String()
	w.out.Reset()
	w.err.Reset()
	return text
}

// save puts a file with one text replaced in place, whole and at a time of its own.
func (w *watched) save(old, new string) {
	w.t.Helper()
	text, err := os.ReadFile(w.path)
	if err != nil || !strings.Contains(string(text), old) {
		w.t.Fatalf("%q is not there: %v", old, err)
	}
	beside := w.path + ".new"
	if err := os.WriteFile(beside, []byte(strings.Replace(string(text), old, new, 1)), 0o600); err != nil {
		w.t.Fatal(err)
	}
	w.touch(beside)
	if err := os.Rename(beside, w.path); err != nil {
		w.t.Fatal(err)
	}
}

// touch gives a file a new time.
func (w *watched) touch(path string) {
	w.t.Helper()
	w.clock = w.clock.Add(time.Hour)
	if err := os.Chtimes(path, w.clock, w.clock); err != nil {
		w.t.Fatal(err)
	}
}

// TestWatch: the first look prints the verdict; a save prints what is written
// differently and what moved; a touch prints nothing; a fault is printed and the
// watch goes on; the end has the status of the last look.
func TestWatch(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	plain := assessTank
	assessTank = func(in *tank.Tank) (*report.Sheet, error) { // demand follows MEOP
		s, err := plain(in)
		s.Checks[0].Demand.Value = in.Pressure.MEOP / 1e5
		s.Settle()
		return s, err
	}
	w := newWatched(t, path)
	if got := w.first(); !strings.HasPrefix(got, "satisfied by vessel") || !strings.Contains(got, "governing: cylinder/hoop@meop, margin +9.00") {
		t.Errorf("at first it prints %q", got)
	}
	if got := w.tick(); got != "" {
		t.Errorf("nothing was saved, and it prints %q", got)
	}
	w.touch(path)
	if got := w.tick(); got != "" {
		t.Errorf("touched without a change, it prints %q", got)
	}
	w.save(`meop = "10 bar"`, `meop = "80 bar"`)
	got := strings.Join(strings.Fields(w.tick()), " ")
	for _, want := range []string{"pressure.meop 10 bar -> 80 bar", "cylinder/hoop@meop +9.00 +0.25 satisfied", "satisfied by vessel: people may be near"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %q", want, got)
		}
	}
	w.save(`meop = "80 bar"`, `meop = 80`)
	if got := w.tick(); !strings.Contains(got, "pressure.meop: ") {
		t.Errorf("a fault prints %q", got)
	}
	if err := os.Remove(path); err != nil {
		t.Fatal(err)
	}
	if got := w.tick(); !strings.Contains(got, "no such file") {
		t.Errorf("a file that went prints %q", got)
	}
	if err := os.WriteFile(path, bytes.Replace(tank.Starter(), []byte(`meop = "10 bar"`), []byte(`meop = "120 bar"`), 1), 0o600); err != nil {
		t.Fatal(err)
	}
	got = strings.Join(strings.Fields(w.tick()), " ")
	for _, want := range []string{"pressure.meop 80 bar -> 120 bar", "satisfied -> not satisfied", "not satisfied by vessel"} {
		if !strings.Contains(got, want) {
			t.Errorf("%q is missing in %q", want, got)
		}
	}
	ended, stop := context.WithCancel(context.Background())
	stop()
	if err := w.run(ended, nil); !errors.Is(err, errFails) {
		t.Errorf("ended with %v", err)
	}
}

// TestWatchFollowsAttachedFiles: a save of a file that the tank file names is a
// change too.
func TestWatchFollowsAttachedFiles(t *testing.T) {
	folder := t.TempDir()
	for _, name := range []string{"flight.toml", "flight.csv"} {
		src, err := os.ReadFile(filepath.Join("../../testdata/tanks", name))
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(filepath.Join(folder, name), src, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	withSheet(t, 50)
	w := newWatched(t, filepath.Join(folder, "flight.toml"))
	w.first()
	csv := filepath.Join(folder, "flight.csv")
	src, err := os.ReadFile(csv)
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(csv, append(src, '\n'), 0o600); err != nil {
		t.Fatal(err)
	}
	if got := w.tick(); !strings.Contains(got, "satisfied") {
		t.Errorf("%q", got)
	}
}

// TestWatchRuns: every tick is a look, until the watch is stopped.
func TestWatchRuns(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	w := newWatched(t, path)
	ctx, stop := context.WithCancel(context.Background())
	ticks, ended := make(chan time.Time), make(chan error, 1)
	go func() { ended <- w.run(ctx, ticks) }()
	ticks <- w.clock // taken when the first assessment is done
	w.save(`meop = "10 bar"`, `meop = "11 bar"`)
	ticks <- w.clock // the save is seen at this look, if it was not at the one before
	ticks <- w.clock
	stop()
	if err := <-ended; err != nil {
		t.Errorf("ended with %v", err)
	}
	if got := w.taken(); strings.Count(got, "satisfied by vessel") != 2 || strings.Count(got, "pressure.meop") != 1 {
		t.Errorf("it prints %q", got)
	}
}

// TestWatchRefuses what is never saved again, and what would be written over at
// every save.
func TestWatchRefuses(t *testing.T) {
	path := starter(t)
	for _, row := range []struct {
		args []string
		want string
	}{
		{[]string{"check", "-", "--watch"}, "needs a file"}, {[]string{"check", path, "--watch", "--pdf", "x.pdf"}, "without --pdf"},
		{[]string{"check", path, "--watch", "--json", "-"}, "without --json"}, {[]string{"check", "nosuch.toml", "--watch"}, "no such file"},
		{[]string{"check", "--watch"}, "takes one file, not 0"},
	} {
		if status, out, says := call(t, "", row.args...); status != exitInput || out != "" || !strings.Contains(says, row.want) {
			t.Errorf("%v: status %d, %s%s", row.args, status, out, says)
		}
	}
}
