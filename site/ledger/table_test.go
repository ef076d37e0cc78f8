package ledger

import (
	"bytes"
	"encoding/csv"
	"errors"
	"maps"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"testing"
	"unicode"
	"unicode/utf16"
	"unicode/utf8"

	"pgregory.net/rapid"

	"example.org/doorleaf/notices/jobfile"
)

// Outside references of this file: Gnumeric, a spreadsheet, saved the files in testdata (SOURCES.md there); RFC 4180 for quotes and the ends of lines; Go's unicode/utf16, which the
// reading does not use, for UTF-16.

var walkColumns = []string{"home", "on", "how", "by", "language", "why"}

var want = [][]string{
	{"h1", "2027-05-03", "spoke", "Iñaki Muñoz", "es", ""},
	{"h2", "2027-05-04", "left", "سارة منصور", "ar", "nobody in, twice; left it"},
	{"h3", "2027-05-05", "mailed", "Nguyễn Thị Đào", "vi", `said "later"`},
}

var wantWestern = [][]string{
	{"h1", "2027-05-03", "spoke", "Iñaki Muñoz", "es", ""},
	{"h2", "2027-05-04", "left", "Zoë Núñez", "es", "nobody in, twice; left it"},
	{"h3", "2027-05-05", "mailed", "François Lefèvre", "fr", `said "later"`},
}

func textsOf(rows []tableRow, columns []string) [][]string {
	var texts [][]string
	for _, row := range rows {
		var fields []string
		for _, name := range columns {
			fields = append(fields, row.cells[name].text)
		}
		texts = append(texts, fields)
	}
	return texts
}

func reads(t *testing.T, name string, data []byte, columns []string, want [][]string) {
	t.Helper()
	rows, err := readTable(name, data, columns)
	if have := textsOf(rows, columns); err != nil || !reflect.DeepEqual(have, want) {
		t.Errorf("%s: have %q, %v, want %q", name, have, err, want)
	}
}

// TestSavedBySpreadsheet: the rows are the same whatever way they were saved.
func TestSavedBySpreadsheet(t *testing.T) {
	paths, _ := filepath.Glob("testdata/walklists/*.csv")
	if len(paths) < 15 {
		t.Fatalf("have %d files", len(paths))
	}
	for _, path := range paths {
		data, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		rows := want
		if strings.HasPrefix(filepath.Base(path), "western") {
			rows = wantWestern
		}
		reads(t, path, data, walkColumns, rows)
	}
}

const plainList = "home,on,how,by,language,why\n" +
	"h1,2027-05-03,spoke,Iñaki Muñoz,es,\n" +
	"h2,2027-05-04,left,سارة منصور,ar,\"nobody in, twice; left it\"\n" +
	"h3,2027-05-05,mailed,Nguyễn Thị Đào,vi,\"said \"\"later\"\"\"\n"

func utf16Of(text string, high, low int) []byte {
	var out []byte
	for _, unit := range utf16.Encode([]rune(text)) {
		pair := [2]byte{}
		pair[high], pair[low] = byte(unit>>8), byte(unit)
		out = append(out, pair[:]...)
	}
	return out
}

// withSeparator keeps the commas that are in quotes.
func withSeparator(separator string) string {
	return strings.ReplaceAll(strings.ReplaceAll(plainList, ",", separator), "in"+separator+" twice", "in, twice")
}

