package main

import (
	"go/ast"
	"go/types"
	"reflect"
	"slices"
	"strings"
	"testing"

	"golang.org/x/tools/go/packages"
)

// forTests are exported names that only tests of other packages use, with the reason.
var forTests = map[string]string{
	"locales.Speaker.IDs":          "the bundles are compared with the messages of notices, which locales does not know",
	"locales.Speaker.Placeholders": "the bundles are compared with the messages of notices, which locales does not know",
	"notices.AfterAidedWork":       "the outcomes are held against the figures",
	"notices.AfterWork":            "the outcomes are held against the figures",
	"notices.CheckFailed":          "the outcomes are held against the published levels",
	"notices.CheckPassed":          "the outcomes are held against the published levels",
	"notices.OwnTexts":             "the messages are compared with the bundles, which notices does not know",
	"notices.DustLevels":           "the outcomes are held against the published levels",
	"notices.Job.Checked":          "the outcomes are held against the published levels",
	"notices.Kinds":                "lists and the contact sheet are tested with every kind of sheet",
	"notices.MarkKeepOut":          "the drawings are compared with the marks that ask for them",
	"notices.Span":                 "the decisions are written out for readers",
	"notices.Text.Holds":           "the messages are compared with the bundles, which notices does not know",
	"notices.Texts":                "the messages are compared with the bundles, which notices does not know",
	"notices.Traits.Kind":          "lists and the contact sheet are tested with every kind of sheet",
	"notices.WorkState":            "the outcomes are held against the published levels",
	"site.Build":                   "single jobs are built in memory",
	"site.Built":                   "single jobs are built in memory",
	"site.Built.Files":             "single jobs are built in memory",
	"site.Built.Record":            "single jobs are built in memory",
	"site.DueStep.Due":             "what is due is tested day by day",
	"site.DueStep.ID":              "what is due is tested day by day",
	"site.Explain":                 "reasons are written out for readers",
	"site.Key":                     "codes are printed with a key of the tests",
	"site.Kit":                     "single jobs are built in memory",
	"site.NewKit":                  "single jobs are built in memory",
	"site/pdf.Browser.Path":        "a browser that fails",
	"site/setting.HeightMM":        "what was reckoned is compared with a browser",
	"site/tree.Index":              "records are read beside an index",
	"site/tree.IndexJob":           "records are read beside an index",
}

// foundByReflection are methods that a library, the language or a type constraint finds by their name.
var foundByReflection = []string{"Word", "ResolveFace", "String", "Error", "Unwrap", "Is", "MarshalText", "UnmarshalText", "MarshalJSON", "Run", "Help"}

// An exported name is a promise to other packages. One that none of them uses is a door to nowhere, and whoever reads the package has to look behind it.
func TestEveryExportHasAUser(t *testing.T) {
	config := &packages.Config{Dir: "../..", Mode: packages.NeedName | packages.NeedFiles | packages.NeedImports | packages.NeedDeps | packages.NeedSyntax | packages.NeedTypes | packages.NeedTypesInfo | packages.NeedModule}
	all, err := packages.Load(config, "./...")
	if err != nil || packages.PrintErrors(all) > 0 {
		t.Fatalf("the packages cannot be read: %v", err)
	}
	used := map[types.Object]bool{}
	for _, p := range all {
		for _, object := range p.TypesInfo.Uses {
			if object.Pkg() != nil && object.Pkg() != p.Types {
				used[origin(object)] = true
			}
		}
		for _, selection := range p.TypesInfo.Selections {
			if object := selection.Obj(); object.Pkg() != nil && object.Pkg() != p.Types {
				used[origin(object)] = true
			}
		}
	}
	idle := idleIn(all, used)
	for _, name := range idle {
		if forTests[name] == "" {
			t.Errorf("%s is exported, and no other package uses it", name)
		}
	}
	for name := range forTests {
		if !slices.Contains(idle, name) {
			t.Errorf("%s is on the list of names for tests alone, and is gone or has another user", name)
		}
	}
}

