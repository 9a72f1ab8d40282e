package main

import (
	"bytes"
	"crypto/elliptic"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"time"

	"proofsheet/cmd/proofsheet/internal/tank"
	"proofsheet/report"
	"proofsheet/report/pdf"
	"proofsheet/report/sign"
)

// outside runs an independent program on a sheet and returns what it says.
// Where the program is missing the test is skipped, which is a failure in
// continuous integration.
func outside(t *testing.T, name string, args ...string) (string, error) {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is missing, and verify is to be compared with it", name)
		}
		t.Skipf("%s is not installed: verify was not compared with a second program", name)
	}
	out, err := exec.Command(name, args...).CombinedOutput()
	return string(out), err
}

// within returns the offset of byte n of the stream of the object whose
// dictionary holds a mark.
func within(t *testing.T, sheet []byte, mark string, n int) int {
	t.Helper()
	at := bytes.Index(sheet, []byte(mark))
	if at < 0 {
		t.Fatalf("no %s in the sheet", mark)
	}
	begin := bytes.Index(sheet[at:], []byte("stream\n"))
	if begin < 0 {
		t.Fatalf("no stream after %s", mark)
	}
	return at + begin + len("stream\n") + n
}

// flipped returns a copy with one bit of one byte turned.
func flipped(data []byte, at int) []byte {
	out := bytes.Clone(data)
	out[at] ^= 1
	return out
}

// flight returns the sheet of a real tank, computed by the program itself, and
// the same with a seal and the signatures of two people.
func flight(t *testing.T) (s *report.Sheet, drawn, sealed, twice []byte) {
	t.Helper()
	t.Setenv(sign.FolderVariable, filepath.Join(t.TempDir(), "identity"))
	path := filepath.Join("..", "..", "testdata", "tanks", "demo.toml")
	in, err := tank.Read(path, contents(t, path), func(name string) ([]byte, error) { return os.ReadFile(filepath.Join(filepath.Dir(path), name)) })
	if err != nil {
		t.Fatal(err)
	}
	if s, err = assessTank(in); err != nil {
		t.Fatal(err)
	}
	if drawn, err = pdf.Write(s); err != nil {
		t.Fatal(err)
	}
	folder, err := sign.Folder()
	if err != nil {
		t.Fatal(err)
	}
	local, _, err := sign.LocalIdentity(folder)
	if err != nil {
		t.Fatal(err)
	}
	if sealed, err = sign.Sign(drawn, local, sign.Options{Role: sign.RoleSeal, When: time.Now()}); err != nil {
		t.Fatal(err)
	}
	file := write(t, "sheet.pdf", sealed)
	for _, row := range [][2]string{{"prepared", "A. Name"}, {"checked", "B. Name"}} {
		if status, _, says := signAs(t, file, row[0], newPerson(t, row[1], curve(t, elliptic.P384()), soon()).files...); status != exitHolds {
			t.Fatal(says)
		}
	}
	return s, drawn, sealed, contents(t, file)
}

// TestCorpus has good and tampered sheets judged by verify and by independent
// programs. Where the others are content and verify is not, the row says why.
func TestCorpus(t *testing.T) {
	s, drawn, sealed, twice := flight(t)
	hole := bytes.LastIndex(twice, []byte("/Contents <")) + len("/Contents <")
	first := bytes.Index(twice, []byte("/Contents <")) + len("/Contents <")
	page := regexp.MustCompile(`/Contents (\d+) 0 R`).FindSubmatch(twice)
	zeroed := bytes.Clone(twice)
	copy(zeroed[hole:], bytes.Repeat([]byte("0"), 4000))
	spliced := append(bytes.Clone(drawn), twice[len(sealed):]...)
	attached := within(t, twice, "/Type /EmbeddedFile", 0)
	swapped := bytes.Clone(twice)
	copy(swapped[attached:], bytes.Repeat([]byte{0}, 200))
	update := "\n1 0 obj\n<< >>\nendobj\nxref\n1 1\n%010d 00000 n \ntrailer\n<< /Size 9 /Root 1 0 R /Prev 9 >>\nstartxref\n%d\n%%%%EOF\n"
	for _, row := range []struct {
		what         string
		pdf          []byte
		holds, other bool   // by verify; by pdfsig
		want         string // of what verify prints
	}{
		{"sealed", sealed, true, true, `seal by "`},
		{"two people", twice, true, true, `checked by "B. Name"`},
		{"the last signature cut off, which leaves the sheet as it was before", sealed, true, true, "not signed   as prepared, checked, approved"},
		{"flipped in the text", flipped(twice, within(t, twice, "\n"+string(page[1])+" 0 obj", 40)), false, false, "changed since it was signed"},
		{"flipped in a font", flipped(twice, within(t, twice, "/Length1 ", 4000)), false, false, "changed since it was signed"},
		{"flipped in the attachment", flipped(twice, attached+40), false, false, "changed since it was signed"},
		{"flipped in the last signature", flipped(twice, hole+2*200+1), false, false, "sign"},
		{"flipped in the seal under it", flipped(twice, first+2*200+1), false, false, "sign"},
		{"flipped in the name that is shown", flipped(twice, bytes.LastIndex(twice, []byte("/Name <FEFF"))+14), false, false, "something other than a signature"},
		{"flipped in the last trailer", flipped(twice, bytes.LastIndex(twice, []byte("/Size "))+6), false, false, ""},
		{"appended byte", append(bytes.Clone(twice), '\n'), false, false, "does not end as a PDF file must"},
		{"appended update", fmt.Appendf(bytes.Clone(twice), update, len(twice)+1, len(twice)+23), false, false, ""},
		{"a signature emptied", zeroed, false, false, "sign"},
		{"the seal taken out from under the signatures", spliced, false, false, ""},
		{"the attachment blotted out", swapped, false, false, "changed since it was signed"},
		{"unsigned", drawn, false, false, "the file is not signed"},
		{"another tank file under numbers that are signed by somebody: the signature is genuine", otherTank(t, s), false, true, "is not the one that was computed"},
		{"other numbers, signed by somebody: the signature is genuine", otherNumbers(t, s), false, true, "in its data quantities.volume.value was"},
		{"a signature drawn over the first page by its signer: it is genuine", misplaced(t, sealed), false, true, "not drawn in its frame"},
	} {
		t.Run(row.what, func(t *testing.T) {
			file := write(t, "sheet.pdf", row.pdf)
			status, out, _ := call(t, "", "verify", file)
			if (status == exitHolds) != row.holds || strings.Contains(out, "\nholds: ") != row.holds || !strings.Contains(flat(out), flat(row.want)) {
				t.Errorf("verify: status %d: %s", status, out)
			}
			if row.holds {
				if says, err := outside(t, "qpdf", "--check", file); err != nil || strings.Contains(strings.ToLower(says), "warning") {
					t.Errorf("qpdf: %v: %s", err, says)
				}
			}
			says, _ := outside(t, "pdfsig", "-nocert", file)
			all, valid := strings.Count(says, "Signature #"), strings.Count(says, "Signature is Valid")
			content := all > 0 && all == valid && strings.Contains(says, "Total document signed")
			if content != row.other {
				t.Errorf("pdfsig is content: %v, want %v; verify: status %d: %s\n%s", content, row.other, status, out, says)
			}
		})
	}
}

