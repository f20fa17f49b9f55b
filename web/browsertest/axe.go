package browsertest

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"

	"github.com/chromedp/chromedp"
)

// Finding is one accessibility rule that the page breaks.
type Finding struct {
	ID     string   // the rule
	Impact string   // minor, moderate, serious, critical
	Help   string   // in words
	Where  []string // the elements, as selectors
}

// run asks for the rules of WCAG 2.0 to 2.2, levels A and AA. Nothing is fetched anew before (preload): only
// two rules ask for that, one that is experimental and off, one about sound, and it took a third of the time.
const run = `axe.run({runOnly:{type:'tag',values:['wcag2a','wcag2aa','wcag21a','wcag21aa','wcag22aa']},resultTypes:['violations'],preload:false}).then(r=>` +
	`JSON.stringify(r.violations.map(v=>({ID:v.id,Impact:v.impact||'',Help:v.help,Where:v.nodes.map(n=>n.target.join(' '))}))))`

// Axe runs the accessibility checker on the page as it stands and returns what it finds. The checker cannot judge
// contrast inside SVG: the palette has a test of its own. It also runs on pages whose scripts are switched off.
func (tab *Tab) Axe() []Finding {
	tab.t.Helper()
	source, err := os.ReadFile(filepath.Join(root(tab.t), "testdata", "axe", "axe.min.js"))
	tab.check(err)
	get(tab, chromedp.Evaluate[any](string(source)+";1"))
	var found []Finding
	out := tab.String(run)
	tab.check(json.NewDecoder(strings.NewReader(out)).Decode(&found))
	return found
}
