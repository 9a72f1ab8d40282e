package sign

import (
	"bytes"
	"crypto/x509"
	"fmt"
	"slices"
	"strings"
	"time"
)

// clocks is by how much two clocks are taken to differ; common practice.
const clocks = 5 * time.Minute

// ofLocal reports whether a certificate is that of some local identity, or of what reads as one.
func ofLocal(c *x509.Certificate) bool {
	return strings.EqualFold(strings.Join(strings.Fields(c.Subject.CommonName), " "), LocalName)
}

// rank is the place of a role in the order of signing.
func rank(role string) int { return slices.Index(Roles(), role) }

// Takes reports whether a signature in a role may follow those in the file:
// each role signs once, and none signs before one that comes earlier.
func (r *Report) Takes(role string) error {
	for _, s := range r.Signatures {
		switch {
		case s.Role == role:
			return fmt.Errorf("the file is already signed as %s, by %q", role, s.Name)
		case rank(s.Role) > rank(role):
			return fmt.Errorf("the file is already signed as %s, by %q; %s comes before it", s.Role, s.Name, role)
		}
	}
	return nil
}

// Awaits returns the first role of people that comes before a role and in which nobody
// has signed, or "". It is no fault of the file: Takes and [Verify] pass a signature
// without it. But a signature that is added now shuts that role for good.
func (r *Report) Awaits(role string) string {
	for _, earlier := range Roles() {
		if rank(earlier) >= rank(role) {
			break
		}
		if earlier != RoleSeal && !slices.ContainsFunc(r.Signatures, func(s Signature) bool { return s.Role == earlier }) {
			return earlier
		}
	}
	return ""
}

// ordered checks the order of roles and of times, which are the word of the
// signers' clocks: nobody can have signed before what is signed.
func (r *Report) ordered() error {
	for i, s := range r.Signatures {
		before := Report{Signatures: r.Signatures[:i]}
		if err := before.Takes(s.Role); err != nil {
			return fmt.Errorf("the signatures are out of order: %w", err)
		}
		if i > 0 && s.When.Add(clocks).Before(r.Signatures[i-1].When) {
			return fmt.Errorf("the signatures are out of order: as %s is dated %s, before the one under it as %s", s.Role,
				s.When.UTC().Format(time.DateTime+" UTC"), r.Signatures[i-1].Role)
		}
	}
	return nil
}

// SameKey returns the role in which the key of signature i has signed before
// it, or "". One key in two roles is one person in both; a seal, which is
// nobody's, does not count.
func (r *Report) SameKey(i int) string {
	key := r.Signatures[i].Certificate.RawSubjectPublicKeyInfo
	for _, s := range r.Signatures[:i] {
		if s.Role != RoleSeal && bytes.Equal(s.Certificate.RawSubjectPublicKeyInfo, key) {
			return s.Role
		}
	}
	return ""
}
