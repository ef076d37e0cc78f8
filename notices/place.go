package notices

import "fmt"

// highestNamed is the highest storey that has a name in every language. A place above it is told apart by its area and side alone.
const highestNamed = 6

// onPaper tells a place apart from others: "back bedroom, second floor", "north side of the house".
func (w Work) onPaper() Places {
	ids := []string{w.Area.Word()}
	switch {
	case w.Area == "side_of_house" && w.Side != "":
		return Places{{w.Side.Word()}}
	case w.Where == Inside && 1 <= w.Storey && w.Storey <= highestNamed:
		ids = append(ids, storeyWord(w.Storey))
	}
	if w.Side != "" {
		ids = append(ids, w.Side.Word())
	}
	return Places{ids}
}

func storeyWord(storey int) string { return fmt.Sprintf("storey.%d", storey) }

func storeyWords() []string {
	var ids []string
	for storey := 1; storey <= highestNamed; storey++ {
		ids = append(ids, storeyWord(storey))
	}
	return ids
}
