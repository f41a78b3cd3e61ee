package cli

import (
	"fmt"
	"io"

	"ledgerboard/pkg/diag"
)

// tell writes what is said beside the results, folded to the width of a page.
func tell(w io.Writer, format string, args ...any) {
	fmt.Fprint(w, diag.Fold("ledgerboard: ", "             ", fmt.Sprintf(format, args...)))
}
