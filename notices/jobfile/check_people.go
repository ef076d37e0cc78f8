package jobfile

import (
	"slices"

	"example.org/doorleaf/notices"
)

// checkPamphlets: a pamphlet went to the owner or to a household of this job, and each has one entry.
func checkPamphlets(r *reader, job *notices.Job) {
	known := []string{notices.ToOwner}
	for _, h := range job.Households {
		known = append(known, h.ID)
	}
	seen := map[string]bool{}
	for i, p := range job.Pamphlets {
		at := r.at("pamphlets", i, "to")
		switch {
		case p.To == "":
		case !slices.Contains(known, p.To):
			r.wrong(at, "is neither owner nor the id of a household", suggestion(p.To, "person", known))
		case seen[p.To]:
			r.wrong(at, "has two entries", "keep the later one of the two")
		}
		seen[p.To] = true
	}
}

// checkShared: how the homes are told is asked where they share an area.
func checkShared(r *reader, job *notices.Job) {
	if job.AreasShared == notices.No && job.Shared.Route != "" {
		r.problem(r.at("areas_shared"), "areas_shared is no, and common_areas says how the homes that share them are told", "write areas_shared: yes, or take common_areas out")
	}
}

// checkStatement: only an emergency lets steps go.
func checkStatement(r *reader, job *notices.Job) {
	if job.Statement.What != "" && job.Emergency != notices.Yes {
		r.problem(r.at("emergency_statement"), "emergency_statement is for an emergency, and this job is not noted as one", "write emergency: yes, or take the statement out")
	}
}

// checkOwner: one household can be the owner's own, and none where the owner lives elsewhere.
func checkOwner(r *reader, job *notices.Job) {
	owns := 0
	for i, h := range job.Households {
		if h.Owns != notices.Yes {
			continue
		}
		if owns++; owns > 1 || job.Owner == notices.RentsItOut {
			r.problem(r.at("households", i, "owns_it"), "owns_it does not fit with owner, or with another household", "write owns_it: yes for one household at most, and owner: lives_here or lives_here_and_rents_out")
		}
	}
}
