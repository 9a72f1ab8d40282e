package main

import (
	"bytes"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/rsa"
	"encoding/pem"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"proofsheet/report"
	"proofsheet/report/sign"
)

func TestSignInSeries(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	rsaKey, err := rsa.GenerateKey(rand.Reader, 2048)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range []struct {
		role string
		by   person
		p12  bool
	}{
		{"prepared", newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), false},
		{"checked", newPerson(t, "B. Name", rsaKey, soon()), true},
		{"approved", newPerson(t, "C. Name", curve(t, elliptic.P384()), soon()), true},
	} {
		before, args := contents(t, pdf), row.by.files
		if row.p12 {
			args = []string{"--p12", row.by.p12, "--password-file", write(t, "word", []byte("secret\r\n"))}
		}
		status, out, says := signAs(t, pdf, row.role, args...)
		name := row.by.certificate.Subject.CommonName
		if status != exitHolds || says != "wrote "+pdf+"\n" || !strings.Contains(out, "signed as "+row.role+` by "`+name+`"`) ||
			!strings.Contains(out, sign.Fingerprint(row.by.certificate)) {
			t.Fatalf("%s: status %d: %s%s", row.role, status, out, says)
		}
		if after := contents(t, pdf); !bytes.HasPrefix(after, before) || len(after) == len(before) {
			t.Fatalf("%s: an earlier byte was changed", row.role)
		}
		status, out, says = call(t, "", "verify", pdf)
		if status != exitHolds || says != "" || !strings.Contains(out, "as "+row.role+` by "`+name+`"`) || strings.Contains(out, "caution") {
			t.Errorf("%s: verify: status %d: %s%s", row.role, status, out, says)
		}
		if status, _, says := signAs(t, pdf, row.role, row.by.files...); status != exitInput || !strings.Contains(says, "already signed as "+row.role) {
			t.Errorf("%s twice: status %d: %s", row.role, status, says)
		}
	}
	if left, _ := os.ReadDir(filepath.Dir(pdf)); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

func TestSignCautions(t *testing.T) {
	withSheet(t, 101)
	pdf := sealed(t)
	one := newPerson(t, "Ωmega", curve(t, elliptic.P256()), soon())
	status, _, says := signAs(t, pdf, "prepared", one.files...)
	for _, want := range []string{"caution: the sheet says: not satisfied", "as “?”; the signature"} {
		if status != exitHolds || !strings.Contains(says, want) {
			t.Errorf("status %d, %q is missing: %s", status, want, says)
		}
	}
	status, _, says = signAs(t, pdf, "checked", one.files...)
	if status != exitHolds || !strings.Contains(says, "caution: prepared and checked are signed with one key") {
		t.Errorf("status %d: %s", status, says)
	}
	status, out, _ := call(t, "", "verify", pdf)
	if status != exitHolds || !strings.Contains(out, "caution: prepared and checked are signed with one key") || !strings.Contains(out, `by "Ωmega"`) {
		t.Errorf("verify: status %d: %s", status, out)
	}
	block := &report.Sheet{Block: report.TitleBlock{Checked: "B. Name"}}
	if c := nameCaution(block, "checked", "A. Name"); !strings.Contains(c, `prints "B. Name" as checked`) {
		t.Errorf("another name than printed: %q", c)
	}
	if c := nameCaution(block, "checked", "B. Name") + nameCaution(block, "approved", "A. Name"); c != "" {
		t.Errorf("caution without a reason: %q", c)
	}
	late := sign.Signature{When: time.Now(), Certificate: one.certificate}
	if clockCautions(late, late.When) != nil || len(clockCautions(late, late.When.Add(-time.Hour))) != 1 {
		t.Error("a time to come is not told from now")
	}
	if lines := clockCautions(late, one.certificate.NotAfter.Add(time.Second)); len(lines) != 1 || !strings.Contains(lines[0], "the certificate expired on ") {
		t.Errorf("a certificate that has expired: %q", lines)
	}
}

// TestWhoSigned has what a reader must weigh in who signed as what.
func TestWhoSigned(t *testing.T) {
	one, two := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), newPerson(t, "a.  name", curve(t, elliptic.P256()), soon())
	by := func(role string, p person) sign.Signature {
		return sign.Signature{Role: role, Name: p.certificate.Subject.CommonName, Certificate: p.certificate}
	}
	for _, row := range []struct {
		signed []sign.Signature
		want   string // of the last one
	}{
		{[]sign.Signature{by("seal", one), by("prepared", two)}, ""},
		{[]sign.Signature{by("prepared", one), by("checked", two)}, "prepared and checked bear one name and are signed with two keys"},
		{[]sign.Signature{by("prepared", one), by("checked", one)}, "with one key, so by one person"},
		{[]sign.Signature{by("seal", two), by("approved", one)}, "signed as approved while nobody had signed as prepared or checked"},
		{[]sign.Signature{by("checked", one)}, "signed as checked while nobody had signed as prepared"},
	} {
		lines := cautions(&sign.Report{Signatures: row.signed}, len(row.signed)-1)
		if text := strings.Join(lines, "\n"); !strings.Contains(text, row.want) || row.want == "" && text != "" || len(lines) > 1 {
			t.Errorf("%q, want %q", lines, row.want)
		}
	}
}

