package main

import (
	"bytes"
	"crypto/ecdsa"
	"crypto/rsa"
	"crypto/x509"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"
	"unicode"
	"unicode/utf8"

	"proofsheet/report"
	"proofsheet/report/sign"
)

// inUTC is how a time of signing is printed.
const inUTC = "2006-01-02 15:04:05 UTC"

// fingerprintLine prints a fingerprint behind its label. On a terminal [characters] that
// it does not fit it is cut in halves, one under the other, as it is read out.
func fingerprintLine(label, fingerprint string, width int) string {
	line := label + fingerprint + " (SHA-256)"
	if half := (len(fingerprint) + 1) / 2; width > 0 && len(line) > width && len(fingerprint) > half {
		line = label + fingerprint[:half] + "\n" + strings.Repeat(" ", len(label)) + fingerprint[half:] + " (SHA-256)"
	}
	return line + "\n"
}

// embeddedLine prints a file with its digest, which stands below it on a terminal
// [characters] that both do not fit: a digest is never broken. A name that could read as
// more than a name is quoted.
func embeddedLine(name, digest string, width int) string {
	if name = clean(name); strings.ContainsAny(name, " ,;\"") {
		name = strconv.Quote(name)
	}
	line := fmt.Sprintf("embedded     %s, SHA-256 %s\n", name, digest)
	if width > 0 && utf8.RuneCountInString(line) > width+1 {
		return fmt.Sprintf("embedded     %s\n  SHA-256    %s\n", name, digest)
	}
	return line
}

// listSignatures prints who signed, as what and when, in the order of signing, for a
// width as of [report.Fold].
func listSignatures(b *strings.Builder, r *sign.Report, width int) {
	for i, s := range r.Signatures {
		fmt.Fprintf(b, "signed       as %s by %s, %s by the signer's clock\n", s.Role, quoted(s.Name), s.When.UTC().Format(inUTC))
		if s.Reason != "" {
			fmt.Fprintf(b, "  reason     %s\n", quoted(s.Reason))
		}
		fmt.Fprintf(b, "  covers     %d bytes, every one up to the end of this signature but its own place\n", s.Length)
		fmt.Fprintf(b, "  by         %s, %s\n", quoted(s.Certificate.Subject.String()), keyKind(s.Certificate))
		fmt.Fprintf(b, "  issued by  %s\n", issuer(s))
		b.WriteString(fingerprintLine("  fingerprint ", s.Fingerprint, width))
		if s.Role == sign.RoleSeal {
			fmt.Fprintln(b, "  a seal is nobody's approval")
		}
		for _, line := range append(cautions(r, i), clockCautions(s, time.Now())...) {
			fmt.Fprintf(b, "  caution: %s\n", clean(line))
		}
	}
	if missing := unsignedRoles(r); missing != "" && len(r.Signatures) > 0 {
		fmt.Fprintf(b, "not signed   as %s\n", missing)
	}
}

// unsignedRoles lists the roles of people in which nobody has signed.
func unsignedRoles(r *sign.Report) string {
	var open []string
	for _, role := range sign.Roles() {
		if role != sign.RoleSeal && !slices.ContainsFunc(r.Signatures, func(s sign.Signature) bool { return s.Role == role }) {
			open = append(open, role)
		}
	}
	return strings.Join(open, ", ")
}

// cautions are what a reader of signature i must weigh, though it holds.
func cautions(r *sign.Report, i int) (lines []string) {
	s := r.Signatures[i]
	if other := r.SameKey(i); other != "" && s.Role != sign.RoleSeal {
		lines = append(lines, fmt.Sprintf("%s and %s are signed with one key, so by one person; %s asks for a second one", other, s.Role, s.Role))
	}
	if other := sameName(r, i); other != "" {
		lines = append(lines, fmt.Sprintf("%s and %s bear one name and are signed with two keys; %s asks for a second person", other, s.Role, s.Role))
	}
	if open := rolesBefore(r, i); open != "" {
		lines = append(lines, fmt.Sprintf("signed as %s while nobody had signed as %s", s.Role, open))
	}
	if cn := s.Certificate.Subject.CommonName; cn != s.Name {
		lines = append(lines, fmt.Sprintf("the signature shows the name %q, its certificate says %q", s.Name, cn))
	}
	return lines
}

// sameName returns the role in which somebody of the name of signature i has signed before it
// with another key, or "". Only the name that is shown counts, however it is written.
func sameName(r *sign.Report, i int) string {
	s := r.Signatures[i]
	for _, t := range r.Signatures[:i] {
		one, other := strings.Fields(clean(s.Name)), strings.Fields(clean(t.Name))
		if t.Role != sign.RoleSeal && s.Role != sign.RoleSeal && strings.EqualFold(strings.Join(one, " "), strings.Join(other, " ")) &&
			!bytes.Equal(s.Certificate.RawSubjectPublicKeyInfo, t.Certificate.RawSubjectPublicKeyInfo) {
			return t.Role
		}
	}
	return ""
}

