package deal

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"sync"
)

// doerWords are what people say in place of the words for who does work.
var doerWords = map[string][]string{
	"own hands": {"me", "mine", "my", "myself", "self", "i", "us", "we", "ours", "ourselves", "own", "owner", "diy"},
	"hired":     {"contractor", "subcontractor", "sub", "pro", "trade", "them", "hire"},
}

// quoteFrom is a quote and who gave it, in one line.
var quoteFrom = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(?i)^(\$?\d[\d,.]*k?) (?:from|by) (\S.*)$`)
})

// doerHint is the way out of a word that does not say who does work. Behind the name of
// the work a quote may stand as well.
func doerHint(f *Field, text, hint string) string {
	for _, does := range f.Choices {
		if slices.Contains(doerWords[does], plainKey(text)) {
			hint = fmt.Sprintf("did you mean %q? the words are: %s", does, strings.Join(f.Choices, ", "))
		}
	}
	if f.Path != "<work>.by" || f.said == "" {
		return hint
	}
	if m := quoteFrom().FindStringSubmatch(text); m != nil {
		return fmt.Sprintf("write   %s: {quote: %s, from: %s}", f.said, m[1], m[2])
	}
	return hint + "; or a quote, as $900 or {quote: $900, from: Bob}"
}
