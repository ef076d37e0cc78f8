package site_test

import (
	"bytes"
	"maps"
	"reflect"
	"slices"
	"strings"
	"testing"

	"golang.org/x/net/html"

	"example.org/doorleaf/notices"
	"example.org/doorleaf/site/tree"
)

// privateJob has an unusual text or number in every field that is nobody's business. What is public stays plain: the days, hours, task and
// parts of the outside work, who checks at the end, and the programme.
const privateJob = `code: canary-code
address: 98431 Canary Address Way, Canaryville
state: GU
city: Canary City
built: 1787
owner: rents_it_out
anyone_paid: yes
federal_housing_money: yes
checked_by: cleaning_check
emergency: no
landlord_works: yes
dwelling: elderly_or_disabled
lead_presumed: 2026-08-19
entries: [side_door]
pamphlets: [{to: owner, given: 2026-08-17, how: mailed}]
on_the_day: {name: Canary Contact, phone: 619-555-0187, speaks: [vi]}
work:
  - {id: canary-outwork, where: outside, area: garage, task: sand, parts: [trim], how_much: 731.25 sq ft, faces: [alley, 98427 Canary Neighbour Road], storey: 2,
     days: [2027-05-08], crew_arrives: 08:00, cleaned_by: 16:30, rain_day: 2027-05-15, ways_in: [gate, porch_door],
     lot_line: 8.37 ft, share_of_part: 97, cleaned_nightly: yes}
  - {id: canary-inwork, where: inside, area: laundry_room, task: drill_and_cut, parts: [cupboards], how_much: unknown,
     days: [2028-11-13], crew_arrives: 05:17, cleaned_by: 21:43, rain_day: 2028-12-29, ways_in: [basement_door],
     tests: [{how: shop_swab, covers: some_surfaces, result: not_clear}]}
households:
  - id: canary-house
    name: Canary Household
    languages: [vi, Hmong]
    phone_language: Somali
    sleeps_from: 02:13
    sleeps_to: 11:37
    leaves: 05:29
    returns: 21:53
    child_under_6: yes
    pets: [rabbit]
    ways_out: [[bathroom_door, side_door]]
    reach_at: Canary Aunt
    bed: upstairs_bedroom
    bath: downstairs_bathroom
    kitchen: kitchen
    except:
      - {while: canary-inwork, sleeps_at: Canary Motel}
    elsewhere: {travel: taxi, paid_by: owner, medicines: we_fetch, pets: boarded, keys: owner_has_one}
neighbours:
  - {id: canary-near, address: 98427 Canary Neighbour Road, kind: day_care, gap: 17.3 ft, languages: [es], pets: [hens], homes: 2}
  - {id: canary-far, address: 98439 Canary Neighbour Road, near: no, languages: unknown}
openings:
  - {id: canary-window, what: window_air_conditioner, area: dining_room, storey: 2, work: canary-outwork, gap: 13.62 ft}
`

// canaries are what of privateJob could show on a page: as typed, as a page would write it, or as an id of ours.
var canaries = []string{
	"canary", "98431", "98427", "98439", "Guam", "1787", "555-0187", "6195550187", "731.25", "17.3 ft",
	"garage", "alley", "gate", "porch door", "porch_door", "laundry room", "laundry_room", "drilling", "cupboards", "patch", "basement",
	"2028", "November", "December", "5:17", "9:43", "bathroom", "bedroom", "kitchen", "rabbit", "rent",
	"side door", "side_door", "2026", "August", "8.37", "97", "nightly", "swab", "taxi", "boarded", "day-care", "day_care", "dining", "13.6",
	"Somali", "Hmong", "2:13", "11:37", "5:29", "9:53", "owner",
}

func TestPagesTellNothingPrivate(t *testing.T) {
	files := made(t, jobOf(t, privateJob))
	pages := below(files, "web/")
	if len(pages) < 18 { // five pages in each of three languages, one to choose on, two for everybody
		t.Fatalf("there are only %d pages", len(pages))
	}
	for path, data := range pages {
		text := strings.ToLower(path + string(data))
		for _, canary := range canaries {
			if strings.Contains(text, strings.ToLower(canary)) {
				t.Errorf("%s holds %q", path, canary)
			}
		}
	}
	checkCanariesSing(t, files)
}

