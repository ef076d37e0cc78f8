package fit

import (
	"errors"
	"fmt"
	"math"
	"sort"
	"strings"
)

// A Box is the space that a text has on a sheet, and how its type may be set.
type Box struct {
	Width, Height float64 // pt
	Leading       float64 // line height as a multiple of the type size, as CSS counts it
	Min, Max      float64 // type size in pt
}

const (
	Step     = 0.25 // pt between two sizes that are tried
	Spare    = 0.03 // of a width or a height stays free, for the rounding of browsers and printers
	rounding = 1e-9 // forgives what binary fractions make of a decimal one
)

// FitAll sets several texts below each other in one box, at the largest size that all can share. Gap is the space between one text and
// the next, as a multiple of the type size. The result has the size in pt and the lines of each text; It is an error when they do not fit at the smallest size of the box, and when the font lacks a character.
func (f *Font) FitAll(texts []string, box Box, gap float64) (size float64, lines [][]string, err error) {
	s, err := f.stack(texts, box, gap)
	if err != nil {
		return 0, nil, err
	}
	size, err = s.largest()
	if err != nil {
		return 0, nil, err
	}
	for _, p := range s.paragraphs {
		lines = append(lines, p.lines(p.even(s.measure(size))))
	}
	return size, lines, nil
}

// A stack is the texts that share a box.
type stack struct {
	box        Box
	paragraphs []*paragraph
	extra      float64 // height beside that of the lines, as a multiple of the type size: the gaps, and ink above and below
}

func (f *Font) stack(texts []string, box Box, gap float64) (stack, error) {
	if err := box.check(); err != nil {
		return stack{}, err
	}
	if len(texts) == 0 {
		return stack{}, errors.New("there is no text to fit")
	}
	s := stack{box: box, extra: gap*float64(len(texts)-1) + 2*f.overhang(strings.Join(texts, " "), box.Leading)}
	for _, text := range texts {
		if err := f.check(text); err != nil {
			return stack{}, err
		}
		s.paragraphs = append(s.paragraphs, f.paragraph(text))
	}
	return s, nil
}

func (b Box) check() error {
	if !(b.Width > 0 && b.Height > 0 && b.Leading > 0) {
		return fmt.Errorf("a box of %g pt by %g pt with lines of %g times the type size holds no text; give it a width, a height and a leading", b.Width, b.Height, b.Leading)
	}
	smallest, largest := b.steps()
	if !(b.Min > 0 && b.Max < math.MaxInt32 && smallest <= largest) {
		return fmt.Errorf("there is no type size from %g pt to %g pt; sizes are multiples of %g pt", b.Min, b.Max, Step)
	}
	return nil
}

// steps are the smallest and the largest size of the box, counted in steps.
func (b Box) steps() (smallest, largest int) {
	return int(math.Ceil(b.Min / Step)), int(math.Floor(b.Max / Step))
}

func (f *Font) check(text string) error {
	if collapse(text) == "" {
		return errors.New("there is no text to fit")
	}
	if missing := f.Missing(text); len(missing) > 0 {
		return fmt.Errorf("%s lacks %q (%U), which is in %q; print this text in a font that has it", f.File, missing[0], missing[0], text)
	}
	return nil
}

// largest is the largest size in pt at which the stack fits its box.
func (s stack) largest() (float64, error) {
	smallest, largest := s.box.steps()
	fitting := sort.Search(largest-smallest+1, func(i int) bool { return s.misfit(float64(smallest+i)*Step) != nil })
	if fitting == 0 {
		return 0, s.misfit(float64(smallest) * Step)
	}
	return float64(smallest+fitting-1) * Step, nil
}

// measure is the width that lines may have, as a multiple of the type size.
func (s stack) measure(size float64) float64 { return s.box.Width * (1 - Spare) / size }

// misfit says why the stack does not fit its box at the size, or nothing when it does.
func (s stack) misfit(size float64) error {
	height, most, longest := s.extra*size, 0, ""
	for _, p := range s.paragraphs {
		lines := p.filled(s.measure(size))
		for _, line := range lines {
			if p.width(line) > s.measure(size) {
				return s.tooWide(p.line(line), p.width(line)*size, size)
			}
		}
		height += float64(len(lines)) * s.box.Leading * size
		if len(lines) > most {
			most, longest = len(lines), p.text
		}
	}
	if height > s.box.Height+rounding {
		return s.tooHigh(longest, most, height, size)
	}
	return nil
}

func (s stack) tooWide(word string, width, size float64) error {
	return fmt.Errorf("%q is %.1f pt wide in type of %g pt, and a line has %.1f pt; find a shorter word", word, width, size, s.box.Width*(1-Spare))
}

func (s stack) tooHigh(longest string, lines int, height, size float64) error {
	if len(s.paragraphs) == 1 {
		return fmt.Errorf("%q takes %d lines and %.1f pt of height in type of %g pt, and there are %.1f pt; shorten it", longest, lines, height, size, s.box.Height)
	}
	return fmt.Errorf("%d texts take %.1f pt of height in type of %g pt, and there are %.1f pt; shorten them, first %q, which takes %d lines",
		len(s.paragraphs), height, size, s.box.Height, longest, lines)
}
