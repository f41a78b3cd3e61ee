package deal

// doubt warns of what is possible but probably not meant.
func (r *reader) doubt() {}
