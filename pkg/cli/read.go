package cli

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
)

// largest is the most of a file that is read: a list of sales of a large county; the deal
// reader refuses less.
const largest = 64 << 20

// text reads a file, or standard input for "-".
func (c *common) text(path string) (name string, text []byte, err error) {
	if path == "-" && c.again != nil {
		return "standard input", c.again, nil
	}
	if path == "-" {
		text, err = io.ReadAll(io.LimitReader(c.In, largest))
		c.again = text
		return "standard input", text, err
	}
	f, err := c.open(path)
	if err != nil {
		return "", nil, &dataError{fmt.Errorf("%s: %s", path, reason(err)), instead(path, err)}
	}
	defer f.Close()
	if text, err = io.ReadAll(io.LimitReader(f, largest)); err != nil {
		return "", nil, fmt.Errorf("%s: %s", path, reason(err))
	}
	return path, text, nil
}

// open opens a file to be read, and notes that it was.
func (c *common) open(path string) (*os.File, error) {
	c.files = append(c.files, path)
	return os.Open(path)
}

// reading is how a deal file is read.
func (c *common) reading(path string) deal.Options {
	how := c.how
	if path != "-" {
		how.Open = c.beside(path)
	}
	return how
}

// beside opens the files that a deal file names, from its own folder.
func (c *common) beside(path string) func(string) ([]byte, error) {
	return func(name string) ([]byte, error) {
		if !filepath.IsAbs(name) {
			name = filepath.Join(filepath.Dir(path), name)
		}
		f, err := c.open(name)
		if err != nil {
			return nil, errors.New(reason(err))
		}
		defer f.Close()
		text, err := io.ReadAll(io.LimitReader(f, largest))
		if err != nil {
			return nil, errors.New(reason(err))
		}
		return text, nil
	}
}

// instead says what would do in place of a file that there is not: one beside it with
// nearly its name, or a new deal file; nothing where the file is there.
func instead(path string, err error) string {
	if !os.IsNotExist(err) {
		return ""
	}
	folder, end := filepath.Dir(path), filepath.Ext(path)
	beside, _ := filepath.Glob(filepath.Join(folder, "*"+end))
	for i := range beside {
		beside[i] = strings.TrimSuffix(filepath.Base(beside[i]), end)
	}
	switch near, ok := diag.Nearest(strings.TrimSuffix(filepath.Base(path), end), beside); {
	case ok:
		return "did you mean " + filepath.Join(folder, near+end) + "?"
	case end != ".yaml" && end != ".yml":
		return "check the name and the folder"
	}
	return "check the name and the folder, or begin one:   ledgerboard new " + path
}

// reason is why a file could not be used, without its name and without the call.
func reason(err error) string {
	switch {
	case os.IsNotExist(err):
		return "there is no such file"
	case os.IsPermission(err):
		return "it may not be read or written"
	case os.IsExist(err):
		return "it is already there"
	}
	s := err.Error()
	if i := strings.LastIndex(s, ": "); i >= 0 {
		s = s[i+2:]
	}
	return s
}

func (c *common) replacements() ([]deal.Set, error) {
	var out []deal.Set
	for _, s := range c.sets {
		path, value, ok := strings.Cut(s, "=")
		if !ok || strings.TrimSpace(path) == "" {
			return nil, &usageError{fmt.Errorf("--set %q has no =", s), "for example: --set price=205k"}
		}
		out = append(out, deal.Set{Path: strings.TrimSpace(path), Value: strings.TrimSpace(value)})
	}
	return out, nil
}

// askedOf is the deal as a command line asks for it: the file with what was set in it.
func (c *common) askedOf(path string) string {
	out := inShell(path)
	for _, s := range c.sets {
		out += " --set " + inShell(s)
	}
	return out
}

// inShell is a word as a shell takes it, in quotes where it holds more than plain letters.
func inShell(word string) string {
	plain := func(r rune) bool {
		return unicode.IsLetter(r) || unicode.IsDigit(r) || strings.ContainsRune("-_./:=%+,@", r)
	}
	if word != "" && strings.IndexFunc(word, func(r rune) bool { return !plain(r) }) < 0 {
		return word
	}
	return "'" + strings.ReplaceAll(word, "'", `'\''`) + "'"
}

// A loaded is a deal file as it was read, with what was found in it.
type loaded struct {
	name    string
	deal    *deal.Deal // nil if it holds a mistake
	found   diag.List
	sources map[string]string // the texts that the places are in, for diag.Render
}

// load reads a deal with the files that it names.
func (c *common) load(path string, sets []deal.Set) (*loaded, error) {
	name, text, err := c.text(path)
	if err != nil {
		return nil, err
	}
	if pricebook.IsWorkbook(name, text) {
		return nil, &dataError{fmt.Errorf("%s is a workbook, not a deal file", name), "give the deal file that it was made from; a form for bids that came back is read by   ledgerboard prices --from"}
	}
	l := &loaded{name: name, sources: deal.Sources(name, text, sets...)}
	how := c.reading(path)
	if open := how.Open; open != nil {
		how.Open = func(name string) ([]byte, error) {
			text, err := open(name)
			l.sources[name] = string(text)
			return text, err
		}
	}
	ahead(text)
	l.deal, l.found = deal.ReadWith(how, name, text, sets...)
	return l, nil
}

// ahead reads in the background what reading a deal asks for: much of a short run, while
// the second processor has nothing else to do.
func ahead(text []byte) {
	go model.ReadFormulas()
	go func() { pricebook.Starter().Ahead(string(text)) }()
}

// read reads a deal. Mistakes are told on Err; doubts are returned.
func (c *common) read(path string) (*deal.Deal, diag.List, error) {
	sets, err := c.replacements()
	if err != nil {
		return nil, nil, err
	}
	l, err := c.load(path, sets)
	if err != nil {
		return nil, nil, err
	}
	if l.found.HasErrors() {
		return nil, nil, c.mistakes(l.name, l.found, l.sources)
	}
	return l.deal, l.found, nil
}

// mistakes tells the mistakes of a file on Err.
func (c *common) mistakes(name string, found diag.List, sources map[string]string) error {
	mistakes := found.Errors()
	if err := diag.Render(c.Err, withSales(found), sources); err != nil {
		return err
	}
	tell(c.Err, "error: %s holds %s", holder(name, mistakes), quantity.Counted(len(mistakes), "mistake"))
	return &toldError{BadData}
}

// withSales are the mistakes; where the value is missing, with the doubts about sold
// houses, which say why they do not give it.
func withSales(found diag.List) diag.List {
	if !slices.ContainsFunc(found, func(d diag.Diag) bool { return d.Code == "missing-after-repair-value" }) {
		return found.Errors()
	}
	return slices.DeleteFunc(slices.Clone(found), func(d diag.Diag) bool { return d.Severity != diag.Error && !deal.AboutComps(d.Code) })
}

// holder is what some mistakes are in: the file, the sets, or both.
func holder(name string, found diag.List) string {
	switch inSets(found) {
	case 0:
		return name
	case len(found):
		return "--set"
	}
	return name + " with --set"
}

func inSets(found diag.List) int {
	n := 0
	for _, d := range found {
		if deal.InSet(d.Pos) {
			n++
		}
	}
	return n
}

func (c *common) answer(path string) (*answer.Answer, error) {
	d, doubts, err := c.read(path)
	if err != nil {
		return nil, err
	}
	return answer.Of(d, doubts)
}
