package sign

import (
	"bytes"
	"crypto/x509"
	"encoding/hex"
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"time"
	"unicode/utf16"
)

// ErrNoPDF says that a file is of another sort, which this package cannot read.
var ErrNoPDF = errors.New("this is not a PDF file")

// ErrNotSigned says that a file carries no signature at all.
var ErrNotSigned = errors.New("the file is not signed")

// mostSignatures bounds the work a file can ask for.
const mostSignatures = 16

// A Report is what a file's signatures say, and what the file carries.
type Report struct {
	Signatures  []Signature // in the order they were made
	Base        []byte      // the file before its first signature
	Attachments []Attachment
}

// A Signature is one signature that holds.
type Signature struct {
	Role, Name, Reason string
	When               time.Time // by the signer's own clock
	Certificate        *x509.Certificate
	Chain              []*x509.Certificate
	Fingerprint        string // SHA-256 of the certificate
	SelfMade           bool   // the certificate names itself as its issuer
	Box                *Box   // where it is drawn; nil: it is not drawn
	Pages              int    // of the file it covers
	Length             int    // of the file it covers [byte]
}

// Verify checks every signature of a file and that together they cover all of
// it: the last one reaches to the end, after an earlier one nothing but
// signatures was added, and roles and times are in their order. The error says
// what does not hold; where it is [ErrNotSigned] the report is still filled.
//
// That a signature holds does not say whose it is: compare the fingerprint
// with one that came by another way.
func Verify(pdf []byte) (*Report, error) {
	report := &Report{}
	rest := pdf
	for {
		d, err := read(rest)
		if err != nil {
			return report, err
		}
		if !d.updated {
			if err := report.base(d); err != nil {
				return report, err
			}
			break
		}
		if len(report.Signatures) == mostSignatures {
			return report, fmt.Errorf("the file has more than %d signatures", mostSignatures)
		}
		s, before, err := last(rest)
		if err != nil {
			return report, err
		}
		report.Signatures = append(report.Signatures, *s)
		rest = before
	}
	slices.Reverse(report.Signatures)
	if len(report.Signatures) == 0 {
		return report, ErrNotSigned
	}
	return report, report.ordered()
}

// base takes the file as it was before any signature. A form in it would be a
// signature this program did not write.
func (r *Report) base(d *document) (err error) {
	catalog, _, err := d.dict(d.root)
	if err != nil {
		return err
	}
	if bytes.Contains(catalog, []byte("/AcroForm")) {
		return errors.New("the file has a form that this program did not write")
	}
	r.Base = d.data
	r.Attachments, err = d.attachments()
	return err
}

// last checks the last update of a file, which must be a signature, and
// returns it with the file before it.
func last(pdf []byte) (*Signature, []byte, error) {
	eof := []byte("%%EOF\n")
	cut := bytes.LastIndex(pdf[:len(pdf)-len(eof)], eof)
	if cut < 0 {
		return nil, nil, errNoUpdate
	}
	before := pdf[:cut+len(eof)]
	f, err := recoverField(before, pdf[len(before):])
	if err != nil {
		return nil, nil, err
	}
	r, err := update(before, f)
	if err != nil {
		return nil, nil, err
	}
	if len(r.data) != len(pdf) || !bytes.Equal(r.data[:r.open+1], pdf[:r.open+1]) || !bytes.Equal(r.data[r.shut-1:], pdf[r.shut-1:]) {
		return nil, nil, fmt.Errorf("the update that holds the signature is not of the form this program writes: %w", errNoUpdate)
	}
	der, err := holeContent(pdf[r.open+1 : r.shut-1])
	if err != nil {
		return nil, nil, err
	}
	c, chain, err := openContainer(der, r.covered(), f.when)
	if err != nil {
		return nil, nil, fmt.Errorf("signature as %s: %w", f.role, err)
	}
	if err := suits(c, f); err != nil {
		return nil, nil, fmt.Errorf("signature as %s: %w", f.role, err)
	}
	return &Signature{
		Role: f.role, Name: f.name, Reason: f.reason, When: f.when,
		Certificate: c, Chain: chain, Fingerprint: Fingerprint(c),
		SelfMade: bytes.Equal(c.RawIssuer, c.RawSubject),
		Box:      f.box(), Pages: r.pages, Length: len(pdf),
	}, before, nil
}

// suits reports whether a certificate may stand behind a field: what [newSigner] asks of it.
func suits(c *x509.Certificate, f field) error {
	if f.fingerprint != Fingerprint(c) {
		return errors.New("the fingerprint that is shown is not that of its certificate")
	}
	if ofLocal(c) && f.role != RoleSeal {
		return errors.New("it was made by a local identity, which only seals")
	}
	return errors.Join(longEnough(c.PublicKey), maySign(c), validAt(c, f.when))
}

