package deal

import (
	"encoding/json"
	"strings"
)

// An object is a JSON object; its keys are printed in alphabetical order.
type object map[string]any

const schemaNote = "Keys may also be written with underscores or hyphens for the spaces, in any case. " +
	"An amount with a comma inside { } or [ ] is read as one amount by ledgerboard, but not by other YAML tools; write $1900 or $1.9k for them."

// Schema returns the JSON Schema (draft 2020-12) of the deal file, made from the
// table of fields. It knows the keys and the shape of their values; amounts, shares
// and times are text to it.
func Schema() []byte {
	table := schemaTable(Table())
	root := table.group("")
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = "ledgerboard deal file"
	root["description"] = schemaNote
	root["$defs"] = object{
		"fee":     object{"oneOf": []any{amount, table.group("<fee>")}},
		"fees":    named("#/$defs/fee"),
		"loan":    table.group("loans[]"),
		"table":   table.group("<fee>.tables[]"),
		"range":   table.group("<range>"),
		"rates":   object{"type": "object", "minProperties": 1, "additionalProperties": amount},
		"amounts": object{"type": "object", "additionalProperties": amount},
	}
	out, _ := json.MarshalIndent(root, "", "  ") // maps and strings only, so it cannot fail
	return append(out, '\n')
}

// amount is what a text or number is to the schema. Never written to.
var amount = object{"type": []string{"string", "number"}}

func named(ref string) object {
	return object{"type": "object", "additionalProperties": object{"$ref": ref}}
}

type schemaTable []Field

// group is the schema of a group of keys.
func (t schemaTable) group(path string) object {
	properties, patterns, required := object{}, object{}, []string{}
	for i := range t {
		f := &t[i]
		if f.group() != path {
			continue
		}
		s := t.field(f)
		properties[f.Key()] = s
		for _, name := range append([]string{f.Key()}, f.Other...) {
			if p := spellings(name); name != f.Key() || strings.ContainsAny(name, " -") {
				patterns[p] = s
			}
		}
		if f.Required {
			required = append(required, f.Key())
		}
	}
	out := object{"type": "object", "additionalProperties": false, "properties": properties}
	if len(patterns) > 0 {
		out["patternProperties"] = patterns
	}
	if len(required) > 0 {
		out["required"] = required
	}
	return out
}

// spellings is a pattern for the ways to write a key.
func spellings(name string) string {
	p := strings.NewReplacer(" ", "[ _-]+", "'", "['’]", "labour", "labou?r", "amortising", "amorti[sz]ing").Replace(plainKey(name))
	return "^" + p + "$"
}

// field is the schema of one key.
func (t schemaTable) field(f *Field) object {
	s := t.kind(f)
	if f.Meaning != "" {
		s["description"] = f.Meaning
		if f.Range != "" {
			s["description"] = f.Meaning + " (" + string(f.Kind) + ", " + f.Range + ")"
		}
	}
	if f.Default != "" {
		s["$comment"] = "without it: " + f.Default
	}
	if f.Example != "" && s["type"] != "object" && s["type"] != "array" && s["$ref"] == nil && s["oneOf"] == nil {
		s["examples"] = []string{f.Example}
	}
	return s
}

func (t schemaTable) kind(f *Field) object {
	switch f.Kind {
	case Group:
		if f.Short == "" {
			return t.group(f.Path)
		}
		return object{"oneOf": []any{amount, t.group(f.Path)}}
	case List:
		if f.Set == "loan" { // one may stand by itself
			one := object{"$ref": "#/$defs/loan"}
			return object{"oneOf": []any{one, object{"type": "array", "items": one}}}
		}
		return object{"type": "array", "items": t.group(f.Path + "[]")}
	case Tables:
		return object{"type": "array", "minItems": 1, "items": object{"$ref": "#/$defs/table"}}
	case Fees:
		return object{"$ref": "#/$defs/fees"}
	case Deposits, Prorations:
		return object{"$ref": "#/$defs/amounts"}
	case Brackets, Slabs:
		return object{"$ref": "#/$defs/rates"}
	case Named:
		if f.Of == "<range>" {
			return named("#/$defs/range")
		}
		return object{"type": "object", "additionalProperties": object{"oneOf": []any{amount, t.group(f.Of), object{"type": "null"}}}}
	case Works, Headers, Extras, Conditions:
		return object{"type": "object"}
	case Scope:
		return object{"oneOf": []any{amount, object{"type": "object", "additionalProperties": amount}}}
	case Sizes, Walk, Openings, Words:
		return object{"oneOf": []any{amount, object{"type": "array", "items": amount}}}
	case Roof:
		return object{"oneOf": []any{amount, object{"type": "array", "items": t.group("<plane>")}}}
	case Ties:
		return object{"type": "array", "items": t.group(f.Path + "[]")}
	case Cases:
		return object{"$ref": "#/$defs/amounts"}
	case BadDays:
		remedy := object{"oneOf": []any{amount, object{"type": "array", "items": amount}}}
		return object{"type": "object", "additionalProperties": object{"type": "object", "properties": object{"remedy": remedy}, "additionalProperties": amount}}
	case Choice:
		return object{"enum": f.Choices}
	case YesNo:
		return object{"enum": []any{true, false, "yes", "no", "on", "off"}}
	case Text:
		return object{"type": []string{"string", "number", "boolean"}}
	case Spending:
		return object{"oneOf": []any{object{"enum": f.Choices}, object{"type": "array", "minItems": 1, "items": amount}}}
	}
	return object{"type": amount["type"]}
}
