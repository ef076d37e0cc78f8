package notices

import (
	"reflect"
	"slices"
)

var (
	letterHead       = text("letter.head")
	letterShut       = text("letter.shut_rooms")
	letterUse        = text("letter.use_these")
	letterRain       = text("letter.if_rain")
	letterCrewDays   = text("letter.crew_days")
	letterNight      = text("letter.night_before")
	letterMove       = text("letter.move_things")
	letterMedicines  = text("letter.take_medicines")
	letterMeanwhile  = text("letter.meanwhile")
	letterBags       = text("letter.leave_bags")
	letterHeating    = text("letter.heating")
	letterWindows    = text("letter.windows_shut")
	letterPets       = text("letter.pets")
	letterExtraCare  = text("letter.extra_care")
	letterWhy        = text("letter.why")
	letterWhyDust    = text("letter.why_dust")
	letterWhyHarm    = text("letter.why_harm")
	letterAfter      = text("letter.after")
	letterAfterTest  = text("letter.after_test")
	letterAfterCheck = text("letter.after_check")
	letterStrong     = text("letter.strong_words")
	letterDustHead   = text("letter.dust_head")
	letterDust       = text("letter.dust")
	letterSwept      = text("letter.dust_children")
	letterAte        = text("letter.ate_chips", Phone(""))
	letterPageHead   = text("letter.page_head")
	letterPageGoing  = text("letter.page_going_on")
	letterPagePaper  = text("letter.page_paper")
	letterPageDo     = text("letter.page_do")
)

// letters are one a household, each with its receipt behind it, until all work has passed. While only some has, the letter stays as it is: the return letter says
// which of its rooms are open again.
func letters(job Job) []Sheet {
	if len(job.OpenWork()) == 0 {
		return nil
	}
	var all []Sheet
	for _, h := range job.householdsToTell() {
		if len(job.unanswered(h)) == 0 { // while an answer is missing, nobody knows what it may use
			all = append(all, letter(job, h), receipt(job, h))
		}
	}
	return all
}

func letter(job Job, h Household) Sheet {
	return Sheet{
		ID:     letterID(h.ID),
		Kind:   StayOutLetter,
		To:     To{ForHousehold, h.ID, h.Name},
		Faces:  facesOf(job.faceLanguages(h.reads()), pageHome, letterContent(job, h)),
		Copies: 1,
		Due:    job.letterDue(),
	}
}

func letterContent(job Job, h Household) Content {
	return Content{
		Head:  job.letterHead(h),
		For:   Name(h.Name),
		Marks: []Mark{MarkKeepOut},
		Facts: append(shutRooms(job), job.living(h)...),
		Blocks: []Block{
			{letterNight.With(), said([]Text{letterMove, letterMedicines})},
			{letterMeanwhile.With(), meanwhile(job)},
			{letterAfter.With(), append([]Message{job.afterLine()}, said([]Text{letterStrong})...)},
			{letterWhy.With(), said([]Text{letterWhyDust, letterWhyHarm})},
			{letterDustHead.With(), append(said([]Text{letterDust}), letterAte.With(poisonControl))},
		},
		Call: job.familyCall(),
	}
}

// familyCall is for a household: the programme's phone, and the person whom they will meet at the house.
func (job Job) familyCall() Call {
	call := job.programmeCall()
	call.Who = Name(job.OnTheDay.Name)
	return call
}

// shutRooms is a row for each place: the moment from which it is shut, the days on which the crew is there when it is not that day alone, and the rain days. Until when, the headline
// says for all of them.
func shutRooms(job Job) []Fact {
	facts := []Fact{{Label: letterShut.With()}}
	for _, s := range onePerPlace(job.shuts()) {
		cells := []Value{s.from}
		if len(s.crew) > 1 || len(s.crew) == 1 && s.crew[0] != s.from.Day {
			cells = append(cells, Pair{letterCrewDays.With(), spansOf(s.crew)})
		}
		if len(s.rain) > 0 {
			cells = append(cells, Pair{letterRain.With(), spansOf(s.rain)})
		}
		facts = append(facts, Fact{s.place, cells})
	}
	return facts
}

// A shutPlace is all that shuts one place: from the first of it on.
type shutPlace struct {
	place      Places
	from       Moment
	crew, rain []Date
}

func onePerPlace(shuts []shut) []shutPlace {
	var all []shutPlace
	for _, s := range shuts {
		i := slices.IndexFunc(all, func(known shutPlace) bool { return reflect.DeepEqual(known.place, s.onPaper()) })
		if i < 0 {
			i = len(all)
			all = append(all, shutPlace{place: s.onPaper(), from: s.from})
		}
		all[i].crew = sortedDays(append(all[i].crew, s.Days...))
		if !s.RainDay.IsZero() {
			all[i].rain = sortedDays(append(all[i].rain, s.RainDay))
		}
	}
	return all
}

func meanwhile(job Job) []Message {
	lines := said([]Text{letterBags, letterHeating})
	if job.hasOutsideWork() {
		lines = append(lines, letterWindows.With())
	}
	return append(lines, said([]Text{letterPets, letterExtraCare})...)
}

// afterLine says 'test' only where the job has a clearance test.
func (job Job) afterLine() Message { return job.check().after.With() }

// homePage is general: no dates, no rooms, and the same whether a family stays or sleeps elsewhere.
func homePage(job Job) Page {
	return Page{pageHome, Content{
		Head:  letterPageHead.With(),
		Marks: []Mark{MarkKeepOut},
		Blocks: []Block{
			{goingOnHead.With(), said([]Text{letterPageGoing, letterWhyDust, letterWhyHarm})},
			{doHead.With(), said([]Text{letterPageDo, letterPagePaper, letterBags, letterHeating, letterPets, letterExtraCare})},
			{letterNight.With(), said([]Text{letterMove, letterMedicines})},
			{letterDustHead.With(), append(said([]Text{letterDust, letterSwept}), letterAte.With(poisonControl))},
			{afterHead.With(), []Message{job.afterLine()}},
			differBlock(),
		},
		Call: job.pageCall(),
	}}
}
