package locales

import (
	"errors"
	"fmt"
	"time"
)

// State says whether a fluent speaker has checked the texts of a language. Texts in the language they were written in are no draft.
type State struct {
	Draft      bool
	reviewedBy string
	reviewedOn string // YYYY-MM-DD, "" when nobody has
}

// about is the first section of a bundle.
type about struct {
	State      string // draft, reviewed or source
	ReviewedBy string
	ReviewedOn string
}

// readAbout reads the section as YAML has it.
func readAbout(section any) (about, error) {
	var a about
	fields, ok := section.(map[string]any)
	if !ok {
		return a, errors.New("the section about is missing; begin the file with about: {state: draft}")
	}
	for key, v := range fields {
		text, isText := v.(string)
		if !isText && v != nil {
			return a, fmt.Errorf("about: %s: %v is no text; put it in quotes", key, v)
		}
		switch key {
		case "state":
			a.State = text
		case "reviewed_by":
			a.ReviewedBy = text
		case "reviewed_on":
			a.ReviewedOn = text
		default:
			return a, fmt.Errorf("about: there is no %s; it has state, reviewed_by and reviewed_on", key)
		}
	}
	return a, a.check()
}

func (a about) state() State {
	return State{Draft: a.State == "draft", reviewedBy: a.ReviewedBy, reviewedOn: a.ReviewedOn}
}

// check refuses a review without a name or a day, and a name or a day without a review.
func (a about) check() error {
	signed := a.ReviewedBy != "" || a.ReviewedOn != ""
	switch a.State {
	case "reviewed":
		if _, err := time.Parse(time.DateOnly, a.ReviewedOn); err != nil || a.ReviewedBy == "" {
			return errors.New("about: a reviewed text needs reviewed_by, a name, and reviewed_on, a day as YYYY-MM-DD")
		}
	case "draft", "source":
		if signed {
			return fmt.Errorf("about: reviewed_by and reviewed_on are filled, but the state is %s; write state: reviewed, or empty both", a.State)
		}
	default:
		return fmt.Errorf("about: the state is %q; write draft, reviewed or source", a.State)
	}
	return nil
}
