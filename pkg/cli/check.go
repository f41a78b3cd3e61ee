package cli

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/pricebook"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/report"
)

func newCheck(s Streams) *cobra.Command {
	c := &common{Streams: s}
	cmd := &cobra.Command{
		Use:   "check FILE...",
		Short: "report every mistake and every doubtful spot",
		Long: `Example:

  ledgerboard check my-house.yaml

Reports every mistake of the files at once, each with its place and what to do;
a slip in the YAML itself stops the reading of its file, and rooms and work are
measured once the rest is right. Once there is no mistake in what the scope
takes, it tells every doubtful spot the same way, and with them the mistakes
and doubtful spots of options that the scope does not take. It exits with 3 if
there is a mistake.

A workbook of quotes (.xlsx), such as a form for bids that came back filled in,
is checked against the starter price book.`,
		Args: files(1, -1, "check my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runCheck(c, args) },
	}
	c.flags(cmd)
	return cmd
}

// checked is what was found in one file.
type checked struct {
	File     string      `json:"file"`
	Mistakes int         `json:"mistakes"`
	Doubts   int         `json:"doubts"`
	Doubted  bool        `json:"doubts_looked_for"` // all of them; with a mistake only some show
	Found    []diag.Diag `json:"found"`
	sources  map[string]string
}

func runCheck(c *common, paths []string) error {
	sets, err := c.replacements()
	if err != nil {
		return err
	}
	var all []checked
	var unread []error
	failed := false
	for _, path := range paths {
		one, err := checkFile(c, path, sets)
		if err != nil {
			unread = append(unread, err)
			continue
		}
		failed = failed || one.Mistakes > 0
		all = append(all, one)
	}
	if len(all) > 0 {
		if err := c.tell(all); err != nil {
			return err
		}
	}
	if n := len(unread); n > 0 {
		for _, err := range unread[:n-1] {
			tellError(c.Err, err)
		}
		return unread[n-1]
	}
	if failed {
		return &toldError{CheckFailed}
	}
	return nil
}

func checkFile(c *common, path string, sets []deal.Set) (checked, error) {
	name, text, err := c.text(path)
	if err != nil {
		return checked{}, err
	}
	if pricebook.IsWorkbook(name, text) {
		return checkQuotes(name, text)
	}
	if strings.EqualFold(filepath.Ext(path), ".csv") {
		return checked{}, &usageError{fmt.Errorf("%s is a table, not a deal file", name), "ledgerboard prices --from " + name + "   reads a table of quotes; a form for bids is checked as .xlsx"}
	}
	l, err := c.load(path, sets)
	if err != nil {
		return checked{}, err
	}
	found := l.found
	if l.deal != nil {
		a, err := answer.Of(l.deal, found)
		if err != nil {
			return checked{}, err
		}
		wrong, err := c.untaken(l, path, sets)
		if err != nil {
			return checked{}, err
		}
		doubts, err := c.untakenDoubts(l.deal, l.found, path)
		if err != nil {
			return checked{}, err
		}
		found = slices.Concat(a.Warnings, wrong, doubts)
	}
	found.Sort()
	return checked{
		File: l.name, Doubted: l.deal != nil, Found: append([]diag.Diag{}, found...), sources: l.sources,
		Mistakes: len(found.Errors()), Doubts: len(found.Warnings()),
	}, nil
}

// checkQuotes checks a workbook of quotes against the starter book, and the book that
// would come of it.
func checkQuotes(name string, data []byte) (checked, error) {
	quotes, found := pricebook.CheckWorkbook(name, data, pricebook.Starter())
	for i, d := range found {
		if d.Code == "quotes-name" { // it may be of a book of the owner's
			found[i] = d.WithHint("%s; names of your own book are known to   ledgerboard prices --from %s --book mine.yaml", d.Hint, name)
		}
	}
	if !found.HasErrors() {
		text, _, err := pricebook.LayQuotes("", quotes, pricebook.Starter(), "")
		if err != nil {
			return checked{}, err
		}
		laid, wrong := deal.OwnBook(newBook, []byte(text))
		found.Add(wrong...)
		if laid != nil {
			for _, c := range pricebook.Changes(quotes, pricebook.Starter(), laid) {
				if d, is := c.Doubt(); is {
					found.Add(d)
				}
			}
		}
		found.Sort()
	}
	return checked{File: name, Doubted: !found.HasErrors(), Found: append([]diag.Diag{}, found...), Mistakes: len(found.Errors()), Doubts: len(found.Warnings())}, nil
}

func (c *common) tell(all []checked) error {
	if c.json {
		e := json.NewEncoder(c.Out)
		e.SetIndent("", "  ")
		return e.Encode(map[string]any{"schema": report.Schema, "files": all})
	}
	for _, one := range all {
		if err := diag.Render(c.Out, one.Found, one.sources); err != nil {
			return err
		}
		if len(one.Found) > 0 {
			fmt.Fprintln(c.Out)
		}
		name := one.File
		if inSets(one.Found) > 0 {
			name += " with --set"
		}
		fmt.Fprintf(c.Out, "%s: %s\n", name, one.counts())
	}
	return nil
}

// counts says how much was found; while there are mistakes most doubts are not looked for.
func (c checked) counts() string {
	found, doubts := quantity.Counted(c.Mistakes, "mistake"), quantity.Counted(c.Doubts, "doubtful spot")
	switch {
	case c.Doubted:
		return found + ", " + doubts
	case c.Doubts > 0:
		return found + ", " + doubts + " so far"
	}
	return found + ", doubts not yet looked for"
}
