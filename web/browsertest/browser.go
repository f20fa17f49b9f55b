// Package browsertest drives a real browser for tests: it opens pages of a server in this process at a size and in a
// look, and collects what a person would not see: console errors, violations of the content policy, requests that
// leave the machine, findings of the accessibility checker, pages of a printed sheet. For tests only.
package browsertest

import (
	"context"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/chromedp/chromedp"
)

// names under which the systems install a Chromium, the first found is taken.
var names = []string{"chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome",
	"/Applications/Chromium.app/Contents/MacOS/Chromium", "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome"}

// Missing is what a test says that was left out for want of a browser.
const Missing = "left out: no Chromium found (Debian: apt-get install chromium; or set DUSKWEIGHT_CHROMIUM to its path)"

// Path returns the browser's path, or "" where there is none. DUSKWEIGHT_CHROMIUM comes first.
func Path() string {
	if p := os.Getenv("DUSKWEIGHT_CHROMIUM"); p != "" {
		return p
	}
	for _, n := range names {
		if p, err := exec.LookPath(n); err == nil {
			return p
		}
	}
	return ""
}

// Browser is a running browser with a profile of its own. It ends with the test that started it.
type Browser struct {
	ctx context.Context
}

// Start starts a browser. Without one the test is skipped with a sentence, or fails where CI is set: there no browser
// test may be left out. The browser can resolve no name, so nothing it loads leaves the machine. The test's name begins
// with TestBrowser, so that `make test` can list what it left out.
func Start(t testing.TB) *Browser {
	t.Helper()
	if !strings.HasPrefix(t.Name(), "TestBrowser") && !strings.HasPrefix(t.Name(), "BenchmarkBrowser") {
		t.Fatalf("%s starts a browser; its name must begin with TestBrowser", t.Name())
	}
	path := Path()
	if path == "" {
		if os.Getenv("CI") != "" {
			t.Fatal(Missing)
		}
		t.Skip(Missing)
	}
	opts := append(chromedp.DefaultExecAllocatorOptions[:], chromedp.ExecPath(path), chromedp.DisableGPU,
		chromedp.UserDataDir(profile(t)), chromedp.Flag("disable-quic", true), chromedp.Flag("disable-component-update", true),
		chromedp.Flag("disable-dev-shm-usage", true), chromedp.Flag("force-color-profile", "srgb"), chromedp.Flag("lang", "en-US"),
		chromedp.Flag("host-resolver-rules", "MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"))
	if os.Geteuid() == 0 || os.Getenv("CI") != "" {
		opts = append(opts, chromedp.NoSandbox)
	}
	alloc, endAlloc := chromedp.NewExecAllocator(context.Background(), opts...)
	ctx, end := chromedp.NewContext(alloc)
	t.Cleanup(func() {
		_ = chromedp.Cancel(ctx) // waits for the browser's end
		end()
		endAlloc()
	})
	if err := chromedp.Do(ctx); err != nil {
		t.Fatalf("the browser does not start: %v", err)
	}
	return &Browser{ctx: ctx}
}

// profile is a folder for the browser's profile. A browser may write a last file after its end, so that removing the
// folder is tried for a while and does not fail the test.
func profile(t testing.TB) string {
	t.Helper()
	dir, err := os.MkdirTemp("", "duskweight-browser-*")
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		for range 20 {
			if os.RemoveAll(dir) == nil {
				return
			}
			time.Sleep(50 * time.Millisecond)
		}
	})
	return dir
}

// root is the folder of the module, found upwards from the package under test.
func root(t testing.TB) string {
	t.Helper()
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	for ; dir != filepath.Dir(dir); dir = filepath.Dir(dir) {
		if _, err := os.Stat(filepath.Join(dir, "go.mod")); err == nil {
			return dir
		}
	}
	t.Fatal("no go.mod above the test")
	return ""
}