// checkCanariesSing makes sure that the canaries were really in the job: paper is private and shows them.
func checkCanariesSing(t *testing.T, files tree.Files) {
	t.Helper()
	var paper strings.Builder
	for _, data := range below(files, "print/") {
		paper.Write(data)
	}
	for _, canary := range []string{
		"canary-code", "98431 Canary Address Way", "Canary Contact", "(619) 555-0187", "canary-outwork", "canary-inwork", "Canary Household",
		"Canary Motel", "98427 Canary Neighbour Road", "98439 Canary Neighbour Road", "canary-near", "canary-house", "Laundry room", "bathroom door", "1787",
		"Canary City", "side door", "August 17, 2026", "8.37 ft", "swab", "taxi", "day-care", "canary-window", "13.62 ft", "Somali", "Hmong",
	} {
		if !strings.Contains(strings.ToLower(paper.String()), strings.ToLower(canary)) {
			t.Errorf("no sheet shows %q, so its absence from the pages proves nothing", canary)
		}
	}
}

// Every field of a job is public or private by decision. A new field fails this test until somebody decides, and a private one gets a canary.
func TestEveryFieldIsDecidedOn(t *testing.T) {
	for kind, fields := range map[reflect.Type]string{
		reflect.TypeFor[notices.Job]():         "Programme File Code Address State City Built Owner AnyonePaid FederalAid CheckedBy LandlordWorks Dwelling LeadWork Presumed PresumedTold Booked Emergency Entries OnTheDay Work Households Neighbours Beside BesideUnread Asked Openings Checks Wipes Closed CalledOff AreasShared Shared Pamphlets Statement",
		reflect.TypeFor[notices.Contact]():     "Name Phone Speaks",
		reflect.TypeFor[notices.Work]():        "ID Where Area Task Parts HowMuch Faces Side Storey Days CrewArrives CleanedBy RainDay WaysIn Tests PartShare Nightly HasWindows Lost LotLine LotLineKnown checkedWith",
		reflect.TypeFor[notices.Household]():   "ID Name Languages Others PhoneLanguage ChildUnder6 Owns Pets Usual Except SleepsFrom SleepsTo Leaves Returns ReachAt Elsewhere",
		reflect.TypeFor[notices.Usual]():       "WaysOut Bed Bath Kitchen Away SleepsAt",
		reflect.TypeFor[notices.Exception]():   "While Agreed Usual",
		reflect.TypeFor[notices.LostDay]():     "Day Begun",
		reflect.TypeFor[notices.Neighbour]():   "ID Address Kind Gap GapKnown Near Languages Others Pets Homes OpenDays",
		reflect.TypeFor[notices.Opening]():     "ID What Area Storey Work Gap GapKnown",
		reflect.TypeFor[notices.Pamphlet]():    "To Given How",
		reflect.TypeFor[notices.CheckResult](): "Work On By Role Result Independent Certified Again",
		reflect.TypeFor[notices.Wipe]():        "Work Room Surface Spot Parts Lab Loading Below Reported passed",
		reflect.TypeFor[notices.SharedAreas](): "Route Homes Records",
		reflect.TypeFor[notices.Test]():        "How Covers Result",
		reflect.TypeFor[notices.Elsewhere]():   "Where Travel PaidBy Medicines Pets Keys",
	} {
		var names []string
		for i := range kind.NumField() {
			names = append(names, kind.Field(i).Name)
		}
		if got := strings.Join(names, " "); got != fields {
			t.Errorf("%s has the fields\n%s\nand this test decided on\n%s", kind, got, fields)
		}
	}
}

