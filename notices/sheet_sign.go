package notices

// The danger legend of 29 CFR 1926.62(m)(1)(i), line by line, word for word in English.
var legend = []Text{
	text("legend.danger"),
	text("legend.lead_work_area"),
	text("legend.fertility"),
	text("legend.nervous_system"),
	text("legend.no_eating"),
}

var (
	signKeepOut     = text("sign.keep_out")
	signLeaveAlone  = text("sign.leave_plastic")
	signStaysShut   = text("sign.stays_shut")
	signPageHead    = text("sign.page_head")
	signPageGoingOn = text("sign.page_going_on")
	signPageDo      = text("sign.page_do")
	signPageStrong  = text("sign.page_strong_words")
	signPageAfter   = text("sign.page_after")
)

func signContent(job Job, w Work) Content {
	return Content{
		Legend: said(legend),
		Head:   Message{ID: w.Area.Word()},
		Place:  w.onPaper(),
		Marks:  []Mark{MarkKeepOut, markNoEating},
		Blocks: []Block{{Lines: said([]Text{signKeepOut, signLeaveAlone, signStaysShut})}},
		Call:   Call{Who: Name(job.OnTheDay.Name), Phone: job.OnTheDay.Phone, Speaks: job.OnTheDay.Speaks},
	}
}

func signPage(job Job) Page {
	return Page{pageSign, Content{
		Head:  signPageHead.With(),
		Marks: []Mark{MarkKeepOut},
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{signPageGoingOn, signPageStrong})},
			{doHead.With(), said([]Text{signPageDo, signLeaveAlone, letterDust, letterSwept})},
			{afterHead.With(), []Message{job.afterLine(), signPageAfter.With()}},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}

// said fills in texts that hold no values.
func said(texts []Text) []Message {
	var messages []Message
	for _, t := range texts {
		messages = append(messages, t.With())
	}
	return messages
}