// rolesBefore lists the roles of people that come before that of signature i and in which
// nobody had signed.
func rolesBefore(r *sign.Report, i int) string {
	var open []string
	for _, role := range sign.Roles() {
		if role == r.Signatures[i].Role {
			break
		}
		if role != sign.RoleSeal && !slices.ContainsFunc(r.Signatures[:i], func(s sign.Signature) bool { return s.Role == role }) {
			open = append(open, role)
		}
	}
	return strings.Join(open, " or ")
}

// clockCautions say where a signature is dated after now, and where its certificate has
// expired: the time of signing within it is the signer's word alone.
func clockCautions(s sign.Signature, now time.Time) (lines []string) {
	if s.When.After(now.Add(time.Minute)) {
		lines = append(lines, "the signature is dated later than this computer's clock says it is")
	}
	if end := s.Certificate.NotAfter; now.After(end) {
		lines = append(lines, fmt.Sprintf("the certificate expired on %s; that it was signed before that is the word of the signer's clock alone", end.UTC().Format(inUTC)))
	}
	return lines
}

// nameCaution says where somebody signed in the place of another name.
func nameCaution(sheet *report.Sheet, role, name string) string {
	printed := map[string]string{
		sign.RolePrepared: sheet.Block.Prepared, sign.RoleChecked: sheet.Block.Checked, sign.RoleApproved: sheet.Block.Approved,
	}[role]
	if printed == "" || printed == name {
		return ""
	}
	return fmt.Sprintf("the sheet prints %q as %s, the certificate says %q", printed, role, name)
}

// issuer says who issued a certificate, and how far that was looked at.
func issuer(s sign.Signature) string {
	if s.SelfMade {
		return "itself: self-made, so only the fingerprint tells whose it is"
	}
	c := s.Certificate
	for _, next := range s.Chain {
		if c.CheckSignatureFrom(next) != nil {
			break
		}
		c = next
	}
	if c == s.Certificate {
		return quoted(c.Issuer.String()) + ", as it says; the issuer's certificate is not in the file, so this was not checked"
	}
	return quoted(s.Certificate.Issuer.String()) + "; the chain in the file holds up to " + quoted(c.Subject.String()) + ", whom nobody has checked"
}

// keyKind names algorithm and length of a certificate's key.
func keyKind(c *x509.Certificate) string {
	switch k := c.PublicKey.(type) {
	case *rsa.PublicKey:
		return fmt.Sprintf("RSA %d bit", k.N.BitLen())
	case *ecdsa.PublicKey:
		return "ECDSA " + k.Params().Name
	}
	return c.PublicKeyAlgorithm.String()
}

// meaning says what was proved and what was not, in lines of a width as of [report.Fold].
func meaning(r *sign.Report, e *examination, width int) string {
	from := "tank file"
	if e.kind == "record" {
		from = "tank file and log"
	}
	whose := "no issuer is known to this program, so compare the fingerprint with one that came from the signer by another way"
	if slices.ContainsFunc(r.Signatures, func(s sign.Signature) bool { return s.SelfMade }) {
		whose = "a self-made certificate bears the name that its maker chose, so compare the fingerprint with one that came from the signer by another way"
	}
	return hanging(width, 13, "proved", "whoever holds the key of each fingerprint signed these bytes; after the first signature nothing was "+
		"added but signatures; this program gets the same "+e.kind+" from the embedded "+from) + "\n" +
		hanging(width, 13, "not proved", "whose the keys are: "+whose+"; when it was signed: the time is the word of the signer's clock; "+
			"that no later signature was cut off the end; that a certificate was not withdrawn; that the tank is built as described") + "\n"
}

// clean keeps off the terminal what a file says and a reader cannot see: control characters,
// marks without a shape or that turn the direction of what follows, and runs of blanks that
// would push what comes after them onto a line of its own.
func clean(s string) string {
	var b strings.Builder
	blank := false
	for _, r := range s {
		space := r == '\t' || unicode.Is(unicode.Zs, r) || unseen[r]
		switch {
		case space && blank:
		case space:
			b.WriteByte(' ')
		case unicode.IsGraphic(r):
			b.WriteRune(r)
		default: // controls, formats, ends of lines and paragraphs, private and unassigned
			b.WriteByte('?')
		}
		blank = space
	}
	return b.String()
}

// unseen are letters and symbols, by their class, that are printed as a blank.
var unseen = map[rune]bool{0x115F: true, 0x1160: true, 0x3164: true, 0xFFA0: true, 0x2800: true}

// quoted shows whose words a text of a file is: all between the marks, and none of it ours.
func quoted(s string) string { return strconv.Quote(clean(s)) }

// cleanLines cleans what may be of several lines, and sets all but the first in, so that none
// of them reads as one of our own.
func cleanLines(s string) string {
	lines := strings.Split(s, "\n")
	for i := range lines {
		lines[i] = clean(lines[i])
	}
	return strings.Join(lines, "\n  ")
}
