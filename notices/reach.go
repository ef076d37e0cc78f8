package notices

import (
	"cmp"
	"slices"
	"strconv"
	"strings"
)

// withinReach decides whether a neighbour's windows must close. What nobody measured and nobody answered counts as near.
func withinReach(n Neighbour) bool {
	if n.GapKnown {
		return float64(n.Gap) <= WindowReach.Value
	}
	return n.Near != No
}

// kindFor is the sheet that a neighbour gets.
func (job Job) kindFor(n Neighbour) Kind {
	if withinReach(n) {
		return CloseWindowsRequest
	}
	return NeighbourNote
}

// neighboursToTell are the homes that touch the lot, in street order, when any work is outside.
func (job Job) neighboursToTell() []Neighbour {
	if !job.hasOutsideWork() {
		return nil
	}
	return inStreetOrder(job.Neighbours)
}

// inStreetOrder sorts by street, then even and odd side apart, then house number: the order of a walk.
func inStreetOrder(neighbours []Neighbour) []Neighbour {
	sorted := slices.Clone(neighbours)
	slices.SortStableFunc(sorted, func(a, b Neighbour) int {
		numberA, streetA := splitAddress(a.Address)
		numberB, streetB := splitAddress(b.Address)
		return cmp.Or(
			strings.Compare(streetA, streetB),
			cmp.Compare(numberA%2, numberB%2),
			cmp.Compare(numberA, numberB),
			strings.Compare(a.Address, b.Address))
	})
	return sorted
}

// splitAddress parts "12 Alder Court" into 12 and "Alder Court"; the number is 0 when the address does not start with one.
func splitAddress(address string) (number int, street string) {
	first, rest, _ := strings.Cut(address, " ")
	digits := strings.TrimRightFunc(first, func(r rune) bool { return r < '0' || r > '9' })
	number, err := strconv.Atoi(digits)
	if err != nil {
		return 0, address
	}
	return number, rest
}