// TestOpenKey has a key and a password that others may read.
func TestOpenKey(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no modes here")
	}
	withSheet(t, 50)
	own, word := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), write(t, "word", []byte("secret"))
	for name, args := range map[string][]string{own.files[1]: own.files, word: {"--p12", own.p12, "--password-file", word}} {
		if err := os.Chmod(name, 0o644); err != nil {
			t.Fatal(err)
		}
		if status, _, says := signAs(t, sealed(t), "prepared", args...); status != exitHolds || !strings.Contains(says, "caution: others may read "+name+" (mode 0644)") {
			t.Errorf("status %d: %s", status, says)
		}
	}
}

// TestSignRefuses has the sheet left as it was, with one line that says why.
func TestSignRefuses(t *testing.T) {
	withSheet(t, 50)
	good := contents(t, sealed(t))
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	other := newPerson(t, "B. Name", curve(t, elliptic.P256()), soon())
	old := newPerson(t, "C. Name", curve(t, elliptic.P256()), time.Now().Add(-time.Minute))
	locked := write(t, "locked.pem", pem.EncodeToMemory(&pem.Block{Type: "ENCRYPTED PRIVATE KEY", Bytes: []byte{0}}))
	folder, err := sign.Folder()
	if err != nil {
		t.Fatal(err)
	}
	local := filepath.Join(folder, "identity.pem")
	tampered := bytes.Clone(good)
	tampered[len(good)/2] ^= 1
	for _, row := range []struct {
		what string
		pdf  []byte
		args []string
		want string
	}{
		{"changed", tampered, own.files, "changed since it was signed"},
		{"cut off", good[:len(good)-9], own.files, "does not end as a PDF file must"},
		{"added to", append(bytes.Clone(good), "\n"...), own.files, "does not end as a PDF file must"},
		{"no PDF", []byte("hello"), own.files, "this is not a PDF file"},
		{"empty", nil, own.files, "this is not a PDF file"},
		{"another program's PDF", foreign(t), own.files, "no sheet of this program"},
		{"no signature's key", good, []string{"--key", own.files[3], "--certificate", own.files[3]}, "no private key"},
		{"another's certificate", good, []string{"--key", own.files[1], "--certificate", other.files[3]}, "does not belong to the private key"},
		{"expired", good, old.files, "expired on"},
		{"encrypted PEM", good, []string{"--key", locked, "--certificate", own.files[3]}, "as a PKCS#12 file instead"},
		{"wrong password", good, []string{"--p12", own.p12, "--password-file", write(t, "word", []byte("guess"))}, "the password does not open"},
		{"no password", good, []string{"--p12", own.p12}, passwordVariable},
		{"no key file", good, []string{"--p12", "nosuch.p12"}, "nosuch.p12: no such file"},
		{"the local identity", good, []string{"--key", local, "--certificate", local}, "only seals"},
	} {
		path := write(t, "sheet.pdf", row.pdf)
		status, out, says := signAs(t, path, "prepared", row.args...)
		if status != exitInput || out != "" || !strings.Contains(says, row.want) || strings.Count(says, "\n") != 1 {
			t.Errorf("%s: status %d, printed %q: %s", row.what, status, out, says)
		}
		if !bytes.Equal(contents(t, path), row.pdf) {
			t.Errorf("%s: the file was changed", row.what)
		}
		if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
			t.Errorf("%s: left behind: %v", row.what, left)
		}
	}
	path := write(t, "sheet.pdf", good)
	withSheet(t, 60)
	if status, _, says := signAs(t, path, "prepared", own.files...); status != exitInput || !strings.Contains(says, "was 50 and is 60") {
		t.Errorf("other numbers: status %d: %s", status, says)
	}
}

