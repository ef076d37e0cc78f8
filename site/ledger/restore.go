package ledger

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"example.org/doorleaf/site/disk"
)

// A Restored file was damaged.
type Restored struct {
	File  string // where the damaged one was put
	Lines int    // kept
	Lost  int    // lines that nobody could read; 0 when the copy had all
}

// Restore puts the ledger of a job right: of each damaged file it keeps all whole lines, of the file itself or of the copy from before its last change,
// whichever has more, and puts the damaged one aside. Addresses are filled in from what can still be read of lost lines and from the records of the output.
// What is lost, and was seen by another laptop, is accepted as lost. Nothing is deleted.
func Restore(programme, code string, w Writer, output Output) ([]Restored, error) {
	dir := filepath.Join(programme, FolderName, code)
	files, err := filesOf(dir)
	if err != nil {
		return nil, err
	}
	var all []Restored
	for _, file := range files {
		one, pages, err := restoreFile(file, code)
		if err != nil {
			return all, err
		}
		if one != nil {
			all = append(all, *one)
		}
		output.Pages = union(output.Pages, pages)
	}
	return all, acceptLoss(programme, code, w, output)
}

func restoreFile(path, code string) (*Restored, []string, error) {
	whole, bad, err := linesAndTexts(path, code)
	if err != nil || bad == nil {
		return nil, nil, err
	}
	if older, _, err := linesAndTexts(path+copyEnding, code); err == nil && len(older) > len(whole) {
		whole = older
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, err
	}
	aside, err := putAside(path, data)
	if err != nil {
		return nil, nil, fmt.Errorf("the damaged ledger cannot be put aside (%w); make room on the disk, or check who may write there", disk.Why(err))
	}
	if len(whole) == 0 {
		err = os.Remove(path) // what was in it stands aside
	} else {
		err = disk.Replace(path, []byte(strings.Join(whole, "\n")+"\n"))
	}
	if err != nil {
		return nil, nil, fmt.Errorf("the ledger cannot be put right (%w); make room on the disk, or check who may write there", disk.Why(err))
	}
	lost := max(0, bytes.Count(bytes.TrimRight(data, "\r\n"), []byte("\n"))+1-len(whole))
	return &Restored{aside, len(whole), lost}, pagesIn(string(data), code), nil
}

// linesAndTexts are the texts of the whole lines of a file.
func linesAndTexts(path, code string) ([]string, *damage, error) {
	lines, bad, err := readFile(path, code)
	if err != nil {
		return nil, nil, err
	}
	data, err := os.ReadFile(path)
	if err != nil {
		return nil, nil, err
	}
	texts := strings.Split(strings.ReplaceAll(string(data), "\r", ""), "\n")
	return texts[:len(lines)], bad, nil
}

// putAside keeps a damaged file under a name that nothing has yet.
func putAside(path string, data []byte) (string, error) {
	for n := 1; ; n++ {
		aside := fmt.Sprintf("%s%s-%d", path, badEnding, n)
		err := disk.Create(aside, data)
		if !errors.Is(err, fs.ErrExist) {
			return aside, err
		}
	}
}

// pagesIn are the addresses that stand in a damaged file, line by line where that can be read.
func pagesIn(text, code string) []string {
	var all []string
	for _, piece := range strings.Split(text, `"`) {
		if isAddress(piece) {
			all = append(all, piece)
		}
	}
	return all
}

// isAddress reports whether a text is an address below the base: "482109371158/ES/WINDOWS/" or "482109371158/".
func isAddress(text string) bool {
	parts := strings.Split(text, "/")
	if len(parts) < 2 || parts[len(parts)-1] != "" || len(parts[0]) != 12 || strings.Trim(parts[0], "0123456789") != "" {
		return false
	}
	return !slices.ContainsFunc(parts[1:len(parts)-1], func(p string) bool {
		return p == "" || strings.Trim(p, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-") != ""
	})
}

// acceptLoss adds a line that says up to where lines are lost, and one of a make with the addresses that are on paper.
func acceptLoss(programme, code string, w Writer, output Output) error {
	job, err := Read(programme, code)
	job = job.By(w)
	var bad *damage
	if errors.As(err, &bad) && bad.code == code {
		job, err = job.without()
	}
	if err != nil {
		return err
	}
	if pages := slices.DeleteFunc(slices.Clone(output.Pages), func(p string) bool { return slices.Contains(job.Pages, p) }); len(pages) > 0 {
		m := makeLine{Token: tokenIn(pages), Address: job.address, Pages: pages, Dates: job.datesDigest, Beside: job.Beside}
		for _, s := range job.Sheets {
			if !s.Gone {
				m.Sheets = append(m.Sheets, sheetLine{s.Facts, s.Revision.Number})
			}
		}
		if job, err = job.with(line{Event: made, Made: &m}); err != nil {
			return err
		}
	}
	return Append(programme, job.Pending())
}

func tokenIn(pages []string) string {
	token, _, _ := strings.Cut(pages[0], "/")
	return token
}

// without accepts that lines are lost which another laptop had seen.
func (j Job) without() (Job, error) {
	lost := map[string]int{}
	for _, l := range j.lines {
		for laptop, n := range l.Seen {
			lost[laptop] = max(lost[laptop], n)
		}
	}
	return j.with(line{Event: restored, Without: lost})
}
