package deal

// bookCodes are what package pricebook says of a price book that a deal names.
func bookCodes() []Code {
	return mistakes([][2]string{
		{"book-want-group", "something else where a group of keys belongs in a price book"},
		{"book-want-value", "a group or list where a single value belongs in a price book"},
		{"book-want-list", "something else where a list belongs in a price book"},
		{"book-unknown-key", "a key that a price book does not have there"},
		{"book-missing", "a product or item without what it needs"},
		{"book-two-ways", "one thing said in two ways in a price book"},
		{"book-bad-value", "a value in a price book that cannot be read"},
		{"book-bad-unit", "a value in a price book in the wrong unit"},
		{"book-not-by-one", "a way of coming along that means something only of what is measured by one"},
		{"book-unknown-measure", "a measure that there is not"},
		{"book-unknown-condition", "a condition that there is not"},
		{"book-unknown-caution", "a caution that there is not"},
		{"book-unknown-product", "a material that no price book has"},
		{"book-unknown-item", "a companion that no price book has"},
		{"book-house-unless", "work for the whole house that brings something unless other work is done"},
		{"book-circle", "items that bring each other"},
	})
}
