package main

import (
	"encoding/json"
	"fmt"
	"regexp"
	"strings"

	"proofsheet/report/check"
	"proofsheet/report/sign"
)

// compareNumbers holds the embedded data and the text of the pages against the
// sheet computed and drawn again, which is not the same byte for byte: another
// version made it, or another build of the same.
func (e *examination) compareNumbers(r *sign.Report, a *again) error {
	var is any
	if err := json.Unmarshal(a.data, &is); err != nil {
		return err
	}
	n, by := numbers{}, fmt.Sprintf("by version %s (the %s says version %s made it)", programVersion(), e.kind, e.madeBy)
	if at := n.compare("", "", e.was, is); at != "" {
		return fmt.Errorf("the %s computed again %s is another one: %s", e.kind, by, at)
	}
	was, err := r.Text()
	if err != nil {
		return err
	}
	now, err := (&sign.Report{Base: a.drawn}).Text()
	if err != nil {
		return err
	}
	if err := sameVerdict(was, a); err != nil {
		return err
	}
	e.pages, e.otherPages = len(was), otherPages(e.madeBy, was, now)
	if e.madeBy == programVersion() && difference("", e.was, is) == "" {
		return fmt.Errorf("the numbers computed again are the same, but the file is not the one that is drawn %s%s", by, onPages(e.otherPages))
	}
	e.again, e.count, e.more = a, n.count, n.more
	return nil
}

// pageOf is what tells a page that has only moved from where it was.
var pageOf = regexp.MustCompile(`page \d+ of \d+`)

// otherPages returns the pages whose text is on no page that this version
// draws, leaving out its version and page numbers.
func otherPages(madeBy string, was, now []string) (other []int) {
	drawn := map[string]bool{}
	for _, text := range now {
		drawn[pageOf.ReplaceAllString(strings.ReplaceAll(text, "proofsheet "+programVersion(), ""), "")] = true
	}
	for i, text := range was {
		if !drawn[pageOf.ReplaceAllString(strings.ReplaceAll(text, "proofsheet "+madeBy, ""), "")] {
			other = append(other, i+1)
		}
	}
	return other
}

// onPages says which pages read otherwise, if any does.
func onPages(other []int) string {
	if len(other) == 0 {
		return "; its pages read the same"
	}
	return "; these pages read otherwise: " + list(other)
}

// list prints page numbers, of many the first.
func list(pages []int) string {
	const most = 12
	text := strings.Trim(strings.ReplaceAll(fmt.Sprint(pages[:min(most, len(pages))]), " ", ", "), "[]")
	if len(pages) > most {
		text += fmt.Sprintf(" and %d more", len(pages)-most)
	}
	return text
}

// sameVerdict reads the verdict on the first and the last page. It is a look at
// what a reader sees first where the pages cannot be drawn again, and no proof.
func sameVerdict(pages []string, a *again) error {
	line := strings.ReplaceAll(a.printed(), " ", "")
	earlier := strings.Replace(line, ",rule", "by", 1)            // "not assessed by vessel" of earlier versions
	good := a.record == nil && a.sheet.Verdict == check.Satisfied // of a record, "not" stands within the line
	for _, page := range []string{pages[0], pages[len(pages)-1]} {
		page = strings.ReplaceAll(page, " ", "")
		if !strings.Contains(page, line) && !strings.Contains(page, earlier) || good && strings.Contains(page, "not"+line) {
			return fmt.Errorf("the verdict printed is not the one computed again: %s", a.line())
		}
	}
	return nil
}