// TestSavedByOthers: what Gnumeric does not do, and other programs and people do (common practice, no source).
func TestSavedByOthers(t *testing.T) {
	crlf := strings.ReplaceAll(withSeparator("\t"), "\n", "\r\n")
	for name, text := range map[string]string{
		"marked":                     "\uFEFF" + plainList,
		"marked, CRLF":               "\uFEFF" + strings.ReplaceAll(plainList, "\n", "\r\n"),
		"CR":                         strings.ReplaceAll(plainList, "\n", "\r"),
		"no last line end":           strings.TrimRight(plainList, "\n"),
		"sep=;":                      "sep=;\r\n" + withSeparator(";"),
		"SEP=, with mark and quotes": "\uFEFF\"SEP=,\"\n" + plainList,
		"sep= tab":                   "sep=\t\n" + withSeparator("\t"),
		"tabs":                       withSeparator("\t"),
		"UTF-16, marked, LE, tabs":   string(utf16Of("\uFEFF"+crlf, 1, 0)),
		"UTF-16, marked, BE, tabs":   string(utf16Of("\uFEFF"+crlf, 0, 1)),
		"UTF-16 with sep=":           string(utf16Of("\uFEFFsep=;\n"+withSeparator(";"), 1, 0)),
		"capitals and spaces":        strings.Replace(plainList, "home,on,how,by,", " Home ,ON, how,\"By\",", 1),
		"empty lines and rows":       ",,,,,\n\n" + strings.ReplaceAll(plainList, "\n", "\n , ,\"\",,,\n\n"),
		"empty columns":              strings.ReplaceAll(plainList, "\n", ",,,\n"),
		"notes":                      "Notes," + strings.ReplaceAll(strings.TrimRight(plainList, "\n"), "\n", "\n\"a note,\nof \u200b two lines\",") + "\n",
		"short rows":                 strings.Replace(plainList, "es,\n", "es\n", 1),
		"spaces in fields":           strings.ReplaceAll(plainList, "2027", " \u00a02027"),
	} {
		reads(t, name, []byte(text), walkColumns, want)
	}
}

func TestColumnsInAnyOrder(t *testing.T) {
	reads(t, "turned", []byte("why;by;home\nb;a;h1\n"), []string{"home", "by", "why"}, [][]string{{"h1", "a", "b"}})
	reads(t, "one column", []byte("home\nh1\n\nh2\n"), []string{"home"}, [][]string{{"h1"}, {"h2"}})
	reads(t, "no rows", []byte("home\n"), []string{"home"}, nil)
}

func problemsOf(t *testing.T, text string) jobfile.Problems {
	t.Helper()
	_, err := readTable("list.csv", []byte(text), []string{"home", "by"})
	var problems jobfile.Problems
	if err != nil && !errors.As(err, &problems) {
		t.Fatalf("%T", err)
	}
	return problems
}

func TestRefusals(t *testing.T) {
	const quotes = "; put double quotes around the whole field, with no space outside them, and write each double quote inside it twice"
	const again = "; open it in a spreadsheet and save it as CSV UTF-8"
	const unseen = "; delete it, or type the field again"
	const beyond = "this row has more fields than the first line has names; put double quotes around a field that holds a "
	for text, want := range map[string]string{
		"":                                               "1:1: the file is empty; write home,by as its first line",
		"\n , \n":                                        "1:1: the file is empty; write home,by as its first line",
		"\n\nhouse,by\nh1,a\n":                           "3:1: the first line has no column home; write home,by as the first line; other columns may stand beside them",
		"a;b\n":                                          "1:1: the first line has no column home, by; write home,by as the first line; other columns may stand beside them",
		"by,home,Ñ, By\n":                                `1:11: the column "by" is there twice; keep one of the two`,
		"home\u200b,by\n":                                "1:5: there is an invisible character here (U+200B)" + unseen,
		"sep=|\nhome|by\n":                               "1:5: this separator is not known; write sep=, or sep=; or take the line out",
		"home,by\nh1,a,b\n":                              "2:6: " + beyond + "comma, or give this column a name",
		"home;by;;\nh1;ñ;;b\n":                           "2:7: " + beyond + "semicolon, or give this column a name",
		"home\tby\nh1\ta\tb\n":                           "2:6: " + beyond + "tab, or give this column a name",
		"home,,by\nh1,b,a\n":                             "2:4: " + beyond + "comma, or give this column a name",
		"home,by\nh1,ñ \"a\" b\n":                        "2:6: this double quote is in the middle of a field" + quotes,
		"home,by\nh1,\"a\" b\n":                          "2:6: this double quote is in the middle of a field" + quotes,
		"sep=,\rhome,by\rh1, \"a\"\r":                    "3:5: this double quote is in the middle of a field" + quotes,
		"home,by\n\"h1\n\",\"ñ\" b":                      "3:5: this double quote is in the middle of a field" + quotes,
		"home,by\nh0,a\nh1,\"a\nh2,b":                    "3:1: in this row a double quote opens a field and none closes it" + quotes,
		"home,by\nh1,\"":                                 "2:1: in this row a double quote opens a field and none closes it" + quotes,
		"home,by\rñ,a\x1bb\r":                            "2:4: there is an invisible character here (U+001B)" + unseen,
		"home,by\nh1,\"ñ\tb\"\n":                         "2:6: there is an invisible character here (U+0009)" + unseen,
		"home,by\nh1,\u202eab\n":                         "2:4: there is an invisible character here (U+202E)" + unseen,
		"home,by\nh1,a\u2066b\n":                         "2:5: there is an invisible character here (U+2066)" + unseen,
		"home,by\nh\U000E0031,a\n":                       "2:2: there is an invisible character here (U+E0031)" + unseen,
		"home,by\nh\x00,a\n":                             "2:2: there is an invisible character here (U+0000)" + unseen,
		"home,by\nh\u200d1,a\n":                          "2:2: there is an invisible character here (U+200D)" + unseen,
		"home,by\nh1,\uFEFFa\n":                          "2:4: there is an invisible character here (U+FEFF)" + unseen,
		"home,by\nh1,Mu\uFFFDoz\n":                       "2:6: a character was lost here when the file was saved (U+FFFD); type it again, and save the list as CSV UTF-8",
		"home,by\nh1,\"ñb\r\nc\"\r\n":                    "2:7: there is a line break in this field (U+000A); write it on one line",
		"home,by\nh1,a\u2028b\n":                         "2:5: there is a line break in this field (U+2028); write it on one line",
		"home,by\nh1,Mu\xf1oz\x8f":                       "2:9: this character is in none of the encodings in which spreadsheets save" + again,
		"home,by\nh1,Muñ\xf1oz\n":                        "2:7: the file is UTF-8 text, but this character is not" + again,
		"\uFEFFhome,by\r\nh1,\xf1\n":                     "2:4: the file is UTF-8 text, but this character is not" + again,
		"PK\x03\x04home,by":                              "1:1: this is a spreadsheet's own file, not comma-separated text" + again,
		"home,by\nh1," + strings.Repeat("ñ", 501) + "\n": "2:4: this field has 501 characters, and at most 500 are read; shorten it",
	} {
		if have := strings.Join(problemsOf(t, text).Lines(), "\n"); have != "list.csv:"+want {
			t.Errorf("%q:\nhave %s\nwant list.csv:%s", text, have, want)
		}
	}
}

