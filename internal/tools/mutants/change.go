package main

import (
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
)

// rooms are the packages whose numbers a plan rests on.
var rooms = []string{"internal/model/...", "internal/draw", "internal/catalog", "internal/weather"}

// change is one other text for a piece of a file.
type change struct {
	file     string // by path below the root
	line     int
	from, to int // bytes of the file
	old, new string
	text     string // the line it stands in
}

func (c change) place() string { return fmt.Sprintf("%s:%d", c.file, c.line) }

func (c change) String() string {
	return fmt.Sprintf("%s  %s → %s  | %s", c.place(), c.old, c.new, c.text)
}

// swaps are what an operator is changed into: a comparison at its border and turned round, a sign into its opposite.
var swaps = map[token.Token][]token.Token{
	token.LSS: {token.LEQ, token.GEQ}, token.LEQ: {token.LSS, token.GTR},
	token.GTR: {token.GEQ, token.LEQ}, token.GEQ: {token.GTR, token.LSS},
	token.EQL: {token.NEQ}, token.NEQ: {token.EQL},
	token.ADD: {token.SUB}, token.SUB: {token.ADD}, token.MUL: {token.QUO}, token.QUO: {token.MUL},
	token.LAND: {token.LOR}, token.LOR: {token.LAND},
	token.ADD_ASSIGN: {token.SUB_ASSIGN}, token.SUB_ASSIGN: {token.ADD_ASSIGN},
	token.MUL_ASSIGN: {token.QUO_ASSIGN}, token.QUO_ASSIGN: {token.MUL_ASSIGN},
}

// invented are files whose numbers are those of worked samples of our own invention: another number is another sample.
var invented = []string{"internal/catalog/sample.go", "internal/catalog/sample_shelf.go", "internal/catalog/cabin.go"}

// changes are all possible changes in the files, without tests, of these rooms.
func (t *tree) changes(rooms []string) ([]change, error) {
	var all []change
	for _, p := range t.packages {
		if p.Dir == "" || !slices.ContainsFunc(rooms, func(room string) bool { return inRoom(t.below(p), room) }) {
			continue
		}
		found, err := t.changesIn(p)
		if err != nil {
			return nil, err
		}
		all = append(all, found...)
	}
	return all, nil
}

func inRoom(path, room string) bool {
	above, all := strings.CutSuffix(room, "/...")
	return path == above || all && strings.HasPrefix(path, above+"/")
}

// changesIn are those of one package; none in a file that a program has written.
func (t *tree) changesIn(p pkg) ([]change, error) {
	files := token.NewFileSet()
	var parsed []*ast.File
	for _, name := range p.GoFiles {
		f, err := parser.ParseFile(files, filepath.Join(p.Dir, name), nil, parser.ParseComments)
		if err != nil {
			return nil, err
		}
		parsed = append(parsed, f)
	}
	known := types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	check := types.Config{Importer: importer.ForCompiler(files, "gc", func(path string) (io.ReadCloser, error) { return os.Open(t.exports[path]) })}
	if _, err := check.Check(p.ImportPath, files, parsed, &known); err != nil {
		return nil, err
	}
	var all []change
	for i, f := range parsed {
		if ast.IsGenerated(f) {
			continue
		}
		text, err := os.ReadFile(filepath.Join(p.Dir, p.GoFiles[i]))
		if err != nil {
			return nil, err
		}
		lines := strings.Split(string(text), "\n")
		w := walk{known: known.Types, picture: f.Name.Name == "draw", sample: slices.Contains(invented, t.below(p)+"/"+p.GoFiles[i])}
		w.add = func(at token.Pos, old, new string) {
			p0 := files.Position(at)
			all = append(all, change{file: t.below(p) + "/" + p.GoFiles[i], line: p0.Line, from: p0.Offset, to: p0.Offset + len(old),
				old: old, new: new, text: strings.TrimSpace(lines[p0.Line-1])})
		}
		ast.Inspect(f, w.visit)
	}
	return all, nil
}

// walk goes through a file and adds what can be changed in it.
type walk struct {
	known   map[ast.Expr]types.TypeAndValue
	picture bool
	sample  bool
	add     func(at token.Pos, old, new string)
	leave   []ast.Expr // numbers that stay, or are changed otherwise
}

