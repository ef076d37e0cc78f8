package notices

import (
	"slices"
	"strings"
)

// A Source is where a decision is written: one passage, or several.
type Source []passage

// A Passage is one place in a text, with the day on which we read it there and how sure we are of it. What is common practice stands nowhere, and nobody read it.
type passage struct {
	Citation string // "" for common practice
	ReadOn   string // YYYY-MM-DD; "" where nothing was read
	Sureness Sureness
}

// FederalEdition is the annual edition of the Code of Federal Regulations in which its passages were read; testdata/SOURCES.md says what is known to have changed since.
const FederalEdition = 2015

// inPractice is the source of what no text asks for.
var inPractice = Source{{Sureness: inUse}}

// read are passages that we read in the published text.
func read(on string, citations ...string) Source { return passages(on, published, citations) }

// second are passages that we know from other people's texts.
func second(on string, citations ...string) Source { return passages(on, secondary, citations) }

// remembered are passages that nobody looked up.
func remembered(citations ...string) Source { return passages("", fromMemory, citations) }

func passages(on string, sureness Sureness, citations []string) Source {
	var all Source
	for _, c := range citations {
		all = append(all, passage{c, on, sureness})
	}
	return all
}

// and names another source after this one, each passage once.
func (s Source) and(more Source) Source {
	all := slices.Clone(s)
	for _, p := range more {
		if !slices.Contains(all, p) {
			all = append(all, p)
		}
	}
	return all
}

// String is the source to print, with what is not quite sure.
func (s Source) String() string {
	var all []string
	for _, p := range s {
		all = append(all, p.String())
	}
	return strings.Join(all, "; ")
}

func (p passage) String() string {
	switch {
	case p.Citation == "":
		return string(p.Sureness)
	case p.Sureness == secondary || p.Sureness == fromMemory:
		return p.Citation + " (" + string(p.Sureness) + ")"
	}
	return p.Citation
}

// Source is where the rule stands.
func (r Rule) Source() Source {
	if r.citation == "" {
		return inPractice
	}
	return Source{{r.citation, r.ReadOn, r.sureness}}
}