// TestNamesStay: what belongs to names and to the spelling of languages is no invisible character.
func TestNamesStay(t *testing.T) {
	for _, name := range []string{
		"می\u200cخواهد", "ന\u0d4d\u200d", "\u200fسارة\u200e", "O'Neill", "Đào", "e\u0301", strings.Repeat("ñ", 500), "Strauß", "王小明", "-", "'a",
	} {
		reads(t, name, []byte("home\n"+name+"\n"), []string{"home"}, [][]string{{name}})
	}
}

// TestWindows1252: every byte from 80 on is the character that it is in Python's codec cp1252, which has none for five of them. The no-break space and the soft hyphen are left out: they
// are cut off and refused in every encoding.
func TestWindows1252(t *testing.T) {
	const defined = "€‚ƒ„…†‡ˆ‰Š‹ŒŽ‘’“”•–—˜™š›œžŸ¡¢£¤¥¦§¨©ª«¬®¯°±²³´µ¶·¸¹º»¼½¾¿ÀÁÂÃÄÅÆÇÈÉÊËÌÍÎÏÐÑÒÓÔÕÖ×ØÙÚÛÜÝÞßàáâãäåæçèéêëìíîïðñòóôõö÷øùúûüýþÿ"
	characters := []rune(defined)
	for b := 0x80; b <= 0xFF; b++ {
		text := "home,by\nh1," + string([]byte{byte(b)}) + "\n"
		switch b {
		case 0xA0, 0xAD:
		case 0x81, 0x8D, 0x8F, 0x90, 0x9D:
			if have := problemsOf(t, text); len(have) != 1 || have[0].Line != 2 || have[0].Column != 4 || !strings.Contains(have[0].Says, "none of the encodings") {
				t.Errorf("%x: have %v", b, have)
			}
		default:
			reads(t, text, []byte(text), []string{"home", "by"}, [][]string{{"h1", string(characters[0])}})
			characters = characters[1:]
		}
	}
	if len(characters) > 0 {
		t.Errorf("not read: %q", string(characters))
	}
}

