package sign

import (
	"crypto"
	"crypto/ed25519"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"encoding/asn1"
	"encoding/pem"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"

	"software.sslmate.com/src/go-pkcs12"
)

func pemOf(t *testing.T, kind string, der []byte, err error) []byte {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return pem.EncodeToMemory(&pem.Block{Type: kind, Bytes: der})
}

func TestLoadPEM(t *testing.T) {
	ec, long := ecKey(t, elliptic.P256()), rsaKey(t, 2048)
	certificate := func(k crypto.Signer) []byte {
		return pemOf(t, "CERTIFICATE", issue(t, "A. Name", k, nil, nil, yesterday()).Raw, nil)
	}
	ecCert := certificate(ec)
	der, err := x509.MarshalECPrivateKey(ec)
	sec1 := pemOf(t, "EC PRIVATE KEY", der, err)
	der, err = x509.MarshalPKCS8PrivateKey(long)
	pkcs8 := pemOf(t, "PRIVATE KEY", der, err)
	_, ed, err := ed25519.GenerateKey(rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	der, err = x509.MarshalPKCS8PrivateKey(ed)
	edKey := pemOf(t, "PRIVATE KEY", der, err)
	der, err = x509.MarshalECPrivateKey(ecKey(t, elliptic.P224()))
	small := pemOf(t, "EC PRIVATE KEY", der, err)
	weak := pemOf(t, "RSA PRIVATE KEY", x509.MarshalPKCS1PrivateKey(rsaKey(t, 1024)), nil)
	for _, row := range []struct {
		what      string
		key, cert []byte
		want      string // of the error; "" for none
	}{
		{"SEC 1", sec1, ecCert, ""},
		{"PKCS#8", pkcs8, certificate(long), ""},
		{"PKCS#1", pemOf(t, "RSA PRIVATE KEY", x509.MarshalPKCS1PrivateKey(long), nil), certificate(long), ""},
		{"another's certificate", pkcs8, ecCert, "does not belong"},
		{"Ed25519", edKey, certificate(ed), "use RSA or ECDSA"},
		{"short RSA", weak, ecCert, "too short"},
		{"short curve", small, ecCert, "P-256 or longer"},
		{"no key", ecCert, ecCert, "no private key"},
		{"no certificate", sec1, sec1, "no certificate"},
		{"encrypted", pemOf(t, "ENCRYPTED PRIVATE KEY", []byte{0}, nil), ecCert, "PKCS#12"},
		{"broken key", pemOf(t, "PRIVATE KEY", []byte{0}, nil), ecCert, "cannot be read"},
		{"broken certificate", sec1, pemOf(t, "CERTIFICATE", []byte{0}, nil), "cannot be read"},
	} {
		s, err := LoadPEM(row.key, row.cert)
		switch {
		case row.want == "" && (err != nil || s.Local):
			t.Errorf("%s: %v", row.what, err)
		case row.want != "" && (err == nil || !strings.Contains(err.Error(), row.want)):
			t.Errorf("%s: %v, want %q", row.what, err, row.want)
		}
	}
}

func TestLoadPKCS12(t *testing.T) {
	root, leaf := ecKey(t, elliptic.P256()), ecKey(t, elliptic.P256())
	top := issue(t, "Root", root, nil, nil, yesterday())
	c := issue(t, "Leaf", leaf, top, root, yesterday())
	data, err := pkcs12.Modern.Encode(leaf, c, []*x509.Certificate{top}, "secret")
	if err != nil {
		t.Fatal(err)
	}
	s, err := LoadPKCS12(data, "secret")
	if err != nil {
		t.Fatal(err)
	}
	pdf := mustSign(t, sheet(t), s, Options{Role: RoleApproved})
	report, err := Verify(pdf)
	if err != nil || report.Signatures[0].SelfMade || len(report.Signatures[0].Chain) != 1 {
		t.Errorf("signed with PKCS#12: %v", err)
	}
	if _, err := LoadPKCS12(data, "guess"); err == nil || !strings.Contains(err.Error(), "password") {
		t.Errorf("wrong password: %v", err)
	}
	if _, err := LoadPKCS12([]byte("x"), ""); err == nil {
		t.Error("no PKCS#12 at all is taken")
	}
}

func TestKeyUsage(t *testing.T) {
	key := ecKey(t, elliptic.P256())
	c := issue(t, "A. Name", key, nil, nil, yesterday())
	c.KeyUsage = x509.KeyUsageKeyAgreement
	if _, err := newSigner(key, c, nil); err == nil {
		t.Error("a certificate that does not allow signing is taken")
	}
	for _, row := range []struct {
		known []x509.ExtKeyUsage
		other []asn1.ObjectIdentifier
		taken bool
	}{
		{nil, nil, true},
		{[]x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth, x509.ExtKeyUsageTimeStamping}, nil, false},
		{[]x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth, x509.ExtKeyUsageClientAuth}, nil, true},
		{nil, []asn1.ObjectIdentifier{{1, 3, 6, 1, 5, 5, 7, 3, 36}}, true},
		{nil, []asn1.ObjectIdentifier{{1, 2, 3}}, false},
	} {
		c.KeyUsage, c.ExtKeyUsage, c.UnknownExtKeyUsage = 0, row.known, row.other
		if _, err := newSigner(key, c, nil); (err == nil) != row.taken {
			t.Errorf("purposes %v %v: %v", row.known, row.other, err)
		}
	}
}

