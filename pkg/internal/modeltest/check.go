package modeltest

import (
	"flag"
	"fmt"
	"math/rand/v2"
	"strconv"
	"sync/atomic"
	"testing"

	"pgregory.net/rapid"
)

// Check tries a property on so many random deals, a twentieth of them with -short,
// and returns when all are done. The deals come in parts that run side by side;
// once one part has failed, the others stop looking. A failing part names itself
// and a seed: -run=Test…/random/part_07 -rapid.seed=… draws the deal again.
func Check(t *testing.T, deals int, prop func(*rapid.T)) {
	t.Helper()
	each := 100 // what rapid tries by default
	if f := flag.Lookup("rapid.checks"); f != nil {
		each, _ = strconv.Atoi(f.Value.String()) // a flag that holds a whole number
	}
	if testing.Short() { // rapid then tries a fifth
		deals, each = max(1, deals/20), max(1, each/5)
	}
	var failed atomic.Bool
	t.Run("random", func(t *testing.T) {
		for part := range (deals + each - 1) / each {
			t.Run(fmt.Sprintf("part %02d", part), func(t *testing.T) {
				t.Parallel()
				if failed.Load() {
					return
				}
				defer func() {
					if t.Failed() {
						failed.Store(true)
					}
				}()
				most := min(each, deals-part*each)
				tried, failing := 0, false
				rapid.Check(t, func(t *rapid.T) {
					if tried == most && !failing { // rapid tries as many in the last part as in others
						return
					}
					rapid.SliceOfN(rapid.Bool(), part, part).Draw(t, "a part draws deals of its own, with one seed too")
					tried, failing = tried+1, true // once one fails, rapid tries it again to make it small
					prop(t)
					failing = t.Failed()
				})
			})
		}
	})
}

// draws are the bytes that the draws of one try are made of, 8 for most; a try that takes
// more is skipped.
const draws = 1 << 17

// Few tries a property a few times where once takes long; always with the same draws. A
// try that fails is not drawn anew, as an example of a generator would be.
func Few(t *testing.T, times int, prop func(*rapid.T)) {
	t.Helper()
	for seed := range times {
		if t.Failed() {
			return
		}
		made := make([]byte, draws)
		rand.NewChaCha8([32]byte{byte(seed)}).Read(made)
		t.Run(fmt.Sprintf("try %02d", seed), func(t *testing.T) { rapid.MakeFuzz(prop)(t, made) })
	}
}
