package notices

var (
	receiptHead      = text("receipt.head")
	receiptCame      = text("receipt.came")
	receiptFree      = text("receipt.free")
	receiptNotForm   = text("receipt.not_the_form")
	receiptTakenBy   = text("receipt.taken_by")
	receiptExplainer = text("receipt.explained_by")
	receiptLanguage  = text("receipt.language")
	receiptDate      = text("receipt.date")
	receiptSignature = text("receipt.signature")
)

// receipt is one side of paper in both languages, so that both who sign it can read all of it.
func receipt(job Job, h Household) Sheet {
	return Sheet{
		ID:     receiptID(h.ID),
		Kind:   LetterReceipt,
		To:     To{ForHousehold, h.ID, h.Name},
		Faces:  receiptFaces(job, h),
		Copies: 1,
		Due:    job.letterDue(),
	}
}

func receiptFaces(job Job, h Household) []Face {
	var faces []Face
	for _, l := range job.languagesOr(h.reads()) {
		face := Face{Language: l, Opens: pageHome, Content: receiptContent(job, h)}
		if l != English {
			face.Beside = English
		}
		faces = append(faces, face)
	}
	return faces
}

func receiptContent(job Job, h Household) Content {
	return Content{
		Head:   receiptHead.With(),
		For:    Name(h.Name),
		Blocks: []Block{{Lines: said([]Text{receiptCame, receiptFree, receiptNotForm})}},
		Blanks: said([]Text{receiptTakenBy, receiptExplainer, receiptLanguage, receiptDate, receiptSignature}),
		Call:   job.familyCall(),
	}
}
