package sign

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"time"
	"unicode/utf8"
)

// The roles somebody can sign in.
const (
	RoleSeal     = "seal" // by the local identity; unchanged since it was written, nobody's approval
	RolePrepared = "prepared"
	RoleChecked  = "checked"
	RoleApproved = "approved"
)

// Roles lists the roles in the order in which a sheet is signed.
func Roles() []string { return []string{RoleSeal, RolePrepared, RoleChecked, RoleApproved} }

// longest is how many letters a name or a reason may have.
const longest = 200

// A Box is where a visible signature is drawn, from the lower left corner of
// its page.
type Box struct {
	Page          int     // first page is 1; 0 is the last one
	X, Y          float64 // lower left corner [pt]
	Width, Height float64 // [pt]
}

// Options say who signs, as what and why.
type Options struct {
	Role   string
	Name   string    // left out: the name in the certificate
	Reason string    // may be empty
	When   time.Time // required; the word of the signer's clock
	Box    *Box      // where the signature is drawn; nil: it is not drawn
}

// Sign returns the PDF with one more signature. Nothing already in the file is
// changed. The result has been checked as [Verify] checks it.
func Sign(pdf []byte, s *Signer, o Options) ([]byte, error) {
	f, err := o.field(s)
	if err != nil {
		return nil, err
	}
	before, err := Verify(pdf)
	if err != nil && !errors.Is(err, ErrNotSigned) {
		return nil, fmt.Errorf("the file is not signed because what is in it does not hold: %w", err)
	}
	if err := before.Takes(f.role); err != nil {
		return nil, err
	}
	r, err := update(pdf, f)
	if err != nil {
		return nil, err
	}
	der, err := container(r.covered(), s)
	if err != nil {
		return nil, err
	}
	if err := r.fill(der); err != nil {
		return nil, err
	}
	if _, err := Verify(r.data); err != nil {
		return nil, fmt.Errorf("the new signature does not hold: %w", err)
	}
	return r.data, nil
}

// field checks the options and turns them into what is written.
func (o Options) field(s *Signer) (field, error) {
	f := field{role: o.Role, name: o.Name, reason: o.Reason, when: o.When.UTC().Truncate(time.Second), rect: invisible}
	if !slices.Contains(Roles(), f.role) {
		return f, fmt.Errorf("%q is not a role; use one of %s", f.role, strings.Join(Roles(), ", "))
	}
	if (s.Local || ofLocal(s.Certificate)) && f.role != RoleSeal {
		return f, fmt.Errorf("the local identity only seals; sign as %s with a key of your own", f.role)
	}
	f.fingerprint = s.Fingerprint()
	if f.name == "" {
		f.name = s.Certificate.Subject.CommonName
	}
	if strings.TrimSpace(f.name) == "" {
		return f, errors.New("the certificate names nobody (common name)")
	}
	for _, text := range []string{f.name, f.reason} {
		if !utf8.ValidString(text) || utf8.RuneCountInString(text) > longest {
			return f, fmt.Errorf("name and reason must be text of at most %d letters each", longest)
		}
	}
	if o.When.IsZero() {
		return f, errors.New("the time of signing is missing")
	}
	if err := validAt(s.Certificate, f.when); err != nil {
		return f, err
	}
	if b := o.Box; b != nil {
		if !(b.Width > 0 && b.Height > 0 && b.X >= 0 && b.Y >= 0) {
			return f, errors.New("the box of the signature has no size or lies off its page")
		}
		f.page = b.Page - 1 // the last page becomes -1
		for i, x := range []float64{b.X, b.Y, b.X + b.Width, b.Y + b.Height} {
			f.rect[i] = fmt.Sprintf("%.2f", x)
		}
	}
	f.hole = 2048 + len(s.Certificate.Raw) // signature, attributes and names with room to spare
	for _, c := range s.Chain {
		f.hole += len(c.Raw) + 64
	}
	return f, nil
}
