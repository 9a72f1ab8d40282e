package sign

import (
	"bytes"
	"crypto/elliptic"
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"
)

// forge signs without looking at the file first, as somebody would who wants
// to get round what [Sign] refuses.
func forge(t *testing.T, pdf []byte, s *Signer, o Options, change func(*field)) []byte {
	t.Helper()
	if o.When.IsZero() {
		o.When = time.Now()
	}
	f, err := o.field(s)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(&f)
	}
	r, err := update(pdf, f)
	if err != nil {
		t.Fatal(err)
	}
	der, err := container(r.covered(), s)
	if err != nil {
		t.Fatal(err)
	}
	if err := r.fill(der); err != nil {
		t.Fatal(err)
	}
	return r.data
}

func TestForgedOrder(t *testing.T) {
	a, b := signer(t, "A. Name", ecKey(t, elliptic.P256())), signer(t, "B. Name", ecKey(t, elliptic.P256()))
	local, _, err := LocalIdentity(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	checked := mustSign(t, sheet(t), a, Options{Role: RoleChecked})
	now := time.Now()
	for _, row := range []struct {
		what string
		pdf  []byte
		want string // of the error; "" for none
	}{
		{"as it should be", forge(t, checked, b, Options{Role: RoleApproved}, nil), ""},
		{"one role twice", forge(t, checked, b, Options{Role: RoleChecked}, nil), "already signed as checked"},
		{"backwards", forge(t, checked, b, Options{Role: RolePrepared}, nil), "prepared comes before it"},
		{"a late seal", forge(t, checked, local, Options{Role: RoleSeal}, nil), "seal comes before it"},
		{"approval by the local identity", forge(t, checked, local, Options{Role: RoleSeal}, func(f *field) { f.role = RoleApproved }), "only seals"},
		{"another's fingerprint", forge(t, checked, b, Options{Role: RoleApproved}, func(f *field) { f.fingerprint = a.Fingerprint() }), "fingerprint that is shown"},
		{"another time than the signed one", forge(t, checked, b, Options{Role: RoleApproved, When: now.Add(-time.Hour)}, nil), "not the time that is shown"},
		{"time runs back", forge(t, forge(t, sheet(t), a, Options{Role: RolePrepared, When: now.Add(clocks - time.Minute)}, nil),
			b, Options{Role: RoleChecked, When: now.Add(time.Minute - clocks)}, nil), "before the one under it"},
		{"clocks differ", forge(t, forge(t, sheet(t), a, Options{Role: RolePrepared, When: now.Add(time.Minute)}, nil),
			b, Options{Role: RoleChecked, When: now}, nil), ""},
	} {
		_, err := Verify(row.pdf)
		switch {
		case row.want == "" && err != nil:
			t.Errorf("%s: %v", row.what, err)
		case row.want != "" && (err == nil || !strings.Contains(err.Error(), row.want)):
			t.Errorf("%s: %v, want %q", row.what, err, row.want)
		}
	}
}

func TestSameKey(t *testing.T) {
	key := ecKey(t, elliptic.P256())
	one, two := signer(t, "A. Name", key), signer(t, "B. Name", key) // two certificates of one key
	pdf := mustSign(t, sheet(t), one, Options{Role: RolePrepared})
	pdf = mustSign(t, pdf, two, Options{Role: RoleChecked})
	pdf = mustSign(t, pdf, signer(t, "C. Name", ecKey(t, elliptic.P256())), Options{Role: RoleApproved})
	r, err := Verify(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if got := fmt.Sprint(r.SameKey(0), r.SameKey(1), r.SameKey(2)); got != "prepared" {
		t.Errorf("signed with one key: %q", got)
	}
}

// TestAwaits asks at each state of a sheet who has to sign first; a seal waits for nobody
// and nobody for it.
func TestAwaits(t *testing.T) {
	file := Report{}
	for _, row := range []struct {
		signed                            string // next
		seal, prepared, checked, approved string // whom each awaits then
	}{
		{"", "", "", "prepared", "prepared"},
		{RoleSeal, "", "", "prepared", "prepared"},
		{RolePrepared, "", "", "", "checked"},
		{RoleChecked, "", "", "", ""},
	} {
		if row.signed != "" {
			file.Signatures = append(file.Signatures, Signature{Role: row.signed})
		}
		for role, want := range map[string]string{RoleSeal: row.seal, RolePrepared: row.prepared, RoleChecked: row.checked, RoleApproved: row.approved} {
			if got := file.Awaits(role); got != want {
				t.Errorf("after %q, %s awaits %q, want %q", row.signed, role, got, want)
			}
		}
	}
	if got := (&Report{Signatures: []Signature{{Role: RoleChecked}}}).Awaits(RoleApproved); got != RolePrepared {
		t.Errorf("checked alone: approved awaits %q", got)
	}
}

func TestLastPage(t *testing.T) {
	pdf := mustSign(t, sheet(t), signer(t, "A. Name", ecKey(t, elliptic.P256())), Options{
		Role: RolePrepared, Box: &Box{X: 10.125, Y: 20, Width: 100, Height: 50},
	})
	r, err := Verify(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if s := r.Signatures[0]; s.Box == nil || s.Box.Page != 2 || s.Pages != 2 || fmt.Sprintf("%.2f %.2f %.2f", s.Box.X, s.Box.Width, s.Box.Height) != "10.12 100.00 50.00" {
		t.Errorf("drawn at %+v of %d pages", s.Box, s.Pages)
	}
}

// TestHugeFiles has files that ask for more work than they have bytes.
func TestHugeFiles(t *testing.T) {
	chain := []byte("%PDF-1.7\n")
	for at := 0; len(chain) < 1<<20; {
		next := len(chain)
		chain = fmt.Appendf(chain, "xref\n0 0\ntrailer\n<< /Size 9 /Root 1 0 R /Prev %d ", at)
		at = next
		if next == len("%PDF-1.7\n") {
			chain = bytes.Replace(chain, []byte("/Prev 0 "), nil, 1)
		}
		chain = append(chain, ">>\n"...)
	}
	last := bytes.LastIndex(chain, []byte("xref"))
	kids := bytes.Repeat([]byte("2 0 R "), 1<<19)
	for what, row := range map[string]struct {
		pdf  []byte
		want string
	}{
		"sections": {fmt.Appendf(bytes.Clone(chain), "startxref\n%d\n%%%%EOF\n", last), "updates"},
		"pages":    {withTree(fmt.Sprintf("<< /Kids [%s] >>", kids)), "pages, must be"},
		"files":    {withTree("<< /Kids [2 0 R] >>", fmt.Sprintf("/Names << /EmbeddedFiles << /Names [%s] >> >>", kids)), "files are embedded"},
	} {
		start := time.Now()
		_, err := Verify(row.pdf)
		if err == nil || err == ErrNotSigned {
			if d, e := read(row.pdf); e == nil {
				_, err = d.pages()
			}
		}
		if err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v", what, err)
		}
		if took := time.Since(start); took > 5*time.Second {
			t.Errorf("%s: %v", what, took)
		}
	}
}

// withTree is a small file with a page tree of its own.
func withTree(tree string, catalog ...string) []byte {
	pdf := []byte("%PDF-1.7\n")
	one := len(pdf)
	pdf = fmt.Appendf(pdf, "1 0 obj\n<< /Pages 2 0 R %s >>\nendobj\n", strings.Join(catalog, ""))
	two := len(pdf)
	pdf = fmt.Appendf(pdf, "2 0 obj\n%s\nendobj\n", tree)
	start := len(pdf)
	return fmt.Appendf(pdf, "xref\n0 3\n0000000000 65535 f \n%010d 00000 n \n%010d 00000 n \ntrailer\n<< /Size 3 /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n",
		one, two, start)
}

// FuzzTampered puts other bytes into a signed sheet. What is accepted must be
// the sheet itself, or as it was before a later signature.
func FuzzTampered(f *testing.F) {
	pdf := signedThrice(f)
	report, err := Verify(pdf)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(uint32(100), uint16(1), []byte("x"))
	f.Add(uint32(len(pdf)), uint16(0), []byte("\n"))
	f.Add(uint32(len(pdf)-20), uint16(20), []byte{})
	f.Add(uint32(bytes.Index(pdf, []byte("/Contents <"))+300), uint16(2), []byte("00"))
	f.Fuzz(func(t *testing.T, at uint32, cut uint16, with []byte) {
		from := int(at) % (len(pdf) + 1)
		to := min(len(pdf), from+int(cut))
		data := append(append(bytes.Clone(pdf[:from]), with...), pdf[to:]...)
		if _, err := Verify(data); err != nil {
			return
		}
		for _, s := range report.Signatures {
			if bytes.Equal(data, pdf[:s.Length]) {
				return
			}
		}
		t.Errorf("bytes %d to %d replaced by %q: accepted", from, to, with)
	})
}

// TestLargeAttachment has the log of a long test read, and nothing that unpacks into more
// than the largest.
func TestLargeAttachment(t *testing.T) {
	for size, want := range map[int]string{11 << 20: ErrNotSigned.Error(), 32 << 20: ErrNotSigned.Error(), 32<<20 + 1: "the attachments are too large"} {
		doc := gofpdf.New("P", "mm", "A4", "")
		doc.AddPage()
		doc.SetAttachments([]gofpdf.Attachment{{Content: make([]byte, size), Filename: "log.csv"}})
		var out bytes.Buffer
		if err := doc.Output(&out); err != nil {
			t.Fatal(err)
		}
		if _, err := Verify(out.Bytes()); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%d bytes: %v, want %q", size, err, want)
		}
	}
}
