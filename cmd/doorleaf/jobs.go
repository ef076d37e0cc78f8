package main

import (
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site"
	"example.org/doorleaf/site/ledger"
)

// load reads the job files and decides each. They belong to one programme folder, and returns that folder. Problems name files as they were typed.
func load(files []string) (folder string, plans []notices.Plan, err error) {
	typed := map[string]string{}
	var names []string
	for _, file := range files {
		home, err := programmeOf(file)
		if err != nil {
			return "", nil, err
		}
		if folder == "" {
			folder = home
		}
		name, err := nameIn(folder, home, file)
		if err != nil {
			return "", nil, err
		}
		if name == "" {
			return "", nil, fmt.Errorf("%s and %s belong to two programmes; name the jobs of one at a time", files[0], file)
		}
		if typed[name] == "" { // named twice, it is made once
			typed[name] = file
			names = append(names, name)
		}
	}
	jobs, problems := jobfile.Load(os.DirFS(folder), now(), names...)
	for _, job := range jobs {
		plans = append(plans, notices.Decide(job))
	}
	if len(problems) > 0 {
		return folder, plans, asTyped(problems, folder, typed) // whoever can do with the others has them
	}
	return folder, plans, nil
}

// nameIn is the path of a job file inside its programme's folder, with slashes; "" when that is not the given folder. Only whole paths tell, because
// one folder can be typed in many ways.
func nameIn(folder, home, file string) (string, error) {
	wanted, err1 := filepath.Abs(folder)
	whole, err2 := filepath.Abs(home)
	path, err3 := filepath.Abs(file)
	if err := cmp.Or(err1, err2, err3); err != nil || whole != wanted {
		return "", err
	}
	name, err := filepath.Rel(whole, path)
	return filepath.ToSlash(name), err
}

// programmeOf finds the folder that a job file belongs to: the nearest above it with a programme.yaml.
func programmeOf(file string) (string, error) {
	if info, err := os.Stat(file); err != nil || info.IsDir() {
		return "", notAJob(file, err)
	}
	if !jobfile.IsJobFile(filepath.ToSlash(file)) {
		return "", fmt.Errorf("%s is not named as a job file; give it a name that ends in .yaml, so that every command finds it", file)
	}
	for _, folder := range []string{filepath.Dir(filepath.Dir(file)), filepath.Dir(file), filepath.Join(filepath.Dir(file), "..")} {
		if _, err := os.Stat(filepath.Join(folder, jobfile.ProgrammeFile)); err == nil {
			return folder, nil
		}
	}
	return "", fmt.Errorf("there is no %s in the folder above %s; keep job files in the jobs folder of a programme, as doorleaf start makes it", jobfile.ProgrammeFile, file)
}

func notAJob(file string, err error) error {
	switch {
	case err == nil:
		return fmt.Errorf("%s is a folder; name the job files in it, such as %s", file, filepath.Join(file, "*.yaml"))
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no job file %s; check the name, or see what is in the jobs folder", file)
	}
	return fmt.Errorf("%s cannot be read (%w); check who may read it", file, err)
}

// loadOne reads one job file and decides it.
func loadOne(file string) (folder string, plan notices.Plan, err error) {
	folder, plans, err := load([]string{file})
	if err != nil {
		return "", notices.Plan{}, err
	}
	return folder, plans[0], nil
}

// writing is the programme of plans for a verb that adds to the ledger.
func writing(path string, plans []notices.Plan, confirmed bool) (site.Programme, error) {
	laptop, err := ledger.ThisLaptop()
	if err != nil {
		return site.Programme{}, err
	}
	p := programmeAt(path, plans, laptop)
	p.Confirmed = confirmed
	return p, p.Finish()
}

// reading is the programme of plans for a verb that looks only. Like every verb it ends what a killed make left, so that nobody looks at a half.
func reading(path string, plans []notices.Plan) (site.Programme, error) {
	p := programmeAt(path, plans, ledger.KnownLaptop())
	return p, p.Finish()
}

func programmeAt(path string, plans []notices.Plan, laptop string) site.Programme {
	return site.Programme{Path: path, Out: filepath.Join(path, "out"), Writer: ledger.Writer{Laptop: laptop, Today: today(plans[0].Programme)}}
}

// known are plans with what the ledger remembers of their jobs.
func known(p site.Programme, plans []notices.Plan) ([]site.Known, error) {
	var all []site.Known
	for _, plan := range plans {
		job, err := p.Ledger(plan.Code)
		if err != nil {
			return nil, err
		}
		all = append(all, site.Known{Plan: plan, Ledger: job})
	}
	return all, nil
}

// sayMissing names pages that are on paper and not in the output, by job.
func (c console) sayMissing(all []site.Missing) {
	for _, m := range all {
		fmt.Fprintf(c.out, "%s: %s that %s on paper %s not in the output: run doorleaf make with the job file of %s, and upload\n",
			m.Code, count(m.Pages, "page", "pages"), isAre(m.Pages), isAre(m.Pages), m.Code)
	}
}

func asTyped(problems jobfile.Problems, folder string, typed map[string]string) jobfile.Problems {
	for i, p := range problems {
		problems[i].File = cmp.Or(typed[p.File], filepath.ToSlash(filepath.Join(folder, p.File)))
	}
	return problems
}
