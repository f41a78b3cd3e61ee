package quantity

// Error says why a text was refused. It reads "Why; want Want".
type Error struct {
	Found string // the offending part as written, text[At:At+len(Found)]; "" when something is missing
	Why   string // what is wrong with it
	Want  string // what would be accepted, with an example; fits behind "want" and "write"
	At    int    // byte offset of the offending part inside the text
}

// Error returns one line without a full stop.
func (e *Error) Error() string { return e.Why + "; want " + e.Want }
