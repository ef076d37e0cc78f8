// Package fit measures text with the font that prints it, breaks it into lines and finds the largest type that fits a box.
//
// A sign has to be read from the pavement, so its type is as large as the sheet allows; and one word that is wider than the sheet makes a
// browser shrink the whole printed page without a word. So type is measured before it is set:
//
//   - A [Shelf] has the fonts: Roboto and Noto Sans Arabic, which are in the program, and for other scripts those of this computer, which it opens by their
//     paths. A [Cast] is the fonts that set one language, each with others behind it for names in other scripts. What no font can draw is an error
//     that says what to install.
//   - A [Font] is one printing font: its bytes, their name, version and digest, and measures taken from them.
//     [Font.Width] shapes a text as a browser does, with kerning, ligatures and marks. [Font.Missing] lists what the font cannot draw.
//   - [Font.Lines] fills lines one after the other, as a browser does. [Font.Balanced] takes as many lines and makes them even, so that a
//     headline does not end in one lonely short word. Both break where Unicode's line breaking rules allow: at spaces, after hyphens,
//     between ideographs; never at a no-break space or a word joiner, and never at a soft hyphen.
//   - [Font.Fit] finds the largest size at which a text fits a [Box], and [Font.FitAll] the largest common size of several texts stacked
//     in one box. Sizes are quarters of a point; 3 % of the width stays free. When even the smallest size is too large, the error names
//     the text or word that is too long.
//   - [MessageHeight] and [SignalHeight] are how high the capitals of a sign must be for a distance. A script without capitals has a measure of its own, with
//     its source: [Font.LetterHeight] is the height of its letters, [Font.CapitalsMM] that of the capitals which are read from as far. [Font.Text] sets a text at a size, for layouts that
//     share lines out themselves. [ReadingDistance] turns the height of the capitals that came out into the distance from which they can be read.
//
// The lines that come out are the lines to print: each is emitted as it is, unbreakable, with the font, weight, size and line height that
// were measured, kerning on and no letter or word spacing. All lines together stand in the middle of the height of their box, where there is
// room for the accents that rise out of the first line, so that a box may be clipped.
//
// White space and control characters count as one space each run, and none at the ends, as HTML has it. Widths, heights and sizes are in
// points (1/72 in) unless a name says otherwise.
package fit