// TestSignInTurn refuses a role before which another has to sign, which it would shut out,
// and leaves the sheet as it was.
func TestSignInTurn(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	one, two := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon()), newPerson(t, "B. Name", curve(t, elliptic.P256()), soon())
	refused := func(role, first string) {
		t.Helper()
		before := contents(t, pdf)
		status, out, says := signAs(t, pdf, role, two.files...)
		if want := "nobody has signed it as " + first + ", which comes before " + role + ": sign it --as " + first + " first"; status != exitInput || out != "" || !strings.Contains(says, want) {
			t.Errorf("%s: status %d: %s%s", role, status, out, says)
		}
		if !bytes.Equal(contents(t, pdf), before) {
			t.Errorf("%s: the file was changed", role)
		}
	}
	refused("checked", "prepared")
	refused("approved", "prepared")
	if status, _, says := signAs(t, pdf, "prepared", one.files...); status != exitHolds {
		t.Fatalf("prepared: status %d: %s", status, says)
	}
	refused("approved", "checked")
	stuck := &sign.Report{Signatures: []sign.Signature{{Role: sign.RoleChecked}}}
	if err := inTurn(stuck, sign.RoleApproved); err == nil || !strings.Contains(err.Error(), "write it again") {
		t.Errorf("checked alone: %v", err)
	}
}

