package site

import (
	"fmt"
	"slices"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/fit"
)

// MissingFonts has a sentence for each name or address on paper with a character that neither Roboto nor an installed font of its script has, so that it
// may print as an empty box. It is for whoever makes the sheets, on this computer, and goes into no file: what is made must not depend on what is
// installed. Read gives the bytes of a font file, as os.ReadFile does.
func MissingFonts(jobs []notices.Job, read func(path string) ([]byte, error)) []string {
	var all []string
	for _, job := range jobs {
		for _, name := range namesOnPaper(job) {
			r, install := fit.Regular().Lacking(name, read)
			warning := fmt.Sprintf("%s has %q (%U), and no font for it was found on this computer: install %s before you print, or it may come out as an empty box", name, r, r, install)
			if install != "" && !slices.Contains(all, warning) {
				all = append(all, warning)
			}
		}
	}
	return all
}

// namesOnPaper are the texts of a job that may be in any script.
func namesOnPaper(job notices.Job) []string {
	all := []string{job.Programme.Name, job.Address, job.OnTheDay.Name}
	for _, h := range job.Households {
		all = append(all, h.Name)
	}
	for _, n := range job.Neighbours {
		all = append(all, n.Address)
	}
	return all
}