func (w *walk) visit(n ast.Node) bool {
	switch n := n.(type) {
	case *ast.ImportSpec, *ast.ArrayType:
		return false
	case *ast.RangeStmt: // a fixed number of rounds: one more of a bisection is the same program, so only the first is left
		if l, ok := n.X.(*ast.BasicLit); ok && l.Value != "1" {
			w.leave = append(w.leave, l)
			w.add(l.Pos(), l.Value, "1")
		}
	case *ast.CallExpr:
		w.call(n)
	case *ast.BasicLit:
		if other := otherNumber(n, w.picture); other != "" && !w.sample && !slices.Contains(w.leave, ast.Expr(n)) {
			w.add(n.Pos(), n.Value, other)
		}
	case *ast.BinaryExpr:
		if n.Op == token.ADD || n.Op == token.SUB || compares(n.Op) {
			w.leave = slices.AppendSeq(w.leave, slices.Values(tolerances(n)))
		}
		for _, other := range swaps[n.Op] {
			if !w.sameBorder(n, other) {
				w.add(n.OpPos, n.Op.String(), other.String())
			}
		}
	case *ast.AssignStmt:
		for _, other := range swaps[n.Tok] {
			w.add(n.TokPos, n.Tok.String(), other.String())
		}
	}
	return true
}

// call leaves what is no number of the program: how much memory is reserved ahead, and in a picture how wide a stroke is.
func (w *walk) call(n *ast.CallExpr) {
	f, ok := n.Fun.(*ast.Ident)
	switch {
	case !ok:
	case f.Name == "make" && len(n.Args) == 3:
		w.leave = append(w.leave, n.Args[2])
	case w.picture && f.Name == "stroke" && len(n.Args) == 3:
		w.leave = append(w.leave, n.Args[1])
	}
}

func compares(op token.Token) bool {
	return op == token.LSS || op == token.LEQ || op == token.GTR || op == token.GEQ
}

// tolerances are the sides of a sum, a difference or a comparison that are there for the last digits of computed numbers alone.
func tolerances(n *ast.BinaryExpr) (out []ast.Expr) {
	for _, side := range []ast.Expr{n.X, n.Y} {
		if l, ok := side.(*ast.BasicLit); ok {
			if x, err := strconv.ParseFloat(l.Value, 64); err == nil && x > 0 && x <= 1e-6 {
				out = append(out, l)
			}
		}
	}
	return out
}

// sameBorder reports whether a comparison of two computed broken numbers is only changed at its border, where they are
// equal to the last bit. A border that stands in the program as a number is asked for.
func (w *walk) sameBorder(n *ast.BinaryExpr, other token.Token) bool {
	switch {
	case n.Op == token.LSS && other == token.LEQ, n.Op == token.LEQ && other == token.LSS,
		n.Op == token.GTR && other == token.GEQ, n.Op == token.GEQ && other == token.GTR:
	default:
		return false
	}
	x, y := w.known[n.X], w.known[n.Y]
	basic, ok := x.Type.Underlying().(*types.Basic)
	return ok && basic.Info()&types.IsFloat != 0 && x.Value == nil && y.Value == nil
}

// otherNumber is a number near another: the next whole number, or some three percent more. In a picture a millimetre more
// is no fault, so there it is twice the number, and a place is moved by twenty at least. Empty for what is not a number.
func otherNumber(n *ast.BasicLit, picture bool) string {
	x, err := strconv.ParseFloat(strings.ReplaceAll(n.Value, "_", ""), 64)
	switch {
	case err != nil || n.Kind != token.INT && n.Kind != token.FLOAT:
		return ""
	case picture && x > 1:
		return strconv.FormatFloat(x+max(x, 20), 'g', 6, 64)
	case picture && x > 0 && x < 1:
		return strconv.FormatFloat(2*x, 'g', 6, 64)
	case n.Kind == token.INT && x < 100:
		return strconv.FormatFloat(x+1, 'f', -1, 64)
	case n.Kind == token.INT:
		return strconv.FormatFloat(math.Round(x*1.03), 'f', -1, 64)
	case x == 0:
		return "1.0"
	case x == math.Trunc(x) && math.Abs(x) < 10:
		return strconv.FormatFloat(x+1, 'f', 1, 64)
	}
	return strconv.FormatFloat(x*1.03, 'g', 6, 64)
}
