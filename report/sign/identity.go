package sign

import (
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"math/big"
	"os"
	"path/filepath"
	"runtime"
	"time"
)

// FolderVariable names the environment variable that moves the local identity.
const FolderVariable = "PROOFSHEET_IDENTITY"

// LocalName is the name in the certificate of every local identity.
const LocalName = "proofsheet local identity"

// identityFile holds key and certificate of the local identity.
const identityFile = "identity.pem"

// Folder returns where the local identity is kept: the folder named by the
// environment variable, else "proofsheet" in the user's configuration folder.
func Folder() (string, error) {
	if dir := os.Getenv(FolderVariable); dir != "" {
		return dir, nil
	}
	dir, err := os.UserConfigDir()
	if err != nil {
		return "", fmt.Errorf("no folder for the local identity (name one in %s): %w", FolderVariable, err)
	}
	return filepath.Join(dir, "proofsheet"), nil
}

// LocalIdentity returns the identity kept in a folder and makes one, an ECDSA
// P-256 key with a certificate it signs itself, where there is none. It proves
// only that a file has not changed since this identity sealed it.
func LocalIdentity(dir string) (s *Signer, created bool, err error) {
	path := filepath.Join(dir, identityFile)
	s, err = readIdentity(path)
	if !errors.Is(err, fs.ErrNotExist) {
		return s, false, err
	}
	text, err := makeIdentity(time.Now())
	if err != nil {
		return nil, false, fmt.Errorf("the local identity cannot be made: %w", err)
	}
	created, err = place(dir, path, text)
	if err != nil {
		return nil, false, fmt.Errorf("the local identity cannot be kept: %w; set "+FolderVariable+" to a folder that can be written", err)
	}
	s, err = readIdentity(path)
	return s, created, err
}

// readIdentity reads the identity file and refuses one that others can read.
func readIdentity(path string) (*Signer, error) {
	info, err := os.Stat(path)
	if err != nil {
		return nil, err
	}
	if runtime.GOOS != "windows" && info.Mode().Perm()&0o077 != 0 {
		return nil, fmt.Errorf("%s: others may read this private key (mode %04o); make it 0600", path, info.Mode().Perm())
	}
	text, err := os.ReadFile(path)
	if err != nil {
		return nil, err
	}
	s, err := LoadPEM(text, text)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", path, err)
	}
	if err := validAt(s.Certificate, time.Now()); err != nil {
		return nil, fmt.Errorf("%s: %w; move the file away and a new identity is made", path, err)
	}
	s.Local = true
	return s, nil
}

// makeIdentity returns a new key and its certificate as PEM text.
func makeIdentity(now time.Time) ([]byte, error) {
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		return nil, err
	}
	serial, err := rand.Int(rand.Reader, new(big.Int).Lsh(big.NewInt(1), 120))
	if err != nil {
		return nil, err
	}
	form := &x509.Certificate{
		SerialNumber: serial.Add(serial, big.NewInt(1)),
		Subject:      pkix.Name{CommonName: LocalName},
		NotBefore:    now.Add(-24 * time.Hour), // clocks differ
		NotAfter:     now.AddDate(5, 0, 0),
		KeyUsage:     x509.KeyUsageDigitalSignature | x509.KeyUsageContentCommitment,
	}
	der, err := x509.CreateCertificate(rand.Reader, form, form, key.Public(), key)
	if err != nil {
		return nil, err
	}
	pkcs8, err := x509.MarshalPKCS8PrivateKey(key)
	if err != nil {
		return nil, err
	}
	text := pem.EncodeToMemory(&pem.Block{Type: "PRIVATE KEY", Bytes: pkcs8})
	return append(text, pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der})...), nil
}

// place writes the identity file whole, and leaves one alone that another run
// has put there meanwhile.
func place(dir, path string, text []byte) (created bool, err error) {
	if err := os.MkdirAll(dir, 0o700); err != nil {
		return false, err
	}
	f, err := os.CreateTemp(dir, ".identity-*") // mode 0600
	if err != nil {
		return false, err
	}
	defer os.Remove(f.Name())
	_, err = f.Write(text)
	if err = errors.Join(err, f.Close()); err != nil {
		return false, err
	}
	switch err = os.Link(f.Name(), path); {
	case err == nil:
		return true, nil
	case errors.Is(err, fs.ErrExist):
		return false, nil
	default: // a file system without links
		return true, os.Rename(f.Name(), path)
	}
}
