package cli_test

import (
	"encoding/json"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/rogpeppe/go-internal/testscript"

	"ledgerboard/pkg/report"
)

// jsonHas checks that a file is one JSON object and that it has the keys, each a
// path such as results.months.net_cash; path=value checks the value as written.
func jsonHas(ts *testscript.TestScript, not bool, args []string) {
	if not || len(args) == 0 {
		ts.Fatalf("usage: json file path[=value]...")
	}
	d := json.NewDecoder(strings.NewReader(ts.ReadFile(args[0])))
	d.UseNumber()
	var all map[string]any
	ts.Check(d.Decode(&all))
	if d.More() {
		ts.Fatalf("%s holds more than one JSON object", args[0])
	}
	for _, arg := range args[1:] {
		path, want, valued := strings.Cut(arg, "=")
		got, ok := find(all, path)
		if !ok {
			ts.Fatalf("there is no %s", path)
		}
		if text, _ := json.Marshal(got); valued && strings.Trim(string(text), `"`) != want {
			ts.Fatalf("%s is %s, not %s", path, text, want)
		}
	}
}

func find(v any, path string) (any, bool) {
	for _, key := range strings.Split(path, ".") {
		if list, ok := v.([]any); ok { // its items count from 0
			i, err := strconv.Atoi(key)
			if err != nil || i < 0 || i >= len(list) {
				return nil, false
			}
			v = list[i]
			continue
		}
		group, ok := v.(map[string]any)
		if !ok {
			return nil, false
		}
		if v, ok = group[key]; !ok {
			return nil, false
		}
	}
	return v, true
}

// narrow checks that every line of files fits a page.
func narrow(ts *testscript.TestScript, not bool, args []string) {
	for _, name := range args {
		for i, line := range strings.Split(ts.ReadFile(name), "\n") {
			if n := utf8.RuneCountInString(line); n > report.Width {
				ts.Fatalf("%s:%d: %d columns: %s", name, i+1, n, line)
			}
		}
	}
}
