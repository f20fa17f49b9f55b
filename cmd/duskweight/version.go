package main

import "runtime/debug"

// stamped is set at build time: -ldflags "-X main.stamped=1.2.3".
var stamped string

// version is what the build says of itself: the stamped version, or the module's, or the revision it was built from.
func version() string {
	if stamped != "" {
		return stamped
	}
	info, ok := debug.ReadBuildInfo()
	if !ok {
		return "unknown"
	}
	if v := info.Main.Version; v != "" && v != "(devel)" {
		return v
	}
	for _, s := range info.Settings {
		if s.Key == "vcs.revision" && len(s.Value) >= 12 {
			return "development " + s.Value[:12]
		}
	}
	return "development"
}
