package cli

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"sync"

	"github.com/shopspring/decimal"
	"github.com/spf13/cobra"

	"ledgerboard/pkg/answer"
	"ledgerboard/pkg/best"
	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/diag"
	"ledgerboard/pkg/exact"
	"ledgerboard/pkg/model"
	"ledgerboard/pkg/quantity"
	"ledgerboard/pkg/report"
	"ledgerboard/pkg/solve"
)

type bestOptions struct {
	common
	cash, weeks, hours string
}

func newBest(s Streams) *cobra.Command {
	o := &bestOptions{common: common{Streams: s}}
	cmd := &cobra.Command{
		Use:   "best FILE",
		Short: "the option for each room that together bring the most profit",
		Long: `Example:

  ledgerboard best my-house.yaml
  ledgerboard best my-house.yaml --cash 85k --weeks 16 --own-hours 300

Chooses one option for each room, or leaves it as it is, so that the whole deal
brings the most profit, with whole packs, cut trim, contingency, loans and the
time it takes. The cash needed stays within what the file says there is, if it
does, or within --cash. Ties go to the cheaper, then to the shorter. Shows the
runner-up, what each limit costs, and the scope to write into the file. A search
that has looked at two million parts of a choice stops there, and says by how
much it may have missed a better one.

A room with work alone, without options, leaves no choice: it stays as the scope
of the file has it. Write the work under an option to have it chosen or left:
options: {painted: {work: {paint walls: own hands}}}.`,
		Args: files(1, 1, "best my-house.yaml"),
		RunE: func(_ *cobra.Command, args []string) error { return runBest(o, args[0]) },
	}
	o.flags(cmd)
	cmd.Flags().StringVar(&o.cash, "cash", "", "the most `money` tied up; else the file's own")
	cmd.Flags().StringVar(&o.weeks, "weeks", "", "the most `weeks` of work, waiting included")
	cmd.Flags().StringVar(&o.hours, "own-hours", "", "the most `hours` of own work")
	return cmd
}

func runBest(o *bestOptions, path string) error {
	return show(&o.common, func() (*report.BestPage, error) { return o.page(path) }, report.BestJSON, report.Best)
}

// page searches and puts together what is to be shown. The scope of the file is worked
// out meanwhile.
func (o *bestOptions) page(path string) (*report.BestPage, error) {
	text, err := o.held(path)
	if err != nil {
		return nil, err
	}
	all := text
	all.how.AllOptions = true
	d, _, err := all.read(path)
	if err != nil {
		return nil, err
	}
	if d.ByCondition() {
		return nil, &dataError{fmt.Errorf("%s values its options by the condition of the whole house, which a search room by room cannot follow", path),
			"ledgerboard compare " + path + "   sets them side by side; or say under each option what it adds, and under value what the house is worth before work"}
	}
	var own sync.WaitGroup
	var a *answer.Answer
	var offer solve.Offer
	var bad error
	limits, err := o.limits(d)
	if err != nil {
		return nil, err
	}
	var doubts diag.List
	own.Go(func() {
		if a, offer, bad = text.priced(path, "", limits.Cash); bad == nil {
			doubts, bad = text.untakenDoubts(d, a.Warnings, path)
		}
	})
	p, err := o.search(d, path, limits)
	if own.Wait(); err != nil || bad != nil {
		return nil, cmp.Or(err, bad)
	}
	o.pointToCheck(path, doubts)
	if p.Own, p.OwnOffer = a, offer; p.Found.Best == nil {
		return p, nil
	}
	if p.Found.Best.Renovation.IsZero() && !slices.ContainsFunc([]string{"lead_in", "marketing", "escrow"}, func(line string) bool { return d.Root.Given.Of(line).Number.IsPositive() }) {
		return nil, &dataError{fmt.Errorf("%s: what brings the most is to do nothing, and without work the deal takes no time", path),
			"add the time that the sale takes:   time: {marketing: 5 weeks, escrow: 1 month}"}
	}
	p.Scope, p.Stated = scopeText(p, p.Found.Best), d.StatedValues
	if by := d.ConditionsFor(); by != "" {
		p.Instead = "   or compare whole plans by sold houses, with   " + by + "   under comps"
	}
	p.Adds = slices.ContainsFunc(d.Choices(), adds)
	p.Unsaid = unsaid(p, slices.Concat(a.Warnings, doubts))
	p.Best, p.Offer, err = text.priced(path, p.Scope, p.Limits.Cash)
	if err == nil && !p.Best.Line("owner_profit").Equal(p.Found.Best.Profit) {
		err = fmt.Errorf("the search comes to a profit of %s, the file with that scope to %s: this is a mistake of the program; please report it with the file",
			p.Found.Best.Profit, p.Best.Line("owner_profit"))
	}
	return p, err
}

// adds reports whether an option of a room says what it adds to the value.
func adds(r deal.RoomChoice) bool {
	return slices.ContainsFunc(r.Options[1:], func(m *model.Member) bool { return !m.Given.Of("value_added").Number.IsZero() })
}

