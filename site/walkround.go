package site

import (
	"example.org/doorleaf/notices"
	"example.org/doorleaf/templates"
)

// WalkRound is the form to fill in by hand at the house: the questions of the job file, in its order and words.
func WalkRound() ([]byte, error) {
	return templates.RenderWalkRound(templates.WalkRound{
		Paper: string(notices.Letter), Parts: walkRoundParts("The house", 1, notices.JobFields),
	})
}

// walkRoundParts are the plain questions of an object under one head, and each list of objects under a head of its own, asked more than once.
func walkRoundParts(head string, columns int, fields []notices.Field) []templates.WalkRoundPart {
	part := templates.WalkRoundPart{Head: head, Columns: columns}
	var after []templates.WalkRoundPart
	for _, f := range fields {
		switch f.Holds {
		case notices.HoldsObject:
			after = append(after, walkRoundParts(f.Question, 1, f.Fields)...)
		case notices.HoldsObjects:
			after = append(after, walkRoundParts(f.Question, 3, f.Fields)...)
		default:
			part.Rows = append(part.Rows, templates.WalkRoundRow{Key: f.Key, Question: f.Question})
		}
	}
	return append([]templates.WalkRoundPart{part}, after...)
}
