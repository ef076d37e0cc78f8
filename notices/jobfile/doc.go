// Package jobfile reads a job from YAML: strictly, with every problem of every file at once, each at its line and column, with the bad text and what to write instead.
//
// One row of a table (fields_job.go, fields_programme.go) is one key: its question, its shape, its schema, and how it is read into the [notices.Job]. From the same rows come the
// JSON schema (schema.go), the job file to fill in (skeleton.go) and the form for the walk round the house. What one key has to do with another is a check (check_*.go); a
// check passes over what could not be read. load_*.go turn the text of a value into a typed one.
//
// What is left out is unknown, which is never 'no'. What has happened cannot be later than the moment that [Load] is given. Nothing is decided here: that is for notices.
package jobfile
