package strict

import (
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/goccy/go-yaml/parser"
	"pgregory.net/rapid"
)

func TestTextsAsTyped(t *testing.T) {
	for written, want := range map[string]string{
		"012": "012", "1.10": "1.10", "0x1F": "0x1F", "1_000": "1_000", "no": "no", "null": "null", "~": "~", ".inf": ".inf", "9:05": "9:05", "2027-05-08": "2027-05-08", "'it''s'": "it's",
		`"a \"b\""`: `a "b"`, "x # comment": "x", "x#y": "x#y", "王": "王", "a\n  b": "a b",
	} {
		root, problems := Parse("job.yaml", []byte("key: "+written+"\n"))
		if len(problems) > 0 || root.At("key").Text != want {
			t.Errorf("%s: %+v, %v", written, root, problems)
		}
	}
}

func TestPlaces(t *testing.T) {
	root, problems := Parse("job.yaml", []byte("\uFEFFé: {名: b, c: [d, \"e\"]}\nlist:\n  - x: 1\n    y:\n  - 'z'   \n"))
	if len(problems) > 0 {
		t.Fatal(problems)
	}
	for _, c := range []struct {
		path         []any
		kind         Kind
		text         string
		line, column int
	}{
		{nil, Object, "", 1, 1},
		{[]any{"é"}, Object, "", 1, 4},
		{[]any{"é", "名"}, Text, "b", 1, 8},
		{[]any{"é", "c", 1}, Text, "e", 1, 18},
		{[]any{"é", "c", 7}, List, "", 1, 14},
		{[]any{"list", 0}, Object, "", 3, 5},
		{[]any{"list", 0, "x"}, Text, "1", 3, 8},
		{[]any{"list", 0, "y"}, Empty, "", 4, 5},
		{[]any{"list", 0, "z", "zz"}, Object, "", 3, 5},
		{[]any{"list", 1}, Text, "z", 5, 5},
	} {
		n := root.At(c.path...)
		if n.Kind != c.kind || n.Text != c.text || n.Line != c.line || n.Column != c.column {
			t.Errorf("%v: %+v", c.path, n)
		}
	}
}

func TestRefused(t *testing.T) {
	for src, says := range map[string]string{
		"":                             "empty",
		"# only a comment\n":           "empty",
		"---\n":                        "empty",
		"a: 1\n---\nb: 2":              "second document",
		"a: 1\n...\nb: 2":              "second document",
		"a: 1\n---":                    "second document",
		"a: &x 1":                      "starts with &",
		"a: [*x, *y]":                  "starts with *",
		"a: !!int 1":                   "starts with !",
		"a: 1\n<<: {b: 1}":             "the key <<",
		"a: 1\n\"a\": 2":               "written twice",
		"a: {b: 1, b: 2}":              "written twice",
		"a: \"x\\0y\"":                 "cannot be printed",
		"a: \"x\\ny\"":                 "cannot be printed",
		"a: x\u2028y":                  "U+2028",
		"a: x\x07y":                    "U+0007",
		"a: x\x00y":                    "NUL",
		"a: \xe9":                      "not UTF-8",
		"\xff\xfea\x00":                "UTF-16",
		"a: " + strings.Repeat("[", 9): "more than 8 deep",
		"a: b: c":                      "second colon",
		"\ta: b":                       "tab",
		strings.Repeat("a: b\n", 201):  "keys stand below each other",
		strings.Repeat(" ", 300_000):   "longer than 256 KB",
	} {
		_, problems := Parse("job.yaml", []byte(src))
		if len(problems) == 0 || !strings.Contains(problems[0].Says, says) {
			t.Errorf("%.40q: %v", src, problems)
		}
	}
}

func TestAccepted(t *testing.T) {
	for _, src := range []string{"a: 1", "---\na: 1\n...\n", "a: [b, [c, {d: e}]]\n", "a:\r\n- b\r\n", "a: \u200fx\u200ey\n", "a: 1 # &x *y !z\n", "a: b & c, d * e!\n", "- a\n", "a"} {
		if root, problems := Parse("job.yaml", []byte(src)); root == nil || len(problems) > 0 {
			t.Errorf("%q: %v", src, problems)
		}
	}
}

// suite finds YAML's official test suite (github.com/yaml/yaml-test-suite), of which the parser's module brings a copy.
func suite(t *testing.T) string {
	dir, err := exec.Command("go", "list", "-m", "-f", "{{.Dir}}", "github.com/goccy/go-yaml").Output()
	if err != nil {
		if os.Getenv("CI") != "" {
			t.Fatal(err)
		}
		t.Skip("the folder of the parser's module is not found: is go on the PATH?")
	}
	return filepath.Join(strings.TrimSpace(string(dir)), "testdata", "yaml-test-suite")
}

