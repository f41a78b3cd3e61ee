package deal_test

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What sort of room it is goes by its name, and for a bath by what stands fixed in it.
func TestKindsOfRoomsByTheirNames(t *testing.T) {
	const plumbed = ", fixed: {tub: 5' x 2' 6\", toilet: 1}"
	for _, c := range []struct{ name, fixed, want string }{
		{"ensuite", plumbed, "bath"}, {"en suite", plumbed, "bath"}, {"master en-suite", "", "bath"},
		{"wc", ", fixed: {toilet: 1}", "bath"}, {"washroom", plumbed, "bath"}, {"restroom", "", "bath"}, {"water closet", ", fixed: {toilet: 1}", "bath"}, {"jack and jill", plumbed, "bath"}, {"jack and jill", "", ""}, {"laundry", plumbed, ""}, {"lavatory", plumbed, "bath"}, {"powder", ", fixed: {toilet: 1}", "bath"},
		{"bath off bedroom", plumbed, "bath"}, {"primary bathroom", "", "bath"}, {"bath of bedroom 2", plumbed, "bath"},
		{"bedroom with bath", "", "bath"}, {"hall bath", "", "bath"}, {"half bath upstairs", "", "bath"},
		{"bedroom", plumbed, "bedroom"}, {"master", "", "bedroom"}, {"primary", "", "bedroom"}, {"guest room", "", "bedroom"},
		{"br 2", "", "bedroom"}, {"BR2", "", "bedroom"}, {"bed 2", "", "bedroom"}, {"master closet", "", ""}, {"guest bath", "", "bath"},
		{"breezeway", "", ""}, {"living room", "", ""},
	} {
		d := readDeal(t, walked+"rooms: {"+c.name+": {size: 10' x 12'"+c.fixed+"}}\n")
		got := ""
		for _, kind := range []string{"bath", "bedroom"} {
			if _, is := d.Root.In("inside")[0].Given.Look(kind); is {
				got += kind
			}
		}
		require.Equal(t, c.want, got, c.name)
	}
}

// A pantry is no kitchen: one that is counted stays beside it.
func TestAPantryIsNoKitchen(t *testing.T) {
	for room, kitchens := range map[string]int{"pantry": 1, "kitchen pantry": 1, "larder": 1, "kitchenette closet": 1, "kitchen": 0, "kitchenette": 0} {
		d := readDeal(t, walked+"quick: {kitchens: 1}\nrooms: {"+room+": {size: 4' x 5'}}\n")
		require.Len(t, d.Root.In("inside"), 1+kitchens, room)
	}
}