// otherFamilies are changes of a job that nobody may read from the web.
var otherFamilies = map[string]func(*notices.Job){
	"the family sleeps elsewhere": func(j *notices.Job) {
		j.Households[0].Usual.SleepsAt, j.Households[0].ReachAt = "her sister's", "612-555-0188"
	},
	"the family reads other languages": func(j *notices.Job) { j.Households[0].Languages = []notices.Language{"es", "en"} },
	"nobody knows what it reads":       func(j *notices.Job) { j.Households[0].Languages = nil },
	"it has other pets":                func(j *notices.Job) { j.Households[0].Pets = []notices.Pet{"hens", "dog"} },
	"it has no pets":                   func(j *notices.Job) { j.Households[0].Pets = nil },
	"it has no small child":            func(j *notices.Job) { j.Households[0].ChildUnder6 = notices.No },
	"it is rung in another language":   func(j *notices.Job) { j.Households[0].PhoneLanguage = "es" },
	"two families live there": func(j *notices.Job) {
		second := j.Households[0]
		second.ID, second.Name, second.Languages = "h2", "June and Walter Oakes", []notices.Language{"en"}
		j.Households = append(j.Households, second)
	},
	"nobody lives there":  func(j *notices.Job) { j.Households = nil },
	"nobody lives nearby": func(j *notices.Job) { j.Neighbours = nil },
	"another house":       func(j *notices.Job) { j.Address, j.State, j.Built = "98 Alder Court, Larkfield", "WI", 1990 },
	"somebody is paid": func(j *notices.Job) {
		j.AnyonePaid, j.FederalAid, j.Owner = notices.Yes, notices.Yes, notices.RentsItOut
	},
	"another crew leader": func(j *notices.Job) {
		j.OnTheDay = notices.Contact{Name: "Dmitri", Phone: "6125550167", Speaks: []notices.Language{"vi"}}
	},
	"other doors":          func(j *notices.Job) { j.Work[0].WaysIn = []notices.Way{"gate"} },
	"another area, higher": func(j *notices.Job) { j.Work[0].Area, j.Work[0].Storey = "garage", 2 },
	"the family is out while the crew works": func(j *notices.Job) {
		j.Households[0].Usual.Away = notices.Yes
	},
	"all is agreed with the family": func(j *notices.Job) {
		j.Households[0].Elsewhere = notices.Elsewhere{Where: "Birch Motel", Travel: "taxi", PaidBy: "owner", Medicines: "take_along", Pets: "boarded", Keys: "crew_has_one"}
	},
	"an emergency, and other doors of the building": func(j *notices.Job) { j.Emergency, j.Entries = notices.Yes, []notices.Way{"side_door"} },
	"the pamphlet has been given": func(j *notices.Job) {
		j.Pamphlets = []notices.Pamphlet{{To: notices.ToOwner, Given: j.Work[0].Days[0].Plus(-20), How: notices.Signed}}
	},
	"other measures": func(j *notices.Job) {
		j.Openings, j.Work[0].LotLine, j.Work[0].PartShare, j.Work[0].Nightly = nil, 50, 9, notices.Yes
		j.Neighbours[0].Gap, j.Neighbours[0].Kind = 60, notices.DayCare
	},
	"the work inside has no lead": func(j *notices.Job) {
		j.Work[1].Tests = []notices.Test{{How: "certified_inspector", Covers: notices.AllSurfaces, Result: notices.NoLead}}
	},
	"the family works at night, and owns the house": func(j *notices.Job) {
		j.Households[0].SleepsFrom, j.Households[0].SleepsTo, j.Households[0].Owns = 8*60, 15*60, notices.Yes
	},
	"it reads a language without texts": func(j *notices.Job) { j.Households[0].Languages, j.Households[0].Others = nil, []string{"Somali"} },
	"it is housing for older people": func(j *notices.Job) {
		j.Dwelling, j.LandlordWorks, j.AreasShared = notices.ElderlyHousing, notices.Yes, notices.Yes
	},
	"the paint was presumed to be lead paint": func(j *notices.Job) { j.Presumed = j.Work[0].Days[0].Plus(-30) },
	"no work inside": func(j *notices.Job) {
		j.Work = slices.DeleteFunc(j.Work, func(w notices.Work) bool { return w.Where == notices.Inside })
	},
}

// The pages of a job do not differ by a byte, whoever lives in the house and next to it.
func TestPagesAreTheSameForEveryFamily(t *testing.T) {
	want := below(made(t, small(demoJob(t, "alder-14"))), "web/")
	for name, change := range otherFamilies {
		job := small(demoJob(t, "alder-14"))
		change(&job)
		compareFiles(t, name, below(made(t, job), "web/"), want)
	}
	job := small(demoJob(t, "alder-14"))
	job.Work[0].CrewArrives += 30
	if got := below(made(t, job), "web/"); sameFiles(got, want) {
		t.Error("other hours of the outside work do not show on the pages, so this test compares nothing")
	}
	job = small(demoJob(t, "alder-14"))
	job.Work[0].Faces = []string{"yard"}
	if got := below(made(t, job), "web/"); sameFiles(got, want) {
		t.Error("the plan drawing of the pages does not show the side of the work, which is public")
	}
}

