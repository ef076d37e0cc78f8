// Package lists makes the coordinator's own sheets: the overview of all jobs, the contact sheet, the calendars and the form for the walk round the house. All but
// the form are made from records alone, so that they also show the jobs of earlier makes, and show them as their paper says.
package lists

// Names of PDF files in the folder of a job.
const (
	HomePrinter = "home-printer.pdf" // everything, in walking order, padded for printing two-sided
	CopyShop    = "copy-shop.pdf"    // signs on larger paper; nothing private
)
