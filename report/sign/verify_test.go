package sign

import (
	"bytes"
	"crypto"
	"crypto/elliptic"
	"errors"
	"strings"
	"testing"
	"time"
)

// TestEveryByteCounts flips a bit of every byte of a signed sheet, and in what
// the signature adds a second one, which turns hexadecimal digits into their
// capitals.
func TestEveryByteCounts(t *testing.T) {
	base := sheet(t)
	pdf := mustSign(t, base, signer(t, "A. Name", ecKey(t, elliptic.P256())), Options{Role: RolePrepared})
	for flip, from := range map[byte]int{0x01: 0, 0x20: len(base)} {
		for i := from; i < len(pdf); i++ {
			pdf[i] ^= flip
			if _, err := Verify(pdf); err == nil {
				t.Errorf("byte %d of %d turned by %#x is not noticed (%q)", i, len(pdf), flip, pdf[max(0, i-20):min(len(pdf), i+20)])
			}
			pdf[i] ^= flip
		}
	}
	if _, err := Verify(pdf); err != nil {
		t.Errorf("the sheet itself: %v", err)
	}
}

// TestEarlierSignatureCounts flips bytes that only an earlier signature's own
// hole holds, and removes the last signature.
func TestEarlierSignatureCounts(t *testing.T) {
	pdf := signedThrice(t)
	report, err := Verify(pdf)
	if err != nil {
		t.Fatal(err)
	}
	first := report.Signatures[0].Length
	if r, err := Verify(pdf[:first]); err != nil || len(r.Signatures) != 1 {
		t.Errorf("the sheet as first signed: %v", err)
	}
	at := bytes.Index(pdf, []byte("/Contents <30")) + len("/Contents <30") + 400
	pdf[at] ^= 1
	if _, err := Verify(pdf); err == nil {
		t.Error("a flipped digit in an earlier signature is not noticed")
	}
}

func TestAddedBytes(t *testing.T) {
	s := signer(t, "A. Name", ecKey(t, elliptic.P256()))
	pdf := mustSign(t, sheet(t), s, Options{Role: RolePrepared})
	for _, more := range []string{"\n", " ", "x", "%%EOF\n", "\n%%EOF\n", "startxref\n0\n%%EOF\n", "1 0 obj\n<< >>\nendobj\n" + string(pdf[len(pdf)-30:])} {
		if _, err := Verify(append(bytes.Clone(pdf), more...)); err == nil {
			t.Errorf("%q added after the end is not noticed", more)
		}
	}
	for n := range len(pdf) - 1 {
		if n%97 == 0 || n > len(pdf)-50 {
			if _, err := Verify(pdf[:n]); err == nil {
				t.Errorf("a file cut to %d of %d bytes is not noticed", n, len(pdf))
			}
		}
	}
}

// TestChangeBetweenSignatures adds a page's new content by an update of the
// attacker's own, with and without a fresh signature after it.
func TestChangeBetweenSignatures(t *testing.T) {
	s := signer(t, "A. Name", ecKey(t, elliptic.P256()))
	pdf := mustSign(t, sheet(t), s, Options{Role: RolePrepared})
	d, err := read(pdf)
	if err != nil {
		t.Fatal(err)
	}
	pages, err := d.pages()
	if err != nil {
		t.Fatal(err)
	}
	page, _, err := d.dict(pages[0])
	if err != nil {
		t.Fatal(err)
	}
	w := &writer{buf: bytes.NewBuffer(bytes.Clone(pdf)), at: map[int]int{}}
	w.object(pages[0], strings.Replace(string(page), "/Contents", "/Other", 1))
	w.finish(d)
	evil := w.buf.Bytes()
	if _, err := Verify(evil); err == nil {
		t.Error("an update after the signature is not noticed")
	}
	// The attacker signs the result as Sign would, without its look at the
	// file first.
	f, err := Options{Role: RoleChecked, When: time.Now()}.field(s)
	if err != nil {
		t.Fatal(err)
	}
	r, err := update(evil, f)
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
	if _, err := Verify(r.data); !errors.Is(err, errNoUpdate) {
		t.Errorf("an update between two signatures: %v", err)
	}
}

// TestOtherKeyInContainer puts another signer's container into the hole.
func TestOtherKeyInContainer(t *testing.T) {
	a, b := signer(t, "A. Name", ecKey(t, elliptic.P256())), signer(t, "B. Name", ecKey(t, elliptic.P256()))
	content := []byte("content")
	der, err := container(content, a)
	if err != nil {
		t.Fatal(err)
	}
	if c, _, err := openContainer(der, content, time.Now()); err != nil || !c.Equal(a.Certificate) {
		t.Fatalf("container: %v", err)
	}
	if len(a.Certificate.Raw) == len(b.Certificate.Raw) {
		swapped := bytes.Replace(der, a.Certificate.Raw, b.Certificate.Raw, 1)
		if _, _, err := openContainer(swapped, content, time.Now()); err == nil {
			t.Error("an exchanged certificate is not noticed")
		}
	}
	if _, _, err := openContainer(der, []byte("Content"), time.Now()); err == nil || !strings.Contains(err.Error(), "digest") {
		t.Errorf("other content: %v", err)
	}
}

// TestShortKeys has signatures with keys that this program does not take, made by another.
func TestShortKeys(t *testing.T) {
	for want, key := range map[string]crypto.Signer{
		"an RSA key of 1024 bit is too short":  rsaKey(t, 1024),
		"an ECDSA key of 224 bit is too short": ecKey(t, elliptic.P224()),
	} {
		short := &Signer{Certificate: issue(t, "A. Name", key, nil, nil, yesterday()), key: key}
		if _, err := newSigner(key, short.Certificate, nil); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("signing: %v, want %q", err, want)
		}
		forged := forge(t, sheet(t), short, Options{Role: RolePrepared}, nil)
		if _, err := Verify(forged); err == nil || !strings.Contains(err.Error(), "signature as prepared: "+want) {
			t.Errorf("verifying: %v, want %q", err, want)
		}
	}
}

func FuzzVerify(f *testing.F) {
	pdf := sheet(f)
	f.Add(pdf)
	f.Add(mustSign(f, pdf, signer(f, "A. Name", ecKey(f, elliptic.P256())), Options{Role: RolePrepared}))
	f.Add(signedThrice(f))
	f.Add([]byte("%PDF-1.3\nxref\n0 1\ntrailer\n<</Size 1/Root 1 0 R>>\nstartxref\n9\n%%EOF\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		report, err := Verify(data)
		if err == nil && (len(report.Signatures) == 0 || report.Signatures[len(report.Signatures)-1].Length != len(data)) {
			t.Error("accepted without a signature over the whole file")
		}
	})
}
