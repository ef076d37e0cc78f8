package main

import (
	"errors"
	"fmt"
	"os"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
)

type handed struct {
	Job      string   `arg:"" help:"Job file, such as jobs/alder-14.yaml."`
	Home     string   `help:"Household or neighbour, by its id in the job file." placeholder:"ID"`
	On       string   `help:"Day, YYYY-MM-DD." placeholder:"DATE"`
	How      string   `help:"spoke (face to face), left (nobody opened), mailed, phoned, refused, or signed (the receipt came back)." placeholder:"HOW"`
	By       string   `help:"Initials of whoever went." placeholder:"INITIALS"`
	Language string   `help:"Language in which it was explained." placeholder:"NAME"`
	Why      string   `help:"Why nobody signed." placeholder:"TEXT"`
	Sheet    []string `help:"Sheet, by the id in its foot; what the home has not got yet if you name none." placeholder:"ID"`
	List     string   `help:"A filled-in copy of print/<code>/walk-list.csv, instead of all flags above." placeholder:"FILE"`

	Confirm bool `help:"Note it although the day looks like a slip."`
}

func (h handed) Run(c console) error {
	path, plan, err := loadOne(h.Job)
	if err != nil {
		return err
	}
	if err := h.check(); err != nil {
		return err
	}
	programme, err := writing(path, []notices.Plan{plan}, h.Confirm)
	if err != nil {
		return err
	}
	all, err := programme.Mark(plan, func(job ledger.Job) (ledger.Job, []ledger.Noted, error) {
		visits, err := h.visits(job)
		if err != nil {
			return job, nil, err
		}
		return job.HandOver(visits...)
	})
	if err != nil {
		return err
	}
	for _, n := range all {
		c.printNoted(n, told(n.Mark))
	}
	c.warnOfDays(all, programme.Writer.Today)
	c.printNext(h.Job, all)
	return nil
}

func told(m ledger.Mark) string {
	what := map[ledger.Event]string{ledger.Phoned: "told on the phone: ", ledger.Refused: "refused by ", ledger.Signed: "signed for by "}[m.Event]
	if m.Event == ledger.Handed {
		what = map[string]string{"spoke": "given and explained to ", "left": "left for ", "mailed": "mailed to "}[m.How]
	}
	return what + m.Home + " on " + m.On
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
	_, err2 := ledger.LanguageNamed(h.Language)
	return errors.Join(append(all, err, ledger.CheckHow(h.How), ledger.CheckBy(h.By), err2)...)
}

func (h handed) visits(job ledger.Job) ([]ledger.Visit, error) {
	if h.List == "" {
		language, err1 := ledger.LanguageNamed(h.Language)
		on, err2 := notices.ParseDate(h.On)
		return []ledger.Visit{{Sheets: h.Sheet, Home: h.Home, On: on, How: h.How, By: h.By, Language: language, Why: h.Why}}, errors.Join(err1, err2)
	}
	data, err := os.ReadFile(h.List)
	if err != nil {
		return nil, fmt.Errorf("the walk list %s cannot be read (%w); check the name", h.List, disk.Why(err))
	}
	return job.ReadWalkList(h.List, data)
}
