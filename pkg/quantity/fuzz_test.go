package quantity

import (
	"testing"
)

// fuzz: no text makes a parser panic; a refusal points into the text; what is read
// prints and reads again as the same value.
func fuzz(f *testing.F, name string) {
	for _, ex := range examples(f, name) {
		f.Add(ex.input)
	}
	k := kinds[name]
	f.Fuzz(func(t *testing.T, text string) {
		v, err := k.parse(text)
		if err != nil {
			checkError(t, text, err)
			return
		}
		checkRoundTrip(t, k, v)
	})
}

func FuzzParseMoney(f *testing.F)    { fuzz(f, "money") }
func FuzzParseRate(f *testing.F)     { fuzz(f, "rate") }
func FuzzParsePercent(f *testing.F)  { fuzz(f, "percent") }
func FuzzParseDuration(f *testing.F) { fuzz(f, "duration") }
func FuzzParseCount(f *testing.F)    { fuzz(f, "count") }
func FuzzParseHours(f *testing.F)    { fuzz(f, "hours") }
func FuzzParseStep(f *testing.F)     { fuzz(f, "step") }
func FuzzParseDate(f *testing.F)     { fuzz(f, "date") }
func FuzzParseYesNo(f *testing.F)    { fuzz(f, "yesno") }
func FuzzParseLength(f *testing.F)   { fuzz(f, "length") }
func FuzzParseSize(f *testing.F)     { fuzz(f, "size") }
func FuzzParseOpenings(f *testing.F) { fuzz(f, "openings") }
func FuzzParseArea(f *testing.F)     { fuzz(f, "area") }
func FuzzParseDays(f *testing.F)     { fuzz(f, "days") }
func FuzzParsePounds(f *testing.F)   { fuzz(f, "pounds") }
func FuzzParseVolume(f *testing.F)   { fuzz(f, "volume") }
func FuzzParsePitch(f *testing.F)    { fuzz(f, "pitch") }
func FuzzParsePer(f *testing.F)      { fuzz(f, "per") }
func FuzzParsePack(f *testing.F)     { fuzz(f, "pack") }