func sameFiles(a, b tree.Files) bool {
	return maps.EqualFunc(a, b, bytes.Equal)
}

// compareFiles names every file that is not as wanted.
func compareFiles(t *testing.T, name string, got, want tree.Files) {
	t.Helper()
	for path := range want {
		if _, there := got[path]; !there {
			t.Errorf("%s: %s is missing", name, path)
		}
	}
	for path, data := range got {
		if !bytes.Equal(data, want[path]) {
			t.Errorf("%s: %s differs", name, path)
		}
	}
}

// hostile texts would do something in HTML, Markdown, a template, a shell or a line of mixed directions, if somebody let them.
var hostile = map[string]string{
	"a script":           `<script>alert(1)</script>`,
	"an image":           `"><img src=x onerror=1>`,
	"an attribute":       `' onmouseover='alert(1)' x='`,
	"an end tag":         `</title></style></bdi></section><b>x`,
	"strong Markdown":    `**x** _y_ ~~z~~`,
	"a Markdown link":    `[a](javascript:x) <javascript:y>`,
	"a template":         `{{.Name}} {{template "sign" .}}`,
	"an entity":          `&lt;b&gt; &amp; &#60;i&#62;`,
	"an override":        "\u202Efdp.exe\u202C",
	"marks of direction": "\u200Fسلام\u200E \u2067بيت\u2069 \u061C12",
	"a comment":          `<!-- x --> <![CDATA[ y ]]>`,
	"code":               "`rm -rf` $(x) %s %d",
}

// Names and addresses are typed by strangers. They are shown as typed and do nothing.
func TestHostileTextIsShownAsTyped(t *testing.T) {
	plain := made(t, hostileJob(t, "Plain words"))
	for name, text := range hostile {
		t.Run(name, func(t *testing.T) {
			files := made(t, hostileJob(t, text))
			checkHarmless(t, files, kindsOf(t, plain))
			checkShown(t, files, text)
		})
	}
}