// TestOfficialSuite: what YAML's own test suite calls an error is refused here, but for the list.
func TestOfficialSuite(t *testing.T) {
	inputs, _ := filepath.Glob(suite(t) + "/*/error")
	if len(inputs) < 50 {
		t.Fatalf("only %d cases of errors", len(inputs))
	}
	for _, mark := range inputs {
		name := filepath.Base(filepath.Dir(mark))
		src, err := os.ReadFile(filepath.Join(filepath.Dir(mark), "in.yaml"))
		if err != nil {
			t.Fatal(err)
		}
		_, problems := Parse("job.yaml", src)
		if why := lenient[name]; (why == "") != (len(problems) > 0) {
			t.Errorf("%s (%q): %d problems, and the list says %q", name, src, len(problems), why)
		}
	}
}

// lenient are errors of the suite that go unnoticed, each with the reason why that does no harm.
var lenient = map[string]string{
	"comment-without-whitespace-after-doublequoted-scalar": "the value is clear",
	"invalid-comment-after-comma":                          "the entries are clear",
	"invalid-comment-after-end-of-flow-sequence":           "the entries are clear",
	"wrong-indented-flow-sequence":                         "the brackets tell what belongs together",
	"wrong-indented-multiline-quoted-scalar":               "the quotes tell what belongs together",
	"dash-in-flow-sequence":                                "comes out as an entry that no list of words has",
	"plain-dashes-in-flow-sequence":                        "comes out as an entry that no list of words has",
}

// endsBlank is true of a file with blanks after its last sign. The parser minds some of them; nothing is lost with them.
func endsBlank(src string) bool {
	return strings.TrimRight(src, " \t\n") != strings.TrimRight(src, "\n")
}

// TestEveryFailureIsTold: a file that the parser does not read has a problem, so that no part of it is lost in silence.
func TestEveryFailureIsTold(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		src := rapid.StringMatching(`([a-c]: |[a-c]|- |\n|  |\n  |\[|\]|\{|\}|, |"|'|#|&|\*|!|\||>|\?|:|%|@|---\n|\.\.\.\n|\t|\\){1,20}`).Draw(t, "src")
		root, problems := Parse("job.yaml", []byte(src))
		if root == nil && len(problems) == 0 {
			t.Fatal("neither a tree nor a problem")
		}
		if _, err := parser.ParseBytes([]byte(src), 0); err != nil && len(problems) == 0 && !endsBlank(src) {
			t.Fatalf("the parser says %v, and nobody is told", err)
		}
		for _, p := range problems {
			if p.Line < 1 || p.Column < 1 || p.Says == "" || p.Mend == "" {
				t.Fatalf("%+v", p)
			}
		}
	})
}

// A file that is no text of ours is told once, by what it is.
func TestForeignEncodings(t *testing.T) {
	wide := func(text string, size, at int) []byte {
		var out []byte
		for _, b := range []byte(text) {
			unit := make([]byte, size)
			unit[at] = b
			out = append(out, unit...)
		}
		return out
	}
	const text = "code: alder-14\naddress: 14 Alder Court\n"
	for name, c := range map[string]struct {
		src  []byte
		want string
	}{
		"NUL bytes":                        {make([]byte, 300), "nothing but NUL bytes"},
		"UTF-16, little end first":         {wide(text, 2, 0), "saved as UTF-16"},
		"UTF-16, big end first":            {wide(text, 2, 1), "saved as UTF-16"},
		"UTF-16 with its mark":             {append([]byte{0xFF, 0xFE}, wide(text, 2, 0)...), "saved as UTF-16"},
		"UTF-32":                           {wide(text, 4, 0), "saved as UTF-32"},
		"UTF-32 with its mark":             {append([]byte{0xFF, 0xFE, 0, 0}, wide(text, 4, 0)...), "saved as UTF-32"},
		"UTF-32 with its mark, big end":    {append([]byte{0, 0, 0xFE, 0xFF}, wide(text, 4, 3)...), "saved as UTF-32"},
		"a NUL byte in a text of our kind": {[]byte("code: al\x00der\n"), "there is a NUL byte here"},
	} {
		_, problems := Parse("job.yaml", c.src)
		if len(problems) != 1 || !strings.Contains(problems[0].String(), c.want) {
			t.Errorf("%s: %v", name, problems)
		}
	}
}
