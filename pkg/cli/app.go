package cli

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"os/signal"
	"regexp"
	"runtime/debug"
	"slices"
	"strings"
	"sync"

	"github.com/spf13/cobra"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/report"
)

// Streams are what a verb reads from and writes to.
type Streams struct {
	In       io.Reader
	Out, Err io.Writer
	// Terminal and ErrTerminal say whether Out and Err are one.
	Terminal, ErrTerminal bool
	// Env looks an environment variable up.
	Env func(string) string
	// Interruptible returns a context that ends when the user interrupts, for a verb that
	// has something to tidy up, and what ends the watch; nil for one that never does.
	Interruptible func() (context.Context, func())
}

// System returns the streams of the process.
func System() Streams {
	return Streams{os.Stdin, os.Stdout, os.Stderr, terminal(os.Stdout), terminal(os.Stderr), os.Getenv, interruptible}
}

// terminal takes a device of characters for one, but for those that only swallow or refuse.
func terminal(f *os.File) bool {
	info, err := f.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	for _, name := range []string{os.DevNull, "/dev/full"} {
		if other, err := os.Stat(name); err == nil && os.SameFile(info, other) {
			return false
		}
	}
	return true
}

// interruptible takes interrupts over from whoever would end the process at once.
func interruptible() (context.Context, func()) {
	signal.Reset(os.Interrupt)
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	return ctx, stop
}

// interruptible is the context of the streams.
func (s Streams) interruptible() (context.Context, func()) {
	if s.Interruptible == nil {
		return context.Background(), func() {}
	}
	return s.Interruptible()
}

// common are the options of every verb that reads a deal.
type common struct {
	Streams
	sets  []string
	how   deal.Options
	json  bool
	color string
	again []byte   // standard input, where it was read already
	files []string // the files that were read
}

// Run carries out a command line and returns its exit code.
func Run(args []string, s Streams) int {
	root := Command(s)
	root.SetArgs(labelled(args))
	err := root.Execute()
	var told *toldError
	if err != nil && !errors.As(err, &told) {
		tellError(s.Err, err)
	}
	return exitCode(err)
}

// Interrupt says that the user interrupted, for a verb with nothing to tidy up, and returns
// the exit code.
func Interrupt(s Streams) int {
	tell(s.Err, "%s", wasInterrupted)
	return Interrupted
}

// wasInterrupted is what is told then.
const wasInterrupted = "interrupted"

// tellError tells of an error, with what would do.
func tellError(w io.Writer, err error) {
	tell(w, "error: %v", err)
	var hinted interface{ tip() string }
	if errors.As(err, &hinted) && hinted.tip() != "" {
		tell(w, "hint: %s", hinted.tip())
	}
}

// labelled are the words of a command line as the library of options takes them: a label
// of a page that begins with a dash and a blank, as "- selling", is no option.
func labelled(args []string) []string {
	out := slices.Clone(args)
	if len(out) > 0 && out[0] == "why" {
		for i := range out {
			out[i] = strings.TrimPrefix(out[i], "- ")
		}
	}
	return out
}

// Command returns the whole command tree.
func Command(s Streams) *cobra.Command {
	root := &cobra.Command{
		Use:   "ledgerboard",
		Short: "what to bid for a house to renovate and resell, and why",
		Long: `Example:

  ledgerboard new my-house.yaml     a starter deal file; edit it
  ledgerboard check my-house.yaml   what is wrong or doubtful in it
  ledgerboard bid my-house.yaml     whether to bid, how high, with how much cash

ledgerboard reads one deal file and answers whether to bid on a house to
renovate and resell, up to what price, with how much cash and in which month,
and why. It informs; it does not advise.`,
		Version:      version(),
		SilenceUsage: true, SilenceErrors: true,
		Args: func(cmd *cobra.Command, args []string) error {
			if len(args) == 0 {
				return nil
			}
			return unknownVerb(cmd, args[0])
		},
		RunE: func(cmd *cobra.Command, _ []string) error { return cmd.Help() },
	}
	root.SetVersionTemplate("{{.Name}} {{.Version}}\n")
	root.SetIn(s.In)
	root.SetOut(s.Out)
	root.SetErr(s.Err)
	root.SetFlagErrorFunc(func(cmd *cobra.Command, err error) error {
		return &usageError{plainly(cmd, err), cmd.CommandPath() + " --help lists what it takes"}
	})
	root.CompletionOptions.HiddenDefaultCmd = true
	root.SuggestionsMinimumDistance = 2 // letters that may be wrong in a verb
	root.AddCommand(newNew(s), newCheck(s), newBid(s), newCash(s), newComps(s), newScope(s), newBuy(s), newPrices(s), newCompare(s), newBest(s), newStress(s), newOdds(s), newWorkbook(s), newWhy(s), newLines(s), newExitCodes())
	for _, verb := range root.Commands() {
		onceEach(verb)
	}
	return root
}

