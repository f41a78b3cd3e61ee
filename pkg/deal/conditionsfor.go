package deal

import (
	"fmt"
	"strings"

	"ledgerboard/pkg/comps"
)

// ConditionsFor is the key that says what condition each option leaves the house in, with words to
// show how, where sold houses say the value and do not follow the options yet; "" otherwise.
func (d *Deal) ConditionsFor() string {
	_, stated := d.Root.Given.Look("after_repair_value")
	_, before := d.Root.Given.Look("value_before_work")
	if d.Comps == nil || d.Comps.Value == nil || d.Comps.Conditions || stated || before || len(d.Options) < 2 {
		return ""
	}
	words := comps.Conditions()
	var out []string
	for i, name := range d.Options {
		out = append(out, fmt.Sprintf("%s: %s", name, words[max(0, len(words)-len(d.Options)+i)]))
	}
	return "condition by option: {" + strings.Join(out, ", ") + "}"
}
