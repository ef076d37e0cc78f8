package jobfile

import "strings"

// suggestion offers the nearest known word, if one is near, and all of them.
func suggestion(text, noun string, known []string) string {
	if word, ok := Nearest(text, known); ok {
		return "did you mean " + word + "? " + choices(noun, known)
	}
	return "choose one that is known " + choices(noun, known)
}

// Nearest is the known word that text is most likely a slip of, or one that is a piece of the other.
func Nearest(text string, known []string) (string, bool) {
	text = plain(text)
	best, least := "", mistypings(len([]rune(text)))+1
	for _, word := range known {
		if d := distance(text, plain(word)); d < least {
			best, least = word, d
		}
	}
	return orContaining(best, text, known)
}

// mistypings is how many letters of a word of some length may differ: a third, and two where that is less than half of it. With three in seven a sunroom would be
// a bedroom, and a warning would hang at the wrong door.
func mistypings(letters int) int { return max(letters/3, min(2, (letters+2)/3)) }

func orContaining(best, text string, known []string) (string, bool) {
	if best != "" || len(text) < 3 {
		return best, best != ""
	}
	for _, word := range known {
		if strings.Contains(plain(word), text) || len(word) >= 3 && strings.Contains(text, plain(word)) {
			return word, true
		}
	}
	return "", false
}

var plainer = strings.NewReplacer(" ", "_", "-", "_")

func plain(word string) string { return plainer.Replace(strings.ToLower(word)) }

// distance counts the letters to insert, delete, change or swap with their neighbour on the way from a to b
// (Damerau and Levenshtein's, no letter touched twice).
func distance(a, b string) int {
	from, to := []rune(a), []rune(b)
	var before, last []int
	row := make([]int, len(to)+1)
	for j := range row {
		row[j] = j
	}
	for i := range from {
		before, last, row = last, row, make([]int, len(to)+1)
		row[0] = i + 1
		for j := range to {
			row[j+1] = min(row[j]+1, last[j+1]+1, last[j]+cost(from[i] != to[j]))
			if i > 0 && j > 0 && from[i] == to[j-1] && from[i-1] == to[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
	}
	return row[len(to)]
}

func cost(differs bool) int {
	if differs {
		return 1
	}
	return 0
}
