package cli

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/internal/together"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/stress"
	"ledgerboard/pkg/workbook"
)

type workbookOptions struct {
	common
	output
	reader, trade string
	blank         bool
}

func newWorkbook(s Streams) *cobra.Command {
	o := &workbookOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "workbook FILE",
		Short: "a spreadsheet of the deal that calculates by itself",
		Long: `Example:

  ledgerboard workbook my-house.yaml -o my-house.xlsx
  ledgerboard workbook my-house.yaml --for lender -o for-the-lender.xlsx
  ledgerboard workbook my-house.yaml --trade tile -o for-the-tiler.xlsx

Without -o it goes into this directory under the name of the deal file, as
my-house.xlsx.

Writes the deal as a workbook with live formulas: change a shaded input, and all
sheets follow. For a lender it keeps what a lender asks first and leaves out
your targets, offers, own wage, profit after own hours and tax. Hours and pace
of own work in rooms are in it: the schedule follows from them. What comes from
a search, such as the maximum offer, and how trim is cut stand as values; run
this again after a change that moves them.

--trade makes a bid form for one trade: its quantities and the sizes of rooms,
no prices. --blank-prices makes one of the whole job. Filled in, both are read
back by   ledgerboard prices --from for-the-tiler.xlsx`,
		Args: files(1, 1, "workbook my-house.yaml -o my-house.xlsx"),
		RunE: func(_ *cobra.Command, args []string) error {
			return runWorkbook(o, args[0])
		},
	}
	o.setting(cmd)
	o.output.flags(cmd, "", "the `file` to write, - for standard output")
	cmd.Flags().StringVar(&o.reader, "for", "owner", "whom it is for: owner or lender")
	cmd.Flags().StringVar(&o.trade, "trade", "", "a bid form for that `trade`, without prices")
	cmd.Flags().BoolVar(&o.blank, "blank-prices", false, "a bid form of the whole job, without prices")
	return cmd
}

// isFolder reports whether a name is that of a folder.
func isFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

// tradesOf are the names of some trades.
func tradesOf(all []*model.Member) []string {
	var out []string
	for _, m := range all {
		out = append(out, m.Label)
	}
	return out
}

// readers are whom a workbook can be for.
var readers = map[string]workbook.Reader{"owner": workbook.Owner, "lender": workbook.Lender}

func runWorkbook(o *workbookOptions, path string) error {
	o.reader = strings.ToLower(o.reader)
	reader, known := readers[o.reader]
	if !known {
		return &usageError{fmt.Errorf("--for is %q", o.reader), "it is for owner or lender"}
	}
	switch {
	case o.trade != "" && o.blank:
		return &usageError{errors.New("--trade and --blank-prices each make another form"), "give one of them"}
	case (o.trade != "" || o.blank) && o.reader != "owner":
		return &usageError{errors.New("a bid form is for whoever bids, and --for is for a workbook of the deal"), "leave out --for, or ask for the form in a run of its own"}
	case o.file == "" && path == "-":
		return &usageError{errors.New("the workbook has no name"), "give it one:   -o my-house.xlsx"}
	case o.file == "":
		o.file = strings.TrimSuffix(filepath.Base(path), filepath.Ext(path)) + ".xlsx"
	case o.file == "-" && o.Terminal:
		return &usageError{errors.New("a workbook is not for a terminal"), "write it to a file:   -o my-house.xlsx"}
	case isFolder(o.file):
		return &usageError{fmt.Errorf("%s is a folder, not a name for a workbook", o.file), "name a file in it:   -o " + filepath.Join(o.file, "my-house.xlsx")}
	case o.file != "-" && !strings.EqualFold(filepath.Ext(o.file), ".xlsx"):
		return &usageError{fmt.Errorf("%s is no name for a workbook", o.file), "let it end in .xlsx:   -o " + strings.TrimSuffix(o.file, filepath.Ext(o.file)) + ".xlsx"}
	}
	how := workbook.Options{For: reader, Trade: o.trade, BlankPrices: o.blank}
	a, err := o.needed(path, &how)
	if err != nil {
		return err
	}
	var out bytes.Buffer
	if err := workbook.Write(&out, a, how); errors.Is(err, workbook.ErrNoTrade) {
		if o.trade == "" {
			return &dataError{err, "write the work into the deal file, by rooms or as lines under renovation"}
		}
		return &dataError{err, meantOne(o.trade, tradesOf(a.Model.Root.In("trade")), "ledgerboard scope "+path+"   shows the trades")}
	} else if err != nil {
		return err
	}
	if err := o.write(&o.common, out.String()); err != nil || o.file == "-" {
		return err
	}
	fmt.Fprintf(o.Err, "ledgerboard: wrote %s\n", o.file)
	return nil
}

// needed is the deal as far as the workbook shows it: a bid form needs no search.
func (o *workbookOptions) needed(path string, how *workbook.Options) (*answer.Answer, error) {
	if o.trade != "" || o.blank {
		return o.worked(path)
	}
	a, err := o.answer(path)
	if err != nil {
		return nil, err
	}
	return a, together.Run(func() (err error) {
		if how.For == workbook.Owner {
			how.Stress, err = stressed(a)
		}
		return err
	}, func() (err error) {
		how.Columns, err = o.besides(path, a)
		return err
	})
}

// stressed is how bad a deal can get: the usual grid, bad days, ranking and odds.
func stressed(a *answer.Answer) (*workbook.Stressed, error) {
	across, _ := a.Plan.UsualAcross(stress.LateWorks)
	study, err := a.Plan.Study(across, a.Plan.UsualDown())
	if err != nil {
		return nil, err
	}
	found, err := chance.Ask(context.Background(), a.Deal, chance.Options{Trials: chance.UsualTrials, Seed: chance.UsualSeed, Confidence: usualConfidence})
	return &workbook.Stressed{Study: study, Odds: found}, err
}

// usualConfidence is that of the safe offer where nothing else is asked for.
const usualConfidence = 0.8

// mostBeside is how many other choices stand beside the deal.
const mostBeside = 3

// besides are the options of the deal, each taken for all rooms, but for the one that the
// deal takes itself.
func (o *workbookOptions) besides(path string, a *answer.Answer) ([]answer.Column, error) {
	var all []answer.Column
	for _, name := range a.Deal.Options {
		if len(all) == mostBeside {
			break
		}
		x, err := o.option(path, name)
		if err != nil {
			return nil, err
		}
		if a.Deal.Mixed || !same(a, x) {
			all = append(all, answer.Column{Name: name, Answer: x})
		}
	}
	return all, nil
}

// same reports whether two deals come to the same.
func same(a, b *answer.Answer) bool {
	return a.Line("profit").Equal(b.Line("profit")) && a.Line("budget").Equal(b.Line("budget"))
}
