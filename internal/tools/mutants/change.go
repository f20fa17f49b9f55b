package main

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
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

// changes are all possible changes in the files, without tests, of these rooms.
func (t *tree) changes(rooms []string) ([]change, error) {
	var all []change
	for _, p := range t.packages {
		if p.Dir == "" || !slices.ContainsFunc(rooms, func(room string) bool { return inRoom(t.below(p), room) }) {
			continue
		}
		for _, f := range p.GoFiles {
			found, err := changesIn(filepath.Join(p.Dir, f))
			if err != nil {
				return nil, err
			}
			for _, c := range found {
				c.file = t.below(p) + "/" + f
				all = append(all, c)
			}
		}
	}
	return all, nil
}

func inRoom(path, room string) bool {
	above, all := strings.CutSuffix(room, "/...")
	return path == above || all && strings.HasPrefix(path, above+"/")
}

// changesIn are those of one file; none in a file that a program has written.
func changesIn(name string) ([]change, error) {
	text, err := os.ReadFile(name)
	if err != nil {
		return nil, err
	}
	files := token.NewFileSet()
	f, err := parser.ParseFile(files, name, text, parser.ParseComments|parser.SkipObjectResolution)
	if err != nil || ast.IsGenerated(f) {
		return nil, err
	}
	lines := strings.Split(string(text), "\n")
	var all []change
	add := func(at token.Pos, old, new string) {
		p := files.Position(at)
		all = append(all, change{line: p.Line, from: p.Offset, to: p.Offset + len(old), old: old, new: new, text: strings.TrimSpace(lines[p.Line-1])})
	}
	operator := func(at token.Pos, op token.Token) {
		for _, other := range swaps[op] {
			add(at, op.String(), other.String())
		}
	}
	pictures := f.Name.Name == "draw"
	ast.Inspect(f, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.ImportSpec, *ast.ArrayType:
			return false
		case *ast.BasicLit:
			if other := otherNumber(n, pictures); other != "" {
				add(n.Pos(), n.Value, other)
			}
		case *ast.BinaryExpr:
			operator(n.OpPos, n.Op)
		case *ast.AssignStmt:
			operator(n.TokPos, n.Tok)
		}
		return true
	})
	return all, nil
}

// otherNumber is a number near another: the next whole number, or some three percent more. In a picture a millimetre more
// is no fault, so there it is twice the number. Empty for what is not a number.
func otherNumber(n *ast.BasicLit, picture bool) string {
	x, err := strconv.ParseFloat(strings.ReplaceAll(n.Value, "_", ""), 64)
	switch {
	case err != nil || n.Kind != token.INT && n.Kind != token.FLOAT:
		return ""
	case picture && x != 0 && x != 1:
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
