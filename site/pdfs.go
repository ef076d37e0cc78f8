package site

import (
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"time"

	"example.org/doorleaf/templates"
)

// Names of PDF files in the folder of a job, print/<code>.
const (
	HomePrinter = "home-printer.pdf" // everything, in walking order, padded for printing two-sided
	copyShop    = "copy-shop.pdf"    // signs on larger paper; nothing private
)

// A printable is a file of a unit that a browser can make a PDF of.
type printable struct {
	sheet     templates.Sheet
	html, pdf string // paths
}

// withPDFs is the unit with its PDF files, if there is a browser. The browser sees a copy in the programme's folder, where private things lie
// already, and where a browser that is shut out of the system's temporary folder may read too; the copy is gone when it is done.
func (f Folder) withPDFs(unit Unit, kit Kit) (made Unit, err error) {
	if f.Browser == nil {
		return unit, nil
	}
	scratch, err := os.MkdirTemp(f.Path, "doorleaf-printing-")
	if err != nil {
		return unit, fmt.Errorf("cannot make a folder to print from: %w", err)
	}
	defer func() { err = tidied(scratch, err) }()
	if err := lay(scratch, unit, kit); err != nil {
		return unit, err
	}
	files := Files{}
	for _, p := range unit.prints {
		data, err := f.Browser.Print(filepath.Join(scratch, filepath.FromSlash(p.html)), scratch)
		if err != nil {
			return unit, fmt.Errorf("%w. Nothing was written; make again without --pdf, and print everything.html from a browser", err)
		}
		files[p.pdf] = data
	}
	return unit.with(files), nil
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
func lay(folder string, unit Unit, kit Kit) error {
	files := fontFiles()
	for _, p := range unit.prints {
		files[p.html] = unit.Files[p.html]
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

// with is the unit with the PDF files of its prints, which its record then lists.
func (u Unit) with(pdfs Files) Unit {
	record, files := u.Record, maps.Clone(u.Files)
	maps.Copy(files, pdfs)
	record.PDFs = []PDFRecord{}
	for _, p := range u.prints {
		record.PDFs = append(record.PDFs, PDFRecord{p.pdf, p.sheet.Paper, p.sheet.Sides()})
	}
	record.Files = append(slices.Clone(record.Files), fileRecords(pdfs)...)
	slices.SortFunc(record.Files, byPath)
	files[recordPath(record.Code)] = encodeJSON(record)
	u.Record, u.Files = record, files
	return u
}
