package main

import (
	"bytes"
	"crypto/ecdsa"
	"crypto/elliptic"
	"crypto/rand"
	"crypto/x509"
	"crypto/x509/pkix"
	"encoding/pem"
	"math"
	"math/big"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"software.sslmate.com/src/go-pkcs12"

	"proofsheet/report"
	"proofsheet/report/sign"
)

// write puts a file into a new folder and returns its name.
func write(t *testing.T, name string, data []byte) string {
	t.Helper()
	path := filepath.Join(t.TempDir(), name)
	if err := os.WriteFile(path, data, 0o600); err != nil {
		t.Fatal(err)
	}
	return path
}

func TestSealedSheetVerifies(t *testing.T) {
	path := starter(t)
	withSheet(t, 101)
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	if status, _, says := call(t, "", "check", path, "--pdf", pdf); status != exitFails {
		t.Fatalf("status %d: %s", status, says)
	}
	if left, _ := os.ReadDir(filepath.Dir(pdf)); len(left) != 1 {
		t.Errorf("left behind: %v", left)
	}
	status, out, says := call(t, "", "verify", pdf)
	if status != exitHolds || says != "" {
		t.Fatalf("status %d: %s%s", status, out, says)
	}
	for _, want := range []string{`as seal by "` + sign.LocalName + `"`, "tank.toml, SHA-256", "recomputed", "the sheet says: not satisfied"} {
		if !strings.Contains(flat(out), flat(want)) {
			t.Errorf("%q is missing in\n%s", want, out)
		}
	}
	data, err := os.ReadFile(pdf)
	if err != nil {
		t.Fatal(err)
	}
	if status, _, _ := call(t, string(data), "verify", "-"); status != exitHolds {
		t.Errorf("from standard input: status %d", status)
	}
	data[len(data)/2] ^= 1
	status, out, _ = call(t, string(data), "verify", "-")
	if status != exitFails || !strings.Contains(out, "does not hold") {
		t.Errorf("a changed sheet: status %d: %s", status, out)
	}
}

// TestOtherNumbersDoNotVerify makes a sheet with a genuine seal over numbers
// that this program does not compute from the tank file in it.
func TestOtherNumbersDoNotVerify(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	if status, _, says := call(t, "", "check", path, "--pdf", pdf); status != exitHolds {
		t.Fatalf("status %d: %s", status, says)
	}
	withSheet(t, 60)
	status, out, _ := call(t, "", "verify", pdf)
	if status != exitFails || !strings.Contains(out, "does not hold") || !strings.Contains(out, "was 50 and is 60") {
		t.Errorf("status %d: %s", status, out)
	}
}

func TestUnsignedSheet(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	status, first, says := call(t, "", "check", path, "--pdf", "-", "--unsigned")
	if status != exitHolds || !strings.HasPrefix(first, "%PDF-") || says != "" {
		t.Fatalf("status %d: %s", status, says)
	}
	if _, again, _ := call(t, "", "check", path, "--pdf", "-", "--unsigned"); again != first {
		t.Error("the same input gives other bytes")
	}
	status, out, _ := call(t, first, "verify", "-")
	if status != exitFails || !strings.Contains(out, "not signed") {
		t.Errorf("verify: status %d: %s", status, out)
	}
}

