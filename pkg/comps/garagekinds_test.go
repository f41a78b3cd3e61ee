package comps

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// garagesAs is a list of a hundred sales with none, one or two cars in their garages, written as asked,
// each car worth $8,000.
func garagesAs(t *testing.T, heads string, said [3]string) *List {
	var b strings.Builder
	b.WriteString("address,sale date,price,sq ft," + heads + "\n")
	for i := range 100 {
		cars := i * 7 % 3
		fmt.Fprintf(&b, "%d Elm St,2026-%02d-11,%d,%d,%s\n", i+1, 1+i%6, 180_000+100*(i*13%60)*8+8000*cars, 1200+8*(i*13%60), said[cars])
	}
	l, found := read(t, b.String(), Options{})
	require.Empty(t, found)
	return l
}

// A garage of none is nought cars, however the list and the house say it.
func TestNoGarageIsNoughtCars(t *testing.T) {
	lists := []*List{
		garagesAs(t, "garage cars", [3]string{"0", "1", "2"}), garagesAs(t, "garage", [3]string{"None", "1 car", "2 car"}), garagesAs(t, "garage", [3]string{"0", "1", "2"}),
	}
	for _, house := range []string{"none", "0", "2 cars"} {
		var all []*Value
		for _, l := range lists {
			var e Entry
			require.NoError(t, e.Set("garage", house))
			require.NoError(t, e.Set("living area", "1,400"))
			v := valued(t, l.Sales(), Subject{House: e.Sold().House}, Wish{})
			require.Empty(t, v.Untold, house)
			all = append(all, v)
		}
		for _, v := range all[1:] {
			require.Equal(t, all[0].Likely, v.Likely, house)
			require.Equal(t, all[0].Low, v.Low, house)
		}
	}
}

// Of a list that knows what kind its garages are and not for how many cars, the worth is told by kind.
func TestKindsOfGarageThatTell(t *testing.T) {
	kinds := garagesAs(t, "garage", [3]string{"none", "detached", "attached"}).Sales()
	v := valued(t, kinds, Subject{House: House{GarageCars: Known(2), Area: Known(1400)}}, Wish{})
	require.Equal(t, []Line{Garage}, v.Untold)
	require.Equal(t, []string{"attached", "detached", "none"}, v.GarageKinds)
	v = valued(t, kinds, Subject{House: House{GarageCars: Known(2), Garage: "attached", Area: Known(1400)}}, Wish{})
	require.Empty(t, v.Untold)
	require.Empty(t, v.GarageKinds)
}

// A kind of garage that no sale has counts as the usual one, which is told, and one of theirs as itself.
func TestAKindOfGarageThatNoSaleHas(t *testing.T) {
	kinds := garagesAs(t, "garage", [3]string{"none", "detached", "attached"}).Sales()
	for kind, as := range map[string]string{SomeGarage: "none", "built in": "none", "attached": "", "detached": "", "none": ""} {
		v := valued(t, kinds, Subject{House: House{Garage: kind, Area: Known(1400)}}, Wish{})
		require.Equal(t, as, v.GarageAs, kind)
		require.Equal(t, as != "", len(v.GarageKinds) > 0, kind)
	}
}
