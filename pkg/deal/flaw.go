package deal

import (
	"fmt"
	"regexp"
	"strings"
	"sync"
	"unicode/utf8"

	"ledgerboard/pkg/diag"
)

func (f flaw) openQuote() diag.Diag {
	return f.opened("the quote that opens here is not closed").
		WithHint("put the same quote at the end of the text, or take this one away")
}

// inBrackets is about { } or [ ]: one that is left open, or entries run together.
func (f flaw) inBrackets() diag.Diag {
	after := f.after()
	switch {
	case strings.HasPrefix(after, "}") || strings.HasPrefix(after, "]"):
		return f.at("%q closes a bracket of the other kind", after[:1]).WithHint("{ is closed by } and [ by ]")
	case f.open.Line > 0 && f.open.Line < f.line && len(indentOf(f.text(f.line))) <= len(indentOf(f.text(f.open.Line))):
		return f.openBracket(f.line)
	case strings.HasPrefix(after, ":"):
		return f.at("a second colon in one entry; a comma is missing before it").WithHint("write a comma between two entries, e.g. {marketing: 5 weeks, escrow: 1 month}")
	}
	return f.remarked(f.line, f.at("a comma or the closing bracket is missing here").WithHint("write a comma between two entries, and close { with } and [ with ]"))
}

// remarked says of a bracket that stays open that a # behind a blank began a remark, if one did.
func (f flaw) remarked(last int, d diag.Diag) diag.Diag {
	for n := max(f.open.Line, 1); n <= last; n++ {
		if strings.Contains(f.text(n), " #") {
			return d.WithHint(`what stands behind " #" is a remark and not read: put a text with # in it in quotes, e.g. "12 Elm St #4"`)
		}
	}
	return d
}

// openBracket is about one that should be closed before a line.
func (f flaw) openBracket(line int) diag.Diag {
	return f.remarked(line-1, f.opened("the bracket that opens here is not closed").WithHint("close { with } and [ with ], before line %d", line))
}

func (f flaw) noContent() diag.Diag {
	switch after := f.after(); {
	case strings.HasPrefix(after, ","):
		return f.at("there is nothing before this comma").WithHint("leave one comma between two entries")
	case strings.HasPrefix(after, "}") || strings.HasPrefix(after, "]"):
		return f.at("%q closes a bracket of the other kind", after[:1]).WithHint("{ is closed by } and [ by ]")
	}
	return f.at("a value is missing here").WithHint("write the value, or take the bracket or comma away")
}

func (f flaw) oddStart() diag.Diag {
	r, _ := utf8.DecodeRuneInString(f.after())
	d := f.at("nothing can begin with %c unless it is in quotes", r)
	if r == '%' {
		return d.WithHint("write the sign behind the number: 11%%")
	}
	return d.WithHint("take it away, or put the whole text in quotes")
}

var (
	dashed = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\s*-[^-\s]`) })
	keyed  = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`:(\s|$)`) })
)

// colon is about a colon where none can be: the second in a line, or one in a line
// that goes on the text above it.
func (f flaw) colon() diag.Diag {
	before, n := f.before(), f.above()
	if i := keyed().FindStringIndex(before); i != nil {
		return f.secondColon(before[:i[0]], before[i[1]:])
	}
	switch {
	case n == 0:
	case dashed().MatchString(f.text(n)):
		return f.noSpace(n)
	case !keyed().MatchString(f.text(n)):
		return f.keyless(n)
	case len(indentOf(before)) > len(indentOf(f.text(n))):
		return f.rest(f.line, "the line is %s, more than the one above, which has a value already", spaces(len(indentOf(before)))).
			WithHint("give the keys of one group the same number of spaces")
	}
	return f.at("a colon cannot stand here").WithHint("a text with a colon goes in quotes; otherwise check the indentation of this line and the one above")
}

func (f flaw) noSpace(line int) diag.Diag {
	return f.rest(line, "there is no space behind the dash").WithHint("write it like   - name: first loan")
}

// noColon is about a line that should be a key.
func (f flaw) noColon() diag.Diag {
	if f.open.Line > 0 {
		return f.keyless(f.open.Line)
	}
	return f.keyless(f.line)
}

func (f flaw) keyless(line int) diag.Diag {
	text := strings.TrimSpace(f.text(line))
	if group := fieldNamed("", plainKey(text)); group != nil {
		return f.rest(line, "%s has no colon behind it", diag.Quote(text)).WithHint("write   %s:   and what belongs to it further in on the next lines", text)
	}
	if strings.HasPrefix(text, "{") || strings.HasPrefix(text, "[") {
		return f.rest(line, "a bracket begins a line that is no item of a list").
			WithHint("write a dash and a space before it, as in   - {trade: roof, amount: $9,800}")
	}
	return f.rest(line, "%s has no colon with a space behind it", diag.Quote(text)).
		WithHint("write the key, a colon, a space and the value, e.g. price: $212,500")
}

// indented is about a line that does not go on the group or list above it, or
// about text behind a value that has ended.
func (f flaw) indented() diag.Diag {
	if before := strings.TrimSpace(f.before()); before != "" {
		return f.behind(before[len(before)-1])
	}
	n, open := f.col-1, f.open.Col-1
	list := strings.Contains(f.says, "'-'")
	switch dash := strings.HasPrefix(strings.TrimSpace(f.text(f.line)), "- "); {
	case dashed().MatchString(f.text(f.line)):
		return f.noSpace(f.line)
	case list:
		return f.rest(f.line, "the line is no item of the list that begins in line %d", f.open.Line).
			WithHint("begin it with a dash, or give it as many spaces as the keys of the item above")
	case dash:
		return f.rest(f.line, "an item of a list stands among keys").
			WithHint("put the items of a list together, right below the key that they belong to")
	case n == open:
		return f.rest(f.line, "the line is not a key of the group that begins in line %d", f.open.Line).
			WithHint("write the key, a colon, a space and the value, e.g. price: $212,500")
	}
	other, words := open, fmt.Sprintf("the group that begins in line %d", f.open.Line)
	if above := f.above(); above > 0 && len(indentOf(f.text(above))) != n {
		other, words = len(indentOf(f.text(above))), "the one above"
	}
	return f.rest(f.line, "the line is %s, but %s is %s", spaces(n), words, spaces(other)).
		WithHint("give the keys of one group the same number of spaces")
}

func (f flaw) behind(last byte) diag.Diag {
	after := f.after()
	switch {
	case strings.ContainsAny(after[:min(1, len(after))], "]})"):
		return f.at("%q closes nothing", after[:1]).WithHint("take it away, or open the bracket before")
	case last == '\'':
		return f.at("the text goes on behind the quote that closes it").WithHint(`put a text with ' in double quotes: "the seller's idea"`)
	case last == '"' && strings.Count(f.before(), `"`)%2 == 1:
		return f.openAbove()
	case last == '"':
		return f.at("the text goes on behind the quote that closes it").WithHint("put the whole text in one pair of quotes, or leave the quotes out")
	}
	return f.at("the text goes on behind a closed bracket").WithHint("put the whole text in quotes, or take the bracket away")
}

