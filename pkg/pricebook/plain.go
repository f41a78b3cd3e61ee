package pricebook

import (
	"strings"

	"go.yaml.in/yaml/v4"
)

// plain reads an entry of the starter book, whose YAML is of the plainest: keys four
// and six spaces in, values on their lines, lists and groups in brackets. Reading one
// with the library takes forty times as long, and a deal needs hundreds; a test holds
// both to the same result for every entry.
func plain(text string) *node {
	top := &node{Kind: yaml.MappingNode}
	body, inner := (*node)(nil), (*node)(nil)
	no := int32(0)
	for line := range strings.SplitSeq(text, "\n") {
		no++
		rest := strings.TrimLeft(line, " ")
		if rest == "" || rest[0] == '#' {
			continue
		}
		in := len(line) - len(rest)
		p := &plainReader{text: line, at: in, line: no}
		key := p.key()
		value := p.value()
		switch {
		case in == 2:
			body = &node{Kind: yaml.MappingNode}
			add(top, key, body)
		case in == 4 && value == nil:
			inner = &node{Kind: yaml.MappingNode}
			add(body, key, inner)
		case in == 4:
			add(body, key, value)
		default:
			add(inner, key, value)
		}
	}
	return top
}

// add puts a key with its value into a group, which begins where its first key does.
func add(group, key, value *node) {
	if len(group.Content) == 0 {
		group.Line, group.Column = key.Line, key.Column
	}
	group.Content = append(group.Content, key, value)
}

type plainReader struct {
	text string
	at   int
	line int32
}

func (p *plainReader) blanks() {
	for p.at < len(p.text) && p.text[p.at] == ' ' {
		p.at++
	}
}

// node is one that begins here.
func (p *plainReader) node(kind yaml.Kind) *node {
	return &node{Kind: kind, Line: p.line, Column: int32(p.at + 1)}
}

// scalar reads quoted text, or plain text up to one of the ends.
func (p *plainReader) scalar(ends string) *node {
	p.blanks()
	n := p.node(yaml.ScalarNode)
	if p.at < len(p.text) && p.text[p.at] == '"' {
		end := strings.IndexByte(p.text[p.at+1:], '"') + p.at + 1
		n.Value = p.text[p.at+1 : end]
		p.at = end + 1
		return n
	}
	end := len(p.text)
	if ends != "" {
		if i := strings.IndexAny(p.text[p.at:], ends); i >= 0 {
			end = p.at + i
		}
	}
	n.Value = strings.TrimRight(p.text[p.at:end], " ")
	p.at = end
	return n
}

// key reads a key and its colon.
func (p *plainReader) key() *node {
	n := p.scalar(":")
	p.blanks()
	p.at++
	return n
}

// value reads what stands behind a key, or nil where that is on the next lines.
func (p *plainReader) value() *node {
	p.blanks()
	if p.at >= len(p.text) {
		return nil
	}
	switch p.text[p.at] {
	case '[':
		n := p.node(yaml.SequenceNode)
		p.each(']', func() { n.Content = append(n.Content, p.scalar(",]")) })
		return n
	case '{':
		n := p.node(yaml.MappingNode)
		p.each('}', func() { n.Content = append(n.Content, p.key(), p.scalar(",}")) })
		return n
	}
	return p.scalar("")
}

// each reads what stands between brackets, parted by commas.
func (p *plainReader) each(end byte, one func()) {
	p.at++
	for p.blanks(); p.at < len(p.text) && p.text[p.at] != end; p.blanks() {
		one()
		p.blanks()
		if p.at < len(p.text) && p.text[p.at] == ',' {
			p.at++
		}
	}
}
