package setting

import (
	"errors"
	"fmt"

	"example.org/doorleaf/templates"
)

// misfit says which part of a letter leaves no room on a side of paper of its own, or takes most of the sides. The blocks are named as the coordinator knows them.
func (r ruler) misfit(view templates.Face, blocks []string) error {
	bare := bareOf(view)
	if r.tooHigh(bare) {
		return r.bareMisfit(bare)
	}
	for i, block := range view.Letter.Text.Blocks {
		if r.tooHigh(with(bare, func(l *templates.Letter) { l.Text.Blocks = []templates.Block{block} })) {
			return fmt.Errorf("%s is too long for a side of paper in this language; have it shortened there", blocks[i])
		}
	}
	if r.tooHigh(with(bare, func(l *templates.Letter) { l.Blanks = view.Letter.Blanks })) {
		return errors.New("the lines to fill in leave no room on a side of paper; shorten the names in the letter")
	}
	most := mostSides(view.Letter.Type)
	if table := r.tableHeight(view.Letter.Text, view.Letter.Type); table > r.letterHeight(view)/2 {
		return fmt.Errorf("the table of days is %.0f mm high and takes more than %d sides of paper; give equal days equal hours and arrangements, or split the job in two", table, most)
	}
	if r.letterHeight(bare) > templates.FieldHeight*0.6 {
		return r.bareMisfit(bare)
	}
	return fmt.Errorf("all of it together takes more than %d sides of paper; shorten the names, or split the job in two", most)
}

// bareMisfit is about what stands on every side.
func (r ruler) bareMisfit(view templates.Face) error {
	if view.Code.Size > templates.LetterCodeSize {
		return fmt.Errorf("the base address is so long that its code takes %.0f mm and leaves too little room on a side of paper; choose a shorter one", view.Code.Size)
	}
	foot, above := r.footerHeight(view, view.Letter.Type), r.fromHeight(view.Letter.Text, view.Letter.Type)
	if above > foot {
		return fmt.Errorf("the line with the names above the headline is %.0f mm high and leaves too little room on a side of paper; shorten the names", above)
	}
	return fmt.Errorf("the foot is %.0f mm high and leaves too little room on a side of paper; shorten the names in it, or the base address", foot)
}

// bareOf is a letter with its headline and its foot alone.
func bareOf(view templates.Face) templates.Face {
	return with(view, func(l *templates.Letter) {
		l.Text.Facts, l.Text.Drawing, l.Text.Blocks, l.Beside, l.Blanks = nil, nil, nil, nil, nil
	})
}

// with is a view with a changed letter.
func with(view templates.Face, change func(*templates.Letter)) templates.Face {
	letter := *view.Letter
	change(&letter)
	view.Letter = &letter
	return view
}
