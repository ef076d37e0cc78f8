package ledger

import (
	"encoding/csv"
	"strings"

	"example.org/doorleaf/notices"
)

type cell struct {
	text   string
	column int
}

type tableRow struct {
	line  int
	cells []cell
}

func (r tableRow) texts() (all []string) {
	for _, c := range r.cells {
		all = append(all, c.text)
	}
	return all
}

func readTable(name string, data []byte, columns []string) (all []tableRow, err error) {
	rows := csv.NewReader(strings.NewReader(string(data)))
	lines, err := rows.ReadAll()
	for i, l := range lines {
		if i == 0 {
			continue
		}
		row := tableRow{line: i + 1}
		for _, text := range l {
			row.cells = append(row.cells, cell{text, 1})
		}
		all = append(all, row)
	}
	return all, err
}

func writeTable(columns []string, rows [][]string) []byte {
	var out strings.Builder
	w := csv.NewWriter(&out)
	w.Write(columns)
	w.WriteAll(rows)
	return []byte(out.String())
}

func parseDay(text string) (notices.Date, error) { return notices.ParseDate(text) }