func TestPreparersKey(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	key, err := ecdsa.GenerateKey(elliptic.P256(), rand.Reader)
	if err != nil {
		t.Fatal(err)
	}
	form := &x509.Certificate{
		SerialNumber: big.NewInt(7), Subject: pkix.Name{CommonName: "A. Name"},
		NotBefore: time.Now().Add(-time.Hour), NotAfter: time.Now().Add(time.Hour),
	}
	der, err := x509.CreateCertificate(rand.Reader, form, form, key.Public(), key)
	if err != nil {
		t.Fatal(err)
	}
	c, err := x509.ParseCertificate(der)
	if err != nil {
		t.Fatal(err)
	}
	sec1, err := x509.MarshalECPrivateKey(key)
	if err != nil {
		t.Fatal(err)
	}
	packed, err := pkcs12.Modern.Encode(key, c, nil, "secret")
	if err != nil {
		t.Fatal(err)
	}
	keyFile := write(t, "key.pem", pem.EncodeToMemory(&pem.Block{Type: "EC PRIVATE KEY", Bytes: sec1}))
	certFile := write(t, "cert.pem", pem.EncodeToMemory(&pem.Block{Type: "CERTIFICATE", Bytes: der}))
	p12, word := write(t, "key.p12", packed), write(t, "word", []byte("secret\n"))
	pdf := filepath.Join(t.TempDir(), "sheet.pdf")
	for _, row := range []struct {
		env    string
		args   []string
		status int
		want   string
	}{
		{"", []string{"--key", keyFile, "--certificate", certFile}, exitHolds, ""},
		{"secret", []string{"--p12", p12}, exitHolds, ""},
		{"", []string{"--p12", p12, "--password-file", word}, exitHolds, ""},
		{"guess", []string{"--p12", p12}, exitInput, "password does not open"},
		{"", []string{"--p12", p12}, exitInput, passwordVariable},
	} {
		os.Remove(pdf)
		t.Setenv(passwordVariable, row.env)
		if row.env == "" {
			os.Unsetenv(passwordVariable)
		}
		status, _, says := call(t, "", append([]string{"check", path, "--pdf", pdf}, row.args...)...)
		if status != row.status || !strings.Contains(says, row.want) {
			t.Errorf("%v: status %d: %s", row.args, status, says)
		}
		_, err := os.Stat(pdf)
		if (err == nil) != (row.status == exitHolds) {
			t.Errorf("%v: sheet: %v", row.args, err)
		}
		if err != nil {
			continue
		}
		if status, out, _ := call(t, "", "verify", pdf); status != exitHolds || !strings.Contains(out, `as prepared by "A. Name"`) {
			t.Errorf("%v: verify: status %d: %s", row.args, status, out)
		}
		// A name on a sheet is not lost by running the program again.
		if status, _, says := call(t, "", "check", path, "--pdf", pdf); status != exitInput || !strings.Contains(says, `carries the signature of "A. Name"`) {
			t.Errorf("%v: written over: status %d: %s", row.args, status, says)
		}
		if status, _, says := call(t, "", "blank", path, "--pdf", pdf); status != exitInput || !strings.Contains(says, `carries the signature of "A. Name"`) {
			t.Errorf("%v: written over by drawings: status %d: %s", row.args, status, says)
		}
	}
}

func TestInputsAreNotWrittenOver(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	before, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	key := write(t, "key.pem", []byte("key"))
	for _, args := range [][]string{
		{"--json", path}, {"--pdf", path}, {"--json", key, "--pdf", "x", "--key", key, "--certificate", key},
	} {
		status, _, says := call(t, "", append([]string{"check", path}, args...)...)
		if status != exitInput || !strings.Contains(says, "is an input") {
			t.Errorf("%s: status %d: %s", args, status, says)
		}
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Error("the tank file was written over")
	}
	if status, _, says := call(t, "", "check", path, "--json", "x", "--pdf", "./x", "--unsigned"); status != exitInput {
		t.Errorf("two outputs of one name: status %d: %s", status, says)
	}
}

// TestAllOutputsOrNone has the last of several outputs fail.
func TestAllOutputsOrNone(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	folder := t.TempDir()
	data := filepath.Join(folder, "sheet.json")
	status, out, says := call(t, "", "check", path, "--json", data, "--unsigned", "--pdf", filepath.Join(folder, "no", "sheet.pdf"))
	if status != exitInput || out != "" || !strings.HasSuffix(says, "; make it first\n") {
		t.Errorf("status %d, printed %q: %s", status, out, says)
	}
	if left, _ := os.ReadDir(folder); len(left) != 0 {
		t.Errorf("left behind: %v", left)
	}
	if status, _, says := call(t, "", "check", path, "--json", data, "--figures", filepath.Join(folder, "figures")); status != exitHolds {
		t.Errorf("status %d: %s", status, says)
	}
	if _, err := os.Stat(data); err != nil {
		t.Error(err)
	}
}

