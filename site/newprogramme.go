package site

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site/disk"
	"example.org/doorleaf/site/ledger"
)

// NewProgramme makes a new programme folder: what fill writes there, the schemas, a key and a ledger. It refuses a folder that has anything in it. All of it is made beside
// the folder first, so that what cannot be made leaves nothing behind. Only its owner can read it, as jobs and sheets name homes.
func NewProgramme(dir string, fill func(dir string) error) error {
	if err := checkEmpty(dir); err != nil {
		return err
	}
	err := os.MkdirAll(filepath.Dir(filepath.Clean(dir)), disk.PrivateFolder)
	prepared := ""
	if err == nil {
		prepared, err = os.MkdirTemp(filepath.Dir(filepath.Clean(dir)), ".doorleaf-new-")
	}
	if err == nil {
		defer os.RemoveAll(prepared)
		err = errors.Join(fill(prepared), writeSchemas(prepared), createKey(filepath.Join(prepared, KeyFile)), ledger.Create(prepared))
	}
	if err == nil {
		err = moveInto(dir, prepared)
	}
	if err != nil {
		return fmt.Errorf("the folder %s cannot be made (%w); choose another place, or make room on the disk", dir, disk.Why(err))
	}
	return nil
}

// moveInto moves everything in a folder to another one.
func moveInto(dir, prepared string) error {
	if err := os.MkdirAll(dir, disk.PrivateFolder); err != nil {
		return err
	}
	entries, err := os.ReadDir(prepared)
	for _, entry := range entries {
		err = errors.Join(err, os.Rename(filepath.Join(prepared, entry.Name()), filepath.Join(dir, entry.Name())))
	}
	return err
}

// NewFolder makes a folder, and refuses one that has anything in it.
func NewFolder(dir string) error {
	if err := checkEmpty(dir); err != nil {
		return err
	}
	if err := os.MkdirAll(dir, disk.PrivateFolder); err != nil {
		return fmt.Errorf("the folder %s cannot be made (%w); choose another place", dir, disk.Why(err))
	}
	return nil
}

func checkEmpty(dir string) error {
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return fmt.Errorf("the folder %s is not empty; name a new one, and nothing in this one changes", dir)
	}
	return nil
}

// writeSchemas puts the schemas beside programme.yaml; the first line of each YAML file points editors to its own.
func writeSchemas(dir string) error {
	if err := os.WriteFile(filepath.Join(dir, "programme.schema.json"), jobfile.ProgrammeSchema(), 0o644); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "job.schema.json"), jobfile.JobSchema(), 0o644)
}
