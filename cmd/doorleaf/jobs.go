package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
)

// load reads the job files, which belong to one programme folder, and returns that folder. Problems name files as they were typed.
func load(files []string) (folder string, jobs []notices.Job, err error) {
	var names []string
	for _, file := range files {
		home, err := programmeOf(file)
		if err != nil {
			return "", nil, err
		}
		if folder != "" && home != folder {
			return "", nil, fmt.Errorf("%s and %s belong to two programmes; name the jobs of one at a time", files[0], file)
		}
		folder = home
		name, err := filepath.Rel(folder, file)
		if err != nil {
			return "", nil, err
		}
		names = append(names, filepath.ToSlash(name))
	}
	jobs, problems := notices.Load(os.DirFS(folder), names...)
	if len(problems) > 0 {
		return "", nil, asTyped(problems, folder)
	}
	return folder, jobs, nil
}

// programmeOf finds the folder that a job file belongs to: the nearest above it with a programme.yaml.
func programmeOf(file string) (string, error) {
	if info, err := os.Stat(file); err != nil || info.IsDir() {
		return "", notAJob(file, err)
	}
	for _, folder := range []string{filepath.Dir(filepath.Dir(file)), filepath.Dir(file), filepath.Join(filepath.Dir(file), "..")} {
		if _, err := os.Stat(filepath.Join(folder, notices.ProgrammeFile)); err == nil {
			return folder, nil
		}
	}
	return "", fmt.Errorf("there is no %s in the folder above %s; keep job files in the jobs folder of a programme, as doorleaf start makes it", notices.ProgrammeFile, file)
}

func notAJob(file string, err error) error {
	switch {
	case err == nil:
		return fmt.Errorf("%s is a folder; name the job files in it, such as %s", file, filepath.Join(file, "*.yaml"))
	case errors.Is(err, fs.ErrNotExist):
		return fmt.Errorf("there is no job file %s; check the name, or see what is in the jobs folder", file)
	}
	return fmt.Errorf("%s can not be read (%w); check who may read it", file, err)
}

func asTyped(problems notices.Problems, folder string) notices.Problems {
	for i := range problems {
		problems[i].File = filepath.ToSlash(filepath.Join(folder, problems[i].File))
	}
	return problems
}