// openAbove is about a quote that was closed only by one lines below it.
func (f flaw) openAbove() diag.Diag {
	for n := f.line - 1; n > 0; n-- {
		if text := f.text(n); strings.Count(text, `"`)%2 == 1 {
			f.open = f.g.src.pos(n, utf8.RuneCountInString(text[:strings.LastIndexByte(text, '"')])+1, 1)
			break
		}
	}
	return f.openQuote()
}

func (f flaw) dash() diag.Diag {
	return f.at("a list cannot begin on the line of its key").
		WithHint("put each item on a line of its own; a text that begins with a dash goes in quotes")
}

func (f flaw) star() diag.Diag {
	if strings.Contains(f.says, "anchor") {
		d := f.at("%s copies a value from elsewhere, and there is none of that name", diag.Quote(strings.Fields(f.after() + " ")[0]))
		d.Code = "yaml-anchor"
		return d.WithHint("write the value out; a text that begins with * goes in quotes")
	}
	return f.opened("nothing can begin with * or & unless it is in quotes").
		WithHint("for an item of a list begin with a dash and a space; put a text that begins so in quotes")
}

func (f flaw) folded() diag.Diag {
	return f.at("behind | or > the text begins on the next line").WithHint("put the text on the next line, further in, or put it in quotes")
}

func (f flaw) escape() diag.Diag {
	return f.at("a backslash in double quotes stands for something else").WithHint(`use single quotes, or write \\ for a backslash`)
}

func (f flaw) directive() diag.Diag {
	return f.at("a line that begins with %% tells YAML something and is not read").WithHint("leave it out; a deal file begins with its first key")
}

func (f flaw) hash() diag.Diag {
	return f.at("there is no space before the #").WithHint("write a space before a remark; put a text with # in it in quotes")
}

func (f flaw) question() diag.Diag {
	return f.at("a question mark is no value").WithHint("leave the key out as long as its value is not known")
}

// mark is about a text that begins with !, which YAML takes for the kind of a value.
func (f flaw) mark() diag.Diag {
	return f.opened("nothing can begin with ! unless it is in quotes").WithHint("take it away, or put the whole text in quotes")
}

// secondColon is about a group's keys without braces, as in cash: available: $90k, or else
// about a text that holds a colon.
func (f flaw) secondColon(key, between string) diag.Diag {
	line := strings.TrimSpace(string(f.g.src.line(f.line)))
	item, single := strings.CutPrefix(line, "- ")
	_, value, _ := strings.Cut(line, ":")
	value = strings.TrimSpace(value)
	says := f.at("a second colon in one line")
	switch last := between[strings.LastIndexByte(between, ',')+1:]; {
	case plainKey(key) == "scope" && last != between:
		return says.WithHint("one for all rooms and others for some go in braces: scope: {all rooms: %s}", strings.Trim(value, "{}"))
	case single && last != between && isKey(last, always):
		return says.WithHint("keys of a group in one line go in braces: - {%s}", strings.Trim(item, "{}"))
	case isKey(last, always) && !isKey(key, ofText):
		return says.WithHint("keys of a group in one line go in braces: %s: {%s}", strings.TrimSpace(key), strings.Trim(value, "{}"))
	}
	return says.WithHint("a text with a colon goes in quotes: %s: \"%s\"", strings.TrimSpace(key), strings.ReplaceAll(value, `"`, `'`))
}

func always(*Field) bool   { return true }
func ofText(f *Field) bool { return f.Kind == Text }

// isKey reports whether a word is a key of some group, of a field that is so.
func isKey(word string, is func(*Field) bool) bool {
	for f := range rows() {
		if f.Key() == plainKey(word) && is(f) {
			return true
		}
	}
	return false
}
