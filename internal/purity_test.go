package internal_test

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// No package variable of the model is written after start, and no sum runs over a map, whose order changes the last
// digits of the answer from run to run.
func TestModelKeepsNothing(t *testing.T) {
	for _, p := range checked(t, "internal/model") {
		for _, f := range p.files {
			for _, said := range faults(p, f) {
				t.Error(said)
			}
		}
	}
}

// The test above can fail.
func TestModelKeepsNothingCanFail(t *testing.T) {
	const bad = `package bad
var kept = 1.0
var list [3]int
func f(m map[string]float64) (sum float64) {
	kept = 2
	list[1]++
	for _, v := range m { sum += v }
	for k := range m { kept := k; kept = "local" ; _ = kept }
	return sum
}`
	fset := token.NewFileSet()
	file, err := parser.ParseFile(fset, "bad.go", bad, 0)
	if err != nil {
		t.Fatal(err)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{}, Defs: map[*ast.Ident]types.Object{}}
	pk, err := new(types.Config).Check("bad", fset, []*ast.File{file}, info)
	if err != nil {
		t.Fatal(err)
	}
	got := faults(typed{fset, pk, info, nil}, file)
	if len(got) != 3 {
		t.Errorf("found %q, want three faults", got)
	}
}

type typed struct {
	fset  *token.FileSet
	pkg   *types.Package
	info  *types.Info
	files []*ast.File
}

// checked parses and type-checks our packages below a path, without their tests.
func checked(t *testing.T, below string) []typed {
	t.Helper()
	exports := map[string]string{}
	var ours []pkg
	for _, p := range list(t, "-export", "-deps", "./"+below+"...") {
		exports[p.ImportPath] = p.Export
		if strings.HasPrefix(p.path(), below) && p.ImportPath != p.path() {
			ours = append(ours, p)
		}
	}
	var all []typed
	for _, p := range ours {
		fset := token.NewFileSet()
		var files []*ast.File
		for _, f := range p.GoFiles {
			file, err := parser.ParseFile(fset, filepath.Join(p.Dir, f), nil, 0)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, file)
		}
		all = append(all, typesOf(t, fset, p.ImportPath, files, exports))
	}
	return all
}

// typesOf type-checks files as a package; exports says where the compiler keeps what each package exports.
func typesOf(t *testing.T, fset *token.FileSet, of string, files []*ast.File, exports map[string]string) typed {
	t.Helper()
	look := func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) }
	ty := typed{fset: fset, files: files, info: &types.Info{Types: map[ast.Expr]types.TypeAndValue{}, Uses: map[*ast.Ident]types.Object{},
		Defs: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}}}
	var err error
	conf := types.Config{Importer: importer.ForCompiler(fset, "gc", look)}
	if ty.pkg, err = conf.Check(of, fset, files, ty.info); err != nil {
		t.Fatal(err)
	}
	return ty
}

// faults names each write to a package variable and each float sum over a map in the functions of a file.
func faults(p typed, f *ast.File) (out []string) {
	say := func(n ast.Node, what string) {
		pos := p.fset.Position(n.Pos())
		out = append(out, filepath.Base(filepath.Dir(pos.Filename))+"/"+filepath.Base(pos.Filename)+" "+what)
	}
	write := func(x ast.Expr) {
		if id := root(x); id != nil {
			if v, ok := p.info.Uses[id].(*types.Var); ok && v.Parent() == p.pkg.Scope() {
				say(x, "writes the package variable "+id.Name)
			}
		}
	}
	for _, d := range f.Decls {
		fn, ok := d.(*ast.FuncDecl)
		if !ok || fn.Body == nil || fn.Name.Name == "init" {
			continue
		}
		ast.Inspect(fn.Body, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.AssignStmt:
				for _, x := range n.Lhs {
					write(x)
				}
			case *ast.IncDecStmt:
				write(n.X)
			case *ast.RangeStmt:
				if tv, ok := p.info.Types[n.X]; ok && isMap(tv.Type) && sums(p, n.Body) {
					say(n, "sums over a map")
				}
			}
			return true
		})
	}
	return out
}

func isMap(t types.Type) bool {
	_, ok := t.Underlying().(*types.Map)
	return ok
}

// sums reports whether a float is added to or multiplied up in the body.
func sums(p typed, body ast.Node) (found bool) {
	ast.Inspect(body, func(n ast.Node) bool {
		if a, ok := n.(*ast.AssignStmt); ok && a.Tok != token.ASSIGN && a.Tok != token.DEFINE {
			if b, ok := p.info.Types[a.Lhs[0]].Type.Underlying().(*types.Basic); ok && b.Info()&types.IsFloat != 0 {
				found = true
			}
		}
		return true
	})
	return found
}

// root is the variable that an expression writes into.
func root(x ast.Expr) *ast.Ident {
	for {
		switch y := x.(type) {
		case *ast.Ident:
			return y
		case *ast.IndexExpr:
			x = y.X
		case *ast.SelectorExpr:
			x = y.X
		case *ast.ParenExpr:
			x = y.X
		default:
			return nil
		}
	}
}
