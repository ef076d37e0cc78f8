package notices

import (
	"maps"
	"reflect"
	"slices"
)

// A life is how a household gets through one state of the house: what it uses, or where it sleeps instead.
type life struct {
	state   state
	uses    Usual
	route   []Place // the first way out that is clear
	blocked []Place // what it counted on and is shut
	relies  []shut  // what it uses or passes and has to have passed, or must not have begun
	since   Moment  // from which the first of that is shut
	missing []Missing
	borrows []Place // what is another household's, and nobody has said that those agree
}

var (
	wouldSayWays    = ownText("life.would_say_ways")
	wouldSayBed     = ownText("life.would_say_bed")
	wouldSayBath    = ownText("life.would_say_bath")
	wouldSayKitchen = ownText("life.would_say_kitchen")
	wouldSayWhile   = ownText("life.would_say_while", Name(""))
)

// lives are how a household gets through each state, in their order. While it sleeps elsewhere because of one place, what it does because of another need not hold.
func (job Job) lives(h Household) []life {
	var all []life
	for _, s := range job.states() {
		s.beside = slices.DeleteFunc(slices.Clone(s.beside), func(other shut) bool { return h.during(other).SleepsAt != "" })
		l := job.lifeIn(h, s)
		l.relies = job.reliesOn(l)
		all = append(all, l)
	}
	return all
}

// reliesOn are the places that have to pass before the work of this state begins, because the household goes through them or uses them then. That they should have passed by then is
// planned, and nothing more.
func (job Job) reliesOn(l life) []shut {
	var all []shut
	uses := append([]Place{}, l.route...)
	for _, r := range []Room{l.uses.Bed, l.uses.Bath, l.uses.Kitchen} {
		uses = append(uses, Place(r.area()))
	}
	for _, earlier := range job.shuts() {
		if earlier.ID != l.state.ID && slices.ContainsFunc(uses, func(p Place) bool { return earlier.blocks(string(p)) }) {
			all = append(all, earlier)
		}
	}
	return all
}

// during is how a household lives while one place is shut: as usual, but for what it has answered for that time.
func (h Household) during(s shut) Usual {
	uses := h.Usual
	for _, e := range h.Except {
		if s.isCalled(e.While) {
			uses = uses.overlaid(e.Usual)
		}
	}
	return uses
}

// lifeIn is the life of a household while one place is shut. Where what it does then is shut itself, what it has answered for another time will do, if that is open.
func (job Job) lifeIn(h Household, s state) life {
	first := job.lifeWith(h, s, h.during(s.shut))
	if len(first.blocked) == 0 {
		return first
	}
	for _, e := range h.Except {
		if e.SleepsAt != "" || e.Away == Yes {
			continue
		}
		if l := job.lifeWith(h, s, h.during(s.shut).overlaid(e.Usual)); l.works() {
			return l
		}
	}
	return first
}

// lifeWith holds what a household uses against the place that is shut, and against all that may be shut beside it.
func (job Job) lifeWith(h Household, s state, uses Usual) life {
	l := life{state: s, uses: uses}
	if l.uses.SleepsAt != "" {
		return l
	}
	if l.uses.Away == Yes && h.sleepsWhile(s.Work) { // whoever is out has no bed by day
		l.ask(h, "except.sleeps_at", wouldSayByDay)
		return l
	}
	if l.uses.Away == Yes && job.overByEvening(s) {
		if l.uses.Bed == "" {
			l.ask(h, "bed", wouldSayBed)
		}
		return l
	}
	l.findRoute(h)
	l.need(h, l.uses.Bed, "bed", wouldSayBed)
	l.need(h, l.uses.Bath, "bath", wouldSayBath)
	l.need(h, l.uses.Kitchen, "kitchen", wouldSayKitchen)
	if theirs := job.borrowed(h, l); len(theirs) > 0 && !h.hasAgreed(s.shut) {
		l.borrows = theirs
		l.missing = append(l.missing, Missing{fieldOf("households", h.ID, "except.agreed"), wouldAgree.With(PlaceName(placeNames(theirs)))})
	}
	return l
}

