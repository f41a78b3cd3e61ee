package diag

import (
	"regexp"
	"strings"
	"sync"
)

// quoted are names in double quotes.
var quoted = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`"[^"]*"`) })

// Fold breaks head and text at spaces into lines that fit a page, each with its end;
// later lines begin with next. Names in double quotes, and what stands between three
// spaces, are broken only if they fit on no line.
func Fold(head, next, text string) string {
	var b strings.Builder
	wrapBy(&b, head, next, text, func(s string, room int) string {
		return quoted().ReplaceAllStringFunc(whole(s, room), func(name string) string {
			if width(name) > room {
				return name
			}
			return strings.ReplaceAll(name, " ", glue)
		})
	})
	return b.String()
}
