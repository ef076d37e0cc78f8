package record

import (
	"bytes"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"example.org/doorleaf/site/tree"
	"example.org/doorleaf/templates"
)

// aRecord has a value under every key.
func aRecord(code, token string) Job {
	return Job{
		Code: code, Token: token, Address: "14 Alder Court, Larkfield", Days: []string{"2027-05-08", "2027-05-11"},
		WalkList: "print/" + code + "/walk.html", Everything: "print/" + code + "/all.html",
		PDFs:  []PDF{{"print/" + code + "/home-printer.pdf", "letter", 4}},
		Fonts: []Font{{"Noto Sans", "2.015", tree.Digest([]byte("font"))}},
		Sheets: []Sheet{{
			ID: "windows-n12", Kind: "close_windows_request", Title: "Close-windows request", To: "12 Alder Court", For: []string{"n12"}, Hang: []string{"front_door"},
			Revision: 2, Replaces: "1", ReplacesDate: "2027-05-03", Copies: 1, Paper: "letter", Path: "print/" + code + "/windows-n12.html", SHA256: tree.Digest([]byte("sheet")), Due: "2027-05-06",
			Faces: []Face{{"es", "Spanish", true, 1, "HTTPS://EXAMPLE.ORG/" + token + "/ES/WINDOWS/", 4, "Q", 1.027, "web/" + token + "/ES/WINDOWS/index.html", 3, 1, 3.5, "capitals", 7}},
		}},
		Pages:    []Page{{"web/" + token + "/ES/WINDOWS/index.html", "https://example.org/" + token + "/ES/WINDOWS/", "close_windows_request", "es", "Spanish", tree.Digest([]byte("page"))}},
		PutRight: []Repair{{"12 Alder Court", "n12", "windows-n12", "Close-windows request", false, "1", "2027-05-03", "2"}},
		Reasons: []Reason{{"windows of 12 Alder Court", "shut", "14 ft from the work <20 ft>", "40 CFR 745.85(a)(2)(ii)(C)", "n12", "good practice",
			[]Missing{{"neighbours[n12].gap", "a gap beyond the reach would make it a note"}},
			[]Reading{{"40 CFR 745.85(a)(2)(ii)(C)", "2026-11-25", "read in the published text"}}}},
	}
}

// written is an output folder with the records of jobs.
func written(records ...Job) fstest.MapFS {
	index := tree.Index{Doorleaf: 1}
	output := fstest.MapFS{}
	for _, r := range records {
		index.Jobs = append(index.Jobs, tree.IndexJob{Code: r.Code, Token: r.Token, Record: tree.RecordPath(r.Code)})
		output[tree.RecordPath(r.Code)] = &fstest.MapFile{Data: tree.JSON(r)}
	}
	output[tree.RecordFile] = &fstest.MapFile{Data: tree.JSON(index)}
	return output
}

const aToken = "482109371158"

func TestRecordsAreReadAsWritten(t *testing.T) {
	want := []Job{aRecord("alder-14", aToken).withLists(), aRecord("elm-2", "000000000002").withLists()}
	if got, err := Load(written(want...)); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v\nerror %v", got, want, err)
	}
}

// Made without codes, a job keeps its pages and lists them.
func TestUnitKeepsThePages(t *testing.T) {
	paper := tree.Files{"print/alder-14/all.html": []byte("one")}
	page := tree.Files{"web/" + aToken + "/index.html": []byte("languages")}
	_, first := Unit(aRecord("alder-14", aToken), tree.Files{"print/alder-14/all.html": []byte("one"), "web/" + aToken + "/index.html": page["web/"+aToken+"/index.html"]}, Job{})
	unit, second := Unit(aRecord("alder-14", ""), paper, first)
	if unit.Token != "" || second.Token != aToken || !reflect.DeepEqual(second.Pages, first.Pages) || !reflect.DeepEqual(second.Files, first.Files) {
		t.Errorf("unit of token %q, record %+v", unit.Token, second)
	}
	if !bytes.Equal(unit.Files[tree.RecordPath("alder-14")], tree.JSON(second)) {
		t.Error("the file is not the record")
	}
}

