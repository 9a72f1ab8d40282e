package main

import (
	"fmt"
	"runtime"
	"runtime/debug"
)

// release is the version of a released build, set by
// -ldflags "-X main.release=1.2.3".
var release string

// programVersion returns the version that is printed on a sheet.
func programVersion() string {
	if release != "" {
		return release
	}
	if info, ok := debug.ReadBuildInfo(); ok && info.Main.Version != "" && info.Main.Version != "(devel)" {
		return info.Main.Version
	}
	return "devel"
}

// version returns the version with what it was built by.
func version() string {
	commit := ""
	if info, ok := debug.ReadBuildInfo(); ok {
		for _, s := range info.Settings {
			if s.Key == "vcs.revision" && len(s.Value) >= 12 {
				commit = "commit " + s.Value[:12] + ", "
			}
		}
	}
	return fmt.Sprintf("%s (%s%s)", programVersion(), commit, runtime.Version())
}
