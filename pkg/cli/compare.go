package cli

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/report"
)

func newCompare(s Streams) *cobra.Command {
	c := &common{Streams: s}
	cmd := &cobra.Command{
		Use:   "compare FILE [FILE]",
		Short: "options side by side, or two deals",
		Long: `Example:

  ledgerboard compare my-house.yaml
  ledgerboard compare my-house.yaml other-house.yaml

With one file, sets its options side by side: each taken for all rooms, and the
mix that the file states. With two, sets the two deals side by side. Shows
profit, cash, months, own hours, the maximum offer, the cost by room and trade,
and what each room adds to the value less what it costs.`,
		Args: files(1, 2, "compare my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runCompare(c, args) },
	}
	c.flags(cmd)
	return cmd
}

func runCompare(c *common, paths []string) error {
	style, err := c.style()
	if err != nil {
		return err
	}
	title, all, err := c.columns(paths)
	if err != nil {
		return err
	}
	if c.json {
		return report.CompareJSON(c.Out, all)
	}
	next := ""
	if len(paths) == 1 && !all[0].Deal.ByCondition() {
		next = "ledgerboard best " + paths[0]
	}
	return report.Compare(c.Out, title, next, all, style)
}

// columns are the deals to set side by side: two files, or the options of one.
func (c *common) columns(paths []string) (string, []answer.Column, error) {
	if len(paths) == 2 {
		var all []answer.Column
		for _, path := range paths {
			a, err := c.offered(path)
			if err != nil {
				return "", nil, err
			}
			all = append(all, answer.Column{Name: strings.TrimSuffix(filepath.Base(path), ".yaml"), Answer: a})
		}
		return all[0].Deal.Name + " and " + all[1].Deal.Name, all, nil
	}
	first, err := c.offered(paths[0])
	if err != nil {
		return "", nil, err
	}
	if err := rooms(first, paths[0], report.View{}); err != nil {
		return "", nil, err
	}
	names := first.Deal.Options
	if len(names) == 0 {
		return "", nil, &dataError{fmt.Errorf("%s has no options to set side by side", paths[0]), "give rooms options, e.g.   options: {cosmetic: {work: ...}, full gut: {work: ...}}"}
	}
	if first.Deal.Mixed {
		names = append([]string{""}, names...)
	}
	var all []answer.Column
	told := slices.Clone(first.Warnings)
	for _, name := range names[:min(len(names), report.MostColumns)] {
		a := first
		if name != "" {
			if a, err = c.option(paths[0], name); err != nil {
				return "", nil, err
			}
			told = append(told, c.fresh(told, a.Warnings, first.Deal, name)...)
		} else {
			name = "as stated"
		}
		all = append(all, answer.Column{Name: name, Answer: a})
	}
	c.pointToCheck(paths[0], told[len(first.Warnings):])
	return first.Deal.Name + ": options side by side", all, nil
}

// option is the deal with one option taken for all rooms.
func (c *common) option(path, name string) (*answer.Answer, error) {
	return c.scoped(name).offered(path)
}

// scoped reads deals with an option of the house as their scope.
func (c *common) scoped(name string) *common {
	other := *c
	other.sets = append(other.sets[:len(other.sets):len(other.sets)], "scope="+name)
	return &other
}

// offered reads a deal and works out its figures and offers: what is set side by side.
func (c *common) offered(path string) (*answer.Answer, error) {
	d, doubts, err := c.read(path)
	if err != nil {
		return nil, err
	}
	return answer.Offered(d, doubts)
}