// idleIn lists what is exported and has no user. A type has one when something that is used holds it, or hands it out. The values of a closed list are used when one of
// them is, so that a list is not half open.
func idleIn(all []*packages.Package, used map[types.Object]bool) (idle []string) {
	held, lists := map[types.Object]bool{}, map[types.Type]bool{}
	for object := range used {
		hold(object.Type(), held, 0)
		if constant, ok := object.(*types.Const); ok {
			lists[constant.Type()] = true
		}
	}
	for _, p := range all {
		if p.Name == "main" {
			continue
		}
		for name, object := range exportsOf(p) {
			constant, isConstant := object.(*types.Const)
			if !used[object] && !held[object] && !(isConstant && lists[constant.Type()]) && !isValue(object) {
				idle = append(idle, name)
			}
		}
	}
	slices.Sort(idle)
	return idle
}

// hold marks the named types in the type of something that is used: of parameters, results, fields and elements.
func hold(t types.Type, held map[types.Object]bool, depth int) {
	if depth > 6 {
		return
	}
	switch t := t.(type) {
	case *types.Named:
		if !held[t.Obj()] {
			held[t.Obj()] = true
		}
	case *types.Pointer:
		hold(t.Elem(), held, depth+1)
	case *types.Slice:
		hold(t.Elem(), held, depth+1)
	case *types.Array:
		hold(t.Elem(), held, depth+1)
	case *types.Map:
		hold(t.Key(), held, depth+1)
		hold(t.Elem(), held, depth+1)
	case *types.Tuple:
		for i := range t.Len() {
			hold(t.At(i).Type(), held, depth+1)
		}
	case *types.Signature:
		hold(t.Params(), held, depth+1)
		hold(t.Results(), held, depth+1)
	}
}

// isValue: the bundles of locales name these types in their texts.
func isValue(object types.Object) bool {
	_, isType := object.(*types.TypeName)
	method, _, _ := types.LookupFieldOrMethod(object.Type(), true, object.Pkg(), "value")
	_, isMethod := method.(*types.Func)
	return isType && isMethod
}

// origin is the declared object behind one of an instance of a generic type.
func origin(object types.Object) types.Object {
	switch o := object.(type) {
	case *types.Func:
		return o.Origin()
	case *types.Var:
		return o.Origin()
	}
	return object
}

// exportsOf are the exported names of a package: on the top level, methods, and fields that no other program reads by their tags.
func exportsOf(p *packages.Package) map[string]types.Object {
	all := map[string]types.Object{}
	short := strings.TrimPrefix(p.PkgPath, "example.org/doorleaf/")
	layouts := short == "templates" // read fields and methods by their names
	add := func(ident *ast.Ident, owner string) {
		if object := p.TypesInfo.Defs[ident]; object != nil && ident.IsExported() && !(layouts && owner != "") {
			all[short+"."+owner+ident.Name] = object
		}
	}
	for _, file := range p.Syntax {
		for _, decl := range file.Decls {
			switch d := decl.(type) {
			case *ast.FuncDecl:
				if d.Recv == nil {
					add(d.Name, "")
				} else if !slices.Contains(foundByReflection, d.Name.Name) {
					add(d.Name, receiver(d)+".")
				}
			case *ast.GenDecl:
				for _, spec := range d.Specs {
					addSpec(spec, add)
				}
			}
		}
	}
	return all
}

func addSpec(spec ast.Spec, add func(*ast.Ident, string)) {
	switch s := spec.(type) {
	case *ast.ValueSpec:
		for _, name := range s.Names {
			add(name, "")
		}
	case *ast.TypeSpec:
		add(s.Name, "")
		structure, ok := s.Type.(*ast.StructType)
		if !ok || !s.Name.IsExported() {
			return
		}
		for _, field := range structure.Fields.List {
			if field.Tag != nil && reflect.StructTag(strings.Trim(field.Tag.Value, "`")) != "" {
				continue
			}
			for _, name := range field.Names {
				add(name, s.Name.Name+".")
			}
		}
	}
}

// receiver is the type of a method.
func receiver(d *ast.FuncDecl) string {
	expr := d.Recv.List[0].Type
	if star, ok := expr.(*ast.StarExpr); ok {
		expr = star.X
	}
	if index, ok := expr.(*ast.IndexExpr); ok {
		expr = index.X
	}
	return expr.(*ast.Ident).Name
}
