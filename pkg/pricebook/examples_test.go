package pricebook_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"ledgerboard/pkg/pricebook"
)

// The example of every key, as the docs list it, is read over the starter book, with all that it names.
func TestExamplesOfKeysAreRead(t *testing.T) {
	apart := map[string]string{ // of another product or item than that of the place
		"once": "items: {circuit: {%s}}", "for each": "items: {sewer camera: {%s}}",
		"pack": "products: {our tile: {price: $20, %s}}", "sticks": "products: {our base: {%s}}", "roll": "products: {our paper: {price: $40, %s}}",
		"repeat": "products: {our paper: {roll: 20.5 in x 33 ft, price: $40, %s}}", "half drop": "products: {our paper: {roll: 20.5 in x 33 ft, repeat: 21 in, price: $40, %s}}",
	}
	for _, of := range []struct {
		keys  []pricebook.Key
		place string
	}{
		{pricebook.ProductKeys(), "products: {porcelain floor tile: {%s}}"},
		{pricebook.ItemKeys(), "items: {tile floor: {%s}}"},
		{pricebook.MaterialKeys(), "items: {tile floor: {materials: {porcelain floor tile: {%s}}}}"},
	} {
		for _, k := range of.keys {
			place := of.place
			if p := apart[k.Name]; p != "" {
				place = p
			}
			_, found := pricebook.Read("mine.yaml", strings.Replace(place, "%s", k.Name+": "+k.Example, 1), pricebook.Starter())
			assert.Empty(t, found, "%s: %s", k.Name, k.Example)
		}
	}
}

// What is told of an item that lacks what it needs can be written as it stands.
func TestWhatAnItemLacksIsToldAsItIsRead(t *testing.T) {
	_, found := pricebook.Read("mine.yaml", "items: {our floor: {measure: open floor}}", pricebook.Starter())
	var keys []string
	for _, d := range found {
		if d.Code == "book-missing" {
			for _, form := range strings.Split(strings.TrimPrefix(d.Hint, "add"), "   ") {
				if strings.Contains(form, ": ") && !strings.Contains(form, ": none") {
					keys = append(keys, strings.TrimSpace(form))
				}
			}
		}
	}
	require.NotEmpty(t, keys, found)
	_, found = pricebook.Read("mine.yaml", "items: {our floor: {measure: open floor, "+strings.Join(keys, ", ")+"}}", pricebook.Starter())
	require.Empty(t, found, keys)
}
