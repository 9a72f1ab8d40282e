package sign

import (
	"bytes"
	"crypto"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/rsa"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"math/big"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"
)

var attached = []Attachment{
	{Name: "tank.toml", Data: []byte("[pressure]\nmeop = \"25 bar\"\n")},
	{Name: `flug (1) \ Höhe.csv`, Data: []byte("time,level\n0,1\n")},
}

// sheet draws a small PDF with links on its pages and two attached files.
func sheet(t testing.TB) []byte {
	t.Helper()
	pdf := gofpdf.New("P", "mm", "A4", "")
	pdf.SetCatalogSort(true)
	pdf.SetCreationDate(time.Date(2026, 1, 31, 0, 0, 0, 0, time.UTC))
	pdf.SetModificationDate(time.Date(2026, 1, 31, 0, 0, 0, 0, time.UTC))
	pdf.SetFont("Helvetica", "", 11)
	for range 2 {
		pdf.AddPage()
		pdf.Bookmark("page", 0, -1)
		pdf.CellFormat(60, 8, "a link (1)", "1", 0, "", false, 0, "https://example.org/>>(a)")
	}
	var files []gofpdf.Attachment
	for _, a := range attached {
		files = append(files, gofpdf.Attachment{Content: a.Data, Filename: a.Name, Description: "input"})
	}
	pdf.SetAttachments(files)
	var b bytes.Buffer
	if err := pdf.Output(&b); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// issue makes a certificate for a key, signed by a parent or by itself.
func issue(t testing.TB, name string, key crypto.Signer, parent *x509.Certificate, by crypto.Signer, from time.Time) *x509.Certificate {
	t.Helper()
	form := &x509.Certificate{
		SerialNumber: big.NewInt(time.Now().UnixNano()), Subject: pkix.Name{CommonName: name},
		NotBefore: from, NotAfter: from.AddDate(1, 0, 0), KeyUsage: x509.KeyUsageDigitalSignature,
	}
	if parent == nil {
		form.IsCA, form.BasicConstraintsValid = true, true
		form.KeyUsage |= x509.KeyUsageCertSign
		parent, by = form, key
	}
	der, err := x509.CreateCertificate(rand.Reader, form, parent, key.Public(), by)
	if err != nil {
		t.Fatal(err)
	}
	c, err := x509.ParseCertificate(der)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func ecKey(t testing.TB, curve elliptic.Curve) *ecdsa.PrivateKey {
	t.Helper()
	key, err := ecdsa.GenerateKey(curve, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func yesterday() time.Time { return time.Now().Add(-24 * time.Hour) }

func signer(t testing.TB, name string, key crypto.Signer) *Signer {
	t.Helper()
	s, err := newSigner(key, issue(t, name, key, nil, nil, yesterday()), nil)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func mustSign(t testing.TB, pdf []byte, s *Signer, o Options) []byte {
	t.Helper()
	o.When = time.Now()
	out, err := Sign(pdf, s, o)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(out, pdf) {
		t.Fatal("signing changed what was already in the file")
	}
	return out
}

// outside runs an independent program on a file. It is skipped where the
// program is missing, which is a failure in continuous integration.
func outside(t *testing.T, pdf []byte, name string, args ...string) string {
	t.Helper()
	if _, err := exec.LookPath(name); err != nil {
		if os.Getenv("CI") == "true" {
			t.Fatalf("%s is missing, and the signatures are to be checked by it", name)
		}
		t.Skipf("%s is not installed: the signature was not checked by a second program", name)
	}
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	if err := os.WriteFile(file, pdf, 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(name, append(args, file)...).CombinedOutput()
	if err != nil {
		t.Errorf("%s: %v\n%s", name, err, out)
	}
	return string(out)
}

func TestSignersOfEachKind(t *testing.T) {
	root := ecKey(t, elliptic.P256())
	top := issue(t, "Root", root, nil, nil, yesterday())
	leaf := ecKey(t, elliptic.P384())
	chained, err := newSigner(leaf, issue(t, "Leaf", leaf, top, root, yesterday()), []*x509.Certificate{top})
	if err != nil {
		t.Fatal(err)
	}
	short, long := rsaKey(t, 2048), rsaKey(t, 4096)
	for name, s := range map[string]*Signer{
		"ECDSA P-256": signer(t, "A. Name", ecKey(t, elliptic.P256())),
		"ECDSA P-384": signer(t, "A. Name", ecKey(t, elliptic.P384())),
		"ECDSA P-521": signer(t, "A. Name", ecKey(t, elliptic.P521())),
		"with chain":  chained,
		"RSA 2048":    signer(t, "A. Name", short),
		"RSA 4096":    signer(t, "A. Name", long),
	} {
		t.Run(name, func(t *testing.T) {
			pdf := mustSign(t, sheet(t), s, Options{Role: RolePrepared})
			says := outside(t, pdf, "pdfsig")
			if !strings.Contains(says, "Signature is Valid") || !strings.Contains(says, "Total document signed") {
				t.Errorf("pdfsig does not accept the signature:\n%s", says)
			}
			byOpenSSL(t, pdf)
		})
	}
}

func rsaKey(t testing.TB, bits int) *rsa.PrivateKey {
	t.Helper()
	key, err := rsa.GenerateKey(rand.Reader, bits)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

// signedThrice is a sheet with a seal, a drawn signature on a page with a
// link, and a third one whose name needs Unicode.
func signedThrice(t testing.TB) []byte {
	local, _, err := LocalIdentity(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	pdf := mustSign(t, sheet(t), local, Options{Role: RoleSeal})
	pdf = mustSign(t, pdf, signer(t, "A. Name", ecKey(t, elliptic.P256())), Options{
		Role: RolePrepared, Reason: "as calculated (1)", Box: &Box{Page: 2, X: 100, Y: 100, Width: 180, Height: 40},
	})
	return mustSign(t, pdf, signer(t, "B", ecKey(t, elliptic.P256())), Options{Role: RoleChecked, Name: "Ž. Örn 🙂"})
}

func TestThreeSignatures(t *testing.T) {
	pdf := signedThrice(t)
	report, err := Verify(pdf)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, s := range report.Signatures {
		got = append(got, s.Role+" by "+s.Name+": "+s.Reason)
		if !s.SelfMade || len(s.Fingerprint) != 95 {
			t.Errorf("%s: self-made %v, fingerprint %q", s.Role, s.SelfMade, s.Fingerprint)
		}
	}
	want := "seal by " + LocalName + ": \nprepared by A. Name: as calculated (1)\nchecked by Ž. Örn 🙂: "
	if strings.Join(got, "\n") != want {
		t.Errorf("signatures:\n%s\nwant\n%s", strings.Join(got, "\n"), want)
	}
	if !bytes.Equal(report.Base, sheet(t)) {
		t.Error("the base is not the sheet as it was before signing")
	}
	if len(report.Attachments) != len(attached) {
		t.Fatalf("%d attachments, want %d", len(report.Attachments), len(attached))
	}
	for i, a := range report.Attachments {
		if a.Name != attached[i].Name || !bytes.Equal(a.Data, attached[i].Data) {
			t.Errorf("attachment %q: %q", a.Name, a.Data)
		}
	}
	if n := bytes.Count(pdf, []byte("https://example.org/")); n < 2 {
		t.Error("the links are gone")
	}
}

func TestThreeSignaturesByOtherPrograms(t *testing.T) {
	pdf := signedThrice(t)
	t.Run("pdfsig", func(t *testing.T) {
		says := outside(t, pdf, "pdfsig")
		if n := strings.Count(says, "Signature is Valid"); n != 3 {
			t.Errorf("%d of 3 signatures are valid:\n%s", n, says)
		}
		if !strings.Contains(says, "Total document signed") {
			t.Errorf("the last signature does not cover the file:\n%s", says)
		}
	})
	t.Run("qpdf", func(t *testing.T) {
		if says := outside(t, pdf, "qpdf", "--check"); strings.Contains(strings.ToLower(says), "warning") {
			t.Errorf("qpdf warns:\n%s", says)
		}
	})
}

// byOpenSSL has the container in the file checked by a second program, over the
// bytes that the file's own byte range names.
func byOpenSSL(t *testing.T, pdf []byte) {
	t.Helper()
	m := regexp.MustCompile(`/ByteRange \[0 +(\d+) +(\d+) +(\d+)\]`).FindSubmatch(pdf)
	var n [3]int
	for i := range n {
		n[i], _ = strconv.Atoi(string(m[1+i]))
	}
	if n[1]+n[2] != len(pdf) {
		t.Errorf("the byte range ends at %d of %d bytes", n[1]+n[2], len(pdf))
	}
	der, err := holeContent(pdf[n[0]+1 : n[1]-1])
	if err != nil {
		t.Fatal(err)
	}
	report, err := Verify(pdf)
	if err != nil {
		t.Fatal(err)
	}
	top := report.Signatures[0].Certificate
	for _, c := range report.Signatures[0].Chain {
		top = c
	}
	dir := t.TempDir()
	content, ca := filepath.Join(dir, "content"), filepath.Join(dir, "ca.pem")
	for file, data := range map[string][]byte{
		content: slices.Concat(pdf[:n[0]], pdf[n[1]:]),
		ca:      pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: top.Raw}),
	} {
		if err := os.WriteFile(file, data, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	says := outside(t, der, "openssl", "cms", "-verify", "-binary", "-inform", "DER", "-content", content,
		"-CAfile", ca, "-purpose", "any", "-out", os.DevNull, "-in") // the file comes last
	if !strings.Contains(says, "successful") {
		t.Errorf("openssl does not accept the container:\n%s", says)
	}
}

func TestSignRefuses(t *testing.T) {
	local, _, err := LocalIdentity(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	own, lookalike := signer(t, "A. Name", ecKey(t, elliptic.P256())), signer(t, "Proofsheet  local identity", ecKey(t, elliptic.P256()))
	pdf := sheet(t)
	now := time.Now()
	for _, row := range []struct {
		what string
		pdf  []byte
		s    *Signer
		o    Options
		want string
	}{
		{"a role that is none", pdf, own, Options{Role: "owner", When: now}, "not a role"},
		{"approval by the seal", pdf, local, Options{Role: RoleApproved, When: now}, "only seals"},
		{"no time", pdf, own, Options{Role: RoleChecked}, "time of signing"},
		{"expired", pdf, own, Options{Role: RoleChecked, When: now.AddDate(2, 0, 0)}, "expired"},
		{"not valid yet", pdf, own, Options{Role: RoleChecked, When: now.AddDate(-2, 0, 0)}, "not valid before"},
		{"page", pdf, own, Options{Role: RoleChecked, When: now, Box: &Box{Page: 3, Width: 1, Height: 1}}, "no page 3"},
		{"box", pdf, own, Options{Role: RoleChecked, When: now, Box: &Box{Page: 1, Width: -1, Height: 1}}, "no size"},
		{"long name", pdf, own, Options{Role: RoleChecked, When: now, Name: strings.Repeat("n", 201)}, "at most 200"},
		{"text", []byte("hello"), own, Options{Role: RoleChecked, When: now}, "not a PDF"},
		{"a clock that is wrong", pdf, own, Options{Role: RoleChecked, When: now.Add(time.Hour)}, "not the time that is shown"},
		{"what reads as the local identity", pdf, lookalike, Options{Role: RolePrepared, When: now}, "only seals"},
		{"the local identity's key", pdf, &Signer{Certificate: local.Certificate, key: local.key}, Options{Role: RoleChecked, When: now}, "only seals"},
		{"backwards", mustSign(t, pdf, own, Options{Role: RoleChecked}), own, Options{Role: RolePrepared, When: now}, "prepared comes before it"},
		{"twice", mustSign(t, pdf, own, Options{Role: RoleChecked}), own, Options{Role: RoleChecked, When: now}, "already signed as checked"},
	} {
		if _, err := Sign(row.pdf, row.s, row.o); err == nil || !strings.Contains(err.Error(), row.want) {
			t.Errorf("%s: %v, want %q", row.what, err, row.want)
		}
	}
}

func TestUnsigned(t *testing.T) {
	report, err := Verify(sheet(t))
	if !errors.Is(err, ErrNotSigned) || len(report.Attachments) != 2 {
		t.Errorf("unsigned sheet: %v, %d attachments", err, len(report.Attachments))
	}
}
