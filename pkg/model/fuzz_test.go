package model_test

import (
	"testing"

	"ledgerboard/pkg/model"
)

// fuzz: no text makes the reader of a document or the binder panic.
func FuzzParse(f *testing.F) {
	f.Add(sound)
	f.Add("set a of deal: b; x\nset b of a; x\nsale_month | deal | month\n  = input, assume 1 month, when 1 = 1\n  x\n")
	f.Add("total_of | deal | $\n  = total(previous(own) of aaa)\nown | aaa by month | choice\n  = input of p, q; else \"p\"\n")
	f.Fuzz(func(t *testing.T, text string) {
		d, err := model.Parse(model.Source{Name: "fuzz", Text: text})
		if err != nil {
			return
		}
		deal := model.NewDeal("fuzz")
		for _, s := range d.Sets[1:] {
			deal.Add(s.Name, "", s.Name)
		}
		model.Bind(d, deal)
	})
}
