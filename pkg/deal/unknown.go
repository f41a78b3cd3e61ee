package deal

import (
	"maps"
	"regexp"
	"slices"
	"strings"
	"sync"

	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/quantity"
)

// unknown tells of a key that the group does not have, and remembers what it was
// meant for, so that the same slip is not told again as something missing.
func (r *reader) unknown(s scope, e *entry) {
	r.odd[s.path] = true
	key, keys := diag.Quote(e.key.text), strings.Join(s.keys(), ", ")
	word, value, colon := strings.Cut(e.key.text, ":")
	near, ok := nearestKey(s.group, e.name)
	if ok && len(near) < len(e.name) && !diag.Misspelt(e.name, near) && len(standing(e.name)) > 0 {
		ok = false // sales tax is a key of its own, and no tax
	}
	switch {
	case e.name == "":
		r.say("unknown-key", e.key.at, "there is no key before the colon")("here stand: %s", keys)
	case colon && fieldNamed(s.group, plainKey(word)) != nil:
		r.meant[s.path+fieldNamed(s.group, plainKey(word)).Key()] = true
		if value == "" {
			r.say("unknown-key", e.key.at, "%s has a colon too many", key)("write one colon and a space behind   %s", word)
			return
		}
		r.noSpaceBehind(e, word, value)
	case r.colonless(s, e): // told
	case r.stray(e): // told
	case !ok && r.cutOffText(e): // told
	case s.group == "renovation.lines[]" && slices.Contains(amountWords, e.name):
		r.meant[s.path+"amount"] = true
		r.say("unknown-key", e.key.at, "unknown key %s", key)("did you mean %q?", "amount")
	case !ok && r.tradeAsKey(s, e): // told
	case r.bookInDeal(s, e): // told
	case r.workOutside(s, e) || r.optionMeant(s, e): // told
	case r.costOfWork(s, e) || r.noSaleKey(s, e) || r.meantHere(s, e) || r.meantElsewhere(s, e): // told
	case ok:
		r.meant[s.path+fieldNamed(s.group, plainKey(near)).Key()] = true
		r.say("unknown-key", e.key.at, "unknown key %s", key)("did you mean %q?", near)
	case r.besides(s, e): // told
	default:
		r.misplaced(s, e, keys)
	}
}

func (r *reader) noSpaceBehind(e *entry, key, value string) {
	r.say("unknown-key", e.key.at, "%s has no space behind the colon", diag.Quote(e.key.text))("write   %s: %s", key, value)
}

// bookInDeal tells of what stands in a price book.
func (r *reader) bookInDeal(s scope, e *entry) bool {
	if s.group != "" || e.name != "items" && e.name != "products" {
		return false
	}
	r.say("unknown-key", e.key.at, "%s belongs into a price book, and this is read as a deal", diag.Quote(e.key.text))("keep the book in a file of its own, and name that in the deal:   own book: mine.yaml   ; ledgerboard prices --book mine.yaml reads the book alone")
	return true
}

// workOutside tells of work of the price book beside the key that it belongs under.
func (r *reader) workOutside(s scope, e *entry) bool {
	if fieldNamed(s.group, "work") == nil || s.group == "<room>" && sortOf(e.name) != "" || r.itemNamed(e.name) == nil {
		return false
	}
	tell := r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))
	if e.value.shape == scalar {
		tell("it is work of the price book; put it under work:   work: {%s: %s}", e.key.text, e.value.text)
	} else {
		tell("it is work of the price book; put it under work, with what stands behind it")
	}
	return true
}

// amountWords are what people call the amount of a line of the renovation.
var amountWords = []string{"cost", "price", "total", "bid", "quote", "estimate", "est"}