// TestLogHasOneUnit has a step so low that by itself it would be shown in a
// smaller unit than the set pressure.
func TestLogHasOneUnit(t *testing.T) {
	s := &report.Sheet{Proof: &report.Proof{
		Method: "hydrostatic", Pressure: 1313131, Relief: math.NaN(), StoredEnergy: math.NaN(), Hold: 601,
		Steps: []report.ProofStep{{Name: "reference", Pressure: 65656, Hold: math.NaN(), InjectedVolume: math.NaN()}},
	}}
	text := proofText(s, 0)
	for _, want := range []string{"1.314 MPa", "0.06566 MPa", "11 min", "relief device                   no room for one"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	if strings.Contains(text, "kPa") || strings.Contains(text, "NaN") {
		t.Errorf("a second unit or no number:\n%s", text)
	}
	if text := proofText(&report.Sheet{Notes: []string{"why"}}, 0); !strings.Contains(text, "no proof plan is issued\nnote: why") {
		t.Errorf("no plan:\n%s", text)
	}
}

func TestDifference(t *testing.T) {
	a := map[string]any{"program": "1", "x": []any{1.0, map[string]any{"y": "a"}}, "z": nil}
	b := map[string]any{"program": "2", "x": []any{1.0, map[string]any{"y": "b"}}, "z": nil}
	if d := difference("", a, a); d != "" {
		t.Errorf("a value differs from itself: %s", d)
	}
	if d := difference("", a, b); d != "x[1].y was a and is b" {
		t.Errorf("difference %q", d)
	}
	for _, other := range []any{nil, 1.0, []any{}, map[string]any{"x": 1.0}} {
		if difference("", a, other) == "" {
			t.Errorf("no difference from %v", other)
		}
	}
}

func TestEmbeddedFilesOfOneName(t *testing.T) {
	open := embedded([]sign.Attachment{{Name: "c.csv", Data: []byte("1")}, {Name: "f.csv", Data: []byte("2")}, {Name: "c.csv", Data: []byte("3")}})
	for _, row := range []struct{ path, want string }{{"a/c.csv", "1"}, {"b/c.csv", "3"}, {"f.csv", "2"}, {"f.csv", "2"}} {
		if got, err := open(row.path); err != nil || string(got) != row.want {
			t.Errorf("%s: %q, %v", row.path, got, err)
		}
	}
	if _, err := open("nosuch.csv"); err == nil {
		t.Error("a file that is not embedded was opened")
	}
}

// TestWhatIsNotWrittenOver has files of others where a sheet is to go: they stay; an
// empty one and this program's own may go.
func TestWhatIsNotWrittenOver(t *testing.T) {
	path := starter(t)
	withSheet(t, 50)
	folder := t.TempDir()
	own := filepath.Join(folder, "own.pdf")
	if status, _, says := call(t, "", "check", path, "--pdf", own, "--unsigned"); status != exitHolds {
		t.Fatal(says)
	}
	drawn, err := os.ReadFile(own)
	if err != nil {
		t.Fatal(err)
	}
	huge := append([]byte("%PDF-1.7\n"), make([]byte, mostInput)...)
	for name, row := range map[string]struct {
		data []byte
		want string
	}{
		"other.toml": {[]byte("format = 1\n"), "is no document of this program"},
		"theirs.pdf": {[]byte("%PDF-1.4\n1 0 obj\n<</Producer (another)>>\n"), "is no document of this program"},
		"huge.pdf":   {huge, "cannot be read"},
		"empty.pdf":  {nil, ""},
		"ours.pdf":   {drawn, ""},
	} {
		file := filepath.Join(folder, name)
		if err := os.WriteFile(file, row.data, 0o600); err != nil {
			t.Fatal(err)
		}
		status, out, says := call(t, "", "check", path, "--pdf", file)
		now, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case row.want == "" && (status != exitHolds || bytes.Equal(now, row.data)):
			t.Errorf("%s: status %d: %s", name, status, says)
		case row.want != "" && (status != exitInput || out != "" || !strings.Contains(says, row.want) || !bytes.Equal(now, row.data)):
			t.Errorf("%s: status %d, kept %v: %s", name, status, bytes.Equal(now, row.data), says)
		case row.want != "" && strings.Count(says, "\n") > 2: // the first run tells of its identity
			t.Errorf("%s: more than a line: %s", name, says)
		}
	}
	if left, _ := filepath.Glob(filepath.Join(folder, ".*")); len(left) > 0 {
		t.Errorf("left behind: %v", left)
	}
}
