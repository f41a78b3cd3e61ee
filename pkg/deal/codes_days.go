package deal

// badDayCodes are what can be wrong with bad days.
func badDayCodes() []Code {
	return mistakes([][2]string{
		{"bad-day-empty", "a bad day without any change"},
		{"bad-day-not-here", "a change on a bad day of what cannot have one"},
		{"bad-day-sign", "a share on a bad day that does not say whether it is more or less"},
		{"bad-day-beyond", "a change on a bad day that leads beyond what can be"},
		{"bad-day-twice", "an input that a bad day changes twice"},
		{"bad-axis", "a figure that varies without its values"},
		{"axis-not-here", "a grid over what cannot vary"},
	})
}