// tradeAsKey tells of a line of the renovation that is no more than a trade and its cost.
func (r *reader) tradeAsKey(s scope, e *entry) bool {
	if s.group != "renovation.lines[]" || e.value.shape != scalar || e.value.text == "" || e.key.at.Line != s.at.Line || e.key.at.Col > s.at.Col+1 {
		return false // it stands behind other keys
	}
	if _, err := quantity.ParseMoney(e.value.text); err != nil {
		return false
	}
	r.meant[s.path+"trade"], r.meant[s.path+"amount"] = true, true
	r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))("write   - {trade: %s, amount: %s}", e.key.text, e.value.text)
	return true
}

// misplaced tells of a key that stands elsewhere, or nowhere.
func (r *reader) misplaced(s scope, e *entry, keys string) {
	var elsewhere []string
	for _, f := range standing(e.name) {
		elsewhere = append(elsewhere, f.stands())
		r.meant[f.Path] = true
	}
	if len(elsewhere) == 1 && r.headless(e) {
		return
	}
	if len(elsewhere) > 0 {
		r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))("it belongs %s", strings.Join(elsewhere, ", or "))
		return
	}
	if f := nearAway(e.name); s.group == "" && e.value.shape == scalar && f != nil {
		r.meant[f.Path] = true
		r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("did you mean %q? it belongs %s", f.Key(), f.stands())
		return
	}
	r.say("unknown-key", e.key.at, "unknown key %s", diag.Quote(e.key.text))("here stand: %s", keys)
}

// standing are the fields of groups of the deal that a key is the name of.
func standing(name string) (out []*Field) {
	for f := range rows() {
		if f.isNamed(name) && !strings.HasPrefix(f.Path, "<") {
			out = append(out, f)
		}
	}
	return out
}

// nearAway is the field of a group of the deal whose key a word is near to, where there
// is one such field alone.
func nearAway(word string) *Field {
	away := map[string]*Field{}
	for f := range rows() {
		if strings.HasPrefix(f.Path, "<") || f.group() == "" {
			continue
		}
		for _, name := range f.names() {
			if _, several := away[name]; several {
				away[name] = nil
			} else {
				away[name] = f
			}
		}
	}
	near, ok := diag.Nearest(word, slices.Collect(maps.Keys(away)))
	if !ok {
		return nil
	}
	return away[near]
}

// headless tells once of the keys of a group that the file does not begin; the line
// with its name is missing above them, or they are not indented.
func (r *reader) headless(e *entry) bool {
	var home string
	for f := range rows() {
		if group := f.group(); f.isNamed(e.name) && group != "" && !strings.ContainsAny(group, ".[<") {
			home = group
		}
	}
	begun := r.root.find(home)
	if home == "" || begun != nil && begun.value.shape != nothing {
		return false
	}
	if r.astray[home] {
		return true
	}
	r.astray[home] = true
	tell := r.say("unknown-key", e.key.at, "the key %s does not belong here", diag.Quote(e.key.text))
	if begun != nil {
		tell("it belongs under %s in line %d; put it below that line, indented, with the others of its kind", home, begun.key.at.Line)
	} else {
		tell("it belongs under %s; write a line   %s:   and put it below, indented, with the others of its kind", home, home)
	}
	return true
}

// stands says where the field belongs, in words: under loans, under extension in loans.
func (f *Field) stands() string {
	parts := strings.Split(strings.ReplaceAll(f.group(), "[]", ""), ".")
	if parts[0] == "" {
		return "at the top, not indented"
	}
	slices.Reverse(parts)
	return "under " + strings.Join(parts, " in ")
}

// year is a number that ends a date with a comma in it.
var year = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^(19|20)\d\d$`) })

// dateInBrackets is how a date is written where a comma begins a new entry.
const dateInBrackets = `put the date in quotes, as "May 14, 2026", or write 2026-05-14; inside { } a comma begins a new entry`

// cutOff reports whether a comma and more of a number stand right behind a text of
// the file, as in {price: $212,5OO}.
func (r *reader) cutOff(s span) bool {
	return r.behind(s, numberBehind())
}

var (
	numberBehind = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^,\d`) })
	yearBehind   = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^["']?\s*,\s*(19|20)\d\d\b`) })
)

