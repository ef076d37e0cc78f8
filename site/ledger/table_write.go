package ledger

import (
	"bytes"
	"encoding/csv"
	"regexp"
	"slices"
	"strings"
)

// formula is the start of what a spreadsheet takes for a formula; an apostrophe keeps it from that (OWASP, "CSV Injection"). More apostrophes may stand there already.
var formula = regexp.MustCompile(`^'*[\s\p{Zs}]*[=+\-@＝＋－＠]`)

// unshielded takes away the apostrophe that writeTable puts before a formula.
func unshielded(text string) string {
	if formula.MatchString(text) {
		return strings.TrimSpace(strings.TrimPrefix(text, "'"))
	}
	return text
}

func shielded(text string) string {
	if formula.MatchString(text) {
		return "'" + text
	}
	return text
}

// writeTable is a file that spreadsheets open as it was meant: comma-separated, in UTF-8 with the byte order mark by which Excel tells that (SAP community wiki, "Excel files
// - CSV format"), lines ending in CRLF (RFC 4180). What they would take for a formula gets an apostrophe, which readTable takes away again.
//
// Spreadsheets still change, when they open it, what looks like a number or a day, quotes or not: 01 becomes 1, 1e5 becomes 100000, 5-3 a day. No file can keep them from that, so
// such texts must not be in rows.
func writeTable(columns []string, rows [][]string) []byte {
	out := bytes.NewBufferString(utf8Mark)
	writer := csv.NewWriter(out)
	writer.UseCRLF = true
	for _, row := range slices.Concat([][]string{columns}, rows) {
		fields := make([]string, len(row))
		for i, text := range row {
			fields[i] = shielded(text)
		}
		writer.Write(fields) // a buffer takes everything
	}
	writer.Flush()
	return out.Bytes()
}
