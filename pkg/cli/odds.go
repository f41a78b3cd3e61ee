package cli

import (
	"context"
	"errors"
	"fmt"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/chance"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/report"
)

type oddsOptions struct {
	common
	trials     int
	seed       uint64
	confidence string
	csv        string
	force      bool
}

// The fewest and the most trials.
const (
	fewestTrials = 1000
	mostTrials   = 100_000_000
)

// The counts of trials in words.
var (
	trialsTaken  = counted(fewestTrials) + " to " + counted(mostTrials)
	trialsWanted = "a whole number, " + trialsTaken
)

// A trialCount is a count of trials as people write it: 50000, 50,000 or 50k.
type trialCount int

func (n *trialCount) String() string { return strconv.Itoa(int(*n)) }
func (n *trialCount) Type() string   { return "trials" }

func (n *trialCount) Set(text string) error {
	text = strings.TrimSpace(text)
	x, err := quantity.ParseMoney(text)
	if err != nil || !x.IsInteger() || strings.ContainsAny(text, "$ ") || !x.Equal(decimal.NewFromInt(x.IntPart())) {
		return errors.New("want " + trialsWanted)
	}
	*n = trialCount(x.IntPart())
	return nil
}

func newOdds(s Streams) *cobra.Command {
	o := &oddsOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "odds FILE",
		Short: "how likely a loss or a missed target is, and a safe offer",
		Long: `Example:

  ledgerboard odds my-house.yaml
  ledgerboard odds my-house.yaml --confidence 90% --trials 200000
  ledgerboard odds my-house.yaml --csv trials.csv

Plays the deal through thousands of times, each time with another sale price,
overrun and delay, drawn from the ranges of the deal file or, where it states
none, from common practice. Tells how the profit, the cash needed and the months
come out, how often money is lost or a target missed, and the safe offer: the
highest price up to which all targets hold with the confidence asked for. The
same seed gives the same figures.`,
		Args: files(1, 1, "odds my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error {
			return runOdds(o, args[0])
		},
	}
	o.flags(cmd)
	o.trials = chance.UsualTrials
	cmd.Flags().Var((*trialCount)(&o.trials), "trials", "how many `trials`, "+trialsTaken)
	cmd.Flags().Uint64Var(&o.seed, "seed", chance.UsualSeed, "which trials: a whole `number` from 0")
	cmd.Flags().StringVar(&o.confidence, "confidence", "80%", "the `part` held by the safe offer")
	cmd.Flags().StringVar(&o.csv, "csv", "", "write all trials to that `file`, a row for each")
	cmd.Flags().BoolVar(&o.force, "force", false, "write over an existing file")
	return cmd
}

func runOdds(o *oddsOptions, path string) error {
	return show(&o.common, func() (*report.OddsPage, error) { return o.page(path) }, report.OddsJSON, report.Odds)
}

// page plays the deal through.
func (o *oddsOptions) page(path string) (*report.OddsPage, error) {
	how, err := o.how()
	if err != nil {
		return nil, err
	}
	d, doubts, err := o.read(path)
	if err != nil {
		return nil, err
	}
	a, err := answer.Doubted(d, doubts)
	if err != nil {
		return nil, err
	}
	ctx, done := o.interruptible()
	defer done()
	return o.play(ctx, &report.OddsPage{Answer: a}, how)
}

// how is what the options ask for.
func (o *oddsOptions) how() (chance.Options, error) {
	how := chance.Options{Trials: o.trials, Seed: o.seed}
	if o.trials < fewestTrials || o.trials > mostTrials {
		return how, &usageError{fmt.Errorf("--trials is %d", o.trials), "it takes " + trialsTaken}
	}
	said := strings.TrimSpace(o.confidence)
	if _, err := strconv.Atoi(said); err == nil {
		said += "%" // 95 can be nothing else
	}
	x, err := quantity.ParsePercent(said)
	if how.Confidence = x.InexactFloat64(); err != nil || how.Confidence < 0.01 || how.Confidence > 0.99 {
		return how, &usageError{fmt.Errorf("--confidence is %q", o.confidence), "it takes 1% to 99%, e.g. --confidence 90%"}
	}
	if o.force && o.csv == "" {
		return how, &usageError{errors.New("--force is for a file of trials"), "name it with   --csv trials.csv"}
	}
	if o.csv == "-" {
		return how, &usageError{errors.New("--csv needs the name of a file"), "for example: --csv trials.csv"}
	}
	return how, nil
}

// play works the odds out, writes the trials where they are wanted, and says how far it has
// come where that takes long.
func (o *oddsOptions) play(ctx context.Context, p *report.OddsPage, how chance.Options) (*report.OddsPage, error) {
	bar := newProgress(o.Streams, o.trials)
	var trials *trialsFile
	if o.csv != "" {
		err := o.spares(o.csv)
		if err != nil {
			return nil, err
		}
		if trials, err = newTrialsFile(o.csv, o.force); err != nil {
			return nil, err
		}
		defer trials.drop()
	}
	how.Seen = func(s chance.Shown) error {
		bar.add(s.Trials())
		if trials == nil {
			return nil
		}
		return trials.add(s)
	}
	found, err := chance.Ask(ctx, p.Answer.Deal, how)
	bar.clear()
	p.Odds = found
	switch {
	case found != nil && errors.Is(err, context.Canceled):
		return nil, o.interrupted(p)
	case err != nil:
		return nil, err
	case trials == nil:
		return p, nil
	}
	if err := trials.keep(); err != nil {
		return nil, err
	}
	tell(o.Err, "wrote %s, %s trials", o.csv, counted(o.trials))
	return p, nil
}

// interrupted says what was had when it was interrupted.
func (o *oddsOptions) interrupted(p *report.OddsPage) error {
	text := wasInterrupted
	if p.Trials > 0 {
		text = fmt.Sprintf("%s after %s of %s trials: %s", wasInterrupted, counted(int(p.Trials+p.None)), counted(o.trials), p.SoFar())
	}
	if o.csv != "" {
		text += fmt.Sprintf("; %s is not written", o.csv)
	}
	tell(o.Err, "%s", text)
	return &toldError{Interrupted}
}

// counted is a number with commas.
func counted(n int) string { return quantity.FormatCount(decimal.NewFromInt(int64(n)), 0) }
