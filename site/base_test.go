package site_test

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.org/doorleaf/site/record"
)

// Whatever the length of the base address, each code keeps modules of 1 mm and each layout holds it.
func TestBaseAddressesOfAnyLength(t *testing.T) {
	for _, base := range []string{
		"https://a.org", "https://leaf.example.org/L", "https://larkfield-home-repair.example.org/LEAFLETS",
	} {
		t.Run(base, func(t *testing.T) {
			t.Parallel()
			job := small(demoJob(t, "alder-14"))
			job.Programme.Base = base
			folder := newFolder(t)
			files := madeIn(t, folder, marchFirst, job)
			version := 0
			for _, sheet := range recordOf(t, files, "alder-14").Sheets {
				for _, face := range sheet.Faces {
					version = max(version, face.QRVersion)
					if face.QRModuleMM < 1 || !strings.HasPrefix(face.QR, strings.ToUpper(base)+"/") {
						t.Errorf("%s: modules of %g mm in the code of %s", sheet.ID, face.QRModuleMM, face.QR)
					}
				}
				if sheet.Kind == "work_area_sign" || sheet.Kind == "close_windows_request" || sheet.Kind == "stay_out_letter" {
					checkPrintedFaces(t, filepath.Join(folder.Out, filepath.FromSlash(sheet.Path)), sheet)
				}
			}
			t.Logf("codes up to version %d", version)
		})
	}
}

// checkPrintedFaces measures a sheet in a browser, if there is one.
func checkPrintedFaces(t *testing.T, path string, sheet record.Sheet) {
	t.Helper()
	if _, err := os.Stat(path); err != nil {
		t.Fatal(err)
	}
	b := openTab(t)
	b.openFile(path)
	if isTiled(sheet) {
		checkBoards(b, sheet)
		return
	}
	b.asPrinted()
	var records []record.Face
	for _, record := range sheet.Faces {
		for range record.Pages {
			records = append(records, record)
		}
	}
	faces := measuredFaces(b)
	if len(faces) != len(records) {
		t.Fatalf("%s: %d sides, want %d", sheet.ID, len(faces), len(records))
	}
	for i, face := range faces {
		checkField(t, face)
		checkLines(t, face)
		checkCodeBox(t, face)
		checkCodeRecord(t, face, records[i])
	}
}

// An address that nobody would want to type is refused, with what to do.
func TestBaseAddressThatIsTooLong(t *testing.T) {
	job := small(demoJob(t, "alder-14"))
	job.Programme.Base = "https://volunteers.larkfield-home-repair.example.org/NOTICES/FOR/NEIGHBORS"
	_, err := newFolder(t).Make(plansOf(job), func(string) {})
	if err == nil || !strings.Contains(err.Error(), "base address") || !strings.Contains(err.Error(), "choose a shorter one") {
		t.Errorf("got %v", err)
	}
}
