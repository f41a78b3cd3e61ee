package cli

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/report"
	"ledgerboard/pkg/stress"
)

type stressOptions struct {
	common
	across, down, late string
	lateAsked          bool // it is on the command line
}

func newStress(s Streams) *cobra.Command {
	o := &stressOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "stress FILE",
		Short: "how bad it can get: late, over the bids, on bad days",
		Long: `Example:

  ledgerboard stress my-house.yaml
  ledgerboard stress my-house.yaml --late both
  ledgerboard stress my-house.yaml --across 'sale price=$320k..$360k/8'

Sets months late against spending over the bids: profit, return, cash and the
maximum offer at each. Runs bad days side by side, those of the deal file and
the usual ones, and ranks what may come out otherwise by what it does to your
profit. With --across or --down it writes that grid alone: amounts, shares,
rates, hours and lengths of time by their paths as --set takes them, or overrun,
extra work, late sale, sale price and months late, with a list of figures or
from..to/steps. All else, such as dates, words, options and sizes, is tried with
--set, once per value.`,
		Args: files(1, 1, "stress my-house.yaml"),
		RunE: func(cmd *cobra.Command, args []string) error {
			o.lateAsked = cmd.Flags().Changed("late")
			return runStress(o, args[0])
		},
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&o.across, "across", "", "`axis` across the grid; else months late")
	cmd.Flags().StringVar(&o.down, "down", "", "`axis` down the grid; else the overrun over the bids")
	cmd.Flags().StringVar(&o.late, "late", "works", "`where`: works, sale or both")
	return cmd
}

func runStress(o *stressOptions, path string) error {
	return show(&o.common, func() (*report.StressPage, error) { return o.page(path) }, report.StressJSON, report.Stress)
}

// page works out what is asked for.
func (o *stressOptions) page(path string) (*report.StressPage, error) {
	d, doubts, err := o.read(path)
	if err != nil {
		return nil, err
	}
	p := &report.StressPage{Asked: o.across != "" || o.down != ""}
	work := answer.Of
	if p.Asked {
		work = answer.Planned
	}
	if p.Answer, err = work(d, doubts); err != nil {
		return nil, err
	}
	across, down, err := o.axes(p.Answer.Plan)
	if err != nil {
		return nil, err
	}
	s := &stress.Study{}
	if p.Asked {
		if clash, x, y := p.Answer.Plan.Clash(across, down); clash != nil {
			return nil, &usageError{fmt.Errorf("%s %s with %s %s: %s", across.Label, across.Says(x), down.Label, down.Says(y), clash.Message), "vary them less far, or one at a time"}
		}
		s.Grid, err = p.Answer.Plan.Grid(across, down)
	} else {
		s, err = p.Answer.Plan.Study(across, down)
	}
	switch p.Study = s; {
	case errors.Is(err, stress.ErrSame):
		return nil, &usageError{err, "vary two inputs, for example: --across 'months late=0..6 months/6' --down 'overrun=0%..45%/9'"}
	case errors.Is(err, stress.ErrTooLong):
		return nil, &dataError{err, "vary it less far"}
	}
	return p, err
}

// axes are the sides of the grid.
func (o *stressOptions) axes(p *stress.Plan) (across, down stress.Axis, err error) {
	across, ok := p.UsualAcross(stress.Late(o.late))
	if !ok {
		return across, down, o.never()
	}
	if o.across != "" {
		across, err = o.varied(p, "--across", o.across)
	}
	if down = p.UsualDown(); o.down != "" && err == nil {
		down, err = o.varied(p, "--down", o.down)
	}
	late := o.across == "" || isLate(o.across) || isLate(o.down)
	if err == nil && across.Apart(down) != nil {
		switch { // the side that is not asked for gives way
		case o.down == "":
			down, _ = p.UsualAcross(stress.Late(o.late))
			late = true
		case o.across == "":
			across = p.UsualDown()
			late = isLate(o.down)
		}
	}
	if err == nil && o.lateAsked && !late {
		err = &usageError{fmt.Errorf("--late %s says where months late fall, and no side of the grid is months late", o.late),
			"leave it out, or vary them, for example: --across '" + monthsLate + "=0..6 months/6'"}
	}
	return across, down, err
}

func (o *stressOptions) never() error {
	return &usageError{fmt.Errorf("--late %q: want works, sale or both", o.late), "for example: --late both"}
}

// monthsLate is what the months beyond the plan are called on the command line.
const monthsLate = "months late"

// isLate reports whether an axis is that of the months beyond the plan.
func isLate(axis string) bool {
	key, _, _ := strings.Cut(axis, "=")
	return strings.EqualFold(strings.TrimSpace(key), monthsLate)
}

// varied is an axis that the command asks for.
func (o *stressOptions) varied(p *stress.Plan, flag, text string) (stress.Axis, error) {
	_, list, _ := strings.Cut(text, "=")
	late, read := isLate(text), text
	if late {
		read = "late sale  =" + list // as long as what it stands for, so that places fit
	}
	in, values, found := p.Deal.Vary(flag, read)
	if found.HasErrors() {
		if late { // it goes by its own name
			for i := range found {
				found[i].Message = strings.ReplaceAll(found[i].Message, "late sale", monthsLate)
				found[i].Hint = strings.ReplaceAll(found[i].Hint, "late sale", monthsLate)
			}
		}
		return stress.Axis{}, o.unvaried(flag, text, found)
	}
	if late {
		a, ok := p.MonthsLate(stress.Late(o.late), values)
		if !ok {
			return a, o.never()
		}
		return a, nil
	}
	return stress.Varying(in.Path, in, values), nil
}

// unvaried tells what is wrong with what is to vary.
func (o *stressOptions) unvaried(flag, text string, found diag.List) error {
	if err := diag.Render(o.Err, found.Errors(), map[string]string{flag: text}); err != nil {
		return err
	}
	return &toldError{BadUsage}
}
