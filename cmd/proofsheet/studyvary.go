package main

import (
	"context"
	"fmt"
	"math"
	"strconv"
	"strings"

	"github.com/urfave/cli/v2"

	"proofsheet/cmd/proofsheet/internal/study"
	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/check"
)

func runVary(ctx context.Context, c *cli.Context, j *job) error {
	t := j.tank
	var axes []study.Axis
	for _, text := range c.StringSlice("vary") {
		a, err := study.ParseAxis(t, text)
		if err != nil {
			return fmt.Errorf("--vary: %w", err)
		}
		axes = append(axes, a)
	}
	variants, err := study.Vary(ctx, t, axes, counter(c))
	if err != nil {
		return fmt.Errorf("--vary: %w", err)
	}
	s := studied{text: varyText(t, axes, variants, foldWidth(c)), rows: varyRows(axes, variants), drawn: varyDrawn(t, axes, variants)}
	if j.sheet != nil {
		s.pages, s.attached = varyPages(t, axes, variants), varyRows(axes, withoutFolders(t, variants))
	}
	if err := j.deliverStudy(c, s); err != nil {
		return err
	}
	for _, v := range variants {
		if !v.Done {
			return errFails
		}
	}
	return nil
}

const varyCaution = "The least margin is that of the checks made; a check that is not assessed is not satisfied."

// varyText prints the sweep as a table, within a width as of [report.Fold].
func varyText(t *tank.Tank, axes []study.Axis, variants []study.Variant, width int) string {
	rows, left := varyTable(t, axes, variants)
	if width > 0 && sum(columns(rows, 0))+2*(len(rows[0])-1) > width {
		for k, a := range axes {
			rows[0][k] = wordsOf(a.Key)
		}
	}
	var b strings.Builder
	b.WriteString(side(rows, width))
	if left > 0 {
		fmt.Fprintf(&b, "broken off: %d of %d not run\n", left, len(variants))
	}
	b.WriteString(varyCaution + "\n")
	return report.Fold(b.String(), width)
}

// varyTable returns the rows of the sweep, and how many variants were left out.
func varyTable(t *tank.Tank, axes []study.Axis, variants []study.Variant) (rows [][]string, left int) {
	rows = [][]string{nil}
	for _, a := range axes {
		rows[0] = append(rows[0], a.Key)
	}
	rows[0] = append(rows[0], "mass", "least margin", "not satisfied, not assessed", "check")
	for _, v := range variants {
		if !v.Done {
			left++
			continue
		}
		var row []string
		for k, a := range axes {
			row = append(row, glued(report.Show(check.Quantity{Value: v.At[k], Unit: a.Unit}, t.Sheet.Units, report.Nearest)))
		}
		if v.Fault != "" {
			rows = append(rows, append(row, "-", "-", "", v.Fault))
			continue
		}
		mass, margin := "-", "-"
		if !math.IsNaN(v.Mass) {
			mass = report.Show(check.Kg("", "", v.Mass), t.Sheet.Units, report.Up)
		}
		if !math.IsNaN(v.Margin) {
			margin = fmt.Sprintf("%+.2f", math.Floor(v.Margin*100)/100)
		}
		rows = append(rows, append(row, glued(mass), margin, glued(fmt.Sprintf("%d, %d", v.Fails, v.NotMade)), v.Check))
	}
	return rows, left
}

// wordsOf lets a key be broken after its table in the head of a column.
func wordsOf(key string) string {
	at := strings.LastIndex(key, ".") + 1
	return strings.TrimSpace(key[:at] + " " + key[at:])
}

// varyRows is the sweep as CSV, SI.
func varyRows(axes []study.Axis, variants []study.Variant) [][]string {
	var head []string
	for _, a := range axes {
		head = append(head, fmt.Sprintf("%s [%s]", a.Key, a.Unit))
	}
	rows := [][]string{append(head, "mass [kg]", "least_margin", "check", "status", "not_satisfied", "not_assessed", "fault")}
	for _, v := range variants {
		if !v.Done {
			continue
		}
		var row []string
		for _, x := range v.At {
			row = append(row, plainNumber(x))
		}
		status := v.Status.String()
		if v.Fault != "" {
			status = ""
		}
		rows = append(rows, append(row, plainNumber(v.Mass), plainNumber(v.Margin), v.Check, status, strconv.Itoa(v.Fails), strconv.Itoa(v.NotMade), v.Fault))
	}
	return rows
}
