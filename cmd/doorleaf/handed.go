package main

import (
	"errors"
	"fmt"
	"os"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site"
)

type handed struct {
	Job      string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Home     string   `help:"Household or neighbour, by its id in the job file." placeholder:"ID"`
	On       string   `help:"Day, YYYY-MM-DD." placeholder:"DATE"`
	How      string   `help:"spoke (face to face), left (nobody opened) or mailed." placeholder:"HOW"`
	By       string   `help:"Initials of whoever went." placeholder:"INITIALS"`
	Language string   `help:"Language in which it was explained." placeholder:"NAME"`
	Why      string   `help:"Why nobody signed." placeholder:"TEXT"`
	Sheet    []string `help:"Sheet, by the id in its foot; what the home has not got yet if you name none." placeholder:"ID"`
	List     string   `help:"A filled-in copy of print/<code>/walk-list.csv, instead of all flags above." placeholder:"FILE"`
}

func (h handed) Run(c console) error {
	path, job, err := loadOne(h.Job)
	if err != nil {
		return err
	}
	if err := h.check(); err != nil {
		return err
	}
	var all []site.Noted
	err = folderOf(path).Note(func(ledger site.Ledger) (site.Ledger, error) {
		visits, err := h.visits(ledger, job.Code)
		if err != nil {
			return ledger, err
		}
		ledger, all, err = ledger.HandOver(job.Code, visits...)
		return ledger, err
	})
	if err != nil {
		return err
	}
	for _, n := range all {
		c.printNoted(n, told(n.Mark))
	}
	c.warnOfDays(all)
	c.printNext(h.Job, all)
	return nil
}

func told(m site.Mark) string {
	return map[string]string{"spoke": "given and explained to ", "left": "left for ", "mailed": "mailed to "}[m.How] + m.Home + " on " + m.On
}

// check finds what the flags lack, all at once.
func (h handed) check() error {
	if h.List != "" {
		if h.Home+h.On+h.How+h.By+h.Language+h.Why != "" || len(h.Sheet) > 0 {
			return errors.New("with --list all the rest stands in the file; drop the other flags")
		}
		return nil
	}
	var all []error
	if h.Home == "" {
		all = append(all, errors.New("say which home with --home, or give a whole walk list with --list"))
	}
	_, err := notices.ParseDate(h.On)
	_, err2 := site.LanguageNamed(h.Language)
	return errors.Join(append(all, err, site.CheckHow(h.How), site.CheckBy(h.By), err2)...)
}

func (h handed) visits(ledger site.Ledger, code string) ([]site.Visit, error) {
	if h.List == "" {
		language, err := site.LanguageNamed(h.Language)
		mark := site.Mark{Home: h.Home, On: h.On, How: h.How, By: h.By, Language: language, Why: h.Why}
		return []site.Visit{{Sheets: h.Sheet, Mark: mark}}, err
	}
	file, err := os.Open(h.List)
	if err != nil {
		return nil, fmt.Errorf("the walk list %s cannot be read (%w); check the name", h.List, err)
	}
	defer file.Close()
	return ledger.ReadVisits(code, h.List, file)
}