func TestLocalIdentity(t *testing.T) {
	dir := filepath.Join(t.TempDir(), "deep", "folder")
	first, created, err := LocalIdentity(dir)
	if err != nil || !created || !first.Local {
		t.Fatalf("first use: created %v, %v", created, err)
	}
	again, created, err := LocalIdentity(dir)
	if err != nil || created || again.Fingerprint() != first.Fingerprint() {
		t.Fatalf("second use: created %v, %v", created, err)
	}
	path := filepath.Join(dir, identityFile)
	if left, _ := filepath.Glob(filepath.Join(dir, ".identity-*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
	if runtime.GOOS != "windows" {
		if info, err := os.Stat(path); err != nil || info.Mode().Perm() != 0o600 {
			t.Errorf("mode of the key file: %v, %v", info.Mode(), err)
		}
		if err := os.Chmod(path, 0o644); err != nil {
			t.Fatal(err)
		}
		if _, _, err := LocalIdentity(dir); err == nil || !strings.Contains(err.Error(), "others may read") {
			t.Errorf("a key that others can read: %v", err)
		}
		if err := os.Chmod(path, 0o600); err != nil {
			t.Fatal(err)
		}
	}
	old, err := makeIdentity(time.Now().AddDate(-6, 0, 0))
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, old, 0o600); err != nil {
		t.Fatal(err)
	}
	if _, _, err := LocalIdentity(dir); err == nil || !strings.Contains(err.Error(), "expired") {
		t.Errorf("an expired identity: %v", err)
	}
}

// TestLocalIdentityAtOnce starts several first runs at the same time; all must
// end with one identity.
func TestLocalIdentityAtOnce(t *testing.T) {
	dir := t.TempDir()
	prints := make(chan string)
	for range 8 {
		go func() {
			s, _, err := LocalIdentity(dir)
			if err != nil {
				prints <- err.Error()
				return
			}
			prints <- s.Fingerprint()
		}()
	}
	one := <-prints
	for range 7 {
		if p := <-prints; p != one {
			t.Errorf("two identities: %s and %s", one, p)
		}
	}
}

func TestFolder(t *testing.T) {
	t.Setenv(FolderVariable, "here")
	if dir, err := Folder(); dir != "here" || err != nil {
		t.Errorf("folder %q, %v", dir, err)
	}
	t.Setenv(FolderVariable, "")
	t.Setenv("XDG_CONFIG_HOME", "/config")
	t.Setenv("HOME", "/home")
	if dir, err := Folder(); filepath.Base(dir) != "proofsheet" || err != nil {
		t.Errorf("folder %q, %v", dir, err)
	}
}

// TestNoPKCS12 has a file of another kind, which is said in plain words.
func TestNoPKCS12(t *testing.T) {
	for _, data := range []string{"", "[sheet]\n", "-----BEGIN CERTIFICATE-----\nAAAA\n-----END CERTIFICATE-----\n", "\x30\x82\x0a\x00"} {
		if _, err := LoadPKCS12([]byte(data), "word"); err == nil || err.Error() != "this is no PKCS#12 file, or it is cut off" {
			t.Errorf("%q: %v", data, err)
		}
	}
}
