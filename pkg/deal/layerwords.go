package deal

import (
	"maps"
	"slices"
	"strconv"
	"strings"

	"ledgerboard/pkg/diag"
)

// layerUnknown tells of words that name no layer of a floor.
func (r *reader) layerUnknown(s span) {
	tell := r.say("unknown-layer", s.at, "%s is no layer that is known", diag.Quote(s.text))
	several := layersMeant(s.text)
	near, ok := diag.Nearest(s.text, slices.Sorted(maps.Keys(layered)))
	if also := r.layersCalled(s.text); !ok && len(also) == 1 {
		near, ok = also[0], true
	}
	switch apart := layersParted().MatchString(s.text); {
	case isNone(s.text):
		tell("leave the key out if there is none; else write it like   layers: [carpet, vinyl]")
	case len(several) > 1 && ok && !apart && several[0] != several[1]: // vinyl tile is one
		tell("did you mean %q? each layer stands by itself, from the top down:   layers: [%s]", near, strings.Join(several, ", "))
	case len(several) > 1:
		tell("several stand in brackets, from the top down, each as often as it lies:   layers: [%s]", strings.Join(several, ", "))
	case apart:
		tell("several stand in brackets, from the top down, each as often as it lies:   layers: [carpet, vinyl, vinyl]")
	case ok:
		tell("did you mean %q?", near)
	default:
		tell("the layers are: carpet, vinyl, tile, wood, laminate; name other work under the option")
	}
}

// layersCalled are the layers that other words are for, by the names of the work that takes them up.
func (r *reader) layersCalled(words string) (out []string) {
	with := r.prices().ItemsWith(words)
	for name, item := range layered {
		if slices.Contains(with, item) {
			out = append(out, name)
		}
	}
	return out
}

// layersParted are words for more than one layer.
var layersParted = pattern(`[,;&+/]| (?:and|over|on) |\d`)

// aLayer is a word, or a number of a count, that layers are told with.
var aLayer = pattern(`[a-z]+|\d+`)

// layersMeant are the layers that words tell of, each as often as it is counted: 2 vinyl, vinyl twice.
func layersMeant(words string) (out []string) {
	times, behind := 1, false
	for _, word := range aLayer().FindAllString(strings.ToLower(words), -1) {
		_, known := layered[word]
		n := layersCounted(word)
		switch {
		case known:
			out = append(out, slices.Repeat([]string{word}, times)...)
			times, behind = 1, false
		case n > 1 && len(out) > 0 && (behind || word == "twice"):
			out = append(out, slices.Repeat(out[len(out)-1:], n-1)...)
		case n > 1:
			times = n
		}
		behind = behind || word == "x"
	}
	return out
}

// layersCounted is the number of layers that a word is for, up to as many as lie on a floor; else 1.
func layersCounted(word string) int {
	n, err := strconv.Atoi(word)
	switch {
	case err == nil && n <= mostLayers:
		return n
	case word == "twice":
		return 2
	}
	return max(1, min(mostLayers, slices.Index(spelledOut, word)))
}

const mostLayers = 5
