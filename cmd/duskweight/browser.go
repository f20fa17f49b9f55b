package main

import (
	"os"
	"os/exec"
	"runtime"
)

// openBrowser shows an address in the user's browser, where there is a screen to show it on. That it cannot is no
// failure: the address is printed.
func openBrowser(url string, not bool) {
	if not || !hasScreen() {
		return
	}
	c := showing(url)
	if c.Start() == nil {
		go func() { _ = c.Wait() }() // its end is nobody's business, but it must be collected
	}
}

// showing is the command that shows an address in the user's browser.
func showing(url string) *exec.Cmd {
	switch runtime.GOOS {
	case "darwin":
		return exec.Command("open", url)
	case "windows":
		return exec.Command("rundll32", "url.dll,FileProtocolHandler", url)
	}
	return exec.Command("xdg-open", url)
}

func hasScreen() bool {
	if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}
