// Package workbook writes a deal as a spreadsheet that calculates by itself.
//
// It is a reader of the model: every line of every member has its place in a sheet, and
// its formula there says what the line's formula says, with the exact value cached beside
// it. Inputs stand unlocked where they can be changed; what comes from an algorithm or a
// search stands as a value. The pages in front only arrange what those sheets hold.
//
// Cells hold about 15 digits, so exactness ends at the file. Roundings look at nine
// decimals first, as the lines do, and land on the same cent.
package workbook
