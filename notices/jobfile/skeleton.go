package jobfile

import (
	"fmt"
	"slices"
	"strings"
)

// JobSkeleton is a job file to fill in: each key under its question. Keys that may be left out stand behind a comment sign.
func JobSkeleton() []byte {
	return skeleton("../job.schema.json", JobFields,
		"One file a house. The printed walk-round form asks the same questions, in the same order.",
		"A line that starts with # counts for nothing; delete that character where you answer. Parts behind it are for later, or for few jobs.",
		"Copy the lines of an entry, from its hyphen on, for a second area, day, household or neighbour; delete those that you do not need.",
		"Where a question offers unknown or not_sure, that counts as the stricter answer.",
		"Save, then run doorleaf plan on this file: it names everything that is still missing.")
}

// ProgrammeSkeleton is the same for programme.yaml.
func ProgrammeSkeleton() []byte {
	return skeleton("programme.schema.json", programmeFields, "What stays the same from job to job.")
}

func skeleton(schema string, fields []Field, preface ...string) []byte {
	var out strings.Builder
	fmt.Fprintf(&out, "# yaml-language-server: $schema=%s\n", schema)
	for _, line := range preface {
		fmt.Fprintf(&out, "# %s\n", line)
	}
	for _, f := range fields {
		out.WriteString("\n")
		f.write(&out, "")
	}
	return []byte(out.String())
}

func (f Field) write(out *strings.Builder, indent string) {
	fmt.Fprintf(out, "%s# %s\n", indent, f.Question)
	switch {
	case f.Fields != nil && !f.required && !slices.Contains(alwaysAsked, f.Key):
		out.WriteString(commented(indent, f.nested(indent)))
	case f.Fields != nil:
		out.WriteString(f.nested(indent))
	case f.required:
		fmt.Fprintf(out, "%s%s: # %s\n", indent, f.Key, f.offer())
	default:
		fmt.Fprintf(out, "%s# %s: %s\n", indent, f.Key, f.offer())
	}
}

// alwaysAsked may be left out of a file, and hardly any job does.
var alwaysAsked = []string{"neighbours"}

// nested is a key with keys of its own, or one entry of them.
func (f Field) nested(indent string) string {
	var out strings.Builder
	fmt.Fprintf(&out, "%s%s:\n", indent, f.Key)
	if f.Holds == HoldsObjects {
		fmt.Fprintf(&out, "%s  -\n", indent)
		indent += "  "
	}
	writeFields(&out, indent+"  ", f.Fields)
	return out.String()
}

// commented puts the sign before each line of a part that most jobs do not need.
func commented(indent, text string) string {
	var out strings.Builder
	for line := range strings.Lines(text) {
		out.WriteString(indent + "# " + strings.TrimPrefix(line, indent))
	}
	return out.String()
}

func writeFields(out *strings.Builder, indent string, fields []Field) {
	for _, f := range fields {
		f.write(out, indent)
	}
}

// offer is an example, or all words when they are few.
func (f Field) offer() string {
	if len(f.words) > 1 && len(f.words) <= 8 && f.pattern == "" {
		return strings.Join(f.words, ", or ")
	}
	return "such as " + f.example
}
