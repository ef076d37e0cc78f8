package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/disk"
)

type due struct {
	Jobs []string `arg:"" optional:"" name:"job" help:"Job files; all in the jobs folder of the programme that you are in, if you name none."`
	On   string   `help:"The day to look from, as YYYY-MM-DD; today if you name none." placeholder:"DATE"`
}

// Run lists the jobs that can be read even when another cannot: the coordinator needs the list on the morning on which one file is broken. What is
// left out is said in the list itself; its problems follow on standard error, and the exit code is 1.
func (d due) Run(c console) error {
	on, err := d.day()
	if err != nil {
		return err
	}
	files, err := d.files()
	if err != nil {
		return err
	}
	folder, plans, problems := load(files)
	if len(plans) == 0 {
		return problems
	}
	programme, err := reading(folder, plans)
	if err != nil {
		return err
	}
	if on.IsZero() {
		on = programme.Writer.Today
	}
	jobs, damaged := d.readable(programme, plans)
	if errors.Is(damaged, fs.ErrNotExist) {
		return damaged
	}
	steps, err := site.Due(jobs, on)
	if err != nil {
		return err
	}
	printDue(c, steps, on)
	sayLeftOut(c, problems)
	c.sayMissing(programme.MissingPages())
	return errors.Join(problems, damaged)
}

// readable are the plans whose ledger can be read, and what is wrong with the others.
func (d due) readable(programme site.Programme, plans []notices.Plan) (jobs []site.Known, damaged error) {
	for _, plan := range plans {
		one, err := known(programme, []notices.Plan{plan})
		if errors.Is(err, fs.ErrNotExist) {
			return nil, err
		}
		damaged = errors.Join(damaged, err)
		jobs = append(jobs, one...)
	}
	return jobs, damaged
}

// day is the given one, or the zero Date for today.
func (d due) day() (notices.Date, error) {
	if d.On == "" {
		return notices.Date{}, nil
	}
	on, err := notices.ParseDate(d.On)
	if err != nil {
		return on, fmt.Errorf("--on %w", err)
	}
	return on, nil
}

// files are the named ones, or all of the programme in the current folder or in the one above it.
func (d due) files() ([]string, error) {
	if len(d.Jobs) > 0 {
		return d.Jobs, nil
	}
	for _, folder := range []string{".", ".."} {
		if _, err := os.Stat(filepath.Join(folder, jobfile.ProgrammeFile)); err != nil {
			continue
		}
		return jobsIn(folder)
	}
	return nil, fmt.Errorf("there is no %s here or in the folder above; go to your programme's folder, or name job files, such as PROGRAMME/jobs/*.yaml", jobfile.ProgrammeFile)
}

// jobsIn are all job files of a programme.
func jobsIn(folder string) ([]string, error) {
	entries, err := os.ReadDir(filepath.Join(folder, "jobs"))
	if err != nil && !errors.Is(err, fs.ErrNotExist) {
		return nil, fmt.Errorf("the jobs folder of %s cannot be read (%w); name job files", folder, disk.Why(err))
	}
	var files []string
	for _, entry := range entries {
		if !entry.IsDir() && jobfile.IsJobFile(entry.Name()) {
			files = append(files, filepath.Join(folder, "jobs", entry.Name()))
		}
	}
	if len(files) == 0 {
		return nil, fmt.Errorf("there are no job files in %s; name them", filepath.Join(folder, "jobs"))
	}
	return files, nil
}

// printDue has a part for each urgency that has any, and one sentence when none has.
func printDue(c console, steps []site.DueStep, on notices.Date) {
	if len(steps) == 0 {
		fmt.Fprintf(c.out, "Nothing is due on %s or in the %d days after it.\n", notices.Day(on), site.ComingDays)
		return
	}
	heads := map[site.Urgency]string{
		site.Late: "Late: do these first, and move the work if people need more time", site.Today: "Today, " + notices.Day(on).String(),
		site.Coming: fmt.Sprintf("In the next %d days", site.ComingDays), site.Waiting: "Waiting",
	}
	for i, s := range steps {
		if i == 0 || steps[i-1].Urgency != s.Urgency {
			fmt.Fprintf(c.out, "%s%s:\n", map[bool]string{false: "\n"}[i == 0], heads[s.Urgency])
		}
		fmt.Fprintf(c.out, "  %-25s %s (%s)\n", s.By(on), s.Says, s.Code)
	}
}

func sayLeftOut(c console, problems error) {
	var found jobfile.Problems
	if !errors.As(problems, &found) {
		return
	}
	said := ""
	for _, p := range found {
		if p.File != said {
			fmt.Fprintf(c.out, "\n%s is not in this list: it has to be fixed first.\n", p.File)
			said = p.File
		}
	}
}
