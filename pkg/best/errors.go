package best

import (
	"errors"
	"fmt"

	"ledgerboard/pkg/model"
)

// MostRooms is how many rooms with a choice a house may have.
const MostRooms = 40

// ErrNoChoice is returned for a deal in which no room leaves a choice.
var ErrNoChoice = errors.New("no room has options to choose among")

// A ManyError is a deal with more rooms to choose among than are searched.
type ManyError struct{ Rooms int }

func (e *ManyError) Error() string {
	return fmt.Sprintf("%d rooms have options; at most %d are searched", e.Rooms, MostRooms)
}

// A HiddenError is a line that a choice moves in a way that the search does not know.
type HiddenError struct{ Cell *model.Cell }

func (e *HiddenError) Error() string {
	return fmt.Sprintf("%s depends on options in a way that the search does not know", e.Cell.Name())
}

func (h *House) check() error {
	switch n := len(h.Rooms); {
	case n == 0:
		return ErrNoChoice
	case n > MostRooms:
		return &ManyError{n}
	}
	return nil
}
