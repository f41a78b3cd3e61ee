// Package conform is the suite that every reader of the model passes: it takes what a
// reader must do with a deal and has it done with all scenarios, the worked deals, random
// deals and random houses, in which every option occurs.
package conform

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"pgregory.net/rapid"

	"ledgerboard/pkg/deal"
	"ledgerboard/pkg/internal/modeltest"
	"ledgerboard/pkg/model"
)

// root is the module's, from a package two below it.
const root = "../../"

// A Deal is one that a reader is tried on.
type Deal struct {
	Model   *model.Model
	Targets []string // the stated targets, by line
}

// Effort is how often a reader is tried.
type Effort struct {
	Random, Houses int // random deals and houses; a twentieth of them with -short
	Times          int // with each scenario; a few times less with those of thousands of lines
}

// Large is how many lines a scenario has that is tried less often.
const Large = 5000

// Run has a reader pass the suite. Done, if there is one, is called after each kind of
// deal, such as to require that enough was compared.
func Run(t *testing.T, e Effort, passes func(*rapid.T, Deal), done func(*testing.T)) {
	each := func(name string, run func(t *testing.T)) {
		t.Run(name, func(t *testing.T) {
			run(t)
			if done != nil && !t.Failed() {
				done(t)
			}
		})
	}
	drawn := func(n int, draw func(*rapid.T) *modeltest.Draw) func(*testing.T) {
		return func(t *testing.T) {
			modeltest.Check(t, n, func(t *rapid.T) {
				d := draw(t)
				passes(t, Deal{bound(t, d.Deal), d.Targets})
			})
		}
	}
	if e.Random > 0 {
		each("deals", drawn(e.Random, modeltest.Random))
	}
	if e.Houses > 0 {
		each("houses", drawn(e.Houses, modeltest.RandomHouse))
	}
	each("worked", func(t *testing.T) {
		deals, err := modeltest.ReadWorked(root + "testdata/worked-deals.json")
		require.NoError(t, err)
		require.NotEmpty(t, deals)
		for _, w := range deals {
			m := bound(t, w.Deal.Member())
			modeltest.Few(t, 1, func(t *rapid.T) { passes(t, Deal{m, nil}) })
		}
	})
	files, err := filepath.Glob(root + "scenarios/*.yaml")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, f := range files {
		each(strings.TrimSuffix(filepath.Base(f), ".yaml"), func(t *testing.T) {
			d := Scenario(t, f)
			times := e.Times
			if len(d.Model.Cells) >= Large {
				times = (times + 9) / 10
			}
			modeltest.Few(t, times, func(t *rapid.T) { passes(t, Deal{d.Model, d.Targets}) })
		})
	}
}

// Scenario reads a deal file that holds no mistake.
func Scenario(t require.TestingT, file string) *deal.Deal {
	text, err := os.ReadFile(file)
	require.NoError(t, err)
	d, problems := deal.Read(file, text)
	require.NotNil(t, d, problems)
	return d
}

func bound(t require.TestingT, d *model.Member) *model.Model {
	doc, err := model.Standard()
	require.NoError(t, err)
	m, err := model.Bind(doc, d)
	require.NoError(t, err)
	return m
}