// unsaid are the options that the best choice passes over and that are doubted as not saying what
// they add.
func unsaid(p *report.BestPage, doubts diag.List) (out []*model.Member) {
	for i, r := range p.Rooms {
		for k, o := range r.Options {
			doubted := func(d diag.Diag) bool { return d.Code == "adds-missing" && d.Pos == o.Pos }
			if o != nil && k != p.Found.Best.Options[i] && slices.ContainsFunc(doubts, doubted) {
				out = append(out, o)
			}
		}
	}
	return out
}

// search finds the best choice of a deal and what each limit costs.
func (o *bestOptions) search(d *deal.Deal, path string, limits best.Limits) (*report.BestPage, error) {
	h, err := best.New(d)
	if err != nil {
		return nil, notSearched(err, path)
	}
	found, err := h.Find(limits)
	if err != nil {
		return nil, notSearched(err, path)
	}
	prices, err := h.Prices(limits, found)
	return &report.BestPage{Rooms: h.Rooms, Settled: d.Settled(), Limits: limits, Found: found, Prices: prices}, err
}

// held reads standard input once, for a file is read several times.
func (o *bestOptions) held(path string) (_ common, err error) {
	if path == "-" {
		_, _, err = o.text(path)
	}
	return o.common, err
}

// priced reads the file with a scope, or with its own, and finds the maximum offer within
// a limit of cash, if there is one.
func (c common) priced(path, scope string, cash *decimal.Decimal) (*answer.Answer, solve.Offer, error) {
	if scope != "" {
		c.sets = append(c.sets[:len(c.sets):len(c.sets)], "scope="+scope)
	}
	a, err := c.worked(path)
	if err != nil {
		return nil, solve.Offer{}, err
	}
	small, err := a.Model.Summary(a.Values.Of)
	if err != nil {
		return nil, solve.Offer{}, err
	}
	targets, changes := a.Deal.Targets, []exact.Change(nil)
	if cash != nil {
		if !slices.Contains(targets, "cash_to_spare") {
			targets = append(slices.Clone(targets), "cash_to_spare")
		}
		set := func(line string, x decimal.Decimal) exact.Change {
			return exact.Change{Cell: small.Find(small.Root, line), Value: x}
		}
		changes = append(changes, set("cash_available", *cash), set("cash_reserve", decimal.Zero))
	}
	offer, err := solve.MaxOffer(small, targets, changes...)
	return a, offer, err
}

// limits are those of the command, or the cash of the file.
func (o *bestOptions) limits(d *deal.Deal) (l best.Limits, err error) {
	parse := func(flag, text string, read func(string) (decimal.Decimal, error)) *decimal.Decimal {
		if text == "" {
			return nil
		}
		x, bad := read(text)
		if bad == nil && x.IsNegative() {
			bad = errors.New("it is below nothing")
		}
		if bad != nil && err == nil {
			err = &usageError{fmt.Errorf("--%s %q: %w", flag, text, bad), "for example: --cash 85k --weeks 16 --own-hours 300"}
		}
		return &x
	}
	l.Cash = parse("cash", o.cash, quantity.ParseMoney)
	l.Weeks = parse("weeks", o.weeks, weeks)
	l.OwnHours = parse("own-hours", o.hours, quantity.ParseHours)
	if given := d.Root.Given; l.Cash == nil && d.HasCash {
		x := given.Of("cash_available").Number.Sub(given.Of("cash_reserve").Number)
		l.Cash = &x
	}
	return l, err
}

// weeks reads a number of weeks, with or without the word.
func weeks(text string) (decimal.Decimal, error) {
	return quantity.ParseCount(strings.TrimSpace(strings.TrimSuffix(strings.TrimSuffix(text, "weeks"), "week")))
}

func notSearched(err error, path string) error {
	var many *best.ManyError
	switch {
	case errors.Is(err, best.ErrNoChoice):
		return &dataError{fmt.Errorf("%s: %w", path, err), "give rooms options, e.g.   options: {cosmetic: {work: ...}, full gut: {work: ...}}"}
	case errors.As(err, &many):
		return &dataError{fmt.Errorf("%s: %w", path, err), "leave out rooms whose option is settled: write their work under   work:   alone"}
	}
	return err
}

// scopeText is a choice as the deal file says it, with the rooms of settled work that stay
// as they are: a scope that is silent on them would have it done.
func scopeText(p *report.BestPage, c *best.Choice) string {
	parts := make([]string, len(p.Rooms))
	for i, r := range p.Rooms {
		name := deal.AsItIs
		if m := r.Options[c.Options[i]]; m != nil {
			name = m.Label
		}
		parts[i] = plainYAML(r.Room.Label) + ": " + plainYAML(name)
	}
	for _, r := range p.Settled {
		if !r.Done {
			parts = append(parts, plainYAML(r.Room.Label)+": "+deal.AsItIs)
		}
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// plainYAML quotes a word that would mean something else in a list of keys.
func plainYAML(s string) string {
	if strings.ContainsAny(s, ",:{}[]#&*!|>'\"%@`?-") || s != strings.TrimSpace(s) {
		return strconv.Quote(s)
	}
	return s
}