func TestPositions(t *testing.T) {
	rows, err := readTable("a", []byte("sep=;\r\n\r\nNotes;by;home;why\r\n\"x\r\ny\";ñandú;\"h1\"\r\n"), []string{"home", "by", "why"})
	want := []tableRow{{line: 4, cells: map[string]cell{"by": {"ñandú", 5, 4}, "home": {"h1", 5, 10}, "why": {"", 5, 14}}}}
	if err != nil || !reflect.DeepEqual(rows, want) {
		t.Errorf("have %v, %v, want %v", rows, err, want)
	}
}

func TestAllProblemsAtOnce(t *testing.T) {
	have := problemsOf(t, "home,by\nh\x01,a\x02\nh2,b,c\nh3,d\nh4,e\x03,f\n").Lines()
	var places []string
	for _, line := range have {
		places = append(places, strings.Join(strings.Split(line, ":")[1:3], ":"))
	}
	if want := []string{"2:2", "2:5", "3:6", "5:5", "5:7"}; !slices.Equal(places, want) {
		t.Errorf("have %q, want %q", have, want)
	}
	for _, n := range []int{50, 51, 120} {
		problems := problemsOf(t, "home,by\n"+strings.Repeat("ñ,\x01\n", n))
		last := problems[len(problems)-1].String()
		want := map[int]string{
			50:  "list.csv:51:3: there is an invisible character here (U+0001); delete it, or type the field again",
			51:  "list.csv:52:3: and 1 more from here on; mend those above first",
			120: "list.csv:52:3: and 70 more from here on; mend those above first",
		}[n]
		if len(problems) != min(n, 51) || last != want {
			t.Errorf("%d: have %d, the last %q, want %q", n, len(problems), last, want)
		}
	}
}

func TestLimits(t *testing.T) {
	rows := func(n int) string { return "home,by\n\n" + strings.Repeat("h,a\n,\n", n) }
	if have, err := readTable("a", []byte(rows(5000)), []string{"home"}); err != nil || len(have) != 5000 {
		t.Errorf("have %d rows, %v", len(have), err)
	}
	for text, want := range map[string]string{
		rows(5001):  "list.csv:10003:1: the list has more than 5000 rows; check that it is the right file, or split it",
		rows(20000): "list.csv:10003:1: the list has more than 5000 rows; check that it is the right file, or split it",
		"home,by\n" + strings.Repeat("\n", 2<<20): "list.csv:1:1: the file is longer than 2 MB, too long for a list; check that it is the right file, or split it",
	} {
		if have := problemsOf(t, text).Error(); have != want {
			t.Errorf("have %s, want %s", have, want)
		}
	}
}

// costlyTables are made to keep a reader busy, each as long as a file may be.
func costlyTables() map[string][]byte {
	files := map[string][]byte{}
	for name, piece := range map[string]string{
		"rows": "h,a\n", "commas": ",", "columns": "home,", "quotes": `"`, "quoted": `"a",`, "open": "\"a\n", "bad": "h,\x01\n", "wide": "h,a,", "breaks": "\r", "zeros": "h\x00", "bytes": "\xf1",
	} {
		files[name] = []byte("home,by\n" + strings.Repeat(piece, (mostBytes-8)/len(piece)))
		files["header of "+name] = []byte(strings.Repeat(piece, mostBytes/len(piece)))
	}
	return files
}

func BenchmarkReadTable(b *testing.B) {
	files := costlyTables()
	for _, name := range slices.Sorted(maps.Keys(files)) {
		b.Run(name, func(b *testing.B) {
			b.SetBytes(int64(len(files[name])))
			for b.Loop() {
				readTable("a", files[name], []string{"home", "by"})
			}
		})
	}
}

// shieldedRows start as formulas do, or hold what RFC 4180 wants in quotes.
var shieldedRows = [][]string{{"h1", "=1+1"}, {"h2", "-1-2"}, {"h3", "+1"}, {"h4", "@SUM(A1)"}, {"h5", "Muñoz, \"x\""}, {"h6", "＝1"}, {"h7", "O'Neill; 'so'"}, {"h8", ""}}

