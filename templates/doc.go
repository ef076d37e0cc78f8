// Package templates shows what a job has to say: three layouts of sheets, one of pages, and the style of each.
//
// A layout takes a view: plain strings that somebody else has already written in the reader's language, fitted lines with their size in pt,
// and HTML that somebody else has already made harmless. A view knows no job, no message id and no rule, so a layout can be redrawn without
// reading anything but this folder.
//
//   - [Sheet] is a file to print: one sheet of paper or many, each with its faces. A [Face] is laid out as a sign, as a
//     letter, or as a [Tile]: one sheet of a sign that takes several.
//   - [WalkList], [WalkRound] and [Overview] are the coordinator's own lists, in English.
//   - [Page] is a small web page behind a code, for a phone on a bad connection: no script, no request, one style whose hash its policy names.
//
// Both papers, Letter and A4, carry the same field of 182 mm by 256 mm, so that a text that fits one fits the other. The sheets
// of a sign that takes several have a larger one, which [TileFieldOf] names.
package templates

// The field that every face fills, in mm: what is left of Letter and of A4 inside margins that every printer can reach.
const (
	FieldWidth  = 182.0
	FieldHeight = 256.0
)
