// Package notices decides what must be said before old paint is disturbed: to whom, where, by when, and why. It knows no language and no HTML.
//
// # From a job to a plan
//
// A job file is read strictly in the room jobfile, below this one, and comes as a [Job]: one house, the work on it, everyone who has to be told, and later what the checks
// found. [Decide] turns a Job into a [Plan]. It is pure and reads no clock. The Plan is complete: sheets with whom each is for, pages, homes in walking order, steps with their days, reasons with
// their sources. Whatever comes after reads the Plan alone.
//
// # Shut until it passes
//
// Crews work on days; people live with places that are shut until an event. So a place is shut, in two ways that end differently:
//
//   - Keep out (a room, a door, the ground at a side): from the crew's first set-up there until a written pass that counts. What counts is decided in span_release.go: with
//     federal housing money an independent, certified examiner, inside with dust samples of the place; where somebody is paid, a certified person; elsewhere what the sheets
//     have promised. Several works in one place have to pass, all of them. A dust sample that fails shuts the room in which it was taken.
//   - Keep closed (windows near outside work, the neighbours' too): until the final cleaning of the sides that face them has been checked, by whomever.
//
// Days say only when the crew is there. A lost day on which nothing was begun starts nothing, and one of which nobody has said counts as begun. While planning, a place counts as
// shut until its result is expected: the last work day or rain day, and some business days more where a laboratory has to answer. No sheet ever says that day.
//
// # A household's life
//
// A household says once how it comes and goes, sleeps, washes and cooks, and again only for the time in which a place of that is shut. Each answer is held against the place that
// is shut and against all that may be shut beside it (span_life.go); one shut place blocks a way out. While an answer is missing, the plan asks for it, and no letter for
// that home is made. A row of its letter names the places while it holds, and never a day on which it ends. What is another household's is used only where that is agreed
// (reason_sleep.go), and for whoever sleeps while the crew works being out of the house is no bed.
//
// # Unknown protects
//
// What nobody has said counts as the stricter answer, and the reason says which answer would change what ([Missing]). Work in other job files of the same house counts with that of
// this one where a rule sums it (law_small.go).
//
// # Shelves
//
//	law_*     rows of rules with citation and day of reading: federal, places, dust levels, business days, small jobs, kinds of check
//	span_*    what is shut when, what releases it, how a household lives meanwhile, and hours as a neighbour meets them
//	reason_*  each decision with its grounds: does it apply, may they stay, whose windows, by when, how it ends
//	sheet_*   what each sheet and page says; sheet_kinds.go is the table of kinds, sheet_ids.go spells their ids
//	step_*    what has to happen before and after the work, and by when
//
// What is left over: the types of a job (job.go, words.go, date.go, values.go), messages (message.go, frame.go), the plan (plan.go, decide.go), the plan drawing (lot.go), how a
// place is called on paper (place.go).
package notices
