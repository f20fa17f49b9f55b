package internal_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// ownFigures are the functions outside of internal/model/unit that print a fraction themselves, each with the reason why nobody
// reads it as a figure of the plan. All others ask the one formatter of unit, so that a figure has the same digits everywhere.
var ownFigures = map[string]string{
	"internal/catalog/row.go sizeName":         "a marked figure, which say.Marked reads and prints in the reader's units",
	"internal/draw/states.go band":             "the path of a picture",
	"internal/draw/svg.go num":                 "a coordinate of a picture",
	"internal/draw/worstweek.go stairs":        "the path of a picture",
	"internal/model/interval.go plain":         "a limit of a range as a document writes it",
	"internal/weather/tmy2.go tmy2Row":         "a field of a weather file, read back as a number",
	"web/hoist/motion.go motionOf":             "an attribute of a slider, read by the browser",
	"web/overview/try.go sliders":              "an attribute of a slider, read by the browser",
	"web/page/csv.go CsvCell":                  "a number in a file for other programs",
	"web/page/how.go barWidth":                 "an attribute of a picture",
	"web/page/plot.go RoundTo":                 "read back as a number",
	"web/page/plot.go points":                  "a point of a plot, read by the browser",
	"web/place/weather_reading.go showReading": "an attribute of a bar of progress, read by the browser",
	"web/place/weather_slip.go wayValue":       "the value of a choice, read back",
}

// fraction is a verb of fmt that prints a fraction.
var fraction = regexp.MustCompile(`%[-+ #0]*(?:\d+|\*)?(?:\.(?:\d+|\*)?)?[feEgG]`)

// printsFractions are the functions of a file that print fractions by themselves.
func printsFractions(file *ast.File) (names []string) {
	for _, d := range file.Decls {
		name, found := "", false
		if f, ok := d.(*ast.FuncDecl); ok {
			name = f.Name.Name
		}
		ast.Inspect(d, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if !ok {
				return true
			}
			f, ok := call.Fun.(*ast.SelectorExpr)
			if !ok {
				return true
			}
			of, _ := f.X.(*ast.Ident)
			switch {
			case of == nil:
			case of.Name == "strconv" && (f.Sel.Name == "FormatFloat" || f.Sel.Name == "AppendFloat"):
				found = true
			case of.Name == "fmt":
				for _, a := range call.Args {
					if text, ok := a.(*ast.BasicLit); ok && text.Kind == token.STRING {
						if words, err := strconv.Unquote(text.Value); err == nil && fraction.MatchString(strings.ReplaceAll(words, "%%", "")) {
							found = true
						}
					}
				}
			}
			return true
		})
		if found {
			names = append(names, name)
		}
	}
	return names
}

// Every figure of the pages is printed by unit: nothing else in web and internal prints a fraction, but for what the list names.
func TestFiguresHaveOneFormatter(t *testing.T) {
	left := map[string]bool{}
	for at := range ownFigures {
		left[at] = true
	}
	for _, below := range []string{"../web", "."} {
		err := filepath.WalkDir(below, func(path string, d fs.DirEntry, err error) error {
			switch {
			case err != nil:
				return err
			case d.IsDir() && (d.Name() == "tools" || d.Name() == "testdata" || strings.HasSuffix(filepath.ToSlash(path), "model/unit")):
				return filepath.SkipDir
			case !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go"):
				return nil
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			from := strings.TrimPrefix(filepath.ToSlash(path), "../")
			if below == "." {
				from = "internal/" + from
			}
			for _, name := range printsFractions(file) {
				if at := from + " " + name; ownFigures[at] == "" {
					t.Errorf("%s prints a fraction itself: ask unit (Format, Rounded, Fixed, Whole, PercentTo)", at)
				} else {
					delete(left, at)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	for at := range left {
		t.Errorf("%s is on the list and prints no fraction", at)
	}
}

// The test above can fail.
func TestFiguresHaveOneFormatterCanFail(t *testing.T) {
	const bad = `package bad
func a(x float64) string { return fmt.Sprintf("%.1f Wh", x) }
func b(x float64) string { return strconv.FormatFloat(x, 'f', 1, 64) }
func c(x int) string { return fmt.Sprintf("%d of %s, 5 %% gone, 7 %%e", x, "9") }
func d(x float64) string { return fmt.Sprintf("%6.*g", 3, x) }`
	file, err := parser.ParseFile(token.NewFileSet(), "bad.go", bad, 0)
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(printsFractions(file), " "); got != "a b d" {
		t.Errorf("found %q, want a b d", got)
	}
}
