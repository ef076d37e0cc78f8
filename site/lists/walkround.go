package lists

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/notices/jobfile"
	"example.org/doorleaf/templates"
)

// WalkRound is the form to fill in by hand at the house: the questions of the job file, in its order and words. One side has what is asked once, and two have what is asked again for each
// area, household and neighbour, in two columns each.
func WalkRound() ([]byte, error) {
	once := templates.WalkRoundPart{Answers: 1}
	var again []templates.WalkRoundPart
	for _, part := range parts("", "", 1, jobfile.JobFields) {
		if part.Answers == 1 {
			once.Rows = append(once.Rows, part.Rows...)
		} else {
			again = append(again, part)
		}
	}
	half := halfOf(again)
	return templates.RenderWalkRound(templates.WalkRound{Paper: string(notices.Letter), Sides: [][][]templates.WalkRoundPart{
		columnsOfRows(once), columnsOfParts(again[:half]), columnsOfParts(again[half:])}})
}

func columnsOfRows(part templates.WalkRoundPart) [][]templates.WalkRoundPart {
	first, second := part, part
	half := (len(part.Rows) + 1) / 2
	first.Rows, second.Rows = part.Rows[:half], part.Rows[half:]
	return [][]templates.WalkRoundPart{{first}, {second}}
}

func columnsOfParts(all []templates.WalkRoundPart) [][]templates.WalkRoundPart {
	half := halfOf(all)
	return [][]templates.WalkRoundPart{all[:half], all[half:]}
}

// halfOf is how many parts hold half of all rows, or a little more.
func halfOf(parts []templates.WalkRoundPart) int {
	all := 0
	for _, p := range parts {
		all += len(p.Rows)
	}
	for i, rows := 0, 0; i < len(parts); i++ {
		rows += len(parts[i].Rows)
		if 2*rows >= all {
			return i + 1
		}
	}
	return len(parts)
}

// parts are the plain questions of an object under one head, and each list of objects under a head of its own, asked twice. The keys of an object that is
// asked once start with its own. What is asked after the work has no place on the form.
func parts(head, prefix string, answers int, fields []jobfile.Field) []templates.WalkRoundPart {
	part := templates.WalkRoundPart{Head: head, Answers: answers}
	var after []templates.WalkRoundPart
	for _, f := range fields {
		switch {
		case f.Later:
		case f.Holds == jobfile.HoldsObject:
			after = append(after, parts(f.Question, prefix+f.Key+".", answers, f.Fields)...)
		case f.Holds == jobfile.HoldsObjects:
			after = append(after, parts(f.Question, "", 2, f.Fields)...)
		default:
			part.Rows = append(part.Rows, templates.WalkRoundRow{Key: prefix + f.Key, Question: f.Question})
		}
	}
	if len(part.Rows) == 0 {
		return after
	}
	return append([]templates.WalkRoundPart{part}, after...)
}