// A character that no font has would print as a box. Private-use characters also stand for values while a text is rendered.
func TestCharactersThatNoFontHasAreRefused(t *testing.T) {
	for text, want := range map[string]string{
		"\uE000\uE001 x": "no font is known for '\\ue000' (U+E000); or write this in another script",
		"Rosa 🐕":         "no font is known for '🐕' (U+1F415); or write this in another script",
	} {
		job := demoJob(t, "alder-14")
		job.Households[0].Name = text
		_, err := newFolder(t).Make(plansOf(job), func(string) {})
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

// hostileJob is the demo's first job with the text in every field that holds free text. The number keeps addresses what they are.
func hostileJob(t *testing.T, text string) notices.Job {
	job := small(demoJob(t, "alder-14"))
	job.Programme.Name = text + " programme"
	job.Address = "14 " + text + " house, Larkfield"
	job.OnTheDay.Name = text + " contact"
	job.Households[0].Name = text + " family"
	job.Households[0].Usual.SleepsAt = text + " motel"
	for i := range job.Neighbours {
		number, _, _ := strings.Cut(job.Neighbours[i].Address, " ")
		job.Neighbours[i].Address = number + " " + text + " street"
	}
	return job
}

// shownOn is where each of the texts has to stand, in full.
var shownOn = map[string][]string{
	"programme": {"print/alder-14/letter-h1.html", "print/alder-14/sign-porch-front_door-en.html", "print/alder-14/request-n12.html", "web/TOKEN/EN/WIN/index.html", "web/404.html"},
	"house":     {"print/alder-14/letter-h1.html", "print/alder-14/request-n12.html", "print/alder-14/walk-list.html", "print/index.html", "print/contact.html"},
	"contact":   {"print/alder-14/letter-h1.html", "print/alder-14/sign-porch-front_door-en.html"},
	"family":    {"print/alder-14/letter-h1.html", "print/alder-14/receipt-h1.html", "print/alder-14/pets-h1.html", "print/alder-14/walk-list.html", "print/index.html", "print/contact.html"},
	"motel":     {"print/alder-14/letter-h1.html", "print/index.html"},
	"street":    {"print/alder-14/request-n12.html", "print/alder-14/note-n21.html", "print/alder-14/walk-list.html", "print/index.html", "print/contact.html"},
}

func checkShown(t *testing.T, files tree.Files, text string) {
	t.Helper()
	text = strings.Join(strings.Fields(text), " ")
	for what, places := range shownOn {
		for _, place := range places {
			place = strings.ReplaceAll(place, "TOKEN", tokenOf(t, files, "alder-14"))
			data, there := files[place]
			if !there {
				t.Errorf("there is no %s", place)
			} else if !strings.Contains(textOf(parsed(t, data)), text+" "+what) {
				t.Errorf("%s does not show %q as typed", place, text+" "+what)
			}
		}
	}
}

func tokenOf(t *testing.T, files tree.Files, code string) string {
	t.Helper()
	for path := range below(files, "web/") {
		if parts := strings.Split(path, "/"); len(parts) > 2 {
			return parts[1]
		}
	}
	t.Fatalf("job %s has no pages", code)
	return ""
}

// kinds are all elements and attributes of some files.
type kinds struct{ elements, attributes map[string]bool }

func kindsOf(t *testing.T, files tree.Files) kinds {
	t.Helper()
	all := kinds{map[string]bool{}, map[string]bool{}}
	for _, data := range htmlFiles(files) {
		for n := range parsed(t, data).Descendants() {
			if n.Type == html.ElementNode {
				all.elements[n.Data] = true
				for _, a := range n.Attr {
					all.attributes[n.Data+" "+a.Key] = true
				}
			}
		}
	}
	return all
}

// checkHarmless lets no element or attribute through that the same sheets with plain words have not, and no comment, script, handler or odd link at all.
func checkHarmless(t *testing.T, files tree.Files, plain kinds) {
	t.Helper()
	for path, data := range htmlFiles(files) {
		for n := range parsed(t, data).Descendants() {
			switch {
			case n.Type == html.CommentNode:
				t.Errorf("%s has the comment %q", path, n.Data)
			case n.Type == html.ElementNode:
				checkElement(t, path, n, plain)
			}
		}
	}
}

func checkElement(t *testing.T, path string, n *html.Node, plain kinds) {
	t.Helper()
	if n.Data == "script" || !plain.elements[n.Data] {
		t.Errorf("%s has the element %s", path, n.Data)
	}
	for _, a := range n.Attr {
		switch {
		case strings.HasPrefix(a.Key, "on") || !plain.attributes[n.Data+" "+a.Key]:
			t.Errorf("%s has the attribute %s in %s", path, a.Key, n.Data)
		case (a.Key == "href" || a.Key == "src") && !isOurLink(a.Val):
			t.Errorf("%s has the link %q", path, a.Val)
		}
	}
}

// isOurLink is true of telephones, the empty icon, and paths that stay on the site.
func isOurLink(href string) bool {
	return strings.HasPrefix(href, "tel:") || href == "data:," || !strings.Contains(href, ":") && !strings.HasPrefix(href, "//")
}

func TestNoScriptAnywhere(t *testing.T) {
	files := htmlFiles(made(t, demoJob(t, "alder-14"), demoJob(t, "quarry-231")))
	if len(files) < 60 {
		t.Fatalf("there are only %d files", len(files))
	}
	for path, data := range files {
		for n := range parsed(t, data).Descendants() {
			if n.Type == html.ElementNode && slices.Contains([]string{"script", "iframe", "object", "embed", "form", "img", "link"}, n.Data) && !isEmptyIcon(n) && !isOurFrame(path, n) {
				t.Errorf("%s has a %s", path, n.Data)
			}
		}
	}
}

// isEmptyIcon is the one link that keeps browsers from asking for an icon.
func isEmptyIcon(n *html.Node) bool {
	return n.Data == "link" && slices.ContainsFunc(n.Attr, func(a html.Attribute) bool { return a.Key == "href" && a.Val == "data:," })
}

// isOurFrame is a frame of the contact sheet, which shows files of ours.
func isOurFrame(path string, n *html.Node) bool {
	return path == "print/contact.html" && n.Data == "iframe" && slices.ContainsFunc(n.Attr, func(a html.Attribute) bool {
		return a.Key == "src" && isOurLink(strings.TrimSuffix(a.Val, "#small"))
	})
}
