package pricebook

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/quantity"
)

// LayQuotes returns the text of an owner's book that holds quotes over the book that
// they were read by, and how many products and items change. What the book says already
// is left out. old is the text of an owner's book that they are added to, "" for a new
// one; it is sound. told is the source of quotes that name none, "" for none.
func LayQuotes(old string, quotes []Quote, b *Book, told string) (text string, changed int, err error) {
	l := layer{book: b, told: told}
	if doc, bad := document("", old); bad == nil && len(doc.Content) > 0 && doc.Content[0].Kind == yaml.MappingNode {
		l.root = doc.Content[0]
	} else {
		l.root = &yaml.Node{Kind: yaml.MappingNode}
	}
	for _, group := range byName(quotes) {
		if group = onlyNews(group, b); len(group) > 0 {
			l.lay(group)
			changed++
		}
	}
	if changed == 0 {
		return old, 0, nil
	}
	out, err := yaml.Dump(l.root, yaml.WithIndent(2), yaml.WithLineWidth(-1))
	if err != nil {
		return "", 0, fmt.Errorf("the price book: %w", err)
	}
	return string(out), changed, nil
}

// onlyNews are the quotes of a group that say anything a book does not say already.
func onlyNews(group []Quote, b *Book) []Quote {
	return slices.DeleteFunc(slices.Clone(group), func(q Quote) bool { return !q.news(b) })
}

// byName puts the quotes for one thing together, in the order of the first of each.
func byName(quotes []Quote) [][]Quote {
	var out [][]Quote
	for _, q := range quotes {
		i := slices.IndexFunc(out, func(g []Quote) bool { return g[0].Name == q.Name && g[0].Item == q.Item })
		if i < 0 {
			out = append(out, nil)
			i = len(out) - 1
		}
		out[i] = append(out[i], q)
	}
	return out
}

// A layer writes quotes into a book.
type layer struct {
	root *yaml.Node
	book *Book
	told string
}

// lay writes the quotes for one thing. A product sold by the stick may have several; its
// other sticks keep their price, and it is as old as the oldest of them.
func (l *layer) lay(group []Quote) {
	q := group[0]
	if q.Item {
		n := l.entry(items, q.Name)
		it := l.book.Item(q.Name)
		text := "none"
		if !q.None {
			text = quantity.Per{Number: q.Price, Money: true, Bottom: it.Unit}.String() + it.AndCoat()
		}
		set(n, "hired", text)
		l.said(n, "hired source", q.Dated, q.Source)
		return
	}
	n, p := l.entry(products, q.Name), l.book.Product(q.Name)
	switch {
	case q.Stick != nil:
		set(n, "sticks", "")
		l.sticks(n.Content[indexOf(n, "sticks")+1], p, group)
		q.Dated, q.Source = together(p, group, l.told)
	case q.Roll != nil && (q.Roll.First.Cmp(p.Roll.Width) != 0 || q.Roll.Second.Cmp(p.Roll.Length) != 0):
		set(n, "roll", plainLength(q.Roll.First.Length)+" x "+plainLength(q.Roll.Second.Length))
	case q.Pack != nil && q.Pack.String() != p.Pack.String():
		set(n, "pack", q.Pack.String())
	}
	if q.Stick == nil {
		set(n, "price", dollarText(q.Price))
	}
	l.said(n, "source", q.Dated, q.Source)
}

// said writes the day and the source; those of an older price go.
func (l *layer) said(n *yaml.Node, sourceKey string, dated quantity.Date, source string) {
	if source == "" {
		source = l.told
	}
	unset(n, "dated")
	unset(n, sourceKey)
	if !dated.IsZero() {
		set(n, "dated", dated.String())
	}
	if source != "" {
		set(n, sourceKey, source)
	}
}

func (l *layer) sticks(n *yaml.Node, p *Product, group []Quote) {
	all := slices.Clone(p.Sticks)
	for _, q := range group {
		if i := slices.IndexFunc(all, func(s Stick) bool { return s.Length.Cmp(*q.Stick) == 0 }); i >= 0 {
			all[i].Price, all[i].Own = q.Price, true
		} else {
			all = append(all, Stick{*q.Stick, q.Price, true})
		}
	}
	slices.SortFunc(all, func(a, b Stick) int { return a.Length.Cmp(b.Length) })
	*n = yaml.Node{Kind: yaml.MappingNode, Style: yaml.FlowStyle}
	for _, s := range all {
		text := starterStick
		if s.Own {
			text = dollarText(s.Price)
		}
		set(n, plainLength(s.Length), text)
	}
}

// together are the day and the source of all sticks of a product that somebody quotes, also
// of those that no quote of the group is for. The starter book's keep theirs.
func together(p *Product, group []Quote, told string) (dated quantity.Date, source string) {
	var sources []string
	dated = group[0].Dated
	other := slices.IndexFunc(p.Sticks, func(s Stick) bool {
		return s.Own && !slices.ContainsFunc(group, func(q Quote) bool { return q.Stick.Cmp(s.Length) == 0 })
	})
	said := ""
	if other >= 0 {
		var of quantity.Date
		if of, said = p.saidOf(p.Sticks[other]); !of.IsZero() {
			dated = of
		}
	}
	for _, q := range group {
		if !q.Dated.IsZero() && (dated.IsZero() || q.Dated.Compare(dated) < 0) {
			dated = q.Dated
		}
		if from := cmp.Or(q.Source, told, Owners); !slices.Contains(sources, from) {
			sources = append(sources, from)
		}
	}
	if said != "" && !slices.Contains(sources, said) {
		sources = append(sources, otherLengths+said)
	}
	return dated, strings.Join(sources, "; ")
}

func dollarText(x decimal.Decimal) string { return "$" + plainMoney(x) }

// entry is the entry of a name in a section, added where there is none.
func (l *layer) entry(kind int, name string) *yaml.Node {
	section := child(l.root, func(key string) bool { return key == sections[kind] }, sections[kind])
	return child(section, func(key string) bool { return even(key) == name }, name)
}

// child is the group of a key that fits, added under a name where there is none.
func child(n *yaml.Node, fits func(string) bool, name string) *yaml.Node {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if fits(n.Content[i].Value) {
			if n.Content[i+1].Kind != yaml.MappingNode {
				n.Content[i+1] = &yaml.Node{Kind: yaml.MappingNode}
			}
			return n.Content[i+1]
		}
	}
	group := &yaml.Node{Kind: yaml.MappingNode}
	n.Content = append(n.Content, textNode(name), group)
	return group
}

func indexOf(n *yaml.Node, key string) int {
	for i := 0; i+1 < len(n.Content); i += 2 {
		if n.Content[i].Value == key {
			return i
		}
	}
	return -1
}

func set(n *yaml.Node, key, value string) {
	if i := indexOf(n, key); i >= 0 {
		n.Content[i+1] = textNode(value)
		return
	}
	n.Content = append(n.Content, textNode(key), textNode(value))
}

func unset(n *yaml.Node, key string) {
	if i := indexOf(n, key); i >= 0 {
		n.Content = slices.Delete(n.Content, i, i+2)
	}
}

// bare are texts that mean themselves in YAML, also between brackets.
var bare = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[$]?[\pL\d]([\pL\d ./()$-]*[\pL\d)])?$`) })

// textNode is a text that is read as it is: in quotes where YAML could read it otherwise.
func textNode(s string) *yaml.Node {
	n := &yaml.Node{Kind: yaml.ScalarNode, Value: s}
	if !bare().MatchString(s) || s == "null" || s == "Null" || s == "NULL" {
		n.Style = yaml.DoubleQuotedStyle
	}
	return n
}