// byStranger signs a sheet as prepared with a key of its own.
func byStranger(t *testing.T, data []byte, err error, box *sign.Box) []byte {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	p := newPerson(t, "A. Stranger", curve(t, elliptic.P256()), soon())
	signer, err := sign.LoadPEM(contents(t, p.files[1]), contents(t, p.files[3]))
	if err != nil {
		t.Fatal(err)
	}
	if data, err = sign.Sign(data, signer, sign.Options{Role: sign.RolePrepared, When: time.Now(), Box: box}); err != nil {
		t.Fatal(err)
	}
	return data
}

func otherTank(t *testing.T, s *report.Sheet) []byte {
	other := *s
	other.Files = append([]report.Attachment{}, s.Files...)
	other.Files[0].Data = bytes.Replace(other.Files[0].Data, []byte("bar"), []byte("Bar"), 1)
	data, err := pdf.Write(&other)
	return byStranger(t, data, err, nil)
}

func otherNumbers(t *testing.T, s *report.Sheet) []byte {
	other := *s
	other.Quantities = append([]report.NamedQuantity{}, s.Quantities...)
	other.Quantities[0].Value *= 1.001
	data, err := pdf.Write(&other)
	return byStranger(t, data, err, nil)
}

func misplaced(t *testing.T, sealed []byte) []byte {
	return byStranger(t, sealed, nil, &sign.Box{Page: 1, X: 40, Y: 700, Width: 300, Height: 80})
}

// TestAttachmentsByQPDF has the embedded files taken out by a second program.
func TestAttachmentsByQPDF(t *testing.T) {
	s, _, _, twice := flight(t)
	r, err := sign.Verify(twice)
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Attachments) != len(s.Files)+1 {
		t.Fatalf("%d files are embedded", len(r.Attachments))
	}
	file := write(t, "sheet.pdf", twice)
	for i, a := range r.Attachments {
		out, err := outside(t, "qpdf", "--show-attachment=Attachement"+strconv.Itoa(i+1), file)
		if err != nil || out != string(a.Data) {
			t.Errorf("%s: %v, %d of %d bytes", a.Name, err, len(out), len(a.Data))
		}
	}
}

// TestForeignFiles has a sheet rewritten by another program: the pages are the
// same, the file is not the one that was signed.
func TestForeignFiles(t *testing.T) {
	_, _, sealed, _ := flight(t)
	file := write(t, "sheet.pdf", sealed)
	for _, args := range []string{
		"--object-streams=generate", "--linearize", "--encrypt u o 256 --", "--qdf --object-streams=disable", "--stream-data=uncompress",
	} {
		to := filepath.Join(t.TempDir(), "other.pdf")
		if says, err := outside(t, "qpdf", append(strings.Fields(args), file, to)...); err != nil {
			t.Errorf("qpdf %s: %v: %s", args, err, says)
			continue
		}
		status, out, _ := call(t, "", "verify", to)
		if want := "does not hold: the cross-reference table cannot be read: another program wrote"; status != exitFails || !strings.HasPrefix(out, want) {
			t.Errorf("%s: status %d: %s", args, status, out)
		}
	}
}
