package deal

import (
	"regexp"
	"strings"
	"sync"
)

// tenths are dollars below ten with a single place behind the point, which cents have not.
var tenths = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^\$?[0-9]\.[1-9]$`) })

// doubtSmallCharges doubts charges of a few dollars that are rather a share, or thousands: what an agent
// takes or a buyer is given, and what is written as no dollars and cents are.
func (r *reader) doubtSmallCharges() {
	for _, fee := range r.chargesOnce() {
		v, is := fee.Given.Look("fixed")
		share := sells(fee) || fee.Kind == "selling_fee" && holdsAny(strings.ToLower(fee.Label), "concession", "credit")
		few := share && v.Number.LessThan(smallLine) || tenths().MatchString(v.Text)
		if is && v.Number.IsPositive() && few {
			r.say("charge-small", v.Pos, "%s is %s, little for a charge", fee.Label, v.Text)("write   %[1]s%%   if a share is meant,   $%[1]sk   if thousands are; it is used as it stands", v.Number)
		}
	}
}
