package deal_test

import (
	"encoding/json"
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
	"go.yaml.in/yaml/v4"

	"ledgerboard/pkg/deal"
)

// schema is the part of JSON Schema that the deal file's uses.
type schema struct {
	root map[string]any
}

func (s schema) check(rule map[string]any, v any, path string) error {
	if ref, ok := rule["$ref"].(string); ok {
		return s.check(s.root["$defs"].(map[string]any)[strings.TrimPrefix(ref, "#/$defs/")].(map[string]any), v, path)
	}
	if one, ok := rule["oneOf"].([]any); ok {
		fit, errs := 0, []error{}
		for _, r := range one {
			if err := s.check(r.(map[string]any), v, path); err == nil {
				fit++
			} else {
				errs = append(errs, err)
			}
		}
		if fit != 1 {
			return fmt.Errorf("%s fits %d of oneOf: %v", path, fit, errs)
		}
		return nil
	}
	if words, ok := rule["enum"].([]any); ok {
		if !slices.Contains(words, v) {
			return fmt.Errorf("%s: %v is not in %v", path, v, words)
		}
		return nil
	}
	kind := map[bool]string{}
	switch v := v.(type) {
	case map[string]any:
		kind[true] = "object"
		if err := s.keys(rule, v, path); err != nil {
			return err
		}
	case []any:
		kind[true] = "array"
		items, _ := rule["items"].(map[string]any)
		for i, x := range v {
			if err := s.check(items, x, fmt.Sprintf("%s[%d]", path, i)); err != nil {
				return err
			}
		}
	case string:
		kind[true] = "string"
	case bool:
		kind[true] = "boolean"
	default:
		kind[true] = "number"
	}
	if !strings.Contains(fmt.Sprint(rule["type"]), kind[true]) {
		return fmt.Errorf("%s is a %s, not %v", path, kind[true], rule["type"])
	}
	return nil
}

func (s schema) keys(rule map[string]any, v map[string]any, path string) error {
	properties, _ := rule["properties"].(map[string]any)
	patterns, _ := rule["patternProperties"].(map[string]any)
	for key, x := range v {
		known := false
		if p, ok := properties[key]; ok {
			known = true
			if err := s.check(p.(map[string]any), x, path+"."+key); err != nil {
				return err
			}
		}
		for pattern, p := range patterns {
			if regexp.MustCompile(pattern).MatchString(key) {
				known = true
				if err := s.check(p.(map[string]any), x, path+"."+key); err != nil {
					return err
				}
			}
		}
		if more, ok := rule["additionalProperties"].(map[string]any); ok && !known {
			known = true
			if err := s.check(more, x, path+"."+key); err != nil {
				return err
			}
		}
		if !known {
			return fmt.Errorf("%s.%s is not in the schema", path, key)
		}
	}
	required, _ := rule["required"].([]any)
	for _, r := range required {
		if _, ok := v[r.(string)]; !ok {
			return fmt.Errorf("%s.%v is missing", path, r)
		}
	}
	return nil
}

// plain writes amounts without commas, as other YAML tools need them in braces.
func plain(text string) string {
	for range 3 {
		text = regexp.MustCompile(`(\d),(\d{3})\b`).ReplaceAllString(text, "$1$2")
	}
	return text
}

func TestSchemaAcceptsWhatIsRead(t *testing.T) {
	s := schema{}
	require.NoError(t, json.Unmarshal(deal.Schema(), &s.root))
	ranges := "ranges: {overrun: {low: 0%, high: 30%, spread: even}, loans.1.rate: {cases: {9%: 1, 10%: 2}}}\nties: [{between: [overrun, standstill], correlation: 0.5}]\n"
	texts := []string{deal.Starter("schema"), deal.Starter("ranges") + ranges, strings.ReplaceAll(deal.Starter("schema"), "own labour rate", "own_labor_rate")}
	for _, name := range workedFiles {
		texts = append(texts, plain(string(worked(t, name))))
	}
	for _, text := range texts {
		var v map[string]any
		require.NoError(t, yaml.Unmarshal([]byte(text), &v))
		require.NoError(t, s.check(s.root, v, ""))
	}
	for _, bad := range []string{"prise: 5", "house: {year: 1962}", "loans: {rats: 5%}", "loans: [{interest on: nothing}]", "selling: {agent: {often: yes}}", "ranges: {overrun: {most: 5%}}", "ties: [{among: [a, b]}]"} {
		var v map[string]any
		require.NoError(t, yaml.Unmarshal([]byte(minimal+bad), &v))
		require.Error(t, s.check(s.root, v, ""), bad)
	}
}
