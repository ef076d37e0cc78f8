// Package site makes the sheets and the pages of jobs: it joins plans, words and layouts into files.
//
// # The model, in order
//
// A [Programme] is a folder on disk. [Programme.Make] is the life of its plans there: each is built, staged in the output folder (package tree), remembered
// (package ledger) and swapped in. A make that is killed is ended by the next command, whatever it is ([Programme.Finish]).
//
// A [Kit] is what every job of a programme needs: the secret key, one speaker for each language, the fonts. [Build] joins a job's plan (package notices), the
// words (package locales) and the layouts (package templates) into a [Built] job: its record (package record) and its files, in memory. Type is put on paper by
// package setting, which measures it by package fit; the coordinator's own sheets come from records alone (package lists).
//
// A [Token] takes the place of the address in everything public. [Due] and [Summarise] hold a plan against what the ledger remembers, on a day that is handed in.
package site
