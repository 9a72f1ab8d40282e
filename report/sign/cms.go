package sign

import (
	"bytes"
	"crypto/sha256"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/asn1"
	"errors"
	"fmt"
	"math/big"
	"slices"
	"time"

	"github.com/smallstep/pkcs7"
)

// oidSigningCertificateV2 is id-aa-signingCertificateV2, RFC 5035, section 3.
var oidSigningCertificateV2 = asn1.ObjectIdentifier{1, 2, 840, 113549, 1, 9, 16, 2, 47}

// signatureAlgorithms are those that [container] writes: ECDSA and RSA
// (PKCS#1 v1.5), each with SHA-256.
var signatureAlgorithms = []asn1.ObjectIdentifier{
	pkcs7.OIDDigestAlgorithmECDSASHA256,
	pkcs7.OIDEncryptionAlgorithmRSASHA256,
}

// signingCertificateV2 is the attribute's value, RFC 5035, section 3; the hash
// algorithm is left out, which means SHA-256.
type signingCertificateV2 struct{ Certs []certID }

type certID struct{ Hash []byte }

// container returns the detached CMS signature over the content. Every
// certificate in it is named in the signed attributes, so that none can be
// exchanged.
func container(content []byte, s *Signer) ([]byte, error) {
	sd, err := pkcs7.NewSignedData(content)
	if err != nil {
		return nil, err
	}
	sd.SetDigestAlgorithm(pkcs7.OIDDigestAlgorithmSHA256)
	var ids signingCertificateV2
	for _, c := range append([]*x509.Certificate{s.Certificate}, s.Chain...) {
		sum := sha256.Sum256(c.Raw)
		ids.Certs = append(ids.Certs, certID{sum[:]})
	}
	err = sd.AddSigner(s.Certificate, s.key, pkcs7.SignerInfoConfig{
		ExtraSignedAttributes: []pkcs7.Attribute{{Type: oidSigningCertificateV2, Value: ids}},
	})
	if err != nil {
		return nil, err
	}
	for _, c := range s.Chain {
		sd.AddCertificate(c)
	}
	sd.Detach()
	return sd.Finish()
}

// The container as RFC 5652, section 5, has it, without its optional parts.
type (
	cmsOuter struct {
		Type   asn1.ObjectIdentifier
		Signed cmsSigned `asn1:"explicit,tag:0"`
	}
	cmsSigned struct {
		Version int
		Digests []pkix.AlgorithmIdentifier `asn1:"set"`
		Content struct{ Type asn1.ObjectIdentifier }
		Certs   asn1.RawValue
		Signers []cmsSigner `asn1:"set"`
	}
	cmsSigner struct {
		Version int
		ID      struct {
			Issuer asn1.RawValue
			Serial *big.Int
		}
		Digest     pkix.AlgorithmIdentifier
		Attributes asn1.RawValue
		Algorithm  pkix.AlgorithmIdentifier
		Signature  []byte
	}
	cmsAttribute struct {
		Type   asn1.ObjectIdentifier
		Values []asn1.RawValue `asn1:"set"`
	}
)

// openContainer checks a detached CMS signature over the content and returns
// the signer's certificate with its chain. The signed time must be that of the
// field, when. A container with any part that is not fixed or not signed is
// refused.
func openContainer(der, content []byte, when time.Time) (*x509.Certificate, []*x509.Certificate, error) {
	ids, err := strictForm(der)
	if err != nil {
		return nil, nil, err
	}
	p7, err := pkcs7.Parse(der)
	if err != nil {
		return nil, nil, fmt.Errorf("the signature cannot be read: %w", err)
	}
	p7.Content = content
	if err := p7.Verify(); err != nil {
		var digest *pkcs7.MessageDigestMismatchError
		if errors.As(err, &digest) {
			return nil, nil, errors.New("the file has been changed since it was signed (the digest differs)")
		}
		return nil, nil, fmt.Errorf("the signature does not hold: %w", err)
	}
	var signed time.Time
	if err := p7.UnmarshalSignedAttribute(pkcs7.OIDAttributeSigningTime, &signed); err != nil || signed.Sub(when).Abs() > clocks {
		return nil, nil, errors.New("the time in the signature is not the time that is shown")
	}
	signer := p7.GetOnlySigner()
	if signer == nil || len(p7.Certificates) != len(ids.Certs) || !signer.Equal(p7.Certificates[0]) {
		return nil, nil, errors.New("the certificates are not those that were signed")
	}
	for i, c := range p7.Certificates {
		if sum := sha256.Sum256(c.Raw); !bytes.Equal(sum[:], ids.Certs[i].Hash) {
			return nil, nil, errors.New("the certificates are not those that were signed")
		}
	}
	return signer, p7.Certificates[1:], nil
}

// strictForm checks every part of a container that its signature does not
// cover, and returns the signed list of certificates.
func strictForm(der []byte) (ids signingCertificateV2, err error) {
	odd := errors.New("the signature is not of the form this program writes")
	var o cmsOuter
	if rest, err := asn1.Unmarshal(der, &o); err != nil || len(rest) > 0 {
		return ids, odd
	}
	if again, err := asn1.Marshal(o); err != nil || !bytes.Equal(again, der) {
		return ids, odd
	}
	sd := o.Signed
	if !o.Type.Equal(pkcs7.OIDSignedData) || !sd.Content.Type.Equal(pkcs7.OIDData) || sd.Version != 1 ||
		len(sd.Digests) != 1 || len(sd.Signers) != 1 || !context0(sd.Certs) {
		return ids, odd
	}
	s := sd.Signers[0]
	if s.Version != 1 || !plainSHA256(s.Digest) || !plainSHA256(sd.Digests[0]) || !context0(s.Attributes) ||
		len(s.Algorithm.Parameters.FullBytes) > 0 ||
		!slices.ContainsFunc(signatureAlgorithms, s.Algorithm.Algorithm.Equal) {
		return ids, odd
	}
	return signedCertificates(s.Attributes.Bytes, odd)
}

// signedCertificates finds the one signing-certificate attribute, and checks
// the one content type, among the signed attributes.
func signedCertificates(attributes []byte, odd error) (ids signingCertificateV2, err error) {
	var lists, types int
	for len(attributes) > 0 {
		var a cmsAttribute
		if attributes, err = asn1.Unmarshal(attributes, &a); err != nil || len(a.Values) != 1 {
			return ids, odd
		}
		switch {
		case a.Type.Equal(oidSigningCertificateV2):
			lists++
			if rest, err := asn1.Unmarshal(a.Values[0].FullBytes, &ids); err != nil || len(rest) > 0 {
				return ids, odd
			}
		case a.Type.Equal(pkcs7.OIDAttributeContentType):
			types++
			var oid asn1.ObjectIdentifier
			if _, err := asn1.Unmarshal(a.Values[0].FullBytes, &oid); err != nil || !oid.Equal(pkcs7.OIDData) {
				return ids, odd
			}
		}
	}
	if lists != 1 || types != 1 {
		return ids, odd
	}
	return ids, nil
}

func plainSHA256(a pkix.AlgorithmIdentifier) bool {
	return a.Algorithm.Equal(pkcs7.OIDDigestAlgorithmSHA256) && len(a.Parameters.FullBytes) == 0
}

func context0(v asn1.RawValue) bool {
	return v.Class == asn1.ClassContextSpecific && v.Tag == 0 && v.IsCompound
}
