// Package modeltest holds what every reader of the model is tested with: the
// worked deals and random deals.
package modeltest