// overByEvening reports whether the place, and all that may be shut beside it, should have passed on the day on which the crew comes: then whoever is out while the crew works
// comes back to an open house.
func (job Job) overByEvening(s state) bool {
	return !slices.ContainsFunc(append([]shut{s.shut}, s.beside...), func(one shut) bool {
		expected, known := job.expected(one)
		return !known || expected.Compare(s.from.Day) > 0
	})
}

// overlaid is the usual life with another answer for some of it.
func (u Usual) overlaid(other Usual) Usual {
	if len(other.WaysOut) > 0 {
		u.WaysOut = other.WaysOut
	}
	if other.Bed != "" {
		u.Bed = other.Bed
	}
	if other.Bath != "" {
		u.Bath = other.Bath
	}
	if other.Kitchen != "" {
		u.Kitchen = other.Kitchen
	}
	if other.SleepsAt != "" {
		u.SleepsAt = other.SleepsAt
	}
	if other.Away != "" {
		u.Away = other.Away
	}
	return u
}

// findRoute takes the first way out of which nothing is shut. One shut place on it blocks it.
func (l *life) findRoute(h Household) {
	if len(l.uses.WaysOut) == 0 {
		l.ask(h, "ways_out", wouldSayWays)
		return
	}
	blocks := map[Place]shut{}
	for _, route := range l.uses.WaysOut {
		i := slices.IndexFunc(route, func(p Place) bool { return l.state.isShut(string(p)) })
		if i < 0 {
			l.route = route
			return
		}
		blocks[route[i]], _ = l.state.behind(string(route[i]))
	}
	for _, place := range slices.Sorted(maps.Keys(blocks)) {
		l.block(h, place, blocks[place])
	}
}

func (s state) isShut(place string) bool {
	_, is := s.behind(place)
	return is
}

// behind is the shut place that a way, area or piece of work belongs to: the one that the state is about, or the first beside it.
func (s state) behind(place string) (shut, bool) {
	for _, one := range append([]shut{s.shut}, s.beside...) {
		if one.blocks(place) {
			return one, true
		}
	}
	return shut{}, false
}

// need holds one room against what is shut.
func (l *life) need(h Household, room Room, field string, would Text) {
	if room == "" {
		l.ask(h, field, would)
		return
	}
	if by, is := l.state.behind(string(room.area())); is {
		l.block(h, Place(room), by)
	}
}

func (l *life) ask(h Household, field string, would Text) {
	l.missing = append(l.missing, Missing{fieldOf("households", h.ID, field), would.With()})
}

// block notes what is shut, and by what. While nobody has said what the household does then, that is asked.
func (l *life) block(h Household, place Place, by shut) {
	l.blocked = append(l.blocked, place)
	since := by.from
	if since.compare(l.state.from) < 0 {
		since = l.state.from
	}
	if l.since.Day.IsZero() || since.compare(l.since) < 0 {
		l.since = since
	}
	for _, one := range []shut{by, l.state.shut} {
		if !h.hasSaid(one) {
			l.missing = append(l.missing, Missing{fieldOf("households", h.ID, "except"), wouldSayWhile.With(Name(one.ID))})
			return
		}
	}
}

// hasSaid reports whether a household has said how it lives while a place is shut.
func (h Household) hasSaid(s shut) bool {
	return slices.ContainsFunc(h.Except, func(e Exception) bool { return s.isCalled(e.While) })
}

// from is when the household begins to live so.
func (l life) from() Moment {
	if l.since.Day.IsZero() {
		return l.state.from
	}
	return l.since
}

// works reports whether the household can live at home in this state.
func (l life) works() bool {
	return l.uses.SleepsAt == "" && len(l.blocked) == 0 && len(l.missing) == 0
}

// unanswered is what has to be asked before a household can get its letter.
func (job Job) unanswered(h Household) []Missing {
	var all []Missing
	for _, l := range job.lives(h) {
		for _, m := range l.missing {
			if !slices.ContainsFunc(all, func(known Missing) bool { return known.Field == m.Field && reflect.DeepEqual(known.Would, m.Would) }) {
				all = append(all, m)
			}
		}
	}
	return all
}

// sameRow reports whether two states are lived in the same way.
func (l life) sameRow(other life) bool {
	return slices.Equal(l.route, other.route) && l.uses.Bed == other.uses.Bed && l.uses.Bath == other.uses.Bath && l.uses.Kitchen == other.uses.Kitchen
}
