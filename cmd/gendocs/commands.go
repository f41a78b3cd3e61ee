package main

import (
	"bytes"
	"fmt"
	"strings"

	"ledgerboard/pkg/cli"
)

const commandsIntro = `# The verbs

What ` + "`ledgerboard VERB --help`" + ` says. Results go to standard output, all else to
standard error, so a page or JSON can be piped on.
`

// commandsPage prints the help of the program and of each of its verbs.
func commandsPage(string) (string, error) {
	streams := cli.Streams{Env: func(string) string { return "" }}
	var b strings.Builder
	b.WriteString(commandsIntro)
	if err := help(&b, streams, "ledgerboard", "--help"); err != nil {
		return "", err
	}
	for _, c := range cli.Command(streams).Commands() {
		args := []string{c.Name(), "--help"}
		if !c.Runnable() {
			args = []string{"help", c.Name()} // a topic
		}
		if c.Name() == "help" || c.Hidden {
			continue
		}
		if err := help(&b, streams, c.Name(), args...); err != nil {
			return "", err
		}
	}
	return b.String(), nil
}

func help(b *strings.Builder, s cli.Streams, title string, args ...string) error {
	var out, wrong bytes.Buffer
	s.In, s.Out, s.Err = strings.NewReader(""), &out, &wrong
	if code := cli.Run(args, s); code != cli.Fine {
		return fmt.Errorf("%v: exit code %d: %s", args, code, wrong.String())
	}
	fmt.Fprintf(b, "\n## %s\n\n```text\n%s\n```\n", title, strings.TrimRight(out.String(), "\n"))
	return nil
}
