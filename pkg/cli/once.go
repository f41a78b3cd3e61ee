package cli

import (
	"errors"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// A once is the value of an option that may be given once: a second would win in silence; a switch
// stays on.
type once struct {
	pflag.Value
	given bool
}

var (
	errTwice   = errors.New("given twice")
	errNothing = errors.New("nothing behind it")
)

// Set refuses a second value, and none where words are wanted, as of an empty variable of a
// shell.
func (o *once) Set(s string) error {
	switch {
	case o.given && o.Type() != "bool":
		return errTwice
	case strings.TrimSpace(s) == "" && o.Type() == "string":
		return errNothing
	}
	o.given = true
	return o.Value.Set(s)
}

// onceEach lets every option of a verb be given once, but for those that may be repeated.
func onceEach(cmd *cobra.Command) {
	cmd.Flags().VisitAll(func(f *pflag.Flag) {
		if _, many := f.Value.(pflag.SliceValue); !many {
			f.Value = &once{Value: f.Value}
		}
	})
}
