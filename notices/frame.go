package notices

// What stands around every face and page, whatever it says.
var (
	CallHead   = text("call.head")
	CallAskFor = text("call.ask_for", Name(""))
	CallSpeaks = text("call.we_speak")
	CallSay    = text("call.say")

	FootScan     = text("foot.scan")
	FootOrType   = text("foot.or_type")
	FootSheet    = text("foot.sheet")
	FootRevision = text("foot.revision")
	FootReplaces = text("foot.replaces")
	FootCaution  = text("foot.caution")
	FootDraft    = text("foot.draft")
	FootFor      = text("foot.for")

	LotYourSide = text("lot.your_side")
	LotTheWork  = text("lot.the_work")
	LotNear     = text("lot.near")
	LotScale    = text("lot.scale")
	LotSketch   = text("lot.sketch")

	DatesChanged   = text("fact.changed")
	DatesUnchanged = text("fact.not_changed")

	OtherLanguages = text("page.other_languages")
	ChooseHead     = text("page.choose")
	ChooseWhy      = text("page.choose_why")
	RootHead       = text("page.root")
	RootWhy        = text("page.root_why")
	NotFoundHead   = text("page.not_found")
	NotFoundWhy    = text("page.not_found_why")
	WithdrawnHead  = text("page.withdrawn")
	WithdrawnWhy   = text("page.withdrawn_why")
)

// ISpeak is the one sentence to say on the phone, in English whatever the reader's language.
var ISpeak = ownText("phone.i_speak", LanguageName(""), Address(""))