// refused is how the library of options tells of a value that an option does not take.
var refused = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?s)^invalid argument (".*") for "(?:-\w, )?--(\S+)" flag: `)
})

// otherSide is what else may be meant by a second axis.
var otherSide = map[string]string{"across": "; the other side of the grid is --down", "down": "; the other side of the grid is --across"}

// plainly tells of a value that an option does not take in plain words.
func plainly(cmd *cobra.Command, err error) error {
	m := refused().FindStringSubmatch(err.Error())
	if m == nil {
		return err
	}
	switch {
	case errors.Is(err, errTwice):
		return fmt.Errorf("--%s is given twice, the second time as %s%s", m[2], m[1], otherSide[m[2]])
	case errors.Is(err, errNothing):
		return fmt.Errorf("--%s has nothing behind it", m[2])
	}
	want := "nothing behind it, true or false"
	if f := cmd.Flags().Lookup(m[2]); f != nil {
		want = cmp.Or(map[string]string{"int": "a whole number", "uint64": "a whole number from 0", "trials": trialsWanted}[f.Value.Type()], want)
	}
	return fmt.Errorf("--%s %s: want %s", m[2], m[1], want)
}

// version is that of the build: of the module where it was installed by version,
// else that which the version control stamped, with the revision.
func version() string {
	info, ok := debug.ReadBuildInfo()
	if !ok || info.Main.Version == "" || info.Main.Version == "(devel)" {
		return "of no known version"
	}
	return info.Main.Version
}

func unknownVerb(cmd *cobra.Command, verb string) error {
	e := &usageError{err: fmt.Errorf("unknown verb %q", verb), hint: "ledgerboard --help lists the verbs"}
	if near := cmd.SuggestionsFor(verb); len(near) > 0 {
		e.hint = "did you mean " + near[0] + "?"
	}
	return e
}

func newExitCodes() *cobra.Command {
	return &cobra.Command{Use: "exit-codes", Short: "what the exit codes mean", Long: ExitCodes()}
}

// flags adds the options that every verb with a deal has.
func (c *common) flags(cmd *cobra.Command) {
	c.setting(cmd)
	c.looks(cmd)
}

func (c *common) setting(cmd *cobra.Command) {
	cmd.Flags().StringArrayVar(&c.sets, "set", nil, "`path=value` in place of the file's; may be repeated")
}

func (c *common) looks(cmd *cobra.Command) {
	cmd.Flags().BoolVar(&c.json, "json", false, "write one JSON object instead of a page")
	cmd.Flags().StringVar(&c.color, "color", "auto", "colour: `when` is auto, always or never")
}

// style decides once whether there is colour.
func (c *common) style() (report.Style, error) {
	switch c.color {
	case "always":
		return report.Style{Color: true}, nil
	case "never":
		return report.Style{}, nil
	case "auto":
		on := c.Terminal && c.Env("NO_COLOR") == "" && c.Env("TERM") != "dumb"
		return report.Style{Color: on}, nil
	}
	return report.Style{}, &usageError{fmt.Errorf("--color %q: want auto, always or never", c.color), ""}
}

// files checks how many files a verb was given.
func files(least, most int, example string) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		switch {
		case len(args) < least:
			return &usageError{fmt.Errorf("%s needs %s", cmd.Name(), strings.TrimPrefix(cmd.Use, cmd.Name()+" ")), "for example: ledgerboard " + example}
		case most >= 0 && len(args) > most:
			return &usageError{fmt.Errorf("%s takes no %q", cmd.Name(), args[most]), "for example: ledgerboard " + example}
		}
		return nil
	}
}

// inQuotes has the hint say how several words are given as one, where the last of so many
// arguments may be words.
func inQuotes(most int, check cobra.PositionalArgs) cobra.PositionalArgs {
	return func(cmd *cobra.Command, args []string) error {
		err := check(cmd, args)
		if err == nil || len(args) <= most {
			return err
		}
		line := strings.Join(append([]string{cmd.CommandPath()}, args[:most-1]...), " ")
		return &usageError{err, fmt.Sprintf("put quotes around several words:   %s %q", line, strings.Join(args[most-1:], " "))}
	}
}