func TestRecordHasTheDocumentedKeys(t *testing.T) {
	text := string(tree.JSON(aRecord("alder-14", aToken).withLists()))
	at := 0
	for _, key := range []string{"code", "token", "address", "days", "walk_list", "everything", "copy_shop", "pdfs", "path", "paper", "pages", "lot", "fonts", "name", "version", "sha256", "sheets", "id", "kind",
		"title", "to", "for", "hang", "revision", "tag", "replaces", "replaces_date", "copies", "paper", "path", "sha256", "due", "faces", "language", "language_name", "draft", "pages", "qr", "qr_version", "qr_level", "qr_module_mm", "page",
		"reading_distance_ft", "cap_height_mm", "pages", "path", "url", "kind", "language", "language_name", "sha256", "put_right", "where", "home", "sheet", "title", "printed", "take_away", "since", "bring", "reasons", "decision", "outcome", "because", "source", "about", "binds", "missing", "field",
		"would", "read", "citation", "read_on", "how", "files"} {
		i := strings.Index(text[at:], `"`+key+`": `)
		if i < 0 {
			t.Fatalf("no key %q after %q", key, text[max(0, at-30):at])
		}
		at += i + 1
	}
	if !strings.Contains(text, "<20 ft>") || !strings.HasSuffix(text, "}\n") || !strings.Contains(text, "\n  \"code\"") {
		t.Errorf("not in the layout of records:\n%s", text)
	}
}

func TestEmptyListsAreNeverNull(t *testing.T) {
	text := tree.JSON(Job{Lot: &templates.Lot{}, Sheets: []Sheet{{}}, Reasons: []Reason{{}}}.withLists())
	if bytes.Contains(text, []byte("null")) {
		t.Errorf("null in\n%s", text)
	}
}

func TestLoadOfAnEmptyFolder(t *testing.T) {
	if records, err := Load(fstest.MapFS{}); err != nil || len(records) > 0 {
		t.Errorf("records %v, error %v", records, err)
	}
}

func TestLoadLeavesOutATakenJob(t *testing.T) {
	output := written(aRecord("alder-14", aToken), aRecord("elm-2", "000000000002"))
	delete(output, tree.RecordPath("alder-14"))
	if got, err := Load(output); err != nil || len(got) != 1 || got[0].Code != "elm-2" {
		t.Errorf("records %v, error %v", got, err)
	}
}

func TestForeignRecordsAreRefused(t *testing.T) {
	index := `{"doorleaf": 1, "jobs": [{"code": "elm-2"}]}`
	for name, c := range map[string]struct{ index, record, want string }{
		"another program's": {`{"tracks": []}`, "", "not doorleaf's"},
		"no JSON":           {`doorleaf`, "", "not doorleaf's"},
		"newer":             {`{"doorleaf": 2}`, "", "newer doorleaf"},
		"outside":           {`{"doorleaf": 1, "jobs": [{"code": "../elm-2"}]}`, "", "cannot be"},
		"cut off":           {index, `{"code": "elm-2"`, "print/elm-2/record.json is damaged"},
		"of another job":    {index, `{"code": "elm-3"}`, "print/elm-2/record.json is damaged"},
	} {
		output := fstest.MapFS{tree.RecordFile: {Data: []byte(c.index)}, tree.RecordPath("elm-2"): {Data: []byte(c.record)}}
		if _, err := Load(output); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

func TestMerge(t *testing.T) {
	earlier := []Job{{Code: "a", Token: "old"}, {Code: "c"}}
	merged := Merge(earlier, []Job{{Code: "b"}, {Code: "a", Token: "new"}})
	want := []Job{{Code: "a", Token: "new"}, {Code: "b"}, {Code: "c"}}
	if !reflect.DeepEqual(merged, want) || earlier[0].Token != "old" {
		t.Errorf("got %+v from %+v", merged, earlier)
	}
}

// Somebody moved a damaged index elsewhere: the jobs are in their folders still.
func TestJobsThatTheIndexLost(t *testing.T) {
	output := written(aRecord("alder-14", aToken), aRecord("elm-2", "000000000002"))
	delete(output, tree.RecordFile)
	output["print/photos/record.json"] = &fstest.MapFile{Data: []byte("of somebody else")}
	if got, err := Load(output); err != nil || len(got) != 2 || got[1].Code != "elm-2" {
		t.Errorf("records %v, error %v", got, err)
	}
}
