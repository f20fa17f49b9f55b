package internal_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"path/filepath"
	"reflect"
	"slices"
	"strconv"
	"testing"

	"duskweight/internal/model"
)

// ownRooms are the files that are about one kind of store: its row of the table, what the model says of it alone, its pages.
// A pattern is that of path.Match.
var ownRooms = []string{
	"internal/model/kind*.go",
	"internal/model/shelf*.go", "internal/model/typical.go", "internal/model/measured*.go", // of hoists
	"internal/model/search/fits*.go",                     // the shelf's parts in a hoist
	"internal/model/check_dates.go",                      // dates of a hoist's load tests
	"web/hoist/*.go", "web/cells/*.go", "web/water/*.go", // the pages of each
	"web/trials/*.go",                                                                    // what was tried on a hoist
	"web/page/hoists.go", "web/shelf/pages.go", "web/shelf/fits*.go", "web/shelf/use.go", // the hoists that parts of the shelf are tried in
	"web/sheet/drawn.go", // the plan sheet draws a hoist
}

// waysToOne are the ways to one kind, by package: functions that a room of another subject has no business with.
var waysToOne = map[string][]string{
	module + "/internal/model": {"HoistOf", "CellsOf", "HoistAt", "WithHoist", "HoistPath", "CellsPath", "HoistKind", "CellsKind", "WaterOf", "WaterPath", "WaterKind"},
	module + "/web/page":       {"IsHoist", "HoistsOf"},
}

// A store kind is a row: nothing outside its own rooms asks a store of which kind it is.
func TestStoreKindIsARow(t *testing.T) {
	seen := 0
	for _, hit := range kindBranches(t, checked(t, "")) {
		if slices.ContainsFunc(ownRooms, func(room string) bool { ok, _ := path.Match(room, hit.file); return ok }) {
			seen++
			continue
		}
		t.Errorf("%s:%d: %s", hit.file, hit.line, hit.what)
	}
	if seen == 0 {
		t.Error("nothing was found in the rooms of the kinds either: the test is blind")
	}
}

// The test above sees each way to branch on a kind.
func TestStoreKindIsARowCanFail(t *testing.T) {
	const text = `package x
import "duskweight/internal/model"
type other struct{ Hoist, Cells, Water *int }
func f(s model.Store, r *model.StoreResult, v model.Variant, o other, key string, p model.Part) {
	_ = s.Hoist != nil
	_ = r.Kind.Key == "hoist"
	_ = v.Stores[0].Cells
	_ = model.HoistOf(*r)
	_ = v.HoistAt(0)
	_, _ = p.(*model.CellsResult)
	switch p.(type) { case *model.HoistResult: }
	switch key { case "cells": }
	_ = "hoist" != key
	_ = o.Hoist == o.Cells
	_ = map[string]string{"hoist": "its address"}
	_ = model.Store{Hoist: nil}
	_ = (&renamed{}).Cells
	_ = r.Kind == model.HoistKind()
	_ = model.StorePath(0, "cells")
	_ = s.Water != nil
	_, _ = p.(*model.WaterResult)
	_ = model.StorePath(0, "water")
	_ = model.WaterOf(*r)
}
type renamed = model.Store`
	exports := map[string]string{}
	for _, p := range list(t, "-export", "-deps", "./internal/model") {
		exports[p.ImportPath] = p.Export
	}
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "x.go", text, 0)
	if err != nil {
		t.Fatal(err)
	}
	var lines []int
	for _, hit := range branchesIn(typesOf(t, fset, "x", []*ast.File{file}, exports), func(name string) string { return name }) {
		lines = append(lines, hit.line)
	}
	if want := []int{5, 6, 7, 8, 9, 10, 11, 12, 13, 17, 18, 19, 20, 21, 22, 23}; !slices.Equal(lines, want) {
		t.Errorf("branches in lines %v, want %v", lines, want)
	}
}