// TestReopened: a spreadsheet opens what we write, makes no formula of it, and saves what was there.
func TestReopened(t *testing.T) {
	columns := []string{"home", "why"}
	written, _ := os.ReadFile("testdata/reopened/written.csv")
	if have := writeTable(columns, shieldedRows); !bytes.Equal(have, written) {
		t.Errorf("have %q, want %q, which a spreadsheet opened", have, written)
	}
	reopened, _ := os.ReadFile("testdata/reopened/reopened.csv")
	reads(t, "written", written, columns, shieldedRows)
	reads(t, "reopened", reopened, columns, shieldedRows)
}

// TestWriteTable: RFC 4180 has CRLF at each line's end, and quotes around commas and quotes.
func TestWriteTable(t *testing.T) {
	have := string(writeTable([]string{"home", "why"}, [][]string{{"h1", `a, "b"`}, {"=x", ""}}))
	if want := "\uFEFFhome,why\r\nh1,\"a, \"\"b\"\"\"\r\n'=x,\r\n"; have != want {
		t.Errorf("have %q, want %q", have, want)
	}
}

// TestRoundTrip: what is written is read, and never starts as a formula does.
func TestRoundTrip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		field := rapid.StringMatching(`[h'][ =+\-@"',;a-zñ1]{0,12}`)
		rows := rapid.SliceOfN(rapid.SliceOfN(rapid.Map(rapid.OneOf(field, rapid.StringMatching(`[=+@-][a-z"]{0,5}`)), strings.TrimSpace), 2, 2), 1, 5).Draw(t, "rows")
		data := writeTable([]string{"home", "by"}, rows)
		read, err := readTable("a", data, []string{"home", "by"})
		if have := textsOf(read, []string{"home", "by"}); err != nil || !reflect.DeepEqual(have, rows) {
			t.Fatalf("have %q, %v, want %q", have, err, rows)
		}
		written, _ := csv.NewReader(bytes.NewReader(data)).ReadAll()
		for _, text := range slices.Concat(written...) {
			if text != "" && strings.Contains("=+-@", text[:1]) {
				t.Fatalf("%q starts as a formula does", text)
			}
		}
	})
}

// FuzzReadTable: whatever stands in a file, reading ends, each problem has a place, and a cell holds one line of text that people see.
func FuzzReadTable(f *testing.F) {
	paths, _ := filepath.Glob("testdata/*/*.csv")
	for _, path := range paths {
		if data, err := os.ReadFile(path); err == nil {
			f.Add(data)
		}
	}
	for _, text := range []string{"", "sep=", "sep=;\nhome", "\"home\nby", "home,by\n\"a\n\"\"", "\xff\xfe", "\x00h\x00o", "home,by\rh,\x81", "home\u200b,by\n\u202e,\U000E0001"} {
		f.Add([]byte(text))
	}
	f.Fuzz(func(t *testing.T, data []byte) { readsAnything(t, data) })
}

func readsAnything(t interface{ Fatalf(string, ...any) }, data []byte) {
	columns := []string{"home", "by"}
	rows, err := readTable("a", data, columns)
	if err != nil {
		for _, p := range err.(jobfile.Problems) {
			if p.File != "a" || p.Line < 1 || p.Column < 1 || p.Says == "" || p.Mend == "" || !utf8.ValidString(p.String()) {
				t.Fatalf("%#v", p)
			}
		}
	}
	for _, row := range rows {
		for _, name := range columns {
			c, there := row.cells[name]
			if !there || row.line < 1 || c.line < row.line || c.column < 1 || !utf8.ValidString(c.text) || strings.ContainsFunc(c.text, unicode.IsControl) || c.text != strings.TrimSpace(c.text) {
				t.Fatalf("%s: %#v in %#v", name, c, row)
			}
		}
	}
}

// TestAnyTable makes files of the pieces that reading turns on.
func TestAnyTable(t *testing.T) {
	pieces := []string{"home", "by", "Notes", ",", ";", "\t", "\n", "\r", "\r\n", `"`, `""`, "sep=;\n", "\uFEFF", "\xff\xfe", "\x00", "\xf1", "\x81", "ñ", "\u200d", "=", "'", " ", "h1"}
	rapid.Check(t, func(t *rapid.T) {
		file := strings.Join(rapid.SliceOfN(rapid.SampledFrom(pieces), 0, 30).Draw(t, "pieces"), "")
		start := rapid.SampledFrom([]string{"", "home,by\n", "by;home\r", "home\tNotes\tby\r\n"}).Draw(t, "start")
		readsAnything(t, []byte(start+file))
	})
}
