// Package site makes the sheets and the pages of a job, and writes them.
//
// # The model, in order
//
// A [Kit] is what every job of a programme needs: the secret key, one speaker for each language, the fonts. [Build] joins a job's plan
// (package notices), the words (package locales) and the layouts (package templates) into a [Unit]: all files of that job, in memory. It is
// pure: no clock, no disk, the same bytes for the same input.
//
// A [Token] takes the place of the address in everything public. The [Ledger] remembers what paper cannot take back. The record ([record.Job],
// [Index]) says what was made; the coordinator's sheet is made from the records alone, so that it also shows the jobs of earlier makes.
//
// [Write] is the only code that writes into the output folder: whole or not at all, job by job, the indexes last. [Found] makes a new
// programme folder, and [Folder.Make] is the life of a job from there to the output.
package site
