package sign

import (
	"crypto"
	"crypto/ecdsa"
	"crypto/rsa"
	"crypto/sha256"
	"crypto/x509"
	"encoding/asn1"
	"encoding/pem"
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"

	"software.sslmate.com/src/go-pkcs12"
)

// The shortest keys that are taken [bit]; common practice.
const leastRSA, leastCurve = 2048, 256

// A Signer is a private key with the certificate that names its owner.
type Signer struct {
	Certificate *x509.Certificate   // of the signer
	Chain       []*x509.Certificate // issuers, nearest first; may be empty
	Local       bool                // the local identity, which is nobody's approval

	key crypto.Signer
}

// Fingerprint returns the SHA-256 fingerprint of the signer's certificate.
func (s *Signer) Fingerprint() string { return Fingerprint(s.Certificate) }

// Fingerprint returns the SHA-256 digest over a certificate, upper-case
// hexadecimal with colons.
func Fingerprint(c *x509.Certificate) string {
	sum := sha256.Sum256(c.Raw)
	pairs := make([]string, len(sum))
	for i, b := range sum {
		pairs[i] = fmt.Sprintf("%02X", b)
	}
	return strings.Join(pairs, ":")
}

// LoadPEM returns the signer whose private key (PKCS#8, SEC 1 or PKCS#1) and
// certificate, followed by its issuers if any, are given as PEM text.
func LoadPEM(key, certificate []byte) (*Signer, error) {
	k, err := pemKey(key)
	if err != nil {
		return nil, err
	}
	var chain []*x509.Certificate
	for block, rest := pem.Decode(certificate); block != nil; block, rest = pem.Decode(rest) {
		if block.Type != "CERTIFICATE" {
			continue
		}
		c, err := x509.ParseCertificate(block.Bytes)
		if err != nil {
			return nil, fmt.Errorf("the certificate cannot be read: %w", err)
		}
		chain = append(chain, c)
	}
	if len(chain) == 0 {
		return nil, errors.New("there is no certificate in the PEM file")
	}
	return newSigner(k, chain[0], chain[1:])
}

// pemKey returns the first private key of a PEM text.
func pemKey(text []byte) (any, error) {
	for block, rest := pem.Decode(text); block != nil; block, rest = pem.Decode(rest) {
		var k any
		var err error
		switch {
		case block.Type == "ENCRYPTED PRIVATE KEY" || strings.Contains(block.Headers["Proc-Type"], "ENCRYPTED"):
			return nil, errors.New("the PEM key is encrypted; give key and certificate as a PKCS#12 file instead")
		case block.Type == "PRIVATE KEY":
			k, err = x509.ParsePKCS8PrivateKey(block.Bytes)
		case block.Type == "EC PRIVATE KEY":
			k, err = x509.ParseECPrivateKey(block.Bytes)
		case block.Type == "RSA PRIVATE KEY":
			k, err = x509.ParsePKCS1PrivateKey(block.Bytes)
		default:
			continue // certificates and curve parameters may stand beside the key
		}
		if err != nil {
			return nil, fmt.Errorf("the private key cannot be read: %w", err)
		}
		return k, nil
	}
	return nil, errors.New("there is no private key in the PEM file")
}

// LoadPKCS12 returns the signer kept in a PKCS#12 file.
func LoadPKCS12(data []byte, password string) (*Signer, error) {
	k, c, chain, err := pkcs12.DecodeChain(data, password)
	if errors.Is(err, pkcs12.ErrIncorrectPassword) {
		return nil, errors.New("the password does not open the PKCS#12 file")
	}
	if err != nil && strings.Contains(err.Error(), "asn1:") {
		return nil, errors.New("this is no PKCS#12 file, or it is cut off")
	}
	if err != nil {
		return nil, fmt.Errorf("the PKCS#12 file cannot be read: %w", err)
	}
	return newSigner(k, c, chain)
}

// newSigner joins a key with its certificate after checking that they belong
// together and may sign.
func newSigner(key any, c *x509.Certificate, chain []*x509.Certificate) (*Signer, error) {
	k, ok := key.(crypto.Signer)
	if !ok {
		return nil, fmt.Errorf("a key of the kind %T cannot sign; use RSA or ECDSA", key)
	}
	if err := longEnough(k.Public()); err != nil {
		return nil, err
	}
	if pub, ok := k.Public().(interface{ Equal(crypto.PublicKey) bool }); !ok || !pub.Equal(c.PublicKey) {
		return nil, errors.New("the certificate does not belong to the private key")
	}
	if err := maySign(c); err != nil {
		return nil, err
	}
	return &Signer{Certificate: c, Chain: chain, key: k}, nil
}

// longEnough refuses a key that is too short, of whoever signs and of whoever has signed:
// other programs take shorter ones.
func longEnough(key crypto.PublicKey) error {
	switch pub := key.(type) {
	case *rsa.PublicKey:
		if n := pub.N.BitLen(); n < leastRSA {
			return fmt.Errorf("an RSA key of %d bit is too short; use %d or more", n, leastRSA)
		}
	case *ecdsa.PublicKey:
		if n := pub.Params().BitSize; n < leastCurve {
			return fmt.Errorf("an ECDSA key of %d bit is too short; use P-256 or longer", n)
		}
	default:
		return fmt.Errorf("a key of the kind %T is not taken; use RSA or ECDSA", key)
	}
	return nil
}

// Purposes of a key that the standard library has no name for.
var (
	documentSigning      = asn1.ObjectIdentifier{1, 3, 6, 1, 5, 5, 7, 3, 36}       // RFC 9336
	olderDocumentSigning = asn1.ObjectIdentifier{1, 3, 6, 1, 4, 1, 311, 10, 3, 12} // common practice before it
)

// maySign refuses a certificate that was issued for something else than a
// person's signature: by its key usage, or by extended key usages of which none
// is a person's, RFC 5280, 4.2.1.3 and 4.2.1.12.
func maySign(c *x509.Certificate) error {
	const use = x509.KeyUsageDigitalSignature | x509.KeyUsageContentCommitment
	if c.KeyUsage != 0 && c.KeyUsage&use == 0 {
		return errors.New("the certificate does not allow its key to sign (key usage)")
	}
	if len(c.ExtKeyUsage)+len(c.UnknownExtKeyUsage) == 0 {
		return nil
	}
	for _, purpose := range c.ExtKeyUsage {
		if slices.Contains([]x509.ExtKeyUsage{x509.ExtKeyUsageAny, x509.ExtKeyUsageEmailProtection, x509.ExtKeyUsageClientAuth}, purpose) {
			return nil
		}
	}
	for _, purpose := range c.UnknownExtKeyUsage {
		if purpose.Equal(documentSigning) || purpose.Equal(olderDocumentSigning) {
			return nil
		}
	}
	return errors.New("the certificate is for another purpose than a person's signature (extended key usage)")
}

// validAt reports whether the certificate holds at a time.
func validAt(c *x509.Certificate, when time.Time) error {
	switch day := func(t time.Time) string { return t.UTC().Format("2006-01-02 15:04 UTC") }; {
	case when.Before(c.NotBefore):
		return fmt.Errorf("the certificate is not valid before %s", day(c.NotBefore))
	case when.After(c.NotAfter):
		return fmt.Errorf("the certificate expired on %s", day(c.NotAfter))
	}
	return nil
}
