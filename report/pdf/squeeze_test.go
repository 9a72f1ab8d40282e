package pdf

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"io"
	"regexp"
	"runtime"
	"strconv"
	"strings"
	"testing"

	"github.com/jung-kurt/gofpdf"
)

// plainFile returns a file of a few pages as its writer ends it, uncompressed.
func plainFile(t *testing.T) []byte {
	t.Helper()
	doc := gofpdf.New("P", "mm", "A4", "")
	doc.SetCompression(false)
	doc.SetCatalogSort(true)
	doc.SetCreationDate(issued(""))
	doc.SetModificationDate(issued(""))
	doc.SetAttachments([]gofpdf.Attachment{{Content: []byte("kept"), Filename: "a.txt"}})
	for i := range 7 {
		doc.AddPage()
		doc.SetFont("helvetica", "", 10)
		for k := range 40 {
			doc.Text(20, 10+5*float64(k), fmt.Sprintf("line %d of page %d", k, i))
		}
	}
	var out bytes.Buffer
	if err := doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// TestSqueezed takes the file apart again: every reference must point at its object,
// every stream be what it was, and the bytes the same on one processor.
func TestSqueezed(t *testing.T) {
	file := plainFile(t)
	got, err := squeezed(bytes.Clone(file))
	if err != nil {
		t.Fatal(err)
	}
	if len(got) > len(file)/2 {
		t.Errorf("%d bytes of %d are left", len(got), len(file))
	}
	_, was, _, err := takenApart(file)
	if err != nil {
		t.Fatal(err)
	}
	_, is, _, err := takenApart(got)
	if err != nil || len(is) != len(was) {
		t.Fatalf("%d objects of %d: %v", len(is), len(was), err)
	}
	pages := 0
	for i, o := range is {
		if head := fmt.Sprintf("%d 0 obj\n", o.number); !bytes.HasPrefix(o.bytes, []byte(head)) || o.number != was[i].number {
			t.Errorf("reference %d points at %.20q", o.number, o.bytes)
		}
		if bytes.Equal(o.bytes, was[i].bytes) {
			continue
		}
		pages++
		if a, b := stream(t, was[i].bytes), stream(t, o.bytes); a != b || !strings.Contains(a, "of page") {
			t.Errorf("object %d: the stream was %.40q and is %.40q", o.number, a, b)
		}
	}
	if pages != 7 {
		t.Errorf("%d streams are compressed, want 7", pages)
	}
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if again, err := squeezed(file); err != nil || !bytes.Equal(again, got) {
		t.Errorf("other bytes on one processor: %v", err)
	}
}

// stream returns the stream of an object, inflated where its head says so.
func stream(t *testing.T, object []byte) string {
	t.Helper()
	head := regexp.MustCompile(`/Length (\d+)>>\nstream\n`).FindSubmatchIndex(object)
	if head == nil {
		t.Fatalf("no stream in %.60q", object)
	}
	n, err := strconv.Atoi(string(object[head[2]:head[3]]))
	if err != nil {
		t.Fatal(err)
	}
	data := object[head[1] : head[1]+n]
	if !bytes.Contains(object[:head[1]], []byte("/FlateDecode")) {
		return string(data)
	}
	r, err := zlib.NewReader(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(r)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func TestSqueezedRefuses(t *testing.T) {
	file := string(plainFile(t))
	for name, bad := range map[string]string{
		"nothing":          "",
		"no references":    strings.ReplaceAll(file, "\nxref\n", "\nxxxx\n"),
		"a row too few":    strings.Replace(file, "0000000000 65535 f \n", "", 1),
		"no trailer":       strings.ReplaceAll(file, "trailer\n", "tr\n"),
		"a length too far": regexp.MustCompile(`<</Length \d+>>`).ReplaceAllString(file, "<</Length 99999999>>"),
	} {
		if _, err := squeezed([]byte(bad)); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
}