// box returns where the field is drawn.
func (f field) box() *Box {
	if f.rect == invisible {
		return nil
	}
	var x [4]float64
	for i, s := range f.rect {
		x[i], _ = strconv.ParseFloat(s, 64)
	}
	return &Box{Page: f.page + 1, X: x[0], Y: x[1], Width: x[2] - x[0], Height: x[3] - x[1]}
}

// holeContent returns the container in a hole. The rest of the hole is not
// signed and must be zero.
func holeContent(text []byte) ([]byte, error) {
	odd := errors.New("the place of the signature holds something else")
	all := make([]byte, hex.DecodedLen(len(text)))
	if _, err := hex.Decode(all, text); err != nil || !bytes.Equal(text, hex.AppendEncode(nil, all)) {
		return nil, odd
	}
	n, err := derLength(all)
	if err != nil || n > len(all) || len(bytes.Trim(all[n:], "\x00")) > 0 {
		return nil, odd
	}
	return all[:n], nil
}

// derLength returns the length of the DER element at the start of b.
func derLength(b []byte) (int, error) {
	const most = 3 // octets of length, more than any file needs
	if len(b) < 2 {
		return 0, errors.New("too short")
	}
	if b[1] < 0x80 {
		return 2 + int(b[1]), nil
	}
	n := int(b[1] & 0x7F)
	if n == 0 || n > most || len(b) < 2+n {
		return 0, errors.New("length out of range")
	}
	length := 0
	for _, x := range b[2 : 2+n] {
		length = length<<8 | int(x)
	}
	return 2 + n + length, nil
}

var (
	findRange  = regexp.MustCompile(`/ByteRange \[0 +(\d{1,10}) +(\d{1,10}) +\d{1,10}\]`)
	findName   = regexp.MustCompile(`\n/Name <FEFF([0-9A-F]*)>\n`)
	findReason = regexp.MustCompile(`\n/Reason <FEFF([0-9A-F]*)>\n`)
	findPrint  = regexp.MustCompile(`\n/ContactInfo \(certificate SHA-256 ([0-9A-F:]*)\)\n`)
	findDate   = regexp.MustCompile(`\n/M \((D:\d{14}\+00'00')\)`)
	findWidget = regexp.MustCompile(`/Subtype /Widget /FT /Sig /T \(([a-z]+)\) /V \d+ 0 R /F 132 /Rect \[([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+)\] /P (\d{1,7}) 0 R`)
)

// recoverField reads what the writer of an update chose. Whether that is all
// the update holds is for the caller to see, who builds it again.
func recoverField(before, added []byte) (f field, err error) {
	var found [6][][]byte
	for i, re := range []*regexp.Regexp{findRange, findName, findReason, findDate, findWidget, findPrint} {
		if found[i] = re.FindSubmatch(added); found[i] == nil {
			return f, errNoUpdate
		}
	}
	open, _ := strconv.Atoi(string(found[0][1]))
	shut, _ := strconv.Atoi(string(found[0][2]))
	if f.hole = (shut - open - 2) / 2; f.hole < 0 || f.hole > len(added) {
		return f, errNoUpdate
	}
	f.name, f.reason = utf16Text(found[1][1]), utf16Text(found[2][1])
	if f.when, err = time.Parse(dateForm, string(found[3][1])); err != nil {
		return f, errNoUpdate
	}
	f.role, f.fingerprint = string(found[4][1]), string(found[5][1])
	if !slices.Contains(Roles(), f.role) {
		return f, fmt.Errorf("the file is signed as %q, which is not a role", f.role)
	}
	for i := range f.rect {
		f.rect[i] = string(found[4][2+i])
	}
	page, _ := strconv.Atoi(string(found[4][6]))
	d, err := read(before)
	if err != nil {
		return f, err
	}
	pages, err := d.pages()
	if err != nil {
		return f, err
	}
	if f.page = slices.Index(pages, page); f.page < 0 {
		return f, errors.New("the signature stands on a page that the file does not have")
	}
	return f, nil
}

// utf16Text decodes hexadecimal UTF-16BE. An odd rest is dropped; the rebuilt
// update then differs.
func utf16Text(digits []byte) string {
	raw, _ := hex.DecodeString(string(digits))
	var units []uint16
	for i := 0; i+1 < len(raw); i += 2 {
		units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
	}
	return string(utf16.Decode(units))
}
