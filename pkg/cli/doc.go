// Package cli is the command line: one file and one options struct for each
// verb. It reads files, asks the other packages and writes what they say.
package cli