// yearCutOff reports whether a comma and a year stand right behind a text of the file.
func (r *reader) yearCutOff(s span) bool {
	return r.behind(s, yearBehind())
}

// behind reports whether the line of the file goes on behind a text in some way.
func (r *reader) behind(s span, how *regexp.Regexp) bool {
	line := r.src.line(s.at.Line)
	end := s.at.Col - 1 + s.at.Len
	return s.at.File == r.name && end <= len(line) && how.MatchString(string(line[end:]))
}

// stray tells of a number without a key, which a comma in brackets has cut off.
func (r *reader) stray(e *entry) bool {
	if e.value.shape != nothing || e.key.text == "" || !strings.ContainsAny(e.key.text[:1], "$0123456789") {
		return false
	}
	tell := r.say("unknown-key", e.key.at, "%s stands without a key", diag.Quote(e.key.text))
	switch {
	case year().MatchString(e.key.text):
		tell("if it is the year of the date before it, %s", dateInBrackets)
	case isSize(e.key.text):
		tell("inside { } every comma begins a new entry: several sizes of one key stand in brackets, as   size: [18' x 13', 9' x 7' sharing 9']   ; a fixed part has a name of its own, as   second tub: %s", plainSize(e.key.text))
	default:
		tell("write it like   amount: $900; inside { } every comma that does not part thousands begins a new entry")
	}
	return true
}

// behindLayers is what stands before a layer that a comma has cut off.
var behindLayers = pattern(`(?i)layers:[^:]*,$`)

// cutOffText tells of words without a value that a comma in brackets has cut off from the
// text before them, as in {work: tub, tile}.
func (r *reader) cutOffText(e *entry) bool {
	line := r.src.line(e.key.at.Line)
	if e.value.shape != nothing || e.key.at.File != r.name || e.key.at.Col > len(line) {
		return false
	}
	before := strings.TrimRight(string(line[:e.key.at.Col-1]), " ")
	if !strings.HasSuffix(before, ",") {
		return false
	}
	tell := r.say("unknown-key", e.key.at, "%s stands without a key", diag.Quote(e.key.text))
	if _, known := layered[e.name]; known && behindLayers().MatchString(before) {
		tell("inside { } a comma begins a new key: several layers stand in brackets, as   layers: [carpet, vinyl]")
		return true
	}
	tell(`inside { } a comma begins a new key; put a text that holds one in quotes, as   work: "tub, tile"`)
	return true
}

// colonless tells of a key and its value without a colon between, in brackets.
func (r *reader) colonless(s scope, e *entry) bool {
	key, value := keyInFront(s.group, e.key.text)
	if e.value.shape != nothing || key == "" {
		return false
	}
	r.meant[s.path+fieldNamed(s.group, plainKey(key)).Key()] = true
	r.say("unknown-key", e.key.at, "%s has no colon", diag.Quote(e.key.text))("write   %s: %s", key, value)
	return true
}

// keyInFront parts a text that begins with a key of a group, the longest there is, from
// the value behind it; the key is "" where there is none.
func keyInFront(group, text string) (key, value string) {
	const longest = 64 // letters of a key
	for i := range min(len(text), longest) {
		if text[i] == ' ' && fieldNamed(group, plainKey(text[:i])) != nil {
			key, value = text[:i], strings.TrimPrefix(text[i+1:], "= ")
		}
	}
	return key, value
}

// keys are the keys of the group; of the details of a charge, those that it may have.
func (s scope) keys() []string {
	var out []string
	for _, f := range fields()[s.group] {
		if f.Only == "" || s.place == nil || slices.Contains(strings.Fields(f.Only), s.place.kind) {
			out = append(out, f.Key())
		}
	}
	return out
}
