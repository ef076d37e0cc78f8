// Package pictograms holds the small drawings that stand beside the words of a sheet or page.
//
// A pictogram repeats what a text beside it says and never replaces it, so each is hidden from screen readers. Four are prohibitions: a
// figure in a ring, under a bar from upper left to lower right. Four ask for something and have no ring.
//
// The drawings are our own geometry in the manner of open safety-sign standards, one file of svg/ for each, written by hand:
//
//   - The grid is 96 units square. Nothing inked comes nearer to the edge than 3 units, the diameter of the ring's outer edge is 90.
//   - The primary stroke is 6 units, with round ends and corners: 0.5 mm on the smallest sheet, where a pictogram is 8 mm wide.
//     Details may be thinner; black limbs and tools may be thicker.
//   - The ring is 0.1 of its diameter and the bar 0.08 (proportions of the ISO 3864 family). The bar has a white seam, so that the black
//     figure under it still shows.
//   - Black and white only, on a white ground of its own, so that it survives any printer and a dark page alike.
//   - Presentation attributes only, and no ids: a strict content security policy drops style, and a page may show one pictogram twice.
//
// A drawing has no width of its own: the sheet or page that shows it gives one in CSS.
package pictograms
