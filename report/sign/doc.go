// Package sign adds digital signatures to a calculation sheet and checks them.
//
// A sheet is signed by an incremental update of the PDF file: nothing that was
// written before is touched, and a signature dictionary, its form field, the
// page and the catalog that name it are appended with a cross-reference
// section of their own. The signature covers every byte of the file but the
// hole that holds the signature itself.
//
// # Glossary
//
//   - base: the sheet as it was drawn, before the first signature.
//   - update: what one signature appends, from the %%EOF before it to its own.
//   - hole: the hexadecimal text of /Contents, the only bytes not covered.
//   - role: as what somebody signs; seal, prepared, checked or approved. A
//     seal says only that the file has not changed since it was written.
//   - fingerprint: SHA-256 over the certificate, as it is compared by voice.
//
// # Functions and their sources
//
//	Sign, Verify     ISO 32000-1:2008, 7.5.4 to 7.5.6 (cross-reference table,
//	                 trailer, incremental updates), 12.7 (forms), 12.8
//	                 (signatures)                                verify_test.go, sign_test.go
//	CMS container    RFC 5652 (signed data), RFC 5035 (signing certificate,
//	                 version 2)                                  verify_test.go, sign_test.go
//	visible frame    ISO 32000-1, 8.10 (form XObjects), 12.5.5
//	                 (appearance streams), annex D.2 (letters)   appearance_test.go
//	Report.Takes     common practice: each role once and in order order_test.go
//	Report.Text      ISO 32000-1, 9.4.3 (shown strings)          text_test.go
//	LoadPEM          RFC 5958, RFC 5915, RFC 8017                keys_test.go
//	LoadPKCS12       RFC 7292                                    keys_test.go
//	LocalIdentity    common practice                             keys_test.go
//
// A certificate must allow a person's signature: RFC 5280, 4.2.1.3 and 4.2.1.12,
// and RFC 9336, tested in keys_test.go.
//
// Verify is stricter than the standards: it rebuilds each update from what the
// signature dictionary says and demands the same bytes, so that nothing but a
// signature can have been added after an earlier one, and it refuses a CMS
// container with parts that no signature covers.
//
// # Not covered
//
// Trust in a certificate: a reader compares the fingerprint with one that came
// by another way. Time stamps of a third party: the time is the word of the
// signer's own clock. Revocation: it needs a network. Encrypted documents,
// cross-reference streams and signatures of other programs are refused.
package sign
