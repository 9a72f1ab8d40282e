package main

import (
	"encoding/json"
	"fmt"
)

// otherBytes says why a sheet that this version draws otherwise does not hold. That its data
// agree is no reason to let it hold: what stands on a page is nothing but drawing, and one
// byte more can paint over all of it.
func (e *examination) otherBytes(a *again) error {
	differs, own := e.compareData(a), programVersion()
	if e.madeBy == own {
		return fmt.Errorf("this is not the %s that version %s makes of the embedded files%s; it was changed, or another build that is also called %[2]s made it, or one for another kind of processor, whose last digits may differ: "+
			"nothing on its pages is proven; write it again with this build, or verify and sign it with the one that made it", e.kind, own, differs)
	}
	return fmt.Errorf("the pages are not proven: the %s says that version %q made it, and version %s does not draw them byte for byte%s; "+
		"verify and sign it with the version that made it, or write it again with this one", e.kind, e.madeBy, own, differs)
}

// compareData counts how far the embedded data agree with those of this version, for a reader
// who has nothing but another version, and returns the first difference in words.
func (e *examination) compareData(a *again) string {
	const room = 1 << 20 // [byte] by which another version's data may be longer than twice our own
	embedded := e.files[len(e.files)-1].Data
	if len(embedded) > 2*len(a.data)+room {
		return fmt.Sprintf("; its data are %d bytes instead of %d and were not compared", len(embedded), len(a.data))
	}
	var was, is any
	if json.Unmarshal(embedded, &was) != nil || json.Unmarshal(a.data, &is) != nil {
		return "; its data cannot be read"
	}
	n := numbers{}
	n.compare("", "", was, is)
	e.compared = &n
	switch {
	case n.first != "":
		return "; in its data " + n.first
	case n.more > 0:
		return "; its data hold more than this version computes"
	}
	return ""
}

// text prints what was compared.
func (n numbers) text() string {
	return fmt.Sprintf("recomputed   by version %s: %d of %d numbers and verdicts in its data agree within %g; this says nothing of its pages\n",
		programVersion(), n.same, n.all, alike)
}
