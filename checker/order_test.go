package checker_test

import (
	"fmt"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path"
	"slices"
	"strconv"
	"strings"
	"testing"
	"testing/fstest"
)

// order is the way of a plan. Each package imports only those before it; the
// last is this one, which walks the whole way. A new package takes its place here.
var order = []string{
	"fault", "source", "length", "validate", "limits", "planar", "plan", "swing", "cutting", "facts", "setout", "judge", "report", "",
}

// besides is what a step may import of the module outside checker/.
var besides = map[string][]string{"": {"rules", "schema"}, "validate": {"schema"}, "limits": {"schema"}, "judge": {"schema"}}

// backward gives a line for each import in a tree that goes against the order,
// and for each package that is not in it or not in the tree.
func backward(tree fs.FS) ([]string, error) {
	var wrong []string
	found := map[string]bool{}
	err := fs.WalkDir(tree, ".", func(file string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if d.IsDir() && d.Name() == "testdata" {
			return fs.SkipDir
		}
		if d.IsDir() || path.Ext(file) != ".go" || strings.HasSuffix(file, "_test.go") {
			return nil
		}
		step := strings.TrimPrefix(path.Dir(file), ".")
		found[step] = true
		at := slices.Index(order, step)
		if at < 0 {
			wrong = append(wrong, file+": the package has no place in the order")
			return nil
		}
		text, err := fs.ReadFile(tree, file)
		if err != nil {
			return err
		}
		parsed, err := parser.ParseFile(token.NewFileSet(), file, text, parser.ImportsOnly)
		if err != nil {
			return err
		}
		for _, spec := range parsed.Imports {
			name, err := strconv.Unquote(spec.Path.Value)
			if err != nil {
				return err
			}
			inside, ok := strings.CutPrefix(name, "trysquare/")
			if !ok {
				continue
			}
			if other, ok := strings.CutPrefix(inside, "checker/"); ok {
				if i := slices.Index(order, other); i < 0 || i >= at {
					wrong = append(wrong, fmt.Sprintf("%s: %s does not come before it", file, other))
				}
			} else if !slices.Contains(besides[step], inside) {
				wrong = append(wrong, fmt.Sprintf("%s: %s is nothing that it may use", file, inside))
			}
		}
		return nil
	})
	for _, step := range order {
		if !found[step] {
			wrong = append(wrong, fmt.Sprintf("the package checker/%s is in the order and not there", step))
		}
	}
	return wrong, err
}

func TestEachStepImportsOnlyThoseBeforeIt(t *testing.T) {
	wrong, err := backward(os.DirFS("."))
	if err != nil {
		t.Fatal(err)
	}
	for _, line := range wrong {
		t.Error(line)
	}
}

func TestAnImportAgainstTheOrderIsFound(t *testing.T) {
	cases := []struct{ name, file, imports, want string }{
		{"forward", "plan/x.go", `import "trysquare/checker/source"`, ""},
		{"standard library", "plan/x.go", `import "fmt"`, ""},
		{"schema", "validate/x.go", `import "trysquare/schema"`, ""},
		{"backward", "source/x.go", `import "trysquare/checker/plan"`, "source/x.go: plan does not come before it"},
		{"by another name", "facts/x.go", `import . "trysquare/checker/setout"`, "facts/x.go: setout does not come before it"},
		{"report from judge", "judge/x.go", `import "trysquare/checker/report"`, "judge/x.go: report does not come before it"},
		{"the whole from a step", "judge/x.go", `import "trysquare/checker"`, "judge/x.go: checker is nothing that it may use"},
		{"rules from a step", "judge/x.go", `import "trysquare/rules"`, "judge/x.go: rules is nothing that it may use"},
		{"command from the whole", "x.go", `import "trysquare/cmd/trysquare"`, "x.go: cmd/trysquare is nothing that it may use"},
		{"new package", "remedy/x.go", "", "remedy/x.go: the package has no place in the order"},
		{"package within a package", "plan/inner/x.go", "", "plan/inner/x.go: the package has no place in the order"},
		{"new package imported", "report/x.go", `import "trysquare/checker/remedy"`, "report/x.go: remedy does not come before it"},
		{"test", "source/x_test.go", `import "trysquare/checker/plan"`, ""},
		{"testdata", "plan/testdata/x.go", `import "trysquare/checker/report"`, ""},
	}
	for _, c := range cases {
		tree := fstest.MapFS{}
		for _, step := range order {
			tree[path.Join(step, "doc.go")] = &fstest.MapFile{Data: []byte("package x\n")}
		}
		tree[c.file] = &fstest.MapFile{Data: []byte("package x\n\n" + c.imports + "\n")}
		wrong, err := backward(tree)
		if err != nil {
			t.Fatal(err)
		}
		if got := strings.Join(wrong, "\n"); got != c.want {
			t.Errorf("%s: %q, want %q", c.name, got, c.want)
		}
	}
}

func TestAPackageOfTheOrderThatIsGoneIsMissed(t *testing.T) {
	tree := fstest.MapFS{}
	for _, step := range order[1:] {
		tree[path.Join(step, "doc.go")] = &fstest.MapFile{Data: []byte("package x\n")}
	}
	wrong, err := backward(tree)
	if want := "the package checker/fault is in the order and not there"; err != nil || len(wrong) != 1 || wrong[0] != want {
		t.Errorf("%v and the error %v, want %q", wrong, err, want)
	}
}
