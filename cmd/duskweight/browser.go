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
	var c *exec.Cmd
	switch runtime.GOOS {
	case "darwin":
		c = exec.Command("open", url)
	case "windows":
		c = exec.Command("rundll32", "url.dll,FileProtocolHandler", url)
	default:
		c = exec.Command("xdg-open", url)
	}
	if c.Start() == nil {
		go func() { _ = c.Wait() }() // its end is nobody's business, but it must be collected
	}
}

func hasScreen() bool {
	if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
		return true
	}
	return os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != ""
}
