package main

import (
	"bytes"
	"crypto"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math/big"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/jung-kurt/gofpdf"
	"software.sslmate.com/src/go-pkcs12"
)

// A person has a key in every form it can be given in.
type person struct {
	key         crypto.Signer
	certificate *x509.Certificate
	files       []string // --key and --certificate
	p12         string   // opened by "secret"
}

// newPerson makes somebody whose certificate holds until a time.
func newPerson(t *testing.T, name string, key crypto.Signer, until time.Time) person {
	t.Helper()
	form := &x509.Certificate{
		SerialNumber: big.NewInt(time.Now().UnixNano()), Subject: pkix.Name{CommonName: name},
		NotBefore: time.Now().AddDate(0, -1, 0), NotAfter: until, KeyUsage: x509.KeyUsageDigitalSignature,
	}
	der, err := x509.CreateCertificate(rand.Reader, form, form, key.Public(), key)
	if err != nil {
		t.Fatal(err)
	}
	p := person{key: key}
	if p.certificate, err = x509.ParseCertificate(der); err != nil {
		t.Fatal(err)
	}
	pkcs8, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		t.Fatal(err)
	}
	packed, err := pkcs12.Modern.Encode(key, p.certificate, nil, "secret")
	if err != nil {
		t.Fatal(err)
	}
	p.files = []string{
		"--key", write(t, "key.pem", pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: pkcs8})),
		"--certificate", write(t, "certificate.pem", pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der})),
	}
	p.p12 = write(t, "key.p12", packed)
	return p
}

func curve(t *testing.T, c elliptic.Curve) crypto.Signer {
	t.Helper()
	key, err := ecdsa.GenerateKey(c, rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	return key
}

func soon() time.Time { return time.Now().Add(time.Hour) }

// sealed writes a sheet of the starter tank with the seal only.
func sealed(t *testing.T) string {
	t.Helper()
	path := starter(t)
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	if status, _, says := call(t, "", "check", path, "--pdf", pdf); status == exitInput {
		t.Fatal(says)
	}
	return pdf
}

// signAs runs the command on a sheet.
func signAs(t *testing.T, pdf, role string, args ...string) (int, string, string) {
	t.Helper()
	return call(t, "", append([]string{"sign", pdf, "--as", role}, args...)...)
}

func contents(t *testing.T, path string) []byte {
	t.Helper()
	data, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return data
}

// foreign is a sound PDF file that is no sheet.
func foreign(t *testing.T) []byte {
	t.Helper()
	doc := gofpdf.New("P", "mm", "A4", "")
	doc.AddPage()
	var out bytes.Buffer
	if err := doc.Output(&out); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}
