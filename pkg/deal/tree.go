package deal

import (
	"errors"
	"io"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/diag"
)

const (
	deepest   = 12   // levels; the format needs 8
	mostItems = 2000 // of one list or group
)

// A grower turns YAML into nodes and notes what is refused on the way.
type grower struct {
	src   *source
	diags *diag.List
}

// grow reads a source; it returns nil where there is nothing to walk.
func grow(src *source, diags *diag.List) *node {
	g := grower{src, diags}
	decoder := yaml.NewDecoder(strings.NewReader(hideCommas(src.text)))
	var doc, second yaml.Node
	if err := decoder.Decode(&doc); err != nil {
		if !errors.Is(err, io.EOF) {
			diags.Add(g.syntax(err))
		}
		return nil
	}
	if err := decoder.Decode(&second); err == nil {
		diags.Add(finding("more-documents", src.document(second.Line), "a second document begins here").
			WithHint("write one deal to a file, without a line --- or ... in it"))
		return nil
	} else if !errors.Is(err, io.EOF) {
		diags.Add(g.syntax(err))
		return nil
	}
	if len(doc.Content) == 0 {
		return nil
	}
	return g.node(doc.Content[0], 1)
}

// node converts a YAML node; what cannot be used becomes refused.
func (g grower) node(y *yaml.Node, depth int) *node {
	at := g.src.pos(y.Line, y.Column, 1)
	switch {
	case depth > deepest:
		g.refuse("nested-too-deep", at, "groups are nested more than %d deep here", deepest)("check the brackets and the indentation")
		return &node{shape: refused, span: span{at: at}}
	case y.Kind == yaml.AliasNode:
		g.refuse("yaml-anchor", g.span(y).at, "%s copies a value from elsewhere", diag.Quote("*"+y.Value))("write the value out; anchors and aliases are not read")
		return &node{shape: refused, span: span{at: at}}
	case y.Anchor != "":
		g.refuse("yaml-anchor", at, "%s names a value for copying", diag.Quote("&"+y.Anchor))("write the value alone; anchors and aliases are not read")
	case y.Style&yaml.TaggedStyle != 0:
		g.refuse("yaml-tag", at, "%s is a YAML tag", diag.Quote(y.Tag))("write the value without it; to begin a text with ! put it in quotes")
	}
	n := &node{span: span{at: at}, flow: y.Style&yaml.FlowStyle != 0}
	switch y.Kind {
	case yaml.MappingNode:
		n.shape = mapping
		g.entries(n, y, depth)
	case yaml.SequenceNode:
		n.shape = list
		g.items(n, y, depth)
	default:
		g.scalar(n, y)
	}
	return n
}

func (g grower) scalar(n *node, y *yaml.Node) {
	n.span = g.span(y)
	n.quoted = y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle|yaml.LiteralStyle|yaml.FoldedStyle) != 0
	if !g.visible(n.span) {
		n.shape = refused
		return
	}
	if n.shape = scalar; !n.quoted && (y.Value == "" || y.Tag == "!!null") {
		n.shape = nothing
	}
}

// visible refuses a text in which an escape such as "\e" stands for what a file may not
// hold as it is.
func (g grower) visible(s span) bool {
	i := strings.IndexFunc(s.text, func(r rune) bool { return unseen(r) || r == '\r' })
	if i >= 0 {
		r, _ := utf8.DecodeRuneInString(s.text[i:])
		g.refuse("odd-character", s.at, "a character that cannot be seen (U+%04X) is in %s", r, diag.Quote(s.text))("leave it out and type the place again")
	}
	return i < 0
}

// span finds how far a scalar reaches in its line.
func (g grower) span(y *yaml.Node) span {
	s := span{text: strings.TrimSpace(showCommas(y.Value)), at: g.src.pos(y.Line, y.Column, 1)}
	rest := g.src.line(y.Line)
	if y.Column < 1 || y.Column > len(rest) {
		return s
	}
	rest = rest[y.Column-1:]
	quotes := 0
	if y.Style&(yaml.SingleQuotedStyle|yaml.DoubleQuotedStyle) != 0 {
		quotes = 1
	}
	if strings.HasPrefix(string(rest[quotes:]), s.text) && s.text != "" {
		s.exact = true
		s.at.Col += quotes
		s.at.Len = utf8.RuneCountInString(s.text)
		return s
	}
	s.at.Len = max(1, utf8.RuneCountInString(strings.TrimRight(string(rest), " ")))
	return s
}

func (g grower) entries(n *node, y *yaml.Node, depth int) {
	if len(y.Content)/2 > mostItems {
		g.refuse("too-many", n.at, "%d keys in one group, more than the %d that are read", len(y.Content)/2, mostItems)("check that it is the right file")
		n.shape = refused
		return
	}
	seen := map[string]diag.Pos{}
	for i := 0; i+1 < len(y.Content); i += 2 {
		k := y.Content[i]
		key := g.span(k)
		switch {
		case k.Kind != yaml.ScalarNode || k.Anchor != "" || k.Style&yaml.TaggedStyle != 0:
			g.refuse("key-not-text", key.at, "a key must be a plain word or words")("write it like   price: $212,500")
			continue
		case k.Tag == "!!merge" || k.Value == "<<":
			g.refuse("yaml-merge", key.at, `"<<" copies keys from elsewhere`)("write the keys out; merge keys are not read")
			continue
		case !g.visible(key):
			continue
		}
		name := plainKey(key.text)
		if first, again := seen[name]; again {
			g.refuse("duplicate-key", key.at, "%s is given twice; the first is in line %d", diag.Quote(key.text), first.Line)("keep one of them; if they are two things, give each its own name")
			continue
		}
		seen[name] = key.at
		n.entries = append(n.entries, entry{name, key, g.node(y.Content[i+1], depth+1)})
	}
	if n.flow && len(n.entries) == 0 && len(y.Content) > 0 { // as {{name}}: all of it is spoken of
		n.shape = refused
	}
}

func (g grower) items(n *node, y *yaml.Node, depth int) {
	if len(y.Content) > mostItems {
		g.refuse("too-many", n.at, "%d items in one list, more than the %d that are read", len(y.Content), mostItems)("check that it is the right file")
		n.shape = refused
		return
	}
	for _, c := range y.Content {
		v := g.node(c, depth+1)
		v.several = n.flow && v.shape == scalar && !v.quoted && strings.Contains(c.Value, commaText) && !strings.HasPrefix(c.Value, "$")
		n.items = append(n.items, v)
	}
}

// refuse adds a mistake once its hint is known.
func (g grower) refuse(code string, at diag.Pos, format string, args ...any) func(hint string) {
	return func(hint string) { g.diags.Add(finding(code, at, format, args...).WithHint("%s", hint)) }
}
