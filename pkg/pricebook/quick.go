package pricebook

import _ "embed"

// QuickFile names the text of Quick in messages.
const QuickFile = "starter book, quick.yaml"

// Quick is the text of the rooms that are only counted: a usual size and usual work by
// the sort of room, written as a deal file writes rooms.
//
//go:embed quick.yaml
var Quick string
