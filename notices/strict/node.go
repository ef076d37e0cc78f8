package strict

// A Kind tells what stands at a place.
type Kind int

const (
	Empty   Kind = iota // nothing, or only spaces
	Text                // one line
	List                // Items
	Object              // Entries, each key once
	Refused             // something that a Problem has been told about
)

// A Node is one piece of the file, with the place where it starts.
type Node struct {
	Kind         Kind
	Line, Column int
	Text         string  // as typed, without the quotes around it
	Items        []*Node // of a List
	Entries      []Entry // of an Object, in the order of the file
}

// An Entry is one key of an Object with its value.
type Entry struct{ Key, value *Node }

// Get is the value of a key; nil when n has no such key.
func (n *Node) Get(key string) *Node {
	for _, e := range n.Entries {
		if e.Key.Text == key {
			return e.value
		}
	}
	return nil
}

// At follows keys (string) and positions in lists (int) from 0, and stops at the last node on the way that exists.
func (n *Node) At(path ...any) *Node {
	for _, step := range path {
		next := n.step(step)
		if next == nil {
			return n
		}
		n = next
	}
	return n
}

func (n *Node) step(step any) *Node {
	if key, ok := step.(string); ok {
		return n.Get(key)
	}
	if i := step.(int); i < len(n.Items) {
		return n.Items[i]
	}
	return nil
}
