package main

import (
	"os"
	"path/filepath"

	"example.org/doorleaf/notices"
)

// writeSchemas puts the schemas beside programme.yaml; the first line of each YAML file points editors to its own.
func writeSchemas(dir string) error {
	if err := os.WriteFile(filepath.Join(dir, "programme.schema.json"), notices.ProgrammeSchema(), 0o644); err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(dir, "job.schema.json"), notices.JobSchema(), 0o644)
}