// Every pointer of a store has its row, in the order of the fields, and no two levers or doubts have one name.
func TestKindsAreComplete(t *testing.T) {
	var keys, names []string
	for f := range reflect.TypeFor[model.Store]().Fields() {
		keys = append(keys, model.Key(f))
	}
	for i, k := range model.Kinds() {
		if i >= len(keys) || k.Key != keys[i] {
			t.Fatalf("row %d is %q; the fields of a store are %q", i, k.Key, keys)
		}
		s := reflect.New(reflect.TypeFor[model.Store]()).Elem()
		s.Field(i).Set(reflect.New(s.Type().Field(i).Type.Elem()))
		if one := s.Interface().(model.Store); one.Kind() != k || !k.Is(one) || one.Empty() {
			t.Errorf("a store with %s set is of the kind %+v", k.Key, one.Kind())
		}
		for _, l := range k.Levers {
			names = append(names, l.What)
		}
		for _, d := range k.Doubts {
			names = append(names, "doubt "+d.Name)
		}
	}
	if len(keys) != len(model.Kinds()) {
		t.Errorf("%d rows for the fields %q", len(model.Kinds()), keys)
	}
	slices.Sort(names)
	if len(slices.Compact(slices.Clone(names))) != len(names) {
		t.Errorf("one name twice: %q", names)
	}
}

// branch is a place that asks of which kind a store is.
type branch struct {
	file string
	line int
	what string
}

// kindBranches finds every branch on a kind, by file and line.
func kindBranches(t *testing.T, all []typed) (hits []branch) {
	root, err := filepath.Abs("..")
	if err != nil {
		t.Fatal(err)
	}
	rel := func(name string) string {
		r, err := filepath.Rel(root, name)
		if err != nil {
			t.Fatal(err)
		}
		return filepath.ToSlash(r)
	}
	for _, s := range all {
		hits = append(hits, branchesIn(s, rel)...)
	}
	return hits
}

// branchesIn finds the selectors of a kind's pointer on a store, the typed ways to one kind, and its key in a comparison.
func branchesIn(p typed, rel func(string) string) (hits []branch) {
	var fields, keys []string
	for f := range reflect.TypeFor[model.Store]().Fields() {
		fields, keys = append(fields, f.Name), append(keys, model.Key(f))
	}
	add := func(n ast.Node, format string, args ...any) {
		at := p.fset.Position(n.Pos())
		hits = append(hits, branch{rel(at.Filename), at.Line, fmt.Sprintf(format, args...)})
	}
	isKey := func(e ast.Expr) bool {
		lit, ok := e.(*ast.BasicLit)
		if !ok || lit.Kind != token.STRING {
			return false
		}
		s, _ := strconv.Unquote(lit.Value)
		return slices.Contains(keys, s)
	}
	ofOneKind := func(e ast.Expr) bool {
		if e == nil {
			return false
		}
		name := plain(p.info.TypeOf(e))
		return slices.ContainsFunc(fields, func(f string) bool { return name == module+"/internal/model."+f+"Result" })
	}
	visit := func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.SelectorExpr:
			if sel := p.info.Selections[n]; sel != nil && slices.Contains(fields, n.Sel.Name) {
				recv := plain(sel.Recv())
				if recv == module+"/internal/model.Store" || recv == module+"/internal/model.StoreResult" {
					add(n.Sel, "%s of a store", n.Sel.Name)
				}
			}
		case *ast.Ident:
			if o := p.info.Uses[n]; o != nil && o.Pkg() != nil && slices.Contains(waysToOne[o.Pkg().Path()], n.Name) {
				if _, is := o.(*types.Func); is {
					add(n, "%s, the way to one kind", n.Name)
				}
			}
		case *ast.CallExpr:
			if called(n) == "StorePath" || called(n) == "StoreURL" {
				if last := n.Args[len(n.Args)-1]; isKey(last) {
					add(last, "the address of one kind")
				}
			}
		case *ast.TypeAssertExpr:
			if ofOneKind(n.Type) {
				add(n, "a part taken for that of one kind")
			}
		case *ast.CaseClause:
			for _, e := range n.List {
				switch {
				case isKey(e):
					add(e, "the key of a kind in a switch")
				case p.info.Types[e].IsType() && ofOneKind(e):
					add(e, "a part taken for that of one kind")
				}
			}
		case *ast.BinaryExpr:
			if (n.Op == token.EQL || n.Op == token.NEQ) && (isKey(n.X) || isKey(n.Y)) {
				add(n, "the key of a kind in a comparison")
			}
		}
		return true
	}
	for _, f := range p.files {
		ast.Inspect(f, visit)
	}
	return hits
}

// called is the name of the function in a call, without its package.
func called(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.SelectorExpr:
		return f.Sel.Name
	case *ast.Ident:
		return f.Name
	}
	return ""
}

// plain is the name of a type, or of what it points to, without another name that it was given.
func plain(t types.Type) string {
	if p, ok := types.Unalias(t).(*types.Pointer); ok {
		t = p.Elem()
	}
	return types.Unalias(t).String()
}