func TestSignElsewhere(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	before := contents(t, pdf)
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	folder := t.TempDir()
	other := filepath.Join(folder, "signed.pdf")
	to := func(name string) []string { return append([]string{"--output", name}, own.files...) }
	if status, _, says := signAs(t, pdf, "prepared", to(other)...); status != exitHolds || !strings.Contains(says, "wrote "+other) {
		t.Fatalf("status %d: %s", status, says)
	}
	for _, row := range [][2]string{{other, "exists and is not written over"}, {pdf, "exists and is not written over"}, {own.files[1], "exists and is not written over"},
		{filepath.Join(folder, "no", "a.pdf"), "; make it first"}, {folder, "exists and is not written over"}} {
		if status, out, says := signAs(t, pdf, "prepared", to(row[0])...); status != exitInput || out != "" || !strings.Contains(says, row[1]) {
			t.Errorf("%s: status %d: %s", row[0], status, says)
		}
	}
	status, out, says := call(t, string(before), append([]string{"sign", "-", "--as", "prepared"}, to("-")...)...)
	if status != exitHolds || !strings.HasPrefix(out, string(before)) || says != "" {
		t.Errorf("through a pipe: status %d: %s", status, says)
	}
	if status, out, _ := call(t, out, "verify", "-"); status != exitHolds {
		t.Errorf("through a pipe: %s", out)
	}
	if !bytes.Equal(contents(t, pdf), before) {
		t.Error("the sheet itself was changed")
	}
	if left, _ := os.ReadDir(folder); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

func TestSignThroughLink(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	link := filepath.Join(t.TempDir(), "link.pdf")
	if err := os.Symlink(pdf, link); err != nil {
		t.Skip("no symbolic links here")
	}
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	if err := os.Chmod(pdf, 0o440); err != nil {
		t.Fatal(err)
	}
	if status, _, says := signAs(t, link, "prepared", own.files...); status != exitInput || !strings.Contains(says, "is read-only and left as it was; --output") {
		t.Errorf("read-only: status %d: %s", status, says)
	}
	if err := os.Chmod(pdf, 0o640); err != nil {
		t.Fatal(err)
	}
	if status, _, says := signAs(t, link, "prepared", own.files...); status != exitHolds {
		t.Fatalf("status %d: %s", status, says)
	}
	info, err := os.Lstat(link)
	if err != nil || info.Mode()&fs.ModeSymlink == 0 {
		t.Error("the link was replaced by a file")
	}
	if info, err = os.Stat(pdf); err != nil || info.Mode().Perm() != 0o640 {
		t.Errorf("mode %v, %v", info.Mode(), err)
	}
	if status, out, _ := call(t, "", "verify", pdf); status != exitHolds || !strings.Contains(out, `prepared by "A. Name"`) {
		t.Errorf("status %d: %s", status, out)
	}
}

// TestSignedMeanwhile has somebody else sign between reading and writing.
func TestSignedMeanwhile(t *testing.T) {
	path := write(t, "sheet.pdf", []byte("signed by B"))
	if err := replace(path, []byte("as read"), []byte("signed by A")); err == nil || !strings.Contains(err.Error(), "changed since it was read") {
		t.Errorf("written over: %v", err)
	}
	if got := string(contents(t, path)); got != "signed by B" {
		t.Errorf("the file holds %q", got)
	}
	if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// TestSignedAtOnce has many sign at once, of whom one is told that it did, and the file holds
// that one's signature: none is lost.
func TestSignedAtOnce(t *testing.T) {
	for range 20 {
		path := write(t, "sheet.pdf", []byte("as read"))
		done := make(chan string)
		for i := range 8 {
			go func() {
				mine := fmt.Sprint("signed by ", i)
				if err := replace(path, []byte("as read"), []byte(mine)); err != nil {
					if mine = ""; !strings.Contains(err.Error(), "changed since it was read") {
						t.Error(err)
					}
				}
				done <- mine
			}()
		}
		var signed []string
		for range 8 {
			if mine := <-done; mine != "" {
				signed = append(signed, mine)
			}
		}
		if got := string(contents(t, path)); len(signed) != 1 || got != signed[0] {
			t.Errorf("%q said that they signed, the file holds %q", signed, got)
		}
		if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
			t.Errorf("left behind: %v", left)
		}
	}
}

// TestSignLocked has another run at work on the sheet, which ends or was broken off.
func TestSignLocked(t *testing.T) {
	path := write(t, "sheet.pdf", []byte("as read"))
	if err := os.WriteFile(path+".lock", nil, 0o600); err != nil {
		t.Fatal(err)
	}
	if err := replace(path, []byte("as read"), []byte("signed")); err == nil || !strings.Contains(err.Error(), path+".lock lies beside it") || !strings.Contains(err.Error(), "remove that file") {
		t.Errorf("a lock that was left: %v", err)
	}
	if got := string(contents(t, path)); got != "as read" {
		t.Errorf("the file holds %q", got)
	}
	time.AfterFunc(100*time.Millisecond, func() { os.Remove(path + ".lock") })
	if err := replace(path, []byte("as read"), []byte("signed")); err != nil {
		t.Errorf("a lock that was taken away: %v", err)
	}
	if left, _ := os.ReadDir(filepath.Dir(path)); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
}

// A fullDisk takes so many bytes and no more.
type fullDisk struct {
	*os.File
	room int
}

func (f *fullDisk) Write(p []byte) (int, error) {
	n, err := f.File.Write(p[:min(len(p), f.room)])
	if f.room -= n; err == nil && n < len(p) {
		err = &fs.PathError{Op: "write", Path: f.Name(), Err: syscall.ENOSPC}
	}
	return n, err
}

// TestDiskFull runs out of room in the middle of a file, and out of the right to
// write into the folder.
func TestDiskFull(t *testing.T) {
	withSheet(t, 50)
	pdf := sealed(t)
	before, folder := contents(t, pdf), filepath.Dir(pdf)
	own := newPerson(t, "A. Name", curve(t, elliptic.P256()), soon())
	tank := starter(t)
	whole := createFile
	t.Cleanup(func() { createFile = whole })
	elsewhere := append([]string{"--output", filepath.Join(folder, "other.pdf")}, own.files...)
	for want, create := range map[string]func(string, fs.FileMode) (newFile, error){
		"no space left on device": func(name string, mode fs.FileMode) (newFile, error) {
			f, err := whole(name, mode)
			if err != nil {
				return nil, err
			}
			return &fullDisk{f.(*os.File), 1000}, nil
		},
		"permission denied": func(name string, _ fs.FileMode) (newFile, error) {
			return nil, &fs.PathError{Op: "open", Path: name, Err: fs.ErrPermission}
		},
	} {
		createFile = create
		want = strings.Replace(want, "permission denied", fs.ErrPermission.Error(), 1)
		for what, run := range map[string]func() (int, string, string){
			"in place":  func() (int, string, string) { return signAs(t, pdf, "prepared", own.files...) },
			"elsewhere": func() (int, string, string) { return signAs(t, pdf, "prepared", elsewhere...) },
			"check": func() (int, string, string) {
				return call(t, "", "check", tank, "--pdf", filepath.Join(folder, "new.pdf"))
			},
		} {
			status, out, says := run()
			if status != exitInput || out != "" || !strings.Contains(says, ".pdf cannot be written: "+want) || strings.Contains(says, "/.") {
				t.Errorf("%s: status %d, printed %q: %s", what, status, out, says)
			}
			if what == "in place" && !strings.Contains(says, "it is left as it was") {
				t.Errorf("nothing says that the sheet is safe: %s", says)
			}
		}
	}
	if left, _ := os.ReadDir(folder); len(left) != 1 || !bytes.Equal(contents(t, pdf), before) {
		t.Errorf("left behind: %v", left)
	}
	createFile = whole
	var says bytes.Buffer
	status := run(append([]string{"proofsheet", "sign", pdf, "--as", "prepared", "--output", "-"}, own.files...), strings.NewReader(""), brokenPipe{}, &says)
	if status != exitInput || !strings.Contains(says.String(), "standard output: ") {
		t.Errorf("a full standard output: status %d: %s", status, says.String())
	}
}

type brokenPipe struct{}

func (brokenPipe) Write([]byte) (int, error) { return 0, errors.New("no room") }
