// Package strict reads small YAML files that people write by hand.
//
// A file becomes a tree of Nodes: texts, lists and objects, each with its place. A text is what stands in the file, never a number, a
// truth value or a null, so 012, 1.10 and no arrive as they were typed. Parse takes nothing on trust: one document of plain lists, keys and
// one-line texts, and everything beyond that is a Problem with a place and a mend. What a Node means is the caller's business.
package strict

import (
	"fmt"
	"strings"
	"unicode"

	"github.com/goccy/go-yaml/ast"
	"github.com/goccy/go-yaml/lexer"
	"github.com/goccy/go-yaml/parser"
	"github.com/goccy/go-yaml/token"
)

const (
	maxBytes    = 256 << 10
	maxDepth    = 8
	maxPieces   = 60_000 // texts, colons, commas and brackets
	maxKeys     = 200    // in one indented object
	maxTroubles = 50     // of one kind; a file with more is no text file, or is not meant well
)

// Parse reads one document, whose name is told in problems. The Node is nil when the file is too broken to be read; otherwise Problems and Node may come together, and
// parts that a Problem speaks of are Refused.
func Parse(file string, src []byte) (*Node, []Problem) {
	p := parsing{file: file}
	text, ok := p.clean(src)
	if !ok {
		return nil, p.problems
	}
	p.lines = strings.Split(text, "\n")
	tokens := lexer.Tokenize(text)
	if !p.allow(tokens) {
		return nil, p.problems
	}
	return p.parse(tokens), p.problems
}

// A parsing collects the problems of one file.
type parsing struct {
	file     string
	problems []Problem
	lines    []string
}

func (p *parsing) problem(line, column int, text, says, mend string) {
	p.problems = append(p.problems, Problem{p.file, max(line, 1), max(column, 1), text, says, mend})
}

// at reports a place together with what stands there, to the end of the line.
func (p *parsing) at(t *token.Token, says, mend string) {
	line, column := max(t.Position.Line, 1), max(t.Position.Column, 1)
	rest := ""
	if line <= len(p.lines) {
		characters := []rune(p.lines[line-1])
		rest = strings.TrimSpace(string(characters[min(column-1, len(characters)):]))
	}
	if rest != "" {
		says += " (at " + Quoted(rest) + ")"
	}
	p.problem(line, column, rest, says, mend)
}

// parse builds the tree. A syntax error is only told when no refused mark explains it already.
func (p *parsing) parse(tokens token.Tokens) *Node {
	before := len(p.problems)
	file, err := parsed(tokens)
	if err != nil && before == 0 {
		p.syntax(err)
	}
	if err != nil {
		return nil
	}
	body := firstBody(file)
	if body == nil {
		p.problem(1, 1, "", "the file is empty", "fill it in, or copy one that works and change it")
		return nil
	}
	return p.node(body, 1)
}

// parsed turns a panic of the parser, which is not ours and meets whatever people type, into an error.
func parsed(tokens token.Tokens) (file *ast.File, err error) {
	defer func() {
		if failure := recover(); failure != nil {
			err = fmt.Errorf("the file could not be read: %v", failure)
		}
	}()
	return parser.Parse(tokens, 0, parser.AllowDuplicateMapKey())
}

func firstBody(file *ast.File) ast.Node {
	for _, doc := range file.Docs {
		if _, directive := doc.Body.(*ast.DirectiveNode); doc.Body != nil && !directive {
			return doc.Body
		}
	}
	return nil
}

func (p *parsing) node(n ast.Node, depth int) *Node {
	if depth > maxDepth {
		return p.tooDeep(n.GetToken())
	}
	switch n := n.(type) {
	case *ast.MappingNode:
		return p.object(n, depth)
	case *ast.SequenceNode:
		return p.list(n, depth)
	case *ast.LiteralNode:
		return p.text(n.Start, n.Value.Value)
	case *ast.AnchorNode:
		return p.node(n.Value, depth+1)
	case *ast.TagNode:
		return p.tagged(n, depth)
	case *ast.AliasNode, *ast.MergeKeyNode:
		return place(n.GetToken(), Refused)
	case ast.ScalarNode:
		return p.scalar(n.GetToken())
	}
	p.at(n.GetToken(), "this cannot be read here", "write a text, a list or keys with values")
	return place(n.GetToken(), Refused)
}

func (p *parsing) tooDeep(t *token.Token) *Node {
	p.at(t, fmt.Sprintf("lists and keys are nested more than %d deep here", maxDepth), "take out the innermost brackets or indents")
	return place(t, Refused)
}

func (p *parsing) tagged(n *ast.TagNode, depth int) *Node {
	if n.Value == nil {
		return place(n.GetToken(), Refused)
	}
	return p.node(n.Value, depth+1)
}

func (p *parsing) scalar(t *token.Token) *Node {
	if t.Type == token.ImplicitNullType {
		return place(t, Empty)
	}
	return p.text(t, t.Value)
}

func (p *parsing) text(t *token.Token, text string) *Node {
	n := place(t, Text)
	n.Text = text
	if strings.TrimSpace(text) == "" {
		n.Kind = Empty
	}
	if n.Kind == Text && !strings.ContainsFunc(text, visible) {
		p.problem(n.Line, n.Column, text, Quoted(text)+" has no letter that anybody could see", "type it again")
		n.Kind = Refused
	}
	if i := strings.IndexFunc(text, control); i >= 0 {
		p.problem(n.Line, n.Column, text, Quoted(text)+" holds a line break or another character that cannot be printed", "write the text on one line, without tabs")
		n.Kind = Refused
	}
	return n
}

// visible characters are those with ink.
func visible(r rune) bool { return unicode.IsGraphic(r) && !unicode.IsSpace(r) }

func (p *parsing) list(n *ast.SequenceNode, depth int) *Node {
	list := place(n.Start, List)
	for _, item := range n.Values {
		list.Items = append(list.Items, p.node(item, depth+1))
	}
	return list
}

func (p *parsing) object(n *ast.MappingNode, depth int) *Node {
	object := place(n.Start, Object)
	if !n.IsFlowStyle && len(n.Values) > 0 {
		object = place(n.Values[0].Key.GetToken(), Object)
	}
	first := map[string]int{}
	for _, pair := range n.Values {
		p.entry(object, pair, depth, first)
	}
	return object
}

// entry adds a key to an object. The lines on which keys came first tell about the second time.
func (p *parsing) entry(object *Node, pair *ast.MappingValueNode, depth int, first map[string]int) {
	if pair.Key.IsMergeKey() {
		return
	}
	name := keyToken(pair.Key)
	key := place(name, Text)
	key.Text = name.Value
	value := p.node(pair.Value, depth+1)
	if value.Kind == Empty {
		value.Line, value.Column = key.Line, key.Column
	}
	if line, twice := first[key.Text]; twice {
		p.problem(key.Line, key.Column, key.Text, fmt.Sprintf("%s is written twice, first in line %d", Quoted(key.Text), line), "keep one of the two")
		return
	}
	first[key.Text] = key.Line
	object.Entries = append(object.Entries, Entry{key, value})
}

// keyToken passes over the ? in front of a key, which has been refused.
func keyToken(key ast.MapKeyNode) *token.Token {
	if long, ok := key.(*ast.MappingKeyNode); ok && long.Value != nil {
		return long.Value.GetToken()
	}
	return key.GetToken()
}

func place(t *token.Token, kind Kind) *Node {
	return &Node{Kind: kind, Line: max(t.Position.Line, 1), Column: max(t.Position.Column, 1)}
}
