package notices

import (
	"fmt"
	"slices"
	"strings"
)

var (
	outGround       = ownText("outside.ground", Name(""), Reach(0))
	whyGround       = ownText("outside.ground_why")
	outLine         = ownText("outside.barrier", Name(""))
	whyLineNear     = ownText("outside.barrier_near", Feet(0), Reach(0))
	whyLineUnknown  = ownText("outside.barrier_unknown", Reach(0))
	wouldNoBarrier  = ownText("outside.would_no_barrier", Reach(0))
	outHouseWindows = ownText("windows.own_house", Reach(0))
	whyHouseWindows = ownText("windows.own_house_why")
	outShut         = ownText("windows.shut_opening", Name(""))
	outLeaveOpen    = ownText("windows.leave_opening", Name(""))
	whyWithinStorey = ownText("windows.opening_within", Feet(0), Reach(0))
	whyNotMeasured  = ownText("windows.opening_not_measured", Reach(0))
	whyTooFar       = ownText("windows.opening_beyond", Feet(0), Reach(0))
	whyAbove        = ownText("windows.opening_above")
	whyWholeSide    = ownText("windows.opening_whole_side")
	wouldBeLower    = ownText("outside.would_be_lower")
	wouldListThem   = ownText("windows.would_list")
	wouldLeaveOpen  = ownText("windows.would_leave_open")
)

// outside is what outside work asks of the ground and of the property line.
func outside(job Job) []Reason {
	var all []Reason
	for _, w := range job.leadWork() {
		if w.Where != Outside {
			continue
		}
		cover := job.groundCover()
		all = append(all, Reason{Decision: "ground_cover", About: w.ID, Outcome: outGround.With(Name(w.ID), Reach(cover.Value)), Because: whyGround.With(), Source: cover.Source(), Binds: job.bindsBy(cover), Missing: job.storeyUnknown(w)})
		all = append(all, job.lineBarrier(w)...)
	}
	return all
}

// storeyUnknown asks where the storey of the work could make the cover smaller, or let an opening above it stay open.
func (job Job) storeyUnknown(w Work) []Missing {
	above := slices.ContainsFunc(job.Openings, func(o Opening) bool { return o.Work == w.ID && o.Storey > 1 })
	if w.Storey > 0 || !above && job.State != "MN" {
		return nil
	}
	return []Missing{{fieldOf("work", w.ID, "storey"), wouldBeLower.With()}}
}

// groundCover is wider in Minnesota where the house is known to have more than one storey.
func (job Job) groundCover() Rule {
	rule := job.rule(groundCover)
	if job.State == "MN" && job.isTall() && rule.IsStricter(tallGroundCover.Value) {
		return tallGroundCover
	}
	return rule
}

// isTall: some work or opening is above the ground floor, or nobody has said of some work on which storey it is.
func (job Job) isTall() bool {
	return slices.ContainsFunc(job.Work, func(w Work) bool { return w.Storey != 1 }) ||
		slices.ContainsFunc(job.Openings, func(o Opening) bool { return o.Storey > 1 })
}

// lineBarrier: a line that nobody measured counts as near.
func (job Job) lineBarrier(w Work) []Reason {
	near := job.rule(lineBarrier)
	if w.LotLineKnown && float64(w.LotLine) > near.Value {
		return nil
	}
	r := Reason{Decision: "line_barrier", About: w.ID, Outcome: outLine.With(Name(w.ID)), Because: whyLineNear.With(w.LotLine, Reach(near.Value)), Source: near.Source(), Binds: job.bindsBy(near)}
	if !w.LotLineKnown {
		r.Because = whyLineUnknown.With(Reach(near.Value))
		r.Missing = []Missing{{fieldOf("work", w.ID, "lot_line"), wouldNoBarrier.With(Reach(near.Value))}}
	}
	return []Reason{r}
}

// ownOpenings list the windows, doors and vents of the house itself, one by one where the job file lists them.
func ownOpenings(job Job) []Reason {
	if !job.hasOutsideWork() {
		return nil
	}
	reach := job.rule(WindowReach)
	all := []Reason{{Decision: "own_windows", Outcome: outHouseWindows.With(Reach(reach.Value)), Because: whyHouseWindows.With(), Source: reach.Source(), Binds: job.bindsBy(reach)}}
	if len(job.Openings) == 0 {
		all[0].Missing = []Missing{{"openings", wouldListThem.With()}}
	}
	for _, w := range job.outsideWork() {
		for _, o := range job.Openings {
			if o.Work == w.ID {
				all = append(all, job.opening(o, w))
			}
		}
	}
	return all
}

// opening decides for one opening: shut on the same storey and on all below within the same horizontal distance; in some places on the whole side. Floors above need not shut, but
// where the housing rule seals all openings in or near the work (24 CFR 35.1345(a)(2)(ii)), and while nobody has said on which storey the work is.
func (job Job) opening(o Opening, w Work) Reason {
	reach := job.rule(WindowReach)
	name := Name(strings.ReplaceAll(fmt.Sprintf("%s (%s, %s)", o.ID, o.What, o.Area), "_", " "))
	r := Reason{Decision: "own_opening", About: o.ID, Outcome: outShut.With(name), Source: reach.Source(), Binds: job.bindsBy(reach)}
	switch law := job.wholeSide(); {
	case len(law) > 0:
		r.Because, r.Source, r.Binds = whyWholeSide.With(), law, Law
	case w.Storey > 0 && o.Storey > w.Storey && !job.aidedBinds():
		r.Outcome, r.Because = outLeaveOpen.With(name), whyAbove.With()
	case !o.GapKnown:
		r.Because = whyNotMeasured.With(Reach(reach.Value))
		r.Missing = []Missing{{fieldOf("openings", o.ID, "gap"), wouldLeaveOpen.With()}}
	case float64(o.Gap) <= reach.Value:
		r.Because = whyWithinStorey.With(o.Gap, Reach(reach.Value))
	default:
		r.Outcome, r.Because = outLeaveOpen.With(name), whyTooFar.With(o.Gap, Reach(reach.Value))
	}
	return r
}
