package site

import (
	"fmt"
	"io/fs"
	"os"
	"path/filepath"

	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/site/ledger"
)

// Found makes a new programme folder: the given files, the schemas, a key and a ledger. It refuses a folder that has anything in it.
func Found(dir string, files fs.FS) error {
	if err := NewFolder(dir); err != nil {
		return err
	}
	if err := os.CopyFS(dir, files); err != nil {
		return fmt.Errorf("the folder %s cannot be filled (%w)", dir, err)
	}
	if err := writeSchemas(dir); err != nil {
		return err
	}
	if err := MakeKey(filepath.Join(dir, KeyFile)); err != nil {
		return err
	}
	return ledger.Create(dir)
}

// NewFolder makes a folder, and refuses one that has anything in it.
func NewFolder(dir string) error {
	if entries, err := os.ReadDir(dir); err == nil && len(entries) > 0 {
		return fmt.Errorf("the folder %s is not empty; name a new one, and nothing in this one changes", dir)
	}
	if err := os.MkdirAll(dir, 0o755); err != nil {
		return fmt.Errorf("the folder %s cannot be made (%w); choose another place", dir, err)
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
