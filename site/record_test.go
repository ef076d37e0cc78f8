package site

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"

	"example.org/doorleaf/templates"
)

// aRecord has a value under every key.
func aRecord(code, token string) JobRecord {
	return JobRecord{
		Code: code, Token: token, Address: "14 Alder Court, Larkfield", Days: []string{"2027-05-08", "2027-05-11"},
		WalkList: "print/" + code + "/walk.html", Everything: "print/" + code + "/all.html",
		PDFs:  []PDFRecord{{"print/" + code + "/home-printer.pdf", "letter", 4}},
		Fonts: []FontRecord{{"Noto Sans", "2.015", digest([]byte("font"))}},
		Sheets: []SheetRecord{{
			ID: "windows-n12", Kind: "close_windows_request", Title: "Close-windows request", To: "12 Alder Court", For: []string{"n12"}, Hang: []string{"front_door"},
			Revision: 2, Replaces: 1, ReplacesDate: "2027-05-03", Copies: 1, Paper: "letter", Path: "print/" + code + "/windows-n12.html", SHA256: digest([]byte("sheet")), Due: "2027-05-06",
			Faces: []FaceRecord{{"es", "Spanish", true, 1, "HTTPS://EXAMPLE.ORG/" + token + "/ES/WINDOWS/", 4, "Q", 1.027, "web/" + token + "/ES/WINDOWS/index.html", 3, 1, 3.5, "capitals", 7}},
		}},
		Pages:    []PageRecord{{"web/" + token + "/ES/WINDOWS/index.html", "https://example.org/" + token + "/ES/WINDOWS/", "close_windows_request", "es", "Spanish", digest([]byte("page"))}},
		PutRight: []RepairRecord{{"12 Alder Court", "n12", "windows-n12", "Close-windows request", 1, "2027-05-03", 2}},
		Reasons: []ReasonRecord{{"windows of 12 Alder Court", "shut", "14 ft from the work <20 ft>", "40 CFR 745.85(a)(2)(ii)(C)", "n12", "good practice",
			[]MissingRecord{{"neighbours[n12].gap", "a gap beyond the reach would make it a note"}},
			[]ReadingRecord{{"40 CFR 745.85(a)(2)(ii)(C)", "2026-11-25", "read in the published text"}}}},
	}
}

func TestRecordsAreReadAsWritten(t *testing.T) {
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"), aUnit(t, "elm-2", "two"))
	if _, err := Write(t.TempDir(), out); err != nil {
		t.Fatal(err)
	}
	want := []JobRecord{out.Jobs[0].Record, out.Jobs[1].Record}
	if got, err := LoadRecords(out.FS()); err != nil || !reflect.DeepEqual(got, want) {
		t.Errorf("got %+v\nwant %+v\nerror %v", got, want, err)
	}
	record := out.Jobs[0].Files[recordPath("alder-14")]
	if got, err := loadRecord(out.FS(), "alder-14"); err != nil || !bytes.Equal(encodeJSON(got), record) {
		t.Errorf("encoded again, the record differs; error %v", err)
	}
}

func TestRecordHasTheDocumentedKeys(t *testing.T) {
	text := string(encodeJSON(aRecord("alder-14", aToken).withLists()))
	at := 0
	for _, key := range []string{"code", "token", "address", "days", "walk_list", "everything", "copy_shop", "pdfs", "path", "paper", "pages", "lot", "fonts", "name", "version", "sha256", "sheets", "id", "kind",
		"title", "to", "for", "hang", "revision", "replaces", "replaces_date", "copies", "paper", "path", "sha256", "due", "faces", "language", "language_name", "draft", "pages", "qr", "qr_version", "qr_level", "qr_module_mm", "page",
		"reading_distance_ft", "cap_height_mm", "pages", "path", "url", "kind", "language", "language_name", "sha256", "put_right", "where", "home", "sheet", "title", "take_away", "since", "bring", "reasons", "decision", "outcome", "because", "source", "about", "binds", "missing", "field",
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
	text := encodeJSON(JobRecord{Lot: &templates.Lot{}, Sheets: []SheetRecord{{}}, Reasons: []ReasonRecord{{}}}.withLists())
	index := encodeJSON(newIndex(Index{}, nil, nil))
	if bytes.Contains(text, []byte("null")) || bytes.Contains(index, []byte("null")) {
		t.Errorf("null in\n%s\n%s", text, index)
	}
}

func TestLoadRecordsOfAnEmptyFolder(t *testing.T) {
	if records, err := LoadRecords(fstest.MapFS{}); err != nil || len(records) > 0 {
		t.Errorf("records %v, error %v", records, err)
	}
}

func TestLoadRecordsLeavesOutATakenJob(t *testing.T) {
	out := anOutput(t, Index{}, aUnit(t, "alder-14", "one"), aUnit(t, "elm-2", "two"))
	delete(out.Jobs[0].Files, recordPath("alder-14"))
	if got, err := LoadRecords(out.FS()); err != nil || len(got) != 1 || got[0].Code != "elm-2" {
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
		output := fstest.MapFS{RecordFile: {Data: []byte(c.index)}, recordPath("elm-2"): {Data: []byte(c.record)}}
		if _, err := LoadRecords(output); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: error %v", name, err)
		}
	}
}

func TestMergeRecords(t *testing.T) {
	earlier := []JobRecord{{Code: "a", Token: "old"}, {Code: "c"}}
	merged := MergeRecords(earlier, []JobRecord{{Code: "b"}, {Code: "a", Token: "new"}})
	want := []JobRecord{{Code: "a", Token: "new"}, {Code: "b"}, {Code: "c"}}
	if !reflect.DeepEqual(merged, want) || earlier[0].Token != "old" {
		t.Errorf("got %+v from %+v", merged, earlier)
	}
}

func TestIndexKeepsOlderSharedFiles(t *testing.T) {
	first := NewShared(Files{"print/fonts/Old.ttf": []byte("old"), "print/index.html": []byte("1")}, nil, Index{})
	earlier, err := LoadIndex(Output{Shared: first}.FS())
	if err != nil {
		t.Fatal(err)
	}
	var index Index
	second := NewShared(Files{"print/fonts/New.ttf": []byte("new"), "print/index.html": []byte("2")}, nil, earlier)
	if err := json.Unmarshal(second[RecordFile], &index); err != nil {
		t.Fatal(err)
	}
	want := []FileRecord{{"print/fonts/New.ttf", digest([]byte("new"))}, {"print/fonts/Old.ttf", digest([]byte("old"))}, {"print/index.html", digest([]byte("2"))}}
	if !reflect.DeepEqual(index.Files, want) {
		t.Errorf("files %v", index.Files)
	}
}
