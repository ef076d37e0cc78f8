package site

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"time"

	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/record"
	"example.org/doorleaf/templates"
)

// A printable is a file of a unit that a browser can make a PDF of.
type printable struct {
	sheet     templates.Sheet
	html, pdf string // paths
}

// withPDFs is the job with its PDF files, if there is a browser. The browser sees a copy in the programme's folder, where private things lie already, and where a
// browser that is shut out of the system's temporary folder may read too; the copy is gone when it is done.
func (p Programme) withPDFs(job Built) (made Built, err error) {
	if p.Browser == nil {
		return job, nil
	}
	scratch, err := os.MkdirTemp(p.Path, "doorleaf-printing-")
	if err != nil {
		return job, fmt.Errorf("a folder to print from cannot be made (%w); make room on the disk, or make again without --pdf", disk.Why(err))
	}
	defer func() { err = tidied(scratch, err) }()
	if err := lay(scratch, job); err != nil {
		return job, err
	}
	job.Files = maps.Clone(job.Files)
	for _, one := range job.prints {
		data, err := p.Browser.Print(filepath.Join(scratch, filepath.FromSlash(one.html)), scratch)
		if err != nil {
			return job, fmt.Errorf("%w. Make again without --pdf, and print everything.html from a browser", err)
		}
		job.Files[one.pdf] = data
		job.Record.PDFs = append(job.Record.PDFs, record.PDF{Path: one.pdf, Paper: one.sheet.Paper, Pages: one.sheet.Sides()})
	}
	return job, nil
}

// tidied removes the copy. Helpers of a browser may live, and hold files, for some seconds after it.
func tidied(scratch string, err error) error {
	left := os.RemoveAll(scratch)
	for range 20 {
		if left == nil {
			return err
		}
		time.Sleep(250 * time.Millisecond)
		left = os.RemoveAll(scratch)
	}
	if err == nil {
		return fmt.Errorf("cannot remove %s, which the browser printed from: %w; remove it by hand and make again", scratch, left)
	}
	return err
}

// lay puts the files to print into a folder, with the fonts.
func lay(folder string, job Built) error {
	files := fontFiles()
	for _, p := range job.prints {
		files[p.html] = job.Files[p.html]
	}
	for path, data := range files {
		at := filepath.Join(folder, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(at), 0o700); err != nil {
			return fmt.Errorf("cannot print: %w", err)
		}
		if err := os.WriteFile(at, data, 0o600); err != nil {
			return fmt.Errorf("cannot print: %w", err)
		}
	}
	return nil
}
