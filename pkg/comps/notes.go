package comps

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/quantity"
)

// OthersSay begins what is said of Off.
func (r *Row) OthersSay() string {
	if r.Fewer {
		return "the others that lie together say"
	}
	return "the others say"
}

// The customary limits: net 15%, gross 25% of the price, a former guideline that
// Fannie Mae withdrew on 2014-12-16; 10% for one line, a habit (from memory). Sales
// of more than 12 months ago want a reason, of more than six a word (Fannie Mae
// Selling Guide, 2005 to 2009).
const (
	customaryNet   = 0.15
	customaryGross = 0.25
	customaryLine  = 0.10
	usualMonths    = 12
	farOff         = 0.25 // from what the others say; a usual scatter, common practice, no source
)

// beyond is a share in percent, with as many decimals as tell it from the bound that it is
// beyond.
func beyond(share, bound float64) string {
	for places := 0; ; places++ {
		s := strconv.FormatFloat(100*share, 'f', places, 64)
		if places == 6 || s != strconv.FormatFloat(100*bound, 'f', places, 64) {
			return s + "%"
		}
	}
}

func amber(r *Row) (out []string) {
	if math.Abs(r.Net) > customaryNet {
		out = append(out, fmt.Sprintf("net adjustment %s, beyond the former guideline of 15%%", beyond(math.Abs(r.Net), customaryNet)))
	}
	if r.Gross > customaryGross {
		out = append(out, fmt.Sprintf("gross adjustment %s, beyond the former guideline of 25%%", beyond(r.Gross, customaryGross)))
	}
	var lines []string
	for _, l := range r.Lines {
		if math.Abs(l.Share) > customaryLine {
			lines = append(lines, cmp.Or(l.Extra, l.Line.String()))
		}
	}
	if len(lines) > 0 {
		out = append(out, "more than the customary 10% for "+strings.Join(lines, ", "))
	}
	switch months := math.Round(r.Months); {
	case months > usualMonths:
		out = append(out, fmt.Sprintf("sold %.0f months before, more than the usual 12", months))
	case r.Months > usualMonths:
		out = append(out, "sold just over the usual 12 months before")
	}
	if r.FarOff {
		out = append(out, fmt.Sprintf("%s %.0f%% %s, more than 25%% apart", r.OthersSay(), 100*math.Abs(r.Off), map[bool]string{true: "more", false: "less"}[r.Off > 0]))
	}
	return out
}

// usualSales is how many closed sales a value usually takes (Fannie Mae Selling
// Guide, comparable selection).
const usualSales = 3

func (c *Choice) notes(v *Value) (out []string) {
	if n := len(v.Rows); n < usualSales {
		out = append(out, fmt.Sprintf("Only %d of the usual three sales: the range is wide for it.", n))
	}
	if c.market.byPairs {
		out = append(out, fmt.Sprintf("With %s in all, what is not given comes from pairs of like sales; where there is no pair, nothing is adjusted.", quantity.Counted(c.market.Len(), "sale")))
	}
	if v.Priceless > 0 {
		out = append(out, fmt.Sprintf("Of the %s around, your amounts leave nothing of %d: they count for neither the range nor what things are worth here.", quantity.Counted(len(c.pool), "sale"), v.Priceless))
	}
	for _, d := range v.Disbelieved {
		out = append(out, d.String())
	}
	if len(v.Untold) > 0 {
		out = append(out, "Some differ from the house in what is not adjusted, since nothing that can be believed tells its worth: "+Names(v.Untold)+".")
	}
	if v.Rows[0].Likeness < faint {
		out = append(out, "No sale is much like the subject: take the value with care.")
	}
	var unknown []string
	for _, f := range []struct {
		name string
		fact bool
	}{{"living area", c.Subject.Area.Known}, {"year built", c.Subject.Built.Known}, {"place", c.Subject.Place.Known || len(c.market.stated) > 0}} {
		if !f.fact {
			unknown = append(unknown, f.name)
		}
	}
	if len(unknown) > 0 {
		out = append(out, "Not known of the subject, so neither compared nor adjusted: "+strings.Join(unknown, ", ")+".")
	}
	return append(out, NotAppraisal)
}

// untold are the things in which a sale differs from the subject and of which neither an
// amount, a pair nor a regression that is believed tells the worth.
func (a *adjuster) untold(v *Value) (out []Line) {
	for _, l := range linear[1:] {
		if _, told := v.Linear[l]; told || a.m.tells(l, a.s) && !a.doubts(l) {
			continue
		}
		if slices.ContainsFunc(v.Rows, func(r Row) bool { return apart(figure(l, &r.House), figure(l, a.s), 1) != 0 }) {
			out = append(out, l)
		}
	}
	return out
}

// garageKinds are those of the sales, where a regression goes by them and the house says no kind, or
// another.
func (a *adjuster) garageKinds(v *Value) (out []string) {
	switch own := a.s.Garage; {
	case a.m.byPairs, own == "" && !slices.Contains(v.Untold, Garage):
		return nil
	case own == "":
	case a.doubts(Garage) || a.m.design.tells(ofGarage, own):
		return nil
	default:
		v.GarageAs = a.m.design.usual[ofGarage]
	}
	for i := range v.Rows {
		if g := v.Rows[i].Garage; g != "" && g != SomeGarage && !slices.Contains(out, g) {
			out = append(out, g)
		}
	}
	slices.Sort(out)
	return out
}

// tellsKind reports whether the regression tells a type of house from the most common one.
func (a *adjuster) tellsKind(kind string) bool {
	return !a.m.byPairs && !a.doubts(Style) && a.m.design.tells(ofKind, kind)
}

// tells reports whether one of the columns of words is of a word, or the word is the usual one.
func (d *design) tells(of int, word string) bool {
	return word == d.usual[of] || slices.ContainsFunc(d.traits, func(t trait) bool { return t.line == words[of].line && t.name == word })
}

// Names are the names of lines in a row.
func Names(lines []Line) string {
	out := make([]string, len(lines))
	for i, l := range lines {
		out[i] = l.String()
	}
	return strings.Join(out, ", ")
}

// faint is a likeness under which sales are hardly like the subject: some three steps.
const faint = 0.01
